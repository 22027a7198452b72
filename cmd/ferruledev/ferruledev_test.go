package main

import (
	"bytes"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/schema"
)

// module is a scratch module with one family of rules, and the working folder of the test.
func module(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, d := range []string{"schema", "rules/some-family"} {
		if err := os.MkdirAll(filepath.Join(dir, d), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "go.mod"), []byte("module ferrule\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	t.Chdir(filepath.Join(dir, "schema"))
	return dir
}

func command(t *testing.T, want int, args ...string) (stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	if got := Main(args, &out, &errs); got != want {
		t.Errorf("%q exits with %d, wanted %d: %s", args, got, want, &errs)
	}
	return out.String(), errs.String()
}

func TestGen(t *testing.T) {
	dir := module(t)
	_, why := command(t, 1, "gen", "-check")
	if !strings.Contains(why, "schema/README.md, rules/README.md") || !strings.Contains(why, "go run ./cmd/ferruledev gen") {
		t.Errorf("%q names neither what is stale nor what to run", why)
	}
	command(t, 0, "gen")
	command(t, 0, "gen", "-check")
	if out, _ := command(t, 0, "gen"); out != "" {
		t.Errorf("nothing was stale, and it wrote: %s", out)
	}
	page := filepath.Join(dir, "schema", "README.md")
	if got, err := os.ReadFile(page); err != nil || string(got) != schema.Reference() {
		t.Errorf("%s is not the reference (%v)", page, err)
	}
	if err := os.WriteFile(page, []byte("edited by hand\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, why := command(t, 1, "gen", "-check"); !strings.Contains(why, "schema/README.md") || strings.Contains(why, "rules/README.md") {
		t.Errorf("%q", why)
	}
	if got, _ := os.ReadFile(page); string(got) != "edited by hand\n" {
		t.Error("-check wrote")
	}
}

func TestRulesPage(t *testing.T) {
	page := rulesPage([]*lint.Rule{{
		ID: "some/rule", Claim: "One | two.", Words: []lint.Severity{lint.Caution, lint.Warning}, Subject: "fuse", When: "When.", Why: "Why.", Numbers: "None.", Not: "Not.",
		Offer: "Offer.", Since: "0.1", Cites: []lint.Citation{{Ref: "33 CFR 183.455", Standing: lint.FromMemory, Note: "a note"}, {Ref: "common practice", Standing: lint.CommonPractice}},
	}})
	for _, want := range []string{
		"| [some/rule](#somerule) | warning | One \\| two. |\n", "\n## some/rule\n\nOne | two.\n", "\n**Why it hurts.** Why.\n",
		"\n**Where it comes from.**\n- 33 CFR 183.455: from memory, not opened; a note\n- common practice\n",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}

func TestNewRule(t *testing.T) {
	dir := module(t)
	out, _ := command(t, 0, "new-rule", "some-family/too-big")
	if !strings.Contains(out, "\ttooBig,\n") || !strings.Contains(out, "rules/some-family/testdata/too-big/near.wiring.hcl") {
		t.Errorf("%s", out)
	}
	file := filepath.Join(dir, "rules", "some-family", "too_big.go")
	if f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution); err != nil || f.Name.Name != "somefamily" {
		t.Errorf("%s: %v", file, err)
	}
	for _, kind := range []string{"violating", "clean", "near"} {
		plan := filepath.Join(dir, "rules", "some-family", "testdata", "too-big", kind+".wiring.hcl")
		src, err := os.ReadFile(plan)
		if err != nil {
			t.Fatal(err)
		}
		if _, diags := schema.Decode(plan, src, nil); diags.HasErrors() {
			t.Error(diags)
		}
		if want := strings.Contains(string(src), "# want"); want == (kind == "clean") {
			t.Errorf("%s: wants: %v", plan, want)
		}
	}
	if _, why := command(t, 1, "new-rule", "some-family/too-big"); !strings.Contains(why, "there already") {
		t.Errorf("%q", why)
	}
}

func TestWrongCommandLines(t *testing.T) {
	module(t)
	command(t, 1, "new-rule", "no-such-family/rule")
	command(t, 1, "new-rule", "some-family/../x")
	command(t, 1, "new-rule", "norule")
	for _, args := range [][]string{{}, {"gen", "x"}, {"new-rule"}, {"new-rule", "-check", "some-family/a"}, {"nonsense"}, {"gen", "-x"}} {
		if _, why := command(t, 2, args...); why != help {
			t.Errorf("%q: %q", args, why)
		}
	}
	t.Chdir("/")
	command(t, 1, "gen")
}
