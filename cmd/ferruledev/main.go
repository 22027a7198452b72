// Command ferruledev keeps the generated files of the project and starts new rules.
//
//	ferruledev gen                     writes schema/README.md and rules/README.md
//	ferruledev gen -check              fails, and says what to run, where they are stale
//	ferruledev new-rule FAMILY/NAME    writes a rule's file and fixtures to fill in
//
// It works on the module that it is run in.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

func main() { os.Exit(Main(os.Args[1:], os.Stdout, os.Stderr)) }

const help = `usage: ferruledev gen [-check]
       ferruledev new-rule FAMILY/NAME
`

// Main runs the command line and gives its exit status: 1 where something is stale or failed, 2 where
// the command line is wrong.
func Main(args []string, stdout, stderr io.Writer) int {
	root, err := moduleRoot()
	if err == nil {
		err = run(root, args, stdout)
	}
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errUsage):
		fmt.Fprint(stderr, help)
		return 2
	}
	fmt.Fprintf(stderr, "ferruledev: %v\n", err)
	return 1
}

var errUsage = errors.New("usage")

func run(root string, args []string, stdout io.Writer) error {
	if len(args) == 0 {
		return errUsage
	}
	set := flag.NewFlagSet(args[0], flag.ContinueOnError)
	set.SetOutput(io.Discard)
	check := set.Bool("check", false, "compare, write nothing")
	if set.Parse(args[1:]) != nil {
		return errUsage
	}
	switch {
	case args[0] == "gen" && set.NArg() == 0:
		return generate(root, *check, stdout)
	case args[0] == "new-rule" && set.NArg() == 1 && !*check:
		return newRule(root, set.Arg(0), stdout)
	}
	return errUsage
}

// moduleRoot is the nearest folder upwards that holds a go.mod.
func moduleRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("this folder lies in no Go module")
		}
		dir = up
	}
}
