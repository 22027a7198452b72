package explore

// run finds values, by variable, that join the ends of all webs. Open says that the budget ended it.
func (f *frontier) run(stop func() bool) (Truth, claim) {
	for i := range f.steps {
		if !f.steps[i].fits() {
			return Open, nil
		}
	}
	start := &partial{}
	for range f.webs {
		start.label = append(start.label, []byte{0, 1})
	}
	now := []*partial{start}
	for i := range f.steps {
		seen := map[string]bool{}
		var next []*partial
		for _, p := range now {
			for _, k := range f.steps[i].values {
				n := f.steps[i].apply(f.p, p, k)
				if n == nil {
					continue
				}
				if key := n.key(); !seen[key] {
					seen[key] = true
					next = append(next, n)
				}
			}
			if f.left--; f.left <= 0 || f.left%256 == 0 && stop != nil && stop() {
				return Open, nil
			}
		}
		now = next
	}
	if len(now) == 0 {
		return No, nil
	}
	c := claim{}
	at := now[0]
	for i := len(f.steps) - 1; i >= 0; i-- {
		c[f.steps[i].v] = at.value
		at = at.from
	}
	return Yes, c
}

// fits says whether a step's nodes and values can be told apart by a byte.
func (s *step) fits() bool {
	for _, n := range s.nodes {
		if len(n) > 127 {
			return false
		}
	}
	return len(s.values) == 0 || s.values[len(s.values)-1] < 255
}

// apply decides a step's variable; nil where that cannot be or leaves ends apart for good.
func (s *step) apply(p *puzzle, from *partial, k int) *partial {
	out := &partial{moved: from.moved, from: from, value: k}
	if !p.rest[s.v].has(k) {
		if from.moved {
			return nil
		}
		out.moved = true
	}
	held := append(append(make([]byte, 0, len(s.held)), from.held...), byte(k))
	for _, r := range s.rules {
		if s.holds(r, held) {
			return nil
		}
	}
	label := make([][]byte, len(from.label))
	for w, l := range from.label {
		if l == nil {
			continue
		}
		label[w] = append(make([]byte, 0, len(s.nodes[w])), l...)
		for n := len(l); n < len(s.nodes[w]); n++ {
			label[w] = append(label[w], byte(128+n)) // joined to nothing yet
		}
	}
	for _, e := range s.edges {
		if l := label[e.web]; l != nil && l[e.a] != l[e.b] && s.holds(e.when, held) {
			was, to := l[e.a], l[e.b]
			for n := range l {
				if l[n] == was {
					l[n] = to
				}
			}
		}
	}
	out.label = label
	for w, l := range label {
		if l != nil && !s.shrink(out, w, l) {
			return nil
		}
	}
	out.held = pickAt(held, s.keep)
	return out
}

// shrink keeps the labels of the nodes that stay, in order of appearance; false where one end of the
// web is joined to none of them and so will never reach the other.
func (s *step) shrink(out *partial, w int, l []byte) bool {
	a, b := l[s.ends[w][0]], l[s.ends[w][1]]
	if a == b {
		out.label[w] = nil
		return true
	}
	kept := pickAt(l, s.stay[w])
	onA, onB := false, false
	var number [256]byte
	next := byte(1)
	for i, x := range kept {
		onA, onB = onA || x == a && s.alive[w][i], onB || x == b && s.alive[w][i]
		if number[x] == 0 {
			number[x] = next
			next++
		}
		kept[i] = number[x] - 1
	}
	out.label[w] = kept
	return onA && onB
}

func (s *step) holds(r rule, held []byte) bool {
	for _, t := range r {
		for i, v := range s.held {
			if v == t.v && !t.in.has(int(held[i])) {
				return false
			}
		}
	}
	return true
}

func (p *partial) key() string {
	b := append(make([]byte, 0, 64), p.held...)
	if p.moved {
		b = append(b, 255)
	}
	for _, l := range p.label {
		b = append(append(b, byte(len(l))), l...)
	}
	return string(b)
}
