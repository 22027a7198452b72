package solve

import "math"

// tracking is the share of an array's power that a tracker finds. The last part in a million would
// stand at the very fold of the curve.
const tracking = 1 - 1e-6

// MostInto is the most power, in W, that the arrays and the limited supplies of a network can give at a
// pair of nodes, shared evenly by so many that ask there; what draws is left out. ok is false where
// nothing is given.
func MostInto(n *Net, p, q, sharers int) (watts float64, ok bool) {
	asked := &Net{Nodes: n.Nodes, References: n.References, Branches: n.Branches}
	top := 0.0
	for _, e := range n.Elements {
		switch e.Kind {
		case Array:
			top = max(top, e.Cell.OpenVolts())
			asked.Elements = append(asked.Elements, e)
		case Regulated:
			top = max(top, e.Volts)
			asked.Elements = append(asked.Elements, e)
		case Valve:
			asked.Elements = append(asked.Elements, e)
		}
	}
	for _, c := range n.Converters {
		most := c.Amps
		if c.Ceiling > 0 {
			most = min(most, c.Ceiling/c.Volts)
		}
		top = max(top, c.Volts)
		asked.Elements = append(asked.Elements, Element{Kind: Regulated, P: c.OutP, N: c.OutN, Volts: c.Volts, Ohms: c.Ohms, Amps: most})
	}
	asked.Elements = append(asked.Elements, Element{Kind: Hold, P: p, N: q, Ohms: 1e-5})
	s, err := New(asked)
	if err != nil || top == 0 {
		return 0, false
	}
	last := len(asked.Elements) - 1
	power := func(volts float64) float64 {
		asked.Elements[last].Volts = volts
		if at := s.Solve(); at.Found {
			return -at.Element[last] * (at.Volts[p] - at.Volts[q])
		}
		return 0
	}
	best := summit(power, top)
	return best * tracking / float64(sharers), best > 0
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
