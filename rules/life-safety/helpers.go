package lifesafety

import (
	"cmp"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// zoneID tells circuits apart; -1 is the return side, where nothing can be fed.
func zoneID(n *network.Network, l *network.Load) int {
	if z := n.ZoneOf(l.Hot); z != nil {
		return z.ID
	}
	return -1
}

func addresses(refs schema.Refs) []string {
	var out []string
	for _, r := range refs.List {
		out = append(out, r.Addr)
	}
	return out
}

// supplyOf is everything that can feed a load, through converters too. A load whose positive was
// drawn to the return side is fed by nothing: an empty zone.
func supplyOf(n *network.Network, l *network.Load) *network.Zone {
	if z := n.ZoneOf(l.Hot); z != nil {
		return n.Upstream(z)
	}
	return &network.Zone{ID: -1}
}

// breakawaysOf lists the breakaway switches that a load is fed through: for a brake those that any
// way reaches, for any other load those without which no battery or converter of the trailer does.
func breakawaysOf(n *network.Network, l *network.Load) []string {
	seen := map[network.NodeID]bool{l.Hot: true}
	found := map[string]bool{}
	supplied := false
	var out []string
	for queue := []network.NodeID{l.Hot}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		supplied = supplied || supplies(n, at)
		for _, i := range n.At(at) {
			e := &n.Edges[i]
			to := e.Other(at)
			if sw := breakaway(n, e); sw != nil {
				if !found[sw.Addr] {
					found[sw.Addr], out = true, append(out, sw.Addr)
				}
				continue
			}
			if !seen[to] && !n.Nodes[to].Return && !tow(n, e) {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	if supplied && l.Kind.Value != "brake" {
		return nil
	}
	return out
}

func breakaway(n *network.Network, e *network.Edge) *schema.Switch {
	if s, ok := schema.Lookup[*schema.Switch](n.Plan, e.Addr); ok && e.Kind == network.Contact && s.Kind.Value == "breakaway" {
		return s
	}
	return nil
}

func tow(n *network.Network, e *network.Edge) bool {
	c, ok := schema.Lookup[*schema.Connector](n.Plan, e.Addr)
	return ok && e.Kind == network.Mate && c.Tow.True()
}

// supplies says whether a battery or a converter's output sits at the node.
func supplies(n *network.Network, id network.NodeID) bool {
	addr := n.Nodes[id].Addr
	switch b := n.Plan.Block(addr).(type) {
	case *schema.Source:
		return b.Kind.Value == "battery"
	case *schema.Converter:
		return n.Nodes[id].Terminal == "out"
	}
	return false
}

// witness is a state with the variables whose positions alone make it dark.
type witness struct {
	view   *explore.View
	kept   []int
	turned []int // of those, the ones that stand otherwise in the nearest state that is fed
	also   []witness
}

// how tells the positions that made it dark; of many, those that differ from a state that is fed.
func (w witness) how(p *lint.Pass) string {
	state := w.view.State(w.kept)
	if len(state) > listed {
		state = w.view.State(w.turned)
	}
	return lint.Positions(p.Plan, state)
}

// closed counts the contacts that the switches of the witness close: an open one is plainer to see.
func (w witness) closed(n *network.Network) int {
	count := 0
	for _, i := range w.view.Zone.Edges {
		e := &n.Edges[i]
		if e.Kind == network.Contact && w.view.Conducts(i) && slices.ContainsFunc(e.When, func(l network.Literal) bool { return slices.Contains(w.kept, l.Var) }) {
			count++
		}
	}
	return count
}

const (
	tried  = 32 // bounds how many states a small witness is looked for in: they come with fewest parts moved first
	told   = 3  // other ways that a message tells
	listed = 3  // positions that a message lists of one way
)

// smallest picks the state that fewest positions make dark, and others that other positions do.
func smallest(n *network.Network, dark, fed []*explore.View, still func(*explore.View) bool) witness {
	var all []witness
	for _, v := range dark[:min(tried, len(dark))] {
		unlike := nearest(v, fed)
		w := witness{view: v, kept: v.Keep(likeFirst(v.Zone.Vars, unlike), still)}
		for _, k := range w.kept {
			if unlike[k] {
				w.turned = append(w.turned, k)
			}
		}
		if len(w.turned) == 0 {
			w.turned = w.kept
		}
		all = append(all, w)
	}
	best := slices.MinFunc(all, func(a, b witness) int {
		return cmp.Or(cmp.Compare(len(a.kept), len(b.kept)), cmp.Compare(a.closed(n), b.closed(n)))
	})
	had := map[int]bool{}
	note(had, best.turned)
	for _, w := range all {
		if len(best.also) < told && len(w.turned) > 0 && !overlaps(had, w.turned) {
			note(had, w.turned)
			best.also = append(best.also, w)
		}
	}
	return best
}

func note(had map[int]bool, vars []int) {
	for _, v := range vars {
		had[v] = true
	}
}

func overlaps(had map[int]bool, vars []int) bool {
	return slices.ContainsFunc(vars, func(v int) bool { return had[v] })
}

// ways tells a witness and the others in a sentence: `with "Pack" absent, or with "Main" at off`.
func (w witness) ways(p *lint.Pass) string {
	var all []string
	for _, a := range append([]witness{w}, w.also...) {
		if how := "with " + a.how(p); !slices.Contains(all, how) {
			all = append(all, how)
		}
	}
	return strings.Join(all, ", or ")
}

// nearest gives the variables in which a state differs from the fed state most like it.
func nearest(v *explore.View, fed []*explore.View) map[int]bool {
	best, least := -1, len(v.Zone.Vars)+1
	for i, f := range fed {
		if n := differ(v, f, least); n < least {
			best, least = i, n
		}
	}
	out := map[int]bool{}
	for _, x := range v.Zone.Vars {
		out[x] = best >= 0 && fed[best].At(x) != v.At(x)
	}
	return out
}

// differ counts the variables in which two states differ, no further than most.
func differ(v, f *explore.View, most int) int {
	n := 0
	for _, x := range v.Zone.Vars {
		if f.At(x) != v.At(x) {
			if n++; n >= most {
				break
			}
		}
	}
	return n
}

func likeFirst(vars []int, unlike map[int]bool) []int {
	var first, last []int
	for _, x := range vars {
		if unlike[x] {
			last = append(last, x)
		} else {
			first = append(first, x)
		}
	}
	return append(first, last...)
}
