package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/rules"
	"ferrule/schema/files"
)

const exampleFolder = "../../examples"

// checked gives the report on each plan of a folder of examples; they end in .wiring.hcl.
func checked(t *testing.T, folder string) map[string]*check.Report {
	t.Helper()
	paths, err := files.Find([]string{folder}, false)
	if err != nil {
		t.Fatal(err)
	}
	if len(paths) != 4 {
		t.Fatalf("%s has the plans %q; want four", folder, paths)
	}
	out := map[string]*check.Report{}
	for _, path := range paths {
		plan, diags, _ := (&files.Reader{}).Load(path)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		r := check.Run(plan, rules.All(), check.Options{Today: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)})
		if r.Diagnostics.HasErrors() || r.Tainted() || !r.Summary.States.Complete {
			t.Fatalf("%s was not checked whole: %v %q %+v", path, r.Diagnostics, r.Failures, r.Summary.States)
		}
		out[path] = r
	}
	return out
}

func TestExamplesAreClean(t *testing.T) {
	for path, r := range checked(t, exampleFolder) {
		if r.Reaches(lint.Warning) {
			t.Errorf("%s does not pass at warning", path)
		}
		for _, f := range r.Findings {
			if f.Waived == nil && f.Verdict.Outcome == lint.Violated {
				t.Errorf("%s: %s at %s: %s", path, f.Rule.ID, f.Verdict.Subject.Header().Addr, f.Message())
			}
		}
	}
}

func TestExamplesFlawed(t *testing.T) {
	for path, r := range checked(t, filepath.Join(exampleFolder, "flawed")) {
		if !r.Reaches(lint.Warning) {
			t.Errorf("%s passes at warning", path)
		}
		all := seeds(t, path)
		if len(all) < 3 {
			t.Errorf("%s has %d seeded hazards; want three or more", path, len(all))
		}
		for _, s := range all {
			if !s.found(r) {
				t.Errorf("%s:%d: %s with %v is not found", path, s.line, s.rule, s.state)
			}
		}
	}
}

// TestExamplesSize counts blocks as the file has them: a branch with all that is in it is one.
func TestExamplesSize(t *testing.T) {
	paths, err := files.Find([]string{exampleFolder, filepath.Join(exampleFolder, "flawed")}, false)
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		f, diags := hclsyntax.ParseConfig(src, path, hcl.InitialPos)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		if n := len(f.Body.(*hclsyntax.Body).Blocks); n < 25 || n > 60 {
			t.Errorf("%s has %d blocks; want 25 to 60", path, n)
		}
	}
}

// seed is a hazard that was put in on purpose.
type seed struct {
	rule  string
	state map[string]string // address to position; nil where the comment says "any"
	line  int               // of the header of the block that it shows at
}

// seeds reads the comments "# seeded: RULE, ADDRESS = POSITION, ..." or "# seeded: RULE, any". Several
// may stand above one block.
func seeds(t *testing.T, path string) []seed {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var out []seed
	lines := strings.Split(string(src), "\n")
	for i, l := range lines {
		text, ok := strings.CutPrefix(strings.TrimSpace(l), "# seeded: ")
		if !ok {
			continue
		}
		below := slices.IndexFunc(lines[i:], func(l string) bool { return !strings.HasPrefix(strings.TrimSpace(l), "#") })
		out = append(out, parseSeed(t, text, i+below+1))
	}
	return out
}

func parseSeed(t *testing.T, text string, line int) seed {
	t.Helper()
	parts := strings.Split(text, ", ")
	s := seed{rule: parts[0], line: line}
	if len(parts) == 2 && parts[1] == "any" {
		return s
	}
	s.state = map[string]string{}
	for _, p := range parts[1:] {
		addr, position, ok := strings.Cut(p, " = ")
		if !ok {
			t.Fatalf("%q is no position", p)
		}
		s.state[addr] = position
	}
	if len(s.state) == 0 {
		t.Fatalf("%q says neither a state nor any", text)
	}
	return s
}

// found looks for the finding among those that stand, alone or folded under another.
func (s seed) found(r *check.Report) bool {
	shown := func(addr string) bool {
		return slices.ContainsFunc(r.Findings, func(f *check.Finding) bool {
			return f.Waived == nil && (f.Rule.ID == s.rule && f.Verdict.Subject.Header().Addr == addr ||
				slices.ContainsFunc(f.Folded, func(x check.Folded) bool { return x.Rule == s.rule && x.Subject == addr }))
		})
	}
	return slices.ContainsFunc(r.Verdicts[s.rule], func(v lint.Verdict) bool {
		h := v.Subject.Header()
		return v.Outcome == lint.Violated && h.Range.Start.Line == s.line && s.agrees(v.State) && shown(h.Addr)
	})
}

// agrees wants no other position on what both name, and something that both name.
func (s seed) agrees(state []lint.Position) bool {
	common := 0
	for _, p := range state {
		want, named := s.state[p.Addr]
		if named && want != p.Position {
			return false
		}
		if named {
			common++
		}
	}
	return s.state == nil || common > 0
}
