// Package derive holds numbers with memory: a value, its unit, and how it came about.
//
// A number that reaches a verdict is never a bare float. It is a Number, which knows its name, its
// symbol, where it was read or by which formula it was computed, and the numbers that went in. The
// steps of a finding, the assumptions of a report and the pages of explain are all read from it.
package derive

import (
	"github.com/hashicorp/hcl/v2"

	"ferrule/schema/quantity"
)

// Kind says where a number came from.
type Kind uint8

// The origins. The zero value is invalid.
const (
	_          Kind = iota
	Plan            // written in the plan
	Assumption      // the trade's conservative figure, because the plan leaves it out
	Table           // a published table
	Formula         // computed from other numbers
)

// Number is a value with its derivation.
type Number struct {
	Name   string  // "ampacity of \"Pack feed\""
	Symbol string  // "Iz"
	Value  float64 // in Unit
	Unit   string  // "A", "V", "ohm", "m", "s", "C", "" for a ratio
	Kind   Kind
	Source string // plan: the attribute, "conductor.feed length"; table: its clause; formula: the formula in symbols
	At     hcl.Range
	// Subject and Attribute name what was left out; only for an Assumption.
	Subject, Attribute string
	From               []Number
}

// Read is a number that the plan states: attribute is its name on the block at addr.
func Read(name, symbol string, value float64, unit, addr, attribute string, at hcl.Range) Number {
	return Number{Name: name, Symbol: symbol, Value: value, Unit: unit, Kind: Plan, Source: addr + " " + attribute, At: at}
}

// Assume is a number that stands in for an attribute left out. why says whose figure it is.
func Assume(name, symbol string, value float64, unit, addr, attribute, why string) Number {
	return Number{Name: name, Symbol: symbol, Value: value, Unit: unit, Kind: Assumption, Source: why, Subject: addr, Attribute: attribute}
}

// LookUp is a number from a published table; clause cites it. from are the numbers it was looked up by.
func LookUp(name, symbol string, value float64, unit, clause string, from ...Number) Number {
	return Number{Name: name, Symbol: symbol, Value: value, Unit: unit, Kind: Table, Source: clause, From: from}
}

// Compute is a number worked out from others; formula says how, in their symbols.
func Compute(name, symbol string, value float64, unit, formula string, from ...Number) Number {
	return Number{Name: name, Symbol: symbol, Value: value, Unit: unit, Kind: Formula, Source: formula, From: from}
}

// Missing names one input that the plan leaves out, and without which nothing can be concluded.
type Missing struct{ Subject, Attribute string }

// Step is one line of a derivation.
type Step struct {
	Quantity           string
	Symbol             string
	Value              float64
	Unit               string
	Kind               Kind
	Source             string
	At                 hcl.Range
	Subject, Attribute string
}

// Steps lists the derivations of numbers, what went in before what came out, each step once.
func Steps(numbers ...Number) []Step {
	var out []Step
	seen := map[Step]bool{}
	Walk(numbers, func(n Number) {
		if s := n.Step(); !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	})
	return out
}

// Step is the number without what went into it.
func (n Number) Step() Step {
	return Step{n.Name, n.Symbol, n.Value, n.Unit, n.Kind, n.Source, n.At, n.Subject, n.Attribute}
}

// Walk visits numbers and all that went into them, what went in first. Derivations share their
// inputs; a list that several numbers share is visited once, so the walk is as long as what there is.
func Walk(numbers []Number, visit func(Number)) {
	type list struct {
		first *Number
		n     int
	}
	seen := map[list]bool{}
	var walk func([]Number)
	walk = func(ns []Number) {
		if len(ns) == 0 || seen[list{&ns[0], len(ns)}] {
			return
		}
		seen[list{&ns[0], len(ns)}] = true
		for _, n := range ns {
			walk(n.From)
			visit(n)
		}
	}
	walk(numbers)
}

var dims = map[string]quantity.Dimension{
	"A": quantity.Current, "V": quantity.Voltage, "ohm": quantity.Resistance, "W": quantity.Power,
	"Ah": quantity.Charge, "Wh": quantity.Energy, "m": quantity.Length, "C": quantity.Temperature,
	"s": quantity.Duration, "1/C": quantity.Coefficient, "V/C": quantity.VoltageCoefficient,
}

// Text prints the number with its unit, as the report writes it.
func (n Number) Text() string { return Text(n.Value, n.Unit) }

// Text prints a value in one of the units that numbers carry; a factor has none.
func Text(value float64, unit string) string {
	if d, ok := dims[unit]; ok {
		return quantity.Format(value, d)
	}
	if unit == "" {
		return quantity.Number(value)
	}
	return quantity.Number(value) + " " + unit
}
