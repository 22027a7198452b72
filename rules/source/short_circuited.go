package source

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

var shortCircuited = &lint.Rule{
	ID:      "source/short-circuited",
	Claim:   "In some position the two poles of a source are joined by wire, contacts and devices alone.",
	Words:   []lint.Severity{lint.Danger},
	Harm:    true,
	Subject: "source",
	When: "In some state, or while a switch is thrown, a way leads from a source's positive to its own negative (line to neutral) through conductors, contacts and " +
		"devices, and through no load or converter; or batteries close a ring head to tail, each positive on the next one's negative.",
	Why: "All that the source can give goes into the wire: hundreds to thousands of amperes, an arc in the switch that closed it, burning insulation until a device " +
		"opens, if one is there. Danger, since somebody's hand is on the switch.",
	Numbers: "None: any way at all.",
	Not:     "A short that wires alone make in every position: the plan is then refused as it is read. A starting battery's own load, a starter, is a load and no short.",
	Offer:   "Draw the wire to the pole that is meant; a selector whose positions do not join the two poles.",
	Meter:   "With the source lifted off and everything in that position: ohms between the two leads. Near zero means stop.",
	Cites:   []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice}},
	Since:   "0.1",
	Run:     shorted,
}

func shorted(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		out = append(out, short(p, i))
	}
	return out
}

func short(p *lint.Pass, i int) lint.Verdict {
	s := &p.Net.Sources[i]
	z := p.Net.ZoneOf(s.Hot)
	if z == nil {
		z = p.Net.ZoneOf(s.Ret)
	}
	if z == nil {
		return lint.Verdict{Subject: s.Source, Outcome: lint.Holds}
	}
	if z = p.Net.Stack(z); s.Kind.Value == "battery" && ringable(p.Net, i) {
		z = p.Net.Whole()
	}
	views, complete := p.Space.Views(z, p.Space.Closed(explore.All()))
	if !complete {
		so := func(v *explore.View) bool {
			return v.HasSource(i) && (v.Joined(s.Hot, s.Ret) || len(headToTail(p, v, i)) > 0)
		}
		known := false
		views, known = p.Space.Sought(z, explore.All(), views, func(v *explore.View) bool { return !assumed(v) && so(v) })
		views, complete = p.Space.Sought(z, explore.All(), views, so)
		complete = complete && known
	}
	for _, v := range sureFirst(views) {
		if !v.HasSource(i) {
			continue
		}
		if ring := headToTail(p, v, i); len(ring) > 0 {
			return thrown(p, v, inRing(p, v, i, ring))
		}
		if v.Joined(s.Hot, s.Ret) {
			return thrown(p, v, joined(p, v, i))
		}
	}
	if !complete {
		return lint.Unfinished(s.Source, lint.Danger)
	}
	return lint.Verdict{Subject: s.Source, Outcome: lint.Holds}
}

// ringable says whether, every contact closed, a way leads from a battery head to tail through others back to it: such
// a ring may run through several zones and the returns.
func ringable(n *network.Network, first int) bool {
	seen := map[int]bool{}
	for queue := []int{first}; len(queue) > 0; queue = queue[1:] {
		near := closed(n, n.Sources[queue[0]].Hot)
		for k := range n.Sources {
			if n.Sources[k].Kind.Value != "battery" || k == queue[0] || !near[n.Sources[k].Ret] {
				continue
			}
			if k == first {
				return true
			}
			if !seen[k] {
				seen[k] = true
				queue = append(queue, k)
			}
		}
	}
	return false
}

// closed is what is joined to a node with every contact closed.
func closed(n *network.Network, from network.NodeID) map[network.NodeID]bool {
	out := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			if to := n.Edges[e].Other(queue[0]); !out[to] {
				out[to] = true
				queue = append(queue, to)
			}
		}
	}
	return out
}

