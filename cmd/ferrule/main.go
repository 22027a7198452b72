// Command ferrule lints wiring plans of small power systems.
//
// Reports go to standard output, and nothing else does; what is wrong with the command line goes to
// standard error. No file is written but by suggest --write, which is asked to.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/term"
	"ferrule/rules"
)

func main() { os.Exit(Main(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// Exit statuses: the worst of what happened.
const (
	exitFine     = 0 // nothing at or above the threshold
	exitFindings = 1 // findings at or above it
	exitUnread   = 2 // a plan could not be read, or the command line is wrong
	exitTool     = 3 // the tool failed, or was stopped before it had looked at everything
)

// Main runs the command line and gives its exit status.
func Main(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	c := &cli{in: stdin, out: stdout, rules: rules.All}
	return c.run(args, stderr)
}

// cli is one call of the command. Commands set status; an error that they return is printed.
type cli struct {
	in     io.Reader
	out    io.Writer
	rules  func() []*lint.Rule
	status int
}

// usage is an error of the command line.
type usage struct{ error }

func usagef(format string, args ...any) error { return usage{fmt.Errorf(format, args...)} }

func (c *cli) run(args []string, stderr io.Writer) (status int) {
	defer func() {
		if x := recover(); x != nil {
			fmt.Fprintf(stderr, "ferrule: the tool failed: %s\n", term.Clean(fmt.Sprint(x)))
			status = exitTool
		}
	}()
	root := c.root()
	root.SetArgs(args)
	root.SetIn(c.in)
	root.SetOut(c.out)
	root.SetErr(stderr)
	err := root.Execute()
	if err == nil {
		return c.status
	}
	fmt.Fprintf(stderr, "ferrule: %s\n", term.Clean(err.Error()))
	if errors.As(err, &usage{}) {
		return exitUnread
	}
	return exitTool
}

const about = `Ferrule lints wiring plans of campers, vans, boats and cabins: it looks at every combination of
switch positions, plugs and sources, and says what is hazardous, in which position, and by which rule.`

const examples = `  ferrule lint camper.wiring.hcl                    lint one plan
  ferrule lint -r .                                 all plans in this folder and below it
  ferrule lint --practice us-boat sloop.wiring.hcl  graded as a boat
  ferrule explain camper.wiring.hcl --finding 3     one finding, with every number
  ferrule suggest camper.wiring.hcl --finding 3     checked ways to clear one finding, as diffs
  ferrule compare HEAD:camper.wiring.hcl camper.wiring.hcl   what a change made better or worse
  ferrule states camper.wiring.hcl                  what is live in each state, with volts and amps
  ferrule rules                                     what is looked for
  ferrule explain overcurrent/unprotected-run       one rule, and where it comes from

Exit status: 0 nothing at or above --fail-on (warning, if not given); 1 findings at or above it;
2 a plan could not be read, or the command line is wrong; 3 the tool failed or was stopped early.`

func (c *cli) root() *cobra.Command {
	root := &cobra.Command{
		Use: "ferrule", Short: "Lints wiring plans", Long: about, Example: examples, Version: version(),
		SilenceErrors: true, SilenceUsage: true, Args: cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(cmd, args[0])
			}
			return cmd.Help()
		},
	}
	root.AddCommand(c.lintCommand(), c.compareCommand(), c.explainCommand(), c.rulesCommand(), c.statesCommand(), c.suggestCommand(), c.wiresCommand())
	root.InitDefaultCompletionCmd("completion")
	for _, sub := range root.Commands() {
		if sub.Name() == "completion" {
			shells(sub)
		}
	}
	root.SetFlagErrorFunc(wrongFlag)
	root.SetVersionTemplate("ferrule {{.Version}}\n")
	return root
}

// shells makes the command for completions refuse a shell that it has no script for.
func shells(cmd *cobra.Command) {
	cmd.Args = cobra.ArbitraryArgs
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		var have []string
		for _, c := range cmd.Commands() {
			have = append(have, c.Name())
		}
		if len(args) == 0 {
			return usagef("completion needs a shell; there are scripts for %s", lint.And(have...))
		}
		return usagef("there is no completion script for %q%s; there are scripts for %s", args[0], meant(args[0], have), lint.And(have...))
	}
}

// version is the module's, where it was built from one.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "0.1-dev"
}

// atLeast takes any number of arguments from n on; what says what they are.
func atLeast(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) < n {
			return usagef("%s needs %s; see %s --help", cmd.CommandPath(), what, cmd.CommandPath())
		}
		return nil
	}
}

func exactly(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) != n {
			return usagef("%s takes %s, not %d arguments; see %s --help", cmd.CommandPath(), what, len(args), cmd.CommandPath())
		}
		return nil
	}
}
