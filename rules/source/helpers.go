package source

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// bank is batteries that positions can join or that stand on each other, and the zone that tells how.
type bank struct {
	batteries []int
	zone      *network.Zone
}

// banks splits a plan's batteries: no question about two batteries on one pair of wires concerns two banks.
func banks(n *network.Network) []*bank {
	group := make([]int, len(n.Zones))
	for i := range group {
		group[i] = i
	}
	var find func(int) int
	find = func(i int) int {
		if group[i] != i {
			group[i] = find(group[i])
		}
		return group[i]
	}
	var batteries []int
	for i := range n.Sources {
		s := &n.Sources[i]
		hot, ret := n.ZoneOf(s.Hot), n.ZoneOf(s.Ret)
		if s.Kind.Value != "battery" || hot == nil {
			continue
		}
		batteries = append(batteries, i)
		if ret != nil {
			group[find(ret.ID)] = find(hot.ID)
		}
	}
	var out []*bank
	at := map[int]*bank{}
	for _, i := range batteries {
		g := find(n.ZoneOf(n.Sources[i].Hot).ID)
		if at[g] == nil {
			at[g] = &bank{}
			out = append(out, at[g])
		}
		at[g].batteries = append(at[g].batteries, i)
	}
	for _, b := range out {
		b.zone = b.around(n)
	}
	return out
}

// around is the zones of a bank as one, less what joins none of its batteries.
func (b *bank) around(n *network.Network) *network.Zone {
	var zones []*network.Zone
	var keep []network.NodeID
	for _, i := range b.batteries {
		keep = append(keep, n.Sources[i].Hot)
		for _, id := range []network.NodeID{n.Sources[i].Hot, n.Sources[i].Ret} {
			if z := n.ZoneOf(id); z != nil {
				zones = append(zones, z)
			}
		}
	}
	return n.Trim(n.Join(zones...), keep...)
}

// stack is batteries in series, top first; one battery alone is a stack too.
type stack []int

// stacks lists the batteries that are there, each alone and with those that it stands on.
func (b *bank) stacks(n *network.Network, v *explore.View) []stack {
	var out []stack
	for _, i := range b.batteries {
		if !v.HasSource(i) {
			continue
		}
		s, in := stack{i}, map[int]bool{i: true}
		for next := i; next >= 0; {
			out = append(out, append(stack{}, s...))
			foot := n.Sources[next].Ret
			next = -1
			for _, o := range b.batteries {
				if !in[o] && v.HasSource(o) && v.Joined(foot, n.Sources[o].Hot) {
					next = o
					break
				}
			}
			if next >= 0 {
				s, in[next] = append(s, next), true
			}
		}
	}
	return out
}

// port is the two ends of a stack.
func (s stack) port(n *network.Network) network.Port {
	return network.Port{Hot: n.Sources[s[0]].Hot, Ret: n.Sources[s[len(s)-1]].Ret, Ground: network.None}
}

func (s stack) shares(o stack) bool {
	for _, i := range s {
		for _, j := range o {
			if i == j {
				return true
			}
		}
	}
	return false
}

func (s stack) name(n *network.Network) string {
	var words []string
	for _, i := range s {
		words = append(words, lint.Quote(n.Sources[i].Source))
	}
	if len(words) > 1 {
		return lint.And(words...) + " in series"
	}
	return words[0]
}

// sum adds a figure of each battery of a stack; what is missing is named.
func (s stack) sum(n *network.Network, name, symbol, unit string, of func(i int) (derive.Number, []lint.Missing)) (derive.Number, []lint.Missing) {
	var parts []derive.Number
	var lacks []lint.Missing
	total := 0.0
	for _, i := range s {
		x, m := of(i)
		parts, lacks, total = append(parts, x), append(lacks, m...), total+x.Value
	}
	if len(parts) == 1 || len(lacks) > 0 {
		return parts[0], lacks
	}
	return derive.Compute(name+" of "+s.name(n), symbol, total, unit, "sum of the string", parts...), nil
}

