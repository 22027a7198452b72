package backfeed

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

var tieCarriesHouseLoad = &lint.Rule{
	ID:      "backfeed/tie-carries-house-load",
	Claim:   "A voltage-sensing tie between two batteries carries what the house draws, and is too weak for it.",
	Words:   []lint.Severity{lint.Warning, lint.Notice},
	Subject: "voltage-sensing isolator",
	When: "In some state an isolator that senses voltage is closed and stays so, and what loads or converters draw on one of its sides runs through it from the other side: more than one of its " +
		"wires can carry, or than its contact is made for; or more than the fuse in its wire, where that is small enough for the rest.",
	Why: "A wire that was meant to top up a battery carries an inverter, out of sight, every sunny lunch: hence warning. Notice where a fuse guards wire and contact: it opens, and the tie " +
		"is gone without a word.",
	Numbers: "The current is solved in each state, with batteries alike in charge: rested full, at what their chargers hold, or empty; all at their low or all at their high resistance; with the sun and " +
		"without; what draws is on one side alone, since what draws on the other may be off. Between two like batteries the tie's share of a load is R_house / (R_house + R_tie + R_start): of 150 A with 10 and 30 mohm it is 38 A. The isolator counts as closed where a side " +
		"that it senses keeps `cut_out` or more, if something can lift one to `cut_in` while it is open; where all that draws pulls them lower, at the part of it that does not. Ampacity as for any wire.",
	Not: "Current that charges a battery, and an engine's starter. Batteries of unequal charge. Wires on which something else hangs too, beyond the tie's own. How often the isolator opens and " +
		"closes where a load pulls the voltage down. Relays that follow the engine, and isolators that do not stand between two batteries.",
	Offer:  "A dc-dc converter in place of the tie; an isolator that senses the engine's side alone; wire, contact and fuse for the current; an interlock that opens the tie while the load runs.",
	Meter:  "Clamp the tie's wire in the sun with the inverter at full load: no more than the wire and the isolator are made for.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "makers' descriptions of relays that sense both sides were read"}},
	Remedy: true,
	Folds:  []string{"conductor/ampacity", "switching/contact-rating current", "overcurrent/undersize-device"},
	Since:  "0.1",
	Run:    tiesCarry,
}

func tiesCarry(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	left := mostSolved
	for _, x := range p.Plan.Switches {
		if len(x.Follows.List) > 0 || x.Kind.Value != "isolator" && !x.CutIn.Set && !x.CutOut.Set {
			continue
		}
		var worst *lint.Verdict
		for _, e := range p.Net.EdgesOf(x.Addr) {
			if p.Net.Edges[e].Kind != network.Contact || p.Net.Edges[e].Pole != schema.Pos || !between(p.Net, e) {
				continue
			}
			if v := newTie(p, x, e, &left).verdict(); worst == nil || graver(v, *worst) {
				worst = &v
			}
		}
		if worst != nil {
			out = append(out, *worst)
		}
	}
	return out
}

// graver orders the answers for several contacts of one isolator.
func graver(a, b lint.Verdict) bool {
	rank := map[lint.Outcome]int{lint.Holds: 1, lint.NotProven: 2, lint.Violated: 3}
	return rank[a.Outcome] > rank[b.Outcome] || a.Outcome == b.Outcome && a.Word > b.Word
}

// between says whether a contact has a battery on either side, and not the same one alone.
func between(n *network.Network, contact int) bool {
	found := map[int]bool{}
	for _, end := range []network.NodeID{n.Edges[contact].A, n.Edges[contact].B} {
		near := aside(n, contact, end)
		some := false
		for i := range n.Sources {
			if s := &n.Sources[i]; s.Kind.Value == "battery" && near[s.Hot] {
				found[i], some = true, true
			}
		}
		if !some {
			return false
		}
	}
	return len(found) > 1
}

