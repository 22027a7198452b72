// Package bonding holds the rules about what joins frame, ground and return: what the metal of a vehicle
// or boat carries, and what it must be able to carry.
package bonding

import "ferrule/lint"

// Rules lists the family's rules, by id.
var Rules = []*lint.Rule{
	chassisReturn,
	neutralBondCount,
}
