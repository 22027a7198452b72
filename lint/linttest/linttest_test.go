package linttest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/schema"
)

// unrated finds fuses of more than 10 A, and asks for a rating where there is none. Fuses called
// "twin" have one cause.
func unrated() *lint.Rule {
	return &lint.Rule{
		ID: "test/unrated", Claim: "A fuse is big.", Words: []lint.Severity{lint.Warning, lint.Caution}, Subject: "fuse; waiver",
		When: "w", Why: "w", Numbers: "n", Not: "n", Offer: "o", Since: "0.1",
		Cites: []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice}},
		Run:   bigFuses,
	}
}

func bigFuses(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning, Message: lint.Quote(f) + " is big."}
		switch {
		case !f.Rating.Set:
			v.Outcome, v.Message = lint.NotProven, "How big "+lint.Quote(f)+" is, is not written."
			v.Missing = []lint.Missing{{Subject: f.Addr, Attribute: "rating"}}
		case f.Rating.Value > 10:
			v.Outcome = lint.Violated
		}
		if f.Name == "twin" || f.Name == "twin2" {
			v.Group = "twins"
		}
		out = append(out, v)
	}
	for _, w := range p.Plan.Waivers {
		v := lint.Verdict{Subject: w, Outcome: lint.Holds, Word: lint.Caution, Message: "Too old."}
		if w.Until.Value.Before(p.Today) {
			v.Outcome = lint.Violated
		}
		out = append(out, v)
	}
	return out
}

