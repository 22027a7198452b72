package rules

import (
	"testing"

	"ferrule/lint/check"
	"ferrule/schema/files"
)

// A BMS that opens is one event: it is told under the charger, not at the battery again. What a switch,
// plug or device does stands on its own.
func TestCutOffIsToldOnce(t *testing.T) {
	p, diags, _ := (&files.Reader{}).Load("switching/testdata/opens-charging-source/violating-opens.wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	var alone []string
	under := 0
	for _, f := range check.Run(p, All(), check.Options{}).Findings {
		if f.Rule.ID == "switching/opens-charging-source" {
			alone = append(alone, f.Verdict.Subject.Header().Addr)
		}
		for _, x := range f.Folded {
			if f.Rule.ID == "charging/battery-drops-out" && x.Subject == "source.first" {
				under++
			}
		}
	}
	if under != 1 || len(alone) != 2 {
		t.Errorf("the cut-off is told %d times under the charger; on their own stand %v", under, alone)
	}
}
