package solve

// sharing finds the currents in branches without resistance. Kirchhoff's law alone decides where they
// make a tree; where they make a ring, they share as equal small resistances would.
type sharing struct {
	of  []int // the branches
	row []int // by node, -1 where the node is a cluster's reference or has no such branch
	f   *factor
	x   []float64
}

func newSharing(n *Net) (*sharing, error) {
	s := &sharing{row: make([]int, n.Nodes)}
	joined := newUnion(n.Nodes)
	touched := make([]bool, n.Nodes)
	for k, b := range n.Branches {
		if b.Ohms == 0 && b.A != b.B {
			s.of = append(s.of, k)
			joined.join(b.A, b.B)
			touched[b.A], touched[b.B] = true, true
		}
	}
	rows := 0
	for i := range s.row {
		s.row[i] = -1
		if touched[i] && joined.top(i) != i {
			s.row[i] = rows
			rows++
		}
	}
	near := make([][]int32, rows)
	for _, k := range s.of {
		if i, j := s.row[n.Branches[k].A], s.row[n.Branches[k].B]; i >= 0 && j >= 0 && i != j {
			near[i], near[j] = append(near[i], int32(j)), append(near[j], int32(i))
		}
	}
	f, place, err := newFactor(rows, near, true)
	if err != nil {
		return nil, err
	}
	s.f = f
	for i, r := range s.row {
		if r >= 0 {
			s.row[i] = int(place[r])
		}
	}
	s.stamp(n)
	s.x = make([]float64, rows)
	return s, nil
}

// stamp fills and factors the matrix, which never changes.
func (s *sharing) stamp(n *Net) {
	for _, k := range s.of {
		i, j := s.row[n.Branches[k].A], s.row[n.Branches[k].B]
		if i >= 0 {
			s.f.values[i]++
		}
		if j >= 0 {
			s.f.values[j]++
		}
		if i >= 0 && j >= 0 {
			s.f.values[s.f.code(int32(min(i, j)), int32(max(i, j)))]--
		}
	}
	s.f.decompose()
}

// share fills in the currents of the branches without resistance.
func (s *sharing) share(n *Net, p *Point) { s.divide(n, p, nil) }

// divide is share with currents into the nodes beside; nil for none.
func (s *sharing) divide(n *Net, p *Point, amps []float64) {
	if len(s.of) == 0 {
		return
	}
	clear(s.x)
	enter := func(node int, i float64) {
		if r := s.row[node]; r >= 0 {
			s.x[r] += i
		}
	}
	for node, a := range amps {
		enter(node, a)
	}
	for k, b := range n.Branches {
		enter(b.A, -p.Branch[k])
		enter(b.B, p.Branch[k])
	}
	for k, e := range n.Elements {
		enter(e.P, p.Element[k])
		enter(e.N, -p.Element[k])
	}
	for k, c := range n.Converters {
		enter(c.InP, -p.In[k])
		enter(c.InN, p.In[k])
		enter(c.OutP, p.Out[k])
		enter(c.OutN, -p.Out[k])
	}
	s.f.solve(s.x)
	at := func(node int) float64 {
		if r := s.row[node]; r >= 0 {
			return s.x[r]
		}
		return 0
	}
	for _, k := range s.of {
		p.Branch[k] = at(n.Branches[k].A) - at(n.Branches[k].B)
	}
}
