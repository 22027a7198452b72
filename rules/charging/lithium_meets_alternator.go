package charging

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

var lithiumMeetsAlternator = &lint.Rule{
	ID:      "charging/lithium-meets-alternator",
	Claim:   "A lithium battery can be joined to an alternator, or to the starting battery that it keeps, with nothing in between that limits current.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "battery",
	When: "In some state, or while a switch is thrown, a way leads from a lithium battery to an alternator or a starting battery through conductors, devices, contacts, " +
		"plugs, diodes or voltage-sensing isolators, and through no converter that limits its current.",
	Why: "A lithium pack's resistance is so low that hundreds of amperes can flow, into the pack or out of it into wiring and electronics made for tens. Through a tow " +
		"plug, or in a vehicle, that is danger: it happens in a plug behind a moving car. Elsewhere warning: a hot alternator, and a spike when the pack's own " +
		"cut-off opens.",
	Numbers: "Current at first contact at both corners: the pack rested full against the other battery empty, and the alternator's regulated volts against the pack empty, " +
		"over low resistances and both runs of wire.",
	Not: "What the regulator or the pack's electronics do in the second after. An alternator with an external regulator made for its own lithium bank: a plan cannot " +
		"say so, and it is reported.",
	Offer: "A current-limiting, one-way converter between the two (or a boost into the pack's solar input), with a device at both ends; failing that a selector or " +
		"interlock by which no position joins them.",
	Meter: "With the plug unmated, volts between the two sides before they first meet; a clamp meter on the run at first contact, with a fuse in the way.",
	Cites: []lint.Citation{
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "trade articles on lithium beside lead-acid, and on alternator heat, were read"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BreaksFirst, remedy.OneWayBetween, remedy.WithoutPosition},
	Folds:  []string{"charging/alternator-overload", "source/unlike-in-parallel", "charging/drains-starting-battery"},
	Since:  "0.1",
	Run:    meetsAlternator,
}

func meetsAlternator(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if b := &p.Net.Sources[i]; b.Kind.Value == "battery" && (tables.Lithium(b.Chemistry.Value) || !b.Chemistry.Set) {
			out = append(out, meets(p, i))
		}
	}
	return out
}

// meets asks one battery; an alternator before a starting battery, a plain way before a doubtful one.
func meets(p *lint.Pass, pack int) lint.Verdict {
	b := p.Net.Sources[pack].Source
	r := newRegion(p, pack)
	best, complete := r.search()
	switch {
	case best == nil && !complete:
		return lint.Unfinished(b, lint.Danger)
	case best == nil:
		return lint.Verdict{Subject: b, Outcome: lint.Holds}
	}
	return best.verdict(p, pack)
}

// region is the lithium battery's zone with every zone that it reaches through diodes and through
// converters that are not said to limit.
type region struct {
	p    *lint.Pass
	pack int
	zone *network.Zone
}

// open says whether a converter lets current through unlimited: yes, no or unknown.
func open(c *network.Converter) known {
	switch {
	case c.Kind.Value == "diode" || c.LimitsCurrent.False():
		return yes
	case c.LimitsCurrent.True():
		return no
	}
	return unknown
}

func newRegion(p *lint.Pass, pack int) *region {
	n := p.Net
	r := &region{p: p, pack: pack, zone: n.ZoneOf(n.Sources[pack].Hot)}
	if r.zone == nil {
		return r
	}
	zones, in := []*network.Zone{r.zone}, map[*network.Zone]bool{r.zone: true}
	for i := 0; i < len(zones); i++ {
		for j := range n.Converters {
			a, b := n.ZoneOf(n.Converters[j].In.Hot), n.ZoneOf(n.Converters[j].Out.Hot)
			if a == nil || b == nil || a.AC || b.AC || open(&n.Converters[j]) == no || a != zones[i] && b != zones[i] {
				continue
			}
			for _, z := range []*network.Zone{a, b} {
				if !in[z] {
					in[z] = true
					zones = append(zones, z)
				}
			}
		}
	}
	r.zone = n.Join(zones...)
	if nodes := stringNodes(n, zones); nodes != nil {
		r.zone = n.Together(nodes...)
	}
	return r
}

// stringNodes lists live nodes of zones and of all that their batteries stand on or carry; nil where
// no battery of theirs is in series with another.
func stringNodes(n *network.Network, zones []*network.Zone) []network.NodeID {
	in := map[*network.Zone]bool{}
	var nodes []network.NodeID
	add := func(z *network.Zone) bool {
		if z == nil || in[z] || len(z.Nodes) == 0 {
			return false
		}
		in[z], nodes = true, append(nodes, z.Nodes[0])
		return true
	}
	for _, z := range zones {
		add(z)
	}
	stacked := false
	for grown := true; grown; {
		grown = false
		for i := range n.Sources {
			hot, ret := n.ZoneOf(n.Sources[i].Hot), n.ZoneOf(n.Sources[i].Ret)
			if hot == nil || ret == nil || !in[hot] && !in[ret] {
				continue
			}
			stacked = true
			grown = add(hot) || grown
			grown = add(ret) || grown
		}
	}
	if !stacked {
		return nil
	}
	return nodes
}

