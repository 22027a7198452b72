package states

import (
	"cmp"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

func (x *solved) loads(out *State) {
	for i := range x.s.Net.Loads {
		l := &x.s.Net.Loads[i]
		if !x.view.HasLoad(i) {
			continue
		}
		if !x.live.Feeds(l.Port) {
			out.Dark = append(out.Dark, l.Load)
			continue
		}
		out.Loads = append(out.Loads, Supplied{Block: l.Load, Place: l.Addr,
			Volts: x.over(l.Hot, func(k int) (float64, bool) { return x.volts(l.Port, k) }),
			Amps: x.over(l.Hot, func(k int) (float64, bool) {
				_, ok := x.volts(l.Port, k)
				return x.points[k].LoadAmps(i), ok
			})})
	}
}

// terminals lists the live terminals in the order of their nodes; a bus is its own.
func (x *solved) terminals(out *State) {
	done := map[string]bool{}
	for i := range x.s.Net.Nodes {
		n := &x.s.Net.Nodes[i]
		if n.Return || done[n.Place()] || !x.there(n.Addr) || len(x.live.At(network.NodeID(i))) == 0 {
			continue
		}
		done[n.Place()] = true
		p := x.s.places[n.Place()]
		t := Supplied{Block: x.s.Plan.Block(n.Addr), Place: n.Place(), Open: x.open(network.NodeID(i)), Volts: x.over(network.NodeID(i), func(k int) (float64, bool) { return x.volts(p, k) })}
		out.Terminals = append(out.Terminals, t)
		if _, ok := t.Block.(*schema.Bus); ok {
			out.Buses = append(out.Buses, t)
		}
	}
}

// open says whether a node is an end of contacts none of which is closed.
func (x *solved) open(id network.NodeID) bool {
	contacts := 0
	for _, e := range x.s.Net.At(id) {
		switch k := x.s.Net.Edges[e].Kind; {
		case k != network.Contact && k != network.Mate || x.s.Net.Edges[e].Addr != x.s.Net.Nodes[id].Addr:
		case x.view.Conducts(e):
			return false
		default:
			contacts++
		}
	}
	return contacts > 0
}

// there says whether a block is there: a source that came, or what is part of one that did.
func (x *solved) there(addr string) bool {
	v := x.s.Net.Var(addr)
	if b := x.s.Plan.Block(addr); b != nil && b.Header().PartOf.Addr != "" {
		v = x.s.Net.Var(b.Header().PartOf.Addr)
	}
	return v < 0 || x.s.Net.Vars[v].Kind != network.SourceVar || x.view.At(v) == 1
}

func (x *solved) feeds(out *State) {
	n := x.s.Net
	for i := range n.Sources {
		if f := &n.Sources[i]; x.view.HasSource(i) {
			amps := x.over(f.Hot, func(k int) (float64, bool) { return x.points[k].SourceAmps(i), true })
			out.Feeds = append(out.Feeds, x.feed(f.Source, "source", explore.Supply{Source: i, Converter: -1}, f.Port, amps))
		}
	}
	for i := range n.Converters {
		c := &n.Converters[i]
		if !x.view.HasConverter(i) || !x.live.Feeds(c.In) {
			continue
		}
		amps := x.over(c.Out.Hot, func(k int) (float64, bool) { return x.points[k].OutAmps(i), true })
		out.Feeds = append(out.Feeds, x.feed(c.Converter, "converter", explore.Supply{Source: -1, Converter: i}, c.Out, amps))
	}
}

// feed lists what a supply is joined to.
func (x *solved) feed(b schema.Block, kind string, by explore.Supply, port network.Port, amps Range) Feed {
	f := Feed{From: b, Kind: kind, Amps: amps}
	n := x.s.Net
	fed := func(p network.Port) bool { return slices.Contains(x.live.By(p), by) }
	for _, bus := range x.s.buses {
		if p := x.s.places[bus.Addr]; p.Hot != network.None && !n.Nodes[p.Hot].Return && slices.Contains(x.live.At(p.Hot), by) {
			f.To = append(f.To, bus)
		}
	}
	for i := range n.Loads {
		if x.view.HasLoad(i) && fed(n.Loads[i].Port) {
			f.To = append(f.To, n.Loads[i].Load)
		}
	}
	for i := range n.Converters {
		if c := &n.Converters[i]; x.view.HasConverter(i) && fed(c.In) && c.In != port && schema.Block(c.Converter) != b {
			f.To = append(f.To, c.Converter)
		}
	}
	for i := range n.Sources {
		if s := &n.Sources[i]; charger(b) && s.Kind.Value == "battery" && x.view.HasSource(i) && fed(s.Port) && x.takes(i) {
			f.Charges = append(f.Charges, s.Source)
		}
	}
	return f
}

// charger says whether a supply is one that charges: anything but a battery.
func charger(b schema.Block) bool {
	s, ok := b.(*schema.Source)
	return !ok || s.Kind.Value != "battery"
}

// takes says whether a battery takes current at some corner; where no number is known it is taken to.
func (x *solved) takes(source int) bool {
	r := x.over(x.s.Net.Sources[source].Hot, func(k int) (float64, bool) { return x.points[k].SourceAmps(source), true })
	return r.Least == nil || r.Least.Value < -nothing
}

// nothing is the current, in A, under which none is said to run.
const nothing = 0.005

type ampacity struct {
	iz    derive.Number
	lacks []lint.Missing
}

// conductors finds those that carry the largest share of their ampacity.
func (x *solved) conductors(out *State) {
	best := map[*schema.Conductor]Share{}
	for e := range x.s.Net.Edges {
		w := x.s.Net.Edges[e].Wire
		if w == nil || !x.view.Conducts(e) {
			continue
		}
		live := x.s.Net.Edges[e].A
		if x.s.Net.Nodes[live].Return {
			live = x.s.Net.Edges[e].B
		}
		amps := x.over(live, func(k int) (float64, bool) { a := x.points[k].Amps(e); return max(a, -a), true })
		a := x.s.ampacity(w)
		if amps.Most == nil || amps.Most.Value < nothing || a.iz.Kind == 0 || len(a.lacks) > 0 {
			continue
		}
		if h := (Share{w, share(amps.Most.Value, a.iz.Value), *amps.Most, a.iz}); below(best[w].Share, h.Share) {
			best[w] = h
		}
	}
	for _, w := range x.s.Plan.Conductors {
		if h, ok := best[w]; ok {
			out.Fullest = append(out.Fullest, h)
		}
	}
	slices.SortStableFunc(out.Fullest, func(a, b Share) int { return cmp.Compare(b.Share, a.Share) })
	out.Fullest = out.Fullest[:min(fullest, len(out.Fullest))]
}

func share(amps, of float64) float64 {
	if of <= 0 {
		return math.Inf(1)
	}
	return sure(amps / of)
}

func (s *Survey) ampacity(w *schema.Conductor) ampacity {
	a, ok := s.iz[w.Addr]
	if !ok {
		a.iz, a.lacks = s.c.Ampacity(w)
		s.iz[w.Addr] = a
	}
	return a
}

// doubt lists what is live only if a converter, of which the plan does not tell, lets current back.
func (x *solved) doubt(out *State) {
	may := x.view.Live(mayReverse, nil)
	for _, bus := range x.s.buses {
		if p := x.s.places[bus.Addr]; p.Hot != network.None && len(x.live.At(p.Hot)) == 0 && len(may.At(p.Hot)) > 0 {
			out.MayLive = append(out.MayLive, bus)
		}
	}
	for i := range x.s.Net.Loads {
		if l := &x.s.Net.Loads[i]; x.view.HasLoad(i) && !x.live.Feeds(l.Port) && may.Feeds(l.Port) {
			out.MayLive = append(out.MayLive, l.Load)
		}
	}
}
