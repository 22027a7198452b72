package load

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// gear is a load or a converter's input, with the lowest that it is seen at.
type gear struct {
	p          *lint.Pass
	block      schema.Block
	port       network.Port
	home       *network.Zone // where its low volts are asked; nil where they are not
	load       int           // -1 for a converter
	converter  int           // -1 for a load
	min, max   schema.Quantity
	critical   bool
	ownBattery bool
	heats      bool
	socket     bool
	lamp       bool

	steady, starting, cranking dip
	lacks                      []lint.Missing
	complete                   bool
}

// dip is the lowest voltage that gear was seen at.
type dip struct {
	low     *circuit.Low // nil where it was seen nowhere
	volts   float64
	starter *schema.Load // what starts; nil in steady use
}

func (d *dip) below(least derive.Number) bool {
	return d.low != nil && least.Kind != 0 && d.volts < least.Value*(1-1e-9)
}

// take notes volts that are lower than those before. Below zero the gear runs backwards, as a winch does: what
// it gets at most then is no less than it gets the right way round.
func (d *dip) take(low *circuit.Low, volts float64, starter *schema.Load) {
	if volts < 0 {
		return
	}
	if d.low == nil || volts < d.volts {
		*d = dip{low, volts, starter}
	}
}

// when tells of a dip what makes it.
func (d *dip) when() string {
	if d.starter == nil {
		return ""
	}
	return " while " + lint.Quote(d.starter) + " starts"
}

func (d *dip) number(g *gear) derive.Number {
	return d.low.VoltsOf("lowest volts at "+lint.Quote(g.block), "Vlow", d.volts, g.port)
}

// survey asks all gear of a plan, zone by zone and state by state.
type survey struct {
	p        *lint.Pass
	gear     []*gear
	starters []int
	done     map[*network.Zone]bool
	left     int // states of a zone that may still be looked at
}

func newSurvey(p *lint.Pass) *survey {
	s := &survey{p: p, done: map[*network.Zone]bool{nil: true}, starters: p.Circuit.Starters()}
	for i := range p.Net.Loads {
		l := &p.Net.Loads[i]
		k := l.Kind.Value
		s.gear = append(s.gear, &gear{block: l.Load, port: l.Port, load: i, converter: -1, min: l.VoltageMin, max: l.VoltageMax,
			critical:   l.Critical.Set && l.Critical.Value != "none" || !l.Critical.Set && (k == "alarm" || k == "brake" || k == "bilge-pump"),
			ownBattery: l.OwnBattery.True(), heats: k == "heater", socket: l.Receptacle.True(), lamp: k == "light"})
	}
	for i := range p.Net.Converters {
		x := &p.Net.Converters[i]
		g := &gear{block: x.Converter, port: x.In, load: -1, converter: i, socket: x.Kind.Value == "diode"}
		if x.Input != nil {
			g.min, g.max = x.Input.VoltageMin, x.Input.VoltageMax
		}
		s.gear = append(s.gear, g)
	}
	for _, g := range s.gear {
		g.p, g.complete, g.home = p, true, p.Circuit.LowZone(p.Net.ZoneOf(g.port.Hot))
	}
	return s
}

// zone looks at the states of a zone: in steady use first, then while each hard start goes on and while
// engines are cranked.
func (s *survey) zone(z *network.Zone) {
	s.left = circuit.MostLows
	list := s.p.Circuit.Occasions(z)
	for _, look := range []func(*explore.View, func(int) bool){s.steady, s.starts} {
		for _, o := range list {
			for _, v := range o.Views {
				if v.Transit == nil && s.left > 0 {
					look(v, o.Runs)
				}
			}
		}
	}
	for _, g := range s.gear {
		for _, o := range list {
			g.complete = g.complete && (o.Complete && s.left > 0 || g.home != z)
		}
	}
}

func (s *survey) steady(v *explore.View, runs func(int) bool) {
	k := circuit.LowCase{Runs: runs}
	s.see(s.p.Circuit.Low(v, k), nil, runs)
	s.left--
	for _, i := range v.Zone.Inputs {
		if g := s.gear[len(s.p.Net.Loads)+i]; g.triggered() && g.home == v.Zone && v.HasConverter(i) {
			if low, ok := s.p.Circuit.Started(v, k, i); ok {
				g.seen(low)
			}
		}
	}
}

func (s *survey) starts(v *explore.View, runs func(int) bool) {
	for _, i := range v.Zone.Loads {
		if l := &s.p.Net.Loads[i]; l.Surge.Set && v.HasLoad(i) && runs(i) && !slices.Contains(s.starters, i) {
			s.see(s.p.Circuit.Low(v, circuit.LowCase{Runs: runs, Starting: i + 1}), l.Load, runs)
			s.left--
		}
	}
	for _, i := range s.starters {
		if slices.Contains(v.Zone.Loads, i) && v.HasLoad(i) && runs(i) {
			s.see(s.p.Circuit.Low(v, circuit.LowCase{Runs: runs, Full: true, Cranking: true}), s.p.Net.Loads[i].Load, runs)
			s.left--
			return
		}
	}
}

