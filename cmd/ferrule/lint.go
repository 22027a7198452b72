package main

import (
	"bytes"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/report"
	"ferrule/lint/suggest"
	"ferrule/schema/files"
)

type lintFlags struct {
	reading
	recursive, suggest     bool
	format, failOn, colour string
}

var thresholds = []string{"danger", "warning", "caution", "notice", "never"}

func (c *cli) lintCommand() *cobra.Command {
	var f lintFlags
	cmd := &cobra.Command{
		Use: "lint PLAN...", Short: "Says what is hazardous in plans",
		Long: "Lint reads plans and says what is hazardous in them, over all states that they allow.\n\n" +
			"A PLAN is a file, a folder with its plans (-r also looks into its folders), or - for standard input.\n" +
			"A kit that is named itself is read and its references are checked; kits in a folder are skipped.",
		Example: "  ferrule lint camper.wiring.hcl\n  ferrule lint -r --fail-on caution plans\n  ferrule lint --format json - < camper.wiring.hcl",
		Args:    atLeast(1, "a plan, a folder, or - for standard input"),
		RunE:    func(_ *cobra.Command, args []string) error { return c.lint(&f, args) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"hcl", "json"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	f.flags(cmd)
	cmd.Flags().BoolVarP(&f.recursive, "recursive", "r", false, "look into the folders of folders too")
	cmd.Flags().BoolVar(&f.suggest, "suggest", false, "look for changes that clear each finding, and check them; takes its time")
	cmd.Flags().StringVar(&f.format, "format", "text", "text or json")
	cmd.Flags().StringVar(&f.failOn, "fail-on", "warning", "exit with 1 if a finding counts as this `word` or a higher one: danger, warning, caution, notice, never")
	cmd.Flags().StringVar(&f.colour, "color", "auto", "auto, always or never; auto minds NO_COLOR and what is no terminal")
	complete(cmd, "format", "text", "json")
	complete(cmd, "fail-on", thresholds...)
	complete(cmd, "color", "auto", "always", "never")
	return cmd
}

// oneOf is the error for a flag with a word that it does not take.
func oneOf(flag, word string, words ...string) error {
	if slices.Contains(words, word) {
		return nil
	}
	return usagef("--%s: %q is not one of %s%s", flag, word, lint.And(words...), meant(word, words))
}

func (c *cli) lint(f *lintFlags, args []string) error {
	opt, err := f.options()
	for _, e := range []error{err, oneOf("format", f.format, "text", "json"), oneOf("fail-on", f.failOn, thresholds...), oneOf("color", f.colour, "auto", "always", "never")} {
		if e != nil {
			return e
		}
	}
	reader, err := c.reader(&f.reading, args)
	if err != nil {
		return err
	}
	run := &report.Run{Version: version()}
	for _, path := range find(run, args, f.recursive) {
		if f.suggest {
			c.mended(run, reader, path, opt)
		} else {
			c.one(run, reader, path, opt)
		}
	}
	c.status = status(run, f.failOn)
	if f.format == "json" {
		return report.JSON(c.out, run)
	}
	return report.Text(c.out, run, style(c.out, f.colour))
}

// find lists the plans, each once; arguments without any become errors of the run.
func find(run *report.Run, args []string, recursive bool) []string {
	var out []string
	for _, arg := range args {
		found, err := files.Find([]string{arg}, recursive)
		for _, e := range each(err) {
			run.Errors = append(run.Errors, unfound(arg, e))
		}
		for _, path := range found {
			if !slices.Contains(out, path) {
				out = append(out, path)
			}
		}
	}
	return out
}

// each takes joined errors apart.
func each(err error) []error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		return joined.Unwrap()
	}
	return nil
}

// one adds what a file says to the run. A plan with errors cannot be trusted and gets no verdicts.
func (c *cli) one(run *report.Run, reader *files.Reader, path string, opt check.Options) {
	plan, diags, src := reader.Load(path)
	switch {
	case len(diags) > 0:
		run.Errors = append(run.Errors, diags...)
		return
	case plan.Kit != nil:
		run.Kits = append(run.Kits, path)
		return
	}
	r := check.Run(plan, c.rules(), opt)
	if len(r.Diagnostics) > 0 {
		run.Errors = append(run.Errors, withPlace(r.Diagnostics, path)...)
		return
	}
	add(run, r, src)
}

// add adds the report on a plan of this text to the run.
func add(run *report.Run, r *check.Report, src []byte) {
	run.Plans = append(run.Plans, r)
	if inJSON(src) {
		if run.InJSON == nil {
			run.InJSON = map[*check.Report]bool{}
		}
		run.InJSON[r] = true
	}
}

// inJSON says whether the text of a sound plan is JSON: none in the language's own syntax begins with a brace.
func inJSON(src []byte) bool { return bytes.HasPrefix(bytes.TrimSpace(src), []byte("{")) }

// mended adds what a file says to the run, and what clears each of its findings.
func (c *cli) mended(run *report.Run, reader *files.Reader, path string, opt check.Options) {
	d, diags := suggest.New(path, reader, c.rules(), opt)
	if len(diags) > 0 || d.Plan.Kit != nil {
		c.one(run, reader, path, opt)
		return
	}
	add(run, d.Report, d.Src)
	if run.Suggestions == nil {
		run.Suggestions = map[*check.Finding]suggest.Ways{}
	}
	for _, f := range d.Report.Findings {
		if f.Waived == nil {
			run.Suggestions[f] = d.For(f)
		}
	}
}

// withPlace gives what has no place the start of the file.
func withPlace(diags hcl.Diagnostics, path string) hcl.Diagnostics {
	for _, d := range diags {
		if d.Subject == nil {
			d.Subject = &hcl.Range{Filename: path, Start: hcl.InitialPos, End: hcl.InitialPos}
		}
	}
	return diags
}

// status is the worst of what happened.
func status(run *report.Run, failOn string) int {
	out := exitFine
	word, counts := lint.ParseSeverity(failOn)
	for _, p := range run.Plans {
		switch {
		case p.Tainted(), run.Cut(p):
			out = exitTool
		case counts && p.Reaches(word):
			out = max(out, exitFindings)
		}
	}
	if len(run.Errors) > 0 {
		out = max(out, exitUnread)
	}
	return out
}
