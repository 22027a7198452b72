package suggest

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"ferrule/lint"
	"ferrule/schema"
)

// page is a file of a plan with the places of its blocks.
type page struct {
	name   string
	src    []byte
	end    string                   // of its lines
	breaks []int                    // bytes behind line ends
	blocks map[int]*hclsyntax.Block // by the byte that their header begins at
	lets   map[string]*hclsyntax.Attribute
	uses   map[string]int // of the names of let blocks
}

// newPage reads native syntax; a plan in JSON has no page.
func newPage(name string, src []byte) (*page, error) {
	file, diags := hclsyntax.ParseConfig(src, name, hcl.InitialPos)
	if diags.HasErrors() {
		return nil, fmt.Errorf("%s is not written in the plan language's own syntax", name)
	}
	p := &page{name: name, src: src, end: "\n", blocks: map[int]*hclsyntax.Block{}, breaks: lineEnds(src, name), lets: map[string]*hclsyntax.Attribute{}, uses: map[string]int{}}
	if i := strings.IndexByte(string(src), '\n'); i > 0 && src[i-1] == '\r' {
		p.end = "\r\n"
	}
	var index func(hclsyntax.Blocks)
	index = func(blocks hclsyntax.Blocks) {
		for _, b := range blocks {
			p.blocks[b.TypeRange.Start.Byte] = b
			p.names(b)
			index(b.Body.Blocks)
		}
	}
	index(file.Body.(*hclsyntax.Body).Blocks)
	return p, nil
}

// names counts the uses of names from let blocks, and keeps what those blocks say.
func (p *page) names(b *hclsyntax.Block) {
	for name, a := range b.Body.Attributes {
		if b.Type == "let" {
			p.lets[name] = a
		}
		for _, v := range a.Expr.Variables() {
			if v.RootName() == "let" {
				p.uses[letName(v)]++
			}
		}
	}
}

// letName is the name that a traversal of the let block reads, or reads a part of; "" where that is not plain to see.
func letName(v hcl.Traversal) string {
	if len(v) > 1 {
		if step, ok := v[1].(hcl.TraverseAttr); ok {
			return step.Name
		}
	}
	return ""
}

// edits places changes in the text. New blocks behind one block come in the order of their changes.
func (p *page) edits(plan *schema.Plan, all []lint.Change) ([]Edit, error) {
	byBlock := map[*hclsyntax.Block][]lint.Change{}
	var order []*hclsyntax.Block
	for _, c := range all {
		b, err := p.find(plan, c.At, c.In)
		if err != nil {
			return nil, err
		}
		if byBlock[b] == nil {
			order = append(order, b)
		}
		byBlock[b] = append(byBlock[b], c)
	}
	var out []Edit
	for _, b := range order {
		es, err := p.inBlock(b, byBlock[b])
		if err != nil {
			return nil, err
		}
		out = append(out, es...)
	}
	return together(out), nil
}

// with is the text with changes placed in it.
func (p *page) with(plan *schema.Plan, all []lint.Change) ([]byte, error) {
	edits, err := p.edits(plan, all)
	if err != nil {
		return nil, err
	}
	return Apply(p.src, edits)
}

