// Package plan asks about the plan itself: which verdicts lean on a guess, and which of its promises
// no longer hold.
package plan

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	guessDecides,
	looseEnd,
	stalePromise,
}
