// Package ac asks where supplies of alternating current can meet, and what they can make live that
// should be dead. It says that a way is there; what becomes of it is an electrician's.
package ac

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	feedsTheGrid,
	liveInletPins,
	twoSourcesJoined,
}
