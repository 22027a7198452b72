// Package conductor holds the rules about wires: what they carry, what they lose, where they run.
package conductor

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	ampacity,
	hotPlace,
	returnWeakerThanFeed,
	unequalParallels,
	voltageDrop,
}
