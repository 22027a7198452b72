package explore

import (
	"encoding/binary"
	"fmt"
	"maps"
	"slices"

	"ferrule/lint/network"
)

// Truth is the answer to a question about states of which some are not decided.
type Truth int8

// The answers. The zero value is Open.
const (
	Open Truth = iota // it depends on what is not decided, or is not known
	Yes               // whatever is decided next
	No                // whatever is decided next
)

// Answer says whether an allowed state is such as was asked for.
//
// Found is Yes with a state, No where every state was ruled out, and Open where the search met its
// budget or was stopped. Yes and No are exact: no state was left out and none is made up.
type Answer struct {
	Found Truth
	View  *View // an allowed state, as Views gives them; nil unless Found is Yes. A resting one if there is any
	// Vars are the variables whose positions make it so: with the others anywhere that interlocks let
	// them be, the answer is the same. What the filter pins is not among them. A follower counts as
	// itself; View.State tells its leaders.
	Vars     []int
	Fewest   bool // no state of the view's kind, resting or in transit, needs fewer variables
	Examined int  // partial states that were looked at
}

// Exact says whether the answer is known.
func (a Answer) Exact() bool { return a.Found != Open }

// Ends are two nodes that are to be joined.
type Ends struct{ A, B network.NodeID }

// Poles are the ends that join two ports on both poles.
func Poles(a, b network.Port) []Ends { return []Ends{{a.Hot, b.Hot}, {a.Ret, b.Ret}} }

// Ways are the ways of a zone that run through some of its edges, to ask about many ends of.
type Ways struct {
	s     *Space
	z     *network.Zone
	f     Filter
	plots map[*posed]*plot
	known map[string]Answer
	use   func(edge int) bool
}

// Ways prepares questions about ways through the edges of a zone that use admits; nil admits all, and is
// prepared once.
func (s *Space) Ways(z *network.Zone, f Filter, use func(edge int) bool) *Ways {
	k := viewKey{z, f.name}
	if w, ok := s.ways[k]; ok && use == nil {
		return w
	}
	w := &Ways{s: s, z: z, f: f, use: use, plots: map[*posed]*plot{}, known: map[string]Answer{}}
	if use == nil {
		if s.ways == nil {
			s.ways = map[viewKey]*Ways{}
		}
		s.ways[k] = w
	}
	return w
}

// Path looks for an allowed state of a filter in which all ends are joined by edges of the zone that
// use admits; nil admits all. Resting states and throws of the zone's switches count. No states are
// listed: the work grows with the contacts that can lie between the ends. For many ends, see Ways.
func (s *Space) Path(z *network.Zone, f Filter, use func(edge int) bool, ends ...Ends) Answer {
	return s.Ways(z, f, use).Path(ends...)
}

// Path is Space.Path for some ends. Ends between the same places, with nothing that parts them in
// between, are one question, which is answered once.
func (w *Ways) Path(ends ...Ends) Answer {
	var key []byte
	for _, q := range w.s.posed(w.z, w.f) {
		p := w.plots[q]
		if p == nil {
			p = q.plot(w.use)
			w.plots[q] = p
		}
		for _, x := range ends {
			a, b := p.ends(x)
			key = binary.AppendVarint(binary.AppendVarint(key, int64(a)), int64(b))
		}
	}
	a, ok := w.known[string(key)]
	if !ok {
		a = w.s.best(w.z, w.f, func(q *posed) Answer { return w.s.join(q, w.plots[q], ends) })
		if a.Exact() {
			w.known[string(key)] = a
		}
	}
	a.Vars = slices.Clone(a.Vars)
	return a
}

// ends are the numbers of two nodes; both 0 where they are one node that the zone does not know.
func (p *plot) ends(x Ends) (a, b int32) {
	if a, b = p.of(x.A), p.of(x.B); a < 0 && x.A == x.B && x.A != network.None {
		return 0, 0
	}
	return a, b
}

