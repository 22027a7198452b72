package plan

import (
	"path/filepath"
	"slices"
	"testing"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/linttest"
	"ferrule/rules/ac"
	"ferrule/rules/charging"
	lifesafety "ferrule/rules/life-safety"
	"ferrule/rules/switching"
	"ferrule/schema"
)

// limit is a rule for tests: a figure of each block must stay on one side of a limit.
func limit[T schema.Block](id string, word lint.Severity, blocks func(*schema.Plan) []T, figure func(*lint.Pass, T) derive.Number, broken func(float64) bool) *lint.Rule {
	return &lint.Rule{
		ID: id, Claim: "A figure is past its limit.", Words: []lint.Severity{word}, Subject: "block", When: "Always.", Why: "A test.",
		Numbers: "None.", Not: "All else.", Offer: "Nothing.", Since: "0.1",
		Cites: []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice}},
		Run: func(p *lint.Pass) []lint.Verdict {
			var out []lint.Verdict
			for _, b := range blocks(p.Plan) {
				n := figure(p, b)
				v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: word, Numbers: []derive.Number{n}}
				if broken(n.Value) {
					v.Outcome, v.Message = lint.Violated, "past its limit"
				}
				out = append(out, v)
			}
			return out
		},
	}
}

var others = []*lint.Rule{
	limit("test/thin", lint.Danger, func(p *schema.Plan) []*schema.Conductor { return p.Conductors },
		func(p *lint.Pass, x *schema.Conductor) derive.Number { n, _ := p.Circuit.Ampacity(x); return n },
		func(amps float64) bool { return amps < 20 }),
	limit("test/long", lint.Warning, func(p *schema.Plan) []*schema.Conductor { return p.Conductors },
		func(p *lint.Pass, x *schema.Conductor) derive.Number {
			n, _ := p.Circuit.Ohms(p.Net.EdgesOf(x.Addr)[0], circuit.Operating)
			return n
		},
		func(ohms float64) bool { return ohms > 0.032 }),
	limit("test/slack", lint.Caution, func(p *schema.Plan) []*schema.Conductor { return p.Conductors },
		func(p *lint.Pass, x *schema.Conductor) derive.Number { n, _ := p.Circuit.Ampacity(x); return n },
		func(amps float64) bool { return amps < 25 }),
	limit("test/soft", lint.Warning, func(p *schema.Plan) []*schema.Source { return p.Sources },
		func(p *lint.Pass, x *schema.Source) derive.Number {
			_, high, _, _ := p.Circuit.BatteryOhms(x)
			return high
		},
		func(ohms float64) bool { return ohms > 0.03 }),
}

func TestGuessDecides(t *testing.T) {
	linttest.RunWith(t, guessDecides, others, filepath.Join("testdata", "guess-decides"))
}

func TestStalePromise(t *testing.T) {
	linttest.RunWith(t, stalePromise, append(others, guessDecides), filepath.Join("testdata", "stale-promise"))
}

func TestLooseEnd(t *testing.T) {
	linttest.Run(t, looseEnd, filepath.Join("testdata", "loose-end"))
}

func TestInterlockOnTrust(t *testing.T) {
	linttest.RunWith(t, interlockOnTrust, slices.Concat(ac.Rules, lifesafety.Rules, charging.Rules), filepath.Join("testdata", "interlock-on-trust"))
}

func TestBlackBoxPort(t *testing.T) {
	linttest.RunWith(t, blackBoxPort, switching.Rules, filepath.Join("testdata", "black-box-port"))
}
