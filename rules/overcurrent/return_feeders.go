package overcurrent

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// feeder is a source or a converter's output; the other index is -1.
type feeder struct {
	block             schema.Block
	port              network.Port
	source, converter int
}

func feeders(n *network.Network) []feeder {
	var out []feeder
	for i := range n.Sources {
		out = append(out, feeder{n.Sources[i].Source, n.Sources[i].Port, i, -1})
	}
	for i := range n.Converters {
		out = append(out, feeder{n.Converters[i].Converter, n.Converters[i].Out, -1, i})
	}
	return out
}

func (s feeder) there(view *explore.View) bool {
	return s.source >= 0 && view.HasSource(s.source) || s.converter >= 0 && view.HasConverter(s.converter)
}

// sources lists the source for a witness, none for a converter.
func (s feeder) sources() []int {
	if s.source < 0 {
		return nil
	}
	return []int{s.source}
}

// taker is what comes home through the device.
type taker struct {
	block schema.Block
	port  network.Port
}

func (g *negative) takers(view *explore.View, from feeder) []taker {
	var out []taker
	for i := range g.Net.Sources { // on charge
		if s := &g.Net.Sources[i]; s.Kind.Value == "battery" && view.HasSource(i) && i != from.source {
			out = append(out, taker{s.Source, s.Port})
		}
	}
	for i := range g.Net.Loads {
		if l := &g.Net.Loads[i]; view.HasLoad(i) {
			out = append(out, taker{l.Load, l.Port})
		}
	}
	for i := range g.Net.Converters {
		if c := &g.Net.Converters[i]; view.HasConverter(i) && i != from.converter {
			out = append(out, taker{c.Converter, c.In})
		}
	}
	return out
}
