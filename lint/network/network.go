// Package network turns a plan into the two-wire network that it describes.
//
// People draw one line for a pair of wires. Here every terminal has a first node (positive, or line)
// and a second (negative, or neutral), and on alternating current a third (ground). A pair conductor
// is two edges, a fuse breaks the first only, a connector carries all its contacts. Each edge says
// in which positions it conducts. Sources, converters and loads are no edges: they are ports, since
// nothing about "is it joined by wire" may run through them by accident.
package network

import (
	"ferrule/schema"
)

// NodeID indexes Network.Nodes.
type NodeID int

// None is no node.
const None NodeID = -1

// Node is one electrical node of one terminal.
type Node struct {
	Addr     string // the block
	Terminal string // "" where the block is its own terminal
	Contact  string // a connector's named contact
	Pole     schema.Pole
	AC       bool
	Return   bool // always joined to its island's reference by conductors, buses, pass-throughs and mated contacts
}

// Name is the node as a plan would write it: fuse.main.load.pos.
func (n Node) Name() string {
	return n.Place() + suffix(n.Pole.String())
}

// Place is the terminal the node belongs to: fuse.main.load.
func (n Node) Place() string {
	s := n.Addr + suffix(n.Terminal)
	return s + suffix(n.Contact)
}

func suffix(s string) string {
	if s == "" {
		return ""
	}
	return "." + s
}

// EdgeKind is what an edge is made of.
type EdgeKind uint8

// The edge kinds. The zero value is invalid.
const (
	_       EdgeKind = iota
	Wire             // a conductor
	Element          // the element of a fuse or breaker
	Contact          // a switch contact
	Mate             // a connector's contact
	Through          // a negative, neutral or ground that passes straight through a part
	Joint            // two terminals directly on each other
)

var kindNames = [...]string{"", "wire", "element", "contact", "mate", "through", "joint"}

func (k EdgeKind) String() string { return kindNames[k] }

// Edge joins two nodes wherever its condition is met.
type Edge struct {
	Kind EdgeKind
	Addr string // the block it belongs to
	A, B NodeID
	Pole schema.Pole
	When Condition
	Wire *schema.Conductor // Kind Wire
	Fuse *schema.Fuse      // Kind Element
}

// Other gives the far end.
func (e *Edge) Other(n NodeID) NodeID {
	if e.A == n {
		return e.B
	}
	return e.A
}

// Port is where a source, a load or one side of a converter meets the network.
type Port struct{ Hot, Ret, Ground NodeID }

// Source is a source with its port.
type Source struct {
	*schema.Source
	Port
	Present int // variable of its presence, -1 where it is always there
}

// Load is a load with its port.
type Load struct {
	*schema.Load
	Port
	Present int // variable of the source it is part of, or -1
}

// Converter is a converter with its two ports. Energy goes in to out; whether current can come back
// is the converter's blocks_reverse.
type Converter struct {
	*schema.Converter
	In, Out Port
	Present int
}

// VarKind is what a variable is about.
type VarKind uint8

// The variable kinds. The zero value is invalid.
const (
	_ VarKind = iota
	SwitchVar
	ConnectorVar
	SourceVar
)

// Variable is one thing that has positions.
type Variable struct {
	Addr      string
	Kind      VarKind
	Positions []string
	Throws    []Throw
	// Follows lists the variables that fix this one; Always says that nothing it follows is free.
	Follower  bool
	Follows   []int
	Closed    int // a follower's position while all that it follows are present or mated
	Momentary bool
}

// Throw is the way between two positions.
type Throw struct {
	From, To int
	Overlap  bool // both joined for a moment; else the gap, neither
	Assumed  bool // the plan does not state the transition
}

// Literal says that a variable stands at one of some positions.
type Literal struct {
	Var int
	At  []bool // by position
}

// Condition is a conjunction; an empty one always holds.
type Condition []Literal

// Network is the two-wire network of a plan.
type Network struct {
	Plan       *schema.Plan
	Nodes      []Node
	Edges      []Edge
	Vars       []Variable
	Sources    []Source
	Loads      []Load
	Converters []Converter
	Zones      []*Zone

	adjacent [][]int // edges by node
	vars     map[string]int
	ports    map[string]NodeID // by node name
	zoneOf   []int             // zone by node, -1 for return nodes
	joined   map[string]*Zone  // zones that were asked for together
	upstream map[*Zone]*Zone
	mains    []*Zone // nil until asked for
}

// At lists the edges at a node.
func (n *Network) At(id NodeID) []int { return n.adjacent[id] }

// Var gives the variable of a switch, connector or source, -1 where it has none.
func (n *Network) Var(addr string) int {
	if v, ok := n.vars[addr]; ok {
		return v
	}
	return -1
}

// Node finds a node by its name, None where there is none.
func (n *Network) Node(name string) NodeID {
	if id, ok := n.ports[name]; ok {
		return id
	}
	return None
}

// ZoneOf gives the zone that a live node lies in, nil for a return node.
func (n *Network) ZoneOf(id NodeID) *Zone {
	if z := n.zoneOf[id]; z >= 0 {
		return n.Zones[z]
	}
	return nil
}

// EdgesOf lists the edges of the block at addr, in order.
func (n *Network) EdgesOf(addr string) []int {
	var out []int
	for i := range n.Edges {
		if n.Edges[i].Addr == addr {
			out = append(out, i)
		}
	}
	return out
}

// Position is one entry of a state: "switch.house_select" at "pack".
type Position struct{ Addr, Position string }
