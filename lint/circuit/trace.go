package circuit

import (
	"fmt"
	"math"
	"sort"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

const (
	solvedAmps  = "what the parts beyond it take less what they give, each at its own volts: the solved operating point of this state"
	meshedAmps  = "solved operating point of this state: the current takes several ways, by their resistance (Kirchhoff's laws)"
	solvedVolts = "volts of the supply less R x I of the way there and back: the solved operating point of this state"
)

// AmpsIn is the current in an edge with its derivation, in A, whichever way it runs.
func (p *Point) AmpsIn(edge int) derive.Number {
	n, ok := p.amps[edge]
	if !ok {
		n = p.explainAmps(edge)
		if p.amps == nil {
			p.amps = map[int]derive.Number{}
		}
		p.amps[edge] = n // a long way asks of each of its edges again and again
	}
	return n
}

func (p *Point) explainAmps(edge int) derive.Number {
	name := "current in " + p.c.partName(edge)
	beyond, meshed := p.beyond(edge)
	formula := solvedAmps
	if meshed {
		formula = meshedAmps
	}
	return derive.Compute(name, "I", math.Abs(p.Amps(edge)), "A", formula, p.flows(beyond)...)
}

// flows lists the currents of the parts with one end inside, largest first.
func (p *Point) flows(inside func(network.NodeID) bool) []derive.Number {
	n := p.c.Net
	var out []derive.Number
	take := func(port network.Port, amps float64, number func() derive.Number) {
		if inside(port.Hot) != inside(port.Ret) && math.Abs(amps) > 1e-9 {
			out = append(out, number())
		}
	}
	for _, i := range sortedKeys(p.wiring.loads) {
		take(n.Loads[i].Port, p.LoadAmps(i), func() derive.Number { return p.LoadNumber(i) })
	}
	for _, i := range sortedKeys(p.wiring.sources) {
		take(n.Sources[i].Port, p.SourceAmps(i), func() derive.Number { return p.SourceNumber(i) })
	}
	for _, of := range []map[int]int{p.wiring.inputs, p.wiring.converters} {
		for _, i := range sortedKeys(of) {
			take(n.Converters[i].In, p.InAmps(i), func() derive.Number { return p.InNumber(i) })
		}
	}
	for _, of := range []map[int]int{p.wiring.outputs, p.wiring.converters} {
		for _, i := range sortedKeys(of) {
			take(n.Converters[i].Out, p.OutAmps(i), func() derive.Number { return p.OutNumber(i) })
		}
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].Value != out[j].Value {
			return out[i].Value > out[j].Value
		}
		return out[i].Name < out[j].Name
	})
	return out
}

// noted gives the numbers that a part's law was made of.
func (p *Point) noted(addr string, symbols ...string) []derive.Number {
	var out []derive.Number
	numbers := p.wiring.noted()
	for _, s := range symbols {
		if n, ok := numbers[addr+" "+s]; ok {
			out = append(out, n)
		}
	}
	return out
}

func (p *Point) terminal(name string, port network.Port) derive.Number {
	u, _ := p.Across(port)
	return derive.Compute("volts at "+name, "U", u, "V", "solved operating point of this state")
}

// LoadNumber is a load's current with the law it follows.
func (p *Point) LoadNumber(i int) derive.Number {
	l := &p.c.Net.Loads[i]
	formula := "I"
	if k, ok := p.wiring.loads[i]; ok {
		switch p.wiring.net.Elements[k].Kind {
		case solve.Power:
			formula = "I = P / U"
		case solve.Resistor:
			formula = "I = U / R"
		case solve.Steady:
			formula = "constant current"
		}
	}
	from := append(p.noted(l.Addr, "P", "R", "I0", "I", "Is"), p.terminal(quote(l.Load), l.Port))
	return derive.Compute("current of "+quote(l.Load), "I", p.LoadAmps(i), "A", p.inPart(formula, l.Hot), from...)
}

// inPart tells in a formula that something draws a part of its figure.
func (p *Point) inPart(formula string, hot network.NodeID) string {
	if p.Share == nil || p.Share(hot) >= 1 {
		return formula
	}
	return fmt.Sprintf("%s, at %.0f %% of its figure", formula, 100*p.Share(hot))
}

// SourceNumber is the current that a source gives or takes.
func (p *Point) SourceNumber(i int) derive.Number {
	s := &p.c.Net.Sources[i]
	from := append(p.noted(s.Addr, "Vempty", "Vrest", "Vreg", "Vlow", "V", "Vout", "Vfull", "Ri", "Rlow", "Rhigh", "Ir", "Ichg", "Voc", "Isc", "Vmp", "Imp", "Vcold"), p.terminal(quote(s.Source), s.Port))
	name, formula := "current that "+quote(s.Source)+" gives", "I = (V0 - U) / R"
	if p.SourceAmps(i) < 0 {
		name, formula = "current that "+quote(s.Source)+" takes", "I = (U - V0) / R, and no more than it accepts"
	}
	switch k, in := p.wiring.sources[i]; {
	case !in:
		formula = "it takes no part"
	case p.wiring.net.Elements[k].Kind == solve.Regulated:
		formula = "its set voltage with 1 % droop, and no more than its limit"
	case p.wiring.net.Elements[k].Kind == solve.Array:
		formula = "single-diode curve through Voc, Isc and (Vmp, Imp)"
	}
	return derive.Compute(name, "I", math.Abs(p.SourceAmps(i)), "A", formula, from...)
}

