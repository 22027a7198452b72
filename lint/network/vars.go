package network

import (
	"slices"

	"ferrule/schema"
)

// MostPositions bounds the positions of one switch.
const MostPositions = 48

// makeVariables lists everything that has positions.
func (b *builder) makeVariables() {
	for _, x := range b.Plan.Sources {
		// What is part of a source comes and goes with it and has no presence of its own.
		comesAndGoes := x.Kind.Value != "battery" && !x.Always.True() || x.Removable.True()
		if comesAndGoes && !x.PartOf.Set {
			b.variable(Variable{Addr: x.Addr, Kind: SourceVar, Positions: []string{"absent", "present"}})
		}
	}
	for _, x := range b.Plan.Sources {
		if v := b.Var(x.PartOf.Addr); v >= 0 && x.PartOf.Set {
			b.vars[x.Addr] = v
		}
	}
	for _, x := range b.Plan.Connectors {
		if x.Mated.Value != "always" {
			b.variable(Variable{Addr: x.Addr, Kind: ConnectorVar, Positions: []string{"unmated", "mated"}})
		}
	}
	for _, x := range b.Plan.Switches {
		v := Variable{Addr: x.Addr, Kind: SwitchVar, Momentary: x.Momentary.True()}
		if len(x.Positions) > MostPositions {
			b.problem(x.Range, "Too many positions", "Switch %q has %d positions; up to %d are covered.", x.Named(), len(x.Positions), MostPositions)
		}
		for _, p := range positionsOf(x) {
			v.Positions = append(v.Positions, p.Name)
		}
		v.Throws = throwsOf(x)
		b.variable(v)
	}
	for _, x := range b.Plan.Connectors {
		b.follow(x.Addr, x.Follows, 1)
	}
	for _, x := range b.Plan.Switches {
		if x.Follows.Set {
			b.follow(x.Addr, x.Follows, b.closedPosition(x))
		}
	}
	b.cutFollowLoops()
}

func (b *builder) variable(v Variable) {
	b.vars[v.Addr] = len(b.Vars)
	b.Vars = append(b.Vars, v)
}

func (b *builder) follow(addr string, refs schema.Refs, closed int) {
	v := b.Var(addr)
	if v < 0 || !refs.Set {
		return
	}
	b.Vars[v].Follower, b.Vars[v].Closed, b.Vars[v].Throws = true, closed, nil
	for _, r := range refs.List {
		if f := b.Var(r.Addr); f >= 0 {
			b.Vars[v].Follows = append(b.Vars[v].Follows, f)
		}
	}
}

// closedPosition finds the one position of a following switch that joins something.
func (b *builder) closedPosition(x *schema.Switch) int {
	closed, open := -1, -1
	for i, p := range positionsOf(x) {
		switch {
		case len(p.Joins.Groups) == 0 && open < 0:
			open = i
		case len(p.Joins.Groups) > 0 && closed < 0:
			closed = i
		default:
			closed, open = -1, -1
		}
	}
	if closed < 0 || open < 0 {
		b.problem(x.Follows.Range, "A following switch has two positions",
			"Switch %q follows something, so it needs exactly two positions: one that joins nothing, for when it is released, and one that joins something.", x.Named())
		return 0
	}
	return closed
}

// cutFollowLoops reports followers that follow themselves, directly or round about.
func (b *builder) cutFollowLoops() {
	for i := range b.Vars {
		if v := &b.Vars[i]; v.Follower && b.follows(i, i, map[int]bool{}) {
			at := b.Plan.Block(v.Addr).Header().Range
			b.problem(at, "A part follows itself", "%s follows what follows it: its position is not defined.", v.Addr)
			v.Follower, v.Follows = false, nil
		}
	}
}

func (b *builder) follows(from, target int, seen map[int]bool) bool {
	for _, f := range b.Vars[from].Follows {
		if f == target {
			return true
		}
		if !seen[f] {
			seen[f] = true
			if b.follows(f, target, seen) {
				return true
			}
		}
	}
	return false
}

// positionsOf lists a switch's positions; one drawn without any has open and closed.
func positionsOf(x *schema.Switch) []*schema.Position {
	if len(x.Positions) > 0 {
		return x.Positions
	}
	closed := &schema.Position{Name: "closed", Range: x.Range}
	if len(x.Terminals.List) > 1 {
		closed.Joins.Groups = [][]schema.Text{x.Terminals.List}
	}
	return []*schema.Position{{Name: "open", Range: x.Range}, closed}
}

