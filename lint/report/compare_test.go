package report

import (
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/lint/compare"
)

// TestWords has answers with one sentence that are as grave as before, or not: the words are told where they differ.
func TestWords(t *testing.T) {
	bad, open := lint.Violated, lint.NotProven
	of := func(o lint.Outcome, word, counts lint.Severity, times int, beside lint.Severity) compare.Answer {
		return compare.Answer{Verdict: lint.Verdict{Outcome: o, Word: word, Message: "The wire is thin."}, Counts: counts, Times: times, Unproven: beside}
	}
	for _, c := range []struct {
		name          string
		before, after compare.Answer
		want          string
	}{
		{"the word alone", of(bad, lint.Danger, lint.Danger, 1, 0), of(bad, lint.Warning, lint.Warning, 1, 0), "danger, then warning"},
		{"the same", of(bad, lint.Danger, lint.Danger, 1, 0), of(bad, lint.Danger, lint.Danger, 1, 0), ""},
		{"cured", of(bad, lint.Danger, lint.Danger, 1, 0), of(lint.Holds, 0, 0, 1, 0), ""},
		{"not proven", of(open, lint.Danger, lint.Warning, 1, lint.Danger), of(open, lint.Warning, lint.Warning, 1, lint.Warning),
			"warning in both; if it is so, at most danger, then at most warning"},
		{"below what is beside it", of(bad, lint.Notice, lint.Warning, 1, lint.Danger), of(bad, lint.Caution, lint.Warning, 1, lint.Danger), "notice, then caution"},
		{"more of it", of(bad, lint.Notice, lint.Notice, 1, 0), of(bad, lint.Notice, lint.Notice, 3, 0), "notice in both; 1 of the kind, then 3"},
		{"one beside it", of(bad, lint.Caution, lint.Caution, 1, 0), of(bad, lint.Caution, lint.Caution, 1, lint.Caution),
			"caution in both; not proven beside it: nothing, then at most caution"},
	} {
		change := compare.Change{Before: c.before, After: c.after, Counts: lint.Danger}
		if got := words(change); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		x := newText(Style{Width: 80})
		if x.changes("Better", []compare.Change{change}); strings.Contains(x.String(), "  word   "+c.want) != (c.want != "") {
			t.Errorf("%s: %s", c.name, x)
		}
	}
}
