package lint

import (
	"time"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Missing names one input that the plan leaves out.
type Missing = derive.Missing

// Guesses are the figures that stand in for what a plan leaves out.
type Guesses = circuit.Guesses

// Pass is all that a rule sees. Everything in it is read only and shared by all rules of a run;
// numbers and states are worked out when first asked for.
type Pass struct {
	Plan    *schema.Plan
	Net     *network.Network
	Space   *explore.Space
	Circuit *circuit.Circuit
	Today   time.Time
}

// NewPass prepares a pass over a plan's network.
func NewPass(n *network.Network, space *explore.Space, g Guesses, today time.Time) *Pass {
	return &Pass{Plan: n.Plan, Net: n, Space: space, Circuit: circuit.New(space, g), Today: today}
}
