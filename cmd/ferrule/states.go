package main

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/spf13/cobra"

	"ferrule/lint/report"
	"ferrule/lint/states"
	"ferrule/schema"
	"ferrule/schema/files"
)

type statesFlags struct {
	reading
	at             []string
	volts, amps    []string
	transits       bool
	limit          int
	format, colour string
}

// States that are looked at where --limit is not given: to list, and to answer a question.
const (
	usualStates = 200
	usualAsked  = 1024
)

func (c *cli) statesCommand() *cobra.Command {
	var f statesFlags
	cmd := &cobra.Command{
		Use: "states PLAN", Short: "Tells what is live in each state of a plan, with its volts and amps",
		Long: "States goes through the different states of a plan: every switch, plug and source in the positions that\n" +
			"the plan allows, those that make the same network once. For each it tells which loads have power and\n" +
			"at what volts, which are dark, what feeds and charges what, what is live at an open contact, and which\n" +
			"conductors are fullest. Numbers are solved with batteries empty, rested and at the end of charge, and\n" +
			"with all loads that have power running at once; a load's starting current is not in them.\n\n" +
			"--at keeps to states with these positions. It takes the name or address of a switch, connector or\n" +
			"source, as the first lines of the output list them: house_select=pack, pack=absent. A switch on its way\n" +
			"is \"house_select=pack>aux (overlap)\", or (gap). States are at rest unless --transits is given.\n\n" +
			"--volts and --amps put a question instead: the least and the most over those states, in which of them,\n" +
			"and how the numbers come about. --volts takes a terminal as a plan writes it, or one node of it, which\n" +
			"is then told against the reference of its circuit. --amps takes a conductor or a part.\n\n" +
			"PLAN is a file, or - for standard input. Exit status: 0 told; 2 the plan could not be read, or the\n" +
			"command line is wrong; 3 the search met its bound or did not solve a state, or an answer leaves out\n" +
			"states though no --limit was given.",
		Example: "  ferrule states camper.wiring.hcl\n  ferrule states camper.wiring.hcl --at house_select=pack,shore=absent\n" +
			"  ferrule states camper.wiring.hcl --volts load.pump\n  ferrule states camper.wiring.hcl --amps conductor.feed --at \"house_select=pack>aux (overlap)\"\n" +
			"  ferrule states --format json - < camper.wiring.hcl",
		Args: exactly(1, "one plan"),
		RunE: func(_ *cobra.Command, args []string) error { return c.states(&f, args[0]) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"hcl", "json"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	fs := cmd.Flags()
	fs.StringArrayVar(&f.at, "at", nil, "keep to states with these `positions`, such as house_select=pack,shore=absent; may be given again")
	fs.BoolVar(&f.transits, "transits", false, "states with a switch on its way between two positions too")
	fs.IntVar(&f.limit, "limit", usualStates, "look at so many different states at most; 1024 for a question, if not given")
	fs.StringArrayVar(&f.volts, "volts", nil, "least and most volts at a `terminal`, such as load.pump or fuse.main.load.pos; may be given again")
	fs.StringArrayVar(&f.amps, "amps", nil, "least and most amps in a conductor or `part`, such as conductor.feed or converter.boost.in; may be given again")
	fs.StringVar(&f.format, "format", "text", "text or json")
	fs.StringVar(&f.colour, "color", "auto", "auto, always or never; only what is wrong with a plan is in colour")
	fs.StringArrayVar(&f.kits, "kits", nil, "a further `folder` in which kits may lie; may be given again")
	fs.DurationVar(&f.timeout, "timeout", 0, "stop looking after this long, tell what was found, and exit with 3; 0 for no limit")
	complete(cmd, "format", "text", "json")
	complete(cmd, "color", "auto", "always", "never")
	f.given = fs.Changed
	return cmd
}

func (c *cli) states(f *statesFlags, path string) error {
	opt, err := f.options()
	for _, e := range []error{err, oneOf("format", f.format, "text", "json"), oneOf("color", f.colour, "auto", "always", "never")} {
		if e != nil {
			return e
		}
	}
	if f.limit < 1 {
		return usagef("--limit: %d is less than one state", f.limit)
	}
	reader, err := c.reader(&f.reading, []string{path})
	if err != nil {
		return err
	}
	plan, survey, diags := survey(reader, path, opt.Stop)
	switch {
	case len(diags) > 0:
		return c.unread(f, diags)
	case plan.Kit != nil:
		return usagef("%s is a kit; it has no states but those of the plans that use it", path)
	}
	l, err := f.ask(survey)
	if err != nil {
		return usage{err}
	}
	if !l.Complete || l.Unsolved() || l.More && len(l.Answers) > 0 && !f.given("limit") {
		c.status = exitTool
	}
	if f.format == "json" {
		return report.StatesJSON(c.out, version(), l, nil)
	}
	return report.States(c.out, l, style(c.out, f.colour))
}

// survey reads a plan and prepares its states; a kit has none.
func survey(reader *files.Reader, path string, stop func() bool) (*schema.Plan, *states.Survey, hcl.Diagnostics) {
	plan, diags, _ := reader.Load(path)
	if len(diags) > 0 || plan.Kit != nil {
		return plan, nil, diags
	}
	s, diags := states.New(plan, stop)
	return plan, s, withPlace(diags, path)
}

func (c *cli) unread(f *statesFlags, diags hcl.Diagnostics) error {
	c.status = exitUnread
	if f.format == "json" {
		return report.StatesJSON(c.out, version(), nil, diags)
	}
	return report.Text(c.out, &report.Run{Version: version(), Errors: diags}, style(c.out, f.colour))
}

// ask lists states, or puts the questions of the command line to them.
func (f *statesFlags) ask(s *states.Survey) (*states.Listing, error) {
	var qs []*states.Question
	for _, t := range f.volts {
		q, err := s.Volts(t, meant)
		if err != nil {
			return nil, usagef("--volts: %w", err)
		}
		qs = append(qs, q)
	}
	for _, t := range f.amps {
		q, err := s.Amps(t, meant)
		if err != nil {
			return nil, usagef("--amps: %w", err)
		}
		qs = append(qs, q)
	}
	ask, err := s.Ask(f.at, f.transits, meant)
	if err != nil {
		return nil, usagef("--at: %w", err)
	}
	w := states.Wanted{Ask: ask, Limit: f.limit}
	if len(qs) == 0 {
		return s.List(w), nil
	}
	if !f.given("limit") {
		w.Limit = usualAsked
	}
	return s.Answer(w, qs...), nil
}
