// Package linttest checks a rule against plans that say what they expect of it. Only tests import it.
//
// A folder holds plans, NAME.wiring.hcl or NAME.wiring.json, at least one each whose name starts
// with violating, clean and near. A comment on the header line of a block says what is to be found
// there:
//
//	source "pack" { # want "meets no overcurrent device"
//	fuse "main" {   # want danger "cannot open" not-proven "`interrupting`"
//
// Each regexp is one finding, quoted as in Go. A signal word before it pins the severity that the
// finding counts as; not-proven asks for one that is not proven, and without it a violation is
// meant. A finding that is folded under another is found too. Anything found and not wanted fails,
// as does anything wanted and not found. A line "# today 2027-01-01" sets the day of the run. Kits
// are read beside the plan, and may have wants of their own. A JSON plan has no comments: its wants
// stand in NAME.want, one on a line with the number of the line in front: 12 danger "cannot open".
package linttest

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// today is the day of a run whose plan names none.
var today = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

// Run checks a rule against the plans of a folder.
func Run(t *testing.T, rule *lint.Rule, dir string) { RunWith(t, rule, nil, dir) }

// RunWith is Run for a rule that reviews others: they are asked too, and what they find is nothing
// to the test.
func RunWith(t *testing.T, rule *lint.Rule, others []*lint.Rule, dir string) {
	t.Helper()
	if err := lint.Validate([]*lint.Rule{rule}); err != nil {
		t.Error(err)
	}
	plans, problems := plansIn(dir)
	for _, p := range problems {
		t.Error(p)
	}
	for _, plan := range plans {
		t.Run(filepath.Base(plan), func(t *testing.T) {
			for _, p := range problemsOf(rule, others, plan) {
				t.Error(p)
			}
		})
	}
}

// plansIn lists the plans of a folder, and which kinds it lacks.
func plansIn(dir string) (plans, problems []string) {
	for _, pattern := range []string{"*.wiring.hcl", "*.wiring.json"} {
		found, err := filepath.Glob(filepath.Join(dir, pattern))
		if err != nil {
			problems = append(problems, err.Error())
		}
		plans = append(plans, found...)
	}
	plans = slices.DeleteFunc(plans, func(p string) bool {
		src, err := os.ReadFile(p)
		return err == nil && schema.IsKit(p, src)
	})
	for _, kind := range []string{"violating", "clean", "near"} {
		if !slices.ContainsFunc(plans, isKind(kind)) {
			problems = append(problems, fmt.Sprintf("%s has no plan whose name starts with %q", dir, kind))
		}
	}
	return plans, problems
}

func isKind(kind string) func(string) bool {
	return func(plan string) bool { return strings.HasPrefix(filepath.Base(plan), kind) }
}

// problemsOf is all that is wrong with a rule on one plan.
func problemsOf(rule *lint.Rule, others []*lint.Rule, path string) []string {
	first, err := runPlan(rule, others, path)
	if err != nil {
		return []string{err.Error()}
	}
	second, err := runPlan(rule, others, path)
	if err != nil {
		return []string{err.Error()}
	}
	var out []string
	if !reflect.DeepEqual(first.report, second.report) {
		out = append(out, "two runs gave different reports: the rule's answers depend on the order of a map, or on what an earlier run left behind")
	}
	out = append(out, first.report.Failures...)
	for _, d := range first.report.Diagnostics {
		out = append(out, fmt.Sprintf("%s: %s: %s", d.Subject, d.Summary, d.Detail))
	}
	found := first.found(rule)
	if len(found) == 0 && isKind("violating")(path) {
		out = append(out, "nothing is found in a plan that is named violating")
	}
	if len(found) > 0 && isKind("clean")(path) {
		out = append(out, "something is found in a plan that is named clean")
	}
	out = append(out, compare(first.wants, found)...)
	out = append(out, wrongWords(rule, first.report)...)
	return append(out, unasked(rule, first)...)
}

// ran is one run over one plan.
type ran struct {
	plan   *schema.Plan
	report *check.Report
	wants  []want
}

func runPlan(rule *lint.Rule, others []*lint.Rule, path string) (*ran, error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{path: src}
	plan, diags := schema.Decode(path, src, func(from, kit string) (string, []byte, error) {
		name := filepath.Join(filepath.Dir(from), filepath.FromSlash(kit))
		src, err := os.ReadFile(name)
		files[name] = src
		return name, src, err
	})
	if diags.HasErrors() {
		return nil, diags
	}
	if side := sidecar(path); strings.HasSuffix(path, ".json") {
		if src, err := os.ReadFile(side); err == nil {
			files[side] = src
		}
	}
	out := &ran{plan: plan}
	day, err := out.read(files)
	if err != nil {
		return nil, err
	}
	out.report = check.Run(plan, append([]*lint.Rule{rule}, others...), check.Options{Today: day})
	return out, nil
}

// unasked names the blocks of the type that the rule is about of which it said nothing.
func unasked(rule *lint.Rule, r *ran) []string {
	asked := map[string]bool{}
	for _, v := range r.report.Verdicts[rule.ID] {
		asked[v.Subject.Header().Addr] = true
	}
	var out []string
	for subject := range strings.SplitSeq(rule.Subject, ";") {
		for _, b := range r.plan.Blocks() {
			if h := b.Header(); h.Type == strings.TrimSpace(subject) && !asked[h.Addr] {
				out = append(out, fmt.Sprintf("%s: no verdict on %s, though the rule is about every %s", h.Range, h.Addr, h.Type))
			}
		}
	}
	return out
}

// wrongWords names the verdicts that carry a signal word which the rule does not list.
func wrongWords(rule *lint.Rule, r *check.Report) []string {
	var out []string
	for _, v := range r.Verdicts[rule.ID] {
		if v.Outcome != lint.Holds && !slices.Contains(rule.Words, v.Word) {
			out = append(out, fmt.Sprintf("the verdict on %s carries %s, which is not among the rule's words", v.Subject.Header().Addr, v.Word))
		}
	}
	return out
}
