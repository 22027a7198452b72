package rules

import (
	"slices"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// hiddenState is a finding that a plan of testdata/hidden must have in exactly one state: every
// position that is listed, and no other.
type hiddenState struct{ plan, rule, subject, state string }

// Each of these plans reads clean in any single position that its owner looked at.
var hiddenSupplies = []hiddenState{
	{"3_5", "ac/two-sources-joined", "converter.inverter",
		"connector.inverter_cord=mated connector.shore_cord=mated source.shore=present switch.inverter=on"},
	{"3_5", "ac/live-inlet-pins", "connector.shore_cord", "connector.inverter_cord=mated connector.shore_cord=unmated switch.inverter=on"},
	{"3_11", "bonding/neutral-bond-count", "converter.pack", "connector.pack_plug=mated source.pack=present switch.transfer=inlet"},
	{"3_11", "bonding/neutral-bond-count", "source.generator",
		"connector.generator_plug=mated source.generator=present switch.second=generator switch.transfer=inverter"},
}

func TestHiddenSupplies(t *testing.T) {
	for _, h := range hiddenSupplies {
		if n := h.found(t, "flawed"); n != 1 {
			t.Errorf("%s flawed: %s of %s is violated %d times with %s", h.plan, h.rule, h.subject, n, h.state)
		}
		h.clean(t)
	}
}

func (h hiddenState) verdicts(t *testing.T, twin string) []lint.Verdict {
	t.Helper()
	p, diags, _ := (&files.Reader{}).Load("../testdata/hidden/" + h.plan + "_" + twin + ".wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	r := check.Run(p, All(), check.Options{})
	if len(r.Failures) > 0 || r.Diagnostics.HasErrors() || !r.Summary.States.Complete {
		t.Fatal(r.Failures, r.Diagnostics)
	}
	return r.Verdicts[h.rule]
}

func (h hiddenState) found(t *testing.T, twin string) (n int) {
	t.Helper()
	for _, v := range h.verdicts(t, twin) {
		var state []string
		for _, p := range v.State {
			state = append(state, p.Addr+"="+p.Position)
		}
		slices.Sort(state)
		if v.Outcome == lint.Violated && v.Subject.Header().Addr == h.subject && strings.Join(state, " ") == h.state {
			n++
		}
	}
	return n
}

// clean wants the mended twin to be asked and to hold everywhere.
func (h hiddenState) clean(t *testing.T) {
	t.Helper()
	all := h.verdicts(t, "mended")
	if len(all) == 0 {
		t.Errorf("%s mended: %s asks nothing", h.plan, h.rule)
	}
	for _, v := range all {
		if v.Outcome != lint.Holds {
			t.Errorf("%s mended: %s of %s: %s", h.plan, h.rule, v.Subject.Header().Addr, v.Message)
		}
	}
}

// The cut-off of the pack has the same cause as its absence: it is told under the brakes without power.
func TestHiddenBrakes(t *testing.T) {
	h := hiddenState{"3_1", "life-safety/breakaway-without-power", "load.brakes", "source.pack=absent"}
	if n := h.found(t, "flawed"); n != 1 {
		t.Errorf("%s is violated %d times with %s", h.rule, n, h.state)
	}
	h.clean(t)
	hiddenState{"3_1", "life-safety/one-cutoff-takes-all", "", ""}.clean(t)
	p, diags, _ := (&files.Reader{}).Load("../testdata/hidden/3_1_flawed.wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	for _, f := range check.Run(p, All(), check.Options{}).Findings {
		if f.Rule.ID == "life-safety/one-cutoff-takes-all" {
			t.Errorf("%s stands on its own: %s", f.Rule.ID, f.Verdict.Message)
		}
		if f.Rule.ID == h.rule && !slices.ContainsFunc(f.Folded, func(x check.Folded) bool { return x.Subject == "source.pack" }) {
			t.Errorf("%s does not tell of the pack's own cut-off: %v", f.Rule.ID, f.Folded)
		}
	}
}
