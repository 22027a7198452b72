package schema

import (
	"fmt"
	"math"
	"strconv"

	"github.com/hashicorp/hcl/v2"

	"ferrule/schema/quantity"
)

// claim is what a plan says of one measure: by one attribute, or by several together. The zero
// claim says nothing, nor does one of which a part is left out.
type claim struct {
	quantity.Quantity
	parts []part
	sign  string // between two parts
}

// part is one attribute of a claim.
type part struct {
	name   string
	figure fmt.Stringer // printed for messages only
	at     hcl.Range
}

// plain is a figure that is written already.
type plain string

func (p plain) String() string { return string(p) }

// says is what an attribute claims by itself.
func says(name string, q Quantity) claim {
	if !q.Set {
		return claim{}
	}
	return claim{q.Quantity, []part{{name, q.Quantity, q.Range}}, ""}
}

// counts is what a whole number claims.
func counts(name string, n Count) claim {
	if !n.Set {
		return claim{}
	}
	return claim{quantity.Quantity{Value: float64(n.Value), Dim: quantity.Ratio}, []part{{name, plain(strconv.Itoa(n.Value)), n.Range}}, ""}
}

// usual is a figure of the trade, by a word of the plan where at is its place.
func usual(name, text string, at hcl.Range, value float64, d quantity.Dimension) claim {
	return claim{quantity.Quantity{Value: value, Dim: d}, []part{{name, plain(text), at}}, ""}
}

// as is the same figure seen as another measure: a charge in one hour is a current.
func (c claim) as(d quantity.Dimension) claim {
	c.Dim = d
	return c
}

// times and over give what two attributes come to together, a figure of dimension d.
func (c claim) times(o claim, d quantity.Dimension) claim {
	return c.with(" x ", o, c.Value*o.Value, d)
}

func (c claim) over(o claim, d quantity.Dimension) claim {
	return c.with(" / ", o, c.Value/o.Value, d)
}

func (c claim) with(sign string, o claim, value float64, d quantity.Dimension) claim {
	if c.parts == nil || o.parts == nil {
		return claim{}
	}
	return claim{quantity.Quantity{Value: value, Dim: d}, []part{c.parts[0], o.parts[0]}, sign}
}

// told is the claim in a sentence. The part that the message stands at needs no place.
func (c claim) told(leads bool) string {
	where := func(i int) string {
		if leads && i == 0 || c.parts[i].at.Filename == "" {
			return ""
		}
		return " at " + place(c.parts[i].at)
	}
	if c.sign == "" {
		return fmt.Sprintf("%s, %s%s", c.parts[0].name, c.parts[0].figure, where(0))
	}
	return fmt.Sprintf("%s (%s%s)%s%s (%s%s) = %s", c.parts[0].name, c.parts[0].figure, where(0), c.sign, c.parts[1].name, c.parts[1].figure, where(1), c.Quantity)
}

// relation bounds one claim by another: from least, if that is above zero, to most times it.
type relation struct {
	a           claim
	least, most float64
	b           claim
}

const noLimit = math.MaxFloat64

// relate reports the relations that do not hold. Every message stands at one place and names the
// other. The bounds are so wide that no true plan meets them: what is unwise, but can be, is for the
// rules.
func (d *decoder) relate(relations ...relation) {
	for _, r := range relations {
		if r.a.parts == nil || r.b.parts == nil || r.a.Dim != r.b.Dim {
			continue
		}
		if wrong := r.broken(); wrong != "" {
			d.contradiction(r.a.parts[0].at, "%s, is %s %s.", r.a.told(true), wrong, r.b.told(false))
		}
	}
}

// broken says how a compares with b where it may not.
func (r relation) broken() string {
	a, b := r.a.Quantity, r.b.Quantity
	above := func(x, y float64) bool { return x-y > 1e-9*math.Abs(y) } // 4700 mA is no more than 4.7 A
	switch {
	case a.Kind != b.Kind && a.Kind != quantity.Unmarked && b.Kind != quantity.Unmarked:
		return "not of the same kind as"
	case r.most == 1 && above(a.Value, b.Value):
		return "above"
	case r.most < noLimit && above(a.Value, r.most*b.Value):
		return "more than " + quantity.Number(r.most) + " times"
	case r.least == 1 && above(b.Value, a.Value):
		return "below"
	case r.least > 0 && above(r.least*b.Value, a.Value):
		return "less than " + quantity.Number(r.least) + " times"
	}
	return ""
}
