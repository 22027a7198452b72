package schema

import (
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

	"ferrule/schema/quantity"
)

// Attr is what every attribute of a plan remembers: whether the plan wrote it and where.
// An attribute that is left out, or set to null, has Set == false: it is unknown, never zero.
type Attr struct {
	Set   bool
	Range hcl.Range // of the value's expression; of the block's header where the attribute is left out
}

// Quantity is a number with a unit. Value is SI (A, V, ohm, m, W, s) except charge (Ah),
// energy (Wh) and temperature (degrees C).
type Quantity struct {
	Attr
	quantity.Quantity
}

// Quantities is a list of quantities, such as a voltage rating for DC and one for AC.
type Quantities struct {
	Attr
	List []Quantity
}

// Size is a conductor size.
type Size struct {
	Attr
	quantity.Size
}

// Text is free text, or one word of a fixed vocabulary where the field's tag has `oneof`.
type Text struct {
	Attr
	Value string
}

// Texts is a list of texts, in the order written.
type Texts struct {
	Attr
	List []Text
}

// Flag is true, false or unknown (not Set). Which way an unknown flag counts is decided by
// whoever reads it: flags that protect are unknown, flags that describe a circumstance are false.
type Flag struct {
	Attr
	Value bool
}

// True reports whether the plan says true.
func (f Flag) True() bool { return f.Set && f.Value }

// False reports whether the plan says false.
func (f Flag) False() bool { return f.Set && !f.Value }

// Count is a whole number.
type Count struct {
	Attr
	Value int
}

// Or gives the count, or n where the plan has none.
func (c Count) Or(n int) int {
	if c.Set {
		return c.Value
	}
	return n
}

// Date is a calendar day, midnight UTC.
type Date struct {
	Attr
	Value time.Time
}

// Curve is a device's own time-current curve, by rising current.
type Curve struct {
	Attr
	Points []CurvePoint
}

// CurvePoint says that the device opens within Seconds at Amps.
type CurvePoint struct{ Amps, Seconds float64 }

// Trip is a residual-current trip such as "gfci 5 mA".
type Trip struct {
	Attr
	Kind string // "gfci", "rcd", "elci"
	Amps float64
}

// Trigger is what starts a converter: an input voltage, or the ignition.
type Trigger struct {
	Attr
	Ignition bool
	Volts    float64
}

// Pole names one node of a terminal. The zero value means the whole pair.
type Pole uint8

// The poles. Pos and Line are the first node of a terminal, Neg and Neutral the second.
const (
	WholePair Pole = iota
	Pos
	Neg
	Line
	Neutral
	Ground
)

var poleNames = [...]string{"", "pos", "neg", "line", "neutral", "ground"}

func (p Pole) String() string { return poleNames[p] }

// Ref is a reference to a block, or to a terminal of one, or to a single node of a terminal.
//
//	source.pack            Addr source.pack; the pair
//	source.pack.pos        Addr source.pack, Pole Pos
//	fuse.main.load         Addr fuse.main, Terminal load; the pair
//	fuse.main.load.neg     Addr fuse.main, Terminal load, Pole Neg
//	switch.sel["both on"]  Addr switch.sel, Terminal "both on"
//	connector.tow.free.brakes  Addr connector.tow, Terminal free, Contact brakes; one node
//	use.rear.bus.panel     Addr use.rear.bus.panel
//
// Set says that a reference was written and could be read, Addr that it resolved. Inside a kit Text
// is what the kit's file says, and Addr the full address.
type Ref struct {
	Attr
	Text     string // as written: `fuse.main.line`
	Addr     string // address of the block it resolved to; "" where it did not resolve
	Terminal string // "" for a block with one terminal (source, bus, load); else "line", "in", "free", the owner's name
	Contact  string // a named contact of a connector
	Pole     Pole
}

// Refs is a list of references.
type Refs struct {
	Attr
	List []Ref
}

// Has reports whether the list names the block at addr.
func (r Refs) Has(addr string) bool {
	for _, x := range r.List {
		if x.Addr == addr {
			return true
		}
	}
	return false
}

// Pin fixes one switch, connector or source at a position.
type Pin struct {
	Ref      Ref
	Position Text // a position's name; "mated" or "unmated"; "present" or "absent"
}

// Pins is one combination of positions.
type Pins struct {
	Attr
	List []Pin
}

// Combinations is a list of combinations.
type Combinations struct {
	Attr
	List []Pins
}

// Joins lists groups of a switch's terminals that a position connects to each other.
type Joins struct {
	Attr
	Groups [][]Text
}

// Expr is an expression that is kept unevaluated.
type Expr struct {
	Attr
	Expression hcl.Expression
	values     map[string]cty.Value // the let and parameter values that it reads, such as "let.x"
}
