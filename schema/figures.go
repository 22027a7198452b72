package schema

import (
	"slices"
	"strings"
	"time"

	"github.com/zclconf/go-cty/cty"

	"ferrule/schema/quantity"
)

func (r *reading) quantity(t term) (Quantity, bool) {
	q := Quantity{Attr: Attr{Range: t.at}}
	s, ok := literal(t.expr)
	if ok {
		q.Quantity, ok = r.parse(t, s)
	} else if v, known := r.value(t); known {
		q.Quantity, ok = r.measured(t, v)
	}
	if !ok || !r.sensible(t, q.Quantity) {
		return Quantity{Attr: q.Attr}, false
	}
	q.Set = true
	return q, true
}

// measured reads a value as a quantity: a text with a unit, or a bare number for a ratio.
func (r *reading) measured(t term, v cty.Value) (quantity.Quantity, bool) {
	switch {
	case v.Type() == cty.String:
		return r.parse(t, v.AsString())
	case v.Type() == cty.Number && slices.Contains(r.field.dims, quantity.Ratio):
		f, _ := v.AsBigFloat().Float64()
		return quantity.Quantity{Value: f, Dim: quantity.Ratio}, true
	case v.Type() == cty.Number:
		r.wrong(t.at, "Unit missing", "%s has no unit. A quantity is a text with a unit: %s.", what(v), r.units())
		return quantity.Quantity{}, false
	}
	r.wrong(t.at, "Wrong type", "a quantity is wanted, not %s: a text with a unit: %s.", what(v), r.units())
	return quantity.Quantity{}, false
}

func (r *reading) units() string {
	var out []string
	for _, d := range r.field.dims {
		out = append(out, d.Units()...)
	}
	return strings.Join(out, ", ")
}

func (r *reading) parse(t term, s string) (quantity.Quantity, bool) {
	q, err := quantity.Parse(s, r.field.dims...)
	if err != nil {
		r.wrong(t.at, "Not a fitting quantity", "%s.", err)
		return q, false
	}
	return q, true
}

// span is where figures of a dimension lie in any small power system, in SI; what a struct tag says
// of an attribute is closer.
type span struct{ least, most float64 }

var spans = [...]span{
	quantity.Current: {1e-6, 1e6}, quantity.Voltage: {1e-3, 1e5}, quantity.Resistance: {1e-6, 1e7}, quantity.Power: {1e-6, 1e8},
	quantity.Charge: {1e-3, 1e5}, quantity.Energy: {1e-3, 1e8}, quantity.Length: {1e-3, 1e4}, quantity.Temperature: {-273.15, 1000},
	quantity.Duration: {1e-6, 1e9}, quantity.Ratio: {1e-6, 1}, quantity.Coefficient: {-1, 1}, quantity.VoltageCoefficient: {-1000, 1000},
}

// span gives the bounds of an attribute's figures of one dimension.
func (f *field) span(d quantity.Dimension) span {
	s := spans[d]
	for _, q := range f.least {
		if q.Dim == d {
			s.least = q.Value
		}
	}
	for _, q := range f.most {
		if q.Dim == d {
			s.most = q.Value
		}
	}
	return s
}

// sensible rejects figures that are negative, zero or absurd.
func (r *reading) sensible(t term, q quantity.Quantity) bool {
	s := r.field.span(q.Dim)
	switch {
	case q.Value == 0 && r.field.zero:
		return true
	case q.Value < 0 && s.least > 0:
		r.wrong(t.at, "Figure out of range", "%s is negative.", q)
	case q.Value == 0 && s.least > 0:
		r.wrong(t.at, "Figure out of range", "%s: a figure above zero is wanted. An unknown figure is left out.", q)
	case q.Dim == quantity.Ratio && q.Value > 1:
		r.wrong(t.at, "Figure out of range", "%s is more than the whole: a share from 0 to 1, or up to 100 %%, is wanted.", q)
	case q.Value > s.most:
		r.wrong(t.at, "Figure out of range", "%s is more than can be: %s at most.", q, quantity.Format(s.most, q.Dim))
	case q.Value < s.least:
		r.wrong(t.at, "Figure out of range", "%s is less than can be: %s at least.", q, quantity.Format(s.least, q.Dim))
	default:
		return true
	}
	return false
}

