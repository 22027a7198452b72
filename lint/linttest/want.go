package linttest

import (
	"fmt"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
)

// want is one finding that a plan expects.
type want struct {
	file     string
	line     int
	text     *regexp.Regexp
	outcome  lint.Outcome
	severity lint.Severity // 0 where any will do
}

func (w want) String() string {
	return fmt.Sprintf("%s:%d: %s %q", w.file, w.line, strings.TrimSpace(w.outcome.String()+" "+w.severity.String()), w.text)
}

// got is one finding, on its own or folded under another.
type got struct {
	at       hcl.Range
	subject  string
	message  string
	outcome  lint.Outcome
	severity lint.Severity
}

func (g got) String() string {
	return fmt.Sprintf("%s:%d: %s %s at %s: %s", g.at.Filename, g.at.Start.Line, g.outcome, g.severity, g.subject, g.message)
}

func (w want) is(g got) bool {
	return w.file == g.at.Filename && w.line == g.at.Start.Line && w.outcome == g.outcome &&
		(w.severity == 0 || w.severity == g.severity) && w.text.MatchString(g.message)
}

// found lists what one rule found.
func (r *ran) found(rule *lint.Rule) []got {
	var out []got
	for _, f := range r.report.Findings {
		if h := f.Verdict.Subject.Header(); f.Rule.ID == rule.ID {
			out = append(out, got{h.Range, h.Addr, f.Verdict.Message, f.Verdict.Outcome, f.Severity})
		}
		for _, x := range f.Folded {
			if x.Rule == rule.ID {
				out = append(out, got{x.At, x.Subject, x.Message, x.Outcome, x.Severity})
			}
		}
	}
	return out
}

// compare matches each finding with a want of its own.
func compare(wants []want, found []got) []string {
	var out []string
	met := make([]bool, len(wants))
	for _, g := range found {
		at := -1
		for i, w := range wants {
			if !met[i] && w.is(g) {
				at = i
				break
			}
		}
		if at < 0 {
			out = append(out, "found and not wanted: "+g.String())
			continue
		}
		met[at] = true
	}
	for i, w := range wants {
		if !met[i] {
			out = append(out, "wanted and not found: "+w.String())
		}
	}
	return out
}

var (
	wantMark  = regexp.MustCompile(`(?:^|\s)# want (.*)$`)
	todayMark = regexp.MustCompile(`(?m)^\s*#? ?today (\d{4}-\d\d-\d\d)\s*$`)
	lineMark  = regexp.MustCompile(`^(\d+)\s+(.*)$`)
)

// read takes the wants and the day out of the files of a plan.
func (r *ran) read(files map[string][]byte) (time.Time, error) {
	day := today
	for _, name := range slices.Sorted(maps.Keys(files)) {
		src := files[name]
		if at := todayMark.FindSubmatch(src); at != nil {
			d, err := time.Parse(time.DateOnly, string(at[1]))
			if err != nil {
				return day, fmt.Errorf("%s: %w", name, err)
			}
			day = d
		}
		if err := r.wantsIn(name, src); err != nil {
			return day, err
		}
	}
	return day, nil
}

func (r *ran) wantsIn(name string, src []byte) error {
	number := 0
	for line := range strings.Lines(string(src)) {
		number++
		file, at, rest := name, number, wantMark.FindStringSubmatch(strings.TrimRight(line, "\r\n"))
		if base, sidecar := strings.CutSuffix(name, ".want"); sidecar {
			m := lineMark.FindStringSubmatch(strings.TrimSpace(line))
			if m == nil {
				continue
			}
			file, rest = base+".wiring.json", []string{"", m[2]}
			at, _ = strconv.Atoi(m[1])
		}
		if rest == nil {
			continue
		}
		found, err := parseWants(rest[1])
		if err != nil {
			return fmt.Errorf("%s:%d: %w", name, number, err)
		}
		for _, w := range found {
			w.file, w.line = file, at
			r.wants = append(r.wants, w)
		}
	}
	return nil
}

// parseWants reads what follows the mark: words and quoted regexps, each regexp with the words before it.
func parseWants(text string) ([]want, error) {
	var out []want
	next := want{outcome: lint.Violated}
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		quoted, err := strconv.QuotedPrefix(text)
		if err != nil {
			word, rest, _ := strings.Cut(text, " ")
			if err := next.word(word); err != nil {
				return nil, err
			}
			text = rest
			continue
		}
		text = text[len(quoted):]
		raw, err := strconv.Unquote(quoted)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", quoted, err)
		}
		if next.text, err = regexp.Compile(raw); err != nil {
			return nil, err
		}
		out = append(out, next)
		next = want{outcome: lint.Violated}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("a want without a quoted regexp")
	}
	return out, nil
}

// word takes a word that stands before a regexp.
func (w *want) word(word string) error {
	s, ok := lint.ParseSeverity(word)
	switch {
	case ok:
		w.severity = s
	case word == lint.NotProven.String():
		w.outcome = lint.NotProven
	case word != "#" && word != "want":
		return fmt.Errorf("a want says %q; it takes a signal word, not-proven and quoted regexps", word)
	}
	return nil
}

// sidecar is the file that holds the wants of a JSON plan.
func sidecar(plan string) string {
	return filepath.Join(filepath.Dir(plan), strings.TrimSuffix(filepath.Base(plan), ".wiring.json")+".want")
}
