// Package quantity reads and prints numbers with units: "10 A", "6 mohm", "2/0 AWG", "-0.29 %/C".
//
// Values are held in SI (A, V, ohm, W, m, s) with three exceptions that the trade thinks in:
// charge in ampere hours, energy in watt hours, temperature in degrees Celsius. Units exist only
// at the edges: Parse on the way in, String on the way out.
package quantity

// Dimension is what a quantity measures.
type Dimension uint8

// The dimensions. The zero value is invalid.
const (
	_ Dimension = iota
	Current
	Voltage
	Resistance
	Power
	Charge             // Ah
	Energy             // Wh
	Length             // m
	Temperature        // degrees C
	Duration           // s
	Ratio              // 1
	Coefficient        // per kelvin
	VoltageCoefficient // V per kelvin
)

// Kind tells direct from alternating current. Only voltages carry it.
type Kind uint8

// The kinds of current. Unmarked means that the plan did not say.
const (
	Unmarked Kind = iota
	DC
	AC
)

// Quantity is a value of a dimension.
type Quantity struct {
	Value float64
	Dim   Dimension
	Kind  Kind
}

// Size is a conductor size. The zero Size is unknown.
type Size struct {
	Name   string  // "10 AWG", "2/0 AWG", "250 kcmil", "6 mm2"
	Area   float64 // mm2: ASTM B258 for AWG, as named for kcmil and metric
	AWG    int     // gauge number, 0 for 1/0, -1 for 2/0, -3 for 4/0; only where System is AWG
	System System
}

// System is a way of naming conductor sizes.
type System uint8

// The size systems. The zero value is invalid.
const (
	_ System = iota
	AWG
	KCMIL
	Metric
)
