package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// lows is the least that loads and converter inputs of a zone are solved to stand at, with everything
// on and every battery empty, over all states.
type lows struct{ loads, inputs map[int]stand }

// stand is what one part is solved to stand at.

type stand struct {
	volts    float64
	at       *Point
	collapse *Point // a state in which a supply that holds its volts has no operating point with this part on
}

// mostSolved bounds the states of one zone that are solved for its lowest volts; beyond it a fixed share
// of the source's volts stands in, and the derivation says so.
const mostSolved = 2048

// lowsOf solves a zone's states. More load never raises a voltage, so everything that may run at
// once is on, and nothing charges.
func (c *Circuit) lowsOf(z *network.Zone) *lows {
	if l, ok := c.lows[z]; ok {
		return l
	}
	l := &lows{map[int]stand{}, map[int]stand{}}
	c.lows[z] = l // a ring of questions ends here
	at := c.LowZone(z)
	for _, o := range c.occasions(z) {
		list, _ := c.Space.Views(at, o.filter)
		if len(list) > mostSolved {
			continue
		}
		for _, v := range list {
			l.take(c, c.Low(v, LowCase{Runs: o.runs}))
		}
	}
	return l
}

func (l *lows) take(c *Circuit, low *Low) {
	for _, x := range low.Pulls {
		of, i := l.inputs, x.Converter
		if x.Load >= 0 {
			of, i = l.loads, x.Load
		}
		if have := of[i]; x.Folds && have.collapse == nil {
			have.collapse = low.Point
			of[i] = have
		}
	}
	p := low.Rest()
	if !p.Found {
		return
	}
	keep := func(of map[int]stand, i int, port network.Port) {
		if u, ok := p.Across(port); ok {
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

// solvedLow is the least volts of a load, or of an input; ok is false where no state was solved.
func (c *Circuit) solvedLow(of func(*lows) map[int]stand, z *network.Zone, i int, port network.Port) (n derive.Number, lacks []derive.Missing, ok bool) {
	if z == nil {
		return n, nil, false
	}
	l, known := of(c.lowsOf(z))[i]
	switch {
	case !known:
		return n, nil, false
	case l.collapse != nil:
		return n, []derive.Missing{{Subject: c.Net.Nodes[port.Hot].Addr, Attribute: NoPoint}}, true
	case l.at == nil || len(l.at.Lacks) > 0: // what is missing may lower it: the fixed share stands in
		return n, nil, false
	}
	n, ok = l.at.VoltsAt(port)
	return n, nil, ok
}

// NoPoint is what a current lacks where a constant power has no operating point.
const NoPoint = "an operating point (converter/constant-power-collapse)"
