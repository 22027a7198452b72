package remedy

import (
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
)

// mostTaps bounds how far upstream other feeds are proposed.
const mostTaps = 8

// tap is where a circuit takes its power: the attribute that says so.
type tap struct {
	of   schema.Block
	attr string // "on", "from", "to"
	at   schema.Ref
}

// OtherFeed offers other places for the taps upstream of a load, the nearest tap first: batteries
// themselves and buses.
func OtherFeed(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, l := range head(about[*schema.Load](p, v)) {
		out = append(out, moved(p, taps(p, true, l.Addr))...)
	}
	return out
}

// OtherEnd offers other places for the output of a converter or source: upstream of the switch that its
// power now comes in behind.
func OtherEnd(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Converter](p, v) {
		out = append(out, moved(p, taps(p, false, c.Addr+".out"))...)
	}
	for _, s := range about[*schema.Source](p, v) {
		out = append(out, moved(p, taps(p, false, s.Addr))...)
	}
	return out
}

func moved(p *lint.Pass, taps []tap) []lint.Proposal {
	var out []lint.Proposal
	for _, t := range taps {
		for _, to := range feeds(p) {
			addr := to.Header().Addr
			if addr == t.at.Addr || otherEnd(t) == addr || t.attr == "on" && t.at.Pole != schema.WholePair || !likeVolts(p, t.at.Addr, addr) {
				continue
			}
			out = append(append(out, seated(p, t, to)...), guardedAt(p, t, to)...)
			out = append(out, lint.Proposal{
				Do:      sentence("Feed %s from %s.", lint.Quote(t.of), lint.Quote(to)),
				Changes: []lint.Change{lint.Set(t.of.Header().Addr, t.attr, addr+pole(t.at))},
				Sources: []string{practice},
				Part:    newWay,
			})
		}
	}
	return out
}

// guardedAt puts a device right on the new feed, for a wire that has none at its end.
func guardedAt(p *lint.Pass, t tap, to schema.Block) []lint.Proposal {
	c, ok := t.of.(*schema.Conductor)
	if _, fused := p.Plan.Block(otherEnd(t)).(*schema.Fuse); !ok || fused || composed(c) || t.at.Pole != schema.WholePair {
		return nil
	}
	at := t.at
	at.Addr, at.Terminal, at.Contact = to.Header().Addr, "", ""
	var out []lint.Proposal
	for _, a := range head(fitting(p, c)) {
		one := seat(p, tap{c, t.attr, at}, a, classT())
		one.Do = sentence("Feed %s from %s, by a device of %s right on it.", lint.Quote(c), lint.Quote(to), current(a.V))
		one.Part += " " + newWay
		out = append(out, one)
	}
	return out
}

// likeVolts says whether two parts are of one nominal voltage, as far as the plan says: one 48 V battery is no feed
// for what hangs on 12 V.
func likeVolts(p *lint.Pass, a, b string) bool {
	volts := func(addr string) float64 {
		for i, n := range p.Net.Nodes {
			if v, ok := p.Circuit.Nominal(network.NodeID(i)); n.Addr == addr && !n.Return && ok {
				return v.Value
			}
		}
		return 0
	}
	x, y := volts(a), volts(b)
	return x == 0 || y == 0 || max(x, y) <= sameVolts*min(x, y)
}

// sameVolts is how far apart two nominal voltages of one class may be: 12 V of lead, 14.8 V of lithium. Common practice.
const sameVolts = 1.3

// otherEnd is the part at the other end of a tapped wire, "" where the tap is of no wire.
func otherEnd(t tap) string {
	c, ok := t.of.(*schema.Conductor)
	switch {
	case !ok:
		return ""
	case t.attr == "from":
		return c.To.Addr
	}
	return c.From.Addr
}

const newWay = "The lengths in the plan are those of the old way: measure the new one and lint again."

// seated puts a device right on the new feed, without the wire that led to it.
func seated(p *lint.Pass, t tap, to schema.Block) []lint.Proposal {
	c, ok := t.of.(*schema.Conductor)
	if !ok {
		return nil
	}
	far := c.To
	if t.attr == "to" {
		far = c.From
	}
	f, ok := schema.Lookup[*schema.Fuse](p.Plan, far.Addr)
	if !ok || far.Terminal != "line" || f.On.Set || far.Pole != schema.WholePair {
		return nil
	}
	return []lint.Proposal{{
		Do:      sentence("Put %s right on %s, and take %s away.", lint.Quote(f), lint.Quote(to), lint.Quote(c)),
		Changes: []lint.Change{lint.Set(f.Addr, "on", to.Header().Addr), {At: c.Addr, Drop: true}},
		Sources: []string{practice},
		Part:    newWay,
	}}
}

