package schema

import (
	"fmt"
	"reflect"
	"strings"
	"sync"

	"ferrule/schema/quantity"
)

// field is one attribute of a block type, as its struct tag has it.
type field struct {
	name     string
	index    []int // of the struct field, for reflection
	typ      reflect.Type
	dims     []quantity.Dimension
	least    []quantity.Quantity
	most     []quantity.Quantity
	words    []string
	kinds    []string
	refs     []string
	only     string
	doc      string
	unset    string
	required bool
	zero     bool
	keyword  bool
}

// nested is a block inside a block.
type nested struct {
	name     string
	index    []int
	kinds    []string
	doc      string
	many     bool // any number of them, each with a name
	contents *spec
}

// spec is what a struct type says about a block's contents.
type spec struct {
	fields []*field
	blocks []*nested
	byName map[string]*field
}

// blockType is one of the language's block types.
type blockType struct {
	name      string
	doc       string
	terminals string // for the language reference
	make      func() Block
	add       func(*Plan, Block)
	contents  *spec
}

// kind makes a blockType of a struct type; add appends a block to the plan's list of its type.
func kind[T any, B interface {
	*T
	Block
}](name string, list func(*Plan) *[]B, terminals, doc string) *blockType {
	return &blockType{
		name: name, doc: doc, terminals: terminals,
		make: func() Block { return B(new(T)) },
		add: func(p *Plan, b Block) {
			if list != nil {
				l := list(p)
				*l = append(*l, b.(B))
			}
		},
		contents: newSpec(reflect.TypeFor[T](), nil),
	}
}

// vocabulary lists the block types in the order of the language reference.
type vocabulary struct {
	types  []*blockType
	byName map[string]*blockType
	names  []string
}

// words gives the vocabulary, which never changes; it is worked out on first use.
var words = sync.OnceValue(func() *vocabulary {
	v := &vocabulary{byName: map[string]*blockType{}, types: blockTypes()}
	for _, t := range v.types {
		v.byName[t.name] = t
		v.names = append(v.names, t.name)
	}
	v.names = append(v.names, "let")
	return v
})

func newSpec(t reflect.Type, at []int) *spec {
	s := &spec{byName: map[string]*field{}}
	s.collect(t, at)
	for _, f := range s.fields {
		s.byName[f.name] = f
	}
	return s
}

func (s *spec) collect(t reflect.Type, at []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := append(append([]int{}, at...), i)
		switch {
		case f.Anonymous:
			s.collect(f.Type, index)
		case f.Tag.Get("attr") != "":
			s.fields = append(s.fields, newField(f, index))
		case f.Tag.Get("block") != "":
			s.blocks = append(s.blocks, newNested(f, index))
		}
	}
}

func newField(f reflect.StructField, index []int) *field {
	out := &field{
		name: f.Tag.Get("attr"), index: index, typ: f.Type, doc: f.Tag.Get("doc"), only: f.Tag.Get("only"), unset: f.Tag.Get("unset"),
		words: strings.Fields(f.Tag.Get("oneof")), kinds: strings.Fields(f.Tag.Get("kinds")), refs: strings.Fields(f.Tag.Get("ref")),
		required: f.Tag.Get("required") != "", zero: f.Tag.Get("zero") != "", keyword: f.Tag.Get("keyword") != "",
	}
	for _, symbol := range strings.Split(f.Tag.Get("unit"), "|") {
		if d := quantity.Of(symbol); d != 0 {
			out.dims = append(out.dims, d)
		} else if symbol != "" && symbol != "size" {
			panic(fmt.Sprintf("attribute %s: no dimension has the symbol %q", out.name, symbol)) // a slip in a struct tag
		}
	}
	out.least, out.most = bounds(f, "least"), bounds(f, "most")
	return out
}

// bounds reads the figures of a struct tag, one for each dimension that has a bound.
func bounds(f reflect.StructField, tag string) []quantity.Quantity {
	var out []quantity.Quantity
	for _, text := range strings.Split(f.Tag.Get(tag), "|") {
		if text == "" {
			continue
		}
		q, err := quantity.Parse(text)
		if err != nil {
			panic(fmt.Sprintf("attribute %s: %v", f.Name, err)) // a slip in a struct tag
		}
		out = append(out, q)
	}
	return out
}

