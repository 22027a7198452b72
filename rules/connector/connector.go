// Package connector holds the rules about what comes apart: contacts that stay live, halves that fit
// where they should not, plugs that are drawn under load or turned round.
package connector

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	brokenUnderLoad,
	liveContactsExposed,
	reversible,
	wrongPartner,
}
