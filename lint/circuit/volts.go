package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// class is the nominal voltage class of a direct-current figure: 12, 24, 36 or 48 V; other voltages
// are their own class.
func class(v float64) float64 {
	for _, c := range []struct{ upTo, is float64 }{{10, 0}, {16, 12}, {20, 0}, {32, 24}, {34, 0}, {45, 36}, {46, 0}, {60, 48}} {
		if v <= c.upTo {
			if c.is == 0 {
				return v
			}
			return c.is
		}
	}
	return v
}

// Nominal is the nominal voltage of the circuit that a live node is in, in V: the class of its
// batteries, converter outputs and other sources, the lowest where they differ. ok is false where
// the plan states none.
func (c *Circuit) Nominal(id network.NodeID) (derive.Number, bool) {
	z := c.Net.ZoneOf(id)
	if z == nil {
		return derive.Number{}, false
	}
	best, rank := derive.Number{}, 0
	take := func(r int, q schema.Quantity, b schema.Block, attribute string, series int) {
		if !q.Set || r < rank {
			return
		}
		n := read("nominal voltage", "Vn", q, "V", b, attribute)
		n.Value *= float64(series)
		if !z.AC {
			if k := class(n.Value); k != q.Value {
				n = derive.Compute("voltage class", "Vn", k, "V", "class of the stated voltage", read("stated voltage", "V", q, "V", b, attribute))
			}
		}
		if r > rank || best.Kind == 0 || n.Value < best.Value {
			best, rank = n, r
		}
	}
	for _, i := range z.Sources {
		s := c.Net.Sources[i].Source
		switch {
		case s.Kind.Value == "battery":
			take(3, s.Voltage, s, "voltage", s.Series.Or(1))
		case s.Kind.Value == "solar":
			take(1, s.Vmp, s, "vmp", s.Series.Or(1))
		case s.Voltage.Set:
			take(2, s.Voltage, s, "voltage", 1)
		default:
			take(2, s.RegulatedVoltage, s, "regulated_voltage", 1)
		}
	}
	for _, i := range z.Outputs {
		if p := c.Net.Converters[i].Output; p != nil {
			take(2, p.Voltage, c.Net.Converters[i].Converter, "output voltage", 1)
		}
	}
	return best, best.Kind != 0
}

// lowest is the lowest voltage at which the sources of a zone can hold it, in V.
func (c *Circuit) lowest(z *network.Zone) (derive.Number, bool) {
	var best derive.Number
	take := func(n derive.Number) {
		if n.Kind != 0 && (best.Kind == 0 || n.Value < best.Value) {
			best = n
		}
	}
	for _, i := range z.Sources {
		take(c.lowOf(c.Net.Sources[i].Source))
	}
	for _, i := range z.Outputs {
		if x := c.Net.Converters[i]; x.Output != nil && x.Output.Voltage.Set && x.Kind.Value != "diode" {
			v := read("output voltage of "+quote(x.Converter), "Vout", x.Output.Voltage, "V", x.Converter, "output voltage")
			take(derive.Compute("output voltage of "+quote(x.Converter)+" at full load", "V", 0.99*v.Value, "V", "Vout less 1 % droop", v))
		}
	}
	return best, best.Kind != 0
}

func (c *Circuit) lowOf(s *schema.Source) derive.Number {
	switch s.Kind.Value {
	case "battery":
		if v, m := c.BatteryVolts(s); m == nil {
			return v.Empty
		}
	case "alternator":
		k := 1.0
		if s.RegulatedVoltage.Set {
			k = class(s.RegulatedVoltage.Value) / 12
		}
		low := tables.AlternatorLow()
		return derive.Assume("lowest volts of the running alternator "+quote(s), "Vlow", low.V*k, "V", s.Addr, "lowest regulated voltage", low.Cite.String())
	case "solar":
		return derive.Number{} // constant-power loads hang on a controller, never on the array
	}
	if s.Voltage.Set {
		return read("voltage of "+quote(s), "V", s.Voltage, "V", s, "voltage")
	}
	return derive.Number{}
}

