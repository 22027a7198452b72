package lifesafety

import (
	"fmt"
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/schema"
)

const (
	fullVolts = 11.5 // at the magnets, battery full, per 12 V (common practice)
	endVolts  = 10.5 // the same after fifteen minutes
)

// ohm is the resistance of an edge at work.
func (m *magnets) ohm(edge int) float64 {
	if _, ok := m.ohms[edge]; !ok {
		m.ohms[edge], m.short[edge] = m.p.Circuit.Ohms(edge, circuit.Operating)
	}
	return m.ohms[edge].Value
}

// way is the edges between a feed and a brake load, out and back, by least resistance.
func (m *magnets) way(f feed, load int) []int {
	l := &m.p.Net.Loads[load]
	out := f.view.Reach(f.port.Hot, nil, m.ohm).To(l.Hot)
	back := f.view.Reach(l.Ret, nil, m.ohm).To(f.port.Ret)
	return append(out.Edges(), back.Edges()...)
}

// loaded is the edges on the way to the load with the current in each.
func (m *magnets) loaded(f feed) (edges []int, amps map[int]float64) {
	amps = map[int]float64{}
	for _, i := range m.all {
		way := m.way(f, i)
		if &m.p.Net.Loads[i] == m.l {
			edges = way
		}
		for _, e := range way {
			amps[e] += m.amps[i].Value
		}
	}
	return edges, amps
}

// volts asks what is left at the magnets.
func (m *magnets) volts() lint.Verdict {
	v := lint.Verdict{Subject: m.l.Load, Outcome: lint.Holds, Word: lint.Danger, Cause: "volts", Missing: m.lacks}
	vn, ok := m.nominal(m.l)
	if !ok {
		v.Missing = append(v.Missing, lint.Missing{Subject: m.l.Addr, Attribute: "rated_voltage"})
	}
	var worst level
	for _, c := range m.cases {
		best := level{over: math.Inf(-1)}
		for _, f := range c.feeds {
			l := m.level(f, vn.Value/12)
			v.Missing = append(v.Missing, l.lacks...)
			if l.over > best.over {
				best = l
			}
		}
		if best.feed.view != nil && (worst.feed.view == nil || best.over < worst.over) {
			worst = best
		}
	}
	v.Missing = unique(v.Missing)
	if worst.feed.view == nil {
		return m.unknownVolts(v)
	}
	v.Numbers = heldUp(worst.end, worst.full)
	if ok && worst.over < 0 && worst.best >= 0 { // only the assumed resistance of a battery breaks it
		for _, i := range worst.feed.row {
			if s := m.p.Net.Sources[i].Source; !s.Resistance.Set {
				v.Missing = append(v.Missing, lint.Missing{Subject: s.Addr, Attribute: "resistance"})
			}
		}
	}
	switch {
	case ok && worst.best < 0:
		v.Outcome, v.State = lint.Violated, m.stateOf(worst.feed.view)
		v.Message = fmt.Sprintf("In a breakaway%s, %s; it needs %s and %s.", m.while(worst.feed.view), m.gets(worst), derive.Text(fullVolts*vn.Value/12, "V"), derive.Text(endVolts*vn.Value/12, "V"))
	case len(v.Missing) > 0:
		return m.unknownVolts(v)
	}
	return v
}

// gets tells the volts at the load. Below zero there are none: what feeds it cannot give the current.
func (m *magnets) gets(l level) string {
	load, battery := lint.Quote(m.l.Load), lint.Quote(m.p.Net.Sources[l.feed.battery].Source)
	switch {
	case l.full.Value <= 0:
		return fmt.Sprintf("even a full %s cannot hold %s up: at %s all its volts are lost inside it and on the way", battery, load, m.total.Text())
	case l.end.Value <= 0:
		return fmt.Sprintf("%s gets %s from a full %s, which cannot hold it up for fifteen minutes", load, l.full.Text(), battery)
	}
	return fmt.Sprintf("%s gets %s from a full %s and %s after fifteen minutes", load, l.full.Text(), battery, l.end.Text())
}

// heldUp puts in the place of volts below zero what they came from.
func heldUp(volts ...derive.Number) []derive.Number {
	var out []derive.Number
	for _, n := range volts {
		if n.Value < 0 {
			out = append(out, heldUp(n.From...)...)
		} else {
			out = append(out, n)
		}
	}
	return out
}

func (m *magnets) unknownVolts(v lint.Verdict) lint.Verdict {
	v.Outcome = lint.NotProven
	v.Message = fmt.Sprintf("How many volts reach %s in a breakaway cannot be told.", lint.Quote(m.l.Load))
	return v
}

