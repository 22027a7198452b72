package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/report"
	"ferrule/lint/suggest"
	"ferrule/lint/term"
	"ferrule/schema/files"
)

type suggestFlags struct {
	reading
	finding, choose  int
	all, diff, write bool
	colour           string
}

func (c *cli) suggestCommand() *cobra.Command {
	var f suggestFlags
	cmd := &cobra.Command{
		Use: "suggest PLAN", Short: "Suggests edits of a plan that clear findings, each checked",
		Long: "Suggest looks for changes of a plan that clear its findings. Each is made in memory, and all rules are\n" +
			"asked again over all states: a verified suggestion clears its finding and makes nothing worse. What has a\n" +
			"blank to fill, or did not pass, is a sketch and says why.\n\n" +
			"Without flags it names the best way for each finding. --finding N gives up to three ways for one, with\n" +
			"diffs; --all one proposal that clears as much as can be cleared together. Nothing is written without\n" +
			"--write, and a suggestion changes words: the wiring changes when somebody fits the parts. Give the flags\n" +
			"that the report was made with.\n\n" +
			"Exit status: 0 each finding that counts as a warning or more and is not waived has a way that passed, or\n" +
			"with --finding that one has, or with --all no such finding would be left; 1 if not, whether or not something\n" +
			"was written; 2 the plan could not be read or written, --diff or --write met a sketch, or the command line is\n" +
			"wrong; 3 the tool failed or was stopped early.",
		Example: "  ferrule suggest camper.wiring.hcl\n  ferrule suggest camper.wiring.hcl --finding 3\n" +
			"  ferrule suggest camper.wiring.hcl --finding 3 --diff | git apply\n  ferrule suggest camper.wiring.hcl --finding 3 --choose 2 --write\n  ferrule suggest camper.wiring.hcl --all",
		Args: exactly(1, "one plan"),
		RunE: func(cmd *cobra.Command, args []string) error { return c.suggest(&f, args[0]) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"hcl"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	f.flags(cmd)
	cmd.Flags().IntVar(&f.finding, "finding", 0, "the number of the finding in the report of the plan")
	cmd.Flags().IntVar(&f.choose, "choose", 1, "which of the suggestions for the finding --diff and --write take")
	cmd.Flags().BoolVar(&f.all, "all", false, "one proposal for the whole plan")
	cmd.Flags().BoolVar(&f.diff, "diff", false, "print the diff and nothing else")
	cmd.Flags().BoolVar(&f.write, "write", false, "write the suggestion into the plan")
	cmd.Flags().StringVar(&f.colour, "color", "auto", "auto, always or never; auto minds NO_COLOR and what is no terminal")
	complete(cmd, "color", "auto", "always", "never")
	return cmd
}

// wrong says what is wrong with the flags as they are together.
func (f *suggestFlags) wrong(path string) error {
	switch one := f.given("finding"); {
	case one && f.all:
		return usagef("--finding and --all exclude each other")
	case (f.diff || f.write) && !one && !f.all:
		return usagef("--diff and --write need --finding N or --all")
	case f.given("choose") && !one:
		return usagef("--choose needs --finding N")
	case f.given("choose") && !f.diff && !f.write:
		return usagef("--choose needs --diff or --write")
	case f.write && path == files.Stdin:
		return usagef("--write: standard input cannot be written to")
	}
	return oneOf("color", f.colour, "auto", "always", "never")
}

func (c *cli) suggest(f *suggestFlags, path string) error {
	opt, err := f.options()
	if err == nil {
		err = f.wrong(path)
	}
	if err != nil {
		return err
	}
	reader, err := c.reader(&f.reading, []string{path})
	if err != nil {
		return err
	}
	d, diags := suggest.New(path, reader, c.rules(), opt)
	s := style(c.out, f.colour)
	switch {
	case len(diags) > 0 && f.diff: // whatever takes the diff must not be fed with this
		at := withPlace(diags, path)[0]
		return usagef("%s:%d: %s; ferrule lint says it all", at.Subject.Filename, at.Subject.Start.Line, at.Summary)
	case len(diags) > 0:
		c.status = exitUnread
		return report.Text(c.out, &report.Run{Version: version(), Errors: withPlace(diags, path)}, s)
	case d.Plan.Kit != nil:
		return usagef("%s is a kit: it gets its verdicts, and suggestions, with the plans that use it", path)
	case d.Report.Tainted() && f.diff:
		return errCut
	case d.Report.Tainted():
		c.status = exitTool
		run := &report.Run{Version: version()}
		add(run, d.Report, d.Src)
		return report.Text(c.out, run, s)
	case f.all:
		return c.suggestAll(f, d, s)
	case f.given("finding"):
		return c.suggestOne(f, d, s)
	}
	return c.suggestEach(d, s)
}

// suggestEach names the best way for each finding.
func (c *cli) suggestEach(d *suggest.Desk, s report.Style) error {
	best := func(f *check.Finding) suggest.Ways {
		ways := d.Best(f)
		if f.Severity >= lint.Warning && !ways.Good() {
			c.status = exitFindings
		}
		return ways
	}
	err := report.Survey(c.out, d, best, s)
	c.cut(d)
	return err
}

// cut gives the status of a search that was ended before it was through.
func (c *cli) cut(d *suggest.Desk) {
	if d.Stopped() {
		c.status = exitTool
	}
}

// errCut keeps half of a result from being taken for all of it.
var errCut = errors.New("the search was ended before it was through: nothing was printed or written; ferrule lint says what was left, and --timeout how long it may take")

func (c *cli) suggestOne(f *suggestFlags, d *suggest.Desk, s report.Style) error {
	if f.finding < 1 || f.finding > len(d.Report.Findings) {
		return usagef("--finding: %s has %s, not a finding %d", d.Path, numbered(len(d.Report.Findings), "finding"), f.finding)
	}
	finding := d.Report.Findings[f.finding-1]
	ways := d.For(finding)
	if !ways.Good() {
		c.status = exitFindings
	}
	c.cut(d)
	if !f.diff && !f.write {
		return report.Suggestions(c.out, d, finding, ways, s)
	}
	if ways.Cut {
		return errCut
	}
	all := ways.List
	if f.choose < 1 || f.choose > len(all) {
		return usagef("--choose: finding %d has %s, not a suggestion %d", f.finding, numbered(len(all), "suggestion"), f.choose)
	}
	x := all[f.choose-1]
	if x.Kind == suggest.Sketch {
		return usagef("suggestion %d for finding %d is a sketch (%s); nothing was written", f.choose, f.finding, x.Reason)
	}
	if f.diff {
		_, err := io.WriteString(c.out, report.Shown(d.Diff(x), s))
		if err != nil || !f.write {
			return err
		}
	}
	return c.put(d, x.Result, f.diff)
}

func (c *cli) suggestAll(f *suggestFlags, d *suggest.Desk, s report.Style) error {
	after, all := d.All()
	if after.Report.Reaches(lint.Warning) {
		c.status = exitFindings
	}
	c.cut(d)
	var err error
	switch {
	case d.Stopped() && (f.diff || f.write):
		return errCut
	case f.diff:
		_, err = io.WriteString(c.out, report.Shown(d.DiffTo(after), s))
	default:
		err = report.Proposal(c.out, d, after, all, s)
	}
	switch {
	case err != nil:
		return err
	case len(all) == 0 && !f.diff && !d.Stopped():
		_, err = fmt.Fprintln(c.out, idle(d))
		return err
	case len(all) == 0 || !f.write:
		return nil
	}
	return c.put(d, after.Src, f.diff)
}

// idle says why nothing of a plan is changed.
func idle(d *suggest.Desk) string {
	s := d.Report.Summary
	switch {
	case len(d.Report.Findings) == 0:
		return "Nothing was to be done: there are no findings."
	case len(d.Report.Findings) == s.Waived:
		return "Nothing was to be done: there are no findings but those that are waived."
	case inJSON(d.Src):
		return "Nothing could be done: edits are made in the plan language's own syntax,\nand this plan is written in JSON."
	}
	return "Nothing could be done: no change that was tried clears what is left and makes\nnothing worse."
}

// put writes a plan and says so, but behind a diff, which is for programs.
func (c *cli) put(d *suggest.Desk, text []byte, quiet bool) error {
	if err := files.Replace(d.Path, d.Src, text); err != nil {
		return usage{err}
	}
	if quiet {
		return nil
	}
	_, err := fmt.Fprintf(c.out, "Wrote %s. The plan is words: the wiring changes when the parts are fitted.\n", term.Clean(d.Path))
	return err
}
