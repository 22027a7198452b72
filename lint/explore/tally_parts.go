package explore

import (
	"encoding/binary"
	"slices"
)

// trail remembers what was changed, to take it back.
type trail []change

type change struct {
	v    int // variable, or -1-item
	dom  bitset
	mode mode
}

func (u *trail) dom(t *tally, v int, to bitset) {
	*u = append(*u, change{v: v, dom: t.dom[v]})
	t.dom[v] = to
}

func (u *trail) mode(t *tally, i int, to mode) {
	*u = append(*u, change{v: -1 - i, mode: t.items[i].mode})
	t.items[i].mode = to
}

func (u *trail) back(t *tally) {
	for k := len(*u) - 1; k >= 0; k-- {
		if c := (*u)[k]; c.v >= 0 {
			t.dom[c.v] = c.dom
		} else {
			t.items[-1-c.v].mode = c.mode
		}
	}
	*u = (*u)[:0]
}

// settle follows up what the open values already decide. It is false where nothing can be.
func (t *tally) settle(vars []int, undo *trail) bool {
	queue := slices.Clone(vars)
	waiting := map[int]bool{}
	for _, v := range vars {
		if waiting[v] = true; t.dom[v].empty() {
			return false
		}
	}
	for len(queue) > 0 {
		v := queue[0]
		queue, waiting[v] = queue[1:], false
		for _, u := range t.of[v] {
			w, ok := t.look(u.item, undo)
			if !ok {
				return false
			}
			if w >= 0 && !waiting[w] {
				queue, waiting[w] = append(queue, w), true
			}
		}
	}
	return true
}

// look brings one item up to date: done where it is decided. narrowed is the variable whose values
// it cut, -1 for none; ok is false where it cannot be met.
func (t *tally) look(i int, undo *trail) (narrowed int, ok bool) {
	x := &t.items[i]
	if x.mode == done {
		return -1, true
	}
	free, last := 0, -1
	for k, y := range x.rule {
		switch d := t.dom[y.v]; {
		case !d.meets(y.in):
			undo.mode(t, i, done)
			return -1, true
		case !d.within(y.in):
			free, last = free+1, k
		}
	}
	switch {
	case free == 0:
		bad := x.mode == never
		undo.mode(t, i, done)
		return -1, !bad
	case free == 1 && x.mode == never:
		y := x.rule[last]
		undo.mode(t, i, done)
		undo.dom(t, y.v, t.dom[y.v].less(y.in))
		return y.v, true
	}
	return -1, true
}

// parts divides variables into those that items still tie together.
func (t *tally) parts(vars []int) [][]int {
	at := make(map[int]int, len(vars))
	var out [][]int
	for _, first := range vars {
		if _, ok := at[first]; ok {
			continue
		}
		at[first] = len(out)
		part := []int{first}
		for k := 0; k < len(part); k++ {
			for _, u := range t.of[part[k]] {
				if !t.free(part[k], u) {
					continue
				}
				for _, y := range t.items[u.item].rule {
					if _, ok := at[y.v]; !ok && !t.dom[y.v].within(y.in) {
						at[y.v] = len(out)
						part = append(part, y.v)
					}
				}
			}
		}
		slices.Sort(part)
		out = append(out, part)
	}
	return out
}

// free says whether an item still waits for one of its variables.
func (t *tally) free(v int, u use) bool {
	x := &t.items[u.item]
	return x.mode != done && !t.dom[v].within(x.rule[u.term].in)
}

// key tells parts apart: their variables with the values still open, and what is asked of them.
func (t *tally) key(vars []int) string {
	b := make([]byte, 0, 12*len(vars))
	for _, v := range vars {
		b = binary.AppendUvarint(b, uint64(v))
		for _, w := range t.dom[v] {
			b = binary.AppendUvarint(b, w)
		}
		for _, u := range t.of[v] {
			if t.free(v, u) {
				b = append(b, byte(t.items[u.item].mode))
				b = binary.AppendUvarint(b, uint64(u.item))
			}
		}
		b = append(b, 0)
	}
	return string(b)
}
