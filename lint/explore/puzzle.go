package explore

import (
	"slices"

	"ferrule/lint/network"
)

// puzzle is the allowed states as a puzzle: the variables of the plan, each at one of its values, and
// combinations that cannot occur. A value is a position or, for a switch that is asked about, a
// throw; one throw at a time. A follower is a variable like any other: combinations tie it to what
// it follows. What is on its way must be allowed at both ends, so a throw counts as both end
// positions in a combination and in what is pinned. Nothing that is followed has throws.
type puzzle struct {
	net   *network.Network
	value [][]value // by variable
	rest  []bitset  // values that are positions
	open  []bitset  // values that may be taken at all
	never []rule
}

type value struct {
	at    int // a throw's first position
	throw *network.Throw
}

// term says that a variable stands at one of some values.
type term struct {
	v  int
	in bitset
}

// rule is a conjunction of terms, one a variable.
type rule []term

// puzzle sets up the whole plan under a choice. moving are the switches whose throws are states of
// their own.
func (s *Space) puzzle(c choice, moving []int) *puzzle {
	p := &puzzle{net: s.Net}
	throws := make([]bool, len(s.Net.Vars))
	for _, v := range moving {
		throws[v] = true
	}
	for v := range s.Net.Vars {
		p.values(c, v, throws[v])
	}
	for _, x := range s.never {
		if r := p.combination(x); r != nil {
			p.never = append(p.never, r)
		}
	}
	for v := range s.Net.Vars {
		p.follow(v)
	}
	return p
}

func (p *puzzle) values(c choice, v int, throws bool) {
	x := &p.net.Vars[v]
	at, pinned := c[v]
	list := make([]value, 0, len(x.Positions)+len(x.Throws))
	for i := range x.Positions {
		list = append(list, value{at: i})
	}
	for i := range x.Throws {
		if throws {
			list = append(list, value{x.Throws[i].From, &x.Throws[i]})
		}
	}
	rest, open := newBitset(len(list)), newBitset(len(list))
	for i, k := range list {
		if k.throw == nil {
			rest.add(i)
		}
		if !pinned || at[k.at] && (k.throw == nil || at[k.throw.To]) {
			open.add(i)
		}
	}
	p.value, p.rest, p.open = append(p.value, list), append(p.rest, rest), append(p.open, open)
}

// combination translates an interlock's; nil where it asks for two positions of one part at once.
func (p *puzzle) combination(c combo) rule {
	var out rule
	for i, v := range c.vars {
		if k := slices.Index(c.vars[:i], v); k >= 0 {
			if c.at[k] != c.at[i] {
				return nil
			}
			continue
		}
		out = append(out, p.where(v, func(k value) bool {
			return k.at == c.at[i] || k.throw != nil && k.throw.To == c.at[i]
		}))
	}
	return out
}

func (p *puzzle) where(v int, is func(value) bool) term {
	t := term{v, newBitset(len(p.value[v]))}
	for i, k := range p.value[v] {
		if is(k) {
			t.in.add(i)
		}
	}
	return t
}

// follow ties a follower to what it follows: closed exactly while all of it is there.
func (p *puzzle) follow(v int) {
	x := &p.net.Vars[v]
	if !x.Follower {
		return
	}
	all := rule{p.where(v, func(k value) bool { return k.at != x.Closed })}
	for _, f := range x.Follows {
		there := closedAt(p.net, f)
		if !slices.ContainsFunc(all, func(t term) bool { return t.v == f }) {
			all = append(all, p.where(f, func(k value) bool { return k.at == there }))
			p.never = append(p.never, rule{
				p.where(v, func(k value) bool { return k.at != 1-x.Closed }),
				p.where(f, func(k value) bool { return k.at != there }),
			})
		}
	}
	p.never = append(p.never, all)
}

// closedAt is the position of a followed variable that counts as there: present, mated.
func closedAt(n *network.Network, v int) int {
	if x := &n.Vars[v]; x.Follower {
		return x.Closed
	}
	return 1
}

// condition translates an edge's, one term a variable.
func (p *puzzle) condition(when network.Condition) rule {
	out := make(rule, 0, len(when))
	for _, l := range when {
		t := p.where(l.Var, func(k value) bool { return k.meets(l.At) })
		if i := slices.IndexFunc(out, func(o term) bool { return o.v == t.v }); i >= 0 {
			out[i].in = out[i].in.and(t.in)
		} else {
			out = append(out, t)
		}
	}
	return out
}

// meets: in an overlap either end position will do, in a gap both must.
func (k value) meets(at []bool) bool {
	switch {
	case k.throw == nil:
		return at[k.at]
	case k.throw.Overlap:
		return at[k.throw.From] || at[k.throw.To]
	}
	return at[k.throw.From] && at[k.throw.To]
}

// present is the term of what comes and goes with a variable.
func (p *puzzle) present(v int) term {
	return p.where(v, func(k value) bool { return k.at == 1 })
}
