package solve

// islands is the nodes as the matrix sees them: those that branches without resistance join are one,
// and one of each island is the reference.
type islands struct {
	row []int // by node: its unknown, -1 for a reference
	n   int   // unknowns
}

type union []int

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = i
	}
	return u
}

func (u union) top(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

func (u union) join(a, b int) {
	if a, b = u.top(a), u.top(b); a != b {
		u[max(a, b)] = min(a, b)
	}
}

// merge contracts a network's joined nodes and picks the references.
func merge(n *Net) islands {
	joined, whole := newUnion(n.Nodes), newUnion(n.Nodes)
	for _, b := range n.Branches {
		if b.Ohms == 0 {
			joined.join(b.A, b.B)
		}
		whole.join(b.A, b.B)
	}
	for _, e := range n.Elements {
		whole.join(e.P, e.N)
	}
	for _, c := range n.Converters {
		whole.join(c.InP, c.InN)
		whole.join(c.OutP, c.OutN)
	}
	reference := make([]bool, n.Nodes) // by joined representative
	has := make([]bool, n.Nodes)       // by island
	for _, r := range n.References {
		if i := whole.top(r); !has[i] {
			has[i], reference[joined.top(r)] = true, true
		}
	}
	out := islands{row: make([]int, n.Nodes)}
	for i := range out.row {
		j := joined.top(i)
		if k := whole.top(i); !has[k] {
			has[k], reference[j] = true, true
		}
		switch {
		case reference[j]:
			out.row[i] = -1
		case j == i:
			out.row[i] = out.n
			out.n++
		default:
			out.row[i] = out.row[j]
		}
	}
	return out
}

// spread gives each node the voltage of its unknown; references stand at 0 V.
func (s *islands) spread(volts, x []float64) {
	for i, r := range s.row {
		if volts[i] = 0; r >= 0 {
			volts[i] = x[r]
		}
	}
}
