// Package ways finds what lies on the ways between two nodes of a graph. It knows nothing of what the
// edges are.
package ways

// Edge joins two nodes.
type Edge [2]int32

func (e Edge) other(n int32) int32 { return e[0] + e[1] - n }

// Between finds the edges on simple ways between two different nodes, as indices: those of the biconnected block
// that an edge between the two would lie in. None where no way is.
func Between(edges []Edge, nodes int, from, to int32) []int32 {
	all := make([]Edge, len(edges), len(edges)+1)
	copy(all, edges)
	virtual := int32(len(edges))
	all = append(all, Edge{from, to})
	at := make([][]int32, nodes)
	at[from] = append(at[from], virtual) // it is walked first
	for i, e := range edges {
		at[e[0]], at[e[1]] = append(at[e[0]], int32(i)), append(at[e[1]], int32(i))
	}
	at[to] = append(at[to], virtual)
	d := &dive{edges: all, at: at, depth: make([]int32, nodes), low: make([]int32, nodes)}
	d.block(from)
	out := d.found[:0]
	for _, e := range d.found {
		if e != virtual {
			out = append(out, e)
		}
	}
	return out
}

// dive is a walk in depth, with a stack of its own, that collects the block of the first edge walked.
type dive struct {
	edges      []Edge
	at         [][]int32
	depth, low []int32
	walked     []int32 // edges, in order
	found      []int32
}

type frame struct {
	node, by int32
	next     int
	mark     int // walked edges before the one that led here
}

func (d *dive) block(from int32) {
	d.depth[from] = 1
	stack := []frame{{node: from, by: -1}}
	for len(stack) > 0 {
		f := &stack[len(stack)-1]
		if f.next == len(d.at[f.node]) {
			if stack = stack[:len(stack)-1]; len(stack) == 0 || d.close(&stack[len(stack)-1], *f) {
				return
			}
			continue
		}
		e := d.at[f.node][f.next]
		f.next++
		if e == f.by {
			continue
		}
		n := d.edges[e].other(f.node)
		switch {
		case d.depth[n] == 0:
			d.depth[n] = d.depth[f.node] + 1
			d.low[n] = d.depth[n]
			stack = append(stack, frame{node: n, by: e, mark: len(d.walked)})
			d.walked = append(d.walked, e)
		case d.depth[n] < d.depth[f.node]:
			d.low[f.node] = min(d.low[f.node], d.depth[n])
			d.walked = append(d.walked, e)
		}
	}
}

// close returns from a node to the one it was entered from. It is true once the block that starts with
// the first edge is complete.
func (d *dive) close(up *frame, f frame) bool {
	d.low[up.node] = min(d.low[up.node], d.low[f.node])
	if d.low[f.node] < d.depth[up.node] {
		return false
	}
	if f.mark == 0 {
		d.found = d.walked
		return true
	}
	d.walked = d.walked[:f.mark] // a block of its own, elsewhere
	return false
}