// meet says whether two ports are on one pair of wires; a return that is drawn nowhere is taken to be joined.
func meet(n *network.Network, v *explore.View, a, b network.Port) bool {
	return v.Joined(a.Hot, b.Hot) && (v.Joined(a.Ret, b.Ret) || len(n.At(a.Ret)) == 0 || len(n.At(b.Ret)) == 0)
}

const (
	voltsApart  = 0.2  // V, rested full, from which two batteries are unlike
	otherNature = 1.25 // ratio of nominal voltages from which they differ
)

// rested is the volts of a stack rested full.
func (s stack) rested(p *lint.Pass) (derive.Number, []lint.Missing) {
	return s.sum(p.Net, "rested full volts", "Vrest", "V", func(i int) (derive.Number, []lint.Missing) {
		v, m := p.Circuit.BatteryVolts(p.Net.Sources[i].Source)
		return v.Rested, m
	})
}

// otherNature says whether the nominal voltages of two stacks differ, and whether both are stated.
func (s stack) otherNature(p *lint.Pass, o stack) (differ, stated bool) {
	nominal := func(s stack) float64 {
		sum := 0.0
		for _, i := range s {
			x := p.Net.Sources[i].Source
			if !x.Voltage.Set {
				return 0
			}
			sum += x.Voltage.Value * float64(x.Series.Or(1))
		}
		return sum
	}
	a, b := nominal(s), nominal(o)
	if a <= 0 || b <= 0 {
		return false, false
	}
	return max(a, b)/min(a, b) >= otherNature, true
}

// leastWay lists the edges of the way of least resistance between two ports, there and back.
func leastWay(p *lint.Pass, v *explore.View, a, b network.Port) []int {
	ohms := func(e int) float64 {
		r, _ := p.Circuit.Ohms(e, circuit.Prospective)
		return r.Value + 1e-9
	}
	out := v.Reach(a.Hot, nil, ohms).To(b.Hot).Edges()
	return append(out, v.Reach(b.Ret, nil, ohms).To(a.Ret).Edges()...)
}

// onlyMomentary says whether every way between two ports runs through a contact that springs back.
func onlyMomentary(p *lint.Pass, v *explore.View, a, b network.Port) bool {
	reach := v.Reach(a.Hot, func(e int, _ network.NodeID) bool {
		x := &p.Net.Edges[e]
		s, ok := schema.Lookup[*schema.Switch](p.Plan, x.Addr)
		return !(ok && x.Kind == network.Contact && s.Momentary.True())
	}, nil)
	_, ok := reach.Dist[b.Hot]
	return !ok
}

// onlyInOverlap says whether the way leans on the switch that is being thrown.
func onlyInOverlap(n *network.Network, v *explore.View, edges []int) bool {
	return slices.ContainsFunc(edges, func(e int) bool { return n.Edges[e].Addr == n.Vars[v.Transit.Var].Addr })
}

// contactCurrent is what runs at first contact, in A: one stack rested full against the other empty,
// over the low resistance of both and the wire.
func contactCurrent(p *lint.Pass, full, empty stack, wire derive.Number) (derive.Number, []lint.Missing) {
	vf, lacks := full.rested(p)
	ve, m := empty.sum(p.Net, "empty volts", "Vempty", "V", func(i int) (derive.Number, []lint.Missing) {
		v, m := p.Circuit.BatteryVolts(p.Net.Sources[i].Source)
		return v.Empty, m
	})
	ohms := func(i int) (derive.Number, []lint.Missing) {
		r, _, _, m := p.Circuit.BatteryOhms(p.Net.Sources[i].Source)
		return r, m
	}
	ra, ma := full.sum(p.Net, "low resistance", "Ra", "ohm", ohms)
	rb, mb := empty.sum(p.Net, "low resistance", "Rb", "ohm", ohms)
	lacks = slices.Concat(lacks, m, ma, mb)
	total := ra.Value + rb.Value + wire.Value
	if len(lacks) > 0 || total <= 0 {
		return derive.Number{}, lacks
	}
	return derive.Compute("current at first contact", "I", (vf.Value-ve.Value)/total, "A", "I = (Vrest of the higher - Vempty of the lower) / (Ra + Rb + Rw)", vf, ve, ra, rb, wire), nil
}
