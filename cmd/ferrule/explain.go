package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/explain"
	"ferrule/lint/report"
	"ferrule/schema/files"
)

type explainFlags struct {
	reading
	finding int
}

func (c *cli) explainCommand() *cobra.Command {
	var f explainFlags
	cmd := &cobra.Command{
		Use: "explain RULE | PLAN --finding N", Short: "Explains a rule, or a finding with all its numbers",
		Long: "Explain RULE says what a rule looks for, why it hurts, its limits and where they come from.\n" +
			"The last part of a rule's id is enough where only one rule has it.\n\n" +
			"Explain PLAN --finding N shows a finding of a plan, by its number in the report: every number with\n" +
			"its origin and formula, the path, the state, and what would clear it. Give the flags that the\n" +
			"report was made with.",
		Example: "  ferrule explain overcurrent/unprotected-run\n  ferrule explain unprotected-run\n  ferrule explain camper.wiring.hcl --finding 3",
		Args:    exactly(1, "a rule, or a plan with --finding"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if cmd.Flags().Changed("finding") {
				return c.explainFinding(&f, args[0])
			}
			return c.explainRule(args[0])
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return ids(check.Asked(c.rules())), cobra.ShellCompDirectiveDefault
		},
	}
	f.flags(cmd)
	cmd.Flags().IntVar(&f.finding, "finding", 0, "the number of the finding in the report of the plan")
	return cmd
}

func ids(rules []*lint.Rule) []string {
	var out []string
	for _, r := range rules {
		out = append(out, r.ID)
	}
	return out
}

func (c *cli) explainRule(name string) error {
	rule, err := findRule(check.Asked(c.rules()), name)
	if err != nil {
		return err
	}
	return explain.RulePage(rule, check.Asked(c.rules())).Write(c.out, style(c.out, "never").Width)
}

// findRule takes an id, or the last part of one where only one rule has it.
func findRule(rules []*lint.Rule, name string) (*lint.Rule, error) {
	var found []*lint.Rule
	var parts []string
	for _, r := range rules {
		if r.ID == name {
			return r, nil
		}
		last := strings.TrimPrefix(r.ID, r.Family()+"/")
		if parts = append(parts, last); last == name {
			found = append(found, r)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return nil, usagef("several rules are called %s: %s", name, lint.And(ids(found)...))
	case files.IsPlan(name) || exists(name):
		return nil, usagef("%s is a plan; say which finding of it: ferrule explain %s --finding N", name, name)
	}
	near := nearest(name, ids(rules))
	if i := nearest(name, parts); near == "" && i != "" {
		return findHint(rules, name, i)
	}
	if all := containing(rules, name); near == "" && len(all) > 0 {
		return nil, usagef("there is no rule %q; its word is in %s", name, lint.And(all...))
	}
	return nil, unknownRule(name, near)
}

// containing lists the rules that have a word in their id.
func containing(rules []*lint.Rule, word string) []string {
	var out []string
	for _, id := range ids(rules) {
		if word != "" && strings.Contains(id, strings.ToLower(word)) {
			out = append(out, id)
		}
	}
	return out
}

// findHint names the rules that have the part of an id that was probably meant.
func findHint(rules []*lint.Rule, name, part string) (*lint.Rule, error) {
	for _, r := range rules {
		if strings.HasSuffix(r.ID, "/"+part) {
			return nil, unknownRule(name, r.ID)
		}
	}
	return nil, unknownRule(name, "")
}

func unknownRule(name, near string) error {
	if near != "" {
		near = " (did you mean " + near + "?)"
	}
	return usagef("there is no rule %q%s; ferrule rules lists them", name, near)
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

func (c *cli) explainFinding(f *explainFlags, path string) error {
	opt, err := f.options()
	if err != nil {
		return err
	}
	reader, err := c.reader(&f.reading, []string{path})
	if err != nil {
		return err
	}
	run := &report.Run{Version: version()}
	c.one(run, reader, path, opt)
	if len(run.Plans) == 0 { // it could not be read, or is a kit: the report says which
		c.status = exitUnread
		return report.Text(c.out, run, style(c.out, "auto"))
	}
	r := run.Plans[0]
	if f.finding < 1 || f.finding > len(r.Findings) {
		return usagef("--finding: %s has %s, not a finding %d", path, numbered(len(r.Findings), "finding"), f.finding)
	}
	if r.Tainted() {
		c.status = exitTool
	}
	return explain.FindingPage(r, r.Findings[f.finding-1]).Write(c.out, style(c.out, "never").Width)
}

func numbered(n int, what string) string {
	switch n {
	case 0:
		return "no " + what + "s"
	case 1:
		return "1 " + what
	}
	return fmt.Sprintf("%ss 1 to %d", what, n)
}