// ColdVoc is the open-circuit voltage of an array on its coldest morning, in V.
func (c *Circuit) ColdVoc(s *schema.Source) (derive.Number, []derive.Missing) {
	if !s.Voc.Set {
		return derive.Number{}, missing(s, "voc")
	}
	cold, ok := c.coldest(s)
	if !ok {
		return derive.Number{}, missing(s, "coldest")
	}
	voc := read("open-circuit voltage of one module", "Voc", s.Voc, "V", s, "voc")
	n := derive.Read("modules in series", "n", float64(s.Series.Or(1)), "", s.Addr, "series", s.Series.Range)
	dt := cold.Value - 25
	switch q := s.VocCoefficient; {
	case q.Set && q.Dim == quantity.VoltageCoefficient:
		k := read("change of the open-circuit voltage", "k", q, "V/C", s, "voc_coefficient")
		return derive.Compute("cold open-circuit voltage of "+quote(s), "Vcold", n.Value*(voc.Value+k.Value*dt), "V", "Vcold = n x (Voc + k x (T - 25))", n, voc, k, cold), nil
	case q.Set:
		k := read("change of the open-circuit voltage", "k", q, "1/C", s, "voc_coefficient")
		return derive.Compute("cold open-circuit voltage of "+quote(s), "Vcold", n.Value*voc.Value*(1+k.Value*dt), "V", "Vcold = n x Voc x (1 + k x (T - 25))", n, voc, k, cold), nil
	}
	f, ok := tables.VocFactor(cold.Value)
	if !ok {
		return derive.Number{}, missing(s, "voc_coefficient")
	}
	k := derive.Assume("cold factor of the open-circuit voltage", "f", f.V, "", s.Addr, "voc_coefficient", f.Cite.String())
	return derive.Compute("cold open-circuit voltage of "+quote(s), "Vcold", n.Value*voc.Value*k.Value, "V", "Vcold = n x Voc x f", n, voc, k, cold), nil
}

// coldest is the coldest morning that an array sees: its own, its compartment's, the site's.
func (c *Circuit) coldest(s *schema.Source) (derive.Number, bool) {
	if s.Coldest.Set {
		return read("coldest morning", "T", s.Coldest, "C", s, "coldest"), true
	}
	if k, ok := schema.Lookup[*schema.Compartment](c.Net.Plan, s.Compartment.Addr); ok && k.Coldest.Set {
		return read("coldest morning", "T", k.Coldest, "C", k, "coldest"), true
	}
	if sys := c.Net.Plan.System; sys.Coldest.Set {
		return read("coldest morning", "T", sys.Coldest, "C", sys, "coldest"), true
	}
	return derive.Number{}, false
}

// Highest is the highest voltage, in V, between a live node and its return in working order, over all
// states: arrays open-circuit and cold, batteries at rested full, or at what the chargers that reach
// them hold. The view is a state that makes it. lacks names sources whose voltage is not known.
func (c *Circuit) Highest(id network.NodeID) (best derive.Number, at *explore.View, lacks []derive.Missing) {
	h, ok := c.highs[id]
	if !ok {
		c.highs[id] = highest{} // a ring of diodes ends here
		h = c.findHighest(id)
		c.highs[id] = h
	}
	return h.n, h.view, h.lacks
}

// highest is an answer of Highest.
type highest struct {
	n     derive.Number
	view  *explore.View
	lacks []derive.Missing
}

func (h *highest) take(n derive.Number, v *explore.View, lacks []derive.Missing) {
	h.lacks = merge(h.lacks, lacks...)
	if n.Kind != 0 && (h.n.Kind == 0 || n.Value > h.n.Value) {
		h.n, h.view = n, v
	}
}

func (c *Circuit) findHighest(id network.NodeID) (h highest) {
	z := c.zoneAt(id)
	if z == nil {
		return h
	}
	z = c.string(z)
	list, complete := c.Space.Views(z, c.Space.About(c.Space.Closed(explore.All()), id))
	if !complete {
		h.lacks = merge(h.lacks, derive.Missing{Subject: "plan", Attribute: "states"})
	}
	for _, v := range list {
		stack := row{c, v, map[int]derive.Number{}}
		for _, i := range z.Sources {
			if v.HasSource(i) && v.Joined(c.Net.Sources[i].Hot, id) {
				n, m := stack.top(i)
				h.take(n, v, m)
			}
		}
		for _, i := range z.Outputs {
			x := &c.Net.Converters[i]
			if !v.HasConverter(i) || !v.Joined(x.Out.Hot, id) {
				continue
			}
			if x.Kind.Value == "diode" { // it passes what feeds it
				n, _, m := c.Highest(x.In.Hot)
				h.take(n, v, m)
				continue
			}
			n, m := c.HighOutput(x.Converter)
			h.take(n, v, m)
		}
	}
	return h
}

