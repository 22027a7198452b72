package main

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
	"ferrule/lint/report"
	"ferrule/schema"
	"ferrule/schema/files"
)

type compareFlags struct {
	reading
	all            bool
	failOn, colour string
}

func (c *cli) compareCommand() *cobra.Command {
	var f compareFlags
	cmd := &cobra.Command{
		Use: "compare OLD NEW", Short: "Says what a change of a plan made better, worse or unprovable",
		Long: "Compare checks two plans by the same rules and says what one has over the other: findings that are new or\n" +
			"graver, what was violated or held and cannot be proven any more, what is gone, and which numbers moved.\n" +
			"A figure that is taken out cures nothing: what was violated and cannot be proven now counts as it did.\n" +
			"Nor does a waiver: what is waived now and was not fails like what is worse, so that somebody looks at it.\n" +
			"What both plans waive and is no worse, or what is waived no more, does not.\n\n" +
			"OLD and NEW are files, or REVISION:FILE for a file as git has it in a revision; the file is named from\n" +
			"this folder, and kits are taken from the same revision. :FILE is the file as it is staged.\n\n" +
			"Exit status: 0 nothing of the kind counts as --fail-on or higher; 1 something does; 2 a plan could not be\n" +
			"read, or the command line is wrong; 3 the tool failed or was stopped early.",
		Example: "  ferrule compare before.wiring.hcl after.wiring.hcl\n  ferrule compare HEAD:camper.wiring.hcl camper.wiring.hcl\n" +
			"  ferrule compare v1:camper.wiring.hcl v2:camper.wiring.hcl",
		Args: exactly(2, "an old plan and a new one"),
		RunE: func(_ *cobra.Command, args []string) error { return c.compare(&f, args[0], args[1]) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"hcl", "json"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	f.flags(cmd)
	cmd.Flags().BoolVar(&f.all, "all", false, "list the numbers that moved in what holds, too")
	cmd.Flags().StringVar(&f.failOn, "fail-on", "warning", "exit with 1 if something is worse, unprovable or newly waived that counts as this `word` or a higher one: danger, warning, caution, notice, never")
	cmd.Flags().StringVar(&f.colour, "color", "auto", "auto, always or never; auto minds NO_COLOR and what is no terminal")
	complete(cmd, "fail-on", thresholds...)
	complete(cmd, "color", "auto", "always", "never")
	return cmd
}

// side is one of the two plans.
type side struct {
	plan   *schema.Plan
	report *check.Report
}

func (c *cli) compare(f *compareFlags, old, new string) error {
	opt, err := f.options()
	for _, e := range []error{err, oneOf("fail-on", f.failOn, thresholds...), oneOf("color", f.colour, "auto", "always", "never")} {
		if e != nil {
			return e
		}
	}
	if old == files.Stdin && new == files.Stdin {
		return usagef("standard input is one plan, not two")
	}
	base, err := c.reader(&f.reading, []string{old, new})
	if err != nil {
		return err
	}
	run := &report.Run{Version: version()}
	var sides [2]side
	for i, arg := range []string{old, new} {
		if sides[i], err = c.side(run, base, arg, opt); err != nil {
			return usage{err}
		}
	}
	s := style(c.out, f.colour)
	if len(run.Errors) > 0 {
		c.status = exitUnread
		return report.Text(c.out, &report.Run{Version: version(), Errors: run.Errors}, s)
	}
	d := compare.Between(sides[0].plan, sides[1].plan, sides[0].report, sides[1].report, c.rules())
	word, counts := lint.ParseSeverity(f.failOn)
	switch {
	case d.Old.Tainted() || d.New.Tainted():
		c.status = exitTool
	case counts && d.Reaches(word):
		c.status = exitFindings
	}
	return report.Difference(c.out, d, old, new, f.all, s)
}

// side reads and checks one plan; what is wrong with it is an error of the run.
func (c *cli) side(run *report.Run, base *files.Reader, arg string, opt check.Options) (side, error) {
	rev, path, old := revision(arg)
	if old {
		var err error
		if base, err = atRevision(base, rev, path); err != nil {
			return side{}, err
		}
	}
	plan, diags, _ := base.Load(path)
	if plan.Kit != nil {
		return side{}, usagef("%s is a kit: it gets its verdicts with the plans that use it", arg)
	}
	if len(diags) > 0 {
		run.Errors = append(run.Errors, diags...)
		return side{}, nil
	}
	r := check.Run(plan, c.rules(), opt)
	run.Errors = append(run.Errors, withPlace(append(hcl.Diagnostics{}, r.Diagnostics...), path)...)
	return side{plan, r}, nil
}
