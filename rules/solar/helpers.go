package solar

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
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
		missing = append(missing, m...)
		if n.Kind != 0 {
			parts, sum = append(parts, n), sum+n.Value
		}
	}
	switch len(parts) {
	case 0:
		return derive.Number{}, missing
	case 1:
		return parts[0], missing
	}
	return derive.Compute("cold voltage of the arrays in series", "Voc,cold", sum, "V", "sum of Voc,cold", parts...), missing
}

// coldVolts is the open-circuit voltage in V of one array on the coldest morning. With something
// missing it is a lower bound: the voltage at 25 C, or nothing.
func coldVolts(p *lint.Pass, a *schema.Source) (derive.Number, []lint.Missing) {
	cold, lacks := p.Circuit.ColdVoc(a)
	if !a.Voc.Set {
		return derive.Number{}, lacks
	}
	voc := derive.Read("open-circuit voltage of one module", "Voc", a.Voc.Value, "V", a.Addr, "voc", a.Voc.Range)
	series := derive.Read("modules in series", "n", float64(a.Series.Or(1)), "modules", a.Addr, "series", a.Series.Range)
	warm := derive.Compute("open-circuit voltage of "+lint.Quote(a)+" at 25 C", "Voc", series.Value*voc.Value, "V", "n x Voc, and more in the cold", series, voc)
	if lacks != nil || cold.Value < warm.Value {
		return warm, lacks
	}
	return cold, nil
}
