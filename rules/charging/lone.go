package charging

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// lone asks what happens on the wires of a charger that has no battery left.
type lone struct {
	*charger
	p       *lint.Pass
	wild    known // whether it needs a battery to hold its volts
	lacks   []lint.Missing
	home    *network.Zone // its wires, and those behind diodes
	up      *network.Zone // where its power comes from; nil where it needs none
	ties    []int         // variables of its wires on which that depends too
	events  []*event
	feeds   map[string]*feed
	unknown bool // a search for its power met its bound
}

// event is what takes the battery away: the BMS of a source opens, or, with -1, a state without one.
type event struct {
	gone int
	seen int
	best *bare
}

// bare is a state in which no battery is left.
type bare struct {
	on      []schema.Block // what else is on the wires
	state   []lint.Position
	assumed *lint.Missing // what the state rests on that the plan does not say
}

// feed is an answer to whether a charger has power.
type feed struct {
	view *explore.View // in which it has; nil where it never has
}

// places joins the zones of chargers, each set once.
type places struct {
	p     *lint.Pass
	zones map[string]*network.Zone
}

// around is the zone of a charger's output with those behind diodes. Where sources stand on each other
// it takes in what they stand on, with all that can feed it.
func (at *places) around(c *charger) *network.Zone {
	n := at.p.Net
	zones, nodes, key, stacked := []*network.Zone{n.ZoneOf(c.at.Hot)}, []network.NodeID{c.at.Hot}, "", false
	for i := 0; i < len(zones); i++ {
		key += fmt.Sprint(zones[i].ID, " ")
		for _, k := range zones[i].Inputs {
			out := n.Converters[k].Out.Hot
			if z := n.ZoneOf(out); n.Converters[k].Kind.Value == "diode" && z != nil && !slices.Contains(zones, z) {
				zones, nodes = append(zones, z), append(nodes, out)
			}
		}
		for _, s := range zones[i].Sources {
			stacked = stacked || n.ZoneOf(n.Sources[s].Ret) != nil
		}
	}
	switch {
	case stacked:
		return n.Together(nodes...)
	case at.zones[key] == nil:
		at.zones[key] = n.Join(zones...)
	}
	return at.zones[key]
}

func newLone(at *places, c *charger) *lone {
	l := &lone{charger: c, p: at.p, home: at.around(c), feeds: map[string]*feed{}}
	l.nature()
	if c.behind != c.at {
		l.up = l.p.Net.Together(c.behind.Hot)
		for _, i := range l.home.Vars {
			if l.p.Space.Tied(l.up, i) {
				l.ties = append(l.ties, i)
			}
		}
	}
	if c.source < 0 || !l.alternator() {
		l.events = append(l.events, &event{gone: -1})
	}
	for _, i := range l.home.Sources {
		if s := l.p.Net.Sources[i].Source; s.Kind.Value == "battery" && (s.BMS != nil || s.ColdChargeCutoff.True() || !tables.LeadAcid(s.Chemistry.Value)) {
			l.events = append(l.events, &event{gone: i})
		}
	}
	return l
}

func (l *lone) alternator() bool { return l.p.Net.Sources[l.source].Kind.Value == "alternator" }

// nature is whether it holds its own volts.
func (l *lone) nature() {
	if l.source >= 0 {
		s := l.p.Net.Sources[l.source].Source
		switch {
		case s.Kind.Value != "supply":
			l.wild = yes
		case s.RegulatedVoltage.Set || s.Voltage.Set:
			l.wild = no
		default:
			l.lacks = []lint.Missing{{Subject: s.Addr, Attribute: "regulated_voltage"}}
		}
		return
	}
	c := l.p.Net.Converters[l.converter].Converter
	if l.wild = knownFlag(c.NeedsBattery); l.wild == unknown {
		l.lacks = []lint.Missing{{Subject: c.Addr, Attribute: "needs_battery"}}
	}
}

// bmsLacks is what is not known of a battery's own cut-off.
func bmsLacks(s *schema.Source) []lint.Missing {
	switch {
	case s.BMS != nil || s.ColdChargeCutoff.True():
		return nil
	case !s.Chemistry.Set:
		return []lint.Missing{{Subject: s.Addr, Attribute: "chemistry"}}
	}
	return []lint.Missing{{Subject: s.Addr, Attribute: "bms"}}
}

// span is a port that the charger's current reaches, with the way through diodes before it.
type span struct {
	port network.Port
	way  []int
}

func (l *lone) spans(v *explore.View) []span {
	out := []span{{port: l.at}}
	for i := 0; i < len(out); i++ {
		for _, k := range l.home.Inputs {
			c := &l.p.Net.Converters[k]
			passed := slices.ContainsFunc(out, func(s span) bool { return s.port == c.Out })
			if c.Kind.Value == "diode" && !passed && v.HasConverter(k) && v.Joined(c.In.Hot, out[i].port.Hot) {
				way := append(slices.Clone(out[i].way), v.Reach(out[i].port.Hot, nil, nil).To(c.In.Hot).Edges()...)
				out = append(out, span{c.Out, way})
			}
		}
	}
	return out
}

// comes says whether two returns are joined; one that is drawn nowhere is taken to be.
func (l *lone) comes(v *explore.View, a, b network.NodeID) bool {
	return v.Joined(a, b) || a == network.None || b == network.None || len(l.p.Net.At(a)) == 0 || len(l.p.Net.At(b)) == 0
}

