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
	"strings"
	"unicode"

	"github.com/hashicorp/hcl/v2"
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

	expandedBytes int
	overgrown     bool    // what kits come to was reported
	steps         float64 // of all expressions
	bytes         float64
	waking        int
}

// Decode reads a plan. The name is the file name of all ranges. It ends in ".json" for JSON syntax;
// a text under a name without an ending, such as standard input's, is JSON if it is an object. read
// gives kit files; with nil a plan that uses kits has errors.
//
// The plan is never nil: what could not be read is missing in it, and the diagnostics say why. All
// of them are errors, ordered by place, and each has a Subject inside the file that it names.
func Decode(name string, src []byte, read ReadFile) (*Plan, hcl.Diagnostics) {
	d := newDecoder(name, read)
	blocks, ok := d.parse(name, src)
	sc := &scope{json: inJSON(name, src), files: []string{name}, values: map[string]*value{}}
	d.blocks(sc, blocks)
	d.finish(ok)
	return d.plan, d.problems.sorted()
}

func newDecoder(name string, read ReadFile) *decoder {
	d := &decoder{
		plan:     &Plan{File: name, System: &System{}, index: map[string]Block{}},
		problems: newProblems(name), near: nearer{budget: 2e6}, read: read,
		names: map[string][]string{}, broken: map[string]bool{}, kits: map[string]kitFile{},
	}
	d.plan.System.Range = hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	return d
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
	if len(b.labels) == 0 || b.labels[0] == "" {
		d.problems.add(b.header, "Name missing", "A %s block has a name: %s \"main\" { }.", b.typ, b.typ)
		return h
	}
	h.Name = b.labels[0]
	h.Addr = prefix + b.typ + "." + h.Name
	if !goodName(h.Name) {
		if strings.Contains(h.Name, ".") { // its address would be read as another's
			h.Addr = ""
		}
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
