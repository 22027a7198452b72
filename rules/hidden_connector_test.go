package rules

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// hiddenVerdicts asks every rule of a plan of a hidden hazard.
func hiddenVerdicts(t *testing.T, name string) map[string][]lint.Verdict {
	t.Helper()
	p, diags, _ := (&files.Reader{}).Load(filepath.Join("..", "testdata", "hidden", name+".wiring.hcl"))
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	r := check.Run(p, All(), check.Options{Today: time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)})
	if r.Diagnostics.HasErrors() || len(r.Failures) > 0 || !r.Summary.States.Complete {
		t.Fatal(r.Diagnostics, r.Failures, r.Summary.States)
	}
	return r.Verdicts
}

// A plug that looks dead from the switch one has in mind: found in the state that makes it live and with
// no position more, and gone from the mended plan.
func TestHiddenConnectors(t *testing.T) {
	out := func(addr string) lint.Position { return lint.Position{Addr: addr, Position: "absent"} }
	running := lint.Position{Addr: "source.engine", Position: "present"}
	for _, c := range []struct {
		hazard, rule, at string
		word             lint.Severity
		state            []lint.Position
	}{
		{"3_3", "connector/live-contacts-exposed", "connector.tow", lint.Warning, []lint.Position{{Addr: "connector.tow", Position: "unmated"}}},
		{"3_3", "overcurrent/second-source-unguarded", "conductor.run", lint.Warning, []lint.Position{{Addr: "source.shore", Position: "present"}}},
		{"3_12", "connector/live-contacts-exposed", "connector.port", lint.Warning, []lint.Position{running, out("source.pack")}},
		{"3_12", "connector/live-contacts-exposed", "connector.power", lint.Warning, []lint.Position{out("source.pack")}},
		{"3_12", "connector/wrong-partner", "connector.port", lint.Danger, []lint.Position{running, out("source.pack")}},
		{"3_12", "connector/wrong-partner", "connector.power", lint.Danger, []lint.Position{running, out("source.pack")}},
	} {
		t.Run(fmt.Sprint(c.hazard, " ", c.rule, " ", c.at), func(t *testing.T) {
			found := slices.ContainsFunc(hiddenVerdicts(t, c.hazard+"_flawed")[c.rule], func(v lint.Verdict) bool {
				if v.Subject.Header().Addr == c.at {
					t.Logf("%s %s %v", v.Outcome, v.Word, v.State)
				}
				return v.Subject.Header().Addr == c.at && v.Outcome == lint.Violated && v.Word == c.word && slices.Equal(v.State, c.state)
			})
			if !found {
				t.Errorf("not found in the flawed plan as %s with %v", c.word, c.state)
			}
			for _, v := range hiddenVerdicts(t, c.hazard+"_mended")[c.rule] {
				if v.Outcome != lint.Holds {
					t.Errorf("in the mended plan: %s at %s: %s", v.Outcome, v.Subject.Header().Addr, v.Message)
				}
			}
		})
	}
}
