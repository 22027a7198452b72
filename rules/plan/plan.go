// Package plan asks about the plan itself: which verdicts lean on a guess, on somebody's habit or on a
// box that nobody looked into, and which of its promises no longer hold.
package plan

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	blackBoxPort,
	guessDecides,
	interlockOnTrust,
	looseEnd,
	stalePromise,
}