// real leaves out changes that would change nothing.
func (p *page) real(plan *schema.Plan, all []lint.Change) []lint.Change {
	var out []lint.Change
	for _, c := range all {
		if b, err := p.find(plan, c.At, c.In); err == nil && c.Attr != "" {
			a := b.Body.Attributes[c.Attr]
			if a == nil && c.Value == "" || a != nil && string(p.said(a).Range().SliceBytes(p.src)) == c.Value {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// together makes one edit of what is put in at one place.
func together(edits []Edit) []Edit {
	var out []Edit
	at := map[int]int{}
	for _, e := range edits {
		if i, ok := at[e.Start]; ok && e.Start == e.End {
			out[i].Text += e.Text
			continue
		}
		if e.Start == e.End {
			at[e.Start] = len(out)
		}
		out = append(out, e)
	}
	return out
}

// find gives the syntax of a block, or of the block within it.
func (p *page) find(plan *schema.Plan, addr, in string) (*hclsyntax.Block, error) {
	b := plan.Block(addr)
	if b == nil {
		return nil, fmt.Errorf("there is no %s", addr)
	}
	h := b.Header()
	if h.Range.Filename != p.name {
		return nil, fmt.Errorf("%s is written in %s, which other plans may use too", addr, h.Range.Filename)
	}
	x := p.blocks[h.Range.Start.Byte]
	if x == nil || x.Type != h.Type {
		return nil, fmt.Errorf("%s is not written as a block of its own", addr)
	}
	if in == "" {
		return x, nil
	}
	typ, label, _ := strings.Cut(in, " ")
	for _, inner := range x.Body.Blocks {
		if inner.Type == typ && (label == "" || slices.Contains(inner.Labels, label)) {
			return inner, nil
		}
	}
	return nil, fmt.Errorf("%s has no block %s", addr, in)
}

// inBlock places the changes of one block: each attribute on its line, what is new behind the last of
// the lines that stand together at the block's head, new blocks behind its end.
func (p *page) inBlock(b *hclsyntax.Block, all []lint.Change) ([]Edit, error) {
	var out []Edit
	var lines, behind []string
	for _, c := range all {
		a := b.Body.Attributes[c.Attr]
		switch {
		case c.Drop:
			gone := p.without(b.Range().Start.Byte, b.CloseBraceRange.End.Byte)
			if !slices.ContainsFunc(all, func(c lint.Change) bool { return c.Block != "" }) {
				gone = p.closed(gone)
			}
			out = append(out, gone)
		case c.Attr == "":
			behind = append(behind, p.end+strings.ReplaceAll(c.Block, "\n", p.end))
		case a != nil && c.Value != "":
			r := p.said(a).Range()
			out = append(out, Edit{p.name, r.Start.Byte, r.End.Byte, c.Value})
		case a != nil:
			out = append(out, p.without(a.SrcRange.Start.Byte, a.SrcRange.End.Byte))
		case c.Value != "":
			lines = append(lines, p.line(b, c))
		}
	}
	if len(lines) > 0 {
		out = append(out, p.into(b, lines)...)
	}
	if len(behind) > 0 {
		out = append(out, p.behind(b, behind))
	}
	return dropped(out, all), nil
}

// said is the expression that says an attribute's value: its own, or where that is a name from a let block which
// nothing else uses, the one that is written there.
func (p *page) said(a *hclsyntax.Attribute) hclsyntax.Expression {
	x, ok := a.Expr.(*hclsyntax.ScopeTraversalExpr)
	if !ok || x.Traversal.RootName() != "let" || len(x.Traversal) != 2 {
		return a.Expr
	}
	name := letName(x.Traversal)
	if let := p.lets[name]; let != nil && p.uses[name] == 1 && p.uses[""] == 0 && len(let.Expr.Variables()) == 0 {
		return let.Expr
	}
	return a.Expr
}

// closed takes one of two blank lines out that a block leaves when it goes.
func (p *page) closed(e Edit) Edit {
	blank := func(from, to int) bool { return from < to && strings.TrimSpace(string(p.src[from:to])) == "" }
	above := e.Start == 0 || blank(p.lineStart(e.Start-1), e.Start)
	if next := p.lineEnd(e.End); above && e.Start == p.lineStart(e.Start) && blank(e.End, next) {
		e.End = next
	}
	return e
}

// dropped leaves only the edit that takes a block out, where one does, and what goes behind it.
func dropped(out []Edit, all []lint.Change) []Edit {
	if !slices.ContainsFunc(all, func(c lint.Change) bool { return c.Drop }) {
		return out
	}
	whole := slices.MaxFunc(out, func(a, b Edit) int { return (a.End - a.Start) - (b.End - b.Start) })
	whole.Text = ""
	for _, e := range out {
		if e.Start == e.End && e.Start >= whole.End-2 {
			whole.Text = strings.TrimLeft(e.Text, "\r\n")
		}
	}
	return []Edit{whole}
}

// without takes a stretch of text out, with its line where nothing else is on it.
func (p *page) without(start, end int) Edit {
	from := p.lineStart(start)
	to := p.lineEnd(end)
	if strings.TrimSpace(string(p.src[from:start])) != "" || strings.TrimSpace(string(p.src[end:to])) != "" {
		return Edit{p.name, start, end, ""}
	}
	return Edit{p.name, from, to, ""}
}