// assumed says whether a state is one that a switch passes only if it makes before it breaks, which is not written.
func assumed(v *explore.View) bool { return v.Transit != nil && v.Transit.Throw.Assumed }

func sureFirst(views []*explore.View) []*explore.View {
	out := slices.Clone(views)
	slices.SortStableFunc(out, func(a, b *explore.View) int {
		switch x, y := assumed(a), assumed(b); {
		case x == y:
			return 0
		case x:
			return 1
		}
		return -1
	})
	return out
}

// thrown leaves open what happens only on the way between two positions, where it is not written how that is.
func thrown(p *lint.Pass, v *explore.View, out lint.Verdict) lint.Verdict {
	if assumed(v) {
		m := lint.Missing{Subject: p.Net.Vars[v.Transit.Var].Addr, Attribute: "transition"}
		out.Outcome, out.Missing = lint.NotProven, []lint.Missing{m}
		out.Message += fmt.Sprintf(" Whether it comes to that is not shown: %s is not written.", lint.Lacking(m, true))
	}
	return out
}

// joined tells of the way between the poles of a source.
func joined(p *lint.Pass, v *explore.View, i int) lint.Verdict {
	s := &p.Net.Sources[i]
	way := v.Between(s.Hot, s.Ret)
	out := lint.Verdict{Subject: s.Source, Outcome: lint.Violated, Word: lint.Danger, State: v.Witness(way.Edges(), i), Path: v.Places(s.Hot, way)}
	for _, h := range way {
		if addr := p.Net.Edges[h.Edge].Addr; len(out.Related) == 0 || out.Related[len(out.Related)-1] != addr {
			out.Related = append(out.Related, addr)
		}
	}
	out.Message = fmt.Sprintf("The two poles of %s are joined with no load between them", lint.Quote(s.Source))
	if len(out.State) > 0 {
		out.Message += ", with " + lint.Positions(p.Plan, out.State)
	}
	out.Message += "."
	return out
}

// headToTail lists the batteries that close a ring with one, each positive on the next one's negative:
// the poles of one of them are the wrong way round. Nil where there is no such ring.
func headToTail(p *lint.Pass, v *explore.View, first int) []int {
	from := map[int]int{first: -1}
	for queue := []int{first}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for k := range p.Net.Sources {
			o := &p.Net.Sources[k]
			if o.Kind.Value != "battery" || !v.HasSource(k) || !v.Joined(p.Net.Sources[at].Hot, o.Ret) {
				continue
			}
			if k == first && at != first {
				var ring []int
				for ; at != first; at = from[at] {
					ring = append(ring, at)
				}
				return ring
			}
			if _, seen := from[k]; !seen && !v.Joined(o.Hot, o.Ret) {
				from[k] = at
				queue = append(queue, k)
			}
		}
	}
	return nil
}

func inRing(p *lint.Pass, v *explore.View, i int, ring []int) lint.Verdict {
	s := p.Net.Sources[i].Source
	var edges []int
	on := i
	for _, k := range append(slices.Clone(ring), i) { // each positive is on the negative of the one listed before it
		edges = append(edges, v.Between(p.Net.Sources[k].Hot, p.Net.Sources[on].Ret).Edges()...)
		on = k
	}
	out := lint.Verdict{Subject: s, Outcome: lint.Violated, Word: lint.Danger, State: v.Witness(edges, append([]int{i}, ring...)...), Cause: "ring"}
	var others []string
	for _, k := range ring {
		others = append(others, lint.Quote(p.Net.Sources[k].Source))
		out.Related = append(out.Related, p.Net.Sources[k].Addr)
	}
	out.Message = fmt.Sprintf("%s and %s are joined head to tail in a ring with no load between them, as if one were the wrong way round: their volts add up in the wires alone.", lint.Quote(s), lint.And(others...))
	if len(out.State) > 0 {
		out.Message += " So they are with " + lint.Positions(p.Plan, out.State) + "."
	}
	return out
}
