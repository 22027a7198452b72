package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Fault is a bolted short fed through one way, in A: the most it can be and the least.
type Fault struct {
	Most, Least derive.Number
	Lacks       []derive.Missing
}

// FaultAt is the fault current of one battery, with those that it can stand on in series, through a
// way along the live side, to a short between the end of the way and the return that runs beside it.
// The links between the batteries of a string count as nothing. Where it stands on several side by side,
// the most is that of the highest volts on all of them, the least that of the lowest on one. A link through a switch is
// not followed: what stands so in some position counts by itself.
func (c *Circuit) FaultAt(s *network.Source, way explore.Path) Fault {
	var f Fault
	var most, least []derive.Number
	var full, empty, rm, rl float64
	for _, level := range c.standing(s) {
		x := c.stood(level)
		f.Lacks = merge(f.Lacks, x.lacks...)
		most, least = append(most, x.full, x.low), append(least, x.empty, x.high)
		full, empty, rm, rl = full+x.full.Value, empty+x.empty.Value, rm+x.low.Value, rl+x.high.Value
	}
	if len(f.Lacks) > 0 {
		return f
	}
	for _, h := range way {
		a, lacks := c.Ohms(h.Edge, Prospective)
		b, _ := c.Ohms(h.Edge, Least)
		f.Lacks = merge(f.Lacks, lacks...)
		runs := c.runs(h.Edge)
		if a.Kind != 0 {
			most, rm = append(most, a), rm+runs*a.Value
		}
		if b.Kind != 0 {
			least, rl = append(least, b), rl+runs*b.Value
		}
	}
	if rm <= 0 || rl <= 0 {
		f.Lacks = merge(f.Lacks, missing(s.Source, "resistance")...)
		return f
	}
	f.Most = derive.Compute("most fault current at the end of the run", "Ipf", full/rm, "A", "Ipf = Vfull / (Rlow + both runs)", most...)
	f.Least = derive.Compute("least fault current at the end of the run", "Imf", empty/rl, "A", "Imf = Vempty / (Rhigh + both runs hot + joints)", least...)
	return f
}

// standing is a battery and those that lie below it in series, level by level, top first.
func (c *Circuit) standing(s *network.Source) [][]*schema.Source {
	out := [][]*schema.Source{{s.Source}}
	in := map[*schema.Source]bool{s.Source: true}
	for below := []*network.Zone{c.Net.ZoneOf(s.Ret)}; ; {
		var level []*schema.Source
		var next []*network.Zone
		for _, z := range below {
			if z == nil {
				continue
			}
			for _, i := range z.Sources {
				if o := &c.Net.Sources[i]; o.Kind.Value == "battery" && !in[o.Source] {
					in[o.Source] = true
					level, next = append(level, o.Source), append(next, c.Net.ZoneOf(o.Ret))
				}
			}
		}
		if len(level) == 0 {
			return out
		}
		out, below = append(out, level), next
	}
}

// footing is what the batteries of one level can be at most and at least.
type footing struct {
	full, empty, low, high derive.Number
	lacks                  []derive.Missing
}

func (c *Circuit) stood(level []*schema.Source) footing {
	var out footing
	var lows []derive.Number
	siemens := 0.0
	for i, b := range level {
		v, m := c.BatteryVolts(b)
		low, high, _, m2 := c.BatteryOhms(b)
		out.lacks = merge(merge(out.lacks, m...), m2...)
		if i == 0 || v.Full.Value > out.full.Value {
			out.full = v.Full
		}
		if i == 0 || v.Empty.Value < out.empty.Value {
			out.empty = v.Empty
		}
		if i == 0 || high.Value > out.high.Value {
			out.high = high
		}
		if lows = append(lows, low); low.Value > 0 {
			siemens += 1 / low.Value
		}
	}
	if out.low = lows[0]; len(level) > 1 && siemens > 0 {
		out.low = derive.Compute("resistance of the batteries below, side by side", "R", 1/siemens, "ohm", "1 / sum of 1/R", lows...)
	}
	return out
}

// runs is how often an edge's resistance counts in a fault: a pair's return runs beside it.
func (c *Circuit) runs(edge int) float64 {
	if e := &c.Net.Edges[edge]; e.Wire != nil && (e.Wire.Polarity.Value == "positive" || e.Wire.Polarity.Value == "negative") {
		return 1
	}
	return 2
}
