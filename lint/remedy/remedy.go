// Package remedy holds the changes that rules offer: a smaller device, a thicker wire, another feed, a
// converter between two sources. Each proposes; whether it helps is found out by asking all rules again.
// Sizes and ratings come from the tables, or are marked as common practice.
package remedy

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// most bounds how many values of one attribute are proposed.
const most = 6

const practice = "common practice"

// about lists the blocks of a type that a verdict is about: its subject, the related ones, those on its
// path, each once and in that order.
func about[T schema.Block](p *lint.Pass, v lint.Verdict) []T {
	var out []T
	seen := map[string]bool{}
	for _, addr := range slices.Concat([]string{v.Subject.Header().Addr}, v.Related, v.Path) {
		addr = block(p, addr)
		if x, ok := schema.Lookup[T](p.Plan, addr); ok && !seen[addr] {
			seen[addr] = true
			out = append(out, x)
		}
	}
	return out
}

// block is the address of the block that a terminal belongs to, "" where there is none.
func block(p *lint.Pass, terminal string) string {
	for terminal != "" && p.Plan.Block(terminal) == nil {
		terminal = terminal[:max(strings.LastIndexByte(terminal, '.'), 0)]
	}
	return terminal
}

// head is the first of a list, or none.
func head[T any](list []T) []T { return list[:min(len(list), 1)] }

// text is a value as a plan writes a quantity: "20 A" in quotes.
func text(value float64, unit string) string {
	return strconv.Quote(strconv.FormatFloat(value, 'f', -1, 64) + " " + unit)
}

// whole is a length in m to the millimetre: sums of lengths have more figures than anybody measured.
func whole(metres float64) float64 { return math.Round(metres*1000) / 1000 }

func current(amps float64) string { return quantity.Format(amps, quantity.Current) }

func sentence(format string, args ...any) string { return fmt.Sprintf(format, args...) }

// below lists standard ratings under a value, largest first, above those over it, smallest first.
func below(value float64) []tables.Value {
	var out []tables.Value
	for _, r := range slices.Backward(tables.Ratings()) {
		if r.V < value {
			out = append(out, r)
		}
	}
	return out
}

func above(value float64) []tables.Value {
	var out []tables.Value
	for _, r := range tables.Ratings() {
		if r.V > value && len(out) < most {
			out = append(out, r)
		}
	}
	return out
}

// fresh is a name for a new block of a type that no block has.
func fresh(p *lint.Pass, typ, base string) string {
	name := base
	for n := 2; p.Plan.Block(typ+"."+name) != nil; n++ {
		name = fmt.Sprintf("%s_%d", base, n)
	}
	return name
}

// own says whether a value is written within a block, and not inherited from a branch or a kit.
func own(h *schema.Head, a schema.Attr) bool {
	return a.Set && a.Range.Filename == h.Body.Filename && a.Range.Start.Byte >= h.Body.Start.Byte && a.Range.End.Byte <= h.Body.End.Byte
}

// attrs writes the lines of a new block, aligned as plans are.
func attrs(indent string, pairs ...[2]string) string {
	width := 0
	for _, p := range pairs {
		if p[1] != "" {
			width = max(width, len(p[0]))
		}
	}
	var b strings.Builder
	for _, p := range pairs {
		if p[1] != "" {
			fmt.Fprintf(&b, "%s%-*s = %s\n", indent, width, p[0], p[1])
		}
	}
	return b.String()
}

// bare is the last part of a name, for names made from it.
func bare(addr string) string {
	parts := strings.Split(addr, ".")
	if parts[0] == "branch" && len(parts) > 1 {
		return parts[1]
	}
	return parts[len(parts)-1]
}