// see notes what all gear of the zone stands at.
func (s *survey) see(low *circuit.Low, starter *schema.Load, runs func(int) bool) {
	v := low.View
	for _, g := range s.gear {
		switch {
		case g.home != v.Zone || g.load >= 0 && (!v.HasLoad(g.load) || !runs(g.load)) || g.converter >= 0 && !v.HasConverter(g.converter):
		case starter != nil && g.lamp && !(starter.SurgeTime.Set && starter.SurgeTime.Value >= 1):
		case g.triggered():
		case low.Case.Cranking:
			if volts, ok := low.Across(g.port); ok && !slices.Contains(s.starters, g.load) {
				g.cranking.take(low, volts, starter)
			}
		case starter != nil:
			if volts, ok := g.at(low); ok && !low.Starved(g.port) {
				g.starting.take(low, volts, starter)
			}
		case !slices.Contains(s.starters, g.load):
			g.seen(low)
		}
	}
}

// triggered says whether a voltage starts it: it is asked at that, and draws nothing below.
func (g *gear) triggered() bool {
	return g.converter >= 0 && g.p.Net.Converters[g.converter].Trigger.Set && !g.p.Net.Converters[g.converter].Trigger.Ignition
}

// at is what gear stands at: where it has no operating point itself, at the last that there is.
func (g *gear) at(low *circuit.Low) (float64, bool) {
	for i := range low.Pulls {
		if x := &low.Pulls[i]; x.Port == g.port && x.Folds {
			return x.Volts, true
		}
	}
	return low.AtMost(g.port)
}

// seen notes a state in steady use, and what is missing of it.
func (g *gear) seen(low *circuit.Low) {
	volts, ok := g.at(low)
	beside := low.Beside(g.port)
	switch {
	case !ok:
		for _, m := range low.Lacks {
			if low.SourceAt(m.Subject, g.port) {
				g.lack(m)
			}
		}
		return
	case low.Starved(g.port):
		return
	case beside != nil && beside.Port != g.port && !(&dip{low: low, volts: volts}).below(g.least()):
		g.lack(lint.Missing{Subject: g.p.Net.Nodes[beside.Port.Hot].Addr, Attribute: circuit.NoPoint})
		return
	}
	g.steady.take(low, volts, nil)
	if len(low.Lacks) == 0 {
		return
	}
	way, _ := low.Way(g.port)
	for _, m := range low.Lacks {
		if slices.Contains(way.Lacks, m) || m.Subject == "plan" || low.PartAt(m.Subject, g.port) {
			g.lack(m)
		}
	}
}

func (g *gear) lack(m lint.Missing) {
	if !slices.Contains(g.lacks, m) {
		g.lacks = append(g.lacks, m)
	}
}

// lossyShare is the share of the volts that sound wiring loses at most on the way to an ordinary load.
const lossyShare = 0.1

// lossy says whether the way from the supply takes more of the volts than sound wiring does: else an empty
// battery makes the dip, and no wire.
func (d *dip) lossy(g *gear) bool {
	return d.low.Terminals(g.port)-d.volts > lossyShare*d.low.Open(g.port)
}

// fullToo says whether the volts are below the least on full batteries too.
func (d *dip) fullToo(g *gear, least derive.Number) bool {
	k := d.low.Case
	k.Full = true
	volts, ok := g.at(g.p.Circuit.Low(d.low.View, k))
	return ok && volts < least.Value*(1-1e-9)
}

// state is the positions that matter to a dip: those on the way, the sources that are there, and those
// without which more would feed it.
func (d *dip) state(g *gear, least derive.Number) []lint.Position {
	v := d.low.View
	way, _ := d.low.Way(g.port)
	on := map[int]bool{}
	for _, e := range way.Edges {
		for _, l := range g.p.Net.Edges[e].When {
			on[l.Var] = true
		}
	}
	for i := range g.p.Net.Sources {
		if s := &g.p.Net.Sources[i]; s.Present >= 0 && v.Zone.Local(s.Hot) >= 0 && v.HasSource(i) && v.Joined(s.Hot, g.port.Hot) {
			on[s.Present] = true
		}
	}
	var vars, rest []int
	for _, i := range v.Zone.Vars {
		if on[i] {
			vars = append(vars, i)
		} else {
			rest = append(rest, i)
		}
	}
	if len(rest) > mostWeighed { // each is solved for: of very many, those that switch loads on are taken as on, like all else
		rest = slices.DeleteFunc(rest, g.p.Space.Leaf)
	}
	if len(rest) <= mostWeighed {
		rest = v.Keep(rest, func(o *explore.View) bool {
			volts, ok := g.at(g.p.Circuit.Low(o, d.low.Case))
			return ok && volts < least.Value*(1-1e-9)
		})
	}
	return v.State(append(vars, rest...))
}

// mostWeighed bounds the positions of a state of which each is weighed.
const mostWeighed = 24
