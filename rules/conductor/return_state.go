package conductor

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// shared is the positions at which most comes home through a return that several circuits share; nil
// where no one state brings more than the limit: what it carries is then a bound over several states.
func (r *returns) shared(l *leg, e int) []lint.Position {
	var homes []homing
	var zones []*network.Zone
	for _, t := range r.takersFor(l) {
		h := r.homing(t.Block.Header().Addr)
		if h.port.Hot == network.None || t.Amps.Kind == 0 || !r.ways.Knows(e) || r.ways.Part(e, -1, t) == 0 {
			continue
		}
		z := r.Net.ZoneOf(h.port.Hot)
		if z == nil {
			continue
		}
		h.amps = t.Amps.Value
		homes = append(homes, h)
		if !slices.Contains(zones, z) {
			zones = append(zones, z)
		}
	}
	if len(homes) == 0 {
		return nil
	}
	var best struct {
		amps  float64
		state []lint.Position
	}
	for _, o := range r.Circuit.Occasions(r.Net.Join(zones...)) {
		for _, v := range o.Views {
			if v.Transit != nil {
				continue
			}
			if amps, edges, sources := comesHome(r.Net, v, e, homes, o.Runs); amps > best.amps {
				best.amps, best.state = amps, v.Witness(edges, sources...)
			}
		}
	}
	if best.amps <= l.limit.Value {
		return nil
	}
	return best.state
}

// homing is a load or a converter's input whose current may come home through a return.
type homing struct {
	port            network.Port
	load, converter int // index, -1 where it is the other
	amps            float64
}

// homing finds what a taker is; its port is none where it is neither load nor converter.
func (r *returns) homing(addr string) homing {
	out := homing{port: network.Port{Hot: network.None}, load: -1, converter: -1}
	for i := range r.Net.Loads {
		if r.Net.Loads[i].Addr == addr {
			out.port, out.load = r.Net.Loads[i].Port, i
		}
	}
	for i := range r.Net.Converters {
		if r.Net.Converters[i].Addr == addr {
			out.port, out.converter = r.Net.Converters[i].In, i
		}
	}
	return out
}

// comesHome sums what comes home through a return in a view, with the ways by which it does.
func comesHome(n *network.Network, v *explore.View, e int, homes []homing, runs func(int) bool) (amps float64, edges, sources []int) {
	for _, h := range homes {
		if h.load >= 0 && (!v.HasLoad(h.load) || !runs(h.load)) || h.converter >= 0 && !v.HasConverter(h.converter) {
			continue
		}
		for _, s := range v.Zone.Sources {
			if !v.HasSource(s) {
				continue
			}
			if way := v.Series(s).Way(h.port); slices.Contains(way, e) {
				amps, edges, sources = amps+h.amps, append(edges, way...), append(sources, s)
				break
			}
		}
	}
	return amps, edges, sources
}
