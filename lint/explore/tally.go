package explore

import (
	"encoding/binary"
	"math/big"
	"slices"
)

// mostTally bounds one count: variables of the parts it looks at, added up.
const mostTally = 1 << 18

// tally counts the solutions of a puzzle, or the different answers that its solutions give to some
// questions, without listing them. It splits on one combination or question at a time, counts parts
// that have nothing to do with each other on their own, and remembers what it has counted.
//
// A question is a rule: its answer is whether all its terms hold. Answered yes, it narrows the
// values of its variables; answered no, it is one more combination that cannot occur.
type tally struct {
	p     *puzzle
	dom   []bitset
	items []clue
	of    [][]use // items by variable
	all   bool    // count assignments, not answers
	known map[string]pair
	left  int
	stop  func() bool
}

type clue struct {
	rule
	mode mode
}

// use is one term of one item.
type use struct{ item, term int }

type mode byte

const (
	done   mode = iota
	never       // not all terms may hold
	asking      // a question without an answer
)

// pair is a count over resting states, and one over states with at most one switch on its way.
type pair struct{ rest, any *big.Int }

func pairOf(rest, any int) pair { return pair{big.NewInt(int64(rest)), big.NewInt(int64(any))} }

// beside joins parts that have nothing to do with each other; only one of them may have a throw.
func (a pair) beside(b pair) pair {
	x := func(m, n *big.Int) *big.Int { return new(big.Int).Mul(m, n) }
	out := pair{x(a.rest, b.rest), x(a.any, b.rest)}
	out.any.Add(out.any, x(a.rest, b.any))
	out.any.Sub(out.any, out.rest)
	return out
}

// or joins two ways to split one part; as says that only existence counts.
func (a pair) or(b pair, exists bool) pair {
	out := pair{new(big.Int).Add(a.rest, b.rest), new(big.Int).Add(a.any, b.any)}
	if one := big.NewInt(1); exists {
		for _, n := range []*big.Int{out.rest, out.any} {
			if n.Cmp(one) > 0 {
				n.Set(one)
			}
		}
	}
	return out
}

func (s *Space) tally(p *puzzle, questions []rule) *tally {
	t := &tally{p: p, dom: slices.Clone(p.open), of: make([][]use, len(p.value)), known: map[string]pair{}, left: mostTally, stop: s.Stop}
	for _, r := range p.never {
		t.items = append(t.items, clue{r, never})
	}
	seen := map[string]bool{}
	for _, r := range questions {
		if k := ruleKey(r); !seen[k] {
			seen[k] = true
			t.items = append(t.items, clue{r, asking})
		}
	}
	for i, x := range t.items {
		for k, y := range x.rule {
			t.of[y.v] = append(t.of[y.v], use{i, k})
		}
	}
	return t
}

func ruleKey(r rule) string {
	var b []byte
	for _, t := range r {
		b = binary.AppendUvarint(b, uint64(t.v))
		for _, w := range t.in {
			b = binary.AppendUvarint(b, w)
		}
	}
	return string(b)
}

// count is the answer; ok is false where the budget or the caller ended it.
func (t *tally) count() (n pair, ok bool) {
	vars := make([]int, len(t.dom))
	for v := range vars {
		vars[v] = v
	}
	n = t.solve(vars)
	return n, t.left > 0
}

// solve counts the part of the puzzle that some variables make up, from the values still open.
func (t *tally) solve(vars []int) pair {
	var undo trail
	defer undo.back(t)
	if !t.settle(vars, &undo) {
		return pairOf(0, 0)
	}
	out := pairOf(1, 1)
	for _, part := range t.parts(vars) {
		n := t.part(part)
		if n.any.Sign() == 0 {
			return n
		}
		out = out.beside(n)
	}
	return out
}

func (t *tally) part(vars []int) pair {
	split := t.split(vars)
	if split < 0 {
		return t.single(vars[0])
	}
	k := t.key(vars)
	if n, ok := t.known[k]; ok {
		return n
	}
	if t.left -= len(vars); t.left <= 0 || len(t.known)%1024 == 1023 && t.stop != nil && t.stop() {
		t.left = 0
		return pairOf(0, 0)
	}
	n := t.either(vars, split)
	t.known[k] = n
	return n
}

// single counts a variable that nothing ties to another any more.
func (t *tally) single(v int) pair {
	rest, any := t.dom[v].and(t.p.rest[v]).count(), t.dom[v].count()
	if !t.all {
		rest, any = min(rest, 1), min(any, 1)
	}
	return pairOf(rest, any)
}

// split picks what to split on: a question first, since only answers are counted; then what is
// closest to being decided. -1 where nothing is left.
func (t *tally) split(vars []int) int {
	best, least := -1, 0
	for _, v := range vars {
		for _, u := range t.of[v] {
			i, x := u.item, &t.items[u.item]
			if !t.free(v, u) {
				continue
			}
			free := 0
			for _, y := range x.rule {
				if !t.dom[y.v].within(y.in) {
					free++
				}
			}
			if x.mode == never {
				free += len(t.dom) + 1
			}
			// Among equals, the one whose variable has most to do with others.
			if free = free<<16 - len(t.of[v]); best < 0 || free < least {
				best, least = i, free
			}
		}
	}
	return best
}

// either splits a part in two that exclude each other and counts both.
func (t *tally) either(vars []int, i int) pair {
	x := &t.items[i]
	if x.mode == asking {
		var undo trail
		undo.mode(t, i, done)
		for _, y := range x.rule {
			undo.dom(t, y.v, t.dom[y.v].and(y.in))
		}
		yes := t.solve(vars)
		undo.back(t)
		undo.mode(t, i, never)
		no := t.solve(vars)
		undo.back(t)
		return yes.or(no, false)
	}
	at := slices.IndexFunc(x.rule, func(y term) bool { return !t.dom[y.v].within(y.in) })
	v, in, was := x.rule[at].v, x.rule[at].in, t.dom[x.rule[at].v]
	t.dom[v] = was.and(in)
	yes := t.solve(vars)
	t.dom[v] = was.less(in)
	no := t.solve(vars)
	t.dom[v] = was
	return yes.or(no, !t.all)
}
