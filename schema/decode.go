// Package schema is the plan language: its blocks, their attributes, and the reading of a file
// into a Plan in which every attribute knows where it was written.
//
// Decode never stops at the first mistake. It gives what could be read and a list of everything
// that is wrong, each with its place. It is pure: kit files come through a ReadFile that the caller
// owns. Plans come from strangers, so size, nesting and the cost of expressions are bounded before
// anything is parsed or evaluated.
package schema

import (
	"reflect"
	"slices"
	"strings"
	"unicode"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// ReadFile gives the kit file at a path that the file from names, and the name by which messages
// and later reads know it. Its error is one sentence for the plan's owner.
type ReadFile func(from, path string) (name string, src []byte, err error)

// decoder is one Decode under way.
type decoder struct {
	plan     *Plan
	problems *problems
	near     nearer
	read     ReadFile
	pending  []pending
	names    map[string][]string // by prefix and type
	broken   map[string]bool     // uses and branches whose parts could not be read
	kits     map[string]kitFile
	lets     []*value
	named    []string // of lets
	after    []func() // what waits until the references are resolved
	expanded int      // blocks out of kits
	steps    float64  // of all expressions
	bytes    float64
	waking   int
}

// Decode reads a plan. The name ends in ".json" for JSON syntax; it is the file name of all ranges.
// A text under a name without an ending, such as standard input's, is JSON if it is an object. read gives kit files; with nil a plan that uses kits has errors. The plan is never nil: what
// could not be read is missing in it, and the diagnostics say why. All of them are errors, ordered
// by place, and each has a Subject inside the file that it names.
func Decode(name string, src []byte, read ReadFile) (*Plan, hcl.Diagnostics) {
	d := &decoder{
		plan:     &Plan{File: name, System: &System{}, index: map[string]Block{}},
		problems: newProblems(), near: nearer{budget: 2e6}, read: read,
		names: map[string][]string{}, broken: map[string]bool{}, kits: map[string]kitFile{},
	}
	d.plan.System.Range = hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	blocks, ok := d.parse(name, src)
	sc := &scope{json: inJSON(name, src), files: []string{name}, values: map[string]*value{}}
	d.blocks(sc, blocks)
	d.finish(ok)
	return d.plan, d.problems.sorted(name)
}

// blocks reads the blocks of a file. Values come first: any block may read them.
func (d *decoder) blocks(sc *scope, blocks []block) {
	for _, b := range blocks {
		switch b.typ {
		case "let":
			d.let(sc, b)
		case "kit":
			d.kit(sc, b)
		}
	}
	for _, b := range blocks {
		if b.typ == "parameter" {
			d.parameter(sc, b)
		}
	}
	for _, b := range blocks {
		switch b.typ {
		case "let", "kit", "parameter":
		case "branch":
			d.branch(sc, b)
		case "use":
			d.use(sc, b)
		default:
			d.plain(sc, b)
		}
	}
}

// finish resolves the references and checks what needs the whole plan.
func (d *decoder) finish(parsed bool) {
	for i, v := range d.lets {
		if !v.reference() {
			d.wake(v, d.named[i])
		}
	}
	for i := range d.pending {
		d.resolve(&d.pending[i])
	}
	for _, f := range d.after {
		f()
	}
	for _, b := range d.plan.order {
		d.check(b)
	}
	if parsed && d.plan.System.Name == "" && d.plan.Kit == nil {
		at := d.plan.System.Range
		d.problems.add(at, "No system block", "A plan has one block such as: system \"gull\" { practice = [\"us-rv\"] }. It says what the plan is of.")
	}
}

// plain reads a block that stands for itself.
func (d *decoder) plain(sc *scope, b block) {
	t := words().byName[b.typ]
	if t == nil {
		d.problems.add(b.at, "Unknown kind of block", "There is no kind of block %q.%s", clip(b.typ), d.near.hint(b.typ, words().names))
		return
	}
	if (sc.kit || sc.use != nil) && !inKits(b.typ) {
		d.problems.add(b.at, "Block not for a kit", "A %s block belongs in a plan, not in a kit.", b.typ)
		return
	}
	x := t.make()
	h := d.header(sc.prefix, x, b)
	d.fill(sc, t.contents, h, reflect.ValueOf(x).Elem(), b.body(t.contents), contents{})
	d.record(t, x)
}

// inKits tells the block types that a kit may hold: its parts. What judges or describes the whole
// plan stays in the plan, where its owner sees it.
func inKits(typ string) bool {
	switch typ {
	case "system", "mode", "waiver", "house_rule":
		return false
	}
	return true
}

// header fills in a block's head from its type and label.
func (d *decoder) header(prefix string, x Block, b block) *Head {
	h := x.Header()
	h.Type, h.Range, h.Body = b.typ, b.header, b.whole
	if len(b.labels) == 0 {
		d.problems.add(b.header, "Name missing", "A %s block has a name: %s \"main\" { }.", b.typ, b.typ)
		return h
	}
	h.Name = b.labels[0]
	h.Addr = prefix + b.typ + "." + h.Name
	if !goodName(h.Name) {
		d.problems.add(b.where[0], "Unfit name", "%q: a block's name is made of letters, digits, \"_\" and \"-\", and does not begin with \"-\". Any other text goes into label.", clip(h.Name))
	}
	if len(b.labels) > 1 {
		d.problems.add(b.where[1], "Too many names", "A %s block has one name.", b.typ)
	}
	return h
}

const longestName = 100

func goodName(s string) bool {
	if s == "" || s[0] == '-' || len(s) > longestName {
		return false
	}
	for _, c := range s {
		if c != '_' && c != '-' && !unicode.IsLetter(c) && !unicode.IsDigit(c) {
			return false
		}
	}
	return true
}

// record adds a block to the plan, unless its address is taken.
func (d *decoder) record(t *blockType, x Block) bool {
	h := x.Header()
	if h.Addr == "" {
		return false
	}
	if s, ok := x.(*System); ok && d.plan.System.Name != "" {
		d.problems.add(s.Range, "Second system block", "A plan has one system block: the first is at %s.", place(d.plan.System.Range))
		return false
	} else if ok {
		d.plan.System = s
	}
	if first := d.plan.index[h.Addr]; first != nil {
		d.problems.add(h.Range, "Name used twice", "There is a %s already, at %s.", h.Addr, place(first.Header().Range))
		return false
	}
	d.plan.index[h.Addr] = x
	d.plan.order = append(d.plan.order, x)
	group := strings.TrimSuffix(h.Addr, "."+h.Name)
	d.names[group] = append(d.names[group], h.Name)
	t.add(d.plan, x)
	return true
}

// contents says what a body may hold beside what its struct type has.
type contents struct {
	place     string               // "branch", "input" or "output": what is marked only for there fits
	given     []string             // attributes that must not be written, since the place gives them
	attribute func(attribute) bool // takes an attribute that the type does not have
	block     func(block) bool     // takes a block that the type does not have
}

// written is an attribute that a body has.
type written struct {
	*field
	at hcl.Range // of its name
}

// fill reads a body into a struct.
func (d *decoder) fill(sc *scope, s *spec, h *Head, v reflect.Value, b body, more contents) {
	for _, f := range s.fields {
		attrOf(v, f).Range = h.Range
	}
	found := make([]written, 0, len(b.attributes))
	for _, a := range b.attributes {
		if f := d.attribute(s, a, more); f != nil {
			found = append(found, written{f, a.at})
			d.set(sc, f, h, v, a.expr)
		}
	}
	d.missing(s, h, found, more)
	d.kinds(s, v, b, found)
	d.nested(sc, s, h, v, b, more)
}

// attrOf gives the Attr with which every attribute type begins.
func attrOf(v reflect.Value, f *field) *Attr {
	return v.FieldByIndex(f.index).Field(0).Addr().Interface().(*Attr)
}

// attribute finds the field of a written attribute, nil with an error noted where there is none.
func (d *decoder) attribute(s *spec, a attribute, more contents) *field {
	f := s.byName[a.name]
	switch {
	case f == nil && more.attribute != nil && more.attribute(a):
	case f == nil && s.nested(a.name) != nil:
		d.problems.add(a.at, "Block, not attribute", "%s is a block: %s { }, without an equals sign.", a.name, a.name)
	case f == nil:
		d.problems.add(a.at, "Unknown attribute", "There is no attribute %q here.%s", clip(a.name), d.near.hint(a.name, s.attributes(more.place)))
	case f.only != "" && f.only != more.place:
		d.problems.add(a.at, "Attribute out of place", "%s is an attribute of the block %s only.%s", f.name, f.only, d.near.did(a.name, s.attributes(more.place)))
	case slices.Contains(more.given, a.name):
		d.problems.add(a.at, "Attribute out of place", "%s is not written in a %s, which sets it by itself.", f.name, more.place)
	default:
		return f
	}
	return nil
}

// set reads one expression into its field. A null leaves the attribute out.
func (d *decoder) set(sc *scope, f *field, h *Head, v reflect.Value, e hclsyntax.Expression) {
	if lit, ok := e.(*hclsyntax.LiteralValueExpr); ok && lit.Val.IsNull() {
		return
	}
	if word := hcl.ExprAsKeyword(e); f.keyword && word != "" {
		e = &hclsyntax.LiteralValueExpr{Val: cty.StringVal(word), SrcRange: e.Range()}
	}
	r := reading{decoder: d, scope: sc, field: f, owner: h, expr: e}
	r.set(v.FieldByIndex(f.index).Addr().Interface())
}

// missing reports required attributes that the body does not have.
func (d *decoder) missing(s *spec, h *Head, found []written, more contents) {
	for _, f := range s.fields {
		has := func(w written) bool { return w.field == f }
		if f.required && !slices.ContainsFunc(found, has) && !slices.Contains(more.given, f.name) {
			d.problems.add(h.Range, "Attribute missing", "A %s needs %s. %s", h.Type, f.name, f.doc)
		}
	}
}

// kinds reports what belongs to another kind of the block than the one it says it is.
func (d *decoder) kinds(s *spec, v reflect.Value, b body, found []written) {
	f := s.byName["kind"]
	if f == nil {
		return
	}
	kind, _ := v.FieldByIndex(f.index).Interface().(Text)
	if !kind.Set {
		return
	}
	check := func(name string, kinds []string, at hcl.Range) {
		if len(kinds) > 0 && !slices.Contains(kinds, kind.Value) {
			d.problems.add(at, "Attribute of another kind", "%s belongs to the kind %s: this one is of the kind %s, at %s.", name, and(kinds, "or"), kind.Value, place(kind.Range))
		}
	}
	for _, w := range found {
		check(w.name, w.kinds, w.at)
	}
	for _, x := range b.blocks {
		if n := s.nested(x.typ); n != nil {
			check(n.name, n.kinds, x.at)
		}
	}
}

// nested reads the blocks inside a block.
func (d *decoder) nested(sc *scope, s *spec, h *Head, v reflect.Value, b body, more contents) {
	first := map[string]hcl.Range{}
	for _, x := range b.blocks {
		n := s.nested(x.typ)
		if n == nil {
			if more.block == nil || !more.block(x) {
				d.strangeBlock(s, x, more)
			}
			continue
		}
		if at, ok := first[x.typ]; ok && !n.many {
			d.problems.add(x.header, "Block written twice", "There is a %s block already, at %s.", x.typ, place(at))
			continue
		}
		first[x.typ] = x.header
		d.inner(sc, n, h, v.FieldByIndex(n.index), x)
	}
}

func (d *decoder) strangeBlock(s *spec, x block, more contents) {
	if f := s.byName[x.typ]; f != nil {
		d.problems.add(x.at, "Attribute, not block", "%s is an attribute: write %s = ...", x.typ, x.typ)
		return
	}
	var known []string
	for _, n := range s.blocks {
		known = append(known, n.name)
	}
	if more.block != nil {
		known = branchParts
	}
	d.problems.add(x.at, "Unknown kind of block", "There is no block %q here.%s", clip(x.typ), d.near.hint(x.typ, known))
}

// inner reads one nested block into its pointer, or onto its list.
func (d *decoder) inner(sc *scope, n *nested, h *Head, v reflect.Value, x block) {
	t := v.Type()
	if n.many {
		t = t.Elem()
	}
	p := reflect.New(t.Elem())
	inside := &Head{Type: x.typ, Addr: h.Addr, Range: x.header}
	p.Elem().FieldByName("Range").Set(reflect.ValueOf(x.header))
	if n.many {
		if len(x.labels) != 1 || x.labels[0] == "" {
			d.problems.add(x.header, "Name missing", "A %s block has one name: %s \"on\" { }.", n.name, n.name)
		} else {
			p.Elem().FieldByName("Name").SetString(x.labels[0])
		}
		v.Set(reflect.Append(v, p))
	} else {
		if len(x.labels) > 0 {
			d.problems.add(x.where[0], "Too many names", "A %s block has no name.", n.name)
		}
		v.Set(p)
	}
	d.fill(sc, n.contents, inside, p.Elem(), x.body(n.contents), contents{place: x.typ})
}
