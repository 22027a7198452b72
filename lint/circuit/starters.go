package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Starters lists the loads at the end of a conductor that feeds an engine's starter.
func (c *Circuit) Starters() []int {
	var out []int
	for i := range c.Net.Loads {
		for _, e := range c.Net.At(c.Net.Loads[i].Hot) {
			if w := c.Net.Edges[e].Wire; w != nil && w.Cranking.True() {
				out = append(out, i)
				break
			}
		}
	}
	return out
}

// Beside is an edge's largest current, capped by devices, less what starters draw of it, in A; lacks
// leaves the starters' own figures out.
func (c *Circuit) Beside(edge int) (derive.Number, []derive.Missing) {
	w, lacks := c.Worst(edge), c.LacksAt(edge)
	rest := w.Steady.Value
	from := []derive.Number{w.Capped}
	starter := map[string]bool{}
	for _, i := range c.Starters() {
		starter[c.Net.Loads[i].Addr] = true
		n, _ := c.LoadCurrent(i)
		for _, k := range w.Steady.From {
			if n.Kind != 0 && k.Name == n.Name && k.Value == n.Value {
				rest -= n.Value
				from = append(from, n)
				break // another part may be called alike
			}
		}
	}
	var left []derive.Missing
	for _, m := range lacks {
		if !starter[m.Subject] {
			left = append(left, m)
		}
	}
	return derive.Compute("largest current beside the starter", "Iwc", max(0, min(rest, w.Capped.Value)), "A", "Iwc less what the starter draws for seconds", from...), left
}

// CrankingAt says whether an edge, or a wire at one of its ends, belongs to a starter's circuit.
func (c *Circuit) CrankingAt(edge int) bool {
	e := &c.Net.Edges[edge]
	cranks := func(w *schema.Conductor) bool { return w != nil && w.Cranking.True() }
	if e.Wire != nil {
		return cranks(e.Wire)
	}
	for _, end := range []network.NodeID{e.A, e.B} {
		for _, i := range c.Net.At(end) {
			if cranks(c.Net.Edges[i].Wire) {
				return true
			}
		}
	}
	return false
}
