package backfeed

import (
	"slices"

	"ferrule/lint/network"
	"ferrule/schema"
)

// claim says whether a battery is one that a charger is there for.
type claim uint8

const (
	other claim = iota
	own
	unsure
)

// claimsOf says of every battery whether it is a converter's own.
func claimsOf(n *network.Network, bank []int, c *network.Converter) map[int]claim {
	out := map[int]claim{}
	aboard := reached(n, c.Out.Hot, func(e *network.Edge) bool { return !towMate(n, e) })
	fixed := reached(n, c.Out.Hot, func(e *network.Edge) bool { return e.Kind != network.Mate || n.Var(e.Addr) < 0 })
	var house []int
	for i := range n.Sources {
		if s := &n.Sources[i]; s.Kind.Value == "battery" && s.Role.Value != "starting" && aboard[s.Hot] {
			house = append(house, i)
		}
	}
	for i := range n.Sources {
		s := &n.Sources[i]
		switch {
		case s.Kind.Value != "battery":
		case c.Charges.Set && c.Charges.Has(s.Addr):
			out[i] = own
		case c.Charges.Set || !slices.Contains(house, i):
		case len(house) == 1 || fixed[s.Hot] && !s.Removable.True():
			out[i] = own
		default:
			out[i] = unsure
		}
	}
	joinClaims(n, bank, out)
	return out
}

// banks numbers the live nodes that are wired together in every position, without switch or plug.
func banks(n *network.Network) []int {
	out := make([]int, len(n.Nodes))
	count := 0
	for i := range n.Nodes {
		if out[i] == 0 && !n.Nodes[i].Return {
			count++
			for id := range reached(n, network.NodeID(i), func(e *network.Edge) bool { return e.Kind != network.Contact && e.Kind != network.Mate }) {
				out[id] = count
			}
		}
	}
	return out // 0 on the return side, which makes no bank
}

// joinClaims gives what is wired to one of a converter's own batteries, and no starting battery, to
// the converter too: a bank is one battery whoever names it, and so is a string.
func joinClaims(n *network.Network, bank []int, claims map[int]claim) {
	touched := map[int]bool{}
	for grown := true; grown; {
		grown = false
		for i := range n.Sources {
			s := &n.Sources[i]
			hot, ret := bank[s.Hot], bank[s.Ret]
			if s.Kind.Value == "battery" && s.Role.Value != "starting" && (touched[hot] || touched[ret]) {
				claims[i] = own
			}
			if claims[i] == own && (hot > 0 && !touched[hot] || ret > 0 && !touched[ret]) {
				touched[hot], touched[ret] = hot > 0, ret > 0
				grown = true
			}
		}
	}
}

// reached lists the live nodes that edges lead to from a node, whatever their positions.
func reached(n *network.Network, from network.NodeID, use func(*network.Edge) bool) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, i := range n.At(queue[0]) {
			if to := n.Edges[i].Other(queue[0]); !seen[to] && !n.Nodes[to].Return && use(&n.Edges[i]) {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}

func towMate(n *network.Network, e *network.Edge) bool {
	c, ok := schema.Lookup[*schema.Connector](n.Plan, e.Addr)
	return ok && e.Kind == network.Mate && c.Tow.True()
}
