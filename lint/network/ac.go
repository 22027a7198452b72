package network

import (
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// current says what kind of current a terminal is known to carry.
func (b *builder) current(t *terminal) quantity.Kind {
	switch x := b.Plan.Block(t.addr).(type) {
	case *schema.Source:
		if x.Kind.Value == "shore" || x.Kind.Value == "generator" || x.Voltage.Kind == quantity.AC {
			return quantity.AC
		}
		return quantity.DC
	case *schema.Load:
		return x.RatedVoltage.Kind
	case *schema.Converter:
		return converterCurrent(x, t.name)
	}
	return quantity.Unmarked
}

func converterCurrent(x *schema.Converter, side string) quantity.Kind {
	ac := side == "in" && (x.Kind.Value == "charger" || x.Kind.Value == "load-center") || side == "out" && x.Kind.Value == "inverter"
	if side == "in" && x.Input != nil && x.Input.VoltageMax.Kind == quantity.DC {
		ac = false // a charger fed by direct current, said so
	}
	if ac {
		return quantity.AC
	}
	return quantity.DC
}

// markAC spreads the kind of current over everything that is joined, and reports the conductor at
// which alternating meets direct.
func (b *builder) markAC() {
	s := newSets(len(b.terms))
	kind := make([]quantity.Kind, len(b.terms))
	for i, t := range b.terms {
		kind[i] = b.current(t)
	}
	join := func(i, j int) bool {
		i, j = s.find(i), s.find(j)
		ki, kj := kind[i], kind[j]
		if i != j && ki != quantity.Unmarked && kj != quantity.Unmarked && ki != kj {
			return false
		}
		kind[s.union(i, j)] = max(ki, kj)
		return true
	}
	b.joinParts(join)
	for _, c := range b.Plan.Conductors {
		if c.Polarity.Value == "grounding" {
			continue // a bond may run between the two
		}
		i, ok := b.byKey[key(c.From.Addr, c.From.Terminal, c.From.Contact)]
		j, ok2 := b.byKey[key(c.To.Addr, c.To.Terminal, c.To.Contact)]
		if ok && ok2 && !join(i, j) {
			b.problem(c.Range, "Alternating and direct current are joined",
				"Conductor %q joins %s and %s: one side carries alternating current, the other direct current. They are kept apart by a converter.", c.Named(), c.From.Text, c.To.Text)
		}
	}
	for i, t := range b.terms {
		t.ac = kind[s.find(i)] == quantity.AC
	}
}

// joinParts joins the terminals that one part, a link or a mounting makes one circuit of.
func (b *builder) joinParts(join func(i, j int) bool) {
	first := map[string]int{}
	for i, t := range b.terms {
		switch b.Plan.Block(t.addr).(type) {
		case *schema.Fuse, *schema.Switch, *schema.Connector:
			if t.contact != "" {
				continue // an extra contact is a circuit of its own
			}
			if f, ok := first[t.addr]; ok {
				join(f, i)
			} else {
				first[t.addr] = i
			}
		}
	}
	on := func(r schema.Ref, addr string) {
		i, ok := b.byKey[key(r.Addr, r.Terminal, r.Contact)]
		if f, has := first[addr]; ok && has && r.Set && !join(i, f) {
			b.problem(r.Range, "Alternating and direct current are joined", "%s cannot sit on %s: the two carry different kinds of current.", addr, r.Text)
		}
	}
	for _, x := range b.Plan.Fuses {
		on(x.On, x.Addr)
	}
	for _, x := range b.Plan.Switches {
		on(x.On, x.Addr)
	}
	for _, x := range b.Plan.Connectors {
		on(x.On, x.Addr)
	}
	for _, l := range b.Plan.Links {
		i, ok := b.byKey[key(l.A.Addr, l.A.Terminal, l.A.Contact)]
		j, ok2 := b.byKey[key(l.B.Addr, l.B.Terminal, l.B.Contact)]
		if ok && ok2 && !join(i, j) {
			b.problem(l.A.Range, "Alternating and direct current are joined", "%s cannot be fed from %s: the two carry different kinds of current.", l.B.Addr, l.A.Text)
		}
	}
}
