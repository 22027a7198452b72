package connector

import (
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// A search that met its bound proves nothing of a connector whose answer turns on an interlock.
func TestUnfinishedSearchHoldsNothing(t *testing.T) {
	for _, c := range []struct {
		rule *lint.Rule
		plan string
		at   string
	}{
		{liveContactsExposed, "live-contacts-exposed", "connector.latched"},
		{brokenUnderLoad, "broken-under-load", "connector.latched"},
	} {
		p, diags, _ := (&files.Reader{}).Load("testdata/" + c.plan + "/near.wiring.hcl")
		if len(diags) > 0 {
			t.Fatal(diags)
		}
		asked := 0
		for _, v := range check.Run(p, []*lint.Rule{c.rule}, check.Options{Bound: 1}).Verdicts[c.rule.ID] {
			if v.Subject.Header().Addr != c.at {
				continue
			}
			if asked++; v.Outcome != lint.NotProven {
				t.Errorf("%s of %s after one state: %s", c.rule.ID, c.at, v.Outcome)
			}
		}
		if asked == 0 {
			t.Errorf("%s says nothing of %s", c.rule.ID, c.at)
		}
	}
}
