package overcurrent

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// ceiling is the largest device that may guard a conductor.
type ceiling struct {
	most  derive.Number // A; Kind 0 where it is not known
	iz    derive.Number // the conductor's ampacity
	loose float64       // A that the practice would allow without heat and bundling; 0 where it is no more
	lacks []lint.Missing
}

// ceilingOf is the strictest of the plan's practices on a conductor. Where something is lacking, most
// is the most that it can be.
func ceilingOf(p *lint.Pass, c *schema.Conductor, at network.NodeID) ceiling {
	var out ceiling
	out.iz, out.lacks = p.Circuit.Ampacity(c)
	if out.iz.Kind == 0 {
		return out
	}
	volts := mostVolts(p, at)
	for _, practice := range p.Plan.Practices() {
		n, loose := graded(practice, c, out.iz, volts)
		if out.most.Kind == 0 || n.Value < out.most.Value {
			out.most, out.loose = n, loose
		}
	}
	return out
}

// graded is what one practice allows.
func graded(practice string, c *schema.Conductor, iz, volts derive.Number) (most derive.Number, loose float64) {
	k := figure("allowed multiple of ampacity", "kd", tables.DeviceLimit(practice, volts.Value), "", "device for a conductor, "+practice)
	name := "largest device that may guard " + lint.Quote(c)
	v, capped := tables.MostDevice(practice, volts.Value, iz.Value, c.Size.Size, c.Parallel.Or(1))
	if capped {
		most = figure(name, "Imax", v, "A", "device for a small conductor")
		most.From = []derive.Number{iz}
		return most, 0
	}
	most = derive.Compute(name, "Imax", v.V, "A", "Imax = kd x Iz", k, iz)
	if v.V > k.Value*iz.Value {
		most = derive.Compute(name, "Imax", v.V, "A", "next standard rating above Iz", iz)
	}
	if practice == "us-boat" {
		most.From = append(most.From, volts)
		if base := uncorrected(c, iz); k.Value*base > most.Value {
			loose = k.Value * base
		}
	}
	return most, loose
}

// uncorrected is the table's ampacity before heat and bundling, in A.
func uncorrected(c *schema.Conductor, iz derive.Number) float64 {
	for _, n := range iz.From {
		if n.Symbol == "I0" {
			return n.Value * float64(c.Parallel.Or(1))
		}
	}
	return 0
}

// mostVolts is the highest voltage of a circuit, for practices that grade by it. Where some source's
// volts are not known it is taken at least a quarter above nominal; without any figure it is taken as 50 V,
// which is the strict side.
func mostVolts(p *lint.Pass, at network.NodeID) derive.Number {
	high, _, lacks := p.Circuit.Highest(at)
	nominal, ok := p.Circuit.Nominal(at)
	switch {
	case high.Kind == 0 && !ok:
		return derive.Assume("highest volts of the circuit", "V", 50, "V", "plan", "voltage", "no source states its own; the strict side")
	case len(lacks) > 0 && 1.25*nominal.Value > high.Value:
		return derive.Compute("highest volts of the circuit", "V", 1.25*nominal.Value, "V", "1.25 x Vn, where a source does not state its own", nominal)
	}
	return high
}

// tooBig says whether a device's rating is above what may guard a conductor.
func (c *ceiling) tooBig(rating float64) bool {
	return c.most.Kind != 0 && rating > c.most.Value*(1+1e-9)
}