// contact is one pair of terminals with the positions that join it.
type contact struct {
	a, b string
	at   []bool
}

func contactsOf(x *schema.Switch) []*contact {
	ps := positionsOf(x)
	var out []*contact
	find := func(s, t string) *contact {
		for _, c := range out {
			if c.a == s && c.b == t {
				return c
			}
		}
		c := &contact{s, t, make([]bool, len(ps))}
		out = append(out, c)
		return c
	}
	often := joinedOften(x)
	for i, p := range ps {
		for _, g := range p.Joins.Groups {
			for _, pair := range bridged(x, g, often) {
				find(pair[0], pair[1]).at[i] = true
			}
		}
	}
	return out
}

// joinedOften counts the positions in which two terminals are of one group.
func joinedOften(x *schema.Switch) map[[2]string]int {
	out := map[[2]string]int{}
	for _, p := range positionsOf(x) {
		in := map[[2]string]bool{}
		for _, g := range p.Joins.Groups {
			for _, s := range g[:min(len(g), mostPaired)] {
				for _, t := range g[:min(len(g), mostPaired)] {
					in[[2]string{s.Value, t.Value}] = true
				}
			}
		}
		for k := range in {
			out[k]++
		}
	}
	return out
}

// mostPaired bounds the terminals of a group of which every pair is looked at: no switch that is made has more.
const mostPaired = 48

// bridged picks the contacts that join a group: first those that other positions close too, since they stay closed
// while the switch is thrown; the order in which the group is written says nothing.
func bridged(x *schema.Switch, g []schema.Text, often map[[2]string]int) [][2]string {
	var pairs [][2]string
	if len(g) > mostPaired {
		for i := range g[1:] {
			if g[i].Value != g[i+1].Value {
				pairs = append(pairs, [2]string{g[i].Value, g[i+1].Value})
			}
		}
		return pairs
	}
	in := map[string]bool{}
	for _, t := range g {
		in[t.Value] = true
	}
	for i, s := range x.Terminals.List {
		for _, t := range x.Terminals.List[i+1:] {
			if in[s.Value] && in[t.Value] && s.Value != t.Value {
				pairs = append(pairs, [2]string{s.Value, t.Value})
			}
		}
	}
	slices.SortStableFunc(pairs, func(a, b [2]string) int { return often[b] - often[a] })
	top := map[string]string{}
	root := func(s string) string {
		for top[s] != "" {
			s = top[s]
		}
		return s
	}
	return slices.DeleteFunc(pairs, func(p [2]string) bool {
		a, b := root(p[0]), root(p[1])
		if a != b {
			top[a] = b
		}
		return a == b
	})
}

// throwsOf lists the transits of a switch that join something that neither end position is:
// an on-off switch has none.
func throwsOf(x *schema.Switch) []Throw {
	ps, cs := positionsOf(x), contactsOf(x)
	var out []Throw
	for i := range ps {
		for j := i + 1; j < len(ps); j++ {
			if j > i+1 && !x.AnyOrder.True() {
				break
			}
			if !differs(cs, i, j) {
				continue
			}
			assumed := !x.Transition.Set
			if assumed || x.Transition.Value == "make-before-break" {
				out = append(out, Throw{i, j, true, assumed})
			}
			if assumed || x.Transition.Value == "break-before-make" {
				out = append(out, Throw{i, j, false, assumed})
			}
		}
	}
	return out
}

// differs says whether each of two positions closes a contact that the other leaves open: only then
// is the overlap, or the gap, a network that neither position is.
func differs(cs []*contact, i, j int) bool {
	var onlyI, onlyJ bool
	for _, c := range cs {
		onlyI = onlyI || c.at[i] && !c.at[j]
		onlyJ = onlyJ || c.at[j] && !c.at[i]
	}
	return onlyI && onlyJ
}

// whole is the condition under which a block is there at all.
func (b *builder) whole(x schema.Block) Condition {
	if v := b.presence(x); v >= 0 {
		return Condition{{Var: v, At: []bool{false, true}}}
	}
	return nil
}

func (b *builder) wholeOf(addr string) Condition {
	if x := b.Plan.Block(addr); x != nil {
		return b.whole(x)
	}
	return nil
}

// presence is the variable of the source that a block is part of, -1 where it is part of none.
func (b *builder) presence(x schema.Block) int {
	if r := x.Header().PartOf; r.Set && r.Addr != "" {
		return b.Var(r.Addr)
	}
	return -1
}
