package schema

import (
	"fmt"
	"sort"
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// A plan with a million errors is an attack; the rest is counted, not listed.
const mostErrors = 1000

// problems collects what is wrong with a plan's files.
type problems struct {
	plan    string // its file, for errors that have no place
	list    hcl.Diagnostics
	seen    map[string]bool
	dropped int
	last    hcl.Range
	sizes   map[string]int // bytes of each file read
}

func newProblems(plan string) *problems {
	return &problems{plan: plan, seen: map[string]bool{}, sizes: map[string]int{}}
}

// add notes an error at a place, once.
func (p *problems) add(at hcl.Range, summary, format string, args ...any) {
	p.note(at, summary, fmt.Sprintf(format, args...), "")
}

// note is add with a remark that does not make it another error: a kit used twice has its mistakes once.
func (p *problems) note(at hcl.Range, summary, detail, remark string) {
	if len(p.list) >= mostErrors {
		p.dropped, p.last = p.dropped+1, at
		return
	}
	at = p.inside(at)
	key := fmt.Sprintf("%s:%d:%d:%s:%s", at.Filename, at.Start.Byte, at.End.Byte, summary, detail)
	if p.seen[key] {
		return
	}
	p.seen[key] = true
	p.list = append(p.list, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: summary, Detail: detail + remark, Subject: &at})
}

// inside moves a range into the file that it is about.
func (p *problems) inside(at hcl.Range) hcl.Range {
	if at.Filename == "" {
		at = hcl.Range{Filename: p.plan, Start: hcl.InitialPos, End: hcl.InitialPos}
	}
	size := p.sizes[at.Filename]
	if at.Start.Line < 1 {
		at.Start = hcl.InitialPos
	}
	at.Start.Byte = min(max(at.Start.Byte, 0), size)
	at.End.Byte = min(max(at.End.Byte, at.Start.Byte), size)
	if at.End.Line < at.Start.Line {
		at.End = at.Start
	}
	return at
}

// sorted gives the errors by place, those of the plan's own file first.
func (p *problems) sorted() hcl.Diagnostics {
	sort.SliceStable(p.list, func(i, j int) bool {
		a, b := p.list[i].Subject, p.list[j].Subject
		if a.Filename != b.Filename {
			return a.Filename == p.plan || b.Filename != p.plan && a.Filename < b.Filename
		}
		return a.Start.Byte < b.Start.Byte
	})
	if p.dropped > 0 {
		at := p.inside(p.last)
		p.list = append(p.list, &hcl.Diagnostic{
			Severity: hcl.DiagError, Summary: "Too many errors", Subject: &at,
			Detail: fmt.Sprintf("%d more errors are not listed.", p.dropped),
		})
	}
	return p.list
}

// place names a range for a message about another one.
func place(r hcl.Range) string { return fmt.Sprintf("%s:%d", r.Filename, r.Start.Line) }

// clip shortens text from a plan for a message.
func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "..."
	}
	return s
}

// and lists words in a sentence.
func and(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}
