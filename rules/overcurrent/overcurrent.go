// Package overcurrent asks whether every wire that can be fed has a device near enough, small enough
// and able to open.
package overcurrent

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	clearsTooLate,
	interruptingRating,
	limitedSourceCannotClear,
	oversizeDevice,
	parallelBatteryBranch,
	polarizedBreaker,
	returnSideOnly,
	secondSourceUnguarded,
	undersizeDevice,
	unprotectedRun,
	voltageRating,
	wrongDeviceTripsFirst,
}
