package solve

import "errors"

// factor is a sparse matrix with a symmetric pattern and its triangular factors in place. Its unknowns are
// numbered in the order of elimination, their places; that and every position are worked out once, numbers
// come and go. A symmetric matrix keeps its upper half alone.
//
// All numbers lie in one slice: the diagonal by place, then row by row what lies right of it, then what
// lies below it, then one that nothing reads.
type factor struct {
	n         int
	from      []int32 // by place: where its entries begin, counted from 0; one more at the end
	next      []int32 // the later places that it meets
	values    []float64
	hits      []int32 // where each update of the elimination lands, in the order in which they are made
	symmetric bool
	negative  int // pivots below zero
}

// mostFill bounds the work of one elimination; networks of wiring stay far below it.
const mostFill = 1 << 22

var errTooDense = errors.New("the network is too densely meshed to solve")

// newFactor orders n unknowns with the given neighbours, which it uses up, and gives the place of each.
func newFactor(n int, near [][]int32, symmetric bool) (f *factor, at []int32, err error) {
	f = &factor{n: n, from: make([]int32, n+1), symmetric: symmetric}
	order, err := eliminate(n, near)
	if err != nil {
		return nil, nil, err
	}
	at = make([]int32, n)
	for k, v := range order {
		at[v] = int32(k)
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
			f.next = append(f.next, at[w])
		}
	}
	f.values = make([]float64, n+2*entries+1)
	f.index(work)
	return f, at, nil
}

// index finds where the updates land: of a symmetric matrix each pair once.
func (f *factor) index(work int) {
	if f.symmetric {
		work = (work + len(f.next)) / 2
	}
	f.hits = make([]int32, 0, work)
	for k := range f.n {
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
	start, k, other := int32(f.n), a, b
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

// decompose factors the matrix in place; false where a pivot vanishes. The diagonal becomes the inverse of
// the pivots.
func (f *factor) decompose() bool {
	f.negative = 0
	n := f.n
	values, hits := f.values, f.hits
	up, low := values[n:n+len(f.next)], values[n+len(f.next):]
	for k := range n {
		d := values[k]
		if d == 0 || d != d {
			return false
		}
		if d < 0 {
			f.negative++
		}
		d = 1 / d
		values[k] = d
		from, to := f.from[k], f.from[k+1]
		right := up[from:to]
		switch {
		case f.symmetric && len(right) == 1: // as all rows of a tree but one
			values[hits[0]] -= right[0] * d * right[0]
			hits = hits[1:]
		case f.symmetric:
			for i, u := range right {
				hits = update(values, hits, right[i:], u*d)
			}
		default:
			below := low[from:to]
			for i, u := range below {
				below[i] = u * d
				hits = update(values, hits, right, u*d)
			}
		}
	}
	return true
}

// update takes a row, times l, from where its entries land, and gives the rest of the list of places.
func update(values []float64, hits []int32, row []float64, l float64) []int32 {
	here := hits[:len(row)]
	for j, v := range row {
		values[here[j]] -= l * v
	}
	return hits[len(row):]
}

// solve overwrites x, by place, with the solution.
func (f *factor) solve(x []float64) {
	n := f.n
	diagonal, up := f.values[:n], f.values[n:n+len(f.next)]
	below := up
	if !f.symmetric {
		below = f.values[n+len(f.next):]
	}
	for k, d := range diagonal {
		y := x[k]
		if y == 0 {
			continue
		}
		if f.symmetric {
			y *= d
		}
		next := f.next[f.from[k]:f.from[k+1]]
		for m, v := range below[f.from[k]:f.from[k+1]][:len(next)] {
			x[next[m]] -= v * y
		}
	}
	for k := n - 1; k >= 0; k-- {
		y := x[k]
		next := f.next[f.from[k]:f.from[k+1]]
		for m, v := range up[f.from[k]:f.from[k+1]][:len(next)] {
			y -= v * x[next[m]]
		}
		x[k] = y * diagonal[k]
	}
}
