package plan

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/schema"
)

var interlockOnTrust = &lint.Rule{
	ID:      "plan/interlock-on-trust",
	Claim:   "Safety rests on somebody remembering.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Harm:    true,
	Subject: "interlock; mode",
	When: "An interlock whose `by` is habit is taken away, or a mode that is not `by = \"hardware\"` is not relied on (a source that it pins as present may be absent, people may be aboard " +
		"where it says that nobody is), and a rule then finds a warning or a danger that it did not find before, or can no longer show that there is none. One at a time; where none alone shows anything, all together.",
	Why:     "Habits fail on the tired day, and nobody borrows them with the trailer. The word is one less than that of the worst finding that appears, and never below caution.",
	Numbers: "None. Every rule is asked again over the states that this adds.",
	Not: "Hardware: slides, keyed connectors, relays whose coil the other supply feeds. What would appear below a warning. Switches that a mode pins: where they can be reached they may stand " +
		"anywhere already. Positions of connectors and absent sources that make a mode what it is. More than eight interlocks and modes on trust are not told apart.",
	Offer:  "A selector, a keyed connector or a relay that cannot make both.",
	Meter:  "With every source off and unplugged: try to make both at once.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "what must never happen is kept from happening by hardware"}},
	Remedy: true,
	Since:  "0.1",
	Review: trusted,
}

const mostTrusted = 8 // interlocks and modes that are taken away one by one

func trusted(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
	var out []lint.Verdict
	var doubted []schema.Block
	for _, x := range p.Plan.Interlocks {
		if x.By.Value != "hardware" && x.Never.Set {
			doubted = append(doubted, x)
		} else {
			out = append(out, lint.Verdict{Subject: x, Outcome: lint.Holds})
		}
	}
	for _, m := range p.Plan.Modes {
		if m.By.Value != "hardware" && excuses(m) {
			doubted = append(doubted, m)
		} else {
			out = append(out, lint.Verdict{Subject: m, Outcome: lint.Holds})
		}
	}
	if len(doubted) == 0 {
		return out
	}
	t := &trust{p, ran, before(ran)}
	together := t.without(doubted...)
	alone := false
	for i, b := range doubted {
		v := lint.Verdict{Subject: b, Outcome: lint.Holds}
		switch {
		case together.nothing():
		case i >= mostTrusted:
			v = lint.Unfinished(b, lint.Warning)
		default:
			v = t.verdict(b, t.without(b), "")
		}
		alone = alone || v.Outcome != lint.Holds
		out = append(out, v)
	}
	if !together.nothing() && !alone && len(doubted) > 1 {
		v := t.verdict(doubted[0], together, fmt.Sprintf(" (%d more go with it)", len(doubted)-1))
		at := slices.IndexFunc(out, func(v lint.Verdict) bool { return v.Subject == doubted[0] })
		out[at] = v
	}
	return out
}

// excuses says whether a mode can excuse a state: it pins a source as present, or has nobody aboard.
func excuses(m *schema.Mode) bool {
	return m.Occupied.False() || slices.ContainsFunc(m.State.List, func(x schema.Pin) bool { return x.Position.Value == "present" })
}

func by(b schema.Block) schema.Text {
	switch x := b.(type) {
	case *schema.Interlock:
		return x.By
	case *schema.Mode:
		return x.By
	}
	return schema.Text{}
}
