package solve

import "slices"

// eliminate orders rows by the fewest neighbours left. near becomes, by row, the neighbours that are
// eliminated later, in no particular order.
func eliminate(n int, near [][]int32) ([]int, error) {
	for i := range near {
		slices.Sort(near[i])
		near[i] = slices.Compact(near[i])
	}
	order := make([]int, 0, n)
	done := make([]bool, n)
	by := newBuckets(near)
	mark := make([]int32, n) // the step in which a row was last seen as met
	work, step := 0, int32(0)
	for len(order) < n {
		v := by.least(near, done)
		done[v] = true
		order = append(order, v)
		if work += len(near[v]) * len(near[v]); work > mostFill {
			return nil, errTooDense
		}
		for _, w := range near[v] {
			near[w] = drop(near[w], int32(v))
		}
		for _, w := range near[v] {
			if len(near[v]) < 2 {
				break
			}
			step++
			mark[w] = step
			for _, u := range near[w] {
				mark[u] = step
			}
			for _, u := range near[v] {
				if mark[u] != step {
					near[w] = append(near[w], u)
				}
			}
		}
		for _, w := range near[v] {
			by.put(int(w), len(near[w]))
		}
	}
	return order, nil
}

func drop(list []int32, v int32) []int32 {
	for i, x := range list {
		if x == v {
			list[i] = list[len(list)-1]
			return list[:len(list)-1]
		}
	}
	return list
}

// buckets keep rows by their number of neighbours; a row may lie in several, the current one counts.
type buckets struct {
	lists [][]int32
	low   int
}

func newBuckets(near [][]int32) *buckets {
	b := &buckets{}
	for i := range near {
		b.put(i, len(near[i]))
	}
	return b
}

func (b *buckets) put(v, degree int) {
	for len(b.lists) <= degree {
		b.lists = append(b.lists, nil)
	}
	b.lists[degree] = append(b.lists[degree], int32(v))
	b.low = min(b.low, degree)
}

func (b *buckets) least(near [][]int32, done []bool) int {
	for ; ; b.low++ {
		list := b.lists[b.low]
		for len(list) > 0 {
			v := list[len(list)-1]
			list = list[:len(list)-1]
			b.lists[b.low] = list
			if !done[v] && len(near[v]) == b.low {
				return int(v)
			}
		}
	}
}
