package solve

import "errors"

// factor is a sparse matrix with a symmetric pattern and its triangular factors in place. The order of
// elimination and every position are worked out once; numbers come and go.
type factor struct {
	at   []int32   // by row: its place in the order
	next [][]int32 // by place: the later places that it meets
	diag []float64
	up   []float64 // entries (k, next[k][m]) at first[k]+m
	low  []float64 // entries (next[k][m], k)
	from []int32   // first
	hits []int32   // by place, row by row: where next[k][a], next[k][b] lies, coded
	x    []float64
	sign bool // false where the product of the pivots is negative
}

// mostFill bounds the work of one elimination; networks of wiring stay far below it.
const mostFill = 1 << 24

var errTooDense = errors.New("the network is too densely meshed to solve")

// newFactor orders n unknowns with the given neighbours, which it uses up.
func newFactor(n int, near [][]int32) (*factor, error) {
	f := &factor{at: make([]int32, n), next: make([][]int32, n), diag: make([]float64, n), from: make([]int32, n), x: make([]float64, n)}
	order, err := eliminate(n, near)
	if err != nil {
		return nil, err
	}
	for k, v := range order {
		f.at[v] = int32(k)
	}
	entries, work := 0, 0
	for k, v := range order {
		f.from[k] = int32(entries)
		entries += len(near[v])
		work += len(near[v]) * len(near[v])
	}
	if work > mostFill {
		return nil, errTooDense
	}
	places := make([]int32, 0, entries)
	for k, v := range order {
		start := len(places)
		for _, w := range near[v] {
			places = append(places, f.at[w])
		}
		f.next[k] = places[start:len(places):len(places)]
	}
	f.up, f.low = make([]float64, entries), make([]float64, entries)
	f.index(work)
	return f, nil
}

// index codes where each update of the elimination lands: i >= 0 in diag, else in up (even) or low
// (odd) at -i/2-1.
func (f *factor) index(work int) {
	f.hits = make([]int32, 0, work)
	for _, next := range f.next {
		for _, a := range next {
			for _, b := range next {
				f.hits = append(f.hits, f.code(a, b))
			}
		}
	}
}

// code finds the entry at two places.
func (f *factor) code(a, b int32) int32 {
	if a == b {
		return a
	}
	k, other, odd := a, b, int32(0)
	if b < a {
		k, other, odd = b, a, 1
	}
	for m, p := range f.next[k] {
		if p == other {
			return -(2*(f.from[k]+int32(m)) + odd) - 1
		}
	}
	return -1 << 31 // not met
}

func (f *factor) entry(code int32) *float64 {
	if code >= 0 {
		return &f.diag[code]
	}
	i := -code - 1
	if i&1 == 0 {
		return &f.up[i>>1]
	}
	return &f.low[i>>1]
}

func (f *factor) clear() {
	clear(f.diag)
	clear(f.up)
	clear(f.low)
}

// decompose factors the matrix in place; false where a pivot vanishes.
func (f *factor) decompose() bool {
	f.sign = true
	h := 0
	for k, next := range f.next {
		d := f.diag[k]
		if d == 0 || d != d {
			return false
		}
		if d < 0 {
			f.sign = !f.sign
		}
		base := int(f.from[k])
		for a := range next {
			l := f.low[base+a] / d
			f.low[base+a] = l
			if l == 0 {
				h += len(next)
				continue
			}
			for b := range next {
				*f.entry(f.hits[h]) -= l * f.up[base+b]
				h++
			}
		}
	}
	return true
}

// solve overwrites b (by row) with the solution.
func (f *factor) solve(b []float64) {
	x := f.x
	for r, k := range f.at {
		x[k] = b[r]
	}
	for k, next := range f.next {
		if y := x[k]; y != 0 {
			base := int(f.from[k])
			for m, p := range next {
				x[p] -= f.low[base+m] * y
			}
		}
	}
	for k := len(f.next) - 1; k >= 0; k-- {
		y, base := x[k], int(f.from[k])
		for m, p := range f.next[k] {
			y -= f.up[base+m] * x[p]
		}
		x[k] = y / f.diag[k]
	}
	for r, k := range f.at {
		b[r] = x[k]
	}
}
