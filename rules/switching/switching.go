package switching

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	contactRating,
	noBatteryDisconnect,
	offButLive,
	opensChargingSource,
}
