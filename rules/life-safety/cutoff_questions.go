package lifesafety

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// question is the critical loads that are needed in one mode, and what may feed them.
type question struct {
	p      *lint.Pass
	mode   *schema.Mode // nil for every state
	parted bool         // loads behind a breakaway switch, with the tow plug apart
	loads  []int
}

// questions groups the critical loads by mode.
func questions(p *lint.Pass) []*question {
	modes := append([]*schema.Mode{}, p.Plan.Modes...)
	if len(modes) == 0 {
		modes = append(modes, nil)
	}
	var out []*question
	for _, m := range modes {
		aboard, parted := &question{p: p, mode: m}, &question{p: p, mode: m, parted: true}
		for i := range p.Net.Loads {
			l := &p.Net.Loads[i]
			switch {
			case !critical(l.Load) || l.OwnBattery.True() || !neededIn(p, l.Load, m):
			case len(breakawaysOf(p.Net, l)) > 0:
				parted.loads = append(parted.loads, i)
			default:
				aboard.loads = append(aboard.loads, i)
			}
		}
		for _, q := range []*question{aboard, parted} {
			if len(q.loads) > 0 {
				out = append(out, q)
			}
		}
	}
	return out
}

// critical says whether something depends on a load. Leaving out the mark of an alarm, a bilge pump or a
// brake must not leave out the question.
func critical(l *schema.Load) bool {
	if !l.Critical.Set {
		return l.Kind.Value == "alarm" || l.Kind.Value == "bilge-pump" || l.Kind.Value == "brake"
	}
	return l.Critical.Value != "none"
}

func saves(l *schema.Load) bool { return critical(l) && l.Critical.Value != "navigation" }

func neededIn(p *lint.Pass, l *schema.Load, m *schema.Mode) bool {
	switch {
	case m == nil || l.NeededIn.Has(m.Addr):
		return true
	}
	return len(l.NeededIn.List) == 0 && p.Space.Aboard(m)
}

func (q *question) while() string {
	if q.mode != nil {
		return " in mode " + lint.Quote(q.mode)
	}
	return ""
}

// ask looks at every state of the mode; false where the bound cut it.
func (q *question) ask(p *lint.Pass, openers []*opener) bool {
	var hot []network.NodeID
	for _, i := range q.loads {
		hot = append(hot, p.Net.Loads[i].Hot)
	}
	filter := explore.All()
	switch {
	case q.parted:
		filter = p.Space.Parted(q.mode)
	case q.mode != nil:
		filter = p.Space.In(q.mode)
	}
	views, complete := p.Space.Views(p.Net.Together(hot...), p.Space.Closed(filter))
	for _, v := range views {
		if v.Transit == nil {
			q.look(v, openers)
		}
	}
	return complete
}

// look opens each part that lies on the way to a load in one state.
func (q *question) look(v *explore.View, openers []*opener) {
	openers = slices.DeleteFunc(slices.Clone(openers), func(o *opener) bool { return o.settled(q) })
	if len(openers) == 0 {
		return
	}
	before := q.live(v, nil)
	var fed []int
	on := map[string]bool{}
	for _, i := range q.loads {
		if !v.HasLoad(i) || !before.Feeds(q.p.Net.Loads[i].Port) {
			continue
		}
		fed = append(fed, i)
		edges, sources := before.Way(q.p.Net.Loads[i].Port)
		for _, e := range edges {
			on[q.p.Net.Edges[e].Addr] = true
		}
		for _, s := range sources {
			on[q.p.Net.Sources[s].Addr] = true
		}
	}
	for _, o := range openers {
		if on[o.block.Header().Addr] {
			o.try(q, v, before, fed)
		}
	}
}

// live is what is energised; behind a breakaway switch the trailer's own batteries alone count.
func (q *question) live(v *explore.View, skip func(*network.Source) bool) *explore.Energy {
	return v.Live(nil, func(s *network.Source) bool {
		return skip != nil && skip(s) || q.parted && (s.Kind.Value != "battery" || s.Role.Value == "starting")
	})
}

// opened is what is still energised after a part has opened; a battery's BMS takes the string that it
// is part of.
func (o *opener) opened(q *question, v *explore.View) *explore.Energy {
	if o.source < 0 {
		return q.live(v.Opened(o.block.Header().Addr), nil)
	}
	gone := map[string]bool{}
	tops := v.Series(o.source).Tops()
	for _, i := range v.Zone.Sources {
		if slices.Contains(tops, i) || slices.Contains(v.Series(i).Tops(), o.source) {
			gone[q.p.Net.Sources[i].Addr] = true
		}
	}
	return q.live(v, func(s *network.Source) bool { return gone[s.Addr] })
}

