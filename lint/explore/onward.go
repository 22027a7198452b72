package explore

import (
	"slices"

	"ferrule/lint/network"
)

// Onward is the ports that a charger's current reaches: its own, and the outputs of the diodes on its way.
type Onward struct {
	view  *View
	ports []onward
}

type onward struct {
	port network.Port
	way  []int // through diodes before it
}

// Onward finds the ports that current reaches from one.
func (v *View) Onward(from network.Port) *Onward {
	out := &Onward{view: v, ports: []onward{{port: from}}}
	for i := 0; i < len(out.ports); i++ {
		for _, k := range v.Zone.Inputs {
			c := &v.net.Converters[k]
			passed := slices.ContainsFunc(out.ports, func(o onward) bool { return o.port == c.Out })
			if c.Kind.Value == "diode" && !passed && v.HasConverter(k) && v.Joined(c.In.Hot, out.ports[i].port.Hot) {
				way := append(slices.Clone(out.ports[i].way), v.Between(out.ports[i].port.Hot, c.In.Hot).Edges()...)
				out.ports = append(out.ports, onward{c.Out, way})
			}
		}
	}
	return out
}

// comes says whether two returns are joined; one that is drawn nowhere is taken to be.
func (o *Onward) comes(a, b network.NodeID) bool {
	n := o.view.net
	return o.view.Joined(a, b) || a == network.None || b == network.None || len(n.At(a)) == 0 || len(n.At(b)) == 0
}

// Across says whether a port lies across one of the ports that the current reaches.
func (o *Onward) Across(p network.Port) bool {
	return slices.ContainsFunc(o.ports, func(x onward) bool { return o.view.Joined(x.port.Hot, p.Hot) && o.comes(p.Ret, x.port.Ret) })
}

// Held says whether a battery, or a string of them, is across one of the ports, but for a source that
// is gone; -1 for none.
func (o *Onward) Held(gone int) bool {
	for _, x := range o.ports {
		ends, in := []network.NodeID{x.port.Hot}, map[int]bool{gone: true}
		for i := 0; i < len(ends); i++ {
			for _, k := range o.view.Zone.Sources {
				b := &o.view.net.Sources[k]
				if in[k] || b.Kind.Value != "battery" || !o.view.HasSource(k) || !o.view.Joined(b.Hot, ends[i]) {
					continue
				}
				if o.comes(b.Ret, x.port.Ret) {
					return true
				}
				in[k] = true
				ends = append(ends, b.Ret)
			}
		}
	}
	return false
}

// To is the way from where the current comes out to a live node; nil where it does not lead there.
func (o *Onward) To(id network.NodeID) []int {
	for _, x := range o.ports {
		if o.view.Joined(x.port.Hot, id) {
			return append(slices.Clone(x.way), o.view.Between(x.port.Hot, id).Edges()...)
		}
	}
	return nil
}
