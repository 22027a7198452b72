// Package circuit puts numbers on a network: ampacity, resistance, largest current, drop and fault
// current, each with its derivation.
//
// The largest current of an edge is, on a tree, the sum of what is drawn beyond it, each constant power
// at the least volts that the state is solved to leave it; no resistance enters, and more load never
// makes it less. In a ring the sum is shared out by resistance. Where neither argument holds the sum
// over the whole ring stays as a bound, and every derivation says which it is. What no figure of the
// plan bounds is named as missing and counted as nothing: a result with something missing is a least
// figure, good enough to break a rule, never to satisfy one.
//
// Point is the solved operating point of one state; lint/solve finds it. Faults is one live section of
// the network as bolted shorts find it, solved once for all places.
package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
	"ferrule/schema"
)

// Guesses are the figures that stand in for what a plan leaves out. The zero value is the trade's
// own figures; plan/guess-decides moves them to see which verdicts lean on them.
type Guesses struct {
	Ambient    *float64 // C, where the plan states none
	Joints     float64  // multiplies assumed joint resistances; 0 means 1
	Resistance float64  // multiplies assumed battery resistances; 0 means 1
}

// Memory remembers solved networks.
type Memory = solve.Memory

// Circuit answers questions of number about one network. It remembers its answers, so it is not for
// use by several goroutines at once.
type Circuit struct {
	Net     *network.Network
	Space   *explore.Space
	Guesses Guesses
	Memory  *Memory // of solved networks, which circuits may share

	currents map[*network.Zone]map[int]Current
	returns  map[int]Current
	solved   map[*explore.View]*solvedView
	loads    map[int]demand
	inputs   map[int]demand
	sides    []side // by zone; nil until asked for
	family   [][]*network.Zone
	highs    map[network.NodeID]highest
	strings  map[*network.Zone]*network.Zone
	lows     map[*network.Zone]*lows
	feeds    map[int]int
	cuts     map[*network.Zone]map[uint64][]int
	ohms     map[ohmsKey]ohms
	mains    []*Mains // nil until asked for
	laws     map[loadCase]loadLaw
	bare     *wiring // of the view that was wired last

	equivalents map[equivalentKey]equivalent
}

// New prepares the numbers of a network.
func New(space *explore.Space, g Guesses) *Circuit {
	return &Circuit{Net: space.Net, Space: space, Guesses: g, Memory: &Memory{},
		currents: map[*network.Zone]map[int]Current{}, solved: map[*explore.View]*solvedView{}, loads: map[int]demand{}, inputs: map[int]demand{}, highs: map[network.NodeID]highest{}, strings: map[*network.Zone]*network.Zone{}, lows: map[*network.Zone]*lows{}, feeds: map[int]int{}, cuts: map[*network.Zone]map[uint64][]int{}, ohms: map[ohmsKey]ohms{}, laws: map[loadCase]loadLaw{}}
}

func (g Guesses) joints() float64 {
	if g.Joints > 0 {
		return g.Joints
	}
	return 1
}

func (g Guesses) resistance() float64 {
	if g.Resistance > 0 {
		return g.Resistance
	}
	return 1
}

// read is a number that stands in the plan.
func read(name, symbol string, q schema.Quantity, unit string, b schema.Block, attribute string) derive.Number {
	return derive.Read(name, symbol, q.Value, unit, b.Header().Addr, attribute, q.Range)
}

func missing(b schema.Block, attribute string) []derive.Missing {
	return []derive.Missing{{Subject: b.Header().Addr, Attribute: attribute}}
}

func quote(b schema.Block) string { return `"` + b.Header().Named() + `"` }

// merge adds what is missing to a list, each once.
func merge(list []derive.Missing, more ...derive.Missing) []derive.Missing {
next:
	for _, m := range more {
		for _, have := range list {
			if have == m {
				continue next
			}
		}
		list = append(list, m)
	}
	return list
}
