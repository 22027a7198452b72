package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"slices"
	"strings"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/spf13/cobra"

	"ferrule/lint/check"
	"ferrule/schema"
	"ferrule/schema/files"
)

// reading is how plans are read and checked: the flags that lint and explain share.
type reading struct {
	kits     []string
	practice []string
	today    string
	timeout  time.Duration
	given    func(flag string) bool // whether the command line has the flag
}

var practices = []string{"us-rv", "us-boat", "iso-boat", "vehicle", "cabin", "general"}

func (r *reading) flags(cmd *cobra.Command) {
	cmd.Flags().StringSliceVar(&r.practice, "practice", nil, "grade by these practices instead of the plan's own: "+strings.Join(practices, ", "))
	cmd.Flags().StringArrayVar(&r.kits, "kits", nil, "a further `folder` in which kits may lie; may be given again")
	cmd.Flags().StringVar(&r.today, "today", "", "the `day` that waivers are compared with, such as 2026-11-25 (default: today)")
	cmd.Flags().DurationVar(&r.timeout, "timeout", 0, "stop looking after this long, say what was found, and exit with 3; 0 for no limit")
	complete(cmd, "practice", practices...)
	r.given = cmd.Flags().Changed
}

// complete offers the words that a flag takes to a shell. It fails only for a flag that is not there.
func complete(cmd *cobra.Command, flag string, words ...string) {
	if err := cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic(err)
	}
}

// options checks the flags. The clock is read here, and nowhere below.
func (r *reading) options() (check.Options, error) {
	now := time.Now()
	opt := check.Options{Practice: r.practice, Today: now}
	if r.given("practice") && len(r.practice) == 0 {
		return opt, usagef("--practice: no practice is named; there are %s", strings.Join(practices, ", "))
	}
	for _, p := range r.practice {
		if !slices.Contains(practices, p) {
			return opt, usagef("--practice: there is no practice %q%s; there are %s", p, meant(p, practices), strings.Join(practices, ", "))
		}
	}
	if r.today != "" {
		day, err := time.Parse(time.DateOnly, r.today)
		if err != nil {
			return opt, usagef("--today: %q is no day; write it like 2026-11-25", r.today)
		}
		opt.Today = day
	}
	if r.timeout < 0 {
		return opt, usagef("--timeout: %s is less than nothing", r.timeout)
	}
	// An interrupt ends the run like the end of its time; a second one ends the program.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop)
	end := now.Add(r.timeout)
	opt.Stop = func() bool { return ctx.Err() != nil || r.timeout > 0 && time.Now().After(end) }
	return opt, nil
}

// reader prepares to read plans; standard input is read only if it is asked for, and no more of it
// than a plan may have.
func (c *cli) reader(r *reading, args []string) (*files.Reader, error) {
	out := &files.Reader{Kits: r.kits}
	for _, k := range r.kits {
		if err := folder(k); err != nil {
			return nil, err
		}
	}
	if !slices.Contains(args, files.Stdin) {
		return out, nil
	}
	src, err := io.ReadAll(io.LimitReader(c.in, schema.MaxFile+1))
	if err != nil {
		return nil, fmt.Errorf("standard input: %w", err)
	}
	out.Stdin = src
	return out, nil
}

// folder is the error of a --kits that is no folder: kits that are not found for it would be missed, or found elsewhere.
func folder(path string) error {
	info, err := os.Stat(path)
	var at *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return usagef("--kits: %s: there is no such folder", cmp.Or(path, `""`))
	case errors.As(err, &at):
		return usagef("--kits: %s: %w", path, at.Err)
	case !info.IsDir():
		return usagef("--kits: %s: this is a file, not a folder", path)
	}
	return nil
}

// unfound is what a report says of an argument that leads to no plan.
func unfound(arg string, err error) *hcl.Diagnostic {
	at := hcl.Range{Filename: arg, Start: hcl.InitialPos, End: hcl.InitialPos}
	return &hcl.Diagnostic{Severity: hcl.DiagError, Summary: "No plan here", Detail: err.Error() + ".", Subject: &at}
}
