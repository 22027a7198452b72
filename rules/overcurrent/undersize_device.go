package overcurrent

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
)

var undersizeDevice = &lint.Rule{
	ID:      "overcurrent/undersize-device",
	Claim:   "The fuse or breaker will open, or slowly cook, in ordinary use.",
	Words:   []lint.Severity{lint.Notice, lint.Caution},
	Subject: "fuse",
	When: "What may pass a device for three hours or longer is above 80 % of its rating; or what passes it for a shorter time, or while a load starts, is above its rating for longer " +
		"than it takes to open.",
	Why: "Loss of use first, hence notice; caution where a life-safety or navigation load goes dark with it. A device that opens for nothing is the one that somebody replaces by a bigger one.",
	Numbers: "What can be drawn beyond the device, each part at the volts that the circuit is solved to leave it, and no more than what can be given before it, not capped by any device. Loads that run less than 3 h a day are brief: each " +
		"of their times is compared with what still runs then. The time to open is that of the device's own `curve`, else of the published or assumed gates of its kind; an engine's starter turns for 10 s where its hours are not written; a load's start holds where the " +
		"gates say that the device does not open before.",
	Not:   "A short-duty winch or jack that is done before the device opens. Devices marked for 100 % of their rating. Whether the wire allows a bigger device is overcurrent/oversize-device.",
	Offer: "The next standard rating if the wire allows it; else wire and device together.",
	Meter: "Millivolts across the device at full load: more than 100, or rising over minutes, is a hot fuse or holder.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 706.30", Standing: lint.Read, Note: "125 % of continuous current for storage circuits; read in a summary; good practice from it elsewhere", For: []string{"us-rv", "cabin"}},
		{Ref: "NFPA 70 690.9", Standing: lint.Read, Note: "the same for arrays; read in trade articles", For: []string{"us-rv", "cabin"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a device carries 80 % of its rating for hours"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.LargerDevice, remedy.DeviceAndWires},
	Since:  "0.1",
	Run:    undersizeDevices,
}

// lasting is the time in s from which a current counts as continuous.
const lasting = 3 * 3600

func undersizeDevices(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		for _, i := range p.Net.EdgesOf(f.Addr) {
			if p.Net.Edges[i].Kind == network.Element {
				out = append(out, load(p, f, i))
			}
		}
	}
	return out
}

// loading is a device with what passes it.
type loading struct {
	p     *lint.Pass
	fuse  *schema.Fuse
	edge  int
	worst circuit.Current
}

func load(p *lint.Pass, f *schema.Fuse, edge int) lint.Verdict {
	x := &loading{p: p, fuse: f, edge: edge, worst: p.Circuit.Worst(edge)}
	v := x.judge()
	if v.Outcome != lint.Holds {
		v.Word = x.word()
	}
	return v
}

func (x *loading) judge() lint.Verdict {
	f := x.fuse
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Notice}
	if !f.Rating.Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: f.Addr, Attribute: "rating"}}
		v.Message = fmt.Sprintf("The rating of %s is not written, so it cannot be told whether it carries its load.", lint.Quote(f))
		return v
	}
	rating := rated(f)
	most := derive.Compute("most that "+lint.Quote(f)+" carries for hours", "Icont", tables.Continuous*rating.Value, "A", "0.8 x In", rating)
	v.Numbers = lint.Known(x.p.Circuit.LacksAt(x.edge), most, x.worst.Lasting)
	if x.worst.Lasting.Value > most.Value*(1+1e-9) {
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s (%s) may carry %s for hours, and a device of that rating carries %s without cooking.", lint.Quote(f), rating.Text(), x.worst.Lasting.Text(), most.Text())
		x.place(&v, x.worst.View)
		return v
	}
	x.brief(&v)
	if v.Outcome == lint.Holds {
		x.starting(&v)
	}
	switch {
	case v.Outcome != lint.Holds:
	case len(x.p.Circuit.LacksAt(x.edge)) > 0:
		v.Outcome, v.Missing = lint.NotProven, x.p.Circuit.LacksAt(x.edge)
		v.Message = fmt.Sprintf("What passes %s (%s) cannot be told: %s is missing.", lint.Quote(f), rating.Text(), lint.Lacking(v.Missing[0], true))
	case !x.worst.Complete:
		return lint.Unfinished(f, v.Word)
	}
	return v
}

