package overcurrent

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// homeward is a return wire by which more comes home than it allows, of what a device lets through: what stalls or is shorted
// draws it through both.
type homeward struct {
	*area
	edge  int
	taker schema.Block
	at    network.NodeID // its live end
	feed  feed
	view  *explore.View
	limit ceiling
	most  float64 // A of what the device and the feed let through that runs in the wire
	part  float64 // of it
	lacks []lint.Missing
}

// ratio is how far beyond its limit it is, 0 where the limit is not known.
func (x *homeward) ratio() float64 {
	if x.limit.most.Kind == 0 {
		return 0
	}
	return x.most / x.limit.most.Value
}

// homes are the wires of their own that bring current home.
type homes struct {
	ways    *circuit.Returns
	wires   []int
	islands []int // by node: what wires and contacts in any position join
}

func homesOf(p *lint.Pass) *homes {
	out := &homes{}
	for _, c := range p.Plan.Conductors {
		for _, e := range p.Net.EdgesOf(c.Addr) {
			if c.Polarity.Value == "negative" && p.Net.Nodes[p.Net.Edges[e].A].Return {
				out.wires = append(out.wires, e)
			}
		}
	}
	if len(out.wires) > 0 {
		out.ways = p.Circuit.Returns()
		out.islands = p.Net.Islands(func(*network.Edge) bool { return true })
	}
	return out
}

// homes compares what one feed can push through each device with the returns of what the device guards.
func (s *sizer) homes(v *explore.View, cut *patches, i int, by map[int32]guards) {
	if len(s.returns.wires) == 0 {
		return
	}
	for _, l := range s.zone.Loads {
		s.bringsHome(v, cut, i, by, s.n.Loads[l].Load, s.n.Loads[l].Port)
	}
	for _, c := range s.zone.Inputs {
		s.bringsHome(v, cut, i, by, s.n.Converters[c].Converter, s.n.Converters[c].In)
	}
	for _, b := range s.zone.Sources { // an empty battery takes what another gives
		if s.n.Sources[b].Kind.Value == "battery" && b != s.feeds[i].source && v.HasSource(b) {
			s.bringsHome(v, cut, i, by, s.n.Sources[b].Source, s.n.Sources[b].Port)
		}
	}
}

func (s *sizer) bringsHome(v *explore.View, cut *patches, i int, by map[int32]guards, taker schema.Block, port network.Port) {
	if port.Ret == network.None || s.n.Nodes[port.Hot].Return || s.zone.Local(port.Hot) < 0 {
		return
	}
	g, ok := by[cut.at(port.Hot)]
	if !ok || g.device < 0 || len(g.unrated) > 0 {
		return
	}
	into := s.found[s.n.Edges[g.device].Addr]
	back, ok := s.backs[i]
	if !ok {
		back = s.end(s.feeds[i].home(s.n))
		s.backs[i] = back
	}
	for _, e := range s.returns.wires {
		part, lacks := s.returns.ways.Share(e, port.Ret, back)
		if s.n.Edges[e].Wire.Cranking.True() || part < nothing && len(lacks) == 0 {
			continue
		}
		into.asked[1] = true
		x := homeward{area: s.area, edge: e, taker: taker, at: port.Hot, feed: s.feeds[i], view: v, limit: ceilingOf(s.p, s.n.Edges[e].Wire, port.Hot), part: cmp.Or(part, 1)}
		limit := math.Inf(1)
		if x.limit.most.Kind != 0 {
			limit = x.limit.most.Value / x.part
		}
		amps, short := s.through(i, g.device, limit)
		x.most, x.lacks = amps*x.part, slices.Concat(x.limit.lacks, lacks, short)
		big := x.limit.tooBig(x.most) || len(x.limit.lacks) > 0
		if big && (into.home == nil || surer(x.lacks, into.home.lacks, x.ratio(), into.home.ratio())) {
			into.home = &x
		}
	}
}

// nothing is a part of a current that is none: what is left of solving.
const nothing = 1e-6

// home is where the current of a feed comes back to.
func (f *feed) home(n *network.Network) network.NodeID {
	switch {
	case f.source >= 0:
		return n.Sources[f.source].Ret
	case f.reverse:
		return n.Converters[f.converter].In.Ret
	}
	return n.Converters[f.converter].Out.Ret
}

// end is where a current comes back to in the end: of batteries in series that is the last one's return.
func (s *sizer) end(at network.NodeID) network.NodeID {
	for range s.n.Sources {
		if at == network.None || s.n.Nodes[at].Return {
			return at
		}
		i := slices.IndexFunc(s.n.Sources, func(x network.Source) bool {
			return x.Kind.Value == "battery" && s.returns.islands[x.Hot] == s.returns.islands[at]
		})
		if i < 0 || s.n.Sources[i].Ret == network.None {
			return at
		}
		at = s.n.Sources[i].Ret
	}
	return at
}

func (x *homeward) verdict(f *schema.Fuse) lint.Verdict {
	c := x.n.Edges[x.edge].Wire
	related := []string{c.Addr, x.taker.Header().Addr}
	if len(x.lacks) > 0 {
		return lint.Verdict{
			Subject: f, Outcome: lint.NotProven, Word: lint.Warning, Cause: "return", Related: related, Numbers: lint.Known(nil, x.limit.iz, x.limit.most, rated(f)), Missing: x.lacks,
			Message: fmt.Sprintf("Whether %s (%s) guards %s, by which the %s %s comes home, cannot be told.", lint.Quote(f), rated(f).Text(), lint.Quote(c), x.kind(), lint.Quote(x.taker)),
		}
	}
	way := x.view.Guards(x.feed.at).At(x.at).Path
	return lint.Verdict{
		Subject: f, Outcome: lint.Violated, Word: lint.Warning, Cause: "return", Related: related,
		Numbers: []derive.Number{x.limit.iz, x.limit.most, rated(f)}, State: x.feed.witness(x.view, way), Path: x.view.Places(x.feed.at, way),
		Message: fmt.Sprintf("%s (%s) guards the %s %s, %s by %s (%s); that allows %s.", lint.Quote(f), rated(f).Text(), x.kind(), lint.Quote(x.taker), x.comes(), lint.Quote(c), c.Size.Size, x.limit.most.Text()),
	}
}

// kind is what it is that comes home: its name may be that of the device too.
func (x *homeward) kind() string {
	if typ := x.taker.Header().Type; typ != "source" {
		return typ
	}
	return "battery"
}

// comes says how much of it comes home.
func (x *homeward) comes() string {
	if x.part > 1-nothing {
		return "which comes home"
	}
	return "of which " + derive.Text(x.most, "A") + " comes home"
}
