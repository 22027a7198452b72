package suggest

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"ferrule/lint"
)

func (p *page) lineStart(at int) int { return strings.LastIndexByte(string(p.src[:at]), '\n') + 1 }

// lineEnd is the byte behind the line end that follows: not one in a comment or text that goes on in the next line.
func (p *page) lineEnd(at int) int {
	i, _ := slices.BinarySearch(p.breaks, at+1)
	if i < len(p.breaks) {
		return p.breaks[i]
	}
	return len(p.src)
}

// lineEnds lists the bytes behind line ends of the language, ascending.
func lineEnds(src []byte, name string) []int {
	var out []int
	tokens, _ := hclsyntax.LexConfig(src, name, hcl.InitialPos)
	for _, t := range tokens {
		if end := t.Range.End.Byte; t.Type == hclsyntax.TokenNewline || t.Type == hclsyntax.TokenComment && end > 0 && src[end-1] == '\n' {
			out = append(out, end)
		}
	}
	return out
}

// anchor is the attribute behind which new ones go: the last of those at the block's head that follow
// one another line by line. nil where the block is written on one line, or has none.
func (p *page) anchor(b *hclsyntax.Block) *hclsyntax.Attribute {
	var all []*hclsyntax.Attribute
	for _, a := range b.Body.Attributes {
		all = append(all, a)
	}
	slices.SortFunc(all, func(x, y *hclsyntax.Attribute) int { return x.SrcRange.Start.Byte - y.SrcRange.Start.Byte })
	var last *hclsyntax.Attribute
	for _, a := range all {
		if a.SrcRange.Start.Line == b.OpenBraceRange.Start.Line {
			return nil
		}
		if last != nil && a.SrcRange.Start.Line > last.SrcRange.End.Line+1 {
			break
		}
		last = a
	}
	return last
}

// line writes an attribute as its neighbours are written: the same indent, and the sign below theirs
// where the name is short enough.
func (p *page) line(b *hclsyntax.Block, c lint.Change) string {
	a := p.anchor(b)
	if a == nil {
		return p.indent(b) + c.Attr + " = " + c.Value + p.end
	}
	from := p.lineStart(a.SrcRange.Start.Byte)
	indent := string(p.src[from:a.SrcRange.Start.Byte])
	column := a.EqualsRange.Start.Byte - a.SrcRange.Start.Byte
	return indent + c.Attr + strings.Repeat(" ", max(column-len(c.Attr), 1)) + "= " + c.Value + p.end
}

// indent is that of the lines in a block that has none.
func (p *page) indent(b *hclsyntax.Block) string {
	from := p.lineStart(b.TypeRange.Start.Byte)
	return string(p.src[from:b.TypeRange.Start.Byte]) + "  "
}

// into puts lines into a block. One that is written on one line is opened for them.
func (p *page) into(b *hclsyntax.Block, lines []string) []Edit {
	text := strings.Join(lines, "")
	if a := p.anchor(b); a != nil {
		at := p.lineEnd(a.SrcRange.End.Byte)
		return []Edit{{p.name, at, at, text}}
	}
	open, close := b.OpenBraceRange.End.Byte, b.CloseBraceRange.Start.Byte
	if b.OpenBraceRange.Start.Line != b.CloseBraceRange.Start.Line {
		at := p.lineEnd(open)
		return []Edit{{p.name, at, at, text}}
	}
	inside, outside := string(p.src[open:close]), strings.TrimSuffix(p.indent(b), "  ")
	if strings.TrimSpace(inside) == "" {
		return []Edit{{p.name, open, close, p.end + text + outside}}
	}
	from, to := open+len(inside)-len(strings.TrimLeft(inside, " \t")), close-(len(inside)-len(strings.TrimRight(inside, " \t")))
	return []Edit{{p.name, open, from, p.end + p.indent(b)}, {p.name, to, close, p.end + text + outside}}
}

// behind puts new blocks behind a block, or behind the block that it is part of: only plain blocks stand
// at the top of a plan.
func (p *page) behind(b *hclsyntax.Block, texts []string) Edit {
	end := b.CloseBraceRange.End.Byte
	for _, x := range p.blocks {
		if x.TypeRange.Start.Byte < b.TypeRange.Start.Byte && x.CloseBraceRange.End.Byte > end {
			end = x.CloseBraceRange.End.Byte
		}
	}
	at := p.lineEnd(end)
	text := strings.Join(texts, "")
	if at > 0 && p.src[at-1] != '\n' {
		text = p.end + strings.TrimSuffix(text, p.end)
	}
	return Edit{p.name, at, at, text}
}
