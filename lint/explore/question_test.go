package explore_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// listed is every state of a small plan that passes a filter.
func listed(t *rapid.T, s *explore.Space, z *network.Zone, f explore.Filter) (out []*explore.View) {
	if !s.Each(func(v *explore.View) {
		if (v.Transit == nil || slices.Contains(z.Vars, v.Transit.Var)) && len(s.Passes(f, v)) > 0 {
			out = append(out, v.Of(z))
		}
	}) {
		t.Fatal("too many states to list")
	}
	return out
}

func randomEnds(t *rapid.T, z *network.Zone) []explore.Ends {
	pick := rapid.SampledFrom(z.Known())
	out := []explore.Ends{{A: pick.Draw(t, "a"), B: pick.Draw(t, "b")}}
	if rapid.Bool().Draw(t, "both") {
		out = append(out, explore.Ends{A: pick.Draw(t, "a"), B: pick.Draw(t, "b")})
	}
	return out
}

// TestPathAgainstListing asks for ways between random nodes and compares the answer, the witness and
// how few variables it needs with a listing of all states.
func TestPathAgainstListing(t *testing.T) {
	yes, no := 0, 0
	many(t, 250, func(t *rapid.T) {
		d := draw(t)
		n, s, text := d.n, d.s, d.text
		for _, z := range append(n.Zones, n.Whole()) {
			f := d.filter(t)
			ends := randomEnds(t, z)
			var use func(int) bool
			if k := rapid.IntRange(1, 4).Draw(t, "use"); k > 1 {
				use = func(e int) bool { return e%k > 0 || len(n.Edges[e].When) > 0 }
			}
			a := s.Path(z, f, use, ends...)
			h := held{T: t, s: s, f: f, all: listed(t, s, z, f),
				is: func(v *explore.View) bool { return joins(n, z, v.Conducts, use, ends) },
				by: func(k explore.Known, vars []int) bool {
					return joins(n, z, func(e int) bool { return k.Conducts(e, vars) }, use, ends)
				}}
			h.tell = func() { t.Logf("%v\n%s", ends, text) }
			h.check(a)
			if t, rest := s.Frontier(z, explore.All(), ends...); use == nil {
				if a := s.Path(z, explore.All(), nil, ends...); t != a.Found || t == explore.Yes && rest != (a.View.Transit == nil) {
					h.fail("all at once %v, at rest %v; one after another %v", t, rest, a.Found)
				}
			}
			if a.Found == explore.Yes {
				yes++
			} else {
				no++
			}
		}
	})
	if yes == 0 || no == 0 {
		t.Errorf("%d found, %d not", yes, no)
	}
}

// joins says whether closed edges of the zone that are admitted join the ends.
func joins(n *network.Network, z *network.Zone, closed, use func(int) bool, ends []explore.Ends) bool {
	top := make([]int32, z.Size())
	for i := range top {
		top[i] = int32(i)
	}
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			if closed(e) && (use == nil || use(e)) {
				a, b := top[z.Local(n.Edges[e].A)], top[z.Local(n.Edges[e].B)]
				for i := range top {
					if top[i] == a {
						top[i] = b
					}
				}
			}
		}
	}
	for _, x := range ends {
		if top[z.Local(x.A)] != top[z.Local(x.B)] {
			return false
		}
	}
	return true
}

// held is a question with all states that it is about.
type held struct {
	*rapid.T
	s    *explore.Space
	f    explore.Filter
	all  []*explore.View
	is   func(*explore.View) bool
	by   func(explore.Known, []int) bool // the same with only some variables known
	tell func()
}

func (h held) fail(format string, args ...any) {
	h.tell()
	h.Fatalf(format, args...)
}

// check holds an answer against all states: it is right, its witness is one of them, its variables
// alone make it so and, where it says so, no fewer do in any state of its kind.
func (h held) check(a explore.Answer) {
	rest, moving := 0, 0
	for _, v := range h.all {
		if h.is(v) && v.Transit == nil {
			rest++
		} else if h.is(v) {
			moving++
		}
	}
	if !a.Exact() || (a.Found == explore.Yes) != (rest+moving > 0) {
		h.fail("found %v, listed %d and %d in transit", a.Found, rest, moving)
	}
	if a.Found != explore.Yes {
		return
	}
	if (a.View.Transit == nil) != (rest > 0) {
		h.fail("in transit %v, listed at rest %d", a.View.Transit, rest)
	}
	whole := slices.IndexFunc(h.all, func(v *explore.View) bool { return same(v, a.View, len(h.s.Net.Vars)) })
	if whole < 0 {
		h.fail("the witness is no allowed state")
	}
	if !h.is(a.View) || !h.rests(h.all[whole], a.Vars) {
		h.fail("the witness does not do it by %v", a.Vars)
	}
	if !a.Fewest || len(a.Vars) == 0 {
		return
	}
	for _, v := range h.all {
		if h.is(v) && (v.Transit == nil) == (a.View.Transit == nil) && h.fewer(v, nil, 0, len(a.Vars)-1) {
			h.fail("fewer than %v do it: %v, %v", a.Vars, say(v.State(v.Zone.Vars)), say(a.View.State(v.Zone.Vars)))
		}
	}
}

// rests says whether some variables alone make it so.
func (h held) rests(v *explore.View, vars []int) bool {
	for _, k := range h.s.Passes(h.f, v) {
		if h.by(k, vars) {
			return true
		}
	}
	return false
}