func newNested(f reflect.StructField, index []int) *nested {
	n := &nested{name: f.Tag.Get("block"), index: index, kinds: strings.Fields(f.Tag.Get("kinds")), doc: f.Tag.Get("doc")}
	t := f.Type
	if n.many = t.Kind() == reflect.Slice; n.many {
		t = t.Elem()
	}
	n.contents = newSpec(t.Elem(), nil)
	return n
}

func (s *spec) nested(name string) *nested {
	for _, n := range s.blocks {
		if n.name == name {
			return n
		}
	}
	return nil
}

// attributes lists the names that fit in one place of the language, for hints.
func (s *spec) attributes(place string) []string {
	var out []string
	for _, f := range s.fields {
		if f.only == "" || f.only == place {
			out = append(out, f.name)
		}
	}
	return out
}

func blockTypes() []*blockType {
	const none, pair = "", "`pos` and `neg`; on alternating current `line`, `neutral` and `ground`. Named alone, the block is the pair."
	return []*blockType{
		kind[System]("system", nil, none, "The installation. Exactly one per plan."),
		kind("compartment", func(p *Plan) *[]*Compartment { return &p.Compartments }, none, "A space that parts sit in and wires pass through."),
		kind("source", func(p *Plan) *[]*Source { return &p.Sources }, pair, "Anything that supplies. Figures of a battery or a solar module are per unit; `series` and `parallel` make the block a bank. Sources other than batteries come and go unless `always = true`."),
		kind("switch", func(p *Plan) *[]*Switch { return &p.Switches }, "the owner's own names, listed in `terminals`.", "A switch, relay, isolator, disconnect, transfer switch or breakaway switch. It breaks the positive only, unless `poles = 2`. A breakaway switch rests open and is pulled closed."),
		kind("fuse", func(p *Plan) *[]*Fuse { return &p.Fuses }, "`line` and `load`.", "A fuse or circuit breaker."),
		kind("converter", func(p *Plan) *[]*Converter { return &p.Converters }, "`in` and `out`, each a pair.", "Anything that moves energy from one pair of wires to another. Its negatives are joined inside unless `isolated = true`."),
		kind("bus", func(p *Plan) *[]*Bus { return &p.Buses }, "it is its own terminal: a pair, or the one node that `polarity` says.", "A bus bar, a panel or the chassis."),
		kind("connector", func(p *Plan) *[]*Connector { return &p.Connectors }, "`fixed` and `free`, each a pair; a named contact follows the side, as in `connector.tow.free.brakes`, and is one node.", "A plug and socket, or any contact that comes apart."),
		kind("load", func(p *Plan) *[]*Load { return &p.Loads }, pair, "Anything that uses power. Say one of `draw`, `power` and `resistance`."),
		kind("conductor", func(p *Plan) *[]*Conductor { return &p.Conductors }, none, "A pair of wires of one size and length, or one wire where `polarity` says so. A pair conductor cannot end on a single node."),
		kind("branch", func(p *Plan) *[]*Branch { return &p.Branches }, none, "A fused circuit in one block: a `fuse { }`, a `conductor { }` and one or more `load \"NAME\" { }`, all at the conductor's far end. `switched = true` in a load puts a hand switch before it. The parts are addressed `branch.NAME.fuse`, `branch.NAME.conductor`, `branch.NAME.load.LOAD` and `branch.NAME.switch.LOAD` (terminals `feed` and `load`, positions `off` and `on`)."),
		kind("mode", func(p *Plan) *[]*Mode { return &p.Modes }, none, "A set of states that the plan's user really uses."),
		kind("interlock", func(p *Plan) *[]*Interlock { return &p.Interlocks }, none, "Combinations of positions that cannot occur."),
		kind("waiver", func(p *Plan) *[]*Waiver { return &p.Waivers }, none, "One finding that is accepted, for a reason and a time. It stays in every report. A danger needs a `reason` and an `until`."),
		kind("house_rule", func(p *Plan) *[]*HouseRule { return &p.HouseRules }, none, "An owner's or club's own rule, in expressions."),
		kind("use", func(p *Plan) *[]*Use { return &p.Uses }, none, "Puts a kit into the plan. Its other attributes are the kit's parameters. The parts are addressed `use.NAME.TYPE.NAME`."),
		kind[Kit]("kit", nil, none, "Makes the file a kit: a shared sub-assembly, and no plan. A kit holds `parameter` blocks, `let` blocks and parts."),
		kind("parameter", func(p *Plan) *[]*Parameter { return &p.Parameters }, none, "A parameter of a kit, read as `parameter.NAME`. One without a `default` must be given."),
	}
}
