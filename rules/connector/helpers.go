package connector

import (
	"strings"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

var sides = []string{"fixed", "free"}

// genderless says whether the owner's word for a style tells that its two halves are alike.
func genderless(x *schema.Connector) bool {
	style := strings.ToLower(x.Style.Value)
	return strings.Contains(style, "genderless") || strings.Contains(style, "hermaphrodit")
}

// liveNodes lists the contacts of one side of a connector that are neither return nor ground.
func liveNodes(n *network.Network, x *schema.Connector, side string) []network.NodeID {
	var out []network.NodeID
	for i := range n.Nodes {
		if k := &n.Nodes[i]; k.Addr == x.Addr && k.Terminal == side && !k.Return && k.Pole != schema.Ground {
			out = append(out, network.NodeID(i))
		}
	}
	return out
}

// lets and mayLet say whether current comes back out of a converter's input: for certain, and where
// the plan does not say.
func lets(c *network.Converter) bool { return c.BlocksReverse.False() }

func mayLet(c *network.Converter) bool {
	return lets(c) || !c.BlocksReverse.Set && (c.Kind.Value == "dc-dc" || c.Kind.Value == "mppt")
}

// around joins the zones of nodes with all that can energise them: through converters, and backwards
// through those that may let current come back.
func around(n *network.Network, nodes ...network.NodeID) *network.Zone {
	nodes = append([]network.NodeID(nil), nodes...)
	seen := map[network.NodeID]bool{}
	for {
		z := n.Together(nodes...)
		grown := false
		for _, c := range z.Inputs {
			if out := n.Converters[c].Out.Hot; mayLet(&n.Converters[c]) && !seen[out] {
				seen[out], grown = true, true
				nodes = append(nodes, out)
			}
		}
		if !grown {
			return z
		}
	}
}

// way is how energy comes to a node: the edges back to a source, through converters, and the
// variables of what stands on it. doubtful is a converter that it passes backwards although the plan
// does not say that this can be.
type way struct {
	edges, vars []int
	from        schema.Block // the source
	doubtful    *schema.Converter
}

func wayTo(n *network.Network, v *explore.View, e *explore.Energy, id network.NodeID) way {
	var w way
	for seen := map[int]bool{}; ; {
		s, ok := nearest(e.At(id), seen)
		if !ok {
			return w
		}
		if s.Source >= 0 {
			x := &n.Sources[s.Source]
			w.from, w.vars = x.Source, append(w.vars, x.Present)
			w.edges = append(w.edges, v.Between(x.Hot, id).Edges()...)
			return w
		}
		seen[s.Converter] = true
		c := &n.Converters[s.Converter]
		at, next := c.Out.Hot, c.In.Hot
		if !v.Joined(at, id) {
			at, next = next, at
			if !lets(c) && w.doubtful == nil {
				w.doubtful = c.Converter
			}
		}
		w.edges, w.vars = append(w.edges, v.Between(at, id).Edges()...), append(w.vars, c.Present)
		id = next
	}
}

// nearest is a source before a converter.
func nearest(all []explore.Supply, seen map[int]bool) (found explore.Supply, ok bool) {
	for _, s := range all {
		if s.Source >= 0 {
			return s, true
		}
		if !ok && !seen[s.Converter] {
			found, ok = s, true
		}
	}
	return found, ok
}

// state tells the positions that a way and some more variables stand at.
func (w way) state(n *network.Network, v *explore.View, more ...int) []lint.Position {
	vars := more
	for _, e := range w.edges {
		for _, l := range n.Edges[e].When {
			vars = append(vars, l.Var)
		}
	}
	for _, i := range w.vars {
		if i >= 0 {
			vars = append(vars, i)
		}
	}
	return v.State(vars)
}

// roots lists what a person moves to part a connector: itself, or what it follows.
func roots(n *network.Network, variable int) []int {
	seen := map[int]bool{}
	var out []int
	var add func(i int)
	add = func(i int) {
		if seen[i] {
			return
		}
		seen[i] = true
		if x := &n.Vars[i]; x.Follower {
			for _, f := range x.Follows {
				add(f)
			}
			return
		}
		out = append(out, i)
	}
	add(variable)
	return out
}
