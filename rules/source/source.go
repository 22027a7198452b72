// Package source asks which sources meet, and whether they may.
package source

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	dischargeLimit,
	joinedAtUnequalCharge,
	shortCircuited,
	unlikeInParallel,
}
