package circuit

import (
	"sort"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Current is the largest current in an edge over all states, in A. It is a bound by sums: see the
// package comment.
type Current struct {
	Steady  derive.Number // the most in steady use
	Capped  derive.Number // the same where devices in series with the edge limit it
	Lasting derive.Number // the most for three hours or longer
	Peak    derive.Number // with the one load that adds most on starting
	View    *explore.View // a state in which it is largest; nil where it is 0 in all
	Lacks   []derive.Missing
	// Complete is false where the search over states met its bound: more may be possible.
	Complete bool
}

// Worst is the largest current in an edge. Live edges are answered in their zone; returns carry the
// currents of every zone that comes home through them.
func (c *Circuit) Worst(edge int) Current {
	e := &c.Net.Edges[edge]
	z := c.Net.ZoneOf(e.A)
	if z == nil {
		z = c.Net.ZoneOf(e.B)
	}
	if z == nil || c.sideOf(z) == homeward {
		return c.worstReturn(edge)
	}
	all, ok := c.currents[z]
	if !ok {
		all = c.worstIn(z)
		c.currents[z] = all
	}
	return all[edge]
}

// occasion is a set of states with the loads that may run in them.
type occasion struct {
	filter explore.Filter
	runs   func(i int) bool
}

// occasions splits the states by what may run: a load with runs_in only in its modes.
func (c *Circuit) occasions(z *network.Zone) []occasion {
	limited := false
	for _, i := range z.Loads {
		limited = limited || len(c.Net.Loads[i].RunsIn.List) > 0
	}
	if !limited {
		return []occasion{{c.Space.Closed(explore.All()), func(int) bool { return true }}}
	}
	out := []occasion{{c.Space.Closed(explore.All()), func(i int) bool { return len(c.Net.Loads[i].RunsIn.List) == 0 }}}
	for _, m := range c.Net.Plan.Modes {
		out = append(out, occasion{c.Space.Closed(c.Space.In(m)), func(i int) bool {
			r := c.Net.Loads[i].RunsIn
			return len(r.List) == 0 || r.Has(m.Addr)
		}})
	}
	return out
}

// record is the best amount of an edge so far, and where it was seen.
type record struct {
	amount
	view *explore.View
	runs func(i int) bool
}

// worstIn answers for every live edge of a zone.
func (c *Circuit) worstIn(z *network.Zone) map[int]Current {
	open, capped := map[int]record{}, map[int]record{}
	complete := true
	for _, o := range c.occasions(z) {
		list, whole := c.Space.Views(z, o.filter)
		complete = complete && whole
		for _, v := range list {
			ports, edges := c.attachedTo(z, v, o.runs)
			free, within := newCut(c.Net, z.Nodes, edges, ports, false), newCut(c.Net, z.Nodes, edges, ports, true)
			if c.sideOf(z) != mixed {
				for _, e := range c.refine(free, v, o.runs) {
					within.bounds[e] = within.bounds[e].least(free.bounds[e])
				}
			}
			keep(open, free.bounds, v, o.runs)
			keep(capped, within.bounds, v, o.runs)
		}
	}
	lacks := c.zoneLacks(z)
	out := map[int]Current{}
	for _, e := range z.Edges {
		r, k := open[e], capped[e]
		w := Current{Complete: complete, View: r.view}
		if r.used {
			w.Lacks = lacks
		}
		name := "largest current in " + c.partName(e)
		from, formula := c.counted(r, e), sumFormula
		if r.shared {
			formula = shareFormula
		}
		w.Steady = derive.Compute(name, "Iwc", r.steady, "A", formula, from...)
		w.Lasting = derive.Compute(name+" for three hours or more", "Ilong", min(r.lasting, r.steady), "A", formula+"; loads that run less than 3 h a day left out", from...)
		w.Peak = derive.Compute(name+" on starting", "Ipeak", r.peak, "A", formula+"; one load starting", from...)
		w.Capped = w.Steady
		if k.steady < r.steady {
			w.Capped = derive.Compute(name+" that the devices in series let pass", "Iwc", k.steady, "A", "least of the sum and the ratings of the devices it passes", w.Steady)
		}
		out[e] = w
	}
	return out
}

// On a tree every current is the sum of what is drawn beyond it, whatever the resistances: Kirchhoff's
// current law is the solution. What is drawn is taken at the volts that the circuit is solved to leave.
const (
	sumFormula   = "sum of what can be drawn beyond it, each part at the volts solved for it, and no more than what can be given before it (monotone: a part more never makes it less)"
	shareFormula = "sum of the shares that reach it through its ring, by resistance (solved), every part at its most; no more than the sum around the ring"
)

func keep(best map[int]record, bounds map[int]amount, v *explore.View, runs func(int) bool) {
	for e, a := range bounds {
		r, seen := best[e]
		if !seen {
			r = record{view: v, runs: runs, amount: a}
		}
		if a.steady > r.steady {
			r.view, r.runs, r.steady = v, runs, a.steady
		}
		r.lasting, r.peak, r.used, r.shared = max(r.lasting, a.lasting), max(r.peak, a.peak), r.used || a.used, r.shared || a.shared
		best[e] = r
	}
}

// ports sums what is attached to each live node of a view.
func (c *Circuit) ports(v *explore.View, runs func(int) bool) map[network.NodeID]sums {
	c.Space.Tick()
	out := map[network.NodeID]sums{}
	add := func(id network.NodeID, s sums) {
		if id != network.None {
			out[id] = out[id].plus(s)
		}
	}
	z := v.Zone
	for _, i := range z.Sources {
		if v.HasSource(i) {
			add(c.Net.Sources[i].Hot, c.sourceSums(i))
		}
	}
	for _, i := range z.Outputs {
		if v.HasConverter(i) {
			add(c.Net.Converters[i].Out.Hot, c.outputSums(i))
		}
	}
	for _, i := range z.Loads {
		if v.HasLoad(i) && runs(i) {
			add(c.Net.Loads[i].Hot, drawSums(c.load(i)))
		}
	}
	for _, i := range z.Inputs {
		if v.HasConverter(i) {
			add(c.Net.Converters[i].In.Hot, c.inputSums(v, i))
		}
	}
	return out
}

func supplySums(g Supply) sums {
	s := sums{gives: g.N.Value, ports: 1}
	if g.Unlimited {
		s.gives, s.endless = 0, 1
	}
	if g.Charges {
		s.charges, s.endlessCh = s.gives, s.endless
	}
	return s
}

func drawSums(d demand) sums {
	s := sums{draws: d.n.Value, surge: max(0, d.surge.Value-d.n.Value), ports: 1}
	if !d.brief {
		s.lasting = d.n.Value
	}
	return s
}

// inputSums is what a converter's input draws; a tracker without a limit of its own takes from an
// array what the array gives.
func (c *Circuit) inputSums(v *explore.View, i int) sums {
	d := c.input(i)
	if c.Net.Converters[i].Kind.Value == "diode" {
		return c.diodeTakes(i)
	}
	if d.n.Kind == 0 && c.Net.Converters[i].Kind.Value == "mppt" {
		array := 0.0
		for _, k := range v.Zone.Sources {
			if s := c.Net.Sources[k].Source; s.Kind.Value == "solar" && v.HasSource(k) {
				g, _ := c.SourceGives(s)
				array += g.N.Value
			}
		}
		return sums{draws: array, lasting: array, ports: 1}
	}
	return sums{draws: d.n.Value, lasting: d.n.Value, ports: 1}
}

// onlyArrays says whether nothing but solar arrays feeds a zone.
func (c *Circuit) onlyArrays(z *network.Zone) bool {
	for _, i := range z.Sources {
		if c.Net.Sources[i].Kind.Value != "solar" {
			return false
		}
	}
	return len(z.Outputs) == 0
}

// partName names the part an edge belongs to.
func (c *Circuit) partName(e int) string {
	if b := c.Net.Plan.Block(c.Net.Edges[e].Addr); b != nil {
		return quote(b)
	}
	return c.Net.Edges[e].Addr
}

// counted lists what went into an edge's sum: the loads, inputs and batteries on the taking side,
// largest first, and the sources on the giving side.
func (c *Circuit) counted(r record, edge int) []derive.Number {
	if r.view == nil || r.steady == 0 {
		return nil
	}
	e := &c.Net.Edges[edge]
	sides := [2]map[network.NodeID]bool{c.side(r.view, e.A, edge), c.side(r.view, e.B, edge)}
	taking, giving := sides[1], sides[0]
	if sides[0][e.B] { // no bridge: both sides are all
		taking, giving = sides[0], sides[0]
	} else if t, _, _ := flow(c.total(r, sides[0]), c.total(r, sides[1])); t < r.steady*(1-1e-9) {
		taking, giving = sides[0], sides[1]
	}
	takes, gives := c.takers(r, taking), c.givers(r, giving)
	return append(gives, takes...)
}

// side is everything joined to a node without an edge.
func (c *Circuit) side(v *explore.View, from network.NodeID, without int) map[network.NodeID]bool {
	out := map[network.NodeID]bool{from: true}
	queue := []network.NodeID{from}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, e := range c.Net.At(id) {
			to := c.Net.Edges[e].Other(id)
			if e != without && !out[to] && !c.Net.Nodes[to].Return && v.Conducts(e) {
				out[to] = true
				queue = append(queue, to)
			}
		}
	}
	return out
}

