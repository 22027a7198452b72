// Package solve finds the operating point of a direct-current network, or of a single-phase one of
// resistances in effective values.
//
// A network is nodes, branches of resistance, and elements between two nodes with a characteristic:
// batteries, regulated supplies, solar arrays, loads of three behaviours, valves, and converters that
// couple two pairs of nodes by power. It knows nothing of plans.
//
// The nodes' voltages solve Kirchhoff's current law by Newton's method on a sparse matrix. Branches
// without resistance are contracted first. The elimination order takes the node with the fewest
// neighbours first: on a tree that is leaf after leaf, which is series and parallel reduction without
// fill. Elements of constant power make the equations have two roots, one, or none; the root wanted is
// the end of the branch followed from no power at all, and where that branch folds before full power
// there is no operating point: a result, with the share of the powers at which it folds.
package solve

// Branch is a resistance between two nodes, in ohm; 0 joins them.
type Branch struct {
	A, B int
	Ohms float64
}

// Kind is what an element does.
type Kind uint8

// The kinds of element. The zero value is invalid.
const (
	_         Kind = iota
	Battery        // Volts behind Ohms; takes at most Amps on charge where that is above 0
	Regulated      // Volts behind Ohms (its droop), gives at most Amps, takes none unless Back
	Array          // a solar array, by Cell
	Steady         // draws Amps; below Floor less, in proportion
	Power          // draws Watts, and at most Amps where that is above 0
	Resistor       // draws through Ohms
	Valve          // lets current pass from P to N once the voltage across it is above Volts; Ohms beyond
	Hold           // draws whatever keeps it at Volts, through Ohms: how much an array can give is asked with it
)

// Element is what stands between two nodes, P the positive one.
type Element struct {
	Kind  Kind
	P, N  int
	Volts float64
	Ohms  float64
	Amps  float64
	Watts float64
	Floor float64 // V
	Back  bool
	Cell  *Cell
}

// Converter takes power at one pair of nodes and gives it at another. Its output is a regulated
// supply of Volts behind Ohms that gives at most Amps, and no more power than Ceiling (0: no limit) or
// than InAmps (0: no limit) bring in; its input draws that power over Efficiency, and Idle beside.
type Converter struct {
	InP, InN, OutP, OutN int
	Volts, Ohms, Amps    float64
	Efficiency           float64
	Idle, Ceiling        float64 // W
	InAmps               float64
	Back                 bool // current can run from output to input
}

// Net is a network. Nodes counts them; References are the nodes that count as 0 V, the first one of
// each island; an island without one takes its lowest node.
type Net struct {
	Nodes      int
	References []int
	Branches   []Branch
	Elements   []Element
	Converters []Converter
}

// Point is a solved network. Where Found is false there is no operating point and nothing but Margin
// means anything.
type Point struct {
	Found   bool
	Margin  float64   // the share of all powers up to which there is a point; 1 where Found
	Folds   bool      // the point vanishes there; else the search gave up
	Volts   []float64 // by node, V
	Branch  []float64 // from A to B, A
	Element []float64 // out of P, A
	In, Out []float64 // of converters: into the input, out of the output, A
}
