package schema

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// Bounds of one expression, and of all expressions of a plan together. The check is made before
// anything is evaluated: an expression whose bound is too high is an error, not a wait.
const (
	mostSteps      = 1e5
	mostBytes      = 1 << 20
	mostDepth      = 1000
	mostTotalSteps = 2e6
	mostTotalBytes = 1 << 25
)

// bound is an upper bound on what an expression costs and gives.
type bound struct {
	steps float64
	elems float64 // elements of the value, or of any value inside it
	bytes float64 // bytes of text, and one per number, truth value and element
}

// measure gives the exact bound of a known value.
func measure(v cty.Value) bound {
	switch {
	case v.IsNull() || !v.IsKnown():
		return bound{bytes: 1}
	case v.Type() == cty.String:
		return bound{bytes: float64(len(v.AsString())) + 1}
	case !v.CanIterateElements():
		return bound{bytes: 1}
	}
	var out bound
	n := 0.0
	for it := v.ElementIterator(); it.Next(); n++ {
		k, e := it.Element()
		m := measure(e)
		out.elems, out.bytes = max(out.elems, m.elems), out.bytes+m.bytes+1
		if k.Type() == cty.String {
			out.bytes += float64(len(k.AsString()))
		}
	}
	out.elems = max(out.elems, n)
	return out
}

// coster works out bounds over a syntax tree and, since it sees every node, swaps operations for
// their guarded twins. The first thing that cannot be allowed ends up in problem.
type coster struct {
	known   map[string]bound // of let.x and parameter.x
	local   map[string]bound // of a for expression's variables
	splat   map[*hclsyntax.AnonSymbolExpr]bound
	depth   int
	problem string
	at      hcl.Range
	near    *nearer
}

func (c *coster) fail(at hcl.Range, format string, args ...any) bound {
	if c.problem == "" {
		c.problem, c.at = fmt.Sprintf(format, args...), at
	}
	return bound{}
}

// cost bounds an expression. Handling a value costs a step, and one more for every 16 bytes of it.
func (c *coster) cost(e hclsyntax.Expression) bound {
	if c.depth++; c.depth > mostDepth {
		return c.fail(e.Range(), "The expression is nested too deeply.")
	}
	defer func() { c.depth-- }()
	b := c.node(e)
	b.steps += 1 + b.bytes/16
	if c.problem == "" && (b.steps > mostSteps || b.bytes > mostBytes) {
		c.fail(e.Range(), "The expression could take more than %d steps or %d bytes.", int(mostSteps), mostBytes)
	}
	return b
}

func (c *coster) node(e hclsyntax.Expression) bound {
	switch x := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		if !bounded(x.Val) {
			return c.fail(x.SrcRange, "The number is out of range.")
		}
		return measure(x.Val)
	case *hclsyntax.ScopeTraversalExpr:
		return c.variable(x.Traversal)
	case *hclsyntax.AnonSymbolExpr:
		return c.splat[x]
	case *hclsyntax.ParenthesesExpr:
		return c.cost(x.Expression)
	case *hclsyntax.ObjectConsKeyExpr:
		return c.key(x)
	case *hclsyntax.TemplateWrapExpr:
		return c.cost(x.Wrapped)
	case *hclsyntax.TemplateExpr:
		return c.text(c.all(x.Parts...))
	case *hclsyntax.TemplateJoinExpr:
		return c.text(c.cost(x.Tuple))
	case *hclsyntax.TupleConsExpr:
		return c.elements(c.all(x.Exprs...), len(x.Exprs))
	case *hclsyntax.ObjectConsExpr:
		return c.object(x)
	case *hclsyntax.ConditionalExpr:
		return c.all(x.Condition, x.TrueResult, x.FalseResult)
	case *hclsyntax.BinaryOpExpr:
		if twin, ok := guardedOps[x.Op]; ok {
			x.Op = twin
		}
		return c.number(c.all(x.LHS, x.RHS))
	case *hclsyntax.UnaryOpExpr:
		if twin, ok := guardedOps[x.Op]; ok {
			x.Op = twin
		}
		return c.number(c.cost(x.Val))
	case *hclsyntax.FunctionCallExpr:
		return c.call(x)
	case *hclsyntax.IndexExpr:
		return c.index(x)
	case *hclsyntax.RelativeTraversalExpr:
		return c.cost(x.Source)
	case *hclsyntax.SplatExpr:
		return c.each(x)
	case *hclsyntax.ForExpr:
		return c.loop(x)
	case *hclsyntax.ExprSyntaxError:
		return bound{}
	}
	return c.fail(e.Range(), "Expressions of this kind are not part of the language.")
}

// all adds the bounds of several expressions.
func (c *coster) all(es ...hclsyntax.Expression) bound {
	var out bound
	for _, e := range es {
		b := c.cost(e)
		out.steps, out.bytes, out.elems = out.steps+b.steps, out.bytes+b.bytes, max(out.elems, b.elems)
	}
	return out
}