// held says whether a battery, or a string of them, is across one of the ports, but for one that is gone.
func (l *lone) held(v *explore.View, spans []span, gone int) bool {
	for _, s := range spans {
		ends, in := []network.NodeID{s.port.Hot}, map[int]bool{gone: true}
		for i := 0; i < len(ends); i++ {
			for _, k := range l.home.Sources {
				b := &l.p.Net.Sources[k]
				if in[k] || b.Kind.Value != "battery" || !v.HasSource(k) || !v.Joined(b.Hot, ends[i]) {
					continue
				}
				if l.comes(v, b.Ret, s.port.Ret) {
					return true
				}
				in[k] = true
				ends = append(ends, b.Ret)
			}
		}
	}
	return false
}

// loses says whether an event leaves the charger without a battery in a view; a BMS that opens must have
// been all that held it.
func (l *lone) loses(v *explore.View, spans []span, gone int) bool {
	if gone < 0 {
		return !l.held(v, spans, -1)
	}
	return v.Transit == nil && v.HasSource(gone) && !l.held(v, spans, gone) && l.held(v, spans, -1)
}

// note keeps a state in which an event leaves the charger running alone, if it is told by fewer positions.
func (l *lone) note(e *event, v *explore.View, spans []span) {
	assumed := v.Transit != nil && v.Transit.Throw.Assumed
	if assumed && e.best != nil {
		return
	}
	on, way := l.beside(v, spans)
	if len(on) == 0 && (l.source < 0 || !l.alternator()) {
		return
	}
	power, ok := l.powered(v, e.gone)
	if !ok {
		return
	}
	if !assumed {
		e.seen++
	}
	still := func(w *explore.View) bool { return !l.held(w, l.spans(w), e.gone) }
	x := &bare{on: on, state: v.State(v.Keep(l.home.Vars, still))}
	var sources []int
	if l.source >= 0 {
		sources = append(sources, l.source)
	}
	if e.gone >= 0 {
		sources, way = append(sources, e.gone), append(way, l.to(v, spans, l.p.Net.Sources[e.gone].Hot)...)
	}
	x.state = append(append(x.state, v.Witness(way, sources...)...), power...)
	x.state = lint.SortState(x.state)
	if assumed {
		x.assumed = &lint.Missing{Subject: l.p.Net.Vars[v.Transit.Var].Addr, Attribute: "transition"}
	}
	if b := e.best; b == nil || b.assumed != nil && x.assumed == nil || (b.assumed == nil) == (x.assumed == nil) && len(x.state) < len(b.state) {
		e.best = x
	}
}

// to is the way from the charger to a live node.
func (l *lone) to(v *explore.View, spans []span, id network.NodeID) []int {
	for _, s := range spans {
		if v.Joined(s.port.Hot, id) {
			return append(slices.Clone(s.way), v.Reach(s.port.Hot, nil, nil).To(id).Edges()...)
		}
	}
	return nil
}

// beside lists the loads and converter inputs on the charger's wires, what is critical first, and the
// way to one of them on which the fewest positions matter.
func (l *lone) beside(v *explore.View, spans []span) (on []schema.Block, way []int) {
	var rest []schema.Block
	at := map[schema.Block]network.Port{}
	put := func(b schema.Block, p network.Port, critical bool) {
		across := slices.ContainsFunc(spans, func(s span) bool { return v.Joined(s.port.Hot, p.Hot) && l.comes(v, p.Ret, s.port.Ret) })
		switch {
		case !across:
			return
		case critical:
			on = append(on, b)
		default:
			rest = append(rest, b)
		}
		at[b] = p
	}
	for _, i := range l.home.Loads {
		x := &l.p.Net.Loads[i]
		if v.HasLoad(i) {
			put(x.Load, x.Port, x.Kind.Value == "alarm" || x.Critical.Set && x.Critical.Value != "none")
		}
	}
	for _, i := range l.home.Inputs {
		x := &l.p.Net.Converters[i]
		if i != l.converter && x.Kind.Value != "diode" && v.HasConverter(i) {
			put(x.Converter, x.In, false)
		}
	}
	on = append(on, rest...)
	for i, b := range on {
		if w := l.to(v, spans, at[b].Hot); i == 0 || len(v.Witness(w)) < len(v.Witness(way)) {
			way = w
		}
	}
	return on, way
}

// powered says whether the charger can have power in a view, from something else than what is gone, and
// the positions by which it has.
func (l *lone) powered(v *explore.View, gone int) ([]lint.Position, bool) {
	if l.up == nil {
		return nil, true
	}
	key := fmt.Sprint(gone)
	for _, i := range l.ties {
		key += fmt.Sprint(" ", v.At(i))
	}
	live := func(w *explore.View) *explore.Energy {
		return w.Live(nil, func(s *network.Source) bool { return gone >= 0 && s.Addr == l.p.Net.Sources[gone].Addr })
	}
	f := l.feeds[key]
	if f == nil {
		found, sure := l.p.Space.Agreeing(v, l.up, func(w *explore.View) bool { return live(w).Feeds(l.behind) })
		f = &feed{found}
		l.feeds[key], l.unknown = f, l.unknown || !sure
	}
	if f.view == nil {
		return nil, false
	}
	edges, sources := live(f.view).Way(l.behind)
	return f.view.Witness(edges, sources...), true
}

// endures is the most volts that a part is written to take.
func endures(b schema.Block) derive.Number {
	q, name := schema.Quantity{}, "voltage_max"
	switch x := b.(type) {
	case *schema.Load:
		q = x.VoltageMax
	case *schema.Converter:
		if name = "input voltage_max"; x.Input != nil {
			q = x.Input.VoltageMax
		}
	}
	if !q.Set {
		return derive.Number{}
	}
	return derive.Read("most volts of "+lint.Quote(b), "Vmax", q.Value, "V", b.Header().Addr, name, q.Range)
}
