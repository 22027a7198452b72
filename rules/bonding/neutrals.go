package bonding

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// system is what a supply's neutral and ground are joined to in a view, bonds left out.
type system struct {
	p        *lint.Pass
	m        *circuit.Mains
	s        circuit.Supplier
	v        *explore.View
	on       []circuit.Supplier // what runs: the supply and the inverters beside it
	neutrals *explore.Reach
	grounds  *explore.Reach
}

func newSystem(p *lint.Pass, m *circuit.Mains, s circuit.Supplier, v *explore.View, on []circuit.Supplier) *system {
	use := func(e int, _ network.NodeID) bool { return !p.Net.Bond(e) }
	port := m.Port(s)
	return &system{p, m, s, v, on, v.Reach(port.Ret, use, nil), v.Reach(port.Ground, use, nil)}
}

func (y *system) neutral(id network.NodeID) bool {
	_, ok := y.neutrals.Dist[id]
	return ok
}

// bond counts a bond whose neutral belongs to the system: for certain where its ground does too, perhaps
// where some cable of the system is drawn without saying what its ground is.
func (y *system) bond(t *tally, ground network.NodeID, name string) {
	if _, ok := y.grounds.Dist[ground]; ok {
		t.least++
		t.most++
		t.at = append(t.at, name)
		return
	}
	if x := y.bare(); x != nil {
		t.maybe(lint.Missing{Subject: x.Addr, Attribute: "grounding"})
	}
}

// bare finds a cable of the system without a word of its ground.
func (y *system) bare() *schema.Conductor {
	for _, x := range y.p.Plan.Conductors {
		if x.Grounding.Set || x.Polarity.Set && x.Polarity.Value != "pair" {
			continue
		}
		for _, e := range y.p.Net.EdgesOf(x.Addr) {
			if y.neutral(y.p.Net.Edges[e].A) && y.p.Net.Neutral(y.p.Net.Edges[e].A) {
				return x
			}
		}
	}
	return nil
}

// feeds says whether the supply feeds a load or a charger, and whether an outlet. One appliance without a
// panel, plug or switch between does not count.
func (y *system) feeds() (any, outlets bool) {
	hot := y.m.Port(y.s).Hot
	users := 0
	for _, i := range y.m.Zone.Loads {
		if l := &y.p.Net.Loads[i]; y.v.HasLoad(i) && y.v.Joined(hot, l.Hot) {
			users++
			outlets = outlets || l.Receptacle.True()
		}
	}
	for _, i := range y.m.Zone.Inputs {
		if c := &y.p.Net.Converters[i]; y.v.HasConverter(i) && y.v.Joined(hot, c.In.Hot) {
			users++
		}
	}
	return users > 1 || users == 1 && (outlets || y.board()), outlets
}

// board says whether a bus, switch or plug stands between the supply and what it feeds.
func (y *system) board() bool {
	for id := range y.v.Reach(y.m.Port(y.s).Hot, nil, nil).Dist {
		switch y.p.Plan.Block(y.p.Net.Nodes[id].Addr).(type) {
		case *schema.Bus, *schema.Switch, *schema.Connector:
			return true
		}
	}
	return false
}

// running says whether a supply runs: a source that is there, an inverter that is on.
func (y *system) running(o circuit.Supplier) bool {
	return slices.Contains(y.on, o) || o.Source >= 0 && y.v.HasSource(o.Source)
}

// passed says whether another supply that runs feeds the same lines: a relay then leaves the bond to it.
func (y *system) passed(o circuit.Supplier) bool {
	return slices.ContainsFunc(y.m.Suppliers, func(x circuit.Supplier) bool {
		return x != o && y.running(x) && y.v.Joined(y.m.Port(x).Hot, y.m.Port(o).Hot)
	})
}

const mostBeside = 6 // inverters beside a supply that are told apart; beyond that the search is not finished

// together lists what can run with a supply in a view: it alone, and with each set of the inverters beside
// it that have power at once.
func together(m *circuit.Mains, s circuit.Supplier, v *explore.View) (out [][]circuit.Supplier, known bool) {
	ok, known := m.Runs(v, s)
	if !ok {
		return nil, known
	}
	out = [][]circuit.Supplier{{s}}
	for _, o := range m.Suppliers {
		if o == s || o.Converter < 0 {
			continue
		}
		if len(out) >= 1<<mostBeside {
			return out, false
		}
		for _, have := range out[:len(out):len(out)] {
			on := append(slices.Clone(have), o)
			ok, sure := m.Runs(v, on...)
			if known = known && sure; ok {
				out = append(out, on)
			}
		}
	}
	return out, known
}
