package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
)

// TestSuggestOutOfTime runs out of time while offers are asked for: no half of a result passes for all of it,
// and the status is that of a run that was stopped.
func TestSuggestOutOfTime(t *testing.T) {
	const patience = 2 * time.Second
	slow := func() []*lint.Rule {
		r := madeRules()[0]
		r.Offers = append([]lint.Offer{func(*lint.Pass, lint.Verdict) []lint.Proposal {
			time.Sleep(patience)
			return nil
		}}, r.Offers...)
		return []*lint.Rule{r}
	}
	path := filepath.Join(t.TempDir(), "tern.wiring.hcl")
	plan := "system \"tern\" {\n  title = \"Tern\"\n}\nsource \"pack\" {\n  kind = \"battery\"\n}\nfuse \"main\" {\n  on = source.pack\n  rating = \"40 A\"\n}\n"
	if err := os.WriteFile(path, []byte(plan), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args string
		out  string // what is said, on either
	}{
		{"suggest", "not finished"}, {"suggest --finding 1", "Not done"}, {"suggest --all", "Not done"}, {"lint --suggest", "not finished"},
		{"lint --suggest --format json", "Suggestions not finished"}, {"suggest --all --diff", "nothing was printed or written"},
		{"suggest --finding 1 --diff", "nothing was printed or written"}, {"suggest --finding 1 --write", "nothing was printed or written"}, {"suggest --all --write", "nothing was printed or written"},
	} {
		t.Run(c.args, func(t *testing.T) {
			t.Parallel()
			var out, problem bytes.Buffer
			run := &cli{in: strings.NewReader(""), out: &out, rules: slow}
			status := run.run(append(strings.Fields(c.args), path, "--timeout", patience.String()), &problem)
			if status != exitTool || !strings.Contains(out.String()+problem.String(), c.out) || strings.Contains(c.out, "nothing was printed") && out.Len() > 0 {
				t.Errorf("status %d\n%s%s", status, &out, &problem)
			}
			if text, err := os.ReadFile(path); err != nil || string(text) != plan {
				t.Errorf("the plan is now %q, %v", text, err)
			}
		})
	}
}