// encounter is one way from the battery to what it must not meet.
type encounter struct {
	view   *explore.View
	target int
	edges  []int
	places []string
	doubt  string // a converter of which the plan does not say whether it limits; "" where none
	passed []string
	tow    bool

	alternator bool // else a starting battery
	assumed    bool // joined only in an overlap that the plan does not rule out
}

// rank orders encounters, the plainest first: certain before doubtful, through the tow plug, in a
// resting state, with the alternator itself.
func (e *encounter) rank() int {
	rank := 0
	for i, worse := range []bool{!e.alternator, e.view.Transit != nil, !e.tow, e.assumed, e.doubt != ""} {
		if worse {
			rank |= 1 << i
		}
	}
	return rank
}

func (r *region) search() (best *encounter, complete bool) {
	if r.zone == nil {
		return nil, true
	}
	views, complete := r.p.Space.Views(r.zone, r.p.Space.About(r.p.Space.Closed(explore.All())))
	if !complete {
		views, complete = r.sought(views)
	}
	for _, v := range views {
		if !v.HasSource(r.pack) {
			continue
		}
		for _, doubtful := range []bool{false, true} {
			if e := r.walk(v, doubtful); e != nil && (best == nil || e.rank() < best.rank()) {
				best = e
			}
		}
	}
	return best, complete
}

// sought looks where the bound has cut the list: for a sure meeting, and for one in doubt.
func (r *region) sought(views []*explore.View) ([]*explore.View, bool) {
	complete := true
	for _, doubtful := range []bool{false, true} {
		more, known := r.p.Space.Sought(r.zone, explore.All(), views, func(v *explore.View) bool {
			return v.HasSource(r.pack) && r.walk(v, doubtful) != nil
		})
		views, complete = more, complete && known
	}
	return views, complete
}

// step is how a walk came to a node: over an edge, or through a converter.
type step struct {
	from      network.NodeID
	edge      int // -1 where through a converter
	converter int
}

// walk goes from the battery over closed edges, and through converters that let it, until it comes to
// an alternator or a starting battery.
func (r *region) walk(v *explore.View, doubtful bool) *encounter {
	n := r.p.Net
	row := v.Series(r.pack)
	came := map[network.NodeID]step{}
	var queue []network.NodeID
	for _, i := range row.Tops() {
		if hot := n.Sources[i].Hot; came[hot] == (step{}) {
			came[hot], queue = step{from: network.None}, append(queue, hot)
		}
	}
	visit := func(to network.NodeID, s step) {
		if _, seen := came[to]; !seen && to != network.None && !n.Nodes[to].Return {
			came[to] = s
			queue = append(queue, to)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, e := range n.At(at) {
			if v.Conducts(e) {
				visit(n.Edges[e].Other(at), step{at, e, -1})
			}
		}
		for i := range n.Converters {
			if c := &n.Converters[i]; v.HasConverter(i) && (open(c) == yes || doubtful && open(c) == unknown) {
				if c.In.Hot == at {
					visit(c.Out.Hot, step{at, -1, i})
				} else if c.Out.Hot == at {
					visit(c.In.Hot, step{at, -1, i})
				}
			}
		}
	}
	for _, alternator := range []bool{true, false} {
		for _, i := range v.Zone.Sources {
			s := &n.Sources[i]
			if _, ok := came[s.Hot]; ok && i != r.pack && v.HasSource(i) && isTarget(s, alternator) {
				if e := r.trace(v, i, came); e.doubt != "" || e.passed != nil || row.Meets(v.Series(i)) {
					return e
				}
			}
		}
	}
	return nil
}

func isTarget(s *network.Source, alternator bool) bool {
	if alternator {
		return s.Kind.Value == "alternator"
	}
	return s.Kind.Value == "battery" && s.Role.Value == "starting"
}

func (r *region) trace(v *explore.View, target int, came map[network.NodeID]step) *encounter {
	n := r.p.Net
	e := &encounter{view: v, target: target, alternator: n.Sources[target].Kind.Value == "alternator"}
	var back []string
	put := func(place string) {
		if len(back) == 0 || back[len(back)-1] != place {
			back = append(back, place)
		}
	}
	for at := n.Sources[target].Hot; ; {
		put(n.Nodes[at].Place())
		s := came[at]
		if s.from == network.None {
			break
		}
		if s.edge >= 0 {
			x := &n.Edges[s.edge]
			e.edges = append(e.edges, s.edge)
			if k, ok := schema.Lookup[*schema.Connector](n.Plan, x.Addr); ok && x.Kind == network.Mate {
				e.tow = e.tow || k.Tow.True()
			}
		} else {
			c := &n.Converters[s.converter]
			e.passed = append(e.passed, c.Addr)
			if open(c) == unknown {
				e.doubt = c.Addr
			}
		}
		at = s.from
	}
	for i := len(back) - 1; i >= 0; i-- {
		e.places = append(e.places, back[i])
	}
	if t := v.Transit; t != nil && t.Throw.Assumed {
		e.assumed = true
	}
	return e
}

func (e *encounter) verdict(p *lint.Pass, pack int) lint.Verdict {
	b, t := p.Net.Sources[pack].Source, p.Net.Sources[e.target].Source
	v := lint.Verdict{Subject: b, Outcome: lint.Violated, Word: lint.Warning, Path: e.places, Related: append([]string{t.Addr}, e.passed...),
		State: e.view.Witness(append(slices.Clone(e.edges), e.view.Between(p.Net.Sources[pack].Ret, p.Net.Sources[e.target].Ret).Edges()...), pack, e.target), Cause: t.Addr}
	if e.tow || p.Plan.Graded("vehicle") {
		v.Word = lint.Danger
	}
	for _, x := range e.edges {
		if k := p.Net.Edges[x].Kind; k == network.Contact || k == network.Mate {
			v.Related = append(v.Related, p.Net.Edges[x].Addr)
		}
	}
	v.Numbers = e.currents(p, pack)
	what := "the starting battery " + lint.Quote(t)
	if t.Kind.Value == "alternator" {
		what = "the alternator " + lint.Quote(t)
	}
	v.Message = fmt.Sprintf("Lithium battery %s meets %s with nothing between that limits current.", lint.Quote(b), what)
	if k := len(v.Numbers); k > 0 {
		v.Message += fmt.Sprintf(" Up to %s flows at first contact.", v.Numbers[k-1].Text())
	}
	switch {
	case !b.Chemistry.Set:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.Addr, Attribute: "chemistry"}}
		v.Message = fmt.Sprintf("%s can meet %s with nothing between that limits current, and the plan does not say what chemistry it is.", lint.Quote(b), what)
	case e.doubt != "":
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: e.doubt, Attribute: "limits_current"}}
		v.Message = fmt.Sprintf("Lithium battery %s reaches %s through %s, and the plan does not say that it limits current.",
			lint.Quote(b), what, lint.Quote(p.Plan.Block(e.doubt)))
	case e.assumed:
		sw := p.Net.Vars[e.view.Transit.Var].Addr
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: sw, Attribute: "transition"}}
		v.Message = fmt.Sprintf("Unless %s breaks before it makes, lithium battery %s meets %s for a moment when it is thrown.",
			lint.Quote(p.Plan.Block(sw)), lint.Quote(b), what)
	}
	return v
}

