package schema

import (
	"fmt"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// scope is what the expressions and references of one file see.
type scope struct {
	prefix string            // of the addresses of its parts: "use.rear."
	json   bool              // the file is in JSON syntax
	kit    bool              // the file is a kit
	values map[string]*value // let.x and parameter.x
	names  []string          // of values, in the order written
	files  []string          // the files being read, outermost first, the scope's own last
	use    *Use              // that put the kit into the plan
	given  map[string]*given // by the use block
}

// value is a let or a parameter, worked out when it is first asked for.
type value struct {
	expr  hclsyntax.Expression
	scope *scope // that expr is read in
	at    hcl.Range
	param bool
	state uint8
	val   cty.Value
	known bool
	bound bound
}

// The states of a value.
const (
	asleep uint8 = iota
	working
	done
)

// eval evaluates an expression. It reports false, with an error noted where there is one, if there
// is no value: a mistake, or a kit's parameter that is not given. A null is a value.
func (d *decoder) eval(sc *scope, e hclsyntax.Expression) (cty.Value, bool) {
	if lit, ok := e.(*hclsyntax.LiteralValueExpr); ok {
		return lit.Val, lit.Val.IsKnown()
	}
	v, _, ok := d.evalBound(sc, e)
	return v, ok
}

func (d *decoder) evalBound(sc *scope, e hclsyntax.Expression) (cty.Value, bound, bool) {
	ctx, known, ok := d.context(sc, e)
	if !ok {
		return cty.NilVal, bound{}, false
	}
	c := &coster{known: known, near: &d.near}
	b := c.cost(e)
	if c.problem == "" {
		if d.steps, d.bytes = d.steps+b.steps, d.bytes+b.bytes; d.steps > mostTotalSteps || d.bytes > mostTotalBytes {
			c.fail(e.Range(), "The plan's expressions together could take too many steps.")
		}
	}
	if c.problem != "" {
		d.wrong(sc, e, c.at, "Expression not allowed", "%s", c.problem)
		return cty.NilVal, bound{}, false
	}
	v, diags := evaluate(e, ctx)
	for _, x := range diags {
		summary, detail := reword(x)
		d.wrong(sc, e, subject(x, e.Range()), summary, "%s", detail)
	}
	if diags.HasErrors() || !v.IsWhollyKnown() {
		return cty.NilVal, bound{}, false
	}
	return v, b, true
}

// evaluate calls the library, whose panics become errors of the plan.
func evaluate(e hclsyntax.Expression, ctx *hcl.EvalContext) (v cty.Value, diags hcl.Diagnostics) {
	v = cty.DynamicVal
	crash := survive(e.Range(), func() { v, diags = e.Value(ctx) })
	return v, append(diags, crash...)
}

// survive calls into the library. A panic there becomes an error of the plan.
func survive(at hcl.Range, call func()) (diags hcl.Diagnostics) {
	defer func() {
		if r := recover(); r != nil {
			diags = hcl.Diagnostics{{
				Severity: hcl.DiagError, Summary: "Text not understood", Subject: &at,
				Detail: fmt.Sprintf("This cannot be read: %s.", clip(fmt.Sprint(r))),
			}}
		}
	}()
	call()
	return nil
}

// wrong notes an error inside an expression. Positions inside a JSON text are not those of the
// file, since escapes are gone: there the whole text is named.
func (d *decoder) wrong(sc *scope, e hclsyntax.Expression, at hcl.Range, summary, format string, args ...any) {
	if sc.json {
		at = e.Range()
	}
	remark := ""
	if sc.use != nil {
		remark = fmt.Sprintf(" (In the kit of %s, at %s.)", sc.use.Addr, place(sc.use.Range))
	}
	d.problems.note(at, summary, fmt.Sprintf(format, args...), remark)
}

// context collects the values that an expression reads.
func (d *decoder) context(sc *scope, e hclsyntax.Expression) (*hcl.EvalContext, map[string]bound, bool) {
	ctx := &hcl.EvalContext{Functions: functions}
	known, ok := map[string]bound{}, true
	groups := map[string]map[string]cty.Value{}
	for _, t := range variablesOf(e) {
		name := variableName(t)
		v := d.variable(sc, e, t)
		if v == nil || !v.known {
			ok = false
			continue
		}
		root := t.RootName()
		if groups[root] == nil {
			groups[root] = map[string]cty.Value{}
		}
		groups[root][stepName(t[1])], known[name] = v.val, v.bound
	}
	if !ok {
		return nil, nil, false
	}
	if len(groups) > 0 {
		ctx.Variables = map[string]cty.Value{}
	}
	for root, values := range groups {
		ctx.Variables[root] = cty.ObjectVal(values)
	}
	return ctx, known, true
}

// variablesOf lists the variables of an expression. The common text without any is told at once.
func variablesOf(e hclsyntax.Expression) []hcl.Traversal {
	switch x := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		return nil
	case *hclsyntax.ScopeTraversalExpr:
		return []hcl.Traversal{x.Traversal}
	}
	return e.Variables()
}

// variable finds the let or parameter that a traversal reads, nil with an error noted where there is none.
func (d *decoder) variable(sc *scope, e hclsyntax.Expression, t hcl.Traversal) *value {
	root := t.RootName()
	if root != "let" && root != "parameter" {
		d.strange(sc, e, t)
		return nil
	}
	if len(t) < 2 || stepName(t[1]) == "" {
		d.wrong(sc, e, t.SourceRange(), "Name missing", "%s values are read by name, as in %s.NAME.", root, root)
		return nil
	}
	v := sc.values[variableName(t)]
	if v == nil {
		d.wrong(sc, e, t.SourceRange(), "Unknown value", "There is no %s.%s", clip(variableName(t)), d.near.hint(variableName(t), sc.names))
		return nil
	}
	d.wake(v, variableName(t))
	return v
}

// strange explains a variable that is neither a let nor a parameter.
func (d *decoder) strange(sc *scope, e hclsyntax.Expression, t hcl.Traversal) {
	root := t.RootName()
	if _, ok := words().byName[root]; ok && len(t) > 1 {
		d.wrong(sc, e, t.SourceRange(), "Reference inside an expression",
			"%s is a reference. References stand alone, where a part is wanted: they have no value, and cannot be chosen by a condition.", clip(refText(t)))
		return
	}
	if len(t) == 1 {
		d.wrong(sc, e, t.SourceRange(), "Unknown name", "%s is no value that is known here. Text goes in quotes: %q. Named values are read as let.NAME.", clip(root), clip(root))
		return
	}
	d.wrong(sc, e, t.SourceRange(), "Unknown name", "%s is no value that is known here.%s", clip(refText(t)), d.near.hint(root, append([]string{"let", "parameter"}, words().names...)))
}

// wake works a value out, once.
func (d *decoder) wake(v *value, name string) {
	switch v.state {
	case working:
		v.state = done
		d.problems.add(v.at, "Value defined by itself", "%s is defined by itself, directly or round about.", clip(name))
		return
	case done:
		return
	}
	v.state = working
	if d.waking >= mostDepth {
		d.problems.add(v.at, "Expression not allowed", "%s leans on more than %d other values.", clip(name), mostDepth)
	} else if v.expr != nil {
		d.waking++
		val, b, ok := d.evalBound(v.scope, v.expr)
		d.waking--
		if ok {
			v.val, v.known, v.bound = val, true, bound{elems: b.elems, bytes: b.bytes}
			if m := measure(val); m.bytes < v.bound.bytes {
				v.bound = m
			}
		}
	}
	v.state = done
}