// wordIn is the word of a part that opens in a question's mode.
func (o *opener) wordIn(q *question) lint.Severity {
	boat := q.p.Plan.Graded("us-boat") || q.p.Plan.Graded("iso-boat")
	if q.mode != nil && q.mode.Name == "offshore" && o.word == lint.Warning && boat {
		return lint.Danger
	}
	return o.word
}

// settled says whether nothing that a question may find of a part would count.
func (o *opener) settled(q *question) bool {
	return o.word == 0 || o.after != nil && o.after.word >= o.wordIn(q) && len(o.after.unsure) == 0
}

// try notes what goes dark in a state if it is graver than what is known.
func (o *opener) try(q *question, v *explore.View, before *explore.Energy, fed []int) {
	after := o.opened(q, v)
	a := &outcome{question: q, view: v, word: o.wordIn(q)}
	sure := 0
	grave, graveSure := false, false
	for _, i := range fed {
		l := q.p.Net.Loads[i]
		if after.Feeds(l.Port) || o.asked(q, &l) {
			continue
		}
		a.dark = append(a.dark, i)
		known := l.OwnBattery.Set || l.Kind.Value != "alarm"
		if known {
			sure++
		} else {
			a.unsure = append(a.unsure, lint.Missing{Subject: l.Addr, Attribute: "own_battery"})
		}
		grave, graveSure = grave || saves(l.Load), graveSure || saves(l.Load) && known
	}
	if !grave && len(a.dark) < 2 || o.lone(q, v, before, after) {
		return
	}
	if graveSure || sure > 1 {
		a.unsure = nil
	}
	if o.after == nil || a.word > o.after.word || len(a.unsure) == 0 && len(o.after.unsure) > 0 {
		o.after = a
	}
}

// asked says whether another rule asks of the load what happens when a plug is out.
func (o *opener) asked(q *question, l *network.Load) bool {
	_, plug := o.block.(*schema.Connector)
	return plug && (q.parted || isAlarm(l))
}

// lone says whether a single load hangs behind the part.
func (o *opener) lone(q *question, v *explore.View, before, after *explore.Energy) bool {
	lost := 0
	for _, i := range v.Zone.Loads {
		if l := &q.p.Net.Loads[i]; v.HasLoad(i) && before.Feeds(l.Port) && !after.Feeds(l.Port) {
			lost++
		}
	}
	return lost < 2
}

// first says whether a device is the first that a battery's current meets.
func first(n *network.Network, x *schema.Fuse) bool {
	for _, from := range batteries(n) {
		if seen := within(n, from, func(e *network.Edge) bool { return e.Kind == network.Element }); touches(n, seen, x.Addr) {
			return true
		}
	}
	return false
}

// own says whether a disconnect is a battery's own: nothing but wires and devices stands before it.
func own(n *network.Network, x *schema.Switch) bool {
	for _, from := range batteries(n) {
		seen := within(n, from, func(e *network.Edge) bool { return e.Kind == network.Contact && e.Addr == x.Addr })
		bare := touches(n, seen, x.Addr)
		for _, id := range seen {
			switch n.Plan.Block(n.Nodes[id].Addr).(type) {
			case *schema.Load, *schema.Converter:
				bare = false
			}
		}
		if bare {
			return true
		}
	}
	return false
}

func batteries(n *network.Network) []network.NodeID {
	var out []network.NodeID
	for i := range n.Sources {
		if n.Sources[i].Kind.Value == "battery" {
			out = append(out, n.Sources[i].Hot)
		}
	}
	return out
}

// within is everything on the live side of a node, some edges left out.
func within(n *network.Network, from network.NodeID, without func(*network.Edge) bool) []network.NodeID {
	in, out := map[network.NodeID]bool{from: true}, []network.NodeID{from}
	for k := 0; k < len(out); k++ {
		for _, e := range n.At(out[k]) {
			if to := n.Edges[e].Other(out[k]); !without(&n.Edges[e]) && !n.Nodes[to].Return && !in[to] {
				in[to] = true
				out = append(out, to)
			}
		}
	}
	return out
}

func touches(n *network.Network, nodes []network.NodeID, addr string) bool {
	return slices.ContainsFunc(nodes, func(id network.NodeID) bool { return n.Nodes[id].Addr == addr })
}
