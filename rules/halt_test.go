package rules

import (
	"os"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// TestHaltedRunClaimsNothing stops a run after every so many looks at the clock: what it then says is part
// of what the whole run says, and it never passes for whole.
func TestHaltedRunClaimsNothing(t *testing.T) {
	const name = "../testdata/hidden/3_6_flawed.wiring.hcl"
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	plan, diags := schema.Decode(name, text, nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	day := time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)
	whole := check.Run(plan, All(), check.Options{Today: day})
	halted := 0
	for n := 0; ; n = n + 1 + n/4 {
		looks := 0
		part := check.Run(plan, All(), check.Options{Today: day, Stop: func() bool { looks++; return looks > n }})
		if looks <= n {
			break
		}
		halted++
		if !part.Tainted() || part.Summary.States.Complete {
			t.Errorf("stopped at look %d, it passes for whole", n)
		}
		for id, list := range part.Verdicts {
			for _, v := range list {
				if v.Outcome != lint.NotProven && !answered(whole.Verdicts[id], v) {
					t.Errorf("stopped at look %d, %s says %v of %s: the whole run does not", n, id, v.Outcome, v.Subject.Header().Addr)
				}
			}
		}
	}
	if halted < 10 {
		t.Errorf("the run was stopped only %d times", halted)
	}
}

func answered(list []lint.Verdict, v lint.Verdict) bool {
	for _, w := range list {
		if w.Outcome == v.Outcome && w.Subject == v.Subject && w.Word == v.Word && w.Cause == v.Cause {
			return true
		}
	}
	return false
}
