package charging

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// house says whether a battery other than a starting one can be joined to a node.
func (d *drain) house(id network.NodeID) bool {
	z := d.p.Net.ZoneOf(id)
	return z != nil && slices.ContainsFunc(d.p.Net.Upstream(z).Sources, func(i int) bool { return houseBattery(&d.p.Net.Sources[i]) })
}

// across says whether the battery, its string or a diode that it feeds lies across a port.
func (d *drain) across(v *explore.View, p network.Port) bool {
	return v.Series(d.battery).Across(p) || d.reach.Across(p)
}

// way is how the battery comes to a port.
func (d *drain) way(v *explore.View, p network.Port) []int {
	if row := v.Series(d.battery); row.Across(p) {
		return row.Way(p)
	}
	return append(d.reach.To(p.Hot), v.Between(p.Ret, d.p.Net.Sources[d.battery].Ret).Edges()...)
}

func (d *drain) load(v *explore.View, k int) lint.Verdict {
	l := &d.p.Net.Loads[k]
	if d.engines(l.Port) || !v.HasLoad(k) || !d.across(v, l.Port) || !d.house(l.Hot) {
		return lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	}
	d.edges, d.sources = nil, nil
	amps, lacks := d.p.Circuit.LoadCurrent(k)
	return d.judge(v, l.Load, l.Port, amps, slices.Clone(lacks))
}

func (d *drain) subject() schema.Block { return d.p.Net.Sources[d.battery].Source }

func (d *drain) converter(v *explore.View, k int) lint.Verdict {
	c := &d.p.Net.Converters[k]
	holds := lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	if !v.HasConverter(k) || c.Trigger.Ignition || c.Kind.Value == "diode" || !d.across(v, c.In) {
		return holds
	}
	d.edges, d.sources = nil, nil
	serves, lacks := d.serves(v, k, map[int]bool{})
	if !serves {
		return holds
	}
	if c.Trigger.Set {
		woken, more := d.woken(v, k, map[int]bool{})
		if !woken {
			return holds
		}
		lacks = append(lacks, more...)
	} else if c.Kind.Value == "dc-dc" {
		lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: "trigger"})
	}
	amps, more := d.p.Circuit.InputCurrent(k)
	if amps.Kind == 0 {
		lacks = append(lacks, more...)
	}
	return d.judge(v, c.Converter, c.In, amps, lacks)
}

// serves says whether what a converter puts out goes to the house: to a house battery, to a load or an
// inverter that one can feed too, or on through converters that run; lacks is what that turns on.
func (d *drain) serves(v *explore.View, k int, seen map[int]bool) (yes bool, lacks []lint.Missing) {
	n := d.p.Net
	c := &n.Converters[k]
	seen[k] = true
	if c.Kind.Value == "inverter" && !d.engines(c.In) && d.house(c.In.Hot) {
		return true, nil
	}
	out := v.Onward(c.Out)
	for _, i := range v.Zone.Sources {
		if s := &n.Sources[i]; houseBattery(s) && v.HasSource(i) && (v.Series(i).Across(c.Out) || out.Across(s.Port)) {
			d.edges = append(d.edges, out.To(s.Hot)...)
			d.sources = append(d.sources, i)
			return true, nil
		}
	}
	for _, i := range v.Zone.Loads {
		if l := &n.Loads[i]; v.HasLoad(i) && out.Across(l.Port) && d.house(l.Hot) && d.besides(l.Hot, k) {
			d.edges = append(d.edges, out.To(l.Hot)...)
			return true, nil
		}
	}
	for _, i := range v.Zone.Inputs {
		x := &n.Converters[i]
		if seen[i] || !v.HasConverter(i) || x.Kind.Value == "diode" || !out.Across(x.In) {
			continue
		}
		starts, more := d.started(k, i)
		if !starts {
			continue
		}
		back := len(d.edges)
		d.edges = append(d.edges, out.To(x.In.Hot)...)
		if on, further := d.serves(v, i, seen); on {
			return true, append(more, further...)
		}
		d.edges = d.edges[:back]
	}
	return false, nil
}

// besides says whether a house battery can be joined to a live node by wire and contacts alone: what only
// the converter feeds is its own.
func (d *drain) besides(id network.NodeID, converter int) bool {
	z := d.p.Net.ZoneOf(id)
	return slices.ContainsFunc(z.Sources, func(i int) bool { return houseBattery(&d.p.Net.Sources[i]) }) ||
		slices.ContainsFunc(z.Outputs, func(i int) bool { return i != converter && d.house(d.p.Net.Converters[i].In.Hot) })
}

// started says whether one converter's output starts the next with the engine off.
func (d *drain) started(k, next int) (yes bool, lacks []lint.Missing) {
	x := &d.p.Net.Converters[next]
	switch {
	case x.Trigger.Ignition:
		return false, nil
	case x.Trigger.Set:
		volts, more := d.p.Circuit.HighOutput(d.p.Net.Converters[k].Converter)
		return more != nil || volts.Value >= x.Trigger.Volts, slices.Clone(more)
	case x.Kind.Value == "dc-dc":
		return true, []lint.Missing{{Subject: x.Addr, Attribute: "trigger"}}
	}
	return true, nil
}
