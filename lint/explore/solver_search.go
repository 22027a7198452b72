package explore

// follow draws all conclusions from what is true. bad says that a clause, which it gives, is broken.
func (s *solver) follow() (clause []int32, bad bool) {
	for s.head < len(s.trail) {
		l := s.trail[s.head]
		s.head++
		if l&1 == 0 {
			if clause, bad := s.others(l >> 1); bad {
				return clause, true
			}
		}
		if clause, bad := s.visit(l ^ 1); bad {
			return clause, true
		}
	}
	return nil, false
}

// others makes the other values of a proposition's variable false.
func (s *solver) others(b int32) (clause []int32, bad bool) {
	g := s.group[s.owner[b]]
	for o := g[0]; o < g[1]; o++ {
		if o == b {
			continue
		}
		switch s.val[o] {
		case 1:
			return []int32{2*b + 1, 2*o + 1}, true
		case 0:
			s.put(2*o+1, -2-b)
		}
	}
	return nil, false
}

// visit looks at the clauses that waited for a literal which has become false.
func (s *solver) visit(l int32) (clause []int32, bad bool) {
	list := s.watch[l]
	kept := list[:0]
	for i, at := range list {
		c := s.clauses[at]
		if c[0] == l {
			c[0], c[1] = c[1], c[0]
		}
		if s.truth(c[0]) == 1 || !s.rewatch(c, at) {
			kept = append(kept, at)
		} else {
			continue
		}
		switch s.truth(c[0]) {
		case -1:
			s.watch[l] = append(kept, list[i+1:]...)
			return c, true
		case 0:
			s.put(c[0], at)
		}
	}
	s.watch[l] = kept
	return nil, false
}

// rewatch finds another literal for a clause to wait for; its second has become false.
func (s *solver) rewatch(c []int32, at int32) bool {
	for k := 2; k < len(c); k++ {
		if s.truth(c[k]) >= 0 {
			c[1], c[k] = c[k], c[1]
			s.watch[c[1]] = append(s.watch[c[1]], at)
			return true
		}
	}
	return false
}

// learn turns a broken clause into the one that would have prevented it: with a single literal of the
// present level, the first. to is the level at which it decides that literal.
func (s *solver) learn(broken []int32) (clause []int32, to int) {
	now := int32(len(s.starts))
	clause = []int32{-1}
	open, at := 0, len(s.trail)-1
	var marked []int32
	note := func(l int32) {
		b := l >> 1
		if s.seen[b] || s.level[b] == 0 {
			return
		}
		s.seen[b] = true
		marked = append(marked, b)
		if s.heat[b] += s.step; s.heat[b] > 1e100 && s.heat[b] < 1e300 {
			s.cool()
		}
		if s.level[b] == now {
			open++
			return
		}
		clause = append(clause, l)
		to = max(to, int(s.level[b]))
	}
	for why := broken; ; {
		for _, l := range why {
			note(l)
		}
		for !s.seen[s.trail[at]>>1] {
			at--
		}
		p := s.trail[at]
		at--
		if open--; open == 0 {
			clause[0] = p ^ 1
			break
		}
		s.seen[p>>1] = false // its own literal in its reason is no news
		why = s.because(p)
		s.seen[p>>1] = true
	}
	for _, b := range marked {
		s.seen[b] = false
	}
	s.step *= 1.05
	return clause, to
}

// because gives the false literals that made a literal true.
func (s *solver) because(l int32) []int32 {
	r := s.reason[l>>1]
	if r <= -2 {
		return []int32{2*(-2-r) + 1}
	}
	if r < 0 {
		return nil
	}
	out := make([]int32, 0, len(s.clauses[r]))
	for _, o := range s.clauses[r] {
		if o != l {
			out = append(out, o)
		}
	}
	return out
}

func (s *solver) cool() {
	for b := range s.heat {
		if s.heat[b] < 1e300 {
			s.heat[b] *= 1e-100
		}
	}
	s.step *= 1e-100
}

// repair answers a broken clause. It is false where nothing is left to change.
func (s *solver) repair(broken []int32) bool {
	top := int32(0)
	for _, l := range broken {
		top = max(top, s.level[l>>1])
	}
	if s.back(int(top)); top == 0 {
		s.dead = true
		return false
	}
	clause, to := s.learn(broken)
	s.back(to)
	why := int32(-1)
	if len(clause) > 1 {
		for k := 2; k < len(clause); k++ {
			if s.level[clause[k]>>1] > s.level[clause[1]>>1] {
				clause[1], clause[k] = clause[k], clause[1]
			}
		}
		why = s.attach(clause)
	}
	s.put(clause[0], why)
	return true
}

// search looks for a state that reaches the goal. Open says that the budget or the caller ended it.
func (s *solver) search(g goal) Truth {
	reached := -1 // level at which the goal was reached, -1 for not
	for run, met := 64, 0; !s.dead; {
		broken, bad := s.follow()
		if len(s.starts) < reached {
			reached = -1
		}
		if !bad && reached < 0 {
			s.examined++
			t, clause := g.look(s)
			switch t {
			case No:
				bad, broken = true, s.lesson(clause)
			case Yes:
				reached = len(s.starts)
			}
		}
		if bad {
			if !s.repair(broken) {
				return No
			}
			s.left--
			if met++; s.left <= 0 {
				return Open
			}
			if met >= run {
				run, met = run+run/2, 0
				s.back(0)
			}
			continue
		}
		if s.work -= len(s.val); s.work <= 0 || s.stopped() {
			return Open
		}
		l := s.choose(g, reached >= 0)
		if l < 0 {
			if reached >= 0 {
				return Yes
			}
			return Open // the goal does not know what to make of a whole state
		}
		s.starts = append(s.starts, len(s.trail))
		s.put(l, -1)
	}
	return No
}

// stopped asks the caller now and then.
func (s *solver) stopped() bool {
	s.asked++
	return s.asked%64 == 0 && s.stop != nil && s.stop()
}

// lesson keeps a clause that a goal gives; where it gives none, something decided must change.
func (s *solver) lesson(clause []int32) []int32 {
	if clause == nil {
		return s.decided()
	}
	once := clause[:0]
	for _, l := range clause {
		if b := l >> 1; !s.seen[b] {
			s.seen[b] = true
			once = append(once, l)
		}
	}
	for _, l := range once {
		s.seen[l>>1] = false
	}
	if len(once) > 1 {
		for at := range 2 { // wait for those that come free first
			for k := at + 1; k < len(once); k++ {
				if s.level[once[k]>>1] > s.level[once[at]>>1] {
					once[at], once[k] = once[k], once[at]
				}
			}
		}
		s.attach(once)
	}
	return once
}

// decided is the clause that something decided must change.
func (s *solver) decided() (out []int32) {
	for _, from := range s.starts {
		out = append(out, s.trail[from]^1)
	}
	return out
}

// choose picks what to decide next, -1 where all is.
func (s *solver) choose(g goal, reached bool) int32 {
	best := int32(-1)
	for b, v := range s.val {
		if v == 0 && (best < 0 || s.heat[b] > s.heat[best]) {
			best = int32(b)
		}
	}
	if best < 0 || s.heat[best] >= 1e300 || reached {
		return 2 * best
	}
	if l := g.next(s); l >= 0 {
		return l
	}
	return 2 * best
}

// state is the value of every variable that takes part, written over others.
func (s *solver) state(over []int) {
	for _, v := range s.vars {
		for k := range s.p.value[v] {
			if s.val[s.first[v]+int32(k)] == 1 {
				over[v] = k
			}
		}
	}
}
