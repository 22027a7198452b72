package schema

import (
	"cmp"
	"reflect"
	"slices"
	"strings"
)

// Plan is a decoded plan. Branches and kits are already expanded into plain blocks; everything
// that could not be decoded is missing and stands in the diagnostics that came with the plan.
type Plan struct {
	File         string
	System       *System // never nil; empty where the plan has none
	Kit          *Kit    // set in a kit file, which is no plan
	Parameters   []*Parameter
	Compartments []*Compartment
	Sources      []*Source
	Switches     []*Switch
	Fuses        []*Fuse
	Converters   []*Converter
	Buses        []*Bus
	Connectors   []*Connector
	Loads        []*Load
	Conductors   []*Conductor
	Branches     []*Branch
	Modes        []*Mode
	Interlocks   []*Interlock
	Waivers      []*Waiver
	HouseRules   []*HouseRule
	Uses         []*Use
	Links        []Link

	order []Block          // every block in the order written, expanded parts after their branch or use
	index map[string]Block // by address
}

// Block returns the block at an address, or nil.
func (p *Plan) Block(addr string) Block { return p.index[addr] }

// Blocks lists every block in the order written.
func (p *Plan) Blocks() []Block { return p.order }

// Ordered is the plan with its blocks in the order of their addresses, whatever the order in the file. Branches and kits keep
// theirs: what they hold goes with them.
func (p *Plan) Ordered() *Plan {
	out := *p
	out.Compartments, out.Sources, out.Switches, out.Fuses = arranged(p.Compartments), arranged(p.Sources), arranged(p.Switches), arranged(p.Fuses)
	out.Converters, out.Buses, out.Connectors, out.Loads = arranged(p.Converters), arranged(p.Buses), arranged(p.Connectors), arranged(p.Loads)
	out.Conductors, out.Branches, out.Modes, out.Interlocks = arranged(p.Conductors), arranged(p.Branches), arranged(p.Modes), arranged(p.Interlocks)
	out.Waivers, out.Uses, out.order = arranged(p.Waivers), arranged(p.Uses), arranged(p.order)
	out.Links = slices.SortedStableFunc(slices.Values(p.Links), func(a, b Link) int {
		return cmp.Or(strings.Compare(a.A.Addr, b.A.Addr), strings.Compare(a.A.Terminal, b.A.Terminal), strings.Compare(a.B.Addr, b.B.Addr), strings.Compare(a.B.Terminal, b.B.Terminal))
	})
	return &out
}

func arranged[T Block](list []T) []T {
	return slices.SortedStableFunc(slices.Values(list), func(a, b T) int { return strings.Compare(a.Header().Addr, b.Header().Addr) })
}

// Practices lists the bodies of practice the plan names, "general" where it names none.
func (p *Plan) Practices() []string {
	var out []string
	for _, t := range p.System.Practice.List {
		out = append(out, t.Value)
	}
	if len(out) == 0 {
		out = []string{"general"}
	}
	return out
}

// Graded reports whether the plan names the practice.
func (p *Plan) Graded(practice string) bool {
	for _, x := range p.Practices() {
		if x == practice {
			return true
		}
	}
	return false
}

// Lookup gives the block at addr as a T, such as *Fuse; the zero T and false where it is none.
func Lookup[T Block](p *Plan, addr string) (T, bool) {
	b, ok := p.index[addr].(T)
	return b, ok
}

// Link joins two terminals directly, both poles, with no conductor between: what a branch block
// implies where its parts sit on each other. Either end may name a single node. A branch gives
//
//	A its from,             B its fuse's line;
//	A its hand switch's load,  B the switched load;
//	A the far end of its conductor, B what else sits there.
//
// The far end is the terminal that the conductor's To names: the first load of the branch, or the
// feed of that load's hand switch. Parts that say on = ... have no link: their On says it.
type Link struct{ A, B Ref }

// Writes says whether a block has a value for an attribute, written in it or handed down to it; "input voltage_max" is that of a
// block within. What is no attribute of it has none.
func Writes(b Block, attr string) bool {
	v := reflect.ValueOf(b)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return false
	}
	return writes(v.Elem(), attr)
}

func writes(v reflect.Value, attr string) bool {
	outer, inner, nested := strings.Cut(attr, " ")
	for i := range v.NumField() {
		tag, f := v.Type().Field(i).Tag, v.Field(i)
		switch {
		case nested && tag.Get("block") == outer && f.Kind() == reflect.Pointer && !f.IsNil():
			return writes(f.Elem(), inner)
		case !nested && tag.Get("attr") == attr:
			return f.Field(0).Interface().(Attr).Set
		}
	}
	return false
}