// word is that of a device on which, in some state, a load hangs that safety or navigation needs.
func (x *loading) word() lint.Severity {
	n := x.p.Net
	counts := func(i int) bool {
		c := n.Loads[i].Critical.Value
		return c == "life-safety" || c == "navigation"
	}
	z := n.ZoneOf(n.Edges[x.edge].A)
	if z == nil {
		z = n.ZoneOf(n.Edges[x.edge].B)
	}
	if z == nil || !slices.ContainsFunc(z.Loads, counts) {
		return lint.Notice
	}
	views, _ := x.p.Space.Views(z, x.p.Space.Closed(explore.All()))
	for _, v := range views {
		if _, behind := x.look(v); v.Conducts(x.edge) && slices.ContainsFunc(behind, counts) {
			return lint.Caution
		}
	}
	return lint.Notice
}

// side is everything live that is joined to one end of the device without it.
func (x *loading) side(v *explore.View, end network.NodeID) *explore.Reach {
	n := x.p.Net
	return v.Reach(end, func(e int, at network.NodeID) bool { return e != x.edge && !n.Nodes[n.Edges[e].Other(at)].Return }, nil)
}

// look finds the loads that draw through the device in a state: those on one side while the other is fed,
// and of them those on a side that has no battery.
func (x *loading) look(v *explore.View) (loads, behind []int) {
	n := x.p.Net
	var sides [2]*explore.Reach
	var fed, battery [2]bool
	for i, end := range []network.NodeID{n.Edges[x.edge].A, n.Edges[x.edge].B} {
		sides[i] = x.side(v, end)
		for k := range n.Sources {
			_, ok := sides[i].Dist[liveEnd(n, n.Sources[k].Port)]
			fed[i] = fed[i] || ok && v.HasSource(k)
			battery[i] = battery[i] || ok && n.Sources[k].Kind.Value == "battery" && v.HasSource(k)
		}
		for k := range n.Converters {
			_, ok := sides[i].Dist[n.Converters[k].Out.Hot]
			fed[i] = fed[i] || ok
		}
	}
	for i := range sides {
		for k := range n.Loads {
			if _, ok := sides[i].Dist[n.Loads[k].Hot]; ok && fed[1-i] && v.HasLoad(k) {
				loads = append(loads, k)
				if !battery[i] {
					behind = append(behind, k)
				}
			}
		}
	}
	return loads, behind
}

// brief asks of each time that loads run, less than three hours: the most that still runs then, over all states.
func (x *loading) brief(v *lint.Verdict) {
	if x.worst.Steady.Value <= x.fuse.Rating.Value*(1+1e-9) {
		return
	}
	v.Numbers = append(v.Numbers, x.worst.Steady)
	if x.worst.View == nil {
		x.unsolved(v)
		return
	}
	seen, most := map[float64]bool{}, 1.0 // how many times as long as it takes to open
	for _, i := range x.worst.View.Zone.Loads {
		h, ok := x.runs(i)
		if !ok || h <= 0 || h >= lasting || seen[h] {
			continue
		}
		seen[h] = true
		amps, in := x.runningFor(h)
		if opens, ok := circuit.Opens(x.fuse, amps.Value); ok && h > most*opens.Value {
			most = h / opens.Value
			*v = x.opensIn(v, amps, opens, in)
		}
	}
}

// opensIn is the verdict on a device that opens before a current ends.
func (x *loading) opensIn(v *lint.Verdict, amps, opens derive.Number, in *explore.View) lint.Verdict {
	out := lint.Verdict{Subject: v.Subject, Outcome: lint.Violated, Word: v.Word, Numbers: append(slices.Clone(v.Numbers), amps, opens)}
	if v.Outcome == lint.Violated { // of two such times the worse one
		out.Numbers = append(slices.Clone(v.Numbers[:len(v.Numbers)-2]), amps, opens)
	}
	out.Message = fmt.Sprintf("%s (%s) carries %s for longer than the %s after which it opens.", lint.Quote(x.fuse), derive.Text(x.fuse.Rating.Value, "A"), amps.Text(), opens.Text())
	x.place(&out, in)
	return out
}

// unsolved says of a device in a return, which carries more than its rating, that for how long is not worked out.
func (x *loading) unsolved(v *lint.Verdict) {
	v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.fuse.Addr, Attribute: "how long each current in a return lasts"}}
	v.Message = fmt.Sprintf("%s (%s) carries up to %s at times, and for how long is not worked out in a return.", lint.Quote(x.fuse), derive.Text(x.fuse.Rating.Value, "A"), x.worst.Peak.Text())
}

// cranks is how long in s an engine's starter turns on end, where the plan does not say it.
const cranks = 10

// runs is how long a load runs on end, in s; ok is false where it is not written.
func (x *loading) runs(i int) (seconds float64, ok bool) {
	l := &x.p.Net.Loads[i]
	if !l.HoursPerDay.Set && slices.Contains(x.p.Circuit.Starters(), i) {
		return cranks, true
	}
	return l.HoursPerDay.Value, l.HoursPerDay.Set
}