// text is the bound of a text made of parts; a number in it may take 200 digits.
func (c *coster) text(b bound) bound { return bound{steps: b.steps, bytes: b.bytes + 200} }

func (c *coster) number(b bound) bound { return bound{steps: b.steps + b.bytes/16, bytes: 200} }

func (c *coster) elements(b bound, n int) bound {
	b.elems, b.bytes = max(b.elems, float64(n)), b.bytes+float64(n)
	return b
}

func (c *coster) object(x *hclsyntax.ObjectConsExpr) bound {
	var out bound
	for _, item := range x.Items {
		b := c.all(item.KeyExpr, item.ValueExpr)
		out.steps, out.bytes, out.elems = out.steps+b.steps, out.bytes+b.bytes, max(out.elems, b.elems)
	}
	return c.elements(out, len(x.Items))
}

// key bounds an object's key, which is a name and no variable where it is a bare word.
func (c *coster) key(x *hclsyntax.ObjectConsKeyExpr) bound {
	if word := hcl.ExprAsKeyword(x.Wrapped); word != "" && !x.ForceNonLiteral {
		return bound{bytes: float64(len(word)) + 1}
	}
	return c.cost(x.Wrapped)
}

func (c *coster) call(x *hclsyntax.FunctionCallExpr) bound {
	if !slices.Contains(functionNames, x.Name) {
		return c.fail(x.NameRange, "There is no function %q.%s", clip(x.Name), c.near.hint(x.Name, functionNames))
	}
	b := c.all(x.Args...)
	return bound{steps: b.steps + 10*b.elems, bytes: 400}
}

// index bounds an index. A key that is a text may be read as a number, in time with the square of
// its length.
func (c *coster) index(x *hclsyntax.IndexExpr) bound {
	coll, key := c.cost(x.Collection), c.cost(x.Key)
	return bound{steps: coll.steps + key.steps + key.bytes*key.bytes/2000, elems: coll.elems, bytes: coll.bytes}
}

func (c *coster) variable(t hcl.Traversal) bound {
	if b, ok := c.local[t.RootName()]; ok {
		return bound{steps: float64(len(t)), elems: b.elems, bytes: b.bytes}
	}
	b, ok := c.known[variableName(t)]
	if !ok {
		b = c.known[t.RootName()]
	}
	return bound{steps: float64(len(t)), elems: b.elems, bytes: b.bytes}
}

// loop bounds a for expression: the body once per element of the collection.
func (c *coster) loop(x *hclsyntax.ForExpr) bound {
	coll := c.cost(x.CollExpr)
	outer := c.local
	c.local = map[string]bound{}
	for name, b := range outer {
		c.local[name] = b
	}
	c.local[x.KeyVar], c.local[x.ValVar] = bound{bytes: coll.bytes}, bound{elems: coll.elems, bytes: coll.bytes}
	body := c.all(slices.DeleteFunc([]hclsyntax.Expression{x.KeyExpr, x.ValExpr, x.CondExpr}, func(e hclsyntax.Expression) bool { return e == nil })...)
	c.local = outer
	return c.repeat(coll, body)
}

func (c *coster) each(x *hclsyntax.SplatExpr) bound {
	coll := c.cost(x.Source)
	coll.elems = max(coll.elems, 1) // a splat makes a list of one of what is no list
	if c.splat == nil {
		c.splat = map[*hclsyntax.AnonSymbolExpr]bound{}
	}
	c.splat[x.Item] = bound{elems: coll.elems, bytes: coll.bytes}
	return c.repeat(coll, c.cost(x.Each))
}

func (c *coster) repeat(coll, body bound) bound {
	return bound{
		steps: coll.steps + coll.elems*(body.steps+1),
		elems: max(coll.elems, body.elems),
		bytes: coll.elems * (body.bytes + 1),
	}
}

// variableName is "let.x" for let.x and what hangs on it.
func variableName(t hcl.Traversal) string {
	if len(t) < 2 {
		return t.RootName()
	}
	return strings.Join([]string{t.RootName(), stepName(t[1])}, ".")
}

// stepName is the name or key that one step of a traversal takes, "" where it takes none.
func stepName(step hcl.Traverser) string {
	switch s := step.(type) {
	case hcl.TraverseRoot:
		return s.Name
	case hcl.TraverseAttr:
		return s.Name
	case hcl.TraverseIndex:
		switch {
		case s.Key.Type() == cty.String && s.Key.IsKnown() && !s.Key.IsNull():
			return s.Key.AsString()
		case s.Key.Type() == cty.Number && bounded(s.Key):
			return s.Key.AsBigFloat().Text('f', 0)
		}
	}
	return ""
}