func (c *Circuit) total(r record, side map[network.NodeID]bool) sums {
	var s sums
	ports := c.ports(r.view, r.runs)
	for _, id := range r.view.Zone.Nodes { // in one order, or the last digit of the sum would differ from run to run
		if side[id] {
			s = s.plus(ports[id])
		}
	}
	return s
}

func (c *Circuit) takers(r record, side map[network.NodeID]bool) []derive.Number {
	var out []derive.Number
	v := r.view
	for _, i := range v.Zone.Loads {
		if d := c.load(i); side[c.Net.Loads[i].Hot] && v.HasLoad(i) && r.runs(i) && d.n.Kind != 0 {
			out = append(out, d.n)
		}
	}
	for _, i := range v.Zone.Inputs {
		if d := c.input(i); side[c.Net.Converters[i].In.Hot] && v.HasConverter(i) && d.n.Kind != 0 {
			out = append(out, d.n)
		}
	}
	for _, i := range v.Zone.Sources {
		if s := c.Net.Sources[i].Source; side[c.Net.Sources[i].Hot] && v.HasSource(i) && s.Kind.Value == "battery" {
			if a, unlimited, _ := c.Accepts(s); !unlimited && a.Kind != 0 {
				out = append(out, a)
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Value < out[j].Value })
	return out
}

func (c *Circuit) givers(r record, side map[network.NodeID]bool) []derive.Number {
	var out []derive.Number
	v := r.view
	for _, i := range v.Zone.Sources {
		if side[c.Net.Sources[i].Hot] && v.HasSource(i) {
			if g, _ := c.SourceGives(c.Net.Sources[i].Source); g.N.Kind != 0 {
				out = append(out, g.N)
			}
		}
	}
	for _, i := range v.Zone.Outputs {
		if side[c.Net.Converters[i].Out.Hot] && v.HasConverter(i) {
			if g, _ := c.OutputGives(c.Net.Converters[i].Converter); g.N.Kind != 0 {
				out = append(out, g.N)
			}
		}
	}
	return out
}
