package states

import (
	"math"
	"strconv"

	"ferrule/lint"
	"ferrule/lint/network"
)

// Value is a number at a corner.
type Value struct {
	Value  float64
	Corner string
}

// Range is the least and the most of a number over the corners of a state; nil where it is not known.
type Range struct {
	Least, Most *Value
	Dark        []string       // corners at which there is no power
	NoPoint     []string       // corners that have no operating point
	Missing     []lint.Missing // why nothing is known
}

// over takes a number at every corner; read says that there is one.
func (x *solved) over(at network.NodeID, read func(i int) (float64, bool)) Range {
	r := Range{Missing: x.missing(at)}
	if len(r.Missing) > 0 {
		return r
	}
	for i, p := range x.points {
		v, ok := 0.0, false
		if p.Found {
			v, ok = read(i)
			v = sure(v)
		}
		switch {
		case !p.Found:
			r.NoPoint = append(r.NoPoint, x.names[i])
		case !ok:
			r.Dark = append(r.Dark, x.names[i])
		default:
			if r.Least == nil || below(v, r.Least.Value) {
				r.Least = &Value{v, x.names[i]}
			}
			if r.Most == nil || below(r.Most.Value, v) {
				r.Most = &Value{v, x.names[i]}
			}
		}
	}
	return r
}

// below compares numbers that the solver is sure of to about nine figures: what differs by less is
// one number, and the first corner or state that has it is told.
func below(a, b float64) bool { return a < b-noise*max(1, math.Abs(a)) }

// sure keeps the six figures that are the same in every run.
func sure(v float64) float64 {
	if v < noise && v > -noise {
		return 0
	}
	digits, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 5, 64), 64)
	if err != nil {
		return v
	}
	return digits
}

// noise is what the solver leaves of a zero.
const noise = 1e-6

// deadVolts is under what a terminal counts as having no power.
const deadVolts = 0.05

// volts is the voltage of a terminal: across its pair, or of its one node against the reference.
func (x *solved) volts(p network.Port, i int) (v float64, ok bool) {
	if p.Hot != network.None && p.Ret != network.None && p.Hot != p.Ret {
		v, ok = x.points[i].Across(p)
	} else {
		v, ok = x.points[i].Volts(max(p.Hot, p.Ret))
	}
	return v, ok && (v > deadVolts || v < -deadVolts)
}
