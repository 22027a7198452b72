package solve

import "errors"

// factor is a sparse matrix with a symmetric pattern and its triangular factors in place. The order of
// elimination and every position are worked out once; numbers come and go. A symmetric matrix keeps its
// upper half alone.
//
// All numbers lie in one slice: the diagonal by place, then row by row what lies right of it, then what
// lies below it, then one that nothing reads.
type factor struct {
	at        []int32 // by row: its place in the order
	from      []int32 // by place: where its entries begin, counted from 0; one more at the end
	next      []int32 // the later places that it meets
	values    []float64
	hits      []int32 // where each update of the elimination lands, in the order in which they are made
	symmetric bool
	x         []float64
	negative  int // pivots below zero
}

// mostFill bounds the work of one elimination; networks of wiring stay far below it.
const mostFill = 1 << 22

var errTooDense = errors.New("the network is too densely meshed to solve")

// newFactor orders n unknowns with the given neighbours, which it uses up.
func newFactor(n int, near [][]int32, symmetric bool) (*factor, error) {
	f := &factor{at: make([]int32, n), from: make([]int32, n+1), x: make([]float64, n), symmetric: symmetric}
	order, err := eliminate(n, near)
	if err != nil {
		return nil, err
	}
	for k, v := range order {
		f.at[v] = int32(k)
	}
	entries, work := 0, 0
	for k, v := range order {
		m := len(near[v])
		entries += m
		work += m * m
		f.from[k+1] = int32(entries)
	}
	f.next = make([]int32, 0, entries)
	for _, v := range order {
		for _, w := range near[v] {
			f.next = append(f.next, f.at[w])
		}
	}
	f.values = make([]float64, n+2*entries+1)
	f.index(work)
	return f, nil
}

// index finds where the updates land: of a symmetric matrix each pair once.
func (f *factor) index(work int) {
	if f.symmetric {
		work = (work + len(f.next)) / 2
	}
	f.hits = make([]int32, 0, work)
	for k := range f.at {
		next := f.row(k)
		for i, a := range next {
			if f.symmetric {
				for _, b := range next[i:] {
					f.hits = append(f.hits, f.code(min(a, b), max(a, b)))
				}
				continue
			}
			for _, b := range next {
				f.hits = append(f.hits, f.code(a, b))
			}
		}
	}
}

func (f *factor) row(k int) []int32 { return f.next[f.from[k]:f.from[k+1]] }

// nowhere is where numbers go that belong to no entry.
func (f *factor) nowhere() int32 { return int32(len(f.values) - 1) }

// code finds the entry at two places; the lower half of a symmetric matrix is nowhere.
func (f *factor) code(a, b int32) int32 {
	if a == b {
		return a
	}
	start, k, other := int32(len(f.at)), a, b
	if b < a {
		if f.symmetric {
			return f.nowhere()
		}
		start, k, other = start+int32(len(f.next)), b, a
	}
	for m, p := range f.row(int(k)) {
		if p == other {
			return start + f.from[k] + int32(m)
		}
	}
	return f.nowhere()
}

// decompose factors the matrix in place; false where a pivot vanishes.
func (f *factor) decompose() bool {
	f.negative = 0
	n := len(f.at)
	diagonal, up, low := f.values[:n], f.values[n:n+len(f.next)], f.values[n+len(f.next):]
	hits := f.hits
	for k, d := range diagonal {
		d = diagonal[k] // earlier rows have changed it
		if d == 0 || d != d {
			return false
		}
		if d < 0 {
			f.negative++
		}
		right := up[f.from[k]:f.from[k+1]]
		if f.symmetric {
			for i, u := range right {
				l := u / d
				for j, v := range right[i:] {
					f.values[hits[j]] -= l * v
				}
				hits = hits[len(right)-i:]
			}
			continue
		}
		below := low[f.from[k]:f.from[k+1]]
		for i := range below {
			l := below[i] / d
			below[i] = l
			for j, v := range right {
				f.values[hits[j]] -= l * v
			}
			hits = hits[len(right):]
		}
	}
	return true
}

// solve overwrites b (by row) with the solution.
func (f *factor) solve(b []float64) {
	x, n := f.x, len(f.at)
	diagonal, up := f.values[:n], f.values[n:n+len(f.next)]
	for r, k := range f.at {
		x[k] = b[r]
	}
	for k := range x {
		y, below := x[k], up
		if f.symmetric {
			y /= diagonal[k]
		} else {
			below = f.values[n+len(f.next):]
		}
		for m := f.from[k]; y != 0 && m < f.from[k+1]; m++ {
			x[f.next[m]] -= below[m] * y
		}
	}
	for k := n - 1; k >= 0; k-- {
		y := x[k]
		for m := f.from[k]; m < f.from[k+1]; m++ {
			y -= up[m] * x[f.next[m]]
		}
		x[k] = y / diagonal[k]
	}
	for r, k := range f.at {
		b[r] = x[k]
	}
}
