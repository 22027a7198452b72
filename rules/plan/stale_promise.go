package plan

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"ferrule/lint"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var stalePromise = &lint.Rule{
	ID:      "plan/stale-promise",
	Claim:   "A waiver or the name of a switch position no longer says what is so.",
	Words:   []lint.Severity{lint.Caution, lint.Notice},
	Subject: "waiver; switch",
	When: "A waiver has expired, accepts nothing that is found, names a rule that does not exist, or accepts a danger without a reason and an end date. " +
		"A position called off, open or disconnected joins something; one called on or closed joins nothing; one that is called after a " +
		"terminal joins others and not that one.",
	Why:     "A false record misleads the next pair of hands. Notice; caution where it is a danger that was waived.",
	Numbers: "A waiver holds up to and including the day in `until`; today's date is that of the run.",
	Not: "Labels and position names in any other words. Whether a measured value is older than the part it describes: a plan has no dates for either. " +
		"Whether a waiver of a rule that reviews the plan, as this one does, is still used.",
	Offer:  "Renew the waiver with a new date, or take it out; rename the position.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "a drawing is kept true or withdrawn"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.DropWaiver},
	Since:  "0.1",
	Review: stalePromises,
}

func stalePromises(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
	var out []lint.Verdict
	for _, w := range p.Plan.Waivers {
		out = append(out, staleWaiver(p, ran, w))
	}
	for _, s := range p.Plan.Switches {
		out = append(out, falseName(s))
	}
	return out
}

func staleWaiver(p *lint.Pass, ran *lint.Ran, w *schema.Waiver) lint.Verdict {
	v := lint.Verdict{Subject: w, Outcome: lint.Violated, Word: lint.Notice}
	i := slices.IndexFunc(ran.Rules, func(r *lint.Rule) bool { return r.ID == w.Rule.Value })
	danger := waivesDanger(ran, w)
	if danger {
		v.Word = lint.Caution
	}
	name := "The waiver " + lint.Quote(w)
	switch {
	case i < 0:
		v.Cause, v.Message = "unknown rule", fmt.Sprintf("%s names the rule %q, which does not exist.", name, w.Rule.Value)
	case danger && strings.TrimSpace(w.Reason.Value) == "":
		v.Cause, v.Message = "no reason", name+" accepts a danger and gives no reason."
	case danger && !w.Until.Set:
		v.Cause, v.Message = "no end", name+" accepts a danger without an end date."
	case w.Until.Set && day(p.Today).After(w.Until.Value):
		v.Cause, v.Message = "expired", fmt.Sprintf("%s ended on %s.", name, w.Until.Value.Format(time.DateOnly))
	case ran.Rules[i].Run != nil && !ran.Waived[w.Addr]:
		v.Cause, v.Message = "unused", fmt.Sprintf("%s accepts a finding of %s at %s, and there is none.", name, w.Rule.Value, w.At.Text)
	default:
		v.Outcome = lint.Holds
	}
	return v
}

// day is the calendar day of a time, midnight UTC, as dates in a plan are.
func day(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

func waivesDanger(ran *lint.Ran, w *schema.Waiver) bool {
	return slices.ContainsFunc(ran.Verdicts[w.Rule.Value], func(v lint.Verdict) bool {
		return v.Outcome == lint.Violated && v.Word == lint.Danger && v.Subject.Header().Addr == w.At.Addr
	})
}

var (
	offWords = []string{"off", "all off", "open", "disconnected", "isolated"}
	onWords  = []string{"on", "closed", "connected"}
)

// falseName compares the names of a switch's positions with what they join.
func falseName(s *schema.Switch) lint.Verdict {
	v := lint.Verdict{Subject: s, Outcome: lint.Holds, Word: lint.Notice}
	var wrong, names []string
	for _, p := range s.Positions {
		joined := joinedAt(p)
		word := strings.ToLower(strings.TrimSpace(p.Name))
		switch {
		case len(joined) > 0 && slices.Contains(offWords, word):
			wrong = append(wrong, fmt.Sprintf("position %q joins %s", p.Name, lint.And(joined...)))
		case len(joined) == 0 && slices.Contains(onWords, word):
			wrong = append(wrong, fmt.Sprintf("position %q joins nothing", p.Name))
		case len(joined) > 0 && isTerminal(s, word) && !slices.ContainsFunc(joined, func(t string) bool { return strings.ToLower(t) == word }):
			wrong = append(wrong, fmt.Sprintf("position %q joins %s, not the terminal of that name", p.Name, lint.And(joined...)))
		default:
			continue
		}
		names = append(names, p.Name)
	}
	if len(wrong) > 0 {
		v.Outcome, v.Cause = lint.Violated, strings.Join(names, " ")
		v.Message = fmt.Sprintf("On %s, %s.", lint.Quote(s), lint.And(wrong...))
	}
	return v
}

// joinedAt lists the terminals that a position joins to another, in order.
func joinedAt(p *schema.Position) []string {
	var out []string
	for _, g := range p.Joins.Groups {
		for _, t := range g {
			if len(g) > 1 && !slices.Contains(out, t.Value) {
				out = append(out, t.Value)
			}
		}
	}
	return out
}

func isTerminal(s *schema.Switch, word string) bool {
	return slices.ContainsFunc(s.Terminals.List, func(t schema.Text) bool { return strings.ToLower(strings.TrimSpace(t.Value)) == word })
}
