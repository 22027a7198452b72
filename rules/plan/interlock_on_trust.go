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
		"where it says that nobody is), and a rule then finds a warning or a danger that it did not find before, or no longer proves that there is none. One at a time; where none alone shows anything, all together.",
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
	t := &trust{p, ran, before(ran, lint.Violated), before(ran, lint.NotProven)}
	together := t.without(doubted...)
	alone := false
	for i, b := range doubted {
		v := lint.Verdict{Subject: b, Outcome: lint.Holds}
		switch {
		case len(together.new)+len(together.open) == 0 && !together.unfinished:
		case i >= mostTrusted:
			v = lint.Unfinished(b, lint.Warning)
		default:
			v = t.verdict(b, t.without(b), "")
		}
		alone = alone || v.Outcome != lint.Holds
		out = append(out, v)
	}
	if len(together.new)+len(together.open) > 0 && !alone {
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

// trust asks what appears when the plan is not relied on.
type trust struct {
	p      *lint.Pass
	ran    *lint.Ran
	before map[asked]lint.Severity // violated
	open   map[asked]lint.Severity // not proven
}

// before is the word with which each rule answers so of each part.
func before(ran *lint.Ran, outcome lint.Outcome) map[asked]lint.Severity {
	out := map[asked]lint.Severity{}
	for _, r := range ran.Rules {
		for _, v := range ran.Verdicts[r.ID] {
			if k := (asked{r.ID, v.Subject.Header().Addr}); v.Outcome == outcome {
				out[k] = max(out[k], v.Word)
			}
		}
	}
	return out
}

// appeared is a finding that was not there before.
type appeared struct {
	rule string
	lint.Verdict
}

type appearing struct {
	new        []appeared // the gravest first
	open       []appeared // not proven, likewise
	unfinished bool
}

func (t *trust) without(blocks ...schema.Block) appearing {
	var out appearing
	after := t.ran.Without(lint.Warning, blocks...)
	for _, r := range t.ran.Rules {
		for _, v := range after[r.ID] {
			k := asked{r.ID, v.Subject.Header().Addr}
			switch {
			case v.Outcome == lint.Violated && v.Word >= lint.Warning && v.Word > t.before[k]:
				out.new = append(out.new, appeared{r.ID, v})
			case v.Outcome == lint.NotProven && slices.Contains(v.Missing, lint.Missing{Subject: "plan", Attribute: "states"}):
				out.unfinished = true
			case v.Outcome == lint.NotProven && v.Word >= lint.Warning && v.Word > max(t.before[k], t.open[k]):
				out.open = append(out.open, appeared{r.ID, v})
			}
		}
	}
	for _, list := range [][]appeared{out.new, out.open} {
		slices.SortStableFunc(list, func(a, b appeared) int { return int(b.Word) - int(a.Word) })
	}
	return out
}

func (t *trust) verdict(b schema.Block, a appearing, beside string) lint.Verdict {
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: lint.Warning}
	if len(a.new) == 0 {
		switch {
		case a.unfinished:
			return lint.Unfinished(b, lint.Warning)
		case len(a.open) > 0:
			return doubtful(b, a.open, beside)
		}
		return v
	}
	worst := a.new[0]
	v.Outcome, v.Word, v.State = lint.Violated, max(worst.Word-1, lint.Caution), worst.State
	for _, x := range a.new {
		if addr := x.Subject.Header().Addr; !slices.Contains(v.Related, addr) {
			v.Related = append(v.Related, addr)
		}
	}
	more := ""
	if n := len(a.new) - 1; n > 0 {
		more = fmt.Sprintf(", and %d more", n)
	}
	v.Message = fmt.Sprintf("Only trust in %s%s keeps away a %s: %s of %s%s. %s", lint.Quote(b), beside, worst.Word, worst.rule, lint.Quote(worst.Subject), more, worst.Message)
	if !by(b).Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.Header().Addr, Attribute: "by"}}
		v.Message = fmt.Sprintf("Without %s%s there is a %s: %s of %s%s. Whether hardware or somebody's habit does it is not written.", lint.Quote(b), beside, worst.Word, worst.rule, lint.Quote(worst.Subject), more)
	}
	return v
}

// doubtful tells of a part without which a rule would no longer be known to hold.
func doubtful(b schema.Block, open []appeared, beside string) lint.Verdict {
	worst := open[0]
	return lint.Verdict{Subject: b, Outcome: lint.NotProven, Word: max(worst.Word-1, lint.Caution), State: worst.State, Missing: worst.Missing,
		Related: []string{worst.Subject.Header().Addr},
		Message: fmt.Sprintf("Without %s%s %s of %s is not shown to hold. %s", lint.Quote(b), beside, worst.rule, lint.Quote(worst.Subject), worst.Message)}
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
