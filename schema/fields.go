package schema

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// reading is one attribute being read: where it stands, what may stand there, and its expression.
type reading struct {
	*decoder
	scope *scope
	field *field
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
		return "the bare number " + v.AsBigFloat().Text('g', 6)
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
