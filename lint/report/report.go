// Package report writes what a run found, one file per format. It decides nothing.
//
// All text that came from a plan, a file name or a command line is escaped for where it goes.
package report

import (
	"slices"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint/check"
	"ferrule/lint/explain"
	"ferrule/lint/suggest"
)

// Run is what one call of the command looked at.
type Run struct {
	Version string            // of the tool
	Plans   []*check.Report   // plans that could be read
	Kits    []string          // files that were checked as kits
	Errors  []*hcl.Diagnostic // what could not be read, each with a Subject
	// Suggestions are the ways to clear each finding, where they were asked for; else nil.
	Suggestions map[*check.Finding]suggest.Ways
	// InJSON has the plans that are written in JSON, in which no suggestion can be placed.
	InJSON map[*check.Report]bool
}

// Cut says whether the search for suggestions for a plan was ended before it was through.
func (r *Run) Cut(p *check.Report) bool {
	return slices.ContainsFunc(p.Findings, func(f *check.Finding) bool { return r.Suggestions[f].Cut })
}

// about joins what decides on the cautions of all plans.
func (r *Run) about() explain.About {
	var a explain.About
	for _, p := range r.Plans {
		one := explain.AboutOf(p)
		a.AC = a.AC || one.AC
		a.PracticeLeft = a.PracticeLeft || one.PracticeLeft
		a.Assumed += one.Assumed
	}
	return a
}
