// Package explain writes the page of a rule, and of a finding with all its numbers, as one document
// value that any view can lay out. It decides nothing: everything on a page is in the rule, in the
// report, or in the numbers that the verdict rests on.
package explain

import (
	"io"
	"strings"

	"ferrule/lint/term"
)

// Page is a document of titled sections.
type Page struct {
	Title    string
	Sections []Section
}

// Section is a heading with lines; the first section of a page has none.
type Section struct {
	Heading string
	Lines   []Line
}

// Line is a paragraph. A mark, such as "3.", hangs before it.
type Line struct{ Mark, Text string }

// add puts a section on the page, unless it has nothing to say.
func (p *Page) add(heading string, lines ...Line) {
	kept := lines[:0]
	for _, l := range lines {
		if strings.TrimSpace(l.Text) != "" {
			kept = append(kept, l)
		}
	}
	if len(kept) > 0 {
		p.Sections = append(p.Sections, Section{heading, kept})
	}
}

func text(s string) Line { return Line{Text: s} }

// Write lays the page out for a terminal of a width. All text is escaped.
func (p *Page) Write(w io.Writer, width int) error {
	var b strings.Builder
	for _, l := range term.Wrap(term.Clean(p.Title), width) {
		b.WriteString(l + "\n")
	}
	for _, s := range p.Sections {
		b.WriteByte('\n')
		if s.Heading != "" {
			b.WriteString(term.Clean(s.Heading) + "\n")
		}
		for _, l := range s.Lines {
			l.write(&b, width)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

const indent = "  "

func (l Line) write(b *strings.Builder, width int) {
	mark := term.Clean(l.Mark)
	if mark != "" {
		mark = term.Pad(mark, 4) + " "
	}
	hang := strings.Repeat(" ", term.Width(mark))
	for i, t := range term.Wrap(term.Clean(l.Text), width-len(indent)-len(hang)) {
		if i > 0 {
			mark = hang
		}
		b.WriteString(indent + mark + t + "\n")
	}
}
