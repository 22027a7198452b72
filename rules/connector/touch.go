package connector

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// touch is what a hand finds on a contact.
type touch struct {
	by    schema.Block
	volts derive.Number   // the highest
	amps  []derive.Number // of limited sources
	ac    bool
	stiff bool // a battery is behind it
	vague []lint.Missing
}

const (
	leastVolts  = 12.0  // V, below which a battery's contact is left alone
	touchVolts  = 60.0  // V
	sparkVolts  = 30.0  // V
	sparkAmps   = 5.0   // A
	energyLimit = 240.0 // W
)

func (t *touch) total() float64 {
	sum := 0.0
	for _, a := range t.amps {
		sum += a.Value
	}
	return sum
}

// word is the word that what is known carries; 0 for none.
func (t *touch) word() lint.Severity {
	v, a := t.volts.Value, t.total()
	switch {
	case t.ac, v > touchVolts:
		return lint.Danger
	case v < leastVolts:
		return 0
	case t.stiff, v > sparkVolts && a >= sparkAmps, v*a >= energyLimit:
		return lint.Warning
	}
	return lint.Notice
}

func (t *touch) numbers() []derive.Number {
	out := lint.Known(nil, t.volts)
	if t.ac || t.stiff {
		return out
	}
	return append(out, lint.Known(nil, t.amps...)...)
}

// add joins what another supply puts on the same contact: a battery names it before a limited source.
func (t *touch) add(o touch) {
	if t.by == nil || o.stiff && !t.stiff || o.stiff == t.stiff && o.volts.Value > t.volts.Value {
		t.by = o.by
	}
	if t.volts.Kind == 0 || o.volts.Value > t.volts.Value {
		t.volts = o.volts
	}
	t.amps, t.vague = append(t.amps, o.amps...), append(t.vague, o.vague...)
	t.ac, t.stiff = t.ac || o.ac, t.stiff || o.stiff
}

// touches sums what energises a node.
func (x *exposure) touches(v *explore.View, e *explore.Energy, id network.NodeID, seen map[int]bool) touch {
	var t touch
	for _, s := range e.At(id) {
		switch {
		case s.Source >= 0:
			t.add(x.source(v, s.Source))
		case !seen[s.Converter]:
			seen[s.Converter] = true
			t.add(x.converter(v, e, s.Converter, id, seen))
		}
	}
	return t
}

func (x *exposure) source(v *explore.View, i int) touch {
	stacked := v.Series(i).Stacked()
	if t, ok := x.alone[i]; ok && !stacked {
		return t
	}
	s := &x.Net.Sources[i]
	t := touch{by: s.Source, ac: x.Net.Nodes[s.Hot].AC, stiff: s.Kind.Value == "battery"}
	if stacked {
		t.volts, _, t.vague = x.Circuit.Highest(s.Hot)
	} else {
		t.volts, t.vague = x.rest(s.Source)
	}
	if !t.stiff {
		g, lacks := x.Circuit.SourceGives(s.Source)
		t.amps, t.vague = lint.Known(nil, g.N), append(t.vague, lacks...)
	}
	if !stacked {
		x.alone[i] = t
	}
	return t
}

// rest is the highest voltage of a source on its own.
func (x *exposure) rest(s *schema.Source) (derive.Number, []lint.Missing) {
	stated := func(attribute string, q schema.Quantity) (derive.Number, []lint.Missing) {
		if !q.Set {
			return derive.Number{}, []lint.Missing{{Subject: s.Addr, Attribute: attribute}}
		}
		return derive.Read(attribute+" of "+lint.Quote(s), "V", q.Value*float64(s.Series.Or(1)), "V", s.Addr, attribute, q.Range), nil
	}
	switch {
	case s.Kind.Value == "battery":
		if v, lacks := x.Circuit.BatteryVolts(s); lacks == nil {
			return v.Rested, nil
		}
	case s.Kind.Value == "solar":
		n, lacks := x.Circuit.ColdVoc(s)
		if lacks != nil {
			n, _ = stated("voc", s.Voc)
		}
		return n, lacks
	case s.RegulatedVoltage.Set:
		return stated("regulated_voltage", s.RegulatedVoltage)
	}
	return stated("voltage", s.Voltage)
}

// converter is what a converter puts on a node: of its own by its output, where it limits; else, and
// backwards, what is behind it.
func (x *exposure) converter(v *explore.View, e *explore.Energy, i int, id network.NodeID, seen map[int]bool) touch {
	c := &x.Net.Converters[i]
	if !v.Joined(c.Out.Hot, id) {
		return x.touches(v, e, c.Out.Hot, seen)
	}
	t := touch{by: c.Converter, ac: x.Net.Nodes[c.Out.Hot].AC}
	if t.ac {
		t.volts, _ = x.Circuit.HighOutput(c.Converter)
		return t
	}
	behind := x.touches(v, e, c.In.Hot, seen)
	if c.Kind.Value == "diode" {
		return behind
	}
	t.volts, t.vague = x.Circuit.HighOutput(c.Converter)
	g, through, lacks := x.Circuit.OutputFault(c.Converter)
	if through {
		t.stiff, t.amps, t.vague = behind.stiff, behind.amps, append(t.vague, behind.vague...)
		return t
	}
	t.amps, t.vague = lint.Known(nil, g), append(t.vague, lacks...)
	return t
}