// currents are what flows at first contact: out of the pack into the vehicle, and into the pack. The
// larger comes last; what the plan leaves out leaves them out, and so do strings drawn as blocks.
func (e *encounter) currents(p *lint.Pass, pack int) []derive.Number {
	b, t := &p.Net.Sources[pack], &p.Net.Sources[e.target]
	volts, m := p.Circuit.BatteryVolts(b.Source)
	low, _, _, m2 := p.Circuit.BatteryOhms(b.Source)
	if len(m)+len(m2) > 0 || len(e.passed) > 0 || e.view.Series(pack).Stacked() || e.view.Series(e.target).Stacked() {
		return nil
	}
	wire := doubled(p, e.edges)
	if t.Kind.Value == "alternator" {
		if !t.RegulatedVoltage.Set {
			return nil
		}
		reg := derive.Read("regulated volts of "+lint.Quote(t.Source), "Vreg", t.RegulatedVoltage.Value, "V", t.Addr, "regulated_voltage", t.RegulatedVoltage.Range)
		return []derive.Number{derive.Compute("current into the pack at first contact", "I", max(0, reg.Value-volts.Empty.Value)/(low.Value+wire.Value), "A",
			"I = (Vreg - Vempty) / (Rlow + Rw)", reg, volts.Empty, low, wire)}
	}
	other, m := p.Circuit.BatteryVolts(t.Source)
	lowT, _, _, m2 := p.Circuit.BatteryOhms(t.Source)
	if len(m)+len(m2) > 0 {
		return nil
	}
	return []derive.Number{derive.Compute("current out of the pack at first contact", "I", max(0, volts.Rested.Value-other.Empty.Value)/(low.Value+lowT.Value+wire.Value), "A",
		"I = (Vrest of the pack - Vempty of the other) / (Rlow of both + Rw)", volts.Rested, other.Empty, low, lowT, wire)}
}

// doubled is the resistance of a live way and of the return beside it.
func doubled(p *lint.Pass, edges []int) derive.Number {
	one, _ := p.Circuit.Loop(edges, circuit.Operating)
	return derive.Compute("resistance of the wire between the two", "Rw", 2*one.Value, "ohm", "twice the live runs: the return runs beside them", one.From...)
}
