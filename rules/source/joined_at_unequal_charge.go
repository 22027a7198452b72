package source

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
)

var joinedAtUnequalCharge = &lint.Rule{
	ID:      "source/joined-at-unequal-charge",
	Claim:   "Like batteries that come together at different charge level out through the wire between them.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "battery",
	When: "A plug, a switch or a battery that lifts out can bring two like batteries onto one pair of wires, and with one full and the other empty more runs between them than the smallest " +
		"of what stands on the way is made for: a device, a plug, a contact, a battery's `charge_limit` or `discharge_limit`; or more than a conductor there carries with no " +
		"device that opens for it.",
	Why: "A spark in the hand and a blown fuse: caution. Where no device on the way is small enough for the wire, the lead itself burns: warning.",
	Numbers: "Rested full volts of one less empty volts of the other, over the low resistance of both and the way of least resistance between them, conductors at 20 C and joints at nothing. A lithium " +
		"iron phosphate pack stands at 13.6 V or at 11.0 V. Batteries are alike where their rested full volts are within 0.2 V.",
	Not: "Batteries that stand on one pair of wires in every state: nothing brings them together. Two that were brought within 0.1 V of each other first, which is a habit and not in a plan. " +
		"What a battery's own cut-off does in the first second. Batteries that differ are source/unlike-in-parallel.",
	Offer: "Both charged full before they are joined; a converter or limiter between the two; a selector or interlock by which they never meet; a device that guards the wire.",
	Meter: "Volts across the open plug or switch: under 0.1 V before it is closed.",
	Cites: []lint.Citation{
		{Ref: "battery makers' sheets", Standing: lint.FromMemory, Note: "packs in parallel are matched in voltage first"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "batteries are joined at equal voltage"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BreaksFirst, remedy.OneWayBetween},
	Since:  "0.1",
	Run:    unequals,
}

func unequals(p *lint.Pass) []lint.Verdict {
	found := map[int][]lint.Verdict{}
	for _, b := range banks(p.Net) {
		b.level(p, found)
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

// pairing is two stacks that meet in some states.
type pairing struct {
	a, b  stack
	times int             // in how many of the states
	views []*explore.View // one for each way in which contacts stand
	seen  map[string]bool
}

// level answers for the batteries of a bank: each by its worst meeting.
func (b *bank) level(p *lint.Pass, found map[int][]lint.Verdict) {
	if len(b.batteries) < 2 {
		return
	}
	views, complete := p.Space.Views(b.zone, p.Space.About(p.Space.Closed(explore.All())))
	worst := map[int]*meeting{}
	for _, x := range b.pairings(p.Net, views) {
		if x.times == len(views) && complete {
			continue // nothing brings them together
		}
		for _, v := range x.views {
			if m := meetingOf(p, v, x); m != nil {
				for _, i := range []int{x.a[0], x.b[0]} {
					if old := worst[i]; old == nil || m.before(old) {
						worst[i] = m
					}
				}
			}
		}
	}
	for _, i := range b.batteries {
		m := worst[i]
		switch {
		case m != nil && m.outcome != lint.Holds:
			found[i] = []lint.Verdict{m.verdict(p, i)}
		case !complete:
			found[i] = []lint.Verdict{lint.Unfinished(p.Net.Sources[i].Source, lint.Warning)}
		case m != nil:
			found[i] = []lint.Verdict{{Subject: p.Net.Sources[i].Source, Outcome: lint.Holds, Numbers: m.numbers}}
		}
	}
}

// pairings lists the stacks that meet, in order, each pair with the states in which it does.
func (b *bank) pairings(n *network.Network, views []*explore.View) []*pairing {
	var out []*pairing
	at := map[string]*pairing{}
	for _, v := range views {
		stacks, contacts := b.stacks(n, v), v.Contacts()
		for i, one := range stacks {
			for _, other := range stacks[:i] {
				if one.shares(other) || !meet(n, v, one.port(n), other.port(n)) {
					continue
				}
				key := fmt.Sprint(other, one)
				if at[key] == nil {
					at[key] = &pairing{a: other, b: one, seen: map[string]bool{}}
					out = append(out, at[key])
				}
				x := at[key]
				if x.times++; !x.seen[contacts] {
					x.seen[contacts] = true
					x.views = append(x.views, v)
				}
			}
		}
	}
	return out
}

// meeting is two like stacks brought together in one state.
type meeting struct {
	*pairing
	view    *explore.View
	outcome lint.Outcome
	word    lint.Severity
	state   []lint.Position
	missing []lint.Missing
	numbers []derive.Number
	told    string  // what is passed
	volts   float64 // of either, rested full
	current derive.Number
}

// before says whether a meeting is worse, or as bad and told by fewer positions.
func (m *meeting) before(o *meeting) bool {
	rank := func(m *meeting) int {
		return map[lint.Outcome]int{lint.Violated: 20, lint.NotProven: 10}[m.outcome] + int(m.word)
	}
	return rank(m) > rank(o) || rank(m) == rank(o) && len(m.state) < len(o.state)
}

// meetingOf judges one state; nil where the two are not alike.
func meetingOf(p *lint.Pass, v *explore.View, x *pairing) *meeting {
	va, la := x.a.rested(p)
	vb, lb := x.b.rested(p)
	differ, _ := x.a.otherNature(p, x.b)
	lacks := slices.Concat(la, lb)
	if differ || len(lacks) == 0 && math.Abs(va.Value-vb.Value) > voltsApart {
		return nil
	}
	m := &meeting{pairing: x, view: v, outcome: lint.Holds, word: lint.Caution, volts: va.Value}
	edges := leastWay(p, v, x.a.port(p.Net), x.b.port(p.Net))
	m.state = v.Witness(edges, append(append([]int{}, x.a...), x.b...)...)
	wire, open := p.Circuit.Loop(edges, circuit.Prospective)
	one, more := contactCurrent(p, x.a, x.b, wire)
	other, _ := contactCurrent(p, x.b, x.a, wire)
	if m.current = one; other.Value > one.Value {
		m.current = other
	}
	if lacks = append(lacks, more...); len(lacks) > 0 {
		m.outcome, m.missing, m.word = lint.NotProven, lacks, lint.Warning
		return m
	}
	m.against(p, edges, open)
	if t := v.Transit; m.outcome == lint.Violated && t != nil && t.Throw.Overlap && t.Throw.Assumed && onlyInOverlap(p.Net, v, edges) {
		m.outcome, m.missing = lint.NotProven, []lint.Missing{{Subject: p.Net.Vars[t.Var].Addr, Attribute: "transition"}}
	}
	if onlyMomentary(p, v, x.a.port(p.Net), x.b.port(p.Net)) {
		m.word = lint.Caution
	}
	return m
}

// against holds the current against everything on the way.
func (m *meeting) against(p *lint.Pass, edges []int, open []lint.Missing) {
	bars, lacks := barsOn(p, edges)
	for _, s := range []stack{m.a, m.b} {
		more, l := s.bars(p)
		bars, lacks = append(bars, more...), append(lacks, l...)
	}
	m.numbers = []derive.Number{m.current}
	if len(bars) > 0 {
		least := slices.MinFunc(bars, func(a, b bar) int { return cmp.Compare(a.most.Value, b.most.Value) })
		m.numbers = append(m.numbers, least.most)
		if m.current.Value > least.most.Value {
			m.outcome, m.told = lint.Violated, fmt.Sprintf("%s %s %s", lint.Quote(least.block), least.says, least.most.Text())
		}
	}
	if wire, iz := burning(p, edges, m.current.Value, m.volts); wire != nil {
		m.outcome, m.word = lint.Violated, lint.Warning
		m.numbers = append(m.numbers, iz)
		m.told = fmt.Sprintf("conductor %s carries %s, with no device on the way that opens for it", lint.Quote(wire), iz.Text())
	}
	switch {
	case m.outcome == lint.Violated && len(open) > 0:
		m.outcome, m.missing = lint.NotProven, open
	case m.outcome == lint.Holds && len(lacks) > 0:
		m.outcome, m.missing, m.word = lint.NotProven, lacks, lint.Caution
	}
}

func (m *meeting) verdict(p *lint.Pass, battery int) lint.Verdict {
	one, other := m.a, m.b
	if one[0] != battery {
		one, other = other, one
	}
	pair := []string{p.Net.Sources[one[0]].Addr, p.Net.Sources[other[0]].Addr}
	slices.Sort(pair)
	from := one.port(p.Net).Hot
	v := lint.Verdict{Subject: p.Net.Sources[battery].Source, Outcome: m.outcome, Word: m.word, State: m.state, Numbers: m.numbers, Missing: m.missing,
		Related: []string{p.Net.Sources[other[0]].Addr}, Cause: p.Net.Sources[other[0]].Addr, Group: strings.Join(pair, " "),
		Path: m.view.Places(from, m.view.Between(from, other.port(p.Net).Hot))}
	v.Message = fmt.Sprintf("%s and %s come together", m.a.name(p.Net), m.b.name(p.Net))
	if len(m.state) > 0 {
		v.Message += " with " + lint.Positions(p.Plan, m.state)
	}
	v.Message += "."
	if m.told != "" {
		v.Message += fmt.Sprintf(" With one full and the other empty up to %s run between them; %s.", m.current.Text(), m.told)
	}
	if m.outcome == lint.NotProven {
		v.Message += fmt.Sprintf(" Whether that is too much turns on %s, which is not written.", lint.Lacking(m.missing[0], true))
	}
	return v
}