// Held narrows a filter to the states in which variables stand at positions. A throw counts only if
// both its ends fit.
func (s *Space) Held(f Filter, at map[int]int) Filter {
	out := f
	out.choices = nil
	for _, v := range slices.Sorted(maps.Keys(at)) {
		out.name += fmt.Sprintf(" %d=%d", v, at[v])
	}
	for _, c := range f.choices {
		held := maps.Clone(c)
		if held == nil {
			held = choice{}
		}
		for v, p := range at {
			only := make([]bool, len(s.Net.Vars[v].Positions))
			only[p] = c.from(s, v, p) == p
			held[v] = only
		}
		out.choices = append(out.choices, held)
	}
	return out
}

// best asks under every choice of a filter and keeps the answer that is easiest to see: at rest before
// in transit, then with the fewest variables.
func (s *Space) best(z *network.Zone, f Filter, ask func(*posed) Answer) Answer {
	out := Answer{Found: No, Fewest: true}
	for _, q := range s.posed(z, f) {
		a := Answer{Found: q.some}
		if q.some == Yes {
			a = ask(q)
		}
		a.Examined += out.Examined
		switch {
		case out.Found == Yes && (a.Found != Yes || !a.clearer(out)):
			out.Fewest = out.Fewest && a.Found != Open && (a.Found == No || a.Fewest)
			out.Examined = a.Examined
		case a.Found == Yes:
			a.Fewest = a.Fewest && out.Fewest
			out = a
		default:
			out.Examined, out.Fewest = a.Examined, out.Fewest && a.Found == No
			if a.Found == Open {
				out.Found = Open
			}
		}
	}
	s.examined += out.Examined
	s.complete = s.complete && out.Exact()
	return out
}

func (a Answer) clearer(than Answer) bool {
	if rest := a.View.Transit == nil; rest != (than.View.Transit == nil) {
		return rest
	}
	return len(a.Vars) < len(than.Vars)
}

// posed gives the zone's questions under each choice of a filter.
func (s *Space) posed(z *network.Zone, f Filter) []*posed {
	k := viewKey{z, f.name}
	if out, ok := s.asked[k]; ok {
		return out
	}
	var out []*posed
	for _, c := range f.choices {
		out = append(out, s.pose(z, c))
	}
	if s.asked == nil {
		s.asked = map[viewKey][]*posed{}
	}
	s.asked[k] = out
	return out
}

// anyState is the goal of any state at all.
type anyState struct{}

func (anyState) look(*solver) (Truth, []int32) { return Yes, nil }
func (anyState) next(*solver) int32            { return -1 }

// begin finds a whole allowed state at rest, if there is one.
func (s *Space) begin(q *posed) {
	q.first, q.some = make([]int, len(q.value)), Yes
	var tied []int
	for v, open := range q.open {
		open = open.and(q.rest[v])
		if open.empty() {
			q.some = No
			return
		}
		for !open.has(q.first[v]) {
			q.first[v]++
		}
		if s.ties(v) {
			tied = append(tied, v)
		}
	}
	if len(tied) > 0 {
		solver := newSolver(q.still(), tied, s.Stop)
		if q.some = solver.search(anyState{}); q.some == Yes {
			solver.state(q.first)
		}
	}
}

// still is the puzzle with nothing on its way.
func (p *puzzle) still() *puzzle {
	out := *p
	out.open = make([]bitset, len(p.open))
	for v := range out.open {
		out.open[v] = p.open[v].and(p.rest[v])
	}
	return &out
}

// ties says whether anything ties a variable to another, or rules out a position of it.
func (s *Space) ties(v int) bool {
	g := s.groupOf[v]
	return s.tied[g] || len(s.groups[g]) > 1
}

// involved lists variables with all that are tied to them.
func (s *Space) involved(vars map[int]bool) []int {
	groups := map[int]bool{}
	for v := range vars {
		groups[s.groupOf[v]] = true
	}
	var out []int
	for _, g := range slices.Sorted(maps.Keys(groups)) {
		out = append(out, s.groups[g]...)
	}
	return out
}
