package backfeed

import (
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// aroundConverter joins both sides of a converter with every zone that can energise them, the
// wrong way through converters that are said not to block included.
func aroundConverter(n *network.Network, converter int) *network.Zone {
	nodes := []network.NodeID{n.Converters[converter].In.Hot, n.Converters[converter].Out.Hot}
	seen := map[int]bool{}
	for i := 0; i < len(nodes); i++ {
		z := n.ZoneOf(nodes[i])
		if z == nil || seen[z.ID] {
			continue
		}
		seen[z.ID] = true
		for _, c := range z.Outputs {
			nodes = append(nodes, n.Converters[c].In.Hot)
		}
		for _, c := range z.Inputs {
			if n.Converters[c].BlocksReverse.False() {
				nodes = append(nodes, n.Converters[c].Out.Hot)
			}
		}
	}
	return n.Together(nodes...)
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
	port    network.Port
	behind  network.Port  // where it is a converter: its other side
	sources []int         // where it is a source: its index, and those it stands on
	volts   derive.Number // at rest; no unit where not known
	most    float64       // A that it can push into a fault; +Inf where nothing limits it
}

var nowhere = network.Port{Hot: network.None, Ret: network.None, Ground: network.None}

// suppliesOf lists what energises a port, other than one converter, with both poles joined.
func suppliesOf(p *lint.Pass, v *explore.View, live *explore.Energy, port network.Port, but int) []supply {
	var out []supply
	for _, x := range live.At(port.Hot) {
		switch {
		case x.Source >= 0 && v.Series(x.Source).Across(port):
			out = append(out, sourceSupply(p, v, x.Source))
		case x.Source < 0 && x.Converter != but:
			c := &p.Net.Converters[x.Converter]
			if s := converterSupply(p, c, v.Joined(c.Out.Hot, port.Hot)); v.Joined(s.port.Ret, port.Ret) {
				out = append(out, s)
			}
		}
	}
	return out
}

func sourceSupply(p *lint.Pass, v *explore.View, i int) supply {
	s := &p.Net.Sources[i]
	out := supply{block: s.Source, port: s.Port, behind: nowhere, sources: []int{i}, most: math.Inf(1)}
	switch s.Kind.Value {
	case "battery":
		out.volts, out.sources = restingVolts(p, v, i)
	case "alternator", "supply":
		out.volts = held(s.Source, "regulated_voltage", s.RegulatedVoltage)
		if out.volts.Unit == "" {
			out.volts = held(s.Source, "voltage", s.Voltage)
		}
	}
	if n, stiff, lacks := p.Circuit.SourceFault(s.Source); !stiff && lacks == nil {
		out.most = n.Value
	}
	return out
}

// unknown names what leaves a supply's volts open; nothing where they are known.
func (s *supply) unknown(p *lint.Pass) []lint.Missing {
	if s.volts.Unit != "" {
		return nil
	}
	switch x := s.block.(type) {
	case *schema.Source:
		if _, lacks := p.Circuit.BatteryVolts(x); x.Kind.Value == "battery" && lacks != nil {
			return lacks
		}
		return []lint.Missing{{Subject: x.Addr, Attribute: "voltage"}}
	case *schema.Converter:
		return []lint.Missing{{Subject: x.Addr, Attribute: "output voltage"}}
	}
	return nil
}

// converterSupply is a converter as what feeds: by its output, or backwards by its input.
func converterSupply(p *lint.Pass, c *network.Converter, forward bool) supply {
	out := supply{block: c.Converter, port: c.In, behind: c.Out, most: math.Inf(1)}
	if !forward {
		return out
	}
	out.port, out.behind = c.Out, c.In
	if c.Output != nil {
		out.volts = held(c.Converter, "output voltage", c.Output.Voltage)
	}
	if n, behind, lacks := p.Circuit.OutputFault(c.Converter); !behind && lacks == nil {
		out.most = n.Value
	}
	return out
}

// held is the voltage that a regulated output holds.
func held(b schema.Block, attribute string, q schema.Quantity) derive.Number {
	if !q.Set {
		return derive.Number{}
	}
	return derive.Read("voltage that "+lint.Quote(b)+" holds", "V", q.Value, "V", b.Header().Addr, attribute, q.Range)
}

// restingVolts is the rested voltage of a battery with those of the batteries it stands on.
func restingVolts(p *lint.Pass, v *explore.View, battery int) (derive.Number, []int) {
	var parts []derive.Number
	var row []int
	sum := 0.0
	for at, seen := battery, map[int]bool{}; at >= 0 && !seen[at]; {
		seen[at] = true
		volts, lacks := p.Circuit.BatteryVolts(p.Net.Sources[at].Source)
		if lacks != nil {
			return derive.Number{}, []int{battery}
		}
		parts, row, sum = append(parts, volts.Rested), append(row, at), sum+volts.Rested.Value
		next := -1
		for _, o := range v.Zone.Sources {
			if next < 0 && p.Net.Sources[o].Kind.Value == "battery" && v.HasSource(o) && v.Joined(p.Net.Sources[at].Ret, p.Net.Sources[o].Hot) {
				next = o
			}
		}
		at = next
	}
	if len(parts) == 1 {
		return parts[0], row
	}
	return derive.Compute("rested volts of the string from "+lint.Quote(p.Net.Sources[battery].Source), "V", sum, "V", "sum of Vrest", parts...), row
}

// strongest picks the supply of highest known voltage; ok is false where there is none at all.
func strongest(list []supply) (best supply, ok bool) {
	for i, s := range list {
		if i == 0 || s.volts.Unit != "" && (best.volts.Unit == "" || s.volts.Value > best.volts.Value) {
			best = s
		}
	}
	return best, len(list) > 0
}

// touchable lists the plugs that are apart in the view and bring a contact joined to the node into
// reach. A plug that does not say which of its halves can be touched counts.
func touchable(n *network.Network, v *explore.View, hot network.NodeID) []string {
	var out []string
	for _, i := range v.Zone.Edges {
		e := &n.Edges[i]
		c, ok := schema.Lookup[*schema.Connector](n.Plan, e.Addr)
		if !ok || e.Kind != network.Mate || v.Conducts(i) {
			continue
		}
		fixed := v.Joined(e.A, hot) && c.Exposed.Value != "none" && c.Exposed.Value != "free"
		free := v.Joined(e.B, hot) && c.Exposed.Value != "none" && c.Exposed.Value != "fixed"
		if (fixed || free) && !slices.Contains(out, lint.Quote(c)) {
			out = append(out, lint.Quote(c))
		}
	}
	return out
}
