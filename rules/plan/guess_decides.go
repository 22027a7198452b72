package plan

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var guessDecides = &lint.Rule{
	ID:      "plan/guess-decides",
	Claim:   "A verdict turns on a figure that was assumed.",
	Words:   []lint.Severity{lint.Notice},
	Subject: "system or battery whose figure was assumed",
	When: "An assumed figure that some verdict rests on is moved to the ends of what it may be, and a rule then answers otherwise than before where the answer " +
		"before or after counts as a warning or more. One figure at a time.",
	Why: "It is no hazard by itself. It is the reader who must know which verdicts stand on a guess.",
	Numbers: "Ambient temperature where the plan states none: 20 C and 50 C, engine spaces included. Joints and contacts: four times the assumed resistance. Batteries without a " +
		"stated resistance: half and twice the assumed ones, all batteries together.",
	Not:    "Other assumptions, such as the insulation rating or a battery's rested volts; two guesses that are wrong together.",
	Offer:  "Write down the one reading that settles it.",
	Meter:  "That reading: the ambient on the hottest day, volts across a joint under load, or the battery's drop under a known load.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "a result that turns on a guess is not yet a result"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.Written, remedy.Unless(remedy.ThickerWire, reading), remedy.Unless(remedy.SmallerDevice, reading)},
	Since:  "0.1",
	Review: guesses,
}

// reading is what may make a change needless that is offered for a guess.
const reading = "Read the assumed figure on the part first, and write it down: it may spare this change."

// guess is a figure that stands in for one left out, with what it may be instead.
type guess struct {
	name  string
	is    func(derive.Number) bool
	other []instead
}

type instead struct {
	how   string
	guess lint.Guesses
}

func ambient(c float64) instead {
	return instead{"at " + derive.Text(c, "C"), lint.Guesses{Ambient: &c}}
}

var allGuesses = []guess{
	{"the ambient temperature", func(n derive.Number) bool { return n.Attribute == "ambient" }, []instead{ambient(20), ambient(50)}},
	{"the resistance of joints and contacts", func(n derive.Number) bool { return n.Subject == "joints" || n.Attribute == "contact_resistance" },
		[]instead{{"at four times the assumed resistance", lint.Guesses{Joints: 4}}}},
	{"the batteries' resistance", func(n derive.Number) bool { return strings.HasPrefix(n.Attribute, "resistance") },
		[]instead{{"at half the assumed resistance", lint.Guesses{Resistance: 0.5}}, {"at twice the assumed resistance", lint.Guesses{Resistance: 2}}}},
}

func guesses(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
	var out []lint.Verdict
	before := weights(ran.Rules, ran.Verdicts)
	for _, g := range allGuesses {
		used := usedIn(ran, g.is)
		if len(used) == 0 {
			continue
		}
		if !p.Space.Complete() { // to ask the other rules again would only leave as much open, at many times the cost
			v := lint.Unfinished(about(p.Plan, used), lint.Notice)
			v.Cause = g.name
			out = append(out, v)
			continue
		}
		v := lint.Verdict{Subject: about(p.Plan, used), Outcome: lint.Holds, Word: lint.Notice, Cause: g.name, Numbers: used}
		var says []string
		for _, o := range g.other {
			turned := flips(ran.Rules, before, weights(ran.Rules, ran.Again(o.guess, lint.Warning)))
			if len(turned) == 0 {
				continue
			}
			says = append(says, o.how+" "+tell(p.Plan, turned))
			for _, t := range turned {
				if !slices.Contains(v.Related, t.subject) {
					v.Related = append(v.Related, t.subject)
				}
			}
		}
		if len(says) > 0 {
			v.Outcome = lint.Violated
			v.Message = fmt.Sprintf("The plan leaves out %s, and verdicts turn on it: %s.", g.name, strings.Join(says, "; "))
		}
		out = append(out, v)
	}
	return out
}

// usedIn lists the assumed figures of a guess that verdicts rest on, each attribute once.
func usedIn(ran *lint.Ran, is func(derive.Number) bool) []derive.Number {
	var out []derive.Number
	seen := map[[2]string]bool{}
	for _, r := range ran.Rules {
		for _, v := range ran.Verdicts[r.ID] {
			derive.Walk(v.Numbers, func(n derive.Number) {
				if k := [2]string{n.Subject, n.Attribute}; n.Kind == derive.Assumption && is(n) && !seen[k] {
					seen[k] = true
					out = append(out, n)
				}
			})
		}
	}
	return out
}

// about is the one part whose figure was assumed, or the system where they are several.
func about(plan *schema.Plan, used []derive.Number) schema.Block {
	one := used[0].Subject
	for _, n := range used {
		if n.Subject != one {
			return plan.System
		}
	}
	if b := plan.Block(one); b != nil {
		return b
	}
	return plan.System
}

// asked is a rule on a part.
type asked struct{ rule, subject string }

// weight is how a rule answers of a part: 0 for nothing that counts as a warning, 1 for not proven, 2
// for violated.
type weight uint8

func weights(rules []*lint.Rule, verdicts map[string][]lint.Verdict) map[asked]weight {
	out := map[asked]weight{}
	for _, r := range rules {
		for _, v := range verdicts[r.ID] {
			k := asked{r.ID, v.Subject.Header().Addr}
			if v.Outcome != lint.Holds && r.CountsAs(v) >= lint.Warning {
				w := weight(1)
				if v.Outcome == lint.Violated {
					w = 2
				}
				out[k] = max(out[k], w)
			}
		}
	}
	return out
}

// flip is a rule that answers otherwise of a part.
type flip struct {
	asked
	after weight
}

func flips(rules []*lint.Rule, before, after map[asked]weight) []flip {
	seen := map[asked]bool{}
	var out []flip
	for _, m := range []map[asked]weight{before, after} {
		for k := range m {
			if before[k] != after[k] && !seen[k] {
				seen[k] = true
				out = append(out, flip{k, after[k]})
			}
		}
	}
	slices.SortFunc(out, func(a, b flip) int {
		return strings.Compare(a.rule+" "+a.subject, b.rule+" "+b.subject)
	})
	return out
}

// tell says which rules turn, and how.
func tell(plan *schema.Plan, turned []flip) string {
	var out []string
	for from := 0; from < len(turned); {
		to := from
		for to < len(turned) && turned[to].rule == turned[from].rule {
			to++
		}
		out = append(out, turned[from].rule+" "+tellRule(plan, turned[from:to]))
		from = to
	}
	return lint.And(out...)
}

// named is how many parts of one answer are named.
const named = 2

func tellRule(plan *schema.Plan, turned []flip) string {
	var out []string
	for after, words := range [...]string{"no longer speaks of", "cannot be proven of", "is violated by"} {
		var parts []string
		for _, t := range turned {
			if b := plan.Block(t.subject); t.after == weight(after) && b != nil {
				parts = append(parts, lint.Quote(b))
			}
		}
		if n := len(parts); n > named+1 {
			parts = append(parts[:named], fmt.Sprintf("%d more", n-named))
		}
		if len(parts) > 0 {
			out = append(out, words+" "+lint.And(parts...))
		}
	}
	return lint.And(out...)
}
