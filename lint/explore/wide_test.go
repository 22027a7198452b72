package explore_test

import (
	"flag"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/schema"
)

// mostListed keeps the plain enumeration of a random plan short.
const mostListed = 1 << 11

// wide draws plans with up to ten switches in which ways run through several of them.
type wide struct {
	t      *rapid.T
	b      strings.Builder
	states int
	places []string // terminals that wires may go to
	pins   []string // "address = position"
	packs  []string // removable sources
	lead   []string // what may be followed
	wires  int
}

func (w *wide) line(format string, args ...any) { fmt.Fprintf(&w.b, format+"\n", args...) }

func (w *wide) upto(most int, what string) int { return rapid.IntRange(0, most).Draw(w.t, what) }

func (w *wide) one(what string, of ...string) string { return rapid.SampledFrom(of).Draw(w.t, what) }

func widePlan(t *rapid.T) string { return (&wide{}).plan(t) }

func (w *wide) plan(t *rapid.T) string {
	w.t, w.states = t, 1
	w.line("system \"t\" {\n  practice = [\"general\"]\n}")
	w.sources()
	for i := range 1 + w.upto(3, "buses") {
		w.line("bus \"n%d\" {\n}", i)
		w.places = append(w.places, fmt.Sprintf("bus.n%d", i))
	}
	for i := range w.upto(10, "switches") {
		w.toggle(i)
	}
	w.plugs()
	for i := range 1 + w.upto(2, "loads") {
		w.line("load \"l%d\" {\n  draw = \"1 A\"\n%s}", i, w.part())
		w.wire(fmt.Sprintf("load.l%d", i))
	}
	for i := range w.upto(1, "converters") {
		w.line("converter \"c%d\" {\n  kind = \"dc-dc\"\n  isolated = %v\n}", i, rapid.Bool().Draw(t, "isolated"))
		w.wire(fmt.Sprintf("converter.c%d.in", i))
		w.wire(fmt.Sprintf("converter.c%d.out", i))
	}
	for range w.upto(3, "wires") {
		w.wire(rapid.SampledFrom(w.places).Draw(t, "from"))
	}
	w.interlocks()
	return w.b.String()
}

func (w *wide) sources() {
	for i := range 1 + w.upto(2, "batteries") {
		addr := fmt.Sprintf("source.b%d", i)
		removable := w.fits(2) && rapid.Bool().Draw(w.t, "removable")
		w.line("source \"b%d\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  removable = %v\n}", i, removable)
		if removable {
			w.packs, w.lead = append(w.packs, addr), append(w.lead, addr)
			w.free(addr, "absent", "present")
		}
		w.places = append(w.places, addr)
	}
}

// fits says whether something with some more positions may be drawn.
func (w *wide) fits(positions int) bool { return w.states*positions <= mostListed }

func (w *wide) free(addr string, positions ...string) {
	w.states *= len(positions)
	for _, p := range positions {
		w.pins = append(w.pins, fmt.Sprintf("%s = %q", addr, p))
	}
}

// part makes a block part of a removable source now and then.
func (w *wide) part() string {
	if len(w.packs) == 0 || w.upto(3, "part") > 0 {
		return ""
	}
	return "  part_of = " + w.one("pack", w.packs...) + "\n"
}

func (w *wide) toggle(i int) {
	addr := fmt.Sprintf("switch.w%d", i)
	n := 2 + w.upto(1, "more positions")
	if !w.fits(n) {
		return
	}
	w.line("switch \"w%d\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  poles = %d\n  any_order = %v\n%s", i, 1+w.upto(1, "poles"), rapid.Bool().Draw(w.t, "any"), w.part())
	if f := w.one("transition", "", "make-before-break", "break-before-make"); f != "" {
		w.line("  transition = %q", f)
	}
	var names []string
	for k := range n {
		w.line("  position \"p%d\" {\n    joins = %s\n  }", k, w.one("joins", "[]", `[["a", "b"]]`, `[["a", "c"]]`, `[["b", "c"]]`, `[["a", "b", "c"]]`))
		names = append(names, fmt.Sprintf("p%d", k))
	}
	w.line("}")
	w.free(addr, names...)
	for _, end := range []string{".a", ".b", ".c"} {
		if w.upto(2, "joined") > 0 {
			w.wire(addr + end)
		}
	}
	w.places = append(w.places, addr+".a", addr+".b", addr+".c")
}

