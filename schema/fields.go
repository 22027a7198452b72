package schema

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"ferrule/schema/quantity"
)

// reading is one attribute being read: where it stands, what may stand there, and its expression.
type reading struct {
	*decoder
	scope *scope
	field *field
	owner *Head
	expr  hclsyntax.Expression
}

// term is an expression that is still to be evaluated, or an element of a value that has been.
type term struct {
	expr hclsyntax.Expression // nil where val is known already
	val  cty.Value
	at   hcl.Range
}

func of(e hclsyntax.Expression) term { return term{expr: e, at: e.Range()} }

// set reads the expression into one of the attribute types. What cannot be read stays unset.
func (r *reading) set(target any) {
	t := of(r.expr)
	switch x := target.(type) {
	case *Text:
		x.Range = t.at
		*x, _ = r.word(t)
	case *Quantity:
		x.Range = t.at
		*x, _ = r.quantity(t)
	case *Size:
		x.Range = t.at
		*x = r.size(t)
	case *Flag:
		x.Range = t.at
		*x = r.flag(t)
	case *Count:
		x.Range = t.at
		*x = r.count(t)
	case *Date:
		*x = r.date(t)
	case *Trip:
		*x = r.trip(t)
	case *Trigger:
		*x = r.trigger(t)
	case *Curve:
		*x = r.curve(t)
	case *Texts:
		x.Range = t.at
		x.List, x.Set = list(r, t, r.word)
	case *Quantities:
		x.Range = t.at
		x.List, x.Set = list(r, t, r.quantity)
	case *Joins:
		*x = r.joins(t)
	case *Expr:
		*x = r.expression()
	case *Ref:
		x.Range = t.at
		r.reference(x, r.expr)
	case *Refs:
		r.references(x, r.expr)
	case *Pins:
		r.pins(x, r.expr)
	case *Combinations:
		r.combinations(x, r.expr)
	default:
		panic(fmt.Sprintf("attribute %s has the unknown type %T", r.field.name, target)) // a slip in blocks.go
	}
}

func (r *reading) wrong(at hcl.Range, summary, format string, args ...any) {
	r.decoder.wrong(r.scope, r.expr, at, summary, "%s", r.field.name+": "+fmt.Sprintf(format, args...))
}

// value evaluates a term. It reports false where there is no value, or a null.
func (r *reading) value(t term) (cty.Value, bool) {
	v, ok := t.val, true
	if t.expr != nil {
		v, ok = r.eval(r.scope, t.expr)
	}
	return v, ok && !v.IsNull()
}

// text reads a text.
func (r *reading) text(t term) (string, bool) {
	if s, ok := literal(t.expr); ok {
		return s, true
	}
	if r.bareWord(t) {
		return "", false
	}
	v, ok := r.value(t)
	if !ok {
		return "", false
	}
	if v.Type() != cty.String {
		r.wrong(t.at, "Wrong type", "a text in quotes is wanted, not %s.%s", what(v), r.choices())
		return "", false
	}
	return v.AsString(), true
}

// bareWord explains a word that ought to stand in quotes.
func (r *reading) bareWord(t term) bool {
	x, ok := t.expr.(*hclsyntax.ScopeTraversalExpr)
	if !ok || len(x.Traversal) != 1 || len(r.field.words) == 0 {
		return false
	}
	word := x.Traversal.RootName()
	r.wrong(t.at, "Quotes missing", "text goes in quotes: %q.%s", clip(word), r.near.hint(word, r.field.words))
	return true
}

func (r *reading) choices() string {
	if len(r.field.words) == 0 {
		return ""
	}
	return " What fits: " + and(r.field.words, "or") + "."
}

// literal gives the text of a quoted text without templates, at no cost.
func literal(e hclsyntax.Expression) (string, bool) {
	x, ok := e.(*hclsyntax.TemplateExpr)
	if !ok || len(x.Parts) != 1 {
		return "", false
	}
	part, ok := x.Parts[0].(*hclsyntax.LiteralValueExpr)
	if !ok || part.Val.IsNull() || !part.Val.IsKnown() || part.Val.Type() != cty.String {
		return "", false
	}
	return part.Val.AsString(), true
}

// what names the type of a value in a sentence.
func what(v cty.Value) string {
	switch t := v.Type(); {
	case v.IsNull():
		return "nothing"
	case t == cty.String:
		return fmt.Sprintf("the text %q", clip(v.AsString()))
	case t == cty.Number:
		f, _ := v.AsBigFloat().Float64()
		return fmt.Sprintf("the bare number %g", f)
	case t == cty.Bool:
		return fmt.Sprintf("%t", v.True())
	case t.IsObjectType() || t.IsMapType():
		return "an object"
	}
	return "a list"
}

// word reads a text that has to be one of the field's words, where it has any.
func (r *reading) word(t term) (Text, bool) {
	x := Text{Attr: Attr{Range: t.at}}
	s, ok := r.text(t)
	if !ok {
		return x, false
	}
	if len(r.field.words) > 0 && !slices.Contains(r.field.words, s) {
		r.wrong(t.at, "Unknown word", "%q does not fit here.%s", clip(s), r.near.hint(s, r.field.words))
		return x, false
	}
	x.Value, x.Set = s, true
	return x, true
}

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

// ceilings are figures that no small power system has, by dimension.
var ceilings = map[quantity.Dimension]float64{
	quantity.Current: 1e6, quantity.Voltage: 1e5, quantity.Resistance: 1e9, quantity.Power: 1e8, quantity.Charge: 1e6,
	quantity.Energy: 1e9, quantity.Length: 1e5, quantity.Temperature: 1000, quantity.Duration: 1e9, quantity.Ratio: 1,
	quantity.Coefficient: 1, quantity.VoltageCoefficient: 1000,
}

// sensible rejects figures that are negative, zero or absurd.
func (r *reading) sensible(t term, q quantity.Quantity) bool {
	signed := q.Dim == quantity.Temperature || q.Dim == quantity.Coefficient || q.Dim == quantity.VoltageCoefficient
	switch {
	case q.Value < 0 && !signed:
		r.wrong(t.at, "Figure out of range", "%s is negative.", q)
	case q.Value == 0 && !signed && !r.field.zero:
		r.wrong(t.at, "Figure out of range", "%s: a figure above zero is wanted. An unknown figure is left out.", q)
	case q.Dim == quantity.Ratio && q.Value > 1:
		r.wrong(t.at, "Figure out of range", "%s is more than the whole: a share from 0 to 1, or up to 100 %%, is wanted.", q)
	case q.Value > ceilings[q.Dim] || signed && -q.Value > ceilings[q.Dim]:
		r.wrong(t.at, "Figure out of range", "%s is more than any wiring plan can have.", q)
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

// mostCount bounds counts: units in series, studs, conductors in a bundle.
const mostCount = 1000

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
	if f < 1 || f > mostCount || f != float64(int(f)) {
		r.wrong(t.at, "Figure out of range", "%s: a whole number from 1 to %d is wanted.", what(v), mostCount)
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
	if q.Value <= 0 || q.Value > ceilings[d] {
		r.wrong(t.at, "Figure out of range", "%s cannot be.", q)
		return q, false
	}
	return q, true
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
