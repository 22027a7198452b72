package check

import (
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/schema"
)

// aboard is a small plan with two runs off one pack, and a switch that chooses between two packs.
const aboard = `
system "tern" {
  title = "Tern"
}

source "pack" {
  kind      = "battery"
  removable = true
}

fuse "main" {
  rating = "30 A"
}

fuse "spare" {
}

conductor "feed" {
  from = source.pack
  to   = fuse.main.line
}

conductor "tail" {
  from = source.pack
  to   = fuse.spare.line
}

switch "select" {
  terminals = ["a", "b", "house"]
  position "a" {
    joins = [["a", "house"]]
  }
  position "b" {
    joins = [["b", "house"]]
  }
}

load "lamp" {
}
`

var day25 = time.Date(2026, time.November, 25, 15, 0, 0, 0, time.UTC)

func decode(t *testing.T, src string) *schema.Plan {
	t.Helper()
	p, diags := schema.Decode("tern.wiring.hcl", []byte(src), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return p
}

// fake is a rule that answers what it is told to, about blocks of the plan by address.
func fake(id string, answers ...answer) *lint.Rule {
	return &lint.Rule{
		ID: id, Claim: "c", Words: []lint.Severity{lint.Danger, lint.Warning, lint.Caution, lint.Notice}, Subject: "part",
		When: "w", Why: "w", Numbers: "n", Not: "n", Offer: "o", Since: "0.1",
		Cites: []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice}},
		Run: func(p *lint.Pass) []lint.Verdict {
			var out []lint.Verdict
			for _, a := range answers {
				v := a.Verdict
				v.Subject = p.Plan.Block(a.at)
				if v.Message == "" {
					v.Message = id + " at " + a.at
				}
				out = append(out, v)
			}
			return out
		},
	}
}

type answer struct {
	at string
	lint.Verdict
}

func violated(at string, w lint.Severity) answer {
	return answer{at, lint.Verdict{Outcome: lint.Violated, Word: w}}
}

func unproven(at string, w lint.Severity, missing ...string) answer {
	a := answer{at, lint.Verdict{Outcome: lint.NotProven, Word: w}}
	for _, m := range missing {
		subject, attribute, _ := strings.Cut(m, " ")
		a.Missing = append(a.Missing, lint.Missing{Subject: subject, Attribute: attribute})
	}
	return a
}

func holds(at string) answer { return answer{at, lint.Verdict{Outcome: lint.Holds}} }

func (a answer) cause(c string) answer      { a.Cause = c; return a }
func (a answer) group(g string) answer      { a.Group = g; return a }
func (a answer) path(p ...string) answer    { a.Path = p; return a }
func (a answer) related(r ...string) answer { a.Related = r; return a }

// in puts the answer in a state: address and position in turn.
func (a answer) in(s ...string) answer {
	for i := 0; i+1 < len(s); i += 2 {
		a.State = append(a.State, lint.Position{Addr: s[i], Position: s[i+1]})
	}
	return a
}

func folds(r *lint.Rule, ids ...string) *lint.Rule {
	r.Folds = ids
	return r
}

// sketch writes findings in short: number, word, rule, subject, "?" where not proven, "w" where
// waived, and what is folded in brackets.
func sketch(r *Report) string {
	var out []string
	for _, f := range r.Findings {
		s := f.Severity.String() + " " + f.Rule.ID + " " + f.Verdict.Subject.Header().Addr
		if f.Verdict.Outcome == lint.NotProven {
			s += " ?"
		}
		if f.Waived != nil {
			s += " waived"
		}
		for _, x := range f.Folded {
			s += " [" + x.Rule + " " + x.Subject + "]"
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

func expect(t *testing.T, r *Report, lines ...string) {
	t.Helper()
	if got, want := sketch(r), strings.Join(lines, "\n"); got != want {
		t.Errorf("findings:\n%s\nwanted:\n%s", got, want)
	}
}
