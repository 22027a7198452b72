package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Strings lists the strings of batteries that lie across a port in a view, each from its positive end
// down; one battery alone is a string too. Of batteries side by side within a string one is listed.
func (c *Circuit) Strings(v *explore.View, p network.Port) [][]int {
	var out [][]int
	for _, i := range v.Zone.Sources {
		if c.batteryIn(v, i) && v.Joined(c.Net.Sources[i].Hot, p.Hot) {
			if s := c.stringDown(v, i, p.Ret); s != nil {
				out = append(out, s)
			}
		}
	}
	return out
}

func (c *Circuit) batteryIn(v *explore.View, i int) bool {
	return c.Net.Sources[i].Kind.Value == "battery" && v.HasSource(i)
}

// stringDown follows batteries that stand on each other until one's negative is at the foot; nil
// where none gets there. A foot that nothing is wired to is taken to be the battery's own return.
func (c *Circuit) stringDown(v *explore.View, i int, foot network.NodeID) []int {
	s, in := []int{i}, map[int]bool{i: true}
	for {
		ret := c.Net.Sources[i].Ret
		if v.Joined(ret, foot) || foot != network.None && len(c.Net.At(foot)) == 0 {
			return s
		}
		i = -1
		for _, o := range v.Zone.Sources {
			if !in[o] && c.batteryIn(v, o) && v.Joined(ret, c.Net.Sources[o].Hot) {
				i = o
				break
			}
		}
		if i < 0 {
			return nil
		}
		s, in[i] = append(s, i), true
	}
}

// Bank is strings of batteries on one pair of wires in a view: what is asked of them together, or
// given to them, divides among them by resistance, their own and that of the wire to where they meet.
type Bank struct {
	Strings [][]int
	Numbers []derive.Number  // the resistances that decide, low ones
	Lacks   []derive.Missing // without which the shares are not known

	net       *network.Network
	own       [2][]float64 // ohm, by string: all low, all high
	out, back []*explore.Reach
	between   [][]float64 // ohm of wire, both runs, by pair of strings
}

// NewBank works out the resistances of strings that lie across one port.
func (c *Circuit) NewBank(v *explore.View, strings [][]int) *Bank {
	b := &Bank{Strings: strings, net: c.Net}
	ohms := func(e int) float64 {
		r, _ := c.Ohms(e, Operating)
		return r.Value + smallOhms
	}
	for _, s := range strings {
		low, high := 0.0, 0.0
		for _, i := range s {
			l, h, _, m := c.BatteryOhms(c.Net.Sources[i].Source)
			low, high = low+l.Value, high+h.Value
			b.Lacks = merge(b.Lacks, m...)
			if l.Kind != 0 {
				b.Numbers = append(b.Numbers, l)
			}
		}
		b.own[0], b.own[1] = append(b.own[0], low), append(b.own[1], high)
		b.out = append(b.out, v.Reach(c.Net.Sources[s[0]].Hot, nil, ohms))
		b.back = append(b.back, v.Reach(c.Net.Sources[s[len(s)-1]].Ret, nil, ohms))
	}
	for i := range strings {
		b.between = append(b.between, make([]float64, len(strings)))
		for j := range strings {
			p := b.port(j)
			b.between[i][j] = b.far(i, p)
			for _, e := range append(b.out[i].To(p.Hot).Edges(), b.back[i].To(p.Ret).Edges()...) {
				_, m := c.Ohms(e, Operating)
				b.Lacks = merge(b.Lacks, m...)
			}
		}
	}
	return b
}

func (b *Bank) port(i int) network.Port {
	s := b.Strings[i]
	return network.Port{Hot: b.net.Sources[s[0]].Hot, Ret: b.net.Sources[s[len(s)-1]].Ret, Ground: network.None}
}

// far is the resistance of the wire from a string to a port, there and back, in ohm.
func (b *Bank) far(i int, p network.Port) float64 {
	return b.out[i].Dist[p.Hot] + b.back[i].Dist[p.Ret]
}

// Share is the part, 0 to 1, of a current at a port that is a string's: the larger of those with all
// batteries at low and all at high resistance. What all strings have in common of the way counts for none.
func (b *Bank) Share(of int, p network.Port) float64 {
	far := make([]float64, len(b.Strings))
	common := -1.0
	for i := range far {
		far[i] = b.far(i, p)
		for j := range i {
			if k := max(0, far[i]+far[j]-b.between[i][j]) / 2; common < 0 || k < common {
				common = k
			}
		}
	}
	best := 0.0
	for _, own := range b.own {
		sum := 0.0
		for i := range far {
			sum += 1 / (own[i] + max(0, far[i]-max(0, common)) + smallOhms)
		}
		best = max(best, 1/(own[of]+max(0, far[of]-max(0, common))+smallOhms)/sum)
	}
	return best
}

// Part is a current, in A, that batteries give to what hangs at a port, or take from it.
type Part struct {
	Port network.Port
	Amps float64
}

// Own is what one battery has of the currents of several parts.
type Own struct {
	Amps    float64
	Numbers []derive.Number // resistances by which it shares with others; nil where it has all alone
	Lacks   []derive.Missing
}

// ShareOf is what one battery has of the currents of parts that lie across it, or across a string that
// it is in: all of it where it is alone, its share where others lie beside it.
func (c *Circuit) ShareOf(v *explore.View, battery int, parts []Part) Own {
	var out Own
	banks := map[[2]int]*Bank{}
	for _, x := range parts {
		strings := c.Strings(v, x.Port)
		k, ends := stringWith(strings, battery)
		if len(strings) < 2 || k < 0 {
			out.Amps += x.Amps
			continue
		}
		if banks[ends] == nil {
			banks[ends] = c.NewBank(v, strings)
			out.Numbers = append(out.Numbers, banks[ends].Numbers...)
			out.Lacks = merge(out.Lacks, banks[ends].Lacks...)
		}
		out.Amps += banks[ends].Share(k, x.Port) * x.Amps
	}
	return out
}

// stringWith finds the string that a battery is in, and its first and last battery.
func stringWith(strings [][]int, battery int) (at int, ends [2]int) {
	for k, s := range strings {
		for _, i := range s {
			if i == battery {
				return k, [2]int{s[0], s[len(s)-1]}
			}
		}
	}
	return -1, ends
}

// Passed is what devices let pass, in A, between a battery's string and parts.
func (c *Circuit) Passed(v *explore.View, battery int, parts []Part) float64 {
	total := 0.0
	left := parts
	for _, top := range v.Series(battery).Tops() {
		hot := c.Net.Sources[top].Hot
		amps := map[network.NodeID]float64{}
		var rest []Part
		for _, x := range left {
			if v.Joined(hot, x.Port.Hot) {
				amps[x.Port.Hot] += x.Amps
			} else {
				rest = append(rest, x)
			}
		}
		if left = rest; len(amps) > 0 {
			total += c.Through(v, hot, -1, amps)
		}
	}
	for _, x := range left {
		total += x.Amps
	}
	return total
}
