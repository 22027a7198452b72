// Package suggest turns what a rule offers into changes of a plan's text that were checked: it applies
// a proposal in memory, asks all rules again over all states, and offers only what clears the finding
// and makes nothing worse. It writes no file and knows no rule by name.
package suggest

import (
	"cmp"
	"fmt"
	"slices"
)

// Edit replaces the bytes from Start to before End of a file by Text. Start == End inserts.
type Edit struct {
	File       string
	Start, End int
	Text       string
}

// Apply gives the text with edits made, all of them counted from the text as it was. Their order does
// not matter; the same edit twice counts once. It is an error if one reaches beyond the text, if two
// overlap, or if two insert at one place: which comes first would be a guess.
func Apply(src []byte, edits []Edit) ([]byte, error) {
	edits = slices.Clone(edits)
	slices.SortFunc(edits, func(a, b Edit) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End), cmp.Compare(a.Text, b.Text))
	})
	edits = slices.Compact(edits)
	out := make([]byte, 0, len(src))
	at := 0
	for i, e := range edits {
		switch {
		case e.Start < 0 || e.End < e.Start || e.End > len(src):
			return nil, fmt.Errorf("an edit of bytes %d to %d does not fit a text of %d", e.Start, e.End, len(src))
		case i > 0 && (e.Start < at || e.Start == edits[i-1].Start):
			return nil, fmt.Errorf("two edits meet at byte %d", e.Start)
		}
		out = append(out, src[at:e.Start]...)
		out = append(out, e.Text...)
		at = e.End
	}
	return append(out, src[at:]...), nil
}

// Between gives the edits that turn one text into another: one for each run of lines that differ,
// without the words that its old and new lines begin and end with alike.
func Between(file string, old, new []byte) []Edit {
	a, b := lines(old), lines(new)
	var out []Edit
	at, line := 0, 0
	for _, h := range changes(a, b) {
		at += size(a[line:h.a0])
		was, is := join(a[h.a0:h.a1]), join(b[h.b0:h.b1])
		head := alike(was, is, func(s string, i int) byte { return s[i] })
		was, is = was[head:], is[head:]
		tail := alike(was, is, func(s string, i int) byte { return s[len(s)-1-i] })
		out = append(out, Edit{file, at + head, at + head + len(was) - tail, is[:len(is)-tail]})
		at += size(a[h.a0:h.a1])
		line = h.a1
	}
	return out
}

// alike counts the bytes, in one direction, that two texts have in common. It does not end inside a word:
// an edit of half a word says nothing, and one of half a character is no text.
func alike(a, b string, at func(string, int) byte) int {
	n := 0
	for n < len(a) && n < len(b) && at(a, n) == at(b, n) {
		n++
	}
	for n > 0 && inWord(at(a, n-1)) && (n < len(a) && inWord(at(a, n)) || n < len(b) && inWord(at(b, n))) {
		n--
	}
	return n
}

func inWord(c byte) bool {
	return c == '_' || c == '.' || c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80
}
