package rules

import (
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// A search that met its bound has not seen every state: what it did see proves nothing.
func TestUnfinishedSearchHoldsNothing(t *testing.T) {
	for rule, plan := range map[string]string{
		"ac/two-sources-joined":               "ac/testdata/two-sources-joined/near-interlock.wiring.hcl",
		"ac/live-inlet-pins":                  "ac/testdata/live-inlet-pins/near-interlock.wiring.hcl",
		"bonding/neutral-bond-count":          "bonding/testdata/neutral-bond-count/near-interlock.wiring.hcl",
		"life-safety/one-cutoff-takes-all":    "life-safety/testdata/one-cutoff-takes-all/near-interlock.wiring.hcl",
		"converter/constant-power-collapse":   "converter/testdata/constant-power-collapse/near.wiring.hcl",
		"converter/inrush":                    "converter/testdata/inrush/near.wiring.hcl",
		"load/outside-voltage-window":         "load/testdata/outside-voltage-window/near-starved.wiring.hcl",
		"solar/cold-voltage":                  "solar/testdata/cold-voltage/near.wiring.hcl",
		"backfeed/tie-carries-house-load":     "backfeed/testdata/tie-carries-house-load/near.wiring.hcl",
		"charging/alternator-overload":        "charging/testdata/alternator-overload/near.wiring.hcl",
		"overcurrent/second-source-unguarded": "overcurrent/testdata/second-source-unguarded/near.wiring.hcl",
	} {
		p, diags, _ := (&files.Reader{}).Load(plan)
		if len(diags) > 0 {
			t.Errorf("%s: %s", plan, diags)
			continue
		}
		r := check.Run(p, All(), check.Options{Bound: 1})
		answers := r.Verdicts[rule]
		if len(answers) == 0 || r.Summary.States.Complete {
			t.Errorf("%s: %d answers, complete %v", plan, len(answers), r.Summary.States.Complete)
		}
		for _, v := range answers {
			if v.Outcome == lint.Holds {
				t.Errorf("%s: %s holds of %s after one state", plan, rule, v.Subject.Header().Addr)
			}
		}
	}
}
