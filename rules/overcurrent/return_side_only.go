package overcurrent

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

var returnSideOnly = &lint.Rule{
	ID:      "overcurrent/return-side-only",
	Claim:   "The fuse or switch is in the negative, where the chassis goes around it.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "overcurrent device or hand switch",
	When: "A device or a hand switch breaks the negative alone; in some state a chassis, a ground bus or a second return joins its two sides while it is open; and the positive from a " +
		"source or a converter to something that comes home there has no device, or for a switch no hand switch, of its own.",
	Why:     "The live side stays joined to the source while the chassis completes the circuit. Danger where it is the only protection, warning for a switch.",
	Numbers: "None: which wires stay joined once it is open.",
	Not: "A meter shunt, which is neither. A switch of two poles that breaks both. A disconnect in a battery's negative that nothing goes around. A short from the positive to a chassis " +
		"that is on the source's side of a device and not on the other: overcurrent/unprotected-run speaks of the positive.",
	Offer: "Move it to the positive; a device or switch of two poles.",
	Meter: "With it open, volts from the load's positive to the chassis: the battery's volts mean that it is still live.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(a)", Standing: lint.Read, Note: "devices stand in the ungrounded conductor; good practice outside the boats it binds"},
		{Ref: "46 CFR 183.380(b)", Standing: lint.Read, Note: "a grounded conductor is not opened alone; good practice from small passenger vessels"},
	},
	Remedy: true,
	Since:  "0.1",
	Run:    returnSide,
}

func returnSide(p *lint.Pass) []lint.Verdict {
	comp := sidesOf(p.Net)
	var out []lint.Verdict
	for _, x := range p.Plan.Fuses {
		out = append(out, (&negative{Pass: p, comp: comp, block: x, word: lint.Danger}).verdict())
	}
	for _, x := range p.Plan.Switches {
		if !x.Follows.Set && !x.CutIn.Set && !x.CutOut.Set && !slices.Contains([]string{"relay", "isolator", "breakaway"}, x.Kind.Value) {
			out = append(out, (&negative{Pass: p, comp: comp, block: x, word: lint.Warning}).verdict())
		}
	}
	return out
}

// negative is a device or switch with what of it breaks the negative.
type negative struct {
	*lint.Pass
	comp  []int
	block schema.Block
	word  lint.Severity
	edges []int
}

func (g *negative) verdict() lint.Verdict {
	v := lint.Verdict{Subject: g.block, Outcome: lint.Holds, Word: g.word}
	for _, e := range g.Net.EdgesOf(g.block.Header().Addr) {
		k := &g.Net.Edges[e]
		if k.Kind != network.Element && k.Kind != network.Contact {
			continue
		}
		if g.comp[k.A] < 0 {
			return v // in the positive, or in both
		}
		g.edges = append(g.edges, e)
	}
	if len(g.edges) == 0 {
		return v
	}
	complete := true
	doubt := v
	for _, s := range feeders(g.Net) {
		if s.port.Ret == network.None || g.comp[s.port.Ret] != g.comp[g.Net.Edges[g.edges[0]].A] {
			continue
		}
		views, whole := g.Space.Views(g.zone(s), g.Space.Closed(explore.All()))
		complete = complete && whole
		for _, view := range views {
			if view.Transit != nil || !s.there(view) {
				continue
			}
			switch w := g.around(view, s); {
			case w.Outcome == lint.Violated:
				return w
			case w.Outcome == lint.NotProven && doubt.Outcome == lint.Holds:
				doubt = w
			}
		}
	}
	if doubt.Outcome == lint.Holds && !complete {
		return lint.Unfinished(g.block, g.word)
	}
	return doubt
}

// zone is where a feeder and the device are.
func (g *negative) zone(s feeder) *network.Zone {
	var zones []*network.Zone
	for _, id := range []network.NodeID{s.port.Hot, g.Net.Edges[g.edges[0]].A, g.Net.Edges[g.edges[0]].B} {
		if z := g.Net.ZoneOf(id); z != nil {
			zones = append(zones, z)
		}
	}
	if len(zones) == 0 {
		return g.Net.Join(&network.Zone{ID: -1})
	}
	return g.Net.Join(zones...)
}