// same says whether a state of the whole plan is a witness's wherever that has a position.
func same(v, witness *explore.View, vars int) bool {
	if a, b := v.Transit, witness.Transit; (a == nil) != (b == nil) || a != nil && (a.Var != b.Var || a.Throw != b.Throw) {
		return false
	}
	for i := range vars {
		if p := witness.At(i); p >= 0 && v.At(i) != p {
			return false
		}
	}
	return true
}

// fewer says whether some number of variables of the zone, with those in have, make it so.
func (h held) fewer(v *explore.View, have []int, from, n int) bool {
	if n == 0 {
		return h.rests(v, have)
	}
	for i := from; i < len(v.Zone.Vars); i++ {
		if h.fewer(v, append(have[:len(have):len(have)], v.Zone.Vars[i]), i+1, n-1) {
			return true
		}
	}
	return false
}

// TestHardNever: of ways that would have to cross, search alone cannot show that none is there; what
// follows all values at once can. Where that grows too large too, the answer is that it is not known.
func TestHardNever(t *testing.T) {
	ask := func(size int, stop func() bool) (explore.Answer, *explore.Space) {
		n, s := build(t, crossing(nil, size))
		s.Stop = stop
		return s.Path(n.Zones[0], explore.All(), nil, explore.Ends{A: n.Node("bus.n0.pos"), B: n.Node("bus.n2.pos")}), s
	}
	if a, s := ask(41, nil); a.Found != explore.No || !s.Complete() || s.Examined() == 0 {
		t.Errorf("41 gangs: %+v", a)
	}
	if a, s := ask(221, nil); a.Exact() || a.View != nil || s.Complete() {
		t.Errorf("221 gangs: %+v, complete %v", a, s.Complete())
	}
	if a, s := ask(41, func() bool { return true }); a.Exact() || s.Complete() {
		t.Errorf("stopped: %+v", a)
	}
}

// TestOneThrowAtATime: the overlap of a selector joins its two throws, but no two selectors are on their
// way at once.
func TestOneThrowAtATime(t *testing.T) {
	p := &planText{}
	p.start(5)
	for i := range 2 {
		p.line("switch \"w%d\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  transition = \"make-before-break\"\n  position \"one\" {\n    joins = [[\"a\", \"b\"]]\n  }\n  position \"other\" {\n    joins = [[\"a\", \"c\"]]\n  }\n}", i)
		for k, to := range []int{1 + i, 3 * i, 3 + i} {
			p.wire(fmt.Sprintf("switch.w%d.%c", i, 'a'+k), bus(to))
		}
	}
	n, s := build(t, p.String())
	z := n.Whole()
	for _, c := range []struct {
		from, to string
		found    explore.Truth
		vars     int
	}{
		{"bus.n0.pos", "bus.n3.pos", explore.Yes, 1}, // over the first selector's overlap
		{"bus.n3.pos", "bus.n4.pos", explore.Yes, 1}, // over the second's
		{"bus.n0.pos", "bus.n4.pos", explore.No, 0},  // over both
	} {
		ends := explore.Ends{A: n.Node(c.from), B: n.Node(c.to)}
		a := s.Path(z, explore.All(), nil, ends)
		if a.Found != c.found || len(a.Vars) != c.vars || a.View != nil && a.View.Transit == nil {
			t.Errorf("%s to %s: %+v", c.from, c.to, a)
		}
		if got, _ := s.Frontier(z, explore.All(), ends); got != c.found {
			t.Errorf("%s to %s, all at once: %v", c.from, c.to, got)
		}
	}
}

// TestRestBeforeTransit: of the modes of a filter, one joins the ends at rest by two switches, the other
// only while a selector is thrown: the state at rest is shown.
func TestRestBeforeTransit(t *testing.T) {
	p := &planText{}
	p.start(5)
	p.line("switch \"w\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  transition = \"make-before-break\"\n  reachable_while = [mode.in, mode.out]\n  position \"one\" {\n    joins = [[\"a\", \"b\"]]\n  }\n  position \"other\" {\n    joins = [[\"a\", \"c\"]]\n  }\n}")
	p.line("switch \"x\" {\n  terminals = [\"a\", \"b\"]\n}\nswitch \"y\" {\n  terminals = [\"a\", \"b\"]\n}\nconnector \"k\" {\n  style = \"x\"\n}")
	p.line("mode \"in\" {\n  state = { connector.k = \"mated\" }\n}\nmode \"out\" {\n  state = { connector.k = \"unmated\" }\n}")
	for _, x := range [][2]string{{"switch.w.b", "bus.n0"}, {"switch.w.c", "bus.n1"}, {"bus.n0", "switch.x.a"}, {"switch.x.b", "switch.y.a"}, {"switch.y.b", "connector.k.fixed"}, {"connector.k.free", "bus.n1"}} {
		p.wire(x[0], x[1])
	}
	n, s := build(t, p.String())
	ends := explore.Ends{A: n.Node("bus.n0.pos"), B: n.Node("bus.n1.pos")}
	if a := s.Path(n.Whole(), s.Occupied(), nil, ends); a.View == nil || a.View.Transit != nil || len(a.Vars) != 2 {
		t.Errorf("in either mode: %+v", a)
	}
	out := s.Held(s.Occupied(), map[int]int{n.Var("connector.k"): 0})
	if a := s.Path(n.Whole(), out, nil, ends); a.View == nil || a.View.Transit == nil || len(a.Vars) != 1 {
		t.Errorf("with the plug out: %+v", a)
	}
}
