package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// Supply is what something can give.
type Supply struct {
	N         derive.Number
	Unlimited bool // a battery, or something whose limit is not stated (then lacks says so)
	Charges   bool // it can charge a battery: everything but a battery
}

// SourceGives is what a source gives in operation, in A.
func (c *Circuit) SourceGives(s *schema.Source) (Supply, []derive.Missing) {
	if s.Kind.Value == "battery" {
		return Supply{Unlimited: true}, nil
	}
	if s.Kind.Value == "solar" {
		n, m := c.arrayCurrent(s)
		return Supply{N: n, Unlimited: m != nil, Charges: true}, m
	}
	volts := s.Voltage
	if !volts.Set {
		volts = s.RegulatedVoltage
	}
	n, m := amps(s.Rated, s, "rated", volts)
	return Supply{N: n, Unlimited: m != nil, Charges: true}, m
}

func (c *Circuit) arrayCurrent(s *schema.Source) (derive.Number, []derive.Missing) {
	if !s.Isc.Set {
		return derive.Number{}, missing(s, "isc")
	}
	f := tables.PVFactor()
	isc := read("short-circuit current of one module", "Isc", s.Isc, "A", s, "isc")
	n := derive.Read("strings in parallel", "n", float64(s.Parallel.Or(1)), "", s.Addr, "parallel", s.Parallel.Range)
	k := derive.LookUp("strong-sun factor", "f", f.V, "", f.Cite.String())
	return derive.Compute("most current of "+quote(s), "I", isc.Value*n.Value*f.V, "A", "I = f x n x Isc", k, n, isc), nil
}

// OutputGives is what a converter's output gives in operation, in A.
func (c *Circuit) OutputGives(x *schema.Converter) (Supply, []derive.Missing) {
	if p := x.Output; p != nil && p.CurrentMax.Set {
		return Supply{N: read("output limit of "+quote(x), "Iout", p.CurrentMax, "A", x, "output current_max"), Charges: true}, nil
	}
	if p := x.Output; p != nil && p.Voltage.Set && x.Rated.Set {
		n, m := amps(x.Rated, x, "rated", p.Voltage)
		return Supply{N: n, Charges: true}, m
	}
	return Supply{Unlimited: true, Charges: true}, missing(x, "output current_max")
}

// SourceFault is what a source drives into a dead short, in A. stiff says that only wire limits it.
func (c *Circuit) SourceFault(s *schema.Source) (n derive.Number, stiff bool, lacks []derive.Missing) {
	switch s.Kind.Value {
	case "battery":
		return n, true, nil
	case "solar":
		n, lacks = c.arrayCurrent(s)
		return n, false, lacks
	}
	if s.ShortCircuit.Set {
		return read("short-circuit current of "+quote(s), "Isc", s.ShortCircuit, "A", s, "short_circuit"), false, nil
	}
	g, m := c.SourceGives(s)
	if m != nil {
		return n, false, m
	}
	n = derive.Compute("fault current of "+quote(s), "If", 1.25*g.N.Value, "A", "If = 1.25 x rated output, common practice", g.N)
	if s.Kind.Value == "shore" || s.Kind.Value == "generator" {
		return n, false, missing(s, "short_circuit") // at least this much
	}
	return n, false, nil
}

// OutputFault is what a converter's output drives into a dead short, in A. behind says that the
// converter does not limit, so that what is behind it decides.
func (c *Circuit) OutputFault(x *schema.Converter) (n derive.Number, behind bool, lacks []derive.Missing) {
	if x.LimitsCurrent.False() || x.Kind.Value == "diode" {
		return n, true, nil
	}
	if !x.LimitsCurrent.Set {
		lacks = missing(x, "limits_current")
	}
	if x.Output == nil || !x.Output.CurrentMax.Set {
		return n, false, merge(lacks, missing(x, "output current_max")...)
	}
	return read("output limit of "+quote(x), "Iout", x.Output.CurrentMax, "A", x, "output current_max"), false, lacks
}