// feeds lists what a circuit can sit on: batteries that stay aboard, and buses that are pairs.
func feeds(p *lint.Pass) []schema.Block {
	var out []schema.Block
	for _, b := range p.Plan.Buses {
		if !alternating(p, b.Addr) && (!b.Polarity.Set || b.Polarity.Value == "pair") {
			out = append(out, b)
		}
	}
	for _, s := range p.Plan.Sources {
		if s.Kind.Value == "battery" && !s.Removable.True() && s.Role.Value != "starting" {
			out = append(out, s)
		}
	}
	slices.SortFunc(out, func(a, b schema.Block) int { return strings.Compare(a.Header().Addr, b.Header().Addr) })
	return out
}

// taps walks from a terminal away from where its power goes, and lists the taps on the ways to what feeds or
// stores it, the nearest first. It crosses converters from output to input where it may.
func taps(p *lint.Pass, across bool, from string) []tap {
	g := graph(p, across)
	type visit struct {
		back string // the terminal that it was come from
		tap  tap
	}
	seen := map[string]visit{from: {}}
	var order []string
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		for _, s := range g[queue[0]] {
			if _, ok := seen[s.to]; !ok {
				seen[s.to] = visit{queue[0], s.tap}
				queue, order = append(queue, s.to), append(order, s.to)
			}
		}
	}
	leads := map[string]bool{} // terminals on a way that ends at a supply: the others are a neighbour's circuit
	for _, at := range order {
		if supplies(p, at) {
			for ; at != from && !leads[at]; at = seen[at].back {
				leads[at] = true
			}
		}
	}
	var out []tap
	for _, at := range order {
		if t := seen[at].tap; leads[at] && t.attr != "" {
			out = append(out, t)
		}
	}
	return out[:min(len(out), mostTaps)]
}

// supplies says whether a terminal is a source's, or the output of a converter.
func supplies(p *lint.Pass, terminal string) bool {
	addr := block(p, terminal)
	if _, ok := schema.Lookup[*schema.Source](p.Plan, addr); ok {
		return true
	}
	_, ok := schema.Lookup[*schema.Converter](p.Plan, addr)
	return ok && strings.TrimPrefix(terminal, addr) == ".out"
}

// step leads from one terminal to another, and over a tap where it ends on a bus, a battery or a switch.
type step struct {
	to  string
	tap tap
}

// graph is the plan's terminals as a walk upstream sees them.
func graph(p *lint.Pass, across bool) map[string][]step {
	g := map[string][]step{}
	join := func(a, b string, t tap) {
		g[a], g[b] = append(g[a], step{b, t}), append(g[b], step{a, tap{}})
	}
	for _, f := range p.Plan.Fuses {
		join(f.Addr+".load", f.Addr+".line", tap{})
		if f.On.Set {
			join(f.Addr+".line", place(f.On), tap{f, "on", f.On})
		}
	}
	for _, b := range p.Plan.Branches {
		join(b.Addr+".fuse.line", place(b.From), tap{b, "from", b.From})
	}
	for _, c := range p.Plan.Conductors {
		if strings.HasPrefix(c.Addr, "branch.") {
			join(place(c.To), place(c.From), tap{})
			continue
		}
		if c.Polarity.Value == "negative" || c.Polarity.Value == "grounding" || c.From.Pole == schema.Neg || c.To.Pole == schema.Neg {
			continue
		}
		g[place(c.To)] = append(g[place(c.To)], step{place(c.From), ended(p, c, "from", c.From)})
		g[place(c.From)] = append(g[place(c.From)], step{place(c.To), ended(p, c, "to", c.To)})
	}
	for _, l := range p.Plan.Links {
		if !strings.HasSuffix(l.B.Addr, ".fuse") {
			join(place(l.B), place(l.A), tap{})
		}
	}
	inside(p, across, join)
	for _, steps := range g {
		slices.SortStableFunc(steps, func(a, b step) int { return strings.Compare(a.to, b.to) })
	}
	return g
}

// inside joins the terminals of switches and connectors, what those sit on, and the sides of converters.
func inside(p *lint.Pass, across bool, join func(a, b string, t tap)) {
	for _, s := range p.Plan.Switches {
		for _, t := range s.Terminals.List[:max(len(s.Terminals.List)-1, 0)] {
			join(s.Addr+"."+s.Terminals.List[len(s.Terminals.List)-1].Value, s.Addr+"."+t.Value, tap{})
		}
		if s.On.Set && len(s.Terminals.List) > 0 {
			join(s.Addr+"."+s.Terminals.List[0].Value, place(s.On), tap{s, "on", s.On})
		}
	}
	for _, c := range p.Plan.Connectors {
		join(c.Addr+".free", c.Addr+".fixed", tap{})
		if c.On.Set {
			join(c.Addr+".fixed", place(c.On), tap{c, "on", c.On})
		}
	}
	for _, c := range p.Plan.Converters {
		if across && c.Kind.Value == "dc-dc" {
			join(c.Addr+".out", c.Addr+".in", tap{})
		}
	}
}

// ended is the tap that a conductor's end makes on a bus, a battery or a switch.
func ended(p *lint.Pass, c *schema.Conductor, attr string, at schema.Ref) tap {
	switch p.Plan.Block(at.Addr).(type) {
	case *schema.Bus, *schema.Source, *schema.Switch:
		return tap{c, attr, at}
	}
	return tap{}
}
