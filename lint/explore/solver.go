package explore

// solver finds a state of some variables of a puzzle that reaches a goal, or shows that there is none.
// Each value of a variable is a proposition; exactly one of a variable is true. It decides one
// proposition after another, follows up what each implies, and from every dead end it learns a
// clause that keeps it from this and all like it (conflict-driven clause learning). The goal adds
// clauses of its own as they come to matter: what has to change before it can be reached.
//
// A literal is twice a proposition where it is true, one more where it is false.
type solver struct {
	p     *puzzle
	vars  []int
	first []int32    // proposition of a variable's first value, -1 where the variable takes no part
	owner []int32    // index into group, by proposition
	group [][2]int32 // propositions from and to, by variable that takes part; the last says what moves
	dom   []bitset   // values still possible, by variable of the plan

	clauses [][]int32
	watch   [][]int32 // clauses by literal that they wait for to become false
	val     []int8    // 1 true, -1 false, by proposition
	level   []int32
	reason  []int32 // clause; -1 none; -2-p: proposition p of the same group is true
	trail   []int32
	starts  []int // of levels, in the trail
	head    int
	heat    []float64
	step    float64
	seen    []bool
	dead    bool // the clauses contradict each other

	left     int // conflicts that may still be met
	work     int // propositions that may still be looked at to decide
	examined int
	stop     func() bool
	asked    int // decisions, to ask stop now and then
}

// goal judges what a solver has decided so far.
type goal interface {
	// look says whether all states that are still possible reach the goal, none, or neither is known
	// yet. For none it gives the literals, all false now, of which one must come true first; nil where
	// it cannot tell, and what was decided stands for them.
	look(*solver) (Truth, []int32)
	// next is a literal to try, -1 for no preference.
	next(*solver) int32
}

// mostConflicts bounds the dead ends of one search.
const mostConflicts = 1 << 13

// mostWork bounds what deciding costs in plans that are made to be large.
const mostWork = 1 << 28

func newSolver(p *puzzle, vars []int, stop func() bool) *solver {
	s := &solver{p: p, vars: vars, first: make([]int32, len(p.value)), dom: make([]bitset, len(p.value)), step: 1, left: mostConflicts, work: mostWork, stop: stop}
	for v := range s.first {
		s.first[v] = -1
	}
	for _, v := range vars {
		s.first[v] = s.props(len(p.value[v]))
		s.dom[v] = newBitset(len(p.value[v]))
		for i := range p.value[v] {
			s.dom[v].add(i)
		}
	}
	still := s.moving()
	for _, v := range vars {
		s.pin(v)
	}
	for _, r := range p.never {
		if s.first[r[0].v] >= 0 {
			s.add(s.none(r))
		}
	}
	if still >= 0 && !s.dead {
		s.heat[still] = 1e300 // states at rest first
	}
	return s
}

// props adds a variable of some values.
func (s *solver) props(n int) int32 {
	from := int32(len(s.val))
	for range n {
		s.owner = append(s.owner, int32(len(s.group)))
	}
	s.group = append(s.group, [2]int32{from, from + int32(n)})
	s.val = append(s.val, make([]int8, n)...)
	s.level = append(s.level, make([]int32, n)...)
	s.reason = append(s.reason, make([]int32, n)...)
	s.heat = append(s.heat, make([]float64, n)...)
	s.seen = append(s.seen, make([]bool, n)...)
	s.watch = append(s.watch, make([][]int32, 2*n)...)
	return from
}

// moving adds what is on its way as one more variable: nothing, or one of the switches.
func (s *solver) moving() (still int32) {
	var movers []int
	for _, v := range s.vars {
		if s.p.rest[v].count() < len(s.p.value[v]) {
			movers = append(movers, v)
		}
	}
	if len(movers) == 0 {
		return -1
	}
	still = s.props(1 + len(movers))
	for i, v := range movers {
		for k := range s.p.value[v] {
			if !s.p.rest[v].has(k) {
				s.add([]int32{2*(s.first[v]+int32(k)) + 1, 2 * (still + 1 + int32(i))})
			}
		}
	}
	return still
}

// pin rules out the values that may not be taken, and asks for one of the others.
func (s *solver) pin(v int) {
	var some []int32
	for k := range s.p.value[v] {
		if b := s.first[v] + int32(k); s.p.open[v].has(k) {
			some = append(some, 2*b)
		} else {
			s.add([]int32{2*b + 1})
		}
	}
	s.add(some)
}

// none is the clause that not all terms of a rule hold.
func (s *solver) none(r rule) []int32 {
	var out []int32
	for _, t := range r {
		out = s.outside(out, t)
	}
	return out
}

// outside adds the literals of which one comes true where a term does not hold.
func (s *solver) outside(out []int32, t term) []int32 {
	for k := range s.p.value[t.v] {
		if !t.in.has(k) && s.p.open[t.v].has(k) {
			out = append(out, 2*(s.first[t.v]+int32(k)))
		}
	}
	return out
}

// inside adds the literals of which one comes true where a term holds.
func (s *solver) inside(out []int32, t term) []int32 {
	for k := range s.p.value[t.v] {
		if t.in.has(k) && s.p.open[t.v].has(k) {
			out = append(out, 2*(s.first[t.v]+int32(k)))
		}
	}
	return out
}

// truth is 1 for a literal that is true, -1 for one that is false, 0 for neither.
func (s *solver) truth(l int32) int8 {
	if l&1 == 1 {
		return -s.val[l>>1]
	}
	return s.val[l>>1]
}

// add takes a clause in before anything is decided.
func (s *solver) add(c []int32) {
	kept := make([]int32, 0, len(c))
	for _, l := range c {
		switch s.truth(l) {
		case 1:
			return
		case 0:
			kept = append(kept, l)
		}
	}
	switch len(kept) {
	case 0:
		s.dead = true
	case 1:
		s.put(kept[0], -1)
		_, bad := s.follow()
		s.dead = s.dead || bad
	default:
		s.attach(kept)
	}
}

func (s *solver) attach(c []int32) int32 {
	at := int32(len(s.clauses))
	s.clauses = append(s.clauses, c)
	for _, l := range c[:2] {
		s.watch[l] = append(s.watch[l], at)
	}
	return at
}

// put makes a literal true.
func (s *solver) put(l, why int32) {
	b := l >> 1
	s.val[b], s.level[b], s.reason[b] = 1, int32(len(s.starts)), why
	if l&1 == 1 {
		s.val[b] = -1
		s.mark(b, false)
	}
	s.trail = append(s.trail, l)
}

// mark keeps the sets of values that are still possible.
func (s *solver) mark(b int32, possible bool) {
	g := s.owner[b]
	if int(g) >= len(s.vars) {
		return
	}
	v, k := s.vars[g], b-s.group[g][0]
	if possible {
		s.dom[v][k/64] |= 1 << (k % 64)
	} else {
		s.dom[v][k/64] &^= 1 << (k % 64)
	}
}

// back takes back all decisions above a level.
func (s *solver) back(level int) {
	if len(s.starts) <= level {
		return
	}
	from := s.starts[level]
	for i := len(s.trail) - 1; i >= from; i-- {
		l := s.trail[i]
		s.val[l>>1] = 0
		if l&1 == 1 {
			s.mark(l>>1, true)
		}
	}
	s.trail, s.starts, s.head = s.trail[:from], s.starts[:level], from
}
