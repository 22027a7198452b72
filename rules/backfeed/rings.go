package backfeed

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// around lists, for every converter, the others that can be reached from it output to input and back,
// whatever the positions; itself is among them where its output can be joined to its own input.
func around(n *network.Network) [][]int {
	next := make([][]int, len(n.Converters))
	for a := range n.Converters {
		for b := range n.Converters {
			if z := n.ZoneOf(n.Converters[a].Out.Hot); z != nil && z == n.ZoneOf(n.Converters[b].In.Hot) {
				next[a] = append(next[a], b)
			}
		}
	}
	ahead := make([]map[int]bool, len(next))
	for a := range next {
		ahead[a] = map[int]bool{}
		for queue := slices.Clone(next[a]); len(queue) > 0; queue = queue[1:] {
			if b := queue[0]; !ahead[a][b] {
				ahead[a][b] = true
				queue = append(queue, next[b]...)
			}
		}
	}
	out := make([][]int, len(next))
	for a := range next {
		for b := range next {
			if ahead[a][b] && ahead[b][a] {
				out[a] = append(out[a], b)
			}
		}
	}
	return out
}

// ringZone joins both sides of converters with all that can feed them.
func ringZone(n *network.Network, members []int) *network.Zone {
	var nodes []network.NodeID
	for _, i := range members {
		nodes = append(nodes, n.Converters[i].In.Hot, n.Converters[i].Out.Hot)
	}
	return n.Together(nodes...)
}

// running is which converters run in a state, and what leaves it open.
type running struct {
	p     *lint.Pass
	view  *explore.View
	live  *explore.Energy
	on    map[int]bool
	lacks map[int][]lint.Missing
	by    map[int]explore.Supply // what holds a starting voltage up
}

// run finds what runs: from a cold start, or, where held is set, what goes on running once something
// has started it.
func run(p *lint.Pass, v *explore.View, held bool) *running {
	r := &running{p: p, view: v, live: v.Live(nil, nil), on: map[int]bool{}, lacks: map[int][]lint.Missing{}, by: map[int]explore.Supply{}}
	all := slices.Concat(v.Zone.Inputs, v.Zone.Outputs)
	slices.Sort(all)
	all = slices.Compact(all)
	for _, i := range all {
		r.on[i] = held
	}
	for changed := true; changed; {
		changed = false
		for _, i := range all {
			if on := r.runs(i); on != r.on[i] {
				r.on[i], changed = on, true
			}
		}
	}
	return r
}

func (r *running) runs(i int) bool {
	c := &r.p.Net.Converters[i]
	delete(r.lacks, i)
	switch {
	case !r.view.HasConverter(i) || !r.fed(c):
		return false
	case !c.Trigger.Set && c.Kind.Value == "dc-dc":
		r.lacks[i] = []lint.Missing{{Subject: c.Addr, Attribute: "trigger"}}
	case !c.Trigger.Set:
	case c.Trigger.Ignition:
		return engineRuns(r.p.Net, r.view)
	default:
		return r.woken(i, c)
	}
	return true
}

// fed says whether the input has a source, or a converter that runs.
func (r *running) fed(c *network.Converter) bool {
	if z := r.p.Net.ZoneOf(c.In.Hot); z == nil || r.view.Zone.Local(c.In.Hot) < 0 {
		return true // beyond what is asked
	}
	return slices.ContainsFunc(r.live.By(c.In), func(s explore.Supply) bool { return s.Source >= 0 || r.on[s.Converter] })
}

// woken says whether what feeds an input can hold its starting voltage.
func (r *running) woken(i int, c *network.Converter) bool {
	var open []lint.Missing
	for _, s := range r.live.By(c.In) {
		if s.Source < 0 && !r.on[s.Converter] {
			continue
		}
		volts, lacks := r.volts(s)
		if s.Source < 0 {
			lacks = append(slices.Clone(lacks), r.lacks[s.Converter]...)
		}
		switch {
		case lacks == nil && volts.Value >= c.Trigger.Volts:
			r.hold(i, s)
			return true
		case lacks != nil && (volts.Kind == 0 || volts.Value >= c.Trigger.Volts):
			r.hold(i, s)
			open = append(open, lacks...)
		}
	}
	r.lacks[i] = open
	return open != nil
}

// hold keeps what first held a starting voltage up: what came later may stand on the converter itself.
func (r *running) hold(i int, s explore.Supply) {
	if _, ok := r.by[i]; !ok {
		r.by[i] = s
	}
}

// volts is the highest that a supply holds: a battery rested full, a regulated one at its setpoint.
func (r *running) volts(s explore.Supply) (derive.Number, []lint.Missing) {
	if s.Source < 0 {
		return r.p.Circuit.HighOutput(r.p.Net.Converters[s.Converter].Converter)
	}
	x := sourceSupply(r.p, r.view, s.Source)
	return x.volts, x.unknown(r.p)
}

