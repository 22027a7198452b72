package report

import (
	"fmt"
	"math"
	"strings"

	"ferrule/lint/derive"
	"ferrule/lint/states"
)

// folds says that there is no operating point, or that none was found.
func folds(n states.NoPoint) string {
	if n.Unsolved {
		return n.Corner + ": the search for the operating point failed, so nothing is known of it"
	}
	return fmt.Sprintf("%s: the loads ask for more than can be brought, so there is no operating point; with all powers at %s there is one", n.Corner, derive.Text(n.Share*100, "%"))
}

// spread is volts over corners, and amps where they are told; what is not known has no number.
func spread(volts, amps states.Range) string {
	if len(volts.Missing) > 0 {
		return "not known, something is missing"
	}
	var parts []string
	if volts.Least != nil {
		parts = append(parts, between(volts, "V", true)+between(amps, "A", false))
	}
	if len(volts.Dark) > 0 {
		parts = append(parts, "no power when "+strings.Join(volts.Dark, " or "))
	}
	if len(volts.NoPoint) > 0 {
		parts = append(parts, "no operating point when "+strings.Join(volts.NoPoint, " or "))
	}
	return strings.Join(parts, "; ")
}

func between(r states.Range, unit string, corners bool) string {
	if r.Least == nil {
		return ""
	}
	least, most := derive.Text(r.Least.Value, unit), derive.Text(r.Most.Value, unit)
	switch {
	case corners && least != most:
		return least + " (" + r.Least.Corner + ") to " + most + " (" + r.Most.Corner + ")"
	case corners:
		return least
	case least != most:
		return ", " + least + " to " + most
	}
	return ", " + least
}

// still is under what no current is said to run, in A.
const still = 0.005

func feed(l *states.Listing, f states.Feed) string {
	s := l.Called(f.From) + " " + gives(f.Amps)
	if len(f.To) > 0 {
		s += ": " + joined(l, f.To)[0]
	}
	if len(f.Charges) > 0 {
		s += "; charges " + joined(l, f.Charges)[0]
	}
	return s
}

// gives is what a supply gives and takes; a minus is what it takes.
func gives(r states.Range) string {
	switch {
	case len(r.Missing) > 0:
		return "gives what is not known, something is missing"
	case r.Least == nil:
		return "has no operating point when " + strings.Join(r.NoPoint, " or ")
	case r.Most.Value < still && r.Least.Value > -still:
		return "gives nothing"
	}
	at := func(v *states.Value) string { return derive.Text(max(v.Value, -v.Value), "A") + " (" + v.Corner + ")" }
	var parts []string
	if r.Most.Value >= still {
		parts = append(parts, "gives up to "+at(r.Most))
	}
	if r.Least.Value <= -still {
		parts = append(parts, "takes up to "+at(r.Least))
	}
	s := strings.Join(parts, ", ")
	if len(r.NoPoint) > 0 {
		s += ", no operating point when " + strings.Join(r.NoPoint, " or ")
	}
	return s
}

func fullest(l *states.Listing, h states.Share) string {
	if math.IsInf(h.Share, 1) {
		return fmt.Sprintf("%s: heat leaves it no ampacity, and it carries %s (%s)", l.Called(h.Conductor), derive.Text(h.Amps.Value, "A"), h.Amps.Corner)
	}
	return fmt.Sprintf("%s: %s of its ampacity, %s of %s (%s)", l.Called(h.Conductor), derive.Text(h.Share*100, "%"), derive.Text(h.Amps.Value, "A"), h.Ampacity.Text(), h.Amps.Corner)
}
