package source

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/remedy"
)

var unlikeInParallel = &lint.Rule{
	ID:      "source/unlike-in-parallel",
	Claim:   "A position joins batteries that must not be joined.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Caution},
	Subject: "battery",
	When: "In some state, the blink between two positions of a selector included, two batteries, or strings of them, lie on one pair of wires through less than " +
		"0.2 ohm while their rested full voltages are more than 0.2 V apart.",
	Why: "The fuller battery drives tens to hundreds of amperes into the other, through wire sized for a load: hence warning. Where the nominal voltages differ it is " +
		"a short circuit through a battery: hence danger. A momentary cross-connection for an emergency start is a caution: a hand is on it, and lets go.",
	Numbers: "Rested full voltages by chemistry and cells, so that like batteries never differ. The current is the higher one rested full against the lower one empty, " +
		"through the low resistance of both and the way of least resistance between them, conductors at 20 C and joints at nothing. A conductor without size or length counts " +
		"as no resistance. Nominal voltages differ where one is a quarter more than the other.",
	Not: "Like batteries at unequal charge. Batteries of one chemistry but different age or capacity. Batteries in series, which are no parallel; a string drawn as blocks is " +
		"compared as a whole. A battery that any converter or diode stands before. Batteries whose positive is drawn on the return side.",
	Offer: "A dc-dc converter between the two; a selector without a position that joins both, break-before-make; an interlock.",
	Meter: "Rested volts of each before they are joined; a clamp on the wire at first contact.",
	Cites: []lint.Citation{
		{Ref: "magazine article on banks of lithium beside lead-acid", Standing: lint.Read, Note: "they do not share charge or load"},
		{Ref: "ABYC E-13", Standing: lint.FromMemory, For: []string{"us-boat"}, Note: "lithium batteries on boats"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "unlike batteries are kept apart by a converter"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BreaksFirst, remedy.OneWayBetween, remedy.WithoutPosition},
	Folds:  []string{"source/joined-at-unequal-charge", "charging/wrong-voltage", "charging/drains-starting-battery"},
	Since:  "0.1",
	Run:    unlikes,
}

const sameWires = 0.2 // ohm

func unlikes(p *lint.Pass) []lint.Verdict {
	found := map[int][]lint.Verdict{}
	for _, b := range banks(p.Net) {
		b.judge(p, found)
	}
	var out []lint.Verdict
	for i := range p.Net.Sources {
		s := p.Net.Sources[i].Source
		switch {
		case s.Kind.Value != "battery":
		case len(found[i]) > 0:
			out = append(out, found[i]...)
		default:
			out = append(out, lint.Verdict{Subject: s, Outcome: lint.Holds})
		}
	}
	return out
}

// judge answers for every battery of a bank: its worst clash, and its worst that is not proven.
func (b *bank) judge(p *lint.Pass, found map[int][]lint.Verdict) {
	if len(b.batteries) < 2 {
		return
	}
	views, complete := p.Space.Views(b.zone, p.Space.About(p.Space.Closed(explore.All())))
	if !complete && len(views) == 0 { // interlocks left none of those that were listed
		views, _ = p.Space.Sought(b.zone, explore.All(), nil, func(*explore.View) bool { return true })
	}
	if !complete && len(views) > 0 {
		views, complete = b.sought(p, views)
	}
	sure, unsure, like := map[int]*clash{}, map[int]*clash{}, map[int][]derive.Number{}
	for _, v := range views {
		stacks := b.stacks(p.Net, v)
		for i, one := range stacks {
			for _, other := range stacks[:i] {
				if one.shares(other) || !meet(p.Net, v, one.port(p.Net), other.port(p.Net)) {
					continue
				}
				c := clashOf(p, v, other, one)
				for _, s := range []stack{one, other} {
					keep(c, s[0], sure, unsure, like)
				}
			}
		}
	}
	for _, i := range b.batteries {
		if c := sure[i]; c != nil {
			found[i] = append(found[i], c.verdict(p, i))
		}
		if c := unsure[i]; c != nil {
			found[i] = append(found[i], c.verdict(p, i))
		}
		switch {
		case len(found[i]) > 0:
		case !complete:
			found[i] = []lint.Verdict{lint.Unfinished(p.Net.Sources[i].Source, lint.Danger)}
		default:
			found[i] = []lint.Verdict{{Subject: p.Net.Sources[i].Source, Outcome: lint.Holds, Numbers: like[i]}}
		}
	}
}

// sought looks where the bound has cut the list for a state in which two batteries meet, pair by pair.
// Strings of blocks are not sought: where any can be, the list stays cut.
func (b *bank) sought(p *lint.Pass, views []*explore.View) ([]*explore.View, bool) {
	complete := true
	for _, s := range b.stacks(p.Net, views[0].Loosen(b.zone.Vars...)) {
		complete = complete && len(s) == 1
	}
	for k, i := range b.batteries {
		for _, j := range b.batteries[:k] {
			one, other := p.Net.Sources[i].Port, p.Net.Sources[j].Port
			more, known := p.Space.Sought(b.zone, explore.All(), views, func(v *explore.View) bool {
				if !v.HasSource(i) || !v.HasSource(j) || !meet(p.Net, v, one, other) {
					return false
				}
				wire, _ := p.Circuit.Loop(leastWay(p, v, one, other), circuit.Prospective)
				return wire.Value < sameWires
			})
			views, complete = more, complete && known
		}
	}
	return views, complete
}

// clash is two stacks on one pair of wires.
type clash struct {
	view    *explore.View
	a, b    stack
	word    lint.Severity // 0 where they are alike
	missing []lint.Missing
	state   []lint.Position
	numbers []derive.Number
	edges   []int
	current derive.Number
}

// keep notes a clash for a battery where it is worse than what was found, or told by fewer positions.
func keep(c *clash, battery int, sure, unsure map[int]*clash, like map[int][]derive.Number) {
	at := sure
	switch {
	case c == nil:
		return
	case c.word == 0:
		like[battery] = c.numbers
		return
	case len(c.missing) > 0:
		at = unsure
	}
	if old := at[battery]; old == nil || c.word > old.word || c.word == old.word && len(c.state) < len(old.state) {
		at[battery] = c
	}
}

// clashOf judges two stacks that meet; nil where too much wire lies between them.
func clashOf(p *lint.Pass, v *explore.View, a, b stack) *clash {
	va, la := a.rested(p)
	vb, lb := b.rested(p)
	c := &clash{view: v, a: a, b: b, word: lint.Warning, numbers: []derive.Number{va, vb}}
	lacks := append(la, lb...)
	differ, stated := a.otherNature(p, b)
	if len(lacks) == 0 && math.Abs(va.Value-vb.Value) <= voltsApart {
		c.word = 0
		return c
	}
	if differ || !stated {
		c.word = lint.Danger
	}
	if len(lacks) > 0 {
		c.numbers = nil
		if !differ {
			c.missing = lacks
		}
	}
	c.edges = leastWay(p, v, a.port(p.Net), b.port(p.Net))
	wire, open := p.Circuit.Loop(c.edges, circuit.Prospective)
	if wire.Value >= sameWires {
		return nil
	}
	if c.word == lint.Warning && onlyMomentary(p, v, a.port(p.Net), b.port(p.Net)) {
		c.word = lint.Caution
	}
	if t := v.Transit; t != nil && t.Throw.Overlap && t.Throw.Assumed && onlyInOverlap(p.Net, v, c.edges) {
		c.missing = append(c.missing, lint.Missing{Subject: p.Net.Vars[t.Var].Addr, Attribute: "transition"})
	}
	if len(lacks) == 0 && len(open) == 0 {
		c.firstContact(p, wire)
	}
	c.state = v.Witness(c.edges, append(append([]int{}, a...), b...)...)
	return c
}

// firstContact works out the current: the higher stack rested full against the lower one empty.
func (c *clash) firstContact(p *lint.Pass, wire derive.Number) {
	high, low := c.a, c.b
	if c.numbers[0].Value < c.numbers[1].Value {
		high, low = low, high
	}
	if n, lacks := contactCurrent(p, high, low, wire); len(lacks) == 0 {
		c.current = n
		c.numbers = append(c.numbers, n)
	}
}

func (c *clash) verdict(p *lint.Pass, battery int) lint.Verdict {
	one, other := c.a, c.b
	if one[0] != battery {
		one, other = other, one
	}
	pair := []string{p.Net.Sources[one[0]].Addr, p.Net.Sources[other[0]].Addr}
	slices.Sort(pair)
	v := lint.Verdict{Subject: p.Net.Sources[battery].Source, Outcome: lint.Violated, Word: c.word, State: c.state, Numbers: c.numbers,
		Related: []string{p.Net.Sources[other[0]].Addr}, Cause: p.Net.Sources[other[0]].Addr, Group: strings.Join(pair, " ")}
	v.Path = c.view.Places(one.port(p.Net).Hot, c.view.Between(one.port(p.Net).Hot, other.port(p.Net).Hot))
	v.Message = fmt.Sprintf("%s and %s are joined", c.told(p, c.a, 0), c.told(p, c.b, 1))
	if len(c.state) > 0 {
		v.Message += " with " + lint.Positions(p.Plan, c.state)
	}
	v.Message += "."
	if c.current.Kind != 0 {
		v.Message += fmt.Sprintf(" At first contact up to %s run between them.", c.current.Text())
	}
	if len(c.missing) > 0 {
		v.Outcome, v.Missing = lint.NotProven, c.missing
		v.Message += fmt.Sprintf(" Whether they really meet unlike turns on %s, which is not written.", lint.Lacking(c.missing[0], true))
	}
	return v
}

// told names a stack with its voltage where that is known.
func (c *clash) told(p *lint.Pass, s stack, at int) string {
	if len(c.numbers) < 2 {
		return s.name(p.Net)
	}
	return fmt.Sprintf("%s (%s rested full)", s.name(p.Net), c.numbers[at].Text())
}
