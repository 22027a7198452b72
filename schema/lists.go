package schema

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"ferrule/schema/quantity"
)

// list reads every element of a list. A single value stands for a list of one. It reports false
// where nothing could be read, or an element was wrong: half a list is worse than none.
func list[T any](r *reading, t term, read func(term) (T, bool)) ([]T, bool) {
	terms, ok := r.elements(t, true)
	if !ok {
		return nil, false
	}
	out := make([]T, 0, len(terms))
	for _, e := range terms {
		x, good := read(e)
		if ok = ok && good; good {
			out = append(out, x)
		}
	}
	if !ok {
		return nil, false
	}
	return out, true
}

// elements parts a list into its elements, each with its own place where the list is written out.
func (r *reading) elements(t term, single bool) ([]term, bool) {
	if x, ok := t.expr.(*hclsyntax.TupleConsExpr); ok {
		out := make([]term, 0, len(x.Exprs))
		for _, e := range x.Exprs {
			if r.nothing(e) {
				return nil, false
			}
			out = append(out, of(e))
		}
		return out, true
	}
	if _, ok := literal(t.expr); ok && single {
		return []term{t}, true
	}
	if single && t.expr != nil && r.bareWord(t) {
		return nil, false
	}
	v, ok := r.value(t)
	if !ok {
		return nil, false
	}
	if v.Type().IsTupleType() || v.Type().IsListType() || v.Type().IsSetType() {
		var out []term
		for _, e := range v.AsValueSlice() {
			out = append(out, term{val: e, at: t.at})
		}
		return out, true
	}
	if single && v.Type().IsPrimitiveType() {
		return []term{{val: v, at: t.at}}, true
	}
	r.wrong(t.at, "Wrong type", "a list in square brackets is wanted, not %s.", what(v))
	return nil, false
}

// nothing reports a null in a list.
func (r *reading) nothing(e hclsyntax.Expression) bool {
	if x, ok := e.(*hclsyntax.LiteralValueExpr); ok && x.Val.IsNull() {
		r.wrong(x.SrcRange, "Wrong type", "null cannot be an element of a list.")
		return true
	}
	return false
}

// joins reads a position's groups of terminals.
func (r *reading) joins(t term) Joins {
	x := Joins{Attr: Attr{Range: t.at}}
	groups, ok := r.elements(t, false)
	for _, g := range groups {
		if _, isText := literal(g.expr); isText {
			r.wrong(g.at, "Wrong type", "each group of terminals is a list of its own, as in [[\"pack\", \"house\"]].")
			return x
		}
		var names []Text
		names, good := list(r, g, r.word)
		if ok = ok && good; good {
			x.Groups = append(x.Groups, names)
		}
	}
	x.Set = ok
	return x
}

// curve reads a device's own points, by rising current and falling time.
func (r *reading) curve(t term) Curve {
	x := Curve{Attr: Attr{Range: t.at}}
	rows, ok := r.elements(t, false)
	if !ok {
		return x
	}
	var last CurvePoint
	var before term
	for i, row := range rows {
		p, good := r.point(row)
		if !good {
			return x
		}
		if i > 0 && (p.Amps <= last.Amps || p.Seconds > last.Seconds) {
			r.wrong(row.at, "Curve out of order", "%s after %s at %s: the points go by rising current, and no point takes longer than the one before it.", p, last, place(before.at))
			return x
		}
		x.Points, last, before = append(x.Points, p), p, row
	}
	if len(rows) < 2 {
		r.wrong(t.at, "Curve too short", "a curve has two points or more, as in [[\"20 A\", \"3600 s\"], [\"40 A\", \"5 s\"]].")
		return x
	}
	x.Set = true
	return x
}

func (p CurvePoint) String() string {
	return quantity.Format(p.Seconds, quantity.Duration) + " at " + quantity.Format(p.Amps, quantity.Current)
}

func (r *reading) point(row term) (CurvePoint, bool) {
	var p CurvePoint
	pair, ok := r.elements(row, false)
	if !ok {
		return p, false
	}
	if len(pair) != 2 {
		r.wrong(row.at, "Wrong type", "a point of the curve is a current and a time, as in [\"20 A\", \"3600 s\"].")
		return p, false
	}
	amps, ok := r.text(pair[0])
	if !ok {
		return p, false
	}
	seconds, ok := r.text(pair[1])
	if !ok {
		return p, false
	}
	a, ok := r.figure(pair[0], amps, quantity.Current)
	s, good := r.figure(pair[1], seconds, quantity.Duration)
	return CurvePoint{a.Value, s.Value}, ok && good
}

// expression keeps an expression as it is. In JSON syntax it is the text between "${" and "}", or
// a plain text.
func (r *reading) expression() Expr {
	x := Expr{Attr: Attr{Set: true, Range: r.expr.Range()}, Expression: r.expr}
	if w, ok := r.expr.(*hclsyntax.TemplateWrapExpr); ok && r.scope.json {
		x.Expression = w.Wrapped
	} else if s, ok := literal(r.expr); ok && r.scope.json {
		if x.Expression, ok = r.fromText(s, r.expr.Range()); !ok {
			return Expr{Attr: Attr{Range: r.expr.Range()}}
		}
	}
	x.values = map[string]cty.Value{}
	for _, t := range x.Expression.Variables() {
		if root := t.RootName(); root == "let" || root == "parameter" {
			v := r.variable(r.scope, r.expr, t)
			if v == nil || !v.known {
				return Expr{Attr: Attr{Range: r.expr.Range()}}
			}
			x.values[variableName(t)] = v.val
		}
	}
	return x
}

// fromText reads an expression out of a JSON text.
func (r *reading) fromText(s string, at hcl.Range) (hcl.Expression, bool) {
	if problem := deep([]byte(s), false); problem != "" {
		r.wrong(at, "Expression not allowed", "%s", problem)
		return nil, false
	}
	var e hclsyntax.Expression
	var diags hcl.Diagnostics
	crash := survive(at, func() { e, diags = hclsyntax.ParseExpression([]byte(s), at.Filename, at.Start) })
	diags = append(diags, crash...)
	for _, x := range diags {
		summary, detail := reword(x)
		r.wrong(at, summary, "%s", detail)
	}
	return e, !diags.HasErrors()
}
