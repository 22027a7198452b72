package schema

import (
	"fmt"
	"slices"
	"sort"
	"strings"
)

// nearer finds the names that a misspelt one was probably meant to be. Its budget of comparisons
// keeps a plan full of wrong names from costing more than the plan is worth.
type nearer struct{ budget int }

// hint is a sentence that starts with a space: the nearest names, or all where they are few.
func (n *nearer) hint(word string, known []string) string {
	if near := n.nearest(word, known); len(near) > 0 {
		return fmt.Sprintf(" Did you mean %s?", and(near, "or"))
	}
	if len(known) == 0 || len(known) > 24 {
		return ""
	}
	return fmt.Sprintf(" What there is: %s.", strings.Join(known, ", "))
}

// nearest gives up to three known names within a small edit distance, nearest first.
func (n *nearer) nearest(word string, known []string) []string {
	if len(word) > 64 {
		return nil
	}
	type candidate struct {
		name     string
		distance int
	}
	var found []candidate
	word = strings.ToLower(word)
	limit := min(2, len(word)/3)
	for _, k := range known {
		if len(k)-len(word) > limit || len(word)-len(k) > limit {
			continue
		}
		if n.budget--; n.budget < 0 {
			break
		}
		if d := distance(word, strings.ToLower(k)); d <= limit {
			found = append(found, candidate{k, d})
		}
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].distance < found[j].distance })
	var out []string
	for _, c := range found {
		if len(out) < 3 && c.distance == found[0].distance && !slices.Contains(out, c.name) {
			out = append(out, c.name)
		}
	}
	return out
}

// distance counts the insertions, deletions, changes and swaps of neighbours from a to b.
func distance(a, b string) int {
	before, row := make([]int, len(b)+1), make([]int, len(b)+1)
	older := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		older, before, row = before, row, older
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := before[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, before[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
	}
	return row[len(b)]
}

// did is the hint without the list of all names.
func (n *nearer) did(word string, known []string) string {
	if near := n.nearest(word, known); len(near) > 0 {
		return fmt.Sprintf(" Did you mean %s?", and(near, "or"))
	}
	return ""
}
