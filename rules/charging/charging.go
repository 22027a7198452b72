// Package charging holds the rules about what charges a battery, and how.
package charging

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	alternatorOverload,
	batteryDropsOut,
	belowFreezing,
	drainsStartingBattery,
	lithiumMeetsAlternator,
	tooMuchCurrent,
}
