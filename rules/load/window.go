package load

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// The window of gear for 12 V that states none, in V, and how far alternating current may be off.
const (
	usualLeast = 10.5
	usualMost  = 15.0
	usualMains = 0.1
)

func (g *gear) attribute(name string) string {
	if g.converter >= 0 {
		return "input " + name
	}
	return name
}

// least is the lowest voltage that gear works at: written, or usual for its kind; no value where neither.
func (g *gear) least() derive.Number {
	if g.min.Set {
		return derive.Read("least volts of "+lint.Quote(g.block), "Vmin", g.min.Value, "V", g.block.Header().Addr, g.attribute("voltage_min"), g.min.Range)
	}
	return g.usual("least volts of ", "Vmin", "voltage_min", usualLeast, 1-usualMains)
}

// most is the highest voltage that gear takes, likewise.
func (g *gear) most() derive.Number {
	if g.max.Set {
		return derive.Read("most volts of "+lint.Quote(g.block), "Vmax", g.max.Value, "V", g.block.Header().Addr, g.attribute("voltage_max"), g.max.Range)
	}
	return g.usual("most volts of ", "Vmax", "voltage_max", usualMost, 1+usualMains)
}

func (g *gear) usual(name, symbol, attribute string, twelve, mains float64) derive.Number {
	vn, ok := g.p.Circuit.Nominal(g.port.Hot)
	if g.load >= 0 && g.p.Net.Loads[g.load].RatedVoltage.Set {
		vn.Value, ok = g.p.Net.Loads[g.load].RatedVoltage.Value, true
	}
	ac := g.port.Hot != network.None && g.p.Net.Nodes[g.port.Hot].AC
	addr := g.block.Header().Addr
	switch {
	case !ok || g.critical || g.block.Header().Type == "converter" && g.socket:
		return derive.Number{}
	case ac:
		return derive.Assume(name+lint.Quote(g.block), symbol, mains*vn.Value, "V", addr, g.attribute(attribute), "a tenth either way, common practice")
	case vn.Value > 10 && vn.Value <= 16:
		return derive.Assume(name+lint.Quote(g.block), symbol, twelve, "V", addr, g.attribute(attribute), "usual for gear at 12 V, common practice")
	}
	return derive.Number{}
}

// highest is the most volts that gear gets, with a state that makes it. Where arrays share its circuit
// they count as far as a battery holds them.
func (g *gear) highest() (best derive.Number, at *explore.View, lacks []lint.Missing) {
	z := g.p.Net.ZoneOf(g.port.Hot)
	if z == nil {
		return best, nil, nil
	}
	if !g.arrays(z) {
		return g.p.Circuit.Highest(g.port.Hot)
	}
	views, complete := g.p.Space.Views(g.home, g.p.Space.Closed(explore.All()))
	if !complete {
		lacks = []lint.Missing{{Subject: "plan", Attribute: "states"}}
	}
	for _, v := range views {
		if g.unheld(v) {
			continue
		}
		top := g.p.Circuit.Top(v)
		n, ok := top.VoltsAt(g.port)
		if ok && n.Value > best.Value {
			best, at = n, v
		}
	}
	return best, at, lacks
}

func (g *gear) arrays(z *network.Zone) bool {
	for _, i := range z.Sources {
		if g.p.Net.Sources[i].Kind.Value == "solar" {
			return true
		}
	}
	return false
}

// unheld says whether an array reaches gear with no battery across it.
func (g *gear) unheld(v *explore.View) bool {
	array := false
	for _, i := range v.Zone.Sources {
		s := &g.p.Net.Sources[i]
		if !v.HasSource(i) || !v.Joined(s.Hot, g.port.Hot) {
			continue
		}
		if s.Kind.Value == "battery" && v.Series(i).Across(g.port) {
			return false
		}
		array = array || s.Kind.Value == "solar"
	}
	return array
}

// highState is the positions on the way from what holds so many volts.
func (g *gear) highState(v *explore.View, volts float64) []lint.Position {
	if v == nil {
		return nil
	}
	ohms := func(e int) float64 {
		n, _ := g.p.Circuit.Ohms(e, circuit.Operating)
		return n.Value + 1e-9
	}
	reach := v.Reach(g.port.Hot, nil, ohms)
	for _, i := range v.Zone.Outputs {
		x := &g.p.Net.Converters[i]
		if n, _ := g.p.Circuit.HighOutput(x.Converter); v.HasConverter(i) && v.Joined(x.Out.Hot, g.port.Hot) && math.Abs(n.Value-volts) < 1e-6 {
			return v.Witness(reach.To(x.Out.Hot).Edges())
		}
	}
	for _, i := range v.Zone.Sources {
		s := &g.p.Net.Sources[i]
		if v.HasSource(i) && v.Joined(s.Hot, g.port.Hot) && g.stands(i, volts) {
			return v.Witness(reach.To(s.Hot).Edges(), i)
		}
	}
	return v.State(v.Zone.Vars)
}

// stands says whether a source stands at a voltage at its highest.
func (g *gear) stands(i int, volts float64) bool {
	s := g.p.Net.Sources[i].Source
	near := func(x float64) bool { return math.Abs(x-volts) < 1e-6 }
	b, _ := g.p.Circuit.BatteryVolts(s)
	return near(b.Rested.Value) || near(s.RegulatedVoltage.Value) || near(s.Voltage.Value)
}
