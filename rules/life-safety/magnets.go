package lifesafety

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

const (
	holdFor = 900.0 // s; 49 CFR 393.43(d)
	margin  = 2.0   // on the charge, for cold and age (common practice)
)

// magnets is the sums of one brake load over the states in which it is fed.
type magnets struct {
	*brake
	amps  map[int]derive.Number // by brake load
	lacks []lint.Missing        // of those
	total derive.Number
	ohms  map[int]derive.Number // by edge
	short map[int][]lint.Missing
	cases []feeding
}

// feeding is how the load is fed in a state; states alike in it are one.
type feeding struct {
	view  *explore.View
	feeds []feed
}

func newMagnets(b *brake) *magnets {
	m := &magnets{brake: b, amps: map[int]derive.Number{}, ohms: map[int]derive.Number{}, short: map[int][]lint.Missing{}}
	var parts []derive.Number
	sum := 0.0
	for _, i := range b.all {
		n, lacks := m.current(i)
		m.amps[i], m.lacks = n, append(m.lacks, lacks...)
		if lacks == nil {
			parts, sum = append(parts, n), sum+n.Value
		}
	}
	m.total = derive.Compute("full current of the brakes", "I", sum, "A", "sum", parts...)
	seen := map[string]bool{}
	for _, v := range b.fed {
		c := feeding{v, m.feeds(v)}
		key := ""
		for i := range c.feeds {
			f := &c.feeds[i]
			f.edges, f.amps = m.loaded(*f)
			key += fmt.Sprint(f.row, f.through, f.edges)
		}
		if !seen[key] {
			seen[key] = true
			m.cases = append(m.cases, c)
		}
	}
	return m
}

// current is what a brake load draws when it is on, in A, as the plan states it.
func (m *magnets) current(load int) (derive.Number, []lint.Missing) {
	l := &m.p.Net.Loads[load]
	if l.Draw.Set {
		return derive.Read("draw of "+lint.Quote(l.Load), "I", l.Draw.Value, "A", l.Addr, "draw", l.Draw.Range), nil
	}
	vn, ok := m.nominal(l)
	switch {
	case ok && l.Power.Set:
		w := derive.Read("power of "+lint.Quote(l.Load), "P", l.Power.Value, "W", l.Addr, "power", l.Power.Range)
		return derive.Compute("current of "+lint.Quote(l.Load), "I", w.Value/vn.Value, "A", "P / Vn", w, vn), nil
	case ok && l.Resistance.Set && l.Resistance.Value > 0:
		r := derive.Read("resistance of "+lint.Quote(l.Load), "R", l.Resistance.Value, "ohm", l.Addr, "resistance", l.Resistance.Range)
		return derive.Compute("current of "+lint.Quote(l.Load), "I", vn.Value/r.Value, "A", "Vn / R", vn, r), nil
	}
	return derive.Number{}, []lint.Missing{{Subject: l.Addr, Attribute: "draw"}}
}

// nominal is the voltage class of a load.
func (m *magnets) nominal(l *network.Load) (derive.Number, bool) {
	if l.RatedVoltage.Set {
		return derive.Read("rated voltage of "+lint.Quote(l.Load), "Vn", l.RatedVoltage.Value, "V", l.Addr, "rated_voltage", l.RatedVoltage.Range), true
	}
	n, ok := m.p.Circuit.Nominal(l.Hot)
	return n, ok && n.Value > 0
}

// feed is one battery that feeds the load in a state, on its own or through converters.
type feed struct {
	view    *explore.View
	battery int
	through []int        // converters, the one next to the load first
	port    network.Port // where current for the load starts: the string's ends, or a converter's output
	row     []int        // batteries in series, the one itself first
	edges   []int        // between it and the load, out and back
	amps    map[int]float64
}

// feeds lists the batteries that feed the load in a state; those without a converter alone, where there are any.
func (m *magnets) feeds(v *explore.View) []feed {
	live := m.live(v)
	port, through := m.l.Port, []int(nil)
	for seen := map[int]bool{}; ; {
		var out []feed
		next := -1
		for _, s := range live.At(port.Hot) {
			switch {
			case s.Source >= 0 && v.Series(s.Source).Across(port):
				out = append(out, m.feedOf(v, s.Source, through))
			case s.Source < 0 && !seen[s.Converter] && next < 0 && v.Joined(m.p.Net.Converters[s.Converter].Out.Ret, port.Ret):
				next = s.Converter
			}
		}
		if len(out) > 0 || next < 0 {
			return out
		}
		seen[next] = true
		through, port = append(through, next), m.p.Net.Converters[next].In
	}
}

