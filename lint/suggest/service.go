package suggest

import (
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
)

// service is what a plan is for: which sources reach which loads and which batteries, through wires,
// contacts in any position and converters in their own direction. It counts ways that no one state has:
// it decides no hazard, and guards against changes that clear a finding by making a part useless.
type service struct {
	feeds   map[string]int     // by source: how many loads it reaches
	charges map[string]int     // by battery: how many sources that are none reach it
	fed     map[string]bool    // loads that any source reaches, there and back
	stored  map[string]bool    // loads that a battery does
	still   map[string]bool    // of those, with the engine standing
	cranks  map[string]bool    // starting batteries that reach an engine's wires then
	backed  map[string]bool    // alternators that a battery stands on the same wires with
	lit     map[string]bool    // positions of switches in which anything comes in
	gives   map[string]float64 // by converter that feeds loads alone: what it gives, A
	asked   map[string]float64 // and what they draw together
}

func serviceOf(pass *lint.Pass) service {
	n := pass.Net
	islands := n.Islands(func(*network.Edge) bool { return true })
	s := service{map[string]int{}, map[string]int{}, map[string]bool{}, map[string]bool{}, map[string]bool{}, map[string]bool{}, map[string]bool{}, feeding(n), map[string]float64{}, map[string]float64{}}
	s.standing(n)
	s.alone(pass, islands)
	for _, src := range n.Sources {
		reach, home := reached(n, islands, src.Port, func(*network.Converter) bool { return true })
		for _, l := range n.Loads {
			if reach[islands[l.Hot]] && (l.Ret == network.None || home[islands[l.Ret]]) {
				s.feeds[src.Addr]++
				s.fed[l.Addr] = true
				s.stored[l.Addr] = s.stored[l.Addr] || src.Kind.Value == "battery"
			}
		}
		for _, b := range n.Sources {
			if src.Kind.Value == "alternator" && b.Kind.Value == "battery" && islands[src.Hot] == islands[b.Hot] {
				s.backed[src.Addr] = true
			}
			if src.Kind.Value != "battery" && b.Kind.Value == "battery" && reach[islands[b.Hot]] {
				s.charges[b.Addr]++
			}
		}
	}
	return s
}

// standing finds the loads that a battery feeds through nothing that wants the engine: no relay that follows an
// alternator, no converter that the ignition starts.
func (s *service) standing(n *network.Network) {
	engine := map[int]bool{}
	for _, src := range n.Sources {
		if src.Kind.Value == "alternator" && src.Present >= 0 {
			engine[src.Present] = true
		}
	}
	islands := n.Islands(func(e *network.Edge) bool {
		return !slices.ContainsFunc(e.When, func(l network.Literal) bool {
			return slices.ContainsFunc(n.Vars[l.Var].Follows, func(v int) bool { return engine[v] })
		})
	})
	for _, src := range n.Sources {
		if src.Kind.Value != "battery" {
			continue
		}
		reach, home := reached(n, islands, src.Port, func(c *network.Converter) bool { return !c.Trigger.Ignition })
		for _, l := range n.Loads {
			if reach[islands[l.Hot]] && (l.Ret == network.None || home[islands[l.Ret]]) {
				s.still[l.Addr] = true
			}
		}
		for _, a := range n.Sources {
			if src.Role.Value == "starting" && a.Kind.Value == "alternator" && islands[src.Hot] == islands[a.Hot] {
				s.cranks[src.Addr] = true
			}
		}
	}
}

// alone sums what converters are asked for that nothing else feeds the loads beside.
func (s *service) alone(pass *lint.Pass, islands []int) {
	n := pass.Net
	feeders := map[int]int{}
	for _, src := range n.Sources {
		feeders[islands[src.Hot]]++
	}
	for _, c := range n.Converters {
		feeders[islands[c.Out.Hot]]++
	}
	for _, c := range n.Converters {
		at := islands[c.Out.Hot]
		give, lacks := pass.Circuit.OutputGives(c.Converter)
		if feeders[at] > 1 || len(lacks) > 0 {
			continue
		}
		s.gives[c.Addr] = min(give.N.Value, passes(pass, &c))
		for i, l := range n.Loads {
			if amps, _ := pass.Circuit.LoadCurrent(i); islands[l.Hot] == at {
				s.asked[c.Addr] += amps.Value
			}
		}
	}
}

// passes is the most that a converter's input lets it give, in A at its output; without bound where a figure of it is not
// written.
func passes(pass *lint.Pass, c *network.Converter) float64 {
	in, ok := pass.Circuit.Nominal(c.In.Hot)
	if !ok || c.Input == nil || !c.Input.CurrentMax.Set || c.Output == nil || !c.Output.Voltage.Set || c.Output.Voltage.Value <= 0 {
		return math.Inf(1)
	}
	eff := 1.0
	if c.Efficiency.Set {
		eff = c.Efficiency.Value
	}
	return c.Input.CurrentMax.Value * in.Value * eff / c.Output.Voltage.Value
}

// feeding lists the positions of switches in which a terminal that something feeds from outside is joined to another.
func feeding(n *network.Network) map[string]bool {
	out := map[string]bool{}
	for _, x := range n.Plan.Switches {
		islands := n.Islands(func(e *network.Edge) bool { return e.Addr != x.Addr })
		live := map[int]bool{}
		for _, s := range n.Sources {
			live[islands[s.Hot]] = true
		}
		for _, c := range n.Converters {
			live[islands[c.Out.Hot]] = true
		}
		fed := map[string]bool{} // by terminal
		for i := range n.Nodes {
			if n.Nodes[i].Addr == x.Addr && live[islands[i]] {
				fed[n.Nodes[i].Place()] = true
			}
		}
		for _, pos := range x.Positions {
			for _, g := range pos.Joins.Groups {
				if slices.ContainsFunc(g, func(t schema.Text) bool { return fed[x.Addr+"."+t.Value] }) {
					out[x.Addr+" "+pos.Name] = true
				}
			}
		}
	}
	return out
}

// reached lists the islands that power from a port can come to, through converters that count, and those that it can
// come home by.
func reached(n *network.Network, islands []int, from network.Port, counts func(*network.Converter) bool) (out, home map[int]bool) {
	out, home = map[int]bool{islands[from.Hot]: true}, map[int]bool{}
	back := func(id network.NodeID) {
		if id != network.None {
			home[islands[id]] = true
		}
	}
	back(from.Ret)
	for grown := true; grown; {
		grown = false
		for i := range n.Converters {
			c := &n.Converters[i]
			if in, to := islands[c.In.Hot], islands[c.Out.Hot]; out[in] && !out[to] && counts(c) {
				out[to], grown = true, true
				back(c.Out.Ret)
			}
		}
	}
	return out, home
}

// mains says whether a change is of a part that carries nothing but alternating current.
func mains(n *network.Network, changes []lint.Change) bool {
	parts := map[string]bool{}
	for _, c := range changes {
		parts[c.At] = false
	}
	direct := map[string]bool{}
	for _, x := range n.Nodes {
		if _, ok := parts[x.Addr]; ok {
			parts[x.Addr] = parts[x.Addr] || x.AC
			direct[x.Addr] = direct[x.Addr] || !x.AC
		}
	}
	for _, e := range n.Edges {
		if _, ok := parts[e.Addr]; ok && e.Wire != nil {
			parts[e.Addr] = parts[e.Addr] || n.Nodes[e.A].AC
			direct[e.Addr] = direct[e.Addr] || !n.Nodes[e.A].AC
		}
	}
	for addr, ac := range parts {
		if ac && !direct[addr] {
			return true
		}
	}
	return false
}
