package solve

import "slices"

// eliminate orders rows by the fewest neighbours left. near becomes, by row, the neighbours that are
// eliminated later, in no particular order. Neighbours that are gone stay in a list until it is used, so
// that a bus with thousands of wires is not searched for each.
func eliminate(n int, near [][]int32) ([]int, error) {
	e := &elimination{near: near, done: make([]bool, n), left: make([]int32, n), seen: make([]int32, n)}
	for i := range near {
		slices.Sort(near[i])
		near[i] = slices.Compact(near[i])
		e.left[i] = int32(len(near[i]))
		e.put(int32(i))
	}
	order := make([]int, 0, n)
	work := 0
	for len(order) < n {
		v := e.least()
		e.done[v] = true
		order = append(order, int(v))
		e.sweep(v)
		if work += len(near[v]) * len(near[v]); work > mostFill {
			return nil, errTooDense
		}
		for _, w := range near[v] {
			e.left[w]--
			if len(near[v]) > 1 {
				e.meet(w, near[v])
			}
			e.put(w)
		}
	}
	return order, nil
}

// elimination keeps rows by their number of neighbours left; a row may lie in several lists, the current
// one counts.
type elimination struct {
	near  [][]int32
	done  []bool
	left  []int32
	seen  []int32 // the step in which a row was last seen as met
	step  int32
	lists [][]int32
	low   int
}

// sweep takes what is gone out of a row's neighbours.
func (e *elimination) sweep(v int32) {
	e.near[v] = slices.DeleteFunc(e.near[v], func(w int32) bool { return e.done[w] })
}

// meet makes a row meet the others of a list.
func (e *elimination) meet(w int32, others []int32) {
	e.sweep(w)
	e.step++
	e.seen[w] = e.step
	for _, u := range e.near[w] {
		e.seen[u] = e.step
	}
	for _, u := range others {
		if e.seen[u] != e.step {
			e.near[w] = append(e.near[w], u)
			e.left[w]++
		}
	}
}

func (e *elimination) put(v int32) {
	degree := int(e.left[v])
	for len(e.lists) <= degree {
		e.lists = append(e.lists, nil)
	}
	e.lists[degree] = append(e.lists[degree], v)
	e.low = min(e.low, degree)
}

func (e *elimination) least() int32 {
	for ; ; e.low++ {
		for list := e.lists[e.low]; len(list) > 0; list = e.lists[e.low] {
			v := list[len(list)-1]
			e.lists[e.low] = list[:len(list)-1]
			if !e.done[v] && int(e.left[v]) == e.low {
				return v
			}
		}
	}
}
