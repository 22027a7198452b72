package rules

import (
	"slices"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// hiddenWhole is all that a pair of plans may have: the flawed plan these findings, each in its state and with
// what is folded under it, and neither plan any other that is not waived.
type hiddenWhole struct {
	plan     string
	findings []string // rule, subject, word, state, then what is folded
}

var hiddenWholes = []hiddenWhole{
	{"3_2", []string{"converter/constant-power-collapse converter.boost caution connector.tow=mated" +
		" < conductor/voltage-drop conductor.from_plug < load/outside-voltage-window converter.boost < overcurrent/undersize-device fuse.boost"}},
	{"3_8", []string{
		"charging/lithium-meets-alternator source.pack warning switch.select=truck>pack (overlap)" +
			" < source/unlike-in-parallel source.pack < source/unlike-in-parallel source.start",
		"switching/contact-rating switch.select warning switch.select=truck>pack (overlap)"}},
	{"3_9", []string{"conductor/return-weaker-than-feed conductor.pigtail danger connector.tow=mated source.alternator=present switch.brakes=on" +
		" < bonding/chassis-return bus.ground < conductor/ampacity conductor.pigtail < conductor/voltage-drop load.brakes"}},
}

func TestHiddenWhole(t *testing.T) {
	for _, h := range hiddenWholes {
		t.Run(h.plan, func(t *testing.T) {
			if got := standing(t, h.plan+"_flawed"); !slices.Equal(got, h.findings) {
				t.Errorf("flawed:\n%s\nwanted:\n%s", strings.Join(got, "\n"), strings.Join(h.findings, "\n"))
			}
			if got := standing(t, h.plan+"_mended"); len(got) > 0 {
				t.Errorf("mended:\n%s", strings.Join(got, "\n"))
			}
		})
	}
}

// standing tells the findings of a plan that are not waived, in order.
func standing(t *testing.T, name string) (out []string) {
	t.Helper()
	p, diags, _ := (&files.Reader{}).Load("../testdata/hidden/" + name + ".wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	r := check.Run(p, All(), check.Options{Today: time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)})
	if r.Diagnostics.HasErrors() || len(r.Failures) > 0 || !r.Summary.States.Complete || r.Summary.Checks == 0 {
		t.Fatal(r.Diagnostics, r.Failures, r.Summary)
	}
	for _, f := range r.Findings {
		if f.Waived != nil {
			continue
		}
		words := []string{f.Rule.ID, f.Verdict.Subject.Header().Addr, f.Severity.String()}
		if f.Verdict.Outcome != lint.Violated {
			words = append(words, f.Verdict.Outcome.String())
		}
		for _, p := range lint.SortState(slices.Clone(f.Verdict.State)) {
			words = append(words, p.Addr+"="+p.Position)
		}
		var under []string
		for _, x := range f.Folded {
			under = append(under, "< "+x.Rule+" "+x.Subject)
		}
		slices.Sort(under)
		out = append(out, strings.Join(append(words, under...), " "))
	}
	slices.Sort(out)
	return out
}
