// Package circuit puts numbers on a network: ampacity, resistance, largest current, drop and fault
// current, each with its derivation.
//
// Currents are sums, not solutions: the largest current in an edge is bounded by what the loads
// behind it can draw and what the sources before it can give, in each network that the zone can be.
// The bound is sound (the true current is never above it) and every derivation says that it is one.
package circuit

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Guesses are the figures that stand in for what a plan leaves out. The zero value is the trade's
// own figures; plan/guess-decides moves them to see which verdicts lean on them.
type Guesses struct {
	Ambient    *float64 // C, where the plan states none
	Joints     float64  // multiplies assumed joint resistances; 0 means 1
	Resistance float64  // multiplies assumed battery resistances; 0 means 1
}

// Circuit answers questions of number about one network.
type Circuit struct {
	Net     *network.Network
	Space   *explore.Space
	Guesses Guesses
}

// New prepares the numbers of a network.
func New(space *explore.Space, g Guesses) *Circuit {
	return &Circuit{Net: space.Net, Space: space, Guesses: g}
}
