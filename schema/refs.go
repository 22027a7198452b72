package schema

import (
	"slices"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// pending is a reference that was read and waits until every block is known.
type pending struct {
	ref   *Ref
	steps []string
	field *field
	scope *scope
}

// reference reads a reference as it is written; nothing is evaluated.
func (r *reading) reference(x *Ref, e hclsyntax.Expression) bool {
	x.Range = e.Range()
	t, ok := r.traversal(e)
	if !ok {
		return false
	}
	steps, sc, ok := r.steps(t, e, r.scope)
	if !ok {
		return false
	}
	x.Set, x.Text = true, stepsText(steps)
	r.pending = append(r.pending, pending{ref: x, steps: steps, field: r.field, scope: sc})
	return true
}

// traversal unwraps the forms in which a reference may stand.
func (r *reading) traversal(e hclsyntax.Expression) (hcl.Traversal, bool) {
	switch x := e.(type) {
	case *hclsyntax.ScopeTraversalExpr:
		return x.Traversal, true
	case *hclsyntax.TemplateWrapExpr:
		return r.traversal(x.Wrapped)
	case *hclsyntax.ObjectConsKeyExpr:
		if !x.ForceNonLiteral {
			return r.traversal(x.Wrapped)
		}
	case *hclsyntax.TemplateExpr:
		if s, ok := literal(e); ok {
			return r.quoted(s, e.Range())
		}
	case *hclsyntax.ConditionalExpr:
		r.wrong(e.Range(), "Reference inside a condition", "a reference stands alone: it cannot be chosen by a condition.")
		return nil, false
	case *hclsyntax.LiteralValueExpr:
		if !x.Val.IsKnown() { // the parser's stand-in for what it has reported
			return nil, false
		}
	case *hclsyntax.ExprSyntaxError:
		return nil, false
	}
	r.wrong(e.Range(), "Not a reference", "a reference is wanted, such as %s. It stands alone and is not computed.", r.example())
	return nil, false
}

// quoted reads a reference in quotes, which JSON needs and native syntax does not take.
func (r *reading) quoted(s string, at hcl.Range) (hcl.Traversal, bool) {
	if !r.scope.json {
		r.wrong(at, "Reference in quotes", "a reference is written without quotes: %s.", clip(s))
		return nil, false
	}
	if len(s) > 1000 || strings.ContainsAny(s, "\n\r") {
		r.wrong(at, "Not a reference", "%q is not a reference, such as %s.", clip(s), r.example())
		return nil, false
	}
	var t hcl.Traversal
	var diags hcl.Diagnostics
	crash := survive(at, func() { t, diags = hclsyntax.ParseTraversalAbs([]byte(s), at.Filename, at.Start) })
	if crash != nil || diags.HasErrors() || len(t) == 0 {
		r.wrong(at, "Not a reference", "%q is not a reference, such as %s.", clip(s), r.example())
		return nil, false
	}
	return t, true
}

func (r *reading) example() string {
	switch t := r.field.refs[0]; t {
	case "terminal":
		return "fuse.main.line"
	case "block":
		return "conductor.feed"
	default:
		return t + ".NAME"
	}
}

// steps gives the names of a reference and the scope they are looked up in. A kit's parameter may
// stand for a reference that the plan gave it.
func (r *reading) steps(t hcl.Traversal, e hclsyntax.Expression, sc *scope) ([]string, *scope, bool) {
	var out []string
	for _, s := range t {
		name := stepName(s)
		if name == "" {
			r.wrong(e.Range(), "Not a reference", "%s is not a reference, such as %s.", clip(refText(t)), r.example())
			return nil, nil, false
		}
		out = append(out, name)
	}
	switch {
	case out[0] == "parameter" && len(out) > 1:
		return r.given(out, e, sc)
	case out[0] == "let":
		r.wrong(e.Range(), "Not a reference", "let holds values, not references.")
		return nil, nil, false
	}
	return out, sc, true
}

func (r *reading) given(out []string, e hclsyntax.Expression, sc *scope) ([]string, *scope, bool) {
	name := "parameter." + out[1]
	v := sc.values[name]
	if v == nil {
		r.wrong(e.Range(), "Unknown value", "there is no %s.%s", clip(name), r.near.hint(name, sc.names))
		return nil, nil, false
	}
	if v.expr == nil { // not given: reported where the kit is used, and open where it is read on its own
		return nil, nil, false
	}
	inner := *r
	inner.scope = v.scope
	t, ok := inner.traversal(v.expr)
	if !ok {
		return nil, nil, false
	}
	steps, scope, ok := inner.steps(t, v.expr, v.scope)
	return slices.Concat(steps, out[2:]), scope, ok
}

// refText writes a traversal the way an owner would.
func refText(t hcl.Traversal) string {
	var steps []string
	for _, s := range t {
		steps = append(steps, stepName(s))
	}
	return stepsText(steps)
}

func stepsText(steps []string) string {
	var b strings.Builder
	for i, name := range steps {
		switch {
		case i > 0 && !identifier(name):
			b.WriteString("[" + strconv.Quote(name) + "]")
			continue
		case i > 0:
			b.WriteByte('.')
		}
		b.WriteString(name)
	}
	return b.String()
}

// identifier tells names that can follow a dot.
func identifier(s string) bool {
	for i, c := range s {
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_' || c > 127
		if !letter && (i == 0 || c != '-' && (c < '0' || c > '9')) {
			return false
		}
	}
	return s != ""
}

// references reads a list of references, or one.
func (r *reading) references(x *Refs, e hclsyntax.Expression) {
	x.Range = e.Range()
	items := []hclsyntax.Expression{e}
	if l, ok := e.(*hclsyntax.TupleConsExpr); ok {
		items = l.Exprs
	}
	x.List = make([]Ref, 0, len(items)) // pending points into the list, which must not move
	ok := true
	for _, item := range items {
		x.List = append(x.List, Ref{})
		ok = r.reference(&x.List[len(x.List)-1], item) && ok
	}
	if x.Set = ok; !ok {
		x.List = slices.DeleteFunc(slices.Clone(x.List), func(f Ref) bool { return !f.Set })
	}
}

// pins reads one combination of positions: { switch.x = "position" }. Its keys are references,
// which are read as they stand.
func (r *reading) pins(x *Pins, e hclsyntax.Expression) {
	x.Range = e.Range()
	o, ok := e.(*hclsyntax.ObjectConsExpr)
	if !ok {
		if lit, isLit := e.(*hclsyntax.LiteralValueExpr); !isLit || lit.Val.IsKnown() {
			r.wrong(e.Range(), "Wrong type", "an object of positions is wanted, as in { switch.x = \"off\", source.pack = \"present\" }.")
		}
		return
	}
	x.List, x.Set = make([]Pin, 0, len(o.Items)), true
	for _, item := range o.Items {
		x.List = append(x.List, Pin{})
		p := &x.List[len(x.List)-1]
		good := r.reference(&p.Ref, item.KeyExpr)
		p.Position, ok = r.word(of(item.ValueExpr))
		x.Set = x.Set && ok && good
	}
}

func (r *reading) combinations(x *Combinations, e hclsyntax.Expression) {
	x.Range = e.Range()
	l, ok := e.(*hclsyntax.TupleConsExpr)
	if !ok {
		if lit, isLit := e.(*hclsyntax.LiteralValueExpr); !isLit || lit.Val.IsKnown() {
			r.wrong(e.Range(), "Wrong type", "a list of combinations is wanted, as in [{ switch.a = \"on\", switch.b = \"on\" }].")
		}
		return
	}
	x.List, x.Set = make([]Pins, 0, len(l.Exprs)), true
	for _, item := range l.Exprs {
		x.List = append(x.List, Pins{})
		p := &x.List[len(x.List)-1]
		r.pins(p, item)
		x.Set = x.Set && p.Set
	}
}