func (w *wide) plugs() {
	for i := range w.upto(2, "plugs") {
		addr := fmt.Sprintf("connector.k%d", i)
		follows := ""
		switch {
		case len(w.lead) > 0 && rapid.Bool().Draw(w.t, "follows"):
			follows = "  follows = " + w.one("pack", w.lead...) + "\n"
			w.pins = append(w.pins, addr+" = \"mated\"", addr+" = \"unmated\"")
		case w.fits(2):
			w.free(addr, "mated", "unmated")
		default:
			return
		}
		w.line("connector \"k%d\" {\n  style = \"x\"\n%s}", i, follows)
		w.wire(addr + ".fixed")
		w.wire(addr + ".free")
		w.lead = append(w.lead, addr)
	}
	if len(w.lead) > 0 && rapid.Bool().Draw(w.t, "relay") {
		w.line("switch \"r\" {\n  kind = \"relay\"\n  terminals = [\"a\", \"b\"]\n  follows = [%s]", strings.Join(w.lead, ", "))
		w.line("  position \"rest\" {\n  }\n  position \"pulled\" {\n    joins = [[\"a\", \"b\"]]\n  }\n}")
		w.wire("switch.r.a")
		w.wire("switch.r.b")
		w.pins = append(w.pins, "switch.r = \"rest\"", "switch.r = \"pulled\"")
	}
}

func (w *wide) wire(from string) {
	to := rapid.SampledFrom(w.places).Draw(w.t, "to")
	if from == to {
		return
	}
	w.line("conductor \"c%d\" {\n  from = %s\n  to = %s\n  size = \"10 AWG\"\n  length = \"1 m\"\n%s}", w.wires, from, to, w.part())
	w.wires++
}

func (w *wide) interlocks() {
	if len(w.pins) == 0 {
		return
	}
	for i := range w.upto(4, "interlocks") {
		var pins []string
		seen := map[string]bool{}
		for range 1 + w.upto(2, "pins") {
			p := rapid.SampledFrom(w.pins).Draw(w.t, "pin")
			if addr := strings.Fields(p)[0]; !seen[addr] {
				seen[addr] = true
				pins = append(pins, p)
			}
		}
		w.line("interlock \"i%d\" {\n  never = [{ %s }]\n}", i, strings.Join(pins, ", "))
	}
}

// modes adds two modes that pin some of what has positions.
func (w *wide) modes() {
	if len(w.pins) == 0 {
		return
	}
	for i := range w.upto(2, "modes") {
		var pins []string
		seen := map[string]bool{}
		for range w.upto(3, "pins") {
			p := rapid.SampledFrom(w.pins).Draw(w.t, "pin")
			if addr := strings.Fields(p)[0]; !seen[addr] {
				seen[addr] = true
				pins = append(pins, p)
			}
		}
		w.line("mode \"m%d\" {\n  state = { %s }\n}", i, strings.Join(pins, ", "))
	}
}

// filters are all states and, by mode, those of the mode and those at its pins.
func filters(s *explore.Space, modes []*schema.Mode) []explore.Filter {
	out := []explore.Filter{explore.All(), s.Occupied()}
	for _, m := range modes {
		out = append(out, s.In(m), s.Resting(m))
	}
	return out
}

// many checks a property on more plans than is usual, unless the command line asks for more still.
func many(t *testing.T, plans int, property func(*rapid.T)) {
	f := flag.Lookup("rapid.checks")
	asked := f.Value.String()
	if n, err := strconv.Atoi(asked); err == nil && n < plans {
		if err := f.Value.Set(strconv.Itoa(plans)); err != nil {
			t.Fatal(err)
		}
		defer f.Value.Set(asked)
	}
	rapid.Check(t, property)
}