// InNumber is the current that a converter's input takes.
func (p *Point) InNumber(i int) derive.Number {
	x := &p.c.Net.Converters[i]
	from := append(p.noted(x.Addr, "Pin", "eta", "Pidle", "Prated", "Imax", "Iout", "Vout"), p.terminal("the input of "+quote(x.Converter), x.In))
	formula := "I = Pin / U"
	_, coupled := p.wiring.converters[i]
	if coupled {
		from, formula = append(from, p.OutNumber(i)), "I = (Uout x Iout / eta + Pidle) / U"
	}
	if x.Input != nil && x.Input.CurrentMax.Set {
		formula += ", and no more than Imax"
	}
	if !coupled {
		formula = p.inPart(formula, x.In.Hot)
	}
	return derive.Compute("input current of "+quote(x.Converter), "Iin", p.InAmps(i), "A", formula, from...)
}

// OutNumber is the current that a converter's output gives.
func (p *Point) OutNumber(i int) derive.Number {
	x := &p.c.Net.Converters[i]
	from := append(p.noted(x.Addr, "Vout", "Vfull", "Iout", "Prated", "Imax"), p.terminal("the output of "+quote(x.Converter), x.Out))
	return derive.Compute("output current of "+quote(x.Converter), "Iout", math.Abs(p.OutAmps(i)), "A", "its set voltage with 1 % droop, and no more than its limits", from...)
}

// VoltsAt is the voltage of a port with its derivation, in V: along the way with the least loss from a
// supply. It has no value where nothing energises the port.
func (p *Point) VoltsAt(port network.Port) (derive.Number, bool) {
	u, ok := p.Across(port)
	if !ok {
		return derive.Number{}, false
	}
	name := "volts at " + p.place(port)
	start, out, back, ok := p.nearest(port)
	if !ok {
		return derive.Compute(name, "U", u, "V", "solved operating point of this state"), true
	}
	from := append([]derive.Number{start}, p.losses(out, -1)...)
	from = append(from, p.losses(back, 1)...)
	return derive.Compute(name, "U", u, "V", solvedVolts, from...), true
}

// losses lists what is lost on a way walked away from the port: sign is 1 where current that feeds the
// port runs that way, -1 where it runs against it.
func (p *Point) losses(way explore.Path, sign float64) []derive.Number {
	var out []derive.Number
	for _, h := range way {
		r, _ := p.c.Ohms(h.Edge, Operating)
		amps := p.Amps(h.Edge)
		if r.Value <= 0 || amps == 0 {
			continue
		}
		if p.c.Net.Edges[h.Edge].A != h.From {
			amps = -amps
		}
		i := p.AmpsIn(h.Edge)
		lost, formula := r.Value*i.Value, "dU = R x I"
		if sign*amps < 0 {
			lost, formula = -lost, "dU = - R x I: current runs the other way"
		}
		out = append(out, derive.Compute("volts lost in "+p.c.partName(h.Edge), "dU", lost, "V", formula, r, i))
	}
	return out
}

func (p *Point) place(port network.Port) string {
	n := &p.c.Net.Nodes[port.Hot]
	if b := p.c.Net.Plan.Block(n.Addr); b != nil {
		if n.Terminal == "" {
			return quote(b)
		}
		return quote(b) + " " + n.Terminal
	}
	return n.Place()
}

// ways walks from a port's two nodes, by the volts lost.
func (p *Point) ways(port network.Port) (hot, ret *explore.Reach) {
	loss := func(e int) float64 {
		r, _ := p.c.Ohms(e, Operating)
		return math.Abs(r.Value*p.Amps(e)) + 1e-9
	}
	within := func(e int, _ network.NodeID) bool { _, in := p.wiring.branch[e]; return in }
	return p.View.Reach(port.Hot, within, loss), p.View.Reach(port.Ret, within, loss)
}

// nearest finds the supply with the least loss on the way to a port: its volts, and the ways to it.
func (p *Point) nearest(port network.Port) (start derive.Number, out, back explore.Path, ok bool) {
	there, home := p.ways(port)
	least, at := math.Inf(1), network.Port{}
	try := func(q network.Port, number func() derive.Number, name string) {
		a, hot := there.Dist[q.Hot]
		b, ret := home.Dist[q.Ret]
		if !hot || !ret || a+b >= least {
			return
		}
		least, at, ok = a+b, q, true
		u, _ := p.Across(q)
		start = derive.Compute("volts of "+name, "U", u, "V", "its own volts at the current it gives", number())
	}
	n := p.c.Net
	for i := range n.Sources {
		if _, in := p.wiring.sources[i]; in && p.SourceAmps(i) >= 0 {
			try(n.Sources[i].Port, func() derive.Number { return p.SourceNumber(i) }, quote(n.Sources[i].Source))
		}
	}
	for i := range n.Converters {
		_, coupled := p.wiring.converters[i]
		_, alone := p.wiring.outputs[i]
		if (coupled || alone) && p.OutAmps(i) >= 0 {
			try(n.Converters[i].Out, func() derive.Number { return p.OutNumber(i) }, "the output of "+quote(n.Converters[i].Converter))
		}
	}
	if !ok {
		return start, nil, nil, false
	}
	return start, there.To(at.Hot), home.To(at.Ret), true
}
