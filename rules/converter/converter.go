// Package converter holds the rules about what a converter draws, and what its input stands at.
package converter

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	constantPowerCollapse,
	inrush,
	shortsThrough,
	trackerOnStiffSource,
}
