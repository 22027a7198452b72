package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/explain"
	"ferrule/rules"
	"ferrule/schema"
)

// generated are the files that gen writes, and what it writes.
var generated = []struct {
	file string
	text func() string
}{
	{"schema/README.md", schema.Reference},
	{"rules/README.md", func() string { return rulesPage(check.Asked(rules.All())) }},
}

// generate writes the files, or names those that are not as it would write them.
func generate(root string, check bool, stdout io.Writer) error {
	var stale []string
	for _, g := range generated {
		path, want := filepath.Join(root, filepath.FromSlash(g.file)), []byte(g.text())
		have, err := os.ReadFile(path)
		switch {
		case err != nil && !errors.Is(err, os.ErrNotExist):
			return err
		case err == nil && bytes.Equal(have, want):
			continue
		case check:
			stale = append(stale, g.file)
			continue
		}
		if err := os.WriteFile(path, want, 0o644); err != nil {
			return err
		}
		fmt.Fprintln(stdout, "wrote", g.file)
	}
	if len(stale) > 0 {
		return fmt.Errorf("stale: %s; run: go run ./cmd/ferruledev gen", strings.Join(stale, ", "))
	}
	return nil
}

const rulesIntro = `# The rules

Generated from the rules themselves by ` + "`go run ./cmd/ferruledev gen`" + `: edit those, not this file.
` + "`ferrule explain RULE`" + ` prints a rule's page in the terminal. How each citation is known stands beside it.

`

// rulesPage is the list of all rules, and the page of each, in Markdown.
func rulesPage(all []*lint.Rule) string {
	var b strings.Builder
	b.WriteString(rulesIntro + "| rule | at most | what a violation means |\n| --- | --- | --- |\n")
	for _, r := range all {
		fmt.Fprintf(&b, "| [%s](#%s) | %s | %s |\n", r.ID, strings.ReplaceAll(r.ID, "/", ""), r.Top(), cell(r.Claim))
	}
	for _, r := range all {
		fmt.Fprintf(&b, "\n## %s\n", r.ID)
		for _, s := range explain.RulePage(r, all).Sections {
			section(&b, s)
		}
	}
	return b.String()
}

func cell(s string) string { return strings.ReplaceAll(s, "|", `\|`) }

func section(b *strings.Builder, s explain.Section) {
	if s.Heading != "" {
		fmt.Fprintf(b, "\n**%s.**", s.Heading)
	}
	for i, l := range s.Lines {
		switch {
		case len(s.Lines) > 1:
			fmt.Fprintf(b, "\n- %s", l.Text)
		case s.Heading != "" && i == 0:
			fmt.Fprintf(b, " %s", l.Text)
		default:
			fmt.Fprintf(b, "\n%s", l.Text)
		}
	}
	b.WriteByte('\n')
}
