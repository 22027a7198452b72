package overcurrent

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var polarizedBreaker = &lint.Rule{
	ID:      "overcurrent/polarized-breaker",
	Claim:   "A direction-marked DC breaker carries current both ways.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "overcurrent device",
	When: "A device with `polarized = true` has on each side, in the same state or in different ones, something that can push more than 5 % of its rating through it: a source, a converter's " +
		"output, an input that lets current back; or a way around it joins its two sides. A DC breaker that stands so and of which nothing is said is not proven.",
	Why:     "It carries normally, then steers the arc the wrong way on the day of the fault: it burns instead of opening.",
	Numbers: "5 % of the rating. A battery pushes without limit; an array 1.25 x its short-circuit current; a converter its `current_max`.",
	Not: "The circuit from a panel to a controller that blocks reverse current, where one array is all that feeds it. A breaker in the negative alone. Which way round a breaker that " +
		"carries one way is fitted. Converters of kind charger, load-center, inverter and diode are taken to block reverse current.",
	Offer: "A breaker that is not polarized; a class T fuse and a switch.",
	Meter: "Read the + or line marks; the sign on a clamp meter while it charges, then while it discharges.",
	Cites: []lint.Citation{
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a polarized breaker stands only where current runs one way; explanations of the arc were read"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.NotPolarized, remedy.StrongerDevice},
	Since:  "0.1",
	Run:    polarized,
}

const fewPercent = 0.05 // of a rating, below which a reverse current is no matter

func polarized(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, x := range p.Plan.Fuses {
		out = append(out, bothWays(p, x))
	}
	return out
}

// shover is what pushes current into one side of a device, in one state.
type shover struct {
	view   *explore.View
	supply explore.Supply
	block  schema.Block
	lacks  []lint.Missing
	amps   derive.Number
}

func bothWays(p *lint.Pass, x *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Warning}
	maybe := !x.Polarized.Set && (x.Kind.Value == "breaker" || !x.Kind.Set)
	if !x.Polarized.True() && !maybe {
		return v
	}
	for _, e := range p.Net.EdgesOf(x.Addr) {
		z := p.Net.ZoneOf(p.Net.Edges[e].A)
		if p.Net.Edges[e].Kind != network.Element || z == nil || z.AC || !pushable(p.Net, e) {
			continue
		}
		sides, around, complete := shovers(p, x, e, z)
		switch line, load := sides[0], sides[1]; {
		case line != nil && load != nil:
			return twoWay(p, x, *line, *load, around)
		case !complete:
			return lint.Unfinished(x, lint.Warning)
		}
	}
	return v
}

// pushable says whether, with everything closed, anything on either side could push.
func pushable(n *network.Network, e int) bool {
	for _, start := range []network.NodeID{n.Edges[e].A, n.Edges[e].B} {
		seen := map[network.NodeID]bool{start: true}
		for queue := []network.NodeID{start}; len(queue) > 0; queue = queue[1:] {
			for _, k := range n.At(queue[0]) {
				if to := n.Edges[k].Other(queue[0]); k != e && !seen[to] && !n.Nodes[to].Return {
					seen[to] = true
					queue = append(queue, to)
				}
			}
		}
		if !pushes(n, seen) {
			return false
		}
	}
	return true
}

func pushes(n *network.Network, seen map[network.NodeID]bool) bool {
	for i := range n.Sources {
		if seen[n.Sources[i].Hot] {
			return true
		}
	}
	for i := range n.Converters {
		if c := &n.Converters[i]; seen[c.Out.Hot] || seen[c.In.Hot] && !blocks(c) {
			return true
		}
	}
	return false
}

// blocks says whether no current comes back out of a converter's input, or none is taken to.
func blocks(c *network.Converter) bool { return !returnsCurrent(c) && !mayReturn(c) }

func returnsCurrent(c *network.Converter) bool { return c.BlocksReverse.False() }

func mayReturn(c *network.Converter) bool {
	return !c.BlocksReverse.True() && (returnsCurrent(c) || c.Kind.Value == "dc-dc" || c.Kind.Value == "mppt")
}

// shovers gives, for the line and the load side, what pushes from there in some state: what is certain
// before what is in doubt. around tells a state in which the two sides are joined another way.
func shovers(p *lint.Pass, x *schema.Fuse, e int, z *network.Zone) (sides [2]*shover, around *explore.View, complete bool) {
	k := &p.Net.Edges[e]
	views, complete := p.Space.Views(feeding(p.Net, z), p.Space.About(p.Space.Closed(explore.All()), k.A, k.B))
	for _, v := range views {
		if !v.Conducts(e) {
			continue
		}
		open := v.Opened(x.Addr)
		sure, may := open.Live(returnsCurrent, nil), open.Live(mayReturn, nil)
		for i, id := range []network.NodeID{k.A, k.B} {
			for _, live := range []*explore.Energy{sure, may} {
				for _, s := range live.At(id) {
					if q := shoverOf(p, x, v, open, s, id); q != nil && (sides[i] == nil || len(q.lacks) < len(sides[i].lacks)) {
						sides[i] = q
					}
				}
			}
		}
		if around == nil && open.Joined(k.A, k.B) && len(sure.At(k.A)) > 0 {
			around = v
		}
	}
	return sides, around, complete
}

