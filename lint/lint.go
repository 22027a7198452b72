// Package lint holds the words that every rule and every view speaks: a Rule asks each subject it
// applies to a question over all states of a plan and answers with a Verdict.
//
// A rule sees a Pass and nothing else: no file, no clock, no terminal. It answers for every subject:
// holds, violated or not proven. The zero verdict is invalid, so silence never passes for safety,
// and the coverage line of a report counts itself. An error in a plan is never a verdict, and a
// finding is never an error.
package lint

import (
	"sort"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Severity is the signal word of ANSI Z535 and ISO 3864.
type Severity uint8

// The signal words. The zero value is invalid.
const (
	_ Severity = iota
	Notice
	Caution
	Warning
	Danger
)

var severityNames = [...]string{"", "notice", "caution", "warning", "danger"}

func (s Severity) String() string { return severityNames[s] }

// ParseSeverity reads a signal word.
func ParseSeverity(word string) (Severity, bool) {
	for i, n := range severityNames {
		if i > 0 && n == word {
			return Severity(i), true
		}
	}
	return 0, false
}

// Outcome is what a rule found for one subject.
type Outcome uint8

// The outcomes. The zero value is invalid.
const (
	_         Outcome = iota
	Holds             // checked in all states
	Violated          // a state breaks it
	NotProven         // an input is missing, a model does not cover it, or a search met its bound
)

var outcomeNames = [...]string{"", "holds", "violated", "not-proven"}

func (o Outcome) String() string { return outcomeNames[o] }

// Position is one entry of a state: "switch.house_select" at "pack".
type Position = network.Position

// Verdict is a rule's answer for one subject.
type Verdict struct {
	Subject schema.Block
	Outcome Outcome
	// Word is what a violation carries; for NotProven, the highest word that a violation could
	// carry with the inputs that are known. Unused where the rule holds.
	Word    Severity
	Message string          // one or two sentences in the owner's names; plain text, unescaped
	State   []Position      // the state that breaks it, only the positions that matter
	Numbers []derive.Number // what the verdict rests on, most important last
	Path    []string        // terminals in order, where a path matters
	Related []string        // addresses of other parts concerned
	Missing []Missing       // NotProven: what to go and read
	// Group names what verdicts of one rule have in common when one cause makes them all, such as the
	// source whose run has no device: the first of them leads and the others are folded under it.
	Group string
	// Cause tells two findings of one rule on one subject apart, such as the other source. It must
	// not contain numbers or lines: fingerprints are made of it.
	Cause string
}

// Standing says how a citation is known.
type Standing uint8

// The standings. The zero value is invalid.
const (
	_              Standing = iota
	Read                    // the text, or text that quotes or summarises the clause, was read
	FromMemory              // recalled, the clause was not opened
	CommonPractice          // what competent people do; no clause is claimed
)

var standingNames = [...]string{"", "read", "from memory, not opened", "common practice, no clause"}

func (s Standing) String() string { return standingNames[s] }

// Citation is where a rule comes from.
type Citation struct {
	Ref      string // "33 CFR 183.455(b)"; "common practice"
	Standing Standing
	Note     string   // what it says, or how far it reaches; "as quoted by ..."
	For      []string // practices that it speaks for; empty means all
}

// Rule is one question with everything that can be said of it.
type Rule struct {
	ID      string // "overcurrent/unprotected-run"; the file and fixture folder carry the last part
	Claim   string // what a violation means, one sentence
	Words   []Severity
	Harm    bool   // a missing input can hide a fire or a shock: not proven counts up to warning
	Subject string // what it asks: "conductor", "switch", ...
	When    string // the condition, in words
	Why     string // why it hurts, and why it carries its word
	Numbers string // limits and figures it uses, and how they are computed
	Not     string // what it does not decide, known limits
	Offer   string // what would clear it
	Meter   string // what an expert would measure; "" where nothing can be measured safely
	Cites   []Citation
	Remedy  bool    // an edit of the plan can clear it
	Offers  []Offer // which edits may
	// Folds are the rules whose finding on the same part, in a state within this one's, has the same
	// cause: an id, or an id, a space and the one Verdict.Cause of which that is so.
	Folds []string
	Since string

	// Exactly one of the two. Run answers for every subject. Review runs after all other rules and
	// may read what they found: rules about the plan's own promises and guesses.
	Run    func(*Pass) []Verdict
	Review func(*Pass, *Ran) []Verdict
}

// Ran is what the other rules answered, for rules that review them.
type Ran struct {
	Rules    []*Rule
	Verdicts map[string][]Verdict // by rule id
	// Waived lists the waivers that matched a finding, by address of the waiver.
	Waived map[string]bool
	// Again answers, under other guesses, the rules that Run and have a word as high as the least.
	Again func(g Guesses, least Severity) map[string][]Verdict
	// Without answers them with some interlocks taken away and some modes not relied on.
	Without func(least Severity, blocks ...schema.Block) map[string][]Verdict
}

// Family is the part of the id before the slash.
func (r *Rule) Family() string {
	for i := range r.ID {
		if r.ID[i] == '/' {
			return r.ID[:i]
		}
	}
	return r.ID
}

// Top is the highest word the rule can carry.
func (r *Rule) Top() Severity {
	var top Severity
	for _, w := range r.Words {
		top = max(top, w)
	}
	return top
}

// Explains says whether the rule's findings explain what a rule with an id finds, with a cause.
func (r *Rule) Explains(id, cause string) bool {
	for _, f := range r.Folds {
		if rule, only, one := strings.Cut(f, " "); rule == id && (!one || only == cause) {
			return true
		}
	}
	return false
}

// CountsAs is the severity that a verdict of the rule counts as: the word itself for a violation;
// for not proven one step under it, or the word up to warning where a missing input can hide harm;
// never lower than notice.
func (r *Rule) CountsAs(v Verdict) Severity {
	if v.Outcome == Violated {
		return v.Word
	}
	if r.Harm {
		return min(v.Word, Warning)
	}
	return max(v.Word-1, Notice)
}

// SortState orders positions by address, each once.
func SortState(s []Position) []Position {
	sort.Slice(s, func(i, j int) bool { return s[i].Addr < s[j].Addr })
	out := s[:0]
	for i, p := range s {
		if i == 0 || p != s[i-1] {
			out = append(out, p)
		}
	}
	return out
}

// Where is the place of a block in its file.
func Where(b schema.Block) hcl.Range { return b.Header().Range }
