package schema

import (
	"bytes"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	hcljson "github.com/hashicorp/hcl/v2/json"
	"github.com/zclconf/go-cty/cty"
)

// parseJSON parses a file in JSON syntax. Its expressions become native ones, so that everything
// after this reads one kind only.
func (d *decoder) parseJSON(name string, src []byte) ([]block, bool) {
	start := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if problem := deepJSON(src); problem != "" {
		d.problems.add(start, "Nested too deeply", "%s", problem)
		return nil, false
	}
	if trimmed := bytes.TrimSpace(bytes.TrimPrefix(src, []byte("\ufeff"))); len(trimmed) == 0 || trimmed[0] != '{' {
		d.problems.add(start, "Not an object", "A plan in JSON syntax is one object: { \"system\": { ... } }.")
		return nil, false
	}
	var file *hcl.File
	var diags hcl.Diagnostics
	crash := survive(start, func() { file, diags = hcljson.Parse(src, name) })
	for _, x := range append(crash, diags...) {
		summary, detail := reword(x)
		d.problems.add(subject(x, start), summary, "%s", detail)
	}
	if crash != nil {
		return nil, false
	}
	j := &jsonReader{decoder: d, start: start, broken: diags.HasErrors()}
	top := &spec{}
	for _, t := range words().names {
		top.blocks = append(top.blocks, &nested{name: t, many: t != "let"})
	}
	b := j.body(file.Body, top)
	for _, a := range b.attributes {
		d.problems.add(a.at, "Unknown kind of block", "There is no kind of block %q.%s", clip(a.name), d.near.hint(a.name, words().names))
	}
	return b.blocks, !diags.HasErrors()
}

func subject(x *hcl.Diagnostic, other hcl.Range) hcl.Range {
	if x.Subject != nil && x.Subject.Filename != "" { // the library leaves ranges empty where a bracket is missing
		return *x.Subject
	}
	return other
}

type jsonReader struct {
	*decoder
	start  hcl.Range
	broken bool // the text has errors already: what does not fit together is no news
}

// body reads an object as a block's contents: the spec says which properties are blocks.
func (j *jsonReader) body(b hcl.Body, s *spec) body {
	var out body
	var headers []hcl.BlockHeaderSchema
	for _, n := range s.blocks {
		h := hcl.BlockHeaderSchema{Type: n.name}
		if n.many {
			h.LabelNames = []string{"name"}
		}
		headers = append(headers, h)
	}
	content, rest, diags := b.PartialContent(&hcl.BodySchema{Blocks: headers})
	attributes, more := rest.JustAttributes()
	if j.broken {
		diags, more = nil, nil
	}
	for _, x := range append(diags, more...) {
		j.problems.add(subject(x, j.start), x.Summary, "%s", x.Detail)
	}
	for _, a := range attributes {
		out.attributes = append(out.attributes, attribute{a.Name, a.NameRange, j.expression(a.Expr)})
	}
	inOrder(out.attributes)
	for _, x := range content.Blocks {
		out.blocks = append(out.blocks, j.block(x))
	}
	return out
}

func (j *jsonReader) block(x *hcl.Block) block {
	header := x.TypeRange
	if n := len(x.LabelRanges); n > 0 {
		header = x.LabelRanges[n-1]
	}
	whole := header
	if end := x.Body.MissingItemRange(); end.End.Byte > header.End.Byte {
		whole = hcl.RangeBetween(header, end)
	}
	return block{
		typ: x.Type, at: x.TypeRange, labels: x.Labels, where: x.LabelRanges, header: header, whole: whole,
		body: func(s *spec) body { return j.body(x.Body, s) },
	}
}

// expression turns a JSON value into the native expression that means the same.
func (j *jsonReader) expression(e hcl.Expression) hclsyntax.Expression {
	at := e.Range()
	if l, ok := e.(interface{ ExprList() []hcl.Expression }); ok {
		if items := l.ExprList(); items != nil {
			out := &hclsyntax.TupleConsExpr{SrcRange: at, OpenRange: at}
			for _, x := range items {
				out.Exprs = append(out.Exprs, j.expression(x))
			}
			return out
		}
	}
	if m, ok := e.(interface{ ExprMap() []hcl.KeyValuePair }); ok {
		if items := m.ExprMap(); items != nil {
			out := &hclsyntax.ObjectConsExpr{SrcRange: at, OpenRange: at}
			for _, x := range items {
				key := &hclsyntax.ObjectConsKeyExpr{Wrapped: j.expression(x.Key)}
				out.Items = append(out.Items, hclsyntax.ObjectConsItem{KeyExpr: key, ValueExpr: j.expression(x.Value)})
			}
			return out
		}
	}
	v, _ := e.Value(nil) // without a context texts are not read as templates
	if v.IsKnown() && !v.IsNull() && v.Type() == cty.String {
		return j.text(v.AsString(), at)
	}
	return &hclsyntax.LiteralValueExpr{Val: v, SrcRange: at}
}

// text reads a text, which may be a template. Its place is the JSON text's whatever it holds,
// since places inside it would not be those of the file.
func (j *jsonReader) text(s string, at hcl.Range) hclsyntax.Expression {
	plain := &hclsyntax.TemplateExpr{SrcRange: at, Parts: []hclsyntax.Expression{
		&hclsyntax.LiteralValueExpr{Val: cty.StringVal(s), SrcRange: at},
	}}
	if !strings.Contains(s, "${") && !strings.Contains(s, "%{") {
		return plain
	}
	if problem := deep([]byte(s), true); problem != "" {
		j.problems.add(at, "Nested too deeply", "%s", problem)
		return &hclsyntax.LiteralValueExpr{Val: cty.DynamicVal, SrcRange: at}
	}
	var e hclsyntax.Expression
	var diags hcl.Diagnostics
	crash := survive(at, func() { e, diags = hclsyntax.ParseTemplate([]byte(s), at.Filename, at.Start) })
	diags = append(diags, crash...)
	for _, x := range diags {
		summary, detail := reword(x)
		j.problems.add(at, summary, "%s", detail)
	}
	if diags.HasErrors() {
		return &hclsyntax.LiteralValueExpr{Val: cty.DynamicVal, SrcRange: at}
	}
	switch x := e.(type) {
	case *hclsyntax.TemplateExpr:
		x.SrcRange = at
	case *hclsyntax.TemplateWrapExpr:
		x.SrcRange = at
	}
	return e
}
