package source

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
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