func (m *magnets) feedOf(v *explore.View, battery int, through []int) feed {
	f := feed{view: v, battery: battery, through: through, row: []int{battery}, port: m.p.Net.Sources[battery].Port}
	for at, seen := battery, map[int]bool{}; !seen[at]; {
		seen[at] = true
		for _, o := range v.Zone.Sources {
			if !seen[o] && m.p.Net.Sources[o].Kind.Value == "battery" && v.HasSource(o) && v.Joined(m.p.Net.Sources[at].Ret, m.p.Net.Sources[o].Hot) {
				f.row, f.port.Ret, at = append(f.row, o), m.p.Net.Sources[o].Ret, o
				break
			}
		}
	}
	if len(through) > 0 {
		f.port = m.p.Net.Converters[through[0]].Out
	}
	return f
}

// charge is what a battery can give at the load's voltage, in Ah.
func (m *magnets) charge(f feed) (derive.Number, []lint.Missing) {
	s := m.p.Net.Sources[f.battery].Source
	ah, lacks := m.p.Circuit.Capacity(s)
	if lacks != nil {
		return ah, lacks
	}
	if n := s.Parallel.Or(1); n > 1 {
		strings := derive.Read("strings in parallel in "+lint.Quote(s), "n", float64(n), "strings", s.Addr, "parallel", s.Parallel.Range)
		ah = derive.Compute("capacity of the bank "+lint.Quote(s), "C", ah.Value*float64(n), "Ah", "n x C", ah, strings)
	}
	for i := len(f.through) - 1; i >= 0; i-- {
		c := &m.p.Net.Converters[f.through[i]]
		in, ok := m.p.Circuit.Nominal(c.In.Hot)
		out, also := m.p.Circuit.Nominal(c.Out.Hot)
		if !ok || !also || out.Value <= 0 {
			return derive.Number{}, []lint.Missing{{Subject: c.Addr, Attribute: "output voltage"}}
		}
		eff := derive.Assume("efficiency of "+lint.Quote(c.Converter), "eta", 0.85, "", c.Addr, "efficiency", "common practice")
		if c.Efficiency.Set {
			eff = derive.Read("efficiency of "+lint.Quote(c.Converter), "eta", c.Efficiency.Value, "", c.Addr, "efficiency", c.Efficiency.Range)
		}
		ah = derive.Compute("charge behind "+lint.Quote(c.Converter), "C", ah.Value*in.Value/out.Value*eff.Value, "Ah", "C x Vin / Vout x eta", ah, in, out, eff)
	}
	return ah, nil
}

// energy asks for twice the charge of fifteen minutes.
func (m *magnets) energy() lint.Verdict {
	v := lint.Verdict{Subject: m.l.Load, Outcome: lint.Holds, Word: lint.Danger, Cause: "energy", Group: "energy " + m.group, Missing: m.lacks}
	need := derive.Compute("charge of fifteen minutes, twice over", "Q", margin*m.total.Value*holdFor/3600, "Ah", "2 x I x 15 min", m.total)
	var least derive.Number
	var at *explore.View
	for _, c := range m.cases {
		sum, lacks := m.sum(c)
		v.Missing = append(v.Missing, lacks...)
		if lacks == nil && (at == nil || sum.Value < least.Value) {
			least, at = sum, c.view
		}
	}
	v.Missing = unique(v.Missing)
	if v.Numbers = []derive.Number{need}; at != nil {
		v.Numbers = append(v.Numbers, least)
	}
	switch {
	case at != nil && least.Value < need.Value:
		v.Outcome, v.State = lint.Violated, m.stateOf(at)
		v.Message = fmt.Sprintf("In a breakaway%s the brakes draw %s, and what feeds %s holds %s: less than twice what fifteen minutes take (%s).",
			m.while(at), m.total.Text(), lint.Quote(m.l.Load), least.Text(), need.Text())
	case len(v.Missing) > 0:
		v.Outcome = lint.NotProven
		v.Message = fmt.Sprintf("Whether %s has power for fifteen minutes in a breakaway cannot be told.", lint.Quote(m.l.Load))
	}
	return v
}

func (m *magnets) sum(c feeding) (derive.Number, []lint.Missing) {
	var parts []derive.Number
	sum := 0.0
	for _, f := range c.feeds {
		n, lacks := m.charge(f)
		if lacks != nil {
			return n, lacks
		}
		parts, sum = append(parts, n), sum+n.Value
	}
	if len(parts) == 1 {
		return parts[0], nil
	}
	return derive.Compute("charge that feeds the brakes", "C", sum, "Ah", "sum", parts...), nil
}

// stateOf is the positions that leave a state with the batteries it has.
func (m *magnets) stateOf(v *explore.View) []lint.Position {
	have := map[int]bool{}
	for _, f := range m.feeds(v) {
		have[f.battery] = true
	}
	kept := v.Keep(v.Zone.Vars, func(x *explore.View) bool {
		for _, f := range m.feeds(x) {
			if !have[f.battery] {
				return false
			}
		}
		return true
	})
	return v.State(kept)
}

func unique(list []lint.Missing) []lint.Missing {
	var out []lint.Missing
	seen := map[lint.Missing]bool{}
	for _, m := range list {
		if !seen[m] {
			seen[m] = true
			out = append(out, m)
		}
	}
	return out
}
