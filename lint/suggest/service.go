package suggest

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
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
	islands := islandsOf(n, func(*network.Edge) bool { return true })
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
	islands := islandsOf(n, func(e *network.Edge) bool {
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
		islands := islandsOf(n, func(e *network.Edge) bool { return e.Addr != x.Addr })
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

// islandsOf numbers the nodes that edges join, of those that count, whatever their positions.
func islandsOf(n *network.Network, counts func(*network.Edge) bool) []int {
	out := make([]int, len(n.Nodes))
	for i := range out {
		out[i] = -1
	}
	for i := range out {
		if out[i] >= 0 {
			continue
		}
		out[i] = i
		for queue := []network.NodeID{network.NodeID(i)}; len(queue) > 0; queue = queue[1:] {
			for _, e := range n.At(queue[0]) {
				if o := n.Edges[e].Other(queue[0]); out[o] < 0 && counts(&n.Edges[e]) {
					out[o] = i
					queue = append(queue, o)
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

// much is how much less is less: figures are not that exact.
const much = 0.02

// lost says what a part can no longer do, "" where each still does its work.
func (d *Desk) lost(after *Desk) string {
	was, is := d.service, after.service
	for _, src := range d.Plan.Sources {
		b := d.Plan.Block(src.Addr)
		switch {
		case was.feeds[src.Addr] > 0 && is.feeds[src.Addr] == 0:
			return lint.Quote(b) + " then feeds nothing"
		case was.charges[src.Addr] > 0 && is.charges[src.Addr] == 0:
			return "nothing then charges " + lint.Quote(b)
		case was.backed[src.Addr] && !is.backed[src.Addr]:
			return "no battery is then on the wires of " + lint.Quote(b) + ": an alternator that runs without one puts out a spike"
		}
	}
	for _, x := range after.Plan.Switches {
		for _, pos := range x.Positions {
			if at := x.Addr + " " + pos.Name; was.lit[at] && !is.lit[at] {
				return fmt.Sprintf("nothing then comes in at position %q of %s", pos.Name, lint.Quote(x))
			}
		}
	}
	for _, c := range d.Plan.Converters {
		if now, ok := is.gives[c.Addr]; ok && now < was.gives[c.Addr] && now < is.asked[c.Addr]*(1-much) {
			return fmt.Sprintf("%s, which nothing helps to feed what hangs on it, then gives %s of the %s that is asked of it", lint.Quote(c), derive.Text(now, "A"), derive.Text(is.asked[c.Addr], "A"))
		}
	}
	for _, l := range d.Plan.Loads {
		if was.fed[l.Addr] && !is.fed[l.Addr] {
			return "nothing then feeds " + lint.Quote(l)
		}
		if was.still[l.Addr] && !is.still[l.Addr] {
			return lint.Quote(l) + " then has power only while the engine runs"
		}
		if was.stored[l.Addr] && !is.stored[l.Addr] {
			return "no battery then feeds " + lint.Quote(l)
		}
	}
	if starved := d.starved(after); starved != "" {
		return starved
	}
	return was.standstill(d.Plan, is)
}

// starved says which converter that is new, or gives less than before, gives less than what hangs on it asks in a state in
// which nothing else feeds that; "" where none does.
func (d *Desk) starved(after *Desk) string {
	n := after.pass.Net
	for i := range n.Converters {
		c := &n.Converters[i]
		give, lacks := after.pass.Circuit.OutputGives(c.Converter)
		old, there := schema.Lookup[*schema.Converter](d.Plan, c.Addr)
		gave, none := d.pass.Circuit.OutputGives(cmp.Or(old, c.Converter))
		enough := !there || len(none) > 0 || gave.N.Value > give.N.Value && d.alone(c.Addr) <= gave.N.Value*(1+much) // it was, and less is given now
		if len(lacks) > 0 || !enough {
			continue
		}
		if asked := after.alone(c.Addr); asked > give.N.Value*(1+much) {
			return fmt.Sprintf("%s, which alone feeds what hangs on it in some state, then gives %s of the %s that is asked of it", lint.Quote(c), derive.Text(give.N.Value, "A"), derive.Text(asked, "A"))
		}
	}
	return ""
}

// alone is the most that a converter is asked for, in A, in a state in which nothing else feeds what hangs on it.
func (d *Desk) alone(addr string) (most float64) {
	n := d.pass.Net
	converter := slices.IndexFunc(n.Converters, func(c network.Converter) bool { return c.Addr == addr })
	if converter < 0 || n.ZoneOf(n.Converters[converter].Out.Hot) == nil {
		return 0
	}
	out := n.Converters[converter].Out.Hot
	z := n.ZoneOf(out)
	views, _ := d.pass.Space.Views(z, d.pass.Space.Closed(explore.All()))
	for _, v := range views {
		if !v.HasConverter(converter) || slices.ContainsFunc(z.Sources, func(i int) bool { return v.HasSource(i) && v.Joined(n.Sources[i].Hot, out) }) ||
			slices.ContainsFunc(z.Outputs, func(i int) bool { return i != converter && v.HasConverter(i) && v.Joined(n.Converters[i].Out.Hot, out) }) {
			continue
		}
		asked := 0.0
		for _, l := range z.Loads {
			if amps, _ := d.pass.Circuit.LoadCurrent(l); v.Joined(n.Loads[l].Hot, out) {
				asked += amps.Value
			}
		}
		most = max(most, asked)
	}
	return most
}

// standstill says which battery can no longer start an engine, "" where none.
func (s *service) standstill(plan *schema.Plan, is service) string {
	for _, src := range plan.Sources {
		if s.cranks[src.Addr] && !is.cranks[src.Addr] {
			return lint.Quote(src) + " then reaches the engine only while that runs, and starts nothing"
		}
	}
	return ""
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
