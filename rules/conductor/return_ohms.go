package conductor

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

const (
	mostTimes = 1.5  // the feed's resistance
	worthIt   = 0.01 // of nominal volts, lost on the way back
)

// compare asks everything that takes or gives current whether its way back is as good as its way there.
func (r *returns) compare() {
	for _, z := range r.Net.Zones {
		if z.AC {
			continue
		}
		all := attached(r.Net, z)
		for _, x := range all {
			if x.Hot == network.None || x.Ret == network.None || x.supplies && !x.charges {
				continue
			}
			keep := []network.NodeID{x.Hot}
			for _, s := range all {
				if s.supplies {
					keep = append(keep, s.Hot)
				}
			}
			views, complete := r.Space.Views(r.Space.TrimResting(z, keep...), r.Space.Closed(explore.All()))
			r.unfinished = r.unfinished || !complete
			for _, v := range views {
				if s, ok := r.partner(v, z, x, all); ok && v.Transit == nil {
					r.ratio(v, z, x, s)
				}
			}
		}
	}
}

// partner is what feeds a port in a view, or takes what it gives, over the least resistance.
func (r *returns) partner(v *explore.View, z *network.Zone, x port, all []port) (best port, ok bool) {
	if !x.there(v) {
		return best, false
	}
	out := v.Reach(x.Hot, func(e int, at network.NodeID) bool { return r.Net.ZoneOf(r.Net.Edges[e].Other(at)) == z }, r.ohms)
	least := 0.0
	for _, s := range all {
		if !s.supplies || s.Port == x.Port || x.charges && s.charges || !s.there(v) || !v.Across(s.Port, x.Port) {
			continue
		}
		if d, reached := out.Dist[s.Hot]; reached && (!ok || d < least) {
			best, least, ok = s, d, true
		}
	}
	return best, ok
}

func (r *returns) ohms(e int) float64 {
	n, _ := r.bare(e)
	return n.Value + leastOhms
}

// bare is the resistance of a wire without its joints, or of a contact, in ohm: copper is held against
// copper, for how many studs lie between says nothing of either.
func (r *returns) bare(e int) (derive.Number, []lint.Missing) {
	if r.Net.Edges[e].Kind == network.Wire {
		return bareOhms(r.Circuit, e)
	}
	return r.Circuit.Ohms(e, circuit.Operating)
}

// ratio holds the way back against the way there.
func (r *returns) ratio(v *explore.View, z *network.Zone, x, s port) {
	there := r.between(v, s.Hot, x.Hot, func(id network.NodeID) bool { return r.Net.ZoneOf(id) == z }, "feed of "+lint.Quote(x.block), "Rf")
	back := r.between(v, x.Ret, s.Ret, func(id network.NodeID) bool { return r.Net.ZoneOf(id) != z }, "return of "+lint.Quote(x.block), "Rr")
	weakest := r.weakest(r.home(v, x, s, z).Edges(), there)
	if len(there.edges) == 0 || weakest < 0 {
		return
	}
	subject := r.Plan.Block(r.Net.Edges[weakest].Addr)
	w := lint.Verdict{Subject: subject, Outcome: lint.Holds, Word: lint.Warning, Related: []string{x.block.Header().Addr}}
	limit := derive.LookUp("most that a return may have of its feed's resistance", "limit", mostTimes, "", "common practice")
	times := derive.Compute("resistance of the return against the feed's, for "+lint.Quote(x.block), "Rr / Rf", back.ohms.Value/max(there.ohms.Value, leastOhms), "", "Rr / Rf", back.ohms, there.ohms)
	doubt := back.unlike(there)
	switch {
	case times.Value <= mostTimes && len(doubt) == 0:
		if len(back.lacks)+len(there.lacks) == 0 {
			w.Numbers = []derive.Number{limit, times}
		}
	case times.Value <= mostTimes:
		r.unsure(&w, x, doubt)
	case len(there.lacks) > 0:
		r.unsure(&w, x, there.lacks)
	default:
		r.lost(&w, v, z, x, s, there, back, []derive.Number{limit, times})
	}
	r.tell(w, weakest)
	for _, e := range there.edges {
		if k := r.Net.Edges[e].Wire; k != nil && k.Polarity.Value == "positive" && w.Outcome == lint.Holds {
			h := w
			h.Subject = k
			r.tell(h, e)
		}
	}
}

func (r *returns) unsure(w *lint.Verdict, x port, lacks []lint.Missing) {
	w.Outcome, w.Missing = lint.NotProven, lacks
	w.Message = fmt.Sprintf("Whether the way back from %s is as good as the way there is not known: %s is missing.", lint.Quote(x.block), attribute(lacks))
}

// lost decides on a way back that has too much resistance by what it loses.
func (r *returns) lost(w *lint.Verdict, v *explore.View, z *network.Zone, x, s port, there, back way, ns []derive.Number) {
	loss, lacks := r.loss(v, z, x, s)
	nominal, ok := r.Circuit.Nominal(x.Hot)
	limit := derive.Compute("loss on a return that is worth telling", "Uw", worthIt*nominal.Value, "V", "1 % of nominal, common practice", nominal)
	w.Numbers = append(lint.Known(lacks, loss, limit), ns...)
	switch {
	case !ok:
		r.unsure(w, x, []lint.Missing{{Subject: x.block.Header().Addr, Attribute: "rated_voltage"}})
		w.Numbers = ns
	case loss.Value > limit.Value:
		w.Outcome, w.State = lint.Violated, v.Witness(append(slices.Clone(there.edges), back.edges...))
		w.Message = fmt.Sprintf("The way back from %s has %s, the way there %s; it loses up to %s, and %s is the weakest part of it.",
			lint.Quote(x.block), back.ohms.Text(), there.ohms.Text(), loss.Text(), lint.Quote(w.Subject))
	case len(lacks) > 0:
		r.unsure(w, x, lacks)
		w.Numbers = ns
	}
}

