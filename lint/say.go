package lint

import (
	"strings"

	"ferrule/lint/derive"
	"ferrule/schema"
)

// Quote is a part in a sentence: its label, or its name, in quotes.
func Quote(b schema.Block) string { return `"` + b.Header().Named() + `"` }

// And lists words in a sentence: "a", "a and b", "a, b and c".
func And(words ...string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// Lacking names a missing input in a sentence: "`rating` of fuse.main" for an attribute, a phrase as
// it is. marked puts attributes between backquotes.
func Lacking(m Missing, marked bool) string {
	switch {
	case m.Subject == "plan" && m.Attribute == "states":
		return "a search of all states; it met its bound"
	case m.Subject == "plan" && strings.Contains(m.Attribute, " "):
		return m.Attribute
	case strings.Contains(m.Attribute, " ") && !inner(m.Attribute):
		return m.Attribute + " for " + m.Subject
	case marked:
		return "`" + m.Attribute + "` of " + m.Subject
	}
	return m.Attribute + " of " + m.Subject
}

// inner says whether an attribute is one of a block within the part.
func inner(attribute string) bool {
	block, _, _ := strings.Cut(attribute, " ")
	return block == "input" || block == "output" || block == "bms"
}

// Positions tells a state in a sentence: `"House select" at off and "Pack" absent`.
func Positions(p *schema.Plan, state []Position) string {
	words := make([]string, 0, len(state))
	for _, s := range state {
		b := p.Block(s.Addr)
		if b == nil {
			continue
		}
		at := " at "
		if b.Header().Type != "switch" {
			at = " "
		}
		words = append(words, Quote(b)+at+s.Position)
	}
	return And(words...)
}

// Known leaves out of numbers those that nothing is known of, and, where something is lacking, zeros
// that stand for it.
func Known(lacks []Missing, numbers ...derive.Number) []derive.Number {
	var out []derive.Number
	for _, n := range numbers {
		if n.Kind != 0 && (len(lacks) == 0 || n.Value != 0 || n.Kind != derive.Formula) {
			out = append(out, n)
		}
	}
	return out
}

// Unfinished is the verdict on a subject whose states could not all be looked at.
func Unfinished(b schema.Block, word Severity) Verdict {
	return Verdict{
		Subject: b, Outcome: NotProven, Word: word, Missing: []Missing{{Subject: "plan", Attribute: "states"}},
		Message: "The search met its bound before it had looked at every state of " + Quote(b) + "; none of those it looked at is wrong.",
	}
}
