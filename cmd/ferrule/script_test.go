package main

import (
	"flag"
	"os"
	"slices"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"ferrule/lint"
	"ferrule/lint/remedy"
	"ferrule/rules"
)

var update = flag.Bool("update", false, "write the goldens in testdata/script anew")

// TestMain gives scripts two commands: ferrule, and made, which is ferrule with the rules below, so
// that a story about the command does not change with a rule of the trade.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"ferrule": func() { main() },
		"made": func() {
			c := &cli{in: os.Stdin, out: os.Stdout, rules: madeRules}
			os.Exit(c.run(os.Args[1:], os.Stderr))
		},
	})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script", RequireExplicitExec: true, RequireUniqueNames: true, UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Vars = append(slices.DeleteFunc(e.Vars, func(v string) bool { return v == "NO_COLOR=1" }), "NO_COLOR=")
			return nil
		},
	})
}

func TestRulesAreWhole(t *testing.T) {
	if err := lint.Validate(rules.All()); err != nil {
		t.Error(err)
	}
	if err := lint.Validate(madeRules()); err != nil {
		t.Error(err)
	}
}

// madeRules find big fuses, and crash where a fuse is called so.
func madeRules() []*lint.Rule {
	made := func(id, claim string, run func(*lint.Pass) []lint.Verdict) *lint.Rule {
		return &lint.Rule{
			ID: id, Claim: claim, Words: []lint.Severity{lint.Danger, lint.Warning, lint.Caution, lint.Notice}, Subject: "fuse",
			When: "The rating is above 10, 20, 30 or 40 A.", Why: "A story needs an end.", Numbers: "10 A for a notice, 20 A for a caution, 30 A for a warning, 40 A for a danger.",
			Not: "Anything else.", Offer: "Fit a smaller one.", Meter: "The current through it.", Remedy: true, Since: "0.1", Run: run,
			Cites: []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice}},
		}
	}
	return []*lint.Rule{
		offering(made("made/big-fuse", "A fuse is big.", bigFuses), remedy.SmallerDevice, halved),
		made("made/crash", "A fuse makes the rule crash.", crashes),
		made("tale/big-fuse", "Nothing: it has the other's last name.", func(*lint.Pass) []lint.Verdict { return nil }),
	}
}

func offering(r *lint.Rule, offers ...lint.Offer) *lint.Rule {
	r.Offers = offers
	return r
}

// halved offers what only a person can finish.
func halved(_ *lint.Pass, v lint.Verdict) []lint.Proposal {
	return []lint.Proposal{{Do: "Fit two side by side.", Changes: []lint.Change{lint.Set(v.Subject.Header().Addr, "rating", `"5 A"`)}, Open: "where the second one goes"}}
}

func bigFuses(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		v := lint.Verdict{Subject: f, Outcome: lint.Holds}
		switch a := f.Rating.Value; {
		case !f.Rating.Set:
			v.Outcome, v.Word, v.Missing = lint.NotProven, lint.Warning, []lint.Missing{{Subject: f.Addr, Attribute: "rating"}}
			v.Message = "How big " + lint.Quote(f) + " is, is not written."
		case a > 10:
			v.Outcome, v.Word = lint.Violated, min(lint.Severity(a/10), lint.Danger)
			if a <= 20 {
				v.Word = lint.Notice
			}
			v.Message = lint.Quote(f) + " is a big fuse: " + f.Rating.String() + "."
		}
		out = append(out, v)
	}
	return out
}

func crashes(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		if f.Name == "crash" {
			panic("a made crash")
		}
		out = append(out, lint.Verdict{Subject: f, Outcome: lint.Holds})
	}
	return out
}