// loss is what the nearest way back loses, each part with the most that it carries, in V.
func (r *returns) loss(v *explore.View, z *network.Zone, x, s port) (derive.Number, []lint.Missing) {
	var parts []derive.Number
	var lacks []lint.Missing
	sum := 0.0
	for _, e := range r.home(v, x, s, z).Edges() {
		ohms, _ := r.Circuit.Ohms(e, circuit.Operating)
		if ohms.Kind == 0 {
			continue
		}
		c := carriedBy(r.Pass, e, false)
		lacks = append(lacks, c.lacks...)
		if c.n.Value > 0 {
			u := derive.Compute("loss in "+lint.Quote(r.Plan.Block(r.Net.Edges[e].Addr)), "U", ohms.Value*c.n.Value, "V", "U = R x I", ohms, c.n)
			parts, sum = append(parts, u), sum+u.Value
		}
	}
	return derive.Compute("loss on the way back from "+lint.Quote(x.block), "Ur", sum, "V", "sum along the way", parts...), lacks
}

// home is the way back of least resistance.
func (r *returns) home(v *explore.View, x, s port, z *network.Zone) explore.Path {
	return v.Reach(x.Ret, func(e int, at network.NodeID) bool { return r.Net.ZoneOf(r.Net.Edges[e].Other(at)) != z }, r.ohms).To(s.Ret)
}

// weakest is the wire or contact of most resistance on the way back, one whose resistance is not known
// before others; -1 where there is none. A part that lies on the way there too, such as a pair, is no
// weaker than itself: it is the weakest only where there is no other.
func (r *returns) weakest(home []int, there way) int {
	both := func(e int) bool {
		return slices.ContainsFunc(there.edges, func(o int) bool { return r.Net.Edges[o].Addr == r.Net.Edges[e].Addr })
	}
	if e := r.highest(slices.DeleteFunc(slices.Clone(home), both)); e >= 0 {
		return e
	}
	return r.highest(home)
}

func (r *returns) highest(home []int) int {
	at, most := -1, 0.0
	for _, e := range home {
		n, lacks := r.bare(e)
		if n.Kind == 0 && len(lacks) == 0 || most < 0 {
			continue
		}
		if at < 0 || n.Value > most || len(lacks) > 0 {
			at, most = e, n.Value
		}
		if len(lacks) > 0 {
			most = -1
		}
	}
	return at
}

// tell keeps the gravest of what is said of a part; of like ones the one by more.
func (r *returns) tell(w lint.Verdict, e int) {
	if w.Outcome != lint.Holds {
		w = r.graded(w, e, -1)
	}
	addr := w.Subject.Header().Addr
	old := r.told[addr]
	by := func(v lint.Verdict) float64 {
		if n := len(v.Numbers); n > 0 {
			return v.Numbers[n-1].Value
		}
		return 0
	}
	if old.Outcome == 0 || rank[w.Outcome] < rank[old.Outcome] || w.Outcome == old.Outcome && by(w) > by(old) {
		r.told[addr] = w
	}
}

// unnamed finds what takes or gives current on a single wire while no way back is drawn.
func (r *returns) unnamed() {
	wired, through := newJoins(r.Net, false), newJoins(r.Net, true)
	everything := map[network.NodeID]int{} // things attached, by what their poles are wired to
	for _, z := range r.Net.Zones {
		for _, x := range attached(r.Net, z) {
			for _, id := range []network.NodeID{x.Hot, x.Ret} {
				if id != network.None {
					everything[wired.top(id)]++
				}
			}
		}
	}
	for _, z := range r.Net.Zones {
		all := attached(r.Net, z)
		for _, x := range all {
			if z.AC || x.Ret == network.None || x.supplies && everything[wired.top(x.Ret)] > 1 {
				continue
			}
			other := slices.IndexFunc(all, func(s port) bool { return s.Port != x.Port && s.supplies != x.supplies })
			home := !x.supplies && slices.ContainsFunc(all, func(s port) bool {
				return s.supplies && s.Ret != network.None && through.top(s.Ret) == through.top(x.Ret)
			})
			if e := r.single(z, x.Hot); other >= 0 && !home && e >= 0 {
				k := r.Net.Edges[e].Wire
				w := lint.Verdict{Subject: k, Outcome: lint.NotProven, Word: lint.Warning, Missing: []lint.Missing{{Subject: x.block.Header().Addr, Attribute: "the way of its return"}}}
				w.Message = fmt.Sprintf("%s is one wire to %s, and no way back from %s is drawn.", lint.Quote(k), lint.Quote(x.block), lint.Quote(x.block))
				r.tell(w, e)
			}
		}
	}
}

// single is the nearest wire on the way to a live node that is drawn as a positive alone; -1 where
// there is none.
func (r *returns) single(z *network.Zone, from network.NodeID) int {
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range r.Net.At(queue[0]) {
			x := &r.Net.Edges[e]
			if x.Wire != nil && x.Wire.Polarity.Value == "positive" {
				return e
			}
			if to := x.Other(queue[0]); !seen[to] && r.Net.ZoneOf(to) == z {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return -1
}
