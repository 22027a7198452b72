package circuit

import (
	"fmt"
	"slices"

	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Mains is one system of alternating current with everything that can supply it.
type Mains struct {
	Zone      *network.Zone // its returns hold the neutrals and grounds
	Suppliers []Supplier

	c     *Circuit
	feeds map[string]*network.Zone // by inverters: what can feed their inputs
	runs  map[string]ran
}

type ran struct {
	view  *explore.View
	known bool
}

// Supplier is a source of alternating current or an inverter; the other index is -1.
type Supplier struct{ Source, Converter int }

// Mains lists the systems of alternating current that have a supplier.
func (c *Circuit) Mains() []*Mains {
	if c.mains != nil {
		return c.mains
	}
	c.mains = []*Mains{}
	for _, z := range c.Net.Mains() {
		m := &Mains{Zone: z, c: c, feeds: map[string]*network.Zone{}, runs: map[string]ran{}}
		for _, i := range z.Sources {
			m.Suppliers = append(m.Suppliers, Supplier{i, -1})
		}
		for _, i := range z.Outputs {
			m.Suppliers = append(m.Suppliers, Supplier{-1, i})
		}
		if len(m.Suppliers) > 0 {
			c.mains = append(c.mains, m)
		}
	}
	return c.mains
}

// Block is the source or the inverter.
func (m *Mains) Block(s Supplier) schema.Block {
	if s.Source >= 0 {
		return m.c.Net.Sources[s.Source].Source
	}
	return m.c.Net.Converters[s.Converter].Converter
}

// Port is where it supplies.
func (m *Mains) Port(s Supplier) network.Port {
	if s.Source >= 0 {
		return m.c.Net.Sources[s.Source].Port
	}
	return m.c.Net.Converters[s.Converter].Out
}

// Volts is its nominal voltage.
func (m *Mains) Volts(s Supplier) schema.Quantity {
	switch {
	case s.Source >= 0:
		return m.c.Net.Sources[s.Source].Voltage
	case m.c.Net.Converters[s.Converter].Output != nil:
		return m.c.Net.Converters[s.Converter].Output.Voltage
	}
	return schema.Quantity{}
}

// NeutralBond is what the plan says of neutral and ground at it.
func (m *Mains) NeutralBond(s Supplier) schema.Text {
	if s.Source >= 0 {
		return m.c.Net.Sources[s.Source].NeutralBond
	}
	return m.c.Net.Converters[s.Converter].NeutralBond
}

// Shore says whether it is the supply from outside.
func (m *Mains) Shore(s Supplier) bool {
	return s.Source >= 0 && m.c.Net.Sources[s.Source].Kind.Value == "shore"
}

// ParallelCapable says whether the plan says that its maker lets it run beside another of its kind.
func (m *Mains) ParallelCapable(s Supplier) bool {
	if s.Source >= 0 {
		return m.c.Net.Sources[s.Source].ParallelCapable.True()
	}
	return m.c.Net.Converters[s.Converter].ParallelCapable.True()
}

// Runs says whether suppliers can run at once in a view of the system: sources are there; inverters' inputs
// have power in one state that agrees with the view. known is false where the search met its bound.
func (m *Mains) Runs(v *explore.View, list ...Supplier) (ok, known bool) {
	for _, s := range list {
		if s.Source >= 0 && !v.HasSource(s.Source) {
			return false, true
		}
	}
	inverters := invertersOf(list)
	if len(inverters) == 0 {
		return true, true
	}
	w, known := m.fed(v, inverters)
	return w != nil, known
}

func invertersOf(list []Supplier) (out []int) {
	for _, s := range list {
		if s.Converter >= 0 {
			out = append(out, s.Converter)
		}
	}
	return out
}

// Feed is the state that matters for suppliers to run at once in a view.
func (m *Mains) Feed(v *explore.View, list ...Supplier) []network.Position {
	var out []network.Position
	for _, s := range list {
		if s.Source >= 0 {
			out = append(out, v.Witness(nil, s.Source)...)
		}
	}
	inverters := invertersOf(list)
	if len(inverters) == 0 {
		return out
	}
	w, _ := m.fed(v, inverters)
	if w == nil {
		return out
	}
	live := w.Live(nil, nil)
	for _, i := range inverters {
		edges, sources := live.Way(m.c.Net.Converters[i].In)
		out = append(out, w.Witness(edges, sources...)...)
		if p := m.c.Net.Converters[i].Present; p >= 0 {
			out = append(out, w.State([]int{p})...)
		}
	}
	return out
}

// fed is a state, in agreement with a view, in which the inputs of all these inverters have power.
func (m *Mains) fed(v *explore.View, inverters []int) (*explore.View, bool) {
	for _, i := range inverters {
		if m.c.Net.ZoneOf(m.c.Net.Converters[i].In.Hot) == nil || !v.HasConverter(i) {
			return nil, true
		}
	}
	z := m.feedZone(inverters)
	key := fmt.Sprint(inverters)
	for i := range m.c.Net.Vars {
		if p := v.At(i); p >= 0 && m.c.Space.Tied(z, i) {
			key += fmt.Sprintf(" %d=%d", i, p)
		}
	}
	if old, ok := m.runs[key]; ok {
		return old.view, old.known
	}
	w, known := m.c.Space.Agreeing(v, z, func(w *explore.View) bool {
		live := w.Live(nil, nil)
		return !slices.ContainsFunc(inverters, func(i int) bool {
			return !w.HasConverter(i) || !live.Feeds(m.c.Net.Converters[i].In)
		})
	})
	m.runs[key] = ran{w, known}
	return w, known
}

// feedZone is what can feed the inputs of inverters, loads and dead ends left out.
func (m *Mains) feedZone(inverters []int) *network.Zone {
	key := fmt.Sprint(inverters)
	if z, ok := m.feeds[key]; ok {
		return z
	}
	n := m.c.Net
	var ups []*network.Zone
	for _, i := range inverters {
		if z := n.ZoneOf(n.Converters[i].In.Hot); !slices.Contains(ups, z) {
			ups = append(ups, z)
		}
	}
	up := n.Upstream(ups[0])
	if len(ups) > 1 {
		up = n.JoinFed(ups...)
	}
	var keep []network.NodeID
	for _, i := range up.Sources {
		keep = append(keep, n.Sources[i].Hot)
	}
	for _, i := range slices.Concat(up.Inputs, up.Outputs) {
		keep = append(keep, n.Converters[i].In.Hot, n.Converters[i].Out.Hot)
	}
	out := n.Trim(up, keep...)
	m.feeds[key] = out
	return out
}