// string is a zone with those of the sources that its own stand on, where they are drawn in series.
func (c *Circuit) string(z *network.Zone) *network.Zone {
	for _, i := range z.Sources {
		if r := c.zoneAt(c.Net.Sources[i].Ret); r != nil && c.sideOf(r) == mixed {
			if c.strings[z] == nil {
				c.strings[z] = c.Net.Series(i)
			}
			return c.strings[z]
		}
	}
	return z
}

// row finds how high sources in series stand; each source is looked at once.
type row struct {
	c    *Circuit
	v    *explore.View
	done map[int]derive.Number
}

// top is the highest voltage at a source's positive, with what it stands on in series.
func (r row) top(i int) (derive.Number, []derive.Missing) {
	if n, ok := r.done[i]; ok {
		return n, nil
	}
	r.done[i] = derive.Number{} // sources in a ring end here
	s := &r.c.Net.Sources[i]
	n, lacks := r.c.highOf(s.Source)
	if n.Kind == 0 || s.Ret == network.None || r.c.Net.Nodes[s.Ret].Return {
		r.done[i] = n
		return n, lacks
	}
	under, m := r.under(i)
	if under.Kind != 0 {
		n = derive.Compute("highest volts of the string at "+quote(s.Source), "V", n.Value+under.Value, "V", "sum of the string", under, n)
	}
	r.done[i] = n
	return n, merge(lacks, m...)
}

// there says whether a source can be there: one that the view knows nothing of can.
func (r row) there(i int) bool {
	p := r.c.Net.Sources[i].Present
	return p < 0 || r.v.At(p) < 0 || r.v.HasSource(i)
}

// under is the highest of what a source stands on.
func (r row) under(i int) (best derive.Number, lacks []derive.Missing) {
	for j := range r.c.Net.Sources {
		if s := &r.c.Net.Sources[j]; j != i && r.there(j) && r.v.Joined(s.Hot, r.c.Net.Sources[i].Ret) {
			n, m := r.top(j)
			lacks = merge(lacks, m...)
			if n.Kind != 0 && n.Value > best.Value {
				best = n
			}
		}
	}
	return best, lacks
}

func (c *Circuit) highOf(s *schema.Source) (derive.Number, []derive.Missing) {
	switch s.Kind.Value {
	case "battery":
		v, m := c.BatteryVolts(s)
		return v.Rested, m
	case "solar":
		return c.ColdVoc(s)
	case "alternator", "supply":
		if s.RegulatedVoltage.Set {
			return read("regulated voltage of "+quote(s), "Vreg", s.RegulatedVoltage, "V", s, "regulated_voltage"), nil
		}
		if s.Kind.Value == "alternator" {
			return derive.Number{}, missing(s, "regulated_voltage")
		}
	}
	if s.Voltage.Set {
		return read("voltage of "+quote(s), "V", s.Voltage, "V", s, "voltage"), nil
	}
	return derive.Number{}, missing(s, "voltage")
}

// HighOutput is the highest voltage that a converter puts out in working order, in V.
func (c *Circuit) HighOutput(x *schema.Converter) (derive.Number, []derive.Missing) {
	if x.Kind.Value == "diode" {
		return derive.Number{}, nil // it holds nothing of its own
	}
	var best derive.Number
	if p := x.Output; p != nil {
		for _, q := range []struct {
			v    schema.Quantity
			name string
		}{{p.Voltage, "output voltage"}, {p.Float, "output float"}, {p.Equalize, "output equalize"}} {
			if q.v.Set && q.v.Value > best.Value {
				best = read(q.name+" of "+quote(x), "Vout", q.v, "V", x, q.name)
			}
		}
	}
	if best.Kind != 0 {
		return best, nil
	}
	for _, r := range x.Charges.List {
		if s, ok := schema.Lookup[*schema.Source](c.Net.Plan, r.Addr); ok {
			if v, m := c.BatteryVolts(s); m == nil && v.Full.Value > best.Value {
				best = v.Full
			}
		}
	}
	if best.Kind != 0 {
		return best, nil
	}
	return best, missing(x, "output voltage")
}
