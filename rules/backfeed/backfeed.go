// Package backfeed asks where energy can run the way nobody drew it.
package backfeed

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	chargeLoop,
	loadCenterFeedsBack,
	reverseThroughConverter,
	tieCarriesHouseLoad,
}