func (r *reading) size(t term) Size {
	x := Size{Attr: Attr{Range: t.at}}
	v, ok := literal(t.expr)
	if !ok {
		val, known := r.value(t)
		if !known {
			return x
		}
		if val.Type() != cty.String {
			r.wrong(t.at, "Wrong type", "a conductor size is wanted, not %s: \"10 AWG\", \"2/0 AWG\", \"250 kcmil\" or \"6 mm2\".", what(val))
			return x
		}
		v = val.AsString()
	}
	s, err := quantity.ParseSize(v)
	if err != nil {
		r.wrong(t.at, "Not a conductor size", "%s.", err)
		return x
	}
	x.Size, x.Set = s, true
	return x
}

func (r *reading) flag(t term) Flag {
	x := Flag{Attr: Attr{Range: t.at}}
	v, ok := r.value(t)
	if !ok {
		return x
	}
	if v.Type() != cty.Bool {
		r.wrong(t.at, "Wrong type", "true or false is wanted, without quotes, not %s.", what(v))
		return x
	}
	x.Value, x.Set = v.True(), true
	return x
}

// mostCount bounds counts, such as units in series, studs, or conductors in a bundle.
func (f *field) mostCount() int {
	if len(f.most) > 0 {
		return int(f.most[0].Value)
	}
	return 1000
}

func (r *reading) count(t term) Count {
	x := Count{Attr: Attr{Range: t.at}}
	v, ok := r.value(t)
	if !ok {
		return x
	}
	if v.Type() != cty.Number {
		r.wrong(t.at, "Wrong type", "a whole number is wanted, without quotes, not %s.", what(v))
		return x
	}
	f, _ := v.AsBigFloat().Float64()
	if most := r.field.mostCount(); f < 1 || f > float64(most) || f != float64(int(f)) {
		r.wrong(t.at, "Figure out of range", "%s: a whole number from 1 to %d is wanted.", what(v), most)
		return x
	}
	x.Value, x.Set = int(f), true
	return x
}

func (r *reading) date(t term) Date {
	x := Date{Attr: Attr{Range: t.at}}
	s, ok := r.text(t)
	if !ok {
		return x
	}
	day, err := time.Parse(time.DateOnly, s)
	if err != nil {
		r.wrong(t.at, "Not a date", "%q is no date: year, month and day are wanted, as in \"2027-05-01\".", clip(s))
		return x
	}
	x.Value, x.Set = day, true
	return x
}

var trips = []string{"gfci", "rcd", "elci"}

func (r *reading) trip(t term) Trip {
	x := Trip{Attr: Attr{Range: t.at}}
	s, ok := r.text(t)
	if !ok {
		return x
	}
	kind, rest, _ := strings.Cut(strings.TrimSpace(s), " ")
	if !slices.Contains(trips, kind) {
		r.wrong(t.at, "Unknown word", "%q does not begin with a kind of residual current device.%s", clip(s), r.near.hint(kind, trips))
		return x
	}
	q, ok := r.figure(t, rest, quantity.Current)
	x.Kind, x.Amps, x.Set = kind, q.Value, ok
	return x
}

// figure reads a quantity that is part of a longer text.
func (r *reading) figure(t term, s string, d quantity.Dimension) (quantity.Quantity, bool) {
	q, err := quantity.Parse(s, d)
	if err != nil {
		r.wrong(t.at, "Not a fitting quantity", "%s.", err)
		return q, false
	}
	return q, r.sensible(t, q)
}

func (r *reading) trigger(t term) Trigger {
	x := Trigger{Attr: Attr{Range: t.at}}
	s, ok := r.text(t)
	if !ok {
		return x
	}
	if s == "ignition" {
		x.Ignition, x.Set = true, true
		return x
	}
	q, err := quantity.Parse(s, quantity.Voltage)
	if err != nil {
		r.wrong(t.at, "Not a fitting quantity", "%s. What starts a converter is an input voltage, or \"ignition\".", err)
		return x
	}
	x.Volts, x.Set = q.Value, r.sensible(t, q)
	return x
}
