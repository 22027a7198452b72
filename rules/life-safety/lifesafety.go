// Package lifesafety asks whether what keeps people alive has power in every state in which it is
// needed: alarms while somebody is aboard, brakes when a trailer has come off.
package lifesafety

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	alarmCanBeSwitchedOff,
	bilgePumpBehindSwitch,
	breakawayWithoutPower,
	oneCutoffTakesAll,
}
