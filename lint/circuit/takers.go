package circuit

import (
	"maps"
	"math"
	"slices"
	"strings"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Taker is a current that comes home: from a load, a converter's input or batteries on charge, to
// whatever can give it.
type Taker struct {
	Block schema.Block  // the load, the converter, or what charges
	Amps  derive.Number // the most of it; Kind 0 where no figure bounds it
	From  []network.NodeID
	To    []Giver
}

// Giver is where a current comes home to.
type Giver struct {
	Addr string
	Ret  network.NodeID
	Amps float64 // the most that it gives; +Inf for a battery, and where no figure bounds it
}

// Takers lists the currents that come home. counts says of loads, converters and batteries whether
// what they take is among them; nil means that all is. plain is false where sources in a row make it
// more than that.
func (c *Circuit) Takers(counts func(schema.Block) bool) (list []Taker, plain bool) {
	plain = true
	for _, f := range c.families() {
		c.Space.Tick()
		for _, z := range f {
			plain = plain && c.sideOf(z) != mixed
		}
		supplies := c.suppliesHome(f)
		add := func(b schema.Block, ret network.NodeID, n derive.Number) {
			if ret != network.None && c.comesHome(ret) && (counts == nil || counts(b)) {
				list = append(list, Taker{b, n, []network.NodeID{ret}, supplies})
			}
		}
		for _, z := range f {
			for _, i := range z.Loads {
				add(c.Net.Loads[i].Load, c.Net.Loads[i].Ret, c.load(i).n)
			}
			for _, i := range z.Inputs {
				if x := &c.Net.Converters[i]; x.Kind.Value != "diode" {
					add(x.Converter, x.In.Ret, c.input(i).n)
				}
			}
		}
		list = append(list, c.charging(f, counts)...)
	}
	return list, plain
}

// suppliesHome lists what supplies a family.
func (c *Circuit) suppliesHome(f []*network.Zone) []Giver {
	var out []Giver
	add := func(addr string, ret network.NodeID, g Supply) {
		if ret == network.None || !c.comesHome(ret) {
			return
		}
		most := math.Inf(1)
		if !g.Unlimited {
			most = g.N.Value
		}
		out = append(out, Giver{addr, ret, most})
	}
	for _, z := range f {
		for _, i := range z.Sources {
			g, _ := c.SourceGives(c.Net.Sources[i].Source)
			add(c.Net.Sources[i].Addr, c.Net.Sources[i].Ret, g)
		}
		for _, i := range z.Outputs {
			if x := &c.Net.Converters[i]; x.Kind.Value != "diode" {
				g, _ := c.OutputGives(x.Converter)
				add(x.Addr+".out", x.Out.Ret, g)
			}
		}
	}
	return out
}

// charging lists what each charger of a family puts into its batteries.
func (c *Circuit) charging(f []*network.Zone, counts func(schema.Block) bool) []Taker {
	var from []network.NodeID
	var all sums
	for _, z := range f {
		for _, i := range z.Sources {
			if s := &c.Net.Sources[i]; s.Kind.Value == "battery" && s.Ret != network.None && c.comesHome(s.Ret) && (counts == nil || counts(s.Source)) {
				from, all = append(from, s.Ret), all.plus(c.sourceSums(i))
			}
		}
	}
	var out []Taker
	add := func(b schema.Block, to Giver, g Supply) {
		t := Taker{Block: b, From: from, To: []Giver{to}}
		switch {
		case all.endlessAc == 0 && (g.Unlimited || all.accepts < g.N.Value):
			t.Amps = derive.Compute("what batteries accept from "+quote(b), "Ichg", all.accepts, "A", "sum of what they accept")
		case !g.Unlimited:
			t.Amps = g.N
		}
		out = append(out, t)
	}
	if len(from) == 0 {
		return nil
	}
	for _, to := range c.suppliesHome(f) {
		switch b := c.Net.Plan.Block(strings.TrimSuffix(to.Addr, ".out")).(type) {
		case *schema.Source:
			if b.Kind.Value != "battery" {
				g, _ := c.SourceGives(b)
				add(b, to, g)
			}
		case *schema.Converter:
			g, _ := c.OutputGives(b)
			add(b, to, g)
		}
	}
	return out
}

// Most is the most that some currents come to in an edge, those that run one way: what comes home from
// one end and what comes home from the other are two currents. gone is an edge that has opened for
// good, -1 for none. Ask only of edges that it Knows.
func (r *Returns) Most(e, gone int, takers []Taker, name string) derive.Number {
	var best derive.Number
	for i := range r.caseCount(e) {
		for _, way := range []float64{1, -1} {
			b := bound{takers, func(k, m network.NodeID) float64 { return way * r.share(&r.cases[i], e, gone, k, m) }, r.ohms}
			if total, parts := b.total(); best.Kind == 0 || total > best.Value {
				best = derive.Compute(name, "Iwc", total, "A", "sum of what comes home one way, each by its share, and no more than what can be given", parts...)
			}
		}
	}
	return best
}

// Through is the most that some currents come to at the node where edges meet: what those of them bring
// for which brings says so, and no more than half of what all carry, for what comes in goes out. Ask
// only of edges that it Knows.
func (r *Returns) Through(edges []int, brings func(e int) bool, takers []Taker, name string) derive.Number {
	var best derive.Number
	for i := range r.cases {
		b := bound{takers, func(k, m network.NodeID) float64 { return r.passing(&r.cases[i], edges, brings, k, m) }, r.ohms}
		if total, parts := b.total(); best.Kind == 0 || total > best.Value {
			best = derive.Compute(name, "Ich", total, "A", "sum of what comes home there, each by its share, and no more than what can be given", parts...)
		}
	}
	return best
}

// Passes is the largest part of a current that runs through the node where edges meet, 0 to 1.
func (r *Returns) Passes(edges []int, brings func(e int) bool, t Taker) float64 {
	most := 0.0
	for i := range r.cases {
		most = max(most, t.largest(func(k, m network.NodeID) float64 { return r.passing(&r.cases[i], edges, brings, k, m) }))
	}
	return most
}

func (r *Returns) passing(s *ringCase, edges []int, brings func(e int) bool, k, m network.NodeID) float64 {
	some, all := 0.0, 0.0
	for _, e := range edges {
		f := math.Abs(r.share(s, e, -1, k, m))
		if all += f; brings(e) {
			some += f
		}
	}
	return min(some, all/2)
}

// Part is the largest part of a current that runs through an edge, 0 to 1. Ask only of edges that it
// Knows.
func (r *Returns) Part(e, gone int, t Taker) float64 {
	most := 0.0
	for i := range r.caseCount(e) {
		most = max(most, t.largest(func(k, m network.NodeID) float64 { return math.Abs(r.share(&r.cases[i], e, gone, k, m)) }))
	}
	return most
}

// caseCount is how many cases make a difference to an edge.
func (r *Returns) caseCount(e int) int {
	if !r.ring[e] {
		return min(1, len(r.cases))
	}
	return len(r.cases)
}

func (t Taker) largest(f func(k, m network.NodeID) float64) float64 {
	most := 0.0
	for _, g := range t.To {
		most = max(most, t.towards(g, f))
	}
	return most
}

// towards is the largest share of a current on its way home to one giver.
func (t Taker) towards(g Giver, f func(k, m network.NodeID) float64) float64 {
	most := 0.0
	for _, k := range t.From {
		if k != g.Ret {
			most = max(most, f(k, g.Ret))
		}
	}
	return most
}

// bound adds up shares of currents.
type bound struct {
	takers []Taker
	share  func(from, to network.NodeID) float64
	ohms   []derive.Number
}

// total is the least of two sums: of what each takes, and of what each limited supply gives with what
// comes from the others. parts belong to the first.
func (b bound) total() (amps float64, parts []derive.Number) {
	taken, rest := 0.0, 0.0
	given := map[string]float64{}
	for _, t := range b.takers {
		limited, most, endless := 0.0, 0.0, 0.0
		for _, g := range t.To {
			f := t.towards(g, b.share)
			if most = max(most, f); math.IsInf(g.Amps, 1) {
				endless = max(endless, f)
				continue
			}
			limited += min(g.Amps, t.Amps.Value) * f
			given[g.Addr] = max(given[g.Addr], g.Amps*f)
		}
		if part := min(t.Amps.Value*most, limited+t.Amps.Value*endless); part > 0 {
			taken, parts = taken+part, append(parts, b.part(part, t))
		}
		rest += t.Amps.Value * endless
	}
	for _, addr := range slices.Sorted(maps.Keys(given)) {
		rest += given[addr]
	}
	return min(taken, rest), parts
}

func (b bound) part(amps float64, t Taker) derive.Number {
	if amps > t.Amps.Value*(1-1e-9) {
		return t.Amps
	}
	s := derive.Compute("largest share of it that comes home this way", "s", amps/t.Amps.Value, "", "by the resistances of the rings of returns, and by what can be given", b.ohms...)
	return derive.Compute("part of the "+t.Amps.Name+" that comes home this way", "I", amps, "A", "I = s x "+t.Amps.Symbol, s, t.Amps)
}