// runningFor is the most that passes the device for so many seconds on end: without the loads that are done before.
func (x *loading) runningFor(seconds float64) (derive.Number, *explore.View) {
	amps, in := x.p.Circuit.While(x.edge, func(v *explore.View) bool { return v.Transit == nil }, func(i int) bool {
		h, ok := x.runs(i)
		return !ok || h >= seconds
	})
	return derive.Compute("largest current in "+lint.Quote(x.fuse)+" for "+derive.Text(seconds, "s"), "Iwc", min(amps, x.worst.Steady.Value), "A", "without the loads that run for less", x.worst.Steady), in
}

// starting asks of the loads that draw more while they start, one at a time.
func (x *loading) starting(v *lint.Verdict) {
	switch {
	case x.worst.Peak.Value <= x.fuse.Rating.Value*(1+1e-9):
		return
	case x.worst.View == nil:
		x.unsolved(v)
		return
	}
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	draws, held, worst := x.drawers(), *v, 0.0
	for _, i := range x.worst.View.Zone.Loads {
		l := x.p.Net.Loads[i].Load
		n, _ := x.p.Circuit.LoadCurrent(i)
		if !l.Surge.Set || l.Surge.Value <= n.Value {
			continue
		}
		peak, in := x.peak(i, l.Surge.Value-n.Value, draws)
		if in == nil || peak.Value <= x.fuse.Rating.Value*(1+1e-9) {
			continue
		}
		w := x.start(held, l, peak, in)
		if more := weight[w.Outcome] - weight[v.Outcome]; more > 0 || more == 0 && peak.Value > worst {
			*v, worst = w, peak.Value
		}
	}
}

// start answers for one load: whether the device opens while it starts.
func (x *loading) start(v lint.Verdict, l *schema.Load, peak derive.Number, in *explore.View) lint.Verdict {
	v.Numbers = append(slices.Clone(v.Numbers), peak)
	opens, ok := circuit.Opens(x.fuse, peak.Value)
	switch {
	case ok && l.SurgeTime.Set && l.SurgeTime.Value > opens.Value:
		v.Numbers = append(v.Numbers, opens)
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s (%s) opens within %s at %s, and %s takes %s to start.", lint.Quote(x.fuse), derive.Text(x.fuse.Rating.Value, "A"), opens.Text(), peak.Text(), lint.Quote(l), derive.Text(l.SurgeTime.Value, "s"))
		x.place(&v, in)
		return v
	case l.SurgeTime.Set && l.SurgeTime.Value <= circuit.StaysClosed(x.fuse, peak.Value):
		return v
	case l.SurgeTime.Set:
		v.Missing = []lint.Missing{{Subject: x.fuse.Addr, Attribute: "curve"}}
	default:
		v.Missing = []lint.Missing{{Subject: l.Addr, Attribute: "surge_time"}}
	}
	v.Outcome = lint.NotProven
	v.Message = fmt.Sprintf("Whether %s (%s) stays closed while %s starts, at %s, cannot be told.", lint.Quote(x.fuse), derive.Text(x.fuse.Rating.Value, "A"), lint.Quote(l), peak.Text())
	return v
}

// drawers tells which loads draw through the device in a state.
func (x *loading) drawers() func(*explore.View) []int {
	known := map[*explore.View][]int{}
	return func(v *explore.View) []int {
		if _, ok := known[v]; !ok {
			known[v], _ = x.look(v)
		}
		return known[v]
	}
}

// peak is what passes the device while one load starts and all else runs, over the states in which it draws through
// the device.
func (x *loading) peak(load int, more float64, draws func(*explore.View) []int) (derive.Number, *explore.View) {
	steady, in := x.p.Circuit.While(x.edge, func(v *explore.View) bool { return v.Transit == nil && slices.Contains(draws(v), load) }, func(int) bool { return true })
	amps := min(x.worst.Peak.Value, steady+more)
	return derive.Compute("largest current in "+lint.Quote(x.fuse)+" while "+lint.Quote(x.p.Net.Loads[load].Load)+" starts", "Ipeak", amps, "A", "one load starting, all else running", x.worst.Peak), in
}

// place says in which state the device is loaded most, and what goes dark with it.
func (x *loading) place(v *lint.Verdict, in *explore.View) {
	if in == nil {
		return
	}
	_, behind := x.look(in)
	for _, i := range behind {
		v.Related = append(v.Related, x.p.Net.Loads[i].Addr)
	}
	v.State = x.p.Circuit.StateIn(x.edge, in)
}
