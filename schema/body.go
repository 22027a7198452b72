package schema

import (
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// body is the contents of a block in either syntax, in the order written.
type body struct {
	attributes []attribute
	blocks     []block
}

// attribute is NAME = EXPRESSION.
type attribute struct {
	name string
	at   hcl.Range // of the name
	expr hclsyntax.Expression
}

// block is TYPE "LABEL" { BODY }.
type block struct {
	typ    string
	at     hcl.Range // of the type
	labels []string
	where  []hcl.Range // of the labels
	header hcl.Range
	whole  hcl.Range
	body   func(*spec) body // reads the contents; JSON needs to know which properties are blocks
}

// native reads a body of native syntax.
func native(b *hclsyntax.Body) body {
	var out body
	if b == nil {
		return out
	}
	out.attributes = make([]attribute, 0, len(b.Attributes))
	for _, a := range b.Attributes {
		if a != nil && a.Expr != nil {
			out.attributes = append(out.attributes, attribute{a.Name, a.NameRange, a.Expr})
		}
	}
	inOrder(out.attributes)
	for _, x := range b.Blocks {
		out.blocks = append(out.blocks, nativeBlock(x))
	}
	return out
}

func inOrder(list []attribute) {
	slices.SortFunc(list, func(a, b attribute) int { return a.at.Start.Byte - b.at.Start.Byte })
}

func nativeBlock(x *hclsyntax.Block) block {
	header := x.TypeRange
	if n := len(x.LabelRanges); n > 0 {
		header = hcl.RangeBetween(header, x.LabelRanges[n-1])
	}
	return block{
		typ: x.Type, at: x.TypeRange, labels: x.Labels, where: x.LabelRanges, header: header,
		whole: hcl.RangeBetween(x.TypeRange, x.CloseBraceRange),
		body:  func(*spec) body { return native(x.Body) },
	}
}
