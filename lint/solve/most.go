package solve

import (
	"math"

	"ferrule/lint/ways"
)

// tracking is the share of an array's power that a tracker finds. The last part in a million would
// stand at the very fold of the curve.
const tracking = 1 - 1e-6

// MostInto is the most power, in W, that the arrays and the limited supplies of a network can give at a
// pair of nodes, shared evenly by so many that ask there; what draws is left out. ok is false where
// nothing is given.
func (m *Memory) MostInto(n *Net, p, q, sharers int) (watts float64, ok bool) {
	near, p, q := givers(n).between(p, q)
	best, err := recall(m, func() *map[key]float64 { return &m.most }, near, p, q, func() (float64, error) { return near.mostInto(p, q) })
	return best * tracking / float64(sharers), err == nil && best > 0
}

func (n *Net) mostInto(p, q int) (watts float64, err error) {
	top := n.openVolts(p, q)
	if top <= 0 {
		return 0, nil
	}
	last := len(n.Elements)
	n.Elements = append(n.Elements, Element{Kind: Hold, P: p, N: q, Ohms: 1e-5})
	s, err := New(n)
	if err != nil {
		return 0, err
	}
	return summit(func(volts float64) float64 {
		n.Elements[last].Volts = volts
		if at := s.Solve(); at.Found {
			return -at.Element[last] * (at.Volts[p] - at.Volts[q])
		}
		return 0
	}, top), nil
}

// givers is a network with nothing in it that draws: converters as the supplies that their outputs are.
func givers(n *Net) *Net {
	out := &Net{Nodes: n.Nodes, References: n.References, Branches: n.Branches}
	for _, e := range n.Elements {
		if e.Kind == Array || e.Kind == Regulated || e.Kind == Valve {
			out.Elements = append(out.Elements, e)
		}
	}
	for _, c := range n.Converters {
		most := c.Amps
		if c.Ceiling > 0 {
			most = min(most, c.Ceiling/c.Volts)
		}
		out.Elements = append(out.Elements, Element{Kind: Regulated, P: c.OutP, N: c.OutN, Volts: c.Volts, Ohms: c.Ohms, Amps: most})
	}
	return out
}

// between is the part of a network, without converters, that lies on ways between two nodes, and those nodes in it:
// what hangs on it by one node, or not at all, drives nothing from one to the other.
func (n *Net) between(p, q int) (part *Net, at, to int) {
	var edges []ways.Edge
	for _, b := range n.Branches {
		edges = append(edges, ways.Edge{int32(b.A), int32(b.B)})
	}
	for _, e := range n.Elements {
		edges = append(edges, ways.Edge{int32(e.P), int32(e.N)})
	}
	part = &Net{}
	number := map[int]int{}
	own := func(i int) int {
		if _, ok := number[i]; !ok {
			number[i] = part.Nodes
			part.Nodes++
		}
		return number[i]
	}
	at, to = own(p), own(q)
	for _, k := range ways.Between(edges, n.Nodes, int32(p), int32(q)) {
		if i := int(k) - len(n.Branches); i >= 0 {
			e := n.Elements[i]
			e.P, e.N = own(e.P), own(e.N)
			part.Elements = append(part.Elements, e)
			continue
		}
		b := n.Branches[k]
		part.Branches = append(part.Branches, Branch{own(b.A), own(b.B), b.Ohms})
	}
	for _, r := range n.References {
		if i, ok := number[r]; ok {
			part.References = append(part.References, i)
		}
	}
	return part, at, to
}

// openVolts is the voltage from one node to another with nothing between them; where that is not found, no less
// than it, all that supplies hold in a row. 0 where none does.
func (n *Net) openVolts(p, q int) float64 {
	all := 0.0
	for _, e := range n.Elements {
		switch e.Kind {
		case Array:
			all += e.Cell.OpenVolts()
		case Regulated:
			all += e.Volts
		}
	}
	s, err := New(n)
	if all == 0 || err != nil {
		return all
	}
	at := s.Solve()
	if volts := at.Volts; at.Found && volts[p] > volts[q] {
		return min(volts[p]-volts[q], all)
	}
	return all
}

// summit is the largest value of a function from 0 to high, which may have more humps than one: an array
// and a supply side by side make two.
func summit(f func(float64) float64, high float64) float64 {
	const parts = 24
	best, at := 0.0, 0
	for k := 1; k <= parts; k++ {
		if y := f(high * float64(k) / parts); y > best {
			best, at = y, k
		}
	}
	return max(best, peak(f, high*float64(max(at-1, 0))/parts, high*float64(min(at+1, parts))/parts))
}

// peak is the largest value of a function with one hump, by golden section.
func peak(f func(float64) float64, low, high float64) float64 {
	const golden = 0.6180339887498949
	a, b := high-golden*(high-low), low+golden*(high-low)
	fa, fb := f(a), f(b)
	for range 36 { // to 3e-9 of the range; at the top the power hardly changes with the volts
		if fa < fb {
			low, a, fa = a, b, fb
			b = low + golden*(high-low)
			fb = f(b)
		} else {
			high, b, fb = b, a, fa
			a = high - golden*(high-low)
			fa = f(a)
		}
	}
	return math.Max(fa, fb)
}