// aside is the live nodes on one side of a contact, every other switch closed.
func aside(n *network.Network, contact int, from network.NodeID) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, i := range n.At(queue[0]) {
			e := &n.Edges[i]
			if to := e.Other(queue[0]); !seen[to] && !n.Nodes[to].Return && e.Addr != n.Edges[contact].Addr {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}

// bound is what one part of a tie can carry.
type bound struct {
	block schema.Block
	n     derive.Number
	lacks []lint.Missing // without which it may be less, or is not known at all
	fuse  bool
}

// chain lists the edges that carry what a contact carries and nothing else: on either side as far as
// no third thing is joined.
func chain(n *network.Network, contact int) []int {
	ports := map[network.NodeID]bool{}
	for i := range n.Sources {
		ports[n.Sources[i].Hot] = true
	}
	for i := range n.Loads {
		ports[n.Loads[i].Hot] = true
	}
	for i := range n.Converters {
		ports[n.Converters[i].In.Hot], ports[n.Converters[i].Out.Hot] = true, true
	}
	out := []int{contact}
	for _, at := range []network.NodeID{n.Edges[contact].A, n.Edges[contact].B} {
		for from := contact; !ports[at]; {
			next := slices.DeleteFunc(slices.Clone(n.At(at)), func(i int) bool { return i == from || n.Nodes[n.Edges[i].Other(at)].Return })
			if len(next) != 1 || slices.Contains(out, next[0]) {
				break
			}
			from, at = next[0], n.Edges[next[0]].Other(at)
			out = append(out, from)
		}
	}
	return out
}

// bounds lists what the parts of a chain can carry.
func bounds(p *lint.Pass, edges []int) []bound {
	var out []bound
	rated := func(b schema.Block, q schema.Quantity, fuse bool) {
		x := bound{block: b, fuse: fuse}
		if x.lacks = []lint.Missing{{Subject: b.Header().Addr, Attribute: "rating"}}; q.Set {
			x.n, x.lacks = derive.Read("rating of "+lint.Quote(b), "Ir", q.Value, "A", b.Header().Addr, "rating", q.Range), nil
		}
		out = append(out, x)
	}
	for _, i := range edges {
		switch e := &p.Net.Edges[i]; e.Kind {
		case network.Wire:
			iz, lacks := p.Circuit.Ampacity(e.Wire)
			out = append(out, bound{block: e.Wire, n: iz, lacks: lacks})
		case network.Element:
			rated(e.Fuse, e.Fuse.Rating, true)
		case network.Contact:
			if x, ok := schema.Lookup[*schema.Switch](p.Plan, e.Addr); ok {
				rated(x, x.Rating, false)
			}
		case network.Mate:
			if x, ok := schema.Lookup[*schema.Connector](p.Plan, e.Addr); ok {
				rated(x, x.Rating, false)
			}
		}
	}
	return out
}

// weakest is the part that a current is too much for: one that a fuse lets it reach, else the fuse. lacks
// names what leaves that open.
func (t *tie) weakest(amps float64) (over *bound, lacks []lint.Missing) {
	var fuse, other *bound
	for i := range t.bounds {
		b := &t.bounds[i]
		least := &other
		if b.fuse {
			least = &fuse
		}
		if b.n.Kind != 0 && (*least == nil || b.n.Value < (*least).n.Value) {
			*least = b
		}
		if !b.fuse {
			lacks = append(lacks, b.lacks...)
		}
	}
	passes := amps
	if fuse != nil {
		passes = min(passes, fuse.n.Value)
	}
	switch {
	case other != nil && passes > other.n.Value*(1+1e-9):
		return other, nil
	case passes <= 0:
		return nil, nil
	case fuse != nil && amps > fuse.n.Value*(1+1e-9):
		return fuse, lacks
	}
	return nil, lacks
}

// verdict answers for a tie: by the most that its contact can carry at all, else by what states are
// solved to bring.
func (t *tie) verdict() lint.Verdict {
	v := lint.Verdict{Subject: t.x, Outcome: lint.Holds, Word: lint.Warning}
	w, open := t.p.Circuit.Worst(t.edge), t.p.Circuit.LacksAt(t.edge)
	over, unknown := t.weakest(w.Steady.Value)
	v.Numbers = lint.Known(open, w.Steady)
	if over == nil && len(open) == 0 && len(unknown) == 0 && w.Complete {
		return v
	}
	t.search()
	if t.most != nil && t.most.point.Found {
		v.Numbers = []derive.Number{t.most.point.AmpsIn(t.edge)}
	}
	switch c := t.worst; {
	case c != nil && c.rank() > 1:
		return t.carries(v, c)
	case c != nil:
		t.lacks = add(slices.Clone(c.lacks), t.lacks)
	case len(t.lacks) == 0 && !t.complete:
		return lint.Unfinished(t.x, lint.Warning)
	}
	if len(t.lacks) > 0 {
		v.Outcome, v.Missing = lint.NotProven, t.lacks
		v.Message = fmt.Sprintf("Whether %s carries more of what is drawn on one side than it can is not shown: %s is missing.", lint.Quote(t.x), lint.Lacking(t.lacks[0], true))
	}
	return v
}

// carries tells of a state in which a tie carries too much.
func (t *tie) carries(v lint.Verdict, c *crossing) lint.Verdict {
	n, drawn := c.point.AmpsIn(t.edge), t.drawn(c)
	v.Outcome, v.State = lint.Violated, t.state(c)
	v.Numbers = []derive.Number{
		derive.Read("volts down to which "+lint.Quote(t.x)+" stays closed", "Vout", t.x.CutOut.Value, "V", t.x.Addr, "cut_out", t.x.CutOut.Range), drawn, c.over.n, n}
	for _, b := range t.bounds {
		if a := b.block.Header().Addr; a != t.x.Addr && !slices.Contains(v.Related, a) {
			v.Related = append(v.Related, a)
		}
	}
	with, limit := "", fmt.Sprintf("%s is good for %s", lint.Quote(c.over.block), c.over.n.Text())
	if c.over.fuse {
		v.Word = lint.Notice
		limit = fmt.Sprintf("%s (%s) is too small for that: it guards the tie, and may open", lint.Quote(c.over.block), c.over.n.Text())
	}
	if len(v.State) > 0 {
		with = "With " + lint.Positions(t.p.Plan, v.State) + ", "
	}
	names := lint.Quote(c.drawers[0].block)
	if len(c.drawers) > 1 {
		names += " and others"
	}
	flow := fmt.Sprintf("carries %s of the %s that %s draw", n.Text(), drawn.Text(), names)
	if n.Value > drawn.Value*(1+1e-6) {
		flow = fmt.Sprintf("carries %s, and %s of that is what %s draw", n.Text(), drawn.Text(), names)
	}
	if len(c.drawers) == 1 {
		flow += "s"
	}
	if c.part < 1 {
		flow += fmt.Sprintf(" at %.0f %% of full load, the most that lets it stay closed", 100*c.part)
	}
	if by := t.holder(c); by != "" {
		flow = "is held closed by " + by + " and " + flow
	}
	v.Message = fmt.Sprintf("%s%s %s; %s.", with, lint.Quote(t.x), flow, limit)
	return v
}

// drawn is all that draws on the side that the tie feeds.
func (t *tie) drawn(c *crossing) derive.Number {
	var parts []derive.Number
	for _, d := range c.drawers {
		parts = append(parts, d.amps)
	}
	return derive.Compute("current drawn on the far side of "+lint.Quote(t.x), "Idrawn", c.drawn, "A", "sum of loads and converter inputs", parts...)
}