// feeding is a zone with all that can feed it, backwards through converters too.
func feeding(n *network.Network, z *network.Zone) *network.Zone {
	zones, in := []*network.Zone{z}, map[*network.Zone]bool{z: true}
	add := func(id network.NodeID) {
		if k := n.ZoneOf(id); k != nil && !in[k] {
			in[k] = true
			zones = append(zones, k)
		}
	}
	for i := 0; i < len(zones); i++ {
		for _, c := range zones[i].Outputs {
			add(n.Converters[c].In.Hot)
		}
		for _, c := range zones[i].Inputs {
			if x := &n.Converters[c]; !blocks(x) {
				add(x.Out.Hot)
			}
		}
	}
	return n.Join(zones...)
}

// shoverOf is a supply that pushes enough to matter; nil where it does not.
func shoverOf(p *lint.Pass, x *schema.Fuse, v, open *explore.View, s explore.Supply, at network.NodeID) *shover {
	q := &shover{view: v, supply: s}
	if s.Source >= 0 {
		b := p.Net.Sources[s.Source].Source
		g, lacks := p.Circuit.SourceGives(b)
		q.block, q.amps, q.lacks = b, g.N, lacks
		if b.Kind.Value == "battery" {
			q.lacks, q.amps = nil, derive.Number{}
		}
	} else {
		c := &p.Net.Converters[s.Converter]
		q.block = c.Converter
		switch {
		case !open.Joined(c.Out.Hot, at):
			if !c.BlocksReverse.Set {
				q.lacks = []lint.Missing{{Subject: c.Addr, Attribute: "blocks_reverse"}}
			}
		default:
			g, lacks := p.Circuit.OutputGives(c.Converter)
			q.amps, q.lacks = g.N, lacks
		}
	}
	if q.amps.Kind != 0 && len(q.lacks) == 0 && x.Rating.Set && q.amps.Value <= fewPercent*x.Rating.Value {
		return nil
	}
	return q
}

func twoWay(p *lint.Pass, x *schema.Fuse, line, load shover, around *explore.View) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Violated, Word: lint.Warning, Related: []string{line.block.Header().Addr, load.block.Header().Addr}}
	v.Missing = append(v.Missing, line.lacks...)
	v.Missing = append(v.Missing, load.lacks...)
	v.Numbers = lint.Known(v.Missing, line.amps, load.amps)
	v.State = wayInto(p, x, load)
	said := "is marked for one direction"
	if !x.Polarized.Set {
		v.Missing = append([]lint.Missing{{Subject: x.Addr, Attribute: "polarized"}}, v.Missing...)
		if !x.Kind.Set {
			v.Missing = append([]lint.Missing{{Subject: x.Addr, Attribute: "kind"}}, v.Missing...)
		}
		said = "may be marked for one direction"
	}
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
	}
	v.Message = fmt.Sprintf("%s %s, and %s can push current through it from its line side and %s from its load side.", lint.Quote(x), said, lint.Quote(line.block), lint.Quote(load.block))
	if line.block == load.block && around != nil {
		v.Message = fmt.Sprintf("%s %s, and a way around it joins its two sides: %s can push current through it from either.", lint.Quote(x), said, lint.Quote(line.block))
	}
	if len(v.Missing) > 0 {
		v.Message += " Not written: " + lint.Lacking(v.Missing[0], true) + "."
	}
	return v
}

// wayInto is the state in which something pushes into the load side.
func wayInto(p *lint.Pass, x *schema.Fuse, q shover) []lint.Position {
	open := q.view.Opened(x.Addr)
	load := p.Net.Edges[p.Net.EdgesOf(x.Addr)[0]].B
	for _, e := range p.Net.EdgesOf(x.Addr) {
		if p.Net.Edges[e].Kind == network.Element {
			load = p.Net.Edges[e].B
		}
	}
	reach := open.Reach(load, nil, nil)
	if q.supply.Source >= 0 {
		return q.view.Witness(reach.To(p.Net.Sources[q.supply.Source].Hot).Edges(), q.supply.Source)
	}
	c := &p.Net.Converters[q.supply.Converter]
	side, other := c.Out, c.In
	if !open.Joined(side.Hot, load) {
		side, other = c.In, c.Out
	}
	edges, sources := open.Live(mayReturn, nil).Way(other)
	return q.view.Witness(append(reach.To(side.Hot).Edges(), edges...), sources...)
}