func write(t *testing.T, files ...string) (dir string) {
	t.Helper()
	dir = t.TempDir()
	for i := 0; i < len(files); i += 2 {
		if err := os.WriteFile(filepath.Join(dir, files[i]), []byte(files[i+1]), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const (
	system = "system \"s\" {\n}\n"
	big    = "fuse \"main\" { %\n  rating = \"30 A\"\n}\n"
	silent = "fuse \"main\" { %\n}\n"
	small  = "fuse \"main\" {\n  rating = \"5 A\"\n}\n"
	twins  = "fuse \"twin\" { # want \"twin\"\n  rating = \"30 A\"\n}\nfuse \"twin2\" { %\n  rating = \"30 A\"\n}\n"
	waived = "waiver \"w\" { %\n  rule = \"x/y\"\n  at = fuse.main\n  until = \"2026-12-01\"\n}\n"
	asJSON = "{\n\"system\": {\"s\": {}},\n\"fuse\": {\n\"main\": {\"rating\": \"30 A\"}}}\n"
)

func commented(plan, comment string) string { return system + strings.Replace(plan, "%", comment, 1) }

func TestProblems(t *testing.T) {
	for _, c := range []struct {
		name, file, plan string
		want             string // a part of the one problem; "" where there is none
	}{
		{"as wanted", "violating", commented(big, `# want warning "\"main\" is big"`), ""},
		{"any word", "near", commented(big, "# want `is big`"), ""},
		{"not found", "near", commented(small, "") + "# nothing\n" + commented("load \"x\" { %\n}\n", `# want "x"`)[len(system):], "wanted and not found"},
		{"not wanted", "near", commented(big, ""), "found and not wanted: "},
		{"wanted twice", "near", commented(big, `# want "big" "big"`), "wanted and not found"},
		{"another word", "near", commented(big, `# want danger "big" # want "big"`), "wanted and not found"},
		{"a violation is not what is not proven", "near", commented(silent, `# want not-proven "not written" "not written"`), "wanted and not found"},
		{"not proven counts one step lower", "near", commented(silent, `# want caution not-proven "not written"`), ""},
		{"folded is found", "near", commented(twins, `# want warning "twin2"`), ""},
		{"folded and not wanted", "near", commented(twins, ""), "found and not wanted"},
		{"a typing error", "near", commented(big, `# want wrning "big"`), `"wrning"`},
		{"no quotes", "near", commented(big, `# want warning`), "without a quoted regexp"},
		{"a bad regexp", "near", commented(big, `# want "("`), "missing closing"},
		{"a plan that cannot be read", "near", "fuse \"main\" {\n", "near.wiring.hcl"},
		{"violating and nothing found", "violating", commented(small, ""), "nothing is found"},
		{"clean and something found", "clean", commented(big, `# want "big"`), "something is found"},
		{"today by default", "near", commented(waived, "") + small, ""},
		{"today as the plan says", "near", "# today 2027-01-01\n" + commented(waived, `# want "old"`) + small, ""},
		{"no such day", "near", "# today 2027-13-01\n" + system, "2027-13-01"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := write(t, c.file+".wiring.hcl", c.plan)
			expect(t, problemsOf(unrated(), nil, filepath.Join(dir, c.file+".wiring.hcl")), c.want)
		})
	}
}

func expect(t *testing.T, got []string, want string) {
	t.Helper()
	if want == "" && len(got) > 0 || want != "" && (len(got) == 0 || !strings.Contains(got[0], want)) {
		t.Errorf("problems %q, wanted %q", got, want)
	}
}

func TestJSONAndSidecar(t *testing.T) {
	for want, sidecar := range map[string]string{"": `4 warning "main"`, "wanted and not found": "# beside\n4 \"main\"\n3 not-proven \"x\"", "found and not wanted": ""} {
		dir := write(t, "near.wiring.json", asJSON, "near.want", sidecar)
		expect(t, problemsOf(unrated(), nil, filepath.Join(dir, "near.wiring.json")), want)
	}
}

func TestKitBesideThePlan(t *testing.T) {
	use := system + "use \"rear\" {\n  kit = \"./part.wiring.hcl\"\n}\n"
	kit := "kit \"part\" {\n}\n" + strings.Replace(big, "%", `# want "big"`, 1)
	dir := write(t, "violating.wiring.hcl", use, "part.wiring.hcl", kit)
	expect(t, problemsOf(unrated(), nil, filepath.Join(dir, "violating.wiring.hcl")), "")
	plans, _ := plansIn(dir)
	if len(plans) != 1 {
		t.Errorf("the kit is no plan: %v", plans)
	}
}

func TestDefectiveRules(t *testing.T) {
	flip := false
	for want, run := range map[string]func(*lint.Pass) []lint.Verdict{
		"different reports": func(p *lint.Pass) []lint.Verdict {
			v := bigFuses(p)
			if flip = !flip; flip {
				v[0].Path = []string{"fuse.main"}
			}
			return v
		},
		"no verdict on fuse.main": func(*lint.Pass) []lint.Verdict { return nil },
		"rule test/unrated failed": func(p *lint.Pass) []lint.Verdict {
			var none *schema.Fuse
			return []lint.Verdict{{Outcome: lint.Holds, Subject: p.Plan.Fuses[0], Message: none.Name}}
		},
		"not among the rule's words": func(p *lint.Pass) []lint.Verdict {
			v := bigFuses(p)
			v[0].Outcome, v[0].Word = lint.Violated, lint.Danger
			return v
		},
	} {
		rule := unrated()
		rule.Run = run
		dir := write(t, "near.wiring.hcl", commented(small, ""))
		got := strings.Join(problemsOf(rule, nil, filepath.Join(dir, "near.wiring.hcl")), "\n")
		if !strings.Contains(got, want) {
			t.Errorf("wanted %q in %q", want, got)
		}
	}
}

func TestKindsOfPlan(t *testing.T) {
	dir := write(t, "violating-one.wiring.hcl", "", "near.wiring.json", "{}")
	if _, problems := plansIn(dir); len(problems) != 1 || !strings.Contains(problems[0], `"clean"`) {
		t.Errorf("problems %q", problems)
	}
}

func TestRun(t *testing.T) {
	reviewer := unrated()
	reviewer.ID, reviewer.Subject = "test/reviewer", "system"
	reviewer.Run, reviewer.Review = nil, func(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
		v := lint.Verdict{Subject: p.Plan.System, Outcome: lint.Holds}
		for _, found := range ran.Verdicts["test/unrated"] {
			if found.Outcome == lint.Violated {
				v.Outcome, v.Word, v.Message = lint.Violated, lint.Caution, "Something is big."
			}
		}
		return []lint.Verdict{v}
	}
	plain := strings.Replace(big, "%", "", 1)
	dir := write(t, "violating.wiring.hcl", "system \"s\" { # want caution \"Something is big\"\n}\n"+plain,
		"clean.wiring.hcl", commented(small, ""), "near.wiring.hcl", system)
	RunWith(t, reviewer, []*lint.Rule{unrated()}, dir)
}
