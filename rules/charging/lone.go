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
	zones, stacked := at.p.Net.Onward(c.at.Hot)
	if stacked {
		return at.p.Net.JoinFed(zones...)
	}
	key := ""
	for _, z := range zones {
		key += fmt.Sprint(z.ID, " ")
	}
	if at.zones[key] == nil {
		at.zones[key] = at.p.Net.Join(zones...)
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
	if !l.alternator() {
		l.events = append(l.events, &event{gone: -1})
	}
	for _, i := range l.home.Sources {
		if s := l.p.Net.Sources[i].Source; s.Kind.Value == "battery" && (s.BMS != nil || s.ColdChargeCutoff.True() || !tables.LeadAcid(s.Chemistry.Value)) {
			l.events = append(l.events, &event{gone: i})
		}
	}
	return l
}

func (l *lone) alternator() bool {
	return l.source >= 0 && l.p.Net.Sources[l.source].Kind.Value == "alternator"
}

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

// loses says whether an event leaves the charger without a battery in a view; a BMS that opens must have
// been all that held it.
func (l *lone) loses(on *explore.Onward, v *explore.View, gone int) bool {
	if gone < 0 {
		return !on.Held(-1)
	}
	return v.Transit == nil && v.HasSource(gone) && !on.Held(gone) && on.Held(-1)
}

// note keeps a state in which an event leaves the charger running alone, if it is told by fewer positions.
func (l *lone) note(e *event, v *explore.View, at *explore.Onward) {
	assumed := v.Transit != nil && v.Transit.Throw.Assumed
	if assumed && e.best != nil {
		return
	}
	state := l.parted(e, v, at)
	on, way := l.beside(v, at, state)
	if len(on) == 0 && !l.alternator() {
		return
	}
	power, ok := l.powered(v, e.gone)
	if !ok {
		return
	}
	if !assumed {
		e.seen++
	}
	x := &bare{on: on, state: lint.SortState(append(append(state, v.Witness(way)...), power...))}
	if assumed {
		x.assumed = &lint.Missing{Subject: l.p.Net.Vars[v.Transit.Var].Addr, Attribute: "transition"}
	}
	if b := e.best; b == nil || b.assumed != nil && x.assumed == nil || (b.assumed == nil) == (x.assumed == nil) && len(x.state) < len(b.state) {
		e.best = x
	}
}

// parted is the positions by which an event leaves the charger without a battery.
func (l *lone) parted(e *event, v *explore.View, at *explore.Onward) []lint.Position {
	still := func(w *explore.View) bool { return !w.Onward(l.at).Held(e.gone) }
	state := v.State(v.Keep(l.home.Vars, still))
	var sources, way []int
	if l.source >= 0 {
		sources = append(sources, l.source)
	}
	if e.gone >= 0 {
		sources, way = append(sources, e.gone), at.To(l.p.Net.Sources[e.gone].Hot)
	}
	return append(state, v.Witness(way, sources...)...)
}

// beside lists the loads and converter inputs on the charger's wires, what is critical first, and the
// way to one of them on which the fewest positions matter. An alternator takes the spike itself: with it
// only those are listed that the state joins to it already.
func (l *lone) beside(v *explore.View, at *explore.Onward, state []lint.Position) (on []schema.Block, way []int) {
	var rest []schema.Block
	ways := map[schema.Block][]int{}
	put := func(b schema.Block, p network.Port, critical bool) {
		if !at.Across(p) {
			return
		}
		ways[b] = at.To(p.Hot)
		further := slices.ContainsFunc(v.Witness(ways[b]), func(q lint.Position) bool { return !slices.Contains(state, q) })
		switch {
		case further && l.alternator():
		case critical:
			on = append(on, b)
		default:
			rest = append(rest, b)
		}
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
		if w := ways[b]; i == 0 || len(v.Witness(w)) < len(v.Witness(way)) {
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
