package states

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Amps asks for the current in a conductor, or through any part that current runs through. A part
// with several contacts is asked for that which carries most.
func (s *Survey) Amps(addr string, hint Hint) (*Question, error) {
	q := &Question{what: "amps", of: addr, unit: "A"}
	side := ""
	if s.Plan.Block(addr) == nil {
		for _, end := range []string{"in", "out"} {
			if b := strings.TrimSuffix(addr, "."+end); b != addr {
				if _, ok := schema.Lookup[*schema.Converter](s.Plan, b); ok {
					addr, side = b, end
				}
			}
		}
	}
	b := s.Plan.Block(addr)
	if b == nil {
		return nil, s.noPart(addr, hint)
	}
	q.name = lint.Quote(b) + ", " + q.of
	if edges := s.poled(addr); len(edges) > 0 {
		s.through(q, edges)
		return q, nil
	}
	if s.port(q, addr, side) {
		return q, nil
	}
	if _, ok := b.(*schema.Converter); ok {
		return nil, fmt.Errorf("%s has an input and an output; which: %s.in or %s.out?", addr, addr, addr)
	}
	return nil, fmt.Errorf("no current runs through %s as such; ask for a conductor, fuse, switch, connector, load, source, or a converter's in or out", addr)
}

func (s *Survey) noPart(word string, hint Hint) error {
	var known []string
	for _, b := range s.Plan.Blocks() {
		switch b.(type) {
		case *schema.Conductor, *schema.Fuse, *schema.Switch, *schema.Connector, *schema.Load, *schema.Source:
			known = append(known, b.Header().Addr)
		case *schema.Converter:
			known = append(known, b.Header().Addr+".in", b.Header().Addr+".out")
		}
	}
	return fmt.Errorf("there is no part %q%s", word, orHolding(word, known, hint))
}

// poled lists a part's edges of its first pole; those of its second where it has no first.
func (s *Survey) poled(addr string) []int {
	var hot, other []int
	for _, e := range s.Net.EdgesOf(addr) {
		switch x := &s.Net.Edges[e]; {
		case x.Kind == network.Through:
		case x.Pole == schema.Neg || x.Pole == schema.Neutral || x.Pole == schema.Ground:
			other = append(other, e)
		default:
			hot = append(hot, e)
		}
	}
	if len(hot) > 0 {
		return hot
	}
	return other
}

// through asks for the largest current among edges.
func (s *Survey) through(q *Question, edges []int) {
	q.at = s.Net.Edges[edges[0]].A
	most := func(p *circuit.Point) (edge int, amps float64) {
		edge = edges[0]
		for _, e := range edges {
			if a := math.Abs(p.Amps(e)); a > amps {
				edge, amps = e, a
			}
		}
		return edge, amps
	}
	q.read = func(x *solved, k int) (float64, bool) {
		live := slices.ContainsFunc(edges, func(e int) bool { return x.energised(s.Net.Edges[e].A) || x.energised(s.Net.Edges[e].B) })
		_, a := most(x.points[k])
		return a, live
	}
	q.number = func(p *circuit.Point) derive.Number { e, _ := most(p); return p.AmpsIn(e) }
	q.way = func(p *circuit.Point) string {
		e, a := most(p)
		x := &s.Net.Edges[e]
		from, to := s.Net.Nodes[x.A].Name(), s.Net.Nodes[x.B].Name()
		switch {
		case a < nothing:
			return "nothing runs"
		case p.Amps(e) < 0:
			from, to = to, from
		}
		return "from " + from + " to " + to
	}
}

// flow is the current of a part at its port.
type flow struct {
	at     network.NodeID
	amps   func(*circuit.Point) float64
	number func(*circuit.Point) derive.Number
	there  func(*solved) bool
	words  [2]string // for a current that is above zero, and for one below
}

// port asks for what a load or an input takes, or a source or an output gives.
func (s *Survey) port(q *Question, addr, side string) bool {
	f, ok := s.flow(addr)
	if side != "" {
		f, ok = s.sideFlow(addr, side)
	}
	if !ok {
		return false
	}
	q.at, q.number = f.at, f.number
	q.read = func(x *solved, k int) (float64, bool) { return math.Abs(f.amps(x.points[k])), f.there(x) }
	q.way = func(p *circuit.Point) string { return direction(f.amps(p), f.words) }
	return true
}

// flow finds a load or a source.
func (s *Survey) flow(addr string) (flow, bool) {
	for i := range s.Net.Loads {
		if l := &s.Net.Loads[i]; l.Addr == addr {
			return flow{l.Hot, func(p *circuit.Point) float64 { return p.LoadAmps(i) }, func(p *circuit.Point) derive.Number { return p.LoadNumber(i) },
				func(x *solved) bool { return x.view.HasLoad(i) && x.live.Feeds(l.Port) }, [2]string{"taken", "given back"}}, true
		}
	}
	for i := range s.Net.Sources {
		if f := &s.Net.Sources[i]; f.Addr == addr {
			return flow{f.Hot, func(p *circuit.Point) float64 { return p.SourceAmps(i) }, func(p *circuit.Point) derive.Number { return p.SourceNumber(i) },
				func(x *solved) bool { return x.view.HasSource(i) }, [2]string{"given", "taken"}}, true
		}
	}
	return flow{}, false
}

// sideFlow finds the input or the output of a converter.
func (s *Survey) sideFlow(addr, side string) (flow, bool) {
	for i := range s.Net.Converters {
		c := &s.Net.Converters[i]
		if c.Addr != addr {
			continue
		}
		there := func(x *solved) bool { return x.view.HasConverter(i) && x.live.Feeds(c.In) }
		if side == "in" {
			return flow{c.In.Hot, func(p *circuit.Point) float64 { return p.InAmps(i) }, func(p *circuit.Point) derive.Number { return p.InNumber(i) }, there, [2]string{"taken", "given back"}}, true
		}
		return flow{c.Out.Hot, func(p *circuit.Point) float64 { return p.OutAmps(i) }, func(p *circuit.Point) derive.Number { return p.OutNumber(i) }, there, [2]string{"given", "taken"}}, true
	}
	return flow{}, false
}

func direction(amps float64, words [2]string) string {
	switch {
	case math.Abs(amps) < nothing:
		return "nothing runs"
	case amps < 0:
		return words[1]
	}
	return words[0]
}
