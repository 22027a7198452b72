package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// lows is the least that loads and converter inputs of a zone are solved to stand at, with everything
// on and every battery empty, over all states.
type lows struct {
	loads, inputs map[int]stand
	partial       bool // some state was not solved, or lacks something: the true ones may be lower
	cut           bool // there are more states than are solved
}

// stand is what one part is solved to stand at.
type stand struct {
	volts    float64
	at       *Point
	collapse bool // a supply that holds its volts has no operating point with this part on, in some state
	short    bool // what feeds it is starved in some state
	unsure   bool // the solver gave up in some state
}

// mostSolved bounds the states of one zone that are solved for its lowest volts: beyond it a constant power's
// current is not known.
const mostSolved = 2048

// lowsOf solves a zone's states. More load never raises a voltage, so everything that may run at
// once is on, and nothing charges.
func (c *Circuit) lowsOf(z *network.Zone) *lows {
	if l, ok := c.lows[z]; ok {
		return l
	}
	l := &lows{loads: map[int]stand{}, inputs: map[int]stand{}}
	c.lows[z] = l // a ring of questions ends here
	at := c.LowZone(z)
	for _, o := range c.occasions(z) {
		list, complete := c.Space.Views(at, o.filter)
		if l.partial = l.partial || !complete; len(list) > mostSolved {
			l.cut = true
			c.Space.Skip()
			continue
		}
		for _, v := range list {
			l.take(c, c.Low(v, LowCase{Runs: o.runs}))
		}
	}
	return l
}

func (l *lows) take(c *Circuit, low *Low) {
	l.partial = l.partial || len(low.Lacks) > 0
	out := map[network.Port]bool{} // of what was taken out, and draws nothing at the volts that are left
	for _, x := range low.Pulls {
		of, i := l.inputs, x.Converter
		if x.Load >= 0 {
			of, i = l.loads, x.Load
		}
		out[x.Port] = true
		have := of[i]
		have.collapse, have.short, have.unsure = have.collapse || x.Folds, have.short || x.Short, have.unsure || x.Unsure
		of[i] = have
	}
	p := low.Rest()
	if !p.Found {
		return
	}
	keep := func(of map[int]stand, i int, port network.Port) {
		if u, ok := p.Across(port); ok && !out[port] {
			if have := of[i]; have.at == nil || u < have.volts {
				have.volts, have.at = u, p
				of[i] = have
			}
		}
	}
	for i := range p.wiring.loads {
		keep(l.loads, i, c.Net.Loads[i].Port)
	}
	for i := range p.wiring.inputs {
		keep(l.inputs, i, c.Net.Converters[i].In)
	}
}

// solvedLow is the least volts that load or input i is solved to stand at. Where it is not solved in all
// states the share stands in, a fixed one of what the source holds, unless the solved volts are lower.
func (c *Circuit) solvedLow(of func(*lows) map[int]stand, i int, port network.Port, share derive.Number) (derive.Number, []derive.Missing) {
	z := c.Net.ZoneOf(port.Hot)
	if z == nil {
		return share, nil
	}
	l := c.lowsOf(z)
	s := of(l)[i]
	if s.collapse {
		return share, []derive.Missing{{Subject: c.Net.Nodes[port.Hot].Addr, Attribute: NoPoint}}
	}
	switch {
	case l.cut:
		return share, []derive.Missing{unlisted}
	case s.unsure:
		return share, []derive.Missing{unsolved}
	case s.at == nil, (s.short || l.partial) && s.volts >= share.Value:
		return share, nil
	}
	if n, ok := s.at.VoltsAt(port); ok {
		return n, nil
	}
	return share, nil
}

// unlisted is what is missing where there are more states than are solved.
var unlisted = derive.Missing{Subject: "plan", Attribute: "a solution of its circuit in each of its states, which are too many"}

// NoPoint is what a current lacks where a constant power has no operating point.
const NoPoint = "an operating point (converter/constant-power-collapse)"