// around looks, in one state, for a circuit that stays closed while the device is open.
func (g *negative) around(view *explore.View, s feeder) lint.Verdict {
	v := lint.Verdict{Subject: g.block, Outcome: lint.Holds, Word: g.word}
	bare := view.Reach(s.port.Hot, func(e int, _ network.NodeID) bool { return !g.stops(e) }, nil)
	open := view.Opened(g.block.Header().Addr)
	home := open.Reach(s.port.Ret, nil, nil)
	for _, x := range g.through(view, s) {
		feed, live := bare.To(x.port.Hot), bare.Dist
		if _, ok := live[x.port.Hot]; !ok {
			continue
		}
		if len(g.Net.At(x.port.Ret)) == 0 {
			v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.block.Header().Addr, Attribute: "a drawn return"}}
			v.Message = fmt.Sprintf("%s breaks the negative of %s alone, and how %s comes home is not drawn: a chassis would go around it.", lint.Quote(g.block), lint.Quote(s.block), lint.Quote(x.block))
			continue
		}
		if _, ok := home.Dist[x.port.Ret]; !ok {
			continue
		}
		back := home.To(x.port.Ret).Back()
		v.Outcome, v.Missing = lint.Violated, nil
		v.State, v.Path = view.Witness(append(feed.Edges(), back.Edges()...), s.sources()...), view.Places(x.port.Ret, back)
		v.Related, v.Cause = []string{x.block.Header().Addr, s.block.Header().Addr}, x.block.Header().Addr
		v.Message = fmt.Sprintf("%s breaks the negative alone: with it open, %s is still joined to %s, and current comes home%s.",
			lint.Quote(g.block), lint.Quote(x.block), lint.Quote(s.block), g.by(back))
		if c := g.unsaid(open, s.port.Ret, x.port.Ret); c != "" {
			v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: c, Attribute: "isolated"}}
			v.Message = fmt.Sprintf("%s breaks the negative alone, and current goes around it unless %s is isolated, which is not written.", lint.Quote(g.block), lint.Quote(g.Plan.Block(c)))
			continue
		}
		return v
	}
	return v
}

// stops says whether an edge of the positive does what the subject is there for.
func (g *negative) stops(e int) bool {
	k := &g.Net.Edges[e]
	if g.word == lint.Danger {
		return k.Kind == network.Element
	}
	x, ok := schema.Lookup[*schema.Switch](g.Plan, k.Addr)
	return ok && k.Kind == network.Contact && !x.Follows.Set && !x.CutIn.Set && x.Kind.Value != "relay" && x.Kind.Value != "isolator"
}

// through lists what comes home through the device, and what has no return drawn: by its shortest way,
// or by any that comes to the source's side of the device without a chassis.
func (g *negative) through(view *explore.View, s feeder) []taker {
	ret := s.port.Ret
	closed := view.Reach(ret, nil, func(e int) float64 {
		if slices.Contains(g.edges, e) {
			return 0
		}
		return 1
	})
	var out []taker
	for _, x := range g.takers(view, s) {
		switch {
		case x.port.Ret == network.None:
		case len(g.Net.At(x.port.Ret)) == 0:
			out = append(out, x)
		case g.comp[x.port.Ret] != g.comp[ret] && !view.Joined(x.port.Ret, ret):
		case slices.ContainsFunc(closed.To(x.port.Ret).Edges(), func(e int) bool { return slices.Contains(g.edges, e) }), g.wired(view, x.port.Ret, ret):
			out = append(out, x)
		}
	}
	return out
}

// wired says whether a way home runs through the device that meets itself nowhere, and no chassis
// between the device and the source.
func (g *negative) wired(view *explore.View, from, to network.NodeID) bool {
	for _, e := range g.edges {
		k := &g.Net.Edges[e]
		for _, near := range []network.NodeID{k.A, k.B} {
			on := map[network.NodeID]bool{}
			ahead := view.Reach(k.Other(near), func(x int, _ network.NodeID) bool { return x != e && !g.chassis(x) }, nil).To(to)
			if ahead == nil && k.Other(near) != to {
				continue
			}
			on[k.Other(near)] = true
			for _, h := range ahead {
				on[h.To] = true
			}
			clear := func(x int, at network.NodeID) bool { return x != e && !on[g.Net.Edges[x].Other(at)] }
			if _, ok := view.Reach(from, clear, nil).Dist[near]; ok && !on[from] {
				return true
			}
		}
	}
	return false
}

func (g *negative) chassis(e int) bool {
	for _, id := range []network.NodeID{g.Net.Edges[e].A, g.Net.Edges[e].B} {
		if b, ok := schema.Lookup[*schema.Bus](g.Plan, g.Net.Nodes[id].Addr); ok && (b.Polarity.Value == "chassis" || b.Polarity.Value == "ground") {
			return true
		}
	}
	return false
}

// by names the chassis or ground bus on a way home, or the last wire of it.
func (g *negative) by(back explore.Path) string {
	last := ""
	for _, h := range back {
		for _, id := range []network.NodeID{h.From, h.To} {
			if b, ok := schema.Lookup[*schema.Bus](g.Plan, g.Net.Nodes[id].Addr); ok && (b.Polarity.Value == "chassis" || b.Polarity.Value == "ground") {
				return " by " + lint.Quote(b)
			}
		}
		if w := g.Net.Edges[h.Edge].Wire; w != nil {
			last = " by " + lint.Quote(w)
		}
	}
	return last
}

// unsaid is a converter without which nothing goes around, and of which it is not said whether it is
// isolated; "" where the way around stands without such.
func (g *negative) unsaid(open *explore.View, from, to network.NodeID) string {
	doubtful := func(e int) bool {
		x, ok := schema.Lookup[*schema.Converter](g.Plan, g.Net.Edges[e].Addr)
		return ok && g.Net.Edges[e].Kind == network.Through && !x.Isolated.Set
	}
	if _, ok := open.Reach(from, func(e int, _ network.NodeID) bool { return !doubtful(e) }, nil).Dist[to]; ok {
		return ""
	}
	for _, e := range open.Between(from, to).Edges() {
		if doubtful(e) {
			return g.Net.Edges[e].Addr
		}
	}
	return ""
}
