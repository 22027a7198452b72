package check

import (
	"strings"
	"time"

	"ferrule/lint"
	"ferrule/schema"
)

// matched lists the waivers that meet a verdict which does not hold, whether they apply or not.
func (r *run) matched() map[string]bool {
	out := map[string]bool{}
	for _, w := range r.plan.Waivers {
		for _, v := range r.verdicts[w.Rule.Value] {
			if v.Outcome != lint.Holds && meets(w, w.Rule.Value, v) {
				out[w.Addr] = true
			}
		}
	}
	return out
}

func meets(w *schema.Waiver, rule string, v lint.Verdict) bool {
	return w.Rule.Value == rule && w.At.Addr != "" && w.At.Addr == v.Subject.Header().Addr
}

// waiver finds the first waiver that accepts a finding, nil where none does.
func (r *run) waiver(f *Finding) *schema.Waiver {
	for _, w := range r.plan.Waivers {
		if meets(w, f.Rule.ID, f.Verdict) && applies(w, f.Severity, r.opt.Today) {
			return w
		}
	}
	return nil
}

// applies says whether a waiver is still good, and good enough: a danger needs a reason and an end.
func applies(w *schema.Waiver, s lint.Severity, today time.Time) bool {
	if w.Until.Set && day(today).After(w.Until.Value) {
		return false
	}
	return s != lint.Danger || w.Until.Set && strings.TrimSpace(w.Reason.Value) != ""
}

// day is the calendar day of a time, midnight UTC, as dates in a plan are.
func day(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}