// engineRuns says whether an engine can run in the view: an alternator that is drawn must be there.
func engineRuns(n *network.Network, v *explore.View) bool {
	drawn := false
	for _, i := range v.Zone.Sources {
		if n.Sources[i].Kind.Value == "alternator" {
			if drawn = true; v.HasSource(i) {
				return true
			}
		}
	}
	return !drawn
}

// ring is converters that feed each other round in one state.
type ring struct {
	*running
	list    []int
	battery int // that it drains
	held    bool
	word    lint.Severity
	open    []lint.Missing
}

func (x *ring) rank() int {
	rank := int(x.word) * 2
	if !x.held {
		rank++
	}
	if x.open == nil {
		rank += 100
	}
	return rank
}

// through is the shortest ring that a converter is in; nil where none drains a battery.
func (r *running) through(from int, members []int, held bool) *ring {
	for _, doubtful := range []bool{false, true} {
		list := r.shortest(from, func(i int) bool { return slices.Contains(members, i) && r.on[i] && (doubtful || r.lacks[i] == nil) })
		if list == nil {
			continue
		}
		x := &ring{running: r, list: list, held: held, battery: -1, word: lint.Caution}
		for _, i := range list {
			x.open = append(x.open, r.lacks[i]...)
		}
		if x.passive() || x.paid() || !x.drains() {
			continue
		}
		return x
	}
	return nil
}

func (r *running) shortest(from int, use func(int) bool) []int {
	if !use(from) {
		return nil
	}
	came := map[int]int{}
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, to := range r.after(queue[0], use) {
			if to == from {
				list := []int{queue[0]}
				for list[0] != from {
					list = append([]int{came[list[0]]}, list...)
				}
				return list
			}
			if _, seen := came[to]; !seen {
				came[to] = queue[0]
				queue = append(queue, to)
			}
		}
	}
	return nil
}

// after lists the converters whose input lies across a converter's output.
func (r *running) after(i int, use func(int) bool) (out []int) {
	for k := range r.p.Net.Converters {
		if use(k) && r.view.Across(r.p.Net.Converters[i].Out, r.p.Net.Converters[k].In) {
			out = append(out, k)
		}
	}
	return out
}

// passive says whether a ring is of diodes alone, which lift nothing.
func (x *ring) passive() bool {
	return !slices.ContainsFunc(x.list, func(i int) bool { return x.p.Net.Converters[i].Kind.Value != "diode" })
}

// paid says whether shore, an engine or another supply feeds a place of the ring: it then flattens
// nothing.
func (x *ring) paid() bool {
	n := x.p.Net
	ignition := false
	for _, i := range x.list {
		ignition = ignition || n.Converters[i].Trigger.Ignition
	}
	for _, i := range x.list {
		if slices.ContainsFunc(x.live.By(n.Converters[i].In), func(s explore.Supply) bool { return x.pays(s, ignition, 0) }) {
			return true
		}
	}
	return false
}

func (x *ring) pays(s explore.Supply, ignition bool, depth int) bool {
	n := x.p.Net
	if s.Source < 0 {
		c := &n.Converters[s.Converter]
		return c.Kind.Value == "diode" && depth < len(n.Converters) && slices.ContainsFunc(x.live.By(c.In), func(s explore.Supply) bool { return x.pays(s, ignition, depth+1) })
	}
	switch b := &n.Sources[s.Source]; b.Kind.Value {
	case "battery":
		return ignition && b.Role.Value == "starting"
	case "solar":
		return false
	}
	return true
}

// drains finds the battery that pays for the ring, and what hangs on it.
func (x *ring) drains() bool {
	n := x.p.Net
	for _, i := range x.list {
		for _, s := range x.live.By(n.Converters[i].In) {
			if s.Source >= 0 && n.Sources[s.Source].Kind.Value == "battery" && x.battery < 0 {
				x.battery = s.Source
			}
		}
		for k := range n.Loads {
			if l := &n.Loads[k]; saves(l.Load) && x.view.HasLoad(k) && x.view.Across(l.Port, n.Converters[i].In) {
				x.word = lint.Warning
			}
		}
	}
	return x.battery >= 0
}

// savers lists the nodes of loads that lives depend on.
func savers(n *network.Network) []network.NodeID {
	var out []network.NodeID
	for i := range n.Loads {
		if l := &n.Loads[i]; saves(l.Load) {
			out = append(out, l.Hot, l.Ret)
		}
	}
	return out
}

// saves says whether lives depend on a load; an alarm, a bilge pump or a brake that does not say counts.
func saves(l *schema.Load) bool {
	if l.Critical.Set {
		return l.Critical.Value == "life-safety"
	}
	return slices.Contains([]string{"alarm", "bilge-pump", "brake"}, l.Kind.Value)
}
