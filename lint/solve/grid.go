package solve

import "errors"

// Grid is a network of branches alone, prepared for any number of questions: which voltages and
// currents do given currents into its nodes make? Branches without resistance are contracted; what
// passes them follows from Kirchhoff's current law, and where they make a ring they share it as equal
// small resistances would.
type Grid struct {
	net     Net
	rows    islands
	island  union
	factor  *factor
	sharing *sharing
}

// NewGrid prepares a network of nodes and branches. The error says that it is too densely meshed, or
// that its resistances lie too far apart.
func NewGrid(nodes int, branches []Branch) (*Grid, error) {
	g := &Grid{net: Net{Nodes: nodes, Branches: branches}, island: newUnion(nodes)}
	g.rows = merge(&g.net)
	near := make([][]int32, g.rows.n)
	for _, b := range branches {
		g.island.join(b.A, b.B)
		if i, j := g.rows.row[b.A], g.rows.row[b.B]; i >= 0 && j >= 0 && i != j {
			near[i], near[j] = append(near[i], int32(j)), append(near[j], int32(i))
		}
	}
	factor, place, err := newFactor(g.rows.n, near, true)
	if err != nil {
		return nil, err
	}
	g.factor = factor
	g.rows.renumber(place)
	if !g.stamp() {
		return nil, errRange
	}
	g.sharing, err = newSharing(&g.net)
	return g, err
}

var errRange = errors.New("the resistances lie too far apart to solve")

func (g *Grid) stamp() bool {
	f := g.factor
	for _, b := range g.net.Branches {
		i, j := g.rows.row[b.A], g.rows.row[b.B]
		if b.Ohms == 0 || i == j {
			continue
		}
		if i >= 0 {
			f.values[i] += 1 / b.Ohms
		}
		if j >= 0 {
			f.values[j] += 1 / b.Ohms
		}
		if i >= 0 && j >= 0 {
			f.values[f.code(int32(min(i, j)), int32(max(i, j)))] -= 1 / b.Ohms
		}
	}
	return f.decompose()
}

// Island is a number that nodes have in common exactly if branches connect them.
func (g *Grid) Island(node int) int { return g.island.top(node) }

// Volts gives the voltages by node that currents into the nodes, in A, make. The currents into each
// island must add up to nothing; one node of each is at 0 V.
func (g *Grid) Volts(amps []float64) []float64 {
	x := make([]float64, g.rows.n)
	for i, a := range amps {
		if r := g.rows.row[i]; r >= 0 {
			x[r] += a
		}
	}
	g.factor.solve(x)
	volts := make([]float64, g.net.Nodes)
	g.rows.spread(volts, x)
	return volts
}

// Currents gives the currents by branch, from A to B in A, at voltages that Volts gave for the same
// currents into the nodes.
func (g *Grid) Currents(volts, amps []float64) []float64 {
	p := &Point{Branch: make([]float64, len(g.net.Branches))}
	for k, b := range g.net.Branches {
		if b.Ohms > 0 {
			p.Branch[k] = (volts[b.A] - volts[b.B]) / b.Ohms
		}
	}
	g.sharing.divide(&g.net, p, amps)
	return p.Branch
}
