package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/suggest"
	"ferrule/rules"
	"ferrule/schema/files"
)

// bare are the rules whose fixtures leave out so much that any edit raises a question of another rule, or whose offers
// have a blank that only a person can fill. What they offer is tried on whole plans, by the examples and below.
var bare = []string{
	"backfeed/load-center-feeds-back", "connector/wrong-partner", "plan/guess-decides",
	"source/discharge-limit", "switching/no-battery-disconnect",
}

// TestDisconnectIsPutBack takes the disconnect out of an example, and wants one in its place: behind the post that
// alarm, pump and chargers sit on, not ahead of it.
func TestDisconnectIsPutBack(t *testing.T) {
	path := filepath.Join(exampleFolder, "curlew.wiring.hcl")
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "to         = switch.house_off.battery", "to         = bus.panel", 1)
	from, to := strings.Index(text, "switch \"house_off\""), strings.Index(text, "bus \"panel\"")
	text = regexp.MustCompile(`\n *switch\.house_off.*`).ReplaceAllString(text[:from]+text[to:], "")
	reader, err := (&files.Reader{}).Instead(path, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	d, diags := suggest.New(path, reader, rules.All(), today())
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	for _, f := range d.Report.Findings {
		if f.Rule.ID != "switching/no-battery-disconnect" {
			continue
		}
		best := d.Best(f).List
		if len(best) == 0 || best[0].Kind != suggest.Verified || !strings.Contains(best[0].Steps[0], `into "post_to_switch"`) {
			t.Fatalf("%+v", reasons(best))
		}
		judge(t, d, f, best[0])
		return
	}
	t.Error("nobody misses the disconnect")
}

// TestOffersOfRules goes through the fixtures of every rule that offers edits. Each verified suggestion is made
// and judged anew, apart from what found it; each rule has one at least.
func TestOffersOfRules(t *testing.T) {
	for _, r := range rules.All() {
		if len(r.Offers) == 0 {
			continue
		}
		t.Run(r.ID, func(t *testing.T) {
			t.Parallel()
			paths, err := filepath.Glob(filepath.Join("../../rules", r.Family(), "testdata", strings.TrimPrefix(r.ID, r.Family()+"/"), "*.hcl"))
			if err != nil || len(paths) == 0 {
				t.Fatal("no fixtures", err)
			}
			verified := 0
			for _, path := range paths {
				verified += mended(t, r, path)
			}
			if (verified == 0) != slices.Contains(bare, r.ID) {
				t.Errorf("it offers edits, and %d findings in its fixtures are mended by one; is it listed as bare: %v", verified, slices.Contains(bare, r.ID))
			}
		})
	}
}

// mended counts the findings of a rule in a plan that a verified suggestion clears.
func mended(t *testing.T, r *lint.Rule, path string) int {
	t.Helper()
	d, diags := suggest.New(path, &files.Reader{}, rules.All(), today())
	if len(diags) > 0 || d.Plan.Kit != nil || d.Report.Tainted() {
		return 0
	}
	n := 0
	for _, f := range d.Report.Findings {
		if f.Rule.ID != r.ID || f.Waived != nil {
			continue
		}
		best := d.Best(f).List
		if len(best) == 0 || best[0].Kind == suggest.Sketch {
			continue
		}
		n++
		judge(t, d, f, best[0])
		if waiver := r.ID == "plan/stale-promise"; waiver != (best[0].Kind == suggest.SameCircuit) {
			t.Errorf("%s: %q is called %s", path, best[0].Steps, best[0].Kind)
		}
	}
	return n
}

// judge makes a suggestion and looks at the plan that comes out: its own finding is gone, none is worse, and
// nothing but the lines of its edits changed.
func judge(t *testing.T, d *suggest.Desk, f *check.Finding, x suggest.Suggestion) {
	t.Helper()
	text, err := suggest.Apply(d.Src, x.Edits)
	if err != nil || string(text) != string(x.Result) {
		t.Errorf("%s: the edits of %q do not give its text: %v", d.Path, x.Steps, err)
	}
	reader, err := (&files.Reader{}).Instead(d.Path, text)
	if err != nil {
		t.Fatal(err)
	}
	plan, diags, _ := reader.Load(d.Path)
	if diags.HasErrors() {
		t.Fatalf("%s: %q gives no plan: %v", d.Path, x.Steps, diags)
	}
	after := check.Run(plan, rules.All(), today())
	if found(after)[key(f)] || after.Tainted() {
		t.Errorf("%s: %q does not clear %s", d.Path, x.Steps, key(f))
	}
	if worse := worsened(d.Report, after); len(worse) > 0 {
		t.Errorf("%s: %q makes worse: %q", d.Path, x.Steps, worse)
	}
	if a, b := remarks(d.Src), remarks(text); a != b && !strings.Contains(strings.Join(x.Steps, " "), "ake ") {
		t.Errorf("%s: %q changes comments:\n%s", d.Path, x.Steps, suggest.Unified(d.Path, []byte(a), []byte(b)))
	}
}

// remarks are the comments of a plan, one to a line.
func remarks(src []byte) string {
	var out strings.Builder
	for l := range strings.Lines(string(src)) {
		if _, c, ok := strings.Cut(l, "#"); ok {
			out.WriteString(strings.TrimSpace(c) + "\n")
		}
	}
	return out.String()
}

// advised is a comment in a plan that says how a finding is to be mended first: rule, part and what to do.
var advised = regexp.MustCompile(`(?m)^# mend (\S+) (\S+): (.*)$`)

// TestMends has plans with flaws that one change alone does not clear, each with the first advice that is wanted, as worked
// out by hand beside it.
func TestMends(t *testing.T) {
	plans, err := filepath.Glob(filepath.Join("..", "..", "testdata", "mends", "*.wiring.hcl"))
	if err != nil || len(plans) == 0 {
		t.Fatal(plans, err)
	}
	for _, path := range plans {
		d := opened(t, path)
		for _, want := range advised.FindAllStringSubmatch(string(d.Src), -1) {
			i := slices.IndexFunc(d.Report.Findings, func(f *check.Finding) bool {
				return f.Rule.ID == want[1] && f.Verdict.Subject.Header().Addr == want[2]
			})
			if i < 0 {
				t.Errorf("%s: %s is not found of %s", path, want[1], want[2])
				continue
			}
			ways := d.Best(d.Report.Findings[i])
			if !ways.Good() || strings.Join(ways.List[0].Steps, " ") != want[3] {
				t.Errorf("%s: %q, want %q", path, reasons(ways.List), want[3])
				continue
			}
			judge(t, d, d.Report.Findings[i], ways.List[0])
		}
	}
}
