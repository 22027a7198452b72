package solar

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// arrayWires asks the conductors that arrays feed what these drive into a short at either end.
func arrayWires(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, z := range p.Net.Zones {
		var arrays []int
		for _, i := range z.Sources {
			if p.Net.Sources[i].Kind.Value == "solar" {
				arrays = append(arrays, i)
			}
		}
		if len(arrays) > 0 {
			out = append(out, newSunny(p, z, arrays).verdicts()...)
		}
	}
	return out
}

// mostAsked is how many currents of one zone are worked out.
const mostAsked = 4000

// sunny is a zone that arrays feed.
type sunny struct {
	p        *lint.Pass
	zone     *network.Zone
	arrays   []int
	gives    map[int]derive.Number // by array
	total    float64               // A, of all together
	lacks    []lint.Missing
	views    []*explore.View
	complete bool
	asked    int
}

func newSunny(p *lint.Pass, z *network.Zone, arrays []int) *sunny {
	s := &sunny{p: p, zone: z, arrays: arrays, gives: map[int]derive.Number{}}
	for _, i := range arrays {
		g, m := p.Circuit.SourceGives(p.Net.Sources[i].Source)
		s.gives[i], s.total, s.lacks = g.N, s.total+g.N.Value, append(s.lacks, m...)
	}
	s.views, s.complete = p.Space.Views(z, p.Space.Closed(explore.All()))
	return s
}

func (s *sunny) verdicts() []lint.Verdict {
	var out []lint.Verdict
	seen := map[string]bool{}
	for _, e := range s.zone.Edges {
		w := s.p.Net.Edges[e].Wire
		if w == nil || seen[w.Addr] || s.p.Net.Nodes[s.p.Net.Edges[e].A].Return || s.p.Net.Nodes[s.p.Net.Edges[e].B].Return {
			continue
		}
		seen[w.Addr] = true
		if v := s.first(e); v != nil {
			out = append(out, s.judge(w, e, v))
		}
	}
	return out
}

// first is a state in which an array is joined to a wire, nil where none is.
func (s *sunny) first(e int) *explore.View {
	for _, v := range s.views {
		if v.Conducts(e) && slices.ContainsFunc(s.arrays, func(i int) bool { return v.HasSource(i) && v.Joined(s.p.Net.Sources[i].Hot, s.p.Net.Edges[e].A) }) {
			return v
		}
	}
	return nil
}

// judge holds what arrays drive into a wire against its ampacity. What all arrays give together bounds
// it, so that only a wire that carries less is looked at state by state.
func (s *sunny) judge(w *schema.Conductor, e int, at *explore.View) lint.Verdict {
	v := lint.Verdict{Subject: w, Outcome: lint.Holds, Word: lint.Warning}
	iz, lacks := s.p.Circuit.Ampacity(w)
	amps, complete := s.total, true
	if iz.Kind != 0 && s.total > iz.Value {
		amps, at, complete = s.worst(e, at)
	}
	n := derive.Compute("most that arrays drive into "+lint.Quote(w), "Isun", amps, "A", "sum of the arrays that reach one end, no more than devices let pass", s.from(at)...)
	missing := slices.Concat(s.lacks, lacks)
	v.Numbers = lint.Known(missing, n, iz)
	switch {
	case iz.Kind != 0 && amps > iz.Value:
		v.Outcome, v.State = lint.Violated, at.Witness([]int{e}, s.there(at)...)
		for _, i := range s.there(at) {
			v.Related = append(v.Related, s.p.Net.Sources[i].Addr)
		}
		v.Message = fmt.Sprintf("Arrays drive up to %s into %s, which carries %s, and in a short nothing stops them while the sun shines.", n.Text(), lint.Quote(w), iz.Text())
	case len(missing) > 0:
		v.Outcome, v.Missing = lint.NotProven, missing
		v.Message = fmt.Sprintf("Whether %s carries what arrays drive into a short is not known: %s is missing.", lint.Quote(w), lint.Lacking(missing[0], true))
	case !s.complete || !complete:
		return lint.Unfinished(w, lint.Warning)
	}
	return v
}

// worst is the most that arrays drive into a wire from one of its ends, over all states.
func (s *sunny) worst(e int, at *explore.View) (best float64, state *explore.View, complete bool) {
	state = at
	x := &s.p.Net.Edges[e]
	for _, v := range s.views {
		if !v.Conducts(e) {
			continue
		}
		if s.asked += 2; s.asked > mostAsked {
			return best, state, false
		}
		amps := map[network.NodeID]float64{}
		for _, i := range s.there(v) {
			amps[s.p.Net.Sources[i].Hot] += s.gives[i].Value
		}
		for _, end := range []network.NodeID{x.A, x.B} {
			if a := s.p.Circuit.Through(v, end, e, amps); a > best {
				best, state = a, v
			}
		}
	}
	return best, state, true
}

// there lists the arrays that are there and not shorted.
func (s *sunny) there(v *explore.View) []int {
	var out []int
	for _, i := range s.arrays {
		if open(s.p.Net, v, i) {
			out = append(out, i)
		}
	}
	return out
}

func (s *sunny) from(v *explore.View) []derive.Number {
	var out []derive.Number
	for _, i := range s.there(v) {
		if s.gives[i].Kind != 0 {
			out = append(out, s.gives[i])
		}
	}
	return out
}
