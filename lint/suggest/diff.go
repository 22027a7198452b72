package suggest

import (
	"fmt"
	"slices"
	"strings"
)

// context is how many lines a unified diff shows around a change.
const context = 3

// mostDifferent bounds the search for the shortest difference, in lines. Beyond it the lines between
// the first and the last that differ are given as replaced: longer, and as true.
const mostDifferent = 400

// lines cuts a text behind each line end. The last line may have none.
func lines(text []byte) []string {
	out := strings.SplitAfter(string(text), "\n")
	if out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	return out
}

func join(lines []string) string { return strings.Join(lines, "") }

func size(lines []string) int {
	n := 0
	for _, l := range lines {
		n += len(l)
	}
	return n
}

// hunk says that the lines a0 to before a1 of one text became b0 to before b1 of another.
type hunk struct{ a0, a1, b0, b1 int }

// changes lists what differs between two texts, in order; hunks never touch.
func changes(a, b []string) []hunk {
	head := 0
	for head < len(a) && head < len(b) && a[head] == b[head] {
		head++
	}
	tail := 0
	for tail < len(a)-head && tail < len(b)-head && a[len(a)-1-tail] == b[len(b)-1-tail] {
		tail++
	}
	a, b = a[head:len(a)-tail], b[head:len(b)-tail]
	if len(a) == 0 && len(b) == 0 {
		return nil
	}
	out := shortest(a, b)
	for i := range out {
		out[i] = hunk{out[i].a0 + head, out[i].a1 + head, out[i].b0 + head, out[i].b1 + head}
	}
	return out
}

// shortest is the greedy search for a shortest edit script: frontier[k] is how far into a the scripts
// of d steps come that have taken k lines more from a than from b.
func shortest(a, b []string) []hunk {
	most := min(len(a)+len(b), mostDifferent)
	frontier := make([]int, 2*most+3)
	var trace [][]int
	for d := 0; d <= most; d++ {
		trace = append(trace, slices.Clone(frontier))
		for k := -d; k <= d; k += 2 {
			at := most + 1 + k
			x := frontier[at-1] + 1
			if k == -d || k != d && frontier[at-1] < frontier[at+1] {
				x = frontier[at+1]
			}
			y := x - k
			for x < len(a) && y < len(b) && a[x] == b[y] {
				x, y = x+1, y+1
			}
			frontier[at] = x
			if x >= len(a) && y >= len(b) {
				return walkBack(trace, len(a), len(b), most)
			}
		}
	}
	return []hunk{{0, len(a), 0, len(b)}}
}

// walkBack reads the hunks of a script from its end.
func walkBack(trace [][]int, x, y, most int) []hunk {
	var out []hunk
	for d := len(trace) - 1; d > 0; d-- {
		frontier, k := trace[d], x-y
		at := most + 1 + k
		before := k - 1
		if k == -d || k != d && frontier[at-1] < frontier[at+1] {
			before = k + 1
		}
		px := frontier[most+1+before]
		py := px - before
		step := hunk{px, px, py, py + 1}
		if before < k {
			step = hunk{px, px + 1, py, py}
		}
		if n := len(out); n > 0 && out[n-1].a0 == step.a1 && out[n-1].b0 == step.b1 {
			out[n-1].a0, out[n-1].b0 = step.a0, step.b0
		} else {
			out = append(out, step)
		}
		x, y = px, py
	}
	slices.Reverse(out)
	return out
}

// Unified is the difference between two texts of a file as `git apply` and `patch -p1` take it, ""
// where there is none. Lines keep their bytes, line ends of any kind among them.
func Unified(file string, old, new []byte) string {
	a, b := lines(old), lines(new)
	all := changes(a, b)
	if len(all) == 0 {
		return ""
	}
	var out strings.Builder
	fmt.Fprintf(&out, "--- %s\n+++ %s\n", diffName("a/", file), diffName("b/", file))
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].a0-all[n-1].a1 <= 2*context {
			n++
		}
		section(&out, a, b, all[:n])
		all = all[n:]
	}
	return out.String()
}

// section writes hunks that are near each other, with the lines around them.
func section(out *strings.Builder, a, b []string, near []hunk) {
	first, last := near[0], near[len(near)-1]
	before, after := min(context, first.a0), min(context, len(a)-last.a1)
	fmt.Fprintf(out, "@@ -%s +%s @@\n", span(first.a0-before, last.a1+after), span(first.b0-before, last.b1+after))
	at := first.a0 - before
	for _, h := range near {
		marked(out, " ", a[at:h.a0])
		marked(out, "-", a[h.a0:h.a1])
		marked(out, "+", b[h.b0:h.b1])
		at = h.a1
	}
	marked(out, " ", a[at:last.a1+after])
}

func span(from, to int) string {
	if from == to { // nothing on this side: the line before
		return fmt.Sprintf("%d,0", from)
	}
	return fmt.Sprintf("%d,%d", from+1, to-from)
}

func marked(out *strings.Builder, mark string, lines []string) {
	for _, l := range lines {
		out.WriteString(mark + l)
		if !strings.HasSuffix(l, "\n") {
			out.WriteString("\n\\ No newline at end of file\n")
		}
	}
}

// diffName is a file's name in the head of a diff: quoted as C does it where it has bytes that would end
// the line or the name, and with a tab behind it where it has a space.
func diffName(prefix, file string) string {
	name := prefix + strings.TrimLeft(strings.TrimPrefix(file, "./"), "/")
	if strings.ContainsFunc(name, func(r rune) bool { return r < ' ' || r == '"' || r == '\\' || r == 0x7f }) {
		var q strings.Builder
		for i := range len(name) {
			switch c := name[i]; {
			case c == '"' || c == '\\':
				q.WriteString("\\" + string(c))
			case c < ' ' || c >= 0x7f:
				fmt.Fprintf(&q, "\\%03o", c)
			default:
				q.WriteByte(c)
			}
		}
		return `"` + q.String() + `"`
	}
	if strings.Contains(name, " ") {
		return name + "\t"
	}
	return name
}
