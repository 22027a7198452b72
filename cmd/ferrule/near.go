package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"ferrule/schema/files"
)

// unknownCommand names the nearest command; a plan in its place gets the command that was meant.
func unknownCommand(root *cobra.Command, word string) error {
	if files.IsPlan(word) {
		return usagef("%q is no command; to lint it: ferrule lint %s", word, word)
	}
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return usagef("%q is no command%s; see ferrule --help", word, meant(word, names))
}

// wrongFlag makes an error of the command line of an error of the flags, with the nearest flag.
func wrongFlag(cmd *cobra.Command, err error) error {
	var value *pflag.InvalidValueError
	if errors.As(err, &value) {
		f := value.GetFlag()
		return usagef("--%s: %q is not %s; see %s --help", f.Name, value.GetValue(), taken(f), cmd.CommandPath())
	}
	name, unknown := strings.CutPrefix(err.Error(), "unknown flag: --")
	if !unknown {
		return usage{err}
	}
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return usagef("%s has no flag --%s%s; see %s --help", cmd.CommandPath(), name, meant("--"+name, names), cmd.CommandPath())
}

// taken says what a flag takes.
func taken(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "int":
		return "a number such as 3"
	case "duration":
		return "a time such as 2s or 1m30s"
	case "bool":
		return "true or false"
	}
	return "what it takes"
}

// meant is a hint at the nearest name, "" where none is near.
func meant(word string, names []string) string {
	if n := nearest(word, names); n != "" {
		return fmt.Sprintf(" (did you mean %s?)", n)
	}
	return ""
}

// nearest is the first of the names with the fewest changes from word, at most a third of its letters.
func nearest(word string, names []string) string {
	best, limit := "", max(1, len(word)/3)+1
	if len(word) > 80 {
		return ""
	}
	for _, n := range names {
		if d := changes(strings.ToLower(word), n); d < limit {
			best, limit = n, d
		}
	}
	return best
}

// changes counts the insertions, deletions, exchanges and swaps of neighbours from a to b.
func changes(a, b string) int {
	older, before, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		older, before, row = before, row, older
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(before[j-1]+cost, before[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
	}
	return row[len(b)]
}
