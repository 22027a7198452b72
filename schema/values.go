package schema

import (
	"reflect"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// let reads a let block: every attribute is a named value.
func (d *decoder) let(sc *scope, b block) {
	if len(b.labels) > 0 {
		d.problems.add(b.where[0], "Too many names", "A let block has no name: let { derating = 0.8 }.")
	}
	in := b.body(&spec{})
	for _, x := range in.blocks {
		d.problems.add(x.at, "Unknown kind of block", "A let block holds named values only: NAME = VALUE.")
	}
	for _, a := range in.attributes {
		d.name(sc, "let."+a.name, &value{expr: a.expr, scope: sc, at: a.at})
	}
}

// name makes a value known in a scope, unless its name is taken.
func (d *decoder) name(sc *scope, name string, v *value) {
	if first := sc.values[name]; first != nil {
		d.problems.add(v.at, "Name used twice", "There is a %s already, at %s.", clip(name), place(first.at))
		return
	}
	sc.values[name] = v
	sc.names = append(sc.names, name)
	d.lets, d.named = append(d.lets, v), append(d.named, name)
}

// reference reports whether the value is written as a reference: a kit's parameter may be one.
func (v *value) reference() bool {
	e := v.expr
	if w, ok := e.(*hclsyntax.TemplateWrapExpr); ok {
		e = w.Wrapped
	}
	t, ok := e.(*hclsyntax.ScopeTraversalExpr)
	return ok && v.param && t.Traversal.RootName() != "let"
}

// parameter reads a kit's parameter. A value that the use block gave is known already.
func (d *decoder) parameter(sc *scope, b block) {
	t := words().byName["parameter"]
	p := &Parameter{}
	h := d.header(sc.prefix, p, b)
	d.fill(sc, t.contents, h, reflect.ValueOf(p).Elem(), b.body(t.contents), contents{})
	if !sc.kit {
		d.problems.add(b.at, "Parameter outside a kit", "A parameter block belongs in a kit file, which has a kit block.")
		return
	}
	if h.Name == "" {
		return
	}
	if words().byName["use"].contents.byName[h.Name] != nil {
		d.problems.add(b.where[0], "Unfit name", "A use block has an attribute %s of its own: the parameter needs another name.", h.Name)
	}
	v := &value{scope: sc, at: h.Range, param: true}
	if e, ok := p.Default.Expression.(hclsyntax.Expression); ok && p.Default.Set {
		v.expr = e
	}
	name := "parameter." + h.Name
	if given := sc.given[h.Name]; given != nil && sc.values[name] == nil {
		given.taken, v.expr, v.scope = true, given.expr, given.scope
	} else if v.expr == nil && sc.use != nil {
		d.problems.add(sc.use.Range, "Parameter missing", "The kit needs a value for %s, the parameter at %s.", clip(h.Name), place(h.Range))
	}
	d.name(sc, name, v)
	if sc.use == nil {
		d.record(t, p)
	}
}

// Evaluate works out an expression of a house rule. vars are the values it may read beside the
// plan's own named values; unknown values may be among them, and make the result unknown. Cost is
// bounded as it is for all expressions of a plan, and errors come as diagnostics.
func (x Expr) Evaluate(vars map[string]cty.Value) (cty.Value, hcl.Diagnostics) {
	e, ok := x.Expression.(hclsyntax.Expression)
	if !ok {
		return cty.DynamicVal, nil
	}
	ctx := &hcl.EvalContext{Functions: functions, Variables: map[string]cty.Value{}}
	c := &coster{known: map[string]bound{}, near: &nearer{budget: 1000}}
	groups := map[string]map[string]cty.Value{"let": {}, "parameter": {}}
	for name, v := range x.values {
		root, leaf, _ := strings.Cut(name, ".")
		groups[root][leaf] = v
	}
	for root, values := range groups {
		ctx.Variables[root] = cty.ObjectVal(values)
	}
	for name, v := range vars {
		ctx.Variables[name] = v
	}
	for name, v := range ctx.Variables {
		c.known[name] = measure(v)
	}
	if c.cost(e); c.problem != "" {
		return cty.DynamicVal, hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "Expression not allowed", Detail: c.problem, Subject: &c.at}}
	}
	return evaluate(e, ctx)
}
