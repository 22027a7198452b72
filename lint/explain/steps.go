package explain

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"ferrule/lint/derive"
)

// Origin says where a step's value came from, in one phrase.
func Origin(s derive.Step) string {
	switch s.Kind {
	case derive.Plan:
		if s.At.Filename == "" {
			return "plan: " + s.Source
		}
		return fmt.Sprintf("plan: %s, %s:%d", s.Source, s.At.Filename, s.At.Start.Line)
	case derive.Assumption:
		return fmt.Sprintf("assumed, %s of %s is left out: %s", s.Attribute, s.Subject, s.Source)
	case derive.Table:
		return "table: " + s.Source
	}
	return "computed: " + s.Source
}

// Derivation writes numbers as numbered steps, what goes in before what comes out, so that a reader
// can work each one out again by hand.
func Derivation(numbers []derive.Number) []Line {
	var out []Line
	at := map[derive.Step]int{}
	derive.Walk(numbers, func(n derive.Number) {
		s := n.Step()
		if at[s] != 0 {
			return
		}
		at[s] = len(at) + 1
		out = append(out, Line{Mark: fmt.Sprintf("%d.", at[s]), Text: headline(n) + ". " + upper(how(n, at)) + "."})
	})
	return out
}

func headline(n derive.Number) string {
	if n.Symbol == "" {
		return upper(n.Name) + ": " + n.Text()
	}
	return upper(n.Name) + ": " + n.Symbol + " = " + n.Text()
}

// how says where a number came from, a formula with the numbers put in.
func how(n derive.Number, at map[derive.Step]int) string {
	s := strings.TrimSuffix(Origin(n.Step()), ".")
	if n.Kind == derive.Formula {
		if put := putIn(n); put != "" {
			s += "; with the numbers, " + put
		}
	}
	var from []string
	for _, f := range n.From {
		if i := fmt.Sprint(at[f.Step()]); !slices.Contains(from, i) {
			from = append(from, i)
		}
	}
	switch {
	case len(from) == 1:
		s += "; from step " + from[0]
	case len(from) > 1:
		s += "; from steps " + strings.Join(from[:len(from)-1], ", ") + " and " + from[len(from)-1]
	}
	return s
}

// putIn is the right side of a formula with the values of its symbols, and the result; "" where no
// symbol of it stands for one value.
func putIn(n derive.Number) string {
	formula, _, _ := strings.Cut(n.Source, ";")
	if _, right, ok := strings.Cut(formula, "="); ok {
		formula = right
	}
	values := map[string]string{}
	for _, f := range n.From {
		if old, ok := values[f.Symbol]; ok && old != f.Text() {
			values[f.Symbol] = f.Symbol
			continue
		}
		values[f.Symbol] = f.Text()
	}
	put := insert(formula, values)
	if put == formula {
		return ""
	}
	return strings.TrimSpace(put) + " = " + n.Text()
}

// insert puts values in the place of symbols, in parentheses where a power follows.
func insert(formula string, values map[string]string) string {
	var b strings.Builder
	for formula != "" {
		s, rest := symbol(formula)
		v, ok := values[s]
		switch {
		case !ok || s == "x": // x is the sign of multiplication
			v = s
		case v != s && strings.HasPrefix(rest, "^"):
			v = "(" + v + ")"
		}
		b.WriteString(v)
		formula = rest
	}
	return b.String()
}

// symbol cuts the first symbol, or the first rune that belongs to none, off a formula. A symbol
// starts with a letter and goes on with letters and digits.
func symbol(s string) (first, rest string) {
	inside := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }
	if r, size := utf8.DecodeRuneInString(s); !inside(r) {
		return s[:size], s[size:]
	}
	end := strings.IndexFunc(s, func(r rune) bool { return !inside(r) })
	if end < 0 {
		end = len(s)
	}
	return s[:end], s[end:]
}

func upper(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
