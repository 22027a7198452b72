// Package load holds the rules about what loads are given.
package load

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	outsideVoltageWindow,
}