// level is the volts at the load from one battery, and how far they are over the limits.
type level struct {
	feed      feed
	full, end derive.Number
	over      float64
	best      float64 // over, were the battery as good as it can be
	lacks     []lint.Missing
}

// level works out the volts at the load. What is missing counts as no drop, so they are then at most that.
func (m *magnets) level(f feed, scale float64) level {
	out := level{feed: f}
	from, low, spread, lacks := m.source(f)
	out.lacks = append(out.lacks, lacks...)
	if from.Kind == 0 {
		out.over, out.best = math.Inf(1), math.Inf(1)
		return out
	}
	drop, parts := 0.0, []derive.Number{m.total}
	for _, e := range f.edges {
		m.ohm(e)
		out.lacks = append(out.lacks, m.short[e]...)
		if n := m.ohms[e]; n.Kind != 0 && f.amps[e] > 0 {
			drop, parts = drop+n.Value*f.amps[e], append(parts, n)
		}
	}
	lost := derive.Compute("lost on the way to "+lint.Quote(m.l.Load), "Vd", drop, "V", "sum of R x its share of I, both poles", parts...)
	out.full = derive.Compute("volts at "+lint.Quote(m.l.Load)+", battery full", "V", from.Value-drop, "V", "V - Vd", from, lost)
	out.end = derive.Compute("volts at "+lint.Quote(m.l.Load)+" after fifteen minutes", "V", low.Value-drop, "V", "V - Vd", low, lost)
	out.over = min(out.full.Value-fullVolts*scale, out.end.Value-endVolts*scale)
	out.best = out.over + spread
	return out
}

// source is the volts at the start of a feed at full current, when full and after fifteen minutes,
// with the battery's resistance as high as it may be; spread is the volts more were it as low as it
// may be.
func (m *magnets) source(f feed) (full, end derive.Number, spread float64, lacks []lint.Missing) {
	if len(f.through) > 0 {
		full, lacks = m.converter(m.p.Net.Converters[f.through[0]].Converter)
		return full, full, 0, lacks
	}
	var rested, empty, ohms []derive.Number
	for _, i := range f.row {
		s := m.p.Net.Sources[i].Source
		v, short := m.p.Circuit.BatteryVolts(s)
		if short != nil {
			return full, end, 0, short
		}
		low, high, _, short := m.p.Circuit.BatteryOhms(s)
		if short != nil {
			lacks = append(lacks, short...)
		} else {
			ohms = append(ohms, high)
			spread += (high.Value - low.Value) * m.total.Value
		}
		rested, empty = append(rested, v.Rested), append(empty, v.Empty)
	}
	inside := derive.Compute("lost inside the battery", "Vi", add(ohms)*m.total.Value, "V", "Rhigh x I", append(ohms, m.total)...)
	full = derive.Compute("volts of the full battery at full current", "V", add(rested)-inside.Value, "V", "Vrest - Vi", append(rested, inside)...)
	ah, short := m.charge(f)
	if short != nil {
		return full, full, spread, append(lacks, short...)
	}
	used := min(1, m.total.Value*holdFor/3600/ah.Value)
	end = derive.Compute("volts of the battery after fifteen minutes", "V", full.Value-(add(rested)-add(empty))*used, "V",
		"V - (Vrest - Vempty) x I x 15 min / C", append(append([]derive.Number{full, ah, m.total}, rested...), empty...)...)
	return full, end, spread, lacks
}

func add(list []derive.Number) float64 {
	sum := 0.0
	for _, n := range list {
		sum += n.Value
	}
	return sum
}

// converter is the volts that a converter holds, if it can give the full current.
func (m *magnets) converter(c *schema.Converter) (derive.Number, []lint.Missing) {
	if c.Output == nil || !c.Output.Voltage.Set || !c.Output.CurrentMax.Set {
		return derive.Number{}, []lint.Missing{{Subject: c.Addr, Attribute: "output voltage and current_max"}}
	}
	held := derive.Read("voltage that "+lint.Quote(c)+" holds", "V", c.Output.Voltage.Value, "V", c.Addr, "output voltage", c.Output.Voltage.Range)
	most := derive.Read("output limit of "+lint.Quote(c), "Imax", c.Output.CurrentMax.Value, "A", c.Addr, "output current_max", c.Output.CurrentMax.Range)
	if most.Value < m.total.Value {
		held = derive.Compute("voltage of "+lint.Quote(c)+" over its limit", "V", held.Value*most.Value/m.total.Value, "V", "V x Imax / I", held, most, m.total)
	}
	return held, nil
}
