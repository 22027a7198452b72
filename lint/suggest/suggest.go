package suggest

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
	"ferrule/lint/derive"
)

// Kind says how far a suggestion may be trusted. The zero value is invalid.
type Kind uint8

// The kinds.
const (
	_           Kind = iota
	SameCircuit      // only words change: the network and every number are what they were
	Verified         // the finding is gone, and in no state is anything worse
	Sketch           // has a blank to fill, or did not pass: never written to a file
)

var kindNames = [...]string{"", "same-circuit", "verified", "sketch"}

func (k Kind) String() string { return kindNames[k] }

// Suggestion is a change of a plan's text for one finding.
type Suggestion struct {
	Kind    Kind
	Steps   []string // what to do, a sentence each
	Reason  string   // of a sketch: why it is no more
	Needs   []string // what the parts must be proven to be
	Sources []string // whose figures it uses
	Edits   []Edit   // of the plan's text; none where only a person can fill in what is asked
	Before  string   // what the finding says
	Numbers []Figure
	Cost    Cost
	Result  []byte // the whole text, edited
	// Clears are the other findings that are gone with it, by the numbers of the report.
	Clears []int
	// Stays are the parts on which the same rule finds the same by the same cause: they were folded under the
	// finding, and stand without it.
	Stays []string
	// Surfaces are what other rules find that stands with the finding gone: of what was folded under it, and of the parts that
	// are changed.
	Surfaces []string

	changes []lint.Change
}

// Figure is a number that the verdict rests on, before or after.
type Figure struct {
	When string // "before", "after"
	derive.Step
}

// Cost orders suggestions: the least change first.
type Cost struct {
	Parts      int     // that are changed or new
	Unmeasured int     // wires, new or of another size, whose length is not written: each may be the longest
	Metres     float64 // of wire that is new or of another size
	Ratings    int     // other figures that change
}

func (c Cost) order(o Cost) int {
	switch {
	case c.Parts != o.Parts:
		return c.Parts - o.Parts
	case c.Unmeasured != o.Unmeasured:
		return c.Unmeasured - o.Unmeasured
	case c.Metres < o.Metres:
		return -1
	case c.Metres > o.Metres:
		return 1
	}
	return c.Ratings - o.Ratings
}

// How much work one finding may make: alternatives that are shown, proposals for one verdict that are placed in
// the text, proposals that all rules are asked of without and with those that review the others, steps that may
// follow from one another, how many first steps are followed, and of how many proposals all rules are asked then.
const (
	mostShown    = 3
	mostPlaced   = 120
	mostChecked  = 24
	mostFull     = 6
	mostFollowed = 3
	mostBranches = 8
	mostOnward   = 8
)

// Ways are what was found to clear a finding: what is good first, then sketches.
type Ways struct {
	List []Suggestion
	Cut  bool // the search was ended before everything was tried: there may be more, and better
	JSON bool // the plan is written in JSON, in which nothing is placed
	Left bool // nothing good was found, and a bound on the work left proposals untried
}

// Good says whether any of them is more than a sketch.
func (w Ways) Good() bool { return len(w.List) > 0 && w.List[0].Kind != Sketch }

// For gives up to three suggestions for a finding, the least change first, and what could not be
// verified as sketches after them. A plan that could not be checked whole has none: what was not looked
// at cannot be shown to hold.
func (d *Desk) For(f *check.Finding) Ways { return d.ways(f, mostShown) }

// Best is For with the first that is good and no more.
func (d *Desk) Best(f *check.Finding) Ways { return d.ways(f, 1) }

func (d *Desk) ways(f *check.Finding, wanted int) Ways {
	if d.pass == nil || d.Report.Tainted() {
		return Ways{Cut: true}
	}
	s := d.search(f, wanted)
	out := append(s.good, s.sketches()...)
	if q := len(f.Verdict.Missing); f.Verdict.Outcome == lint.NotProven && q > 0 && len(s.good) > 1 { // to write it may be all that is wanted
		out = slices.Concat(s.good[:1], s.questions(), s.good[1:], s.open)
	}
	return Ways{List: out[:min(len(out), wanted)], Cut: d.Stopped(), JSON: d.page == nil, Left: s.left && len(s.good) == 0}
}

func (d *Desk) search(f *check.Finding, wanted int) *search {
	s := &search{Desk: d, finding: f, Question: compare.Asked(f), wanted: wanted}
	s.run()
	return s
}

// draft is a proposal that was placed in the text.
type draft struct {
	*Desk // with the new text
	lint.Proposal
	offer   string // drafts of one kind are alternatives of each other: only the best is shown
	cost    Cost
	changes []lint.Change // of all steps
	steps   []string
	needs   []string
	sources []string
}
