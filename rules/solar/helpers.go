package solar

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// open says whether an array is there and not shorted, as it is while some selectors are thrown.
func open(n *network.Network, v *explore.View, array int) bool {
	return v.HasSource(array) && !v.Joined(n.Sources[array].Hot, n.Sources[array].Ret)
}

// clamped says whether a battery is across the array, or across the stack it is part of: then the
// array cannot rise to its open voltage.
func clamped(n *network.Network, v *explore.View, array int) bool {
	s := v.Series(array)
	for _, i := range v.Zone.Sources {
		if x := &n.Sources[i]; x.Kind.Value == "battery" && v.HasSource(i) && s.Across(x.Port) {
			return true
		}
	}
	return false
}

// touchableAt says whether a contact that can be touched is joined to the node while its plug is apart.
func touchableAt(n *network.Network, v *explore.View, hot network.NodeID) bool {
	for _, i := range v.Zone.Edges {
		e := &n.Edges[i]
		c, ok := schema.Lookup[*schema.Connector](n.Plan, e.Addr)
		if !ok || e.Kind != network.Mate || v.Conducts(i) {
			continue
		}
		fixed, free := e.A, e.B
		if c.Exposed.Value == "fixed" && v.Joined(fixed, hot) || c.Exposed.Value == "free" && v.Joined(free, hot) {
			return true
		}
	}
	return false
}

// stacks finds what stands on what in one view; each array is looked at once.
type stacks struct {
	p    *lint.Pass
	view *explore.View
	own  map[int]float64 // volts in the cold
	done map[int]*stack
}

// stack is arrays in series, top first, with their volts in the cold.
type stack struct {
	arrays []int
	volts  float64
}

// of is the stack that lifts an array's positive highest. One that stands on itself is cut.
func (s *stacks) of(array int) *stack {
	if got, ok := s.done[array]; ok {
		return got
	}
	s.done[array] = &stack{}
	n := s.p.Net
	under := &stack{}
	for _, i := range s.view.Zone.Sources {
		if o := &n.Sources[i]; o.Kind.Value == "solar" && open(n, s.view, i) && s.view.Joined(n.Sources[array].Ret, o.Hot) {
			if low := s.of(i); low.volts > under.volts {
				under = low
			}
		}
	}
	s.done[array] = &stack{append([]int{array}, under.arrays...), s.own[array] + under.volts}
	return s.done[array]
}

// coldest is the volts of every array on the coldest morning, by source.
func coldest(p *lint.Pass) map[int]float64 {
	out := map[int]float64{}
	for i := range p.Net.Sources {
		if s := p.Net.Sources[i].Source; s.Kind.Value == "solar" {
			n, _ := coldVolts(p, s)
			out[i] = n.Value
		}
	}
	return out
}

// stackVolts is the open-circuit voltage in V of arrays in series on the coldest morning. What is
// missing is left out of the sum, so the number is then a lower bound.
func stackVolts(p *lint.Pass, stack []int) (derive.Number, []lint.Missing) {
	var parts []derive.Number
	var missing []lint.Missing
	sum := 0.0
	for _, i := range stack {
		n, m := coldVolts(p, p.Net.Sources[i].Source)
		parts, missing, sum = append(parts, n), append(missing, m...), sum+n.Value
	}
	if len(parts) == 1 {
		return parts[0], missing
	}
	return derive.Compute("cold voltage of the arrays in series", "Voc,cold", sum, "V", "sum of Voc,cold", parts...), missing
}

// coldVolts is the open-circuit voltage in V of one array on the coldest morning, after
// NFPA 70 690.7(A). Where the coldest temperature or the module's voltage is missing it is a lower
// bound: the voltage at 25 C, or 0.
func coldVolts(p *lint.Pass, a *schema.Source) (derive.Number, []lint.Missing) {
	name := "open-circuit voltage of " + lint.Quote(a)
	if !a.Voc.Set {
		return derive.Compute(name, "Voc,cold", 0, "V", "at least"), []lint.Missing{{Subject: a.Addr, Attribute: "voc"}}
	}
	voc := derive.Read("open-circuit voltage of a module of "+lint.Quote(a), "Voc", a.Voc.Value, "V", a.Addr, "voc", a.Voc.Range)
	series := derive.Read("modules in series in "+lint.Quote(a), "n", float64(a.Series.Or(1)), "modules", a.Addr, "series", a.Series.Range)
	if !a.Series.Set {
		series.Source = a.Addr + ", one module where series is left out"
	}
	at25 := series.Value * voc.Value
	coldest, ok := coldestAt(p.Plan, a)
	if !ok {
		n := derive.Compute(name+" at 25 C", "Voc,cold", at25, "V", "n Voc, and more in the cold", series, voc)
		return n, []lint.Missing{{Subject: a.Addr, Attribute: "coldest"}}
	}
	rise, formula, ok := coldFactor(a, coldest)
	if !ok {
		n := derive.Compute(name+" at 25 C", "Voc,cold", at25, "V", "n Voc, and more in the cold", series, voc)
		return n, []lint.Missing{{Subject: a.Addr, Attribute: "voc_coefficient"}}
	}
	return derive.Compute(name+" in the cold", "Voc,cold", at25*rise.factor, "V", formula, series, voc, rise.number, coldest), nil
}

// coldestAt is the coldest temperature that an array's modules see.
func coldestAt(plan *schema.Plan, a *schema.Source) (derive.Number, bool) {
	read := func(addr string, q schema.Quantity) (derive.Number, bool) {
		return derive.Read("coldest temperature at "+lint.Quote(a), "Tmin", q.Value, "C", addr, "coldest", q.Range), true
	}
	c, ok := schema.Lookup[*schema.Compartment](plan, a.Compartment.Addr)
	switch {
	case a.Coldest.Set:
		return read(a.Addr, a.Coldest)
	case ok && c.Coldest.Set:
		return read(c.Addr, c.Coldest)
	case plan.System.Coldest.Set:
		return read(plan.System.Addr, plan.System.Coldest)
	}
	return derive.Number{}, false
}

// rise is what the cold does to a voltage.
type rise struct {
	factor float64
	number derive.Number
}

// coldFactor is how the voltage of a module rises at the coldest temperature; never below 1.
func coldFactor(a *schema.Source, coldest derive.Number) (rise, string, bool) {
	q := a.VocCoefficient
	if !q.Set {
		v, ok := tables.VocFactor(coldest.Value)
		n := derive.Assume("rise in the cold of "+lint.Quote(a), "k", v.V, "", a.Addr, "voc_coefficient", v.Cite.String()+" for crystalline silicon")
		return rise{max(1, v.V), n}, "n Voc k", ok
	}
	drop := max(0, -q.Value)
	colder := max(0, 25-coldest.Value)
	if q.Dim == quantity.VoltageCoefficient {
		n := derive.Read("voltage lost with heat by a module of "+lint.Quote(a), "b", drop, "V/C", a.Addr, "voc_coefficient", q.Range)
		return rise{1 + drop*colder/a.Voc.Value, n}, "n (Voc + b (25 C - Tmin))", a.Voc.Value > 0
	}
	n := derive.Read("share of voltage lost with heat by a module of "+lint.Quote(a), "b", drop, "1/C", a.Addr, "voc_coefficient", q.Range)
	return rise{1 + drop*colder, n}, "n Voc (1 + b (25 C - Tmin))", true
}
