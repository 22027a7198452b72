package backfeed

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// aroundConverter joins both sides of a converter with every zone that can energise them, the
// wrong way through converters that are said not to block included.
func aroundConverter(n *network.Network, converter int) *network.Zone {
	var zones []*network.Zone
	seen := map[int]bool{}
	add := func(id network.NodeID) {
		if z := n.ZoneOf(id); z != nil && !seen[z.ID] {
			seen[z.ID] = true
			zones = append(zones, z)
		}
	}
	add(n.Converters[converter].In.Hot)
	add(n.Converters[converter].Out.Hot)
	for i := 0; i < len(zones); i++ {
		for _, c := range zones[i].Outputs {
			add(n.Converters[c].In.Hot)
		}
		for _, c := range zones[i].Inputs {
			if n.Converters[c].BlocksReverse.False() {
				add(n.Converters[c].Out.Hot)
			}
		}
	}
	if len(zones) == 0 {
		return &network.Zone{ID: -1}
	}
	return n.Join(zones...)
}

// wired says whether anything is joined to a node in the view.
func wired(n *network.Network, v *explore.View, id network.NodeID) bool {
	for _, e := range n.At(id) {
		if v.Conducts(e) {
			return true
		}
	}
	return false
}

// supply is something that energises a place.
type supply struct {
	block   schema.Block
	hot     network.NodeID
	sources []int         // its index where it is a source
	volts   derive.Number // no unit where not known
	most    float64       // A that it can push into a fault; +Inf where nothing limits it
}

func (s supply) way(v *explore.View, to network.NodeID) explore.Path {
	return v.Reach(s.hot, nil, nil).To(to)
}

func (s supply) places(v *explore.View, to network.NodeID) []string {
	return v.Places(s.hot, s.way(v, to))
}

// suppliesOf lists what energises a port, other than one converter, with both poles joined.
func suppliesOf(p *lint.Pass, v *explore.View, live *explore.Energy, port network.Port, but int) []supply {
	var out []supply
	for _, x := range live.At(port.Hot) {
		switch {
		case x.Source >= 0:
			if s := &p.Net.Sources[x.Source]; v.Joined(s.Ret, port.Ret) {
				out = append(out, sourceSupply(p, x.Source))
			}
		case x.Converter != but:
			if s := converterSupply(p, v, x.Converter, port); v.Joined(s.port.Ret, port.Ret) {
				out = append(out, s.supply)
			}
		}
	}
	return out
}
