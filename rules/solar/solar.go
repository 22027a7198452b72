// Package solar asks what an array can do to what it is wired to.
package solar

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	coldVoltage,
	stringBackfeed,
}
