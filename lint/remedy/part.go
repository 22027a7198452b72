package remedy

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// BlocksReverse offers a converter that lets nothing run backwards.
func BlocksReverse(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	return converters(p, v, "blocks_reverse", "one through which nothing runs from output to input")
}

// LimitsCurrent offers a converter that holds its output current.
func LimitsCurrent(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	return converters(p, v, "limits_current", "one that holds its output at its limit even into a short")
}

// Isolated offers a converter without a connection between its sides.
func Isolated(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Converter](p, v) {
		out = append(out, isolated(c))
	}
	return out
}

// IsolatedNear offers to isolate each converter that joins the returns of its two sides: what comes home
// through a wire that was not meant for it then has no way to.
func IsolatedNear(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range p.Plan.Converters {
		if !c.Isolated.True() && !alternating(p, c.Addr) {
			out = append(out, isolated(c))
		}
	}
	slices.SortFunc(out, func(a, b lint.Proposal) int { return strings.Compare(a.Changes[0].At, b.Changes[0].At) })
	return out
}

// ColdStopsCharger offers a charger that stops in the cold, by a sensor on the battery.
func ColdStopsCharger(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	return converters(p, v, "cold_charge_cutoff", "one with a sensor on the battery, that stops charging when the cells are below freezing")
}

func converters(p *lint.Pass, v lint.Verdict, flag, what string) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Converter](p, v) {
		out = append(out, fitted(c, flag, what))
	}
	return out
}

// NoBatteryNeeded offers chargers that bear it when the battery leaves them.
func NoBatteryNeeded(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Converter](p, v) {
		x := fitted(c, "needs_battery", "one that holds its output when the battery leaves it")
		x.Changes[0].Value = "false"
		out = append(out, x)
	}
	return out
}

func fitted(c *schema.Converter, flag, what string) lint.Proposal {
	return lint.Proposal{
		Do:      sentence("Fit %s as %s.", lint.Quote(c), what),
		Changes: []lint.Change{lint.Set(c.Addr, flag, "true")},
		Sources: []string{practice},
		Part:    "Its maker's sheet has to say so in words: an unmarked converter does not count.",
	}
}

func isolated(c *schema.Converter) lint.Proposal {
	return fitted(c, "isolated", "one whose two sides are not connected inside")
}

// ColdStopsBattery offers a battery whose own protection stops charge in the cold.
func ColdStopsBattery(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range head(about[*schema.Source](p, v)) {
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as a battery whose own protection stops charge when its cells are below freezing.", lint.Quote(s)),
			Changes: []lint.Change{lint.Set(s.Addr, "cold_charge_cutoff", "true")},
			Sources: []string{practice},
			Part:    "The battery's sheet has to say so and at which temperature.",
		})
	}
	return out
}

// FewerInSeries offers a shorter string, and the same modules in two strings, where that still has the volts that its
// controller works from.
func FewerInSeries(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range about[*schema.Source](p, v) {
		n, side := s.Series.Or(1), s.Parallel.Or(1)
		if s.Kind.Value != "solar" || n < 2 {
			continue
		}
		out = append(out, rowed(p, s, n-1, side, sentence("Put one module fewer in series in %s: %d.", lint.Quote(s), n-1))...)
		if n%2 == 0 {
			out = append(out, rowed(p, s, n/2, 2*side, sentence("Put the modules of %s in %d strings of %d.", lint.Quote(s), 2*side, n/2))...)
		}
	}
	return out
}

// rowed proposes so many modules in a string and so many strings side by side, none where the string is known to be too
// short for the controllers behind it.
func rowed(p *lint.Pass, s *schema.Source, n, side int, do string) []lint.Proposal {
	starts, known := starts(p, s, n)
	if !starts {
		return nil
	}
	one := lint.Proposal{Do: do, Changes: append(inSeries(s, n), lint.Set(s.Addr, "series", count(n))), Sources: []string{practice}}
	if side != s.Parallel.Or(1) {
		one.Changes = append(one.Changes, lint.Set(s.Addr, "parallel", count(side)))
	}
	if !known {
		one.Open = "whether so short a string has the volts that its controller works from turns on `vmp`, which is not written"
	}
	return []lint.Proposal{one}
}

// inSeries changes the nominal volts of an array with the number of its modules in series.
func inSeries(s *schema.Source, n int) []lint.Change {
	all := s.Vmp.Value * float64(s.Series.Or(1))
	if !own(&s.Head, s.Voltage.Attr) || !s.Vmp.Set || math.Abs(s.Voltage.Value-all) > 0.1*all { // it is not that of the string
		return nil
	}
	volts := math.Round(s.Voltage.Value*float64(n)/float64(s.Series.Or(1))*10) / 10
	return []lint.Change{lint.Set(s.Addr, "voltage", text(volts, "V"))}
}

// above its battery is what a tracker works from: end of charge is a fifth over nominal volts at the most. Common practice.
const aboveNominal = 1.2

// starts says whether a string of so many modules has the volts at full sun that the controllers behind it work from: a
// tracker takes volts down, and works from more than it gives. Not known where no volts of a module are written.
func starts(p *lint.Pass, s *schema.Source, n int) (starts, known bool) {
	volts := cmp.Or(s.Vmp.Value, s.Voc.Value) * float64(n)
	for _, c := range p.Plan.Converters {
		if len(way(p, s.Addr, c.Addr+".in")) == 0 {
			continue
		}
		least := 0.0
		if c.Input != nil {
			least = c.Input.VoltageMin.Value
		}
		if c.Kind.Value == "mppt" {
			least = max(least, aboveNominal*nominalAt(p, c.Addr+".out"))
			if c.Output != nil {
				least = max(least, c.Output.Voltage.Value)
			}
		}
		if volts > 0 && volts < least {
			return false, true
		}
	}
	return true, s.Vmp.Set
}

// nominalAt is the nominal volts of a terminal's circuit, 0 where they are not known.
func nominalAt(p *lint.Pass, terminal string) float64 {
	for i, n := range p.Net.Nodes {
		if v, ok := p.Circuit.Nominal(network.NodeID(i)); n.Place() == terminal && !n.Return && ok {
			return v.Value
		}
	}
	return 0
}

func count(n int) string { return sentence("%d", n) }

// inputs are the usual input limits of solar controllers, in V.
var inputs = []float64{50, 75, 100, 150, 250}

// HigherInput offers a controller for a higher voltage.
func HigherInput(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Converter](p, v)) {
		for _, volts := range inputs {
			if c.Input != nil && c.Input.VoltageMax.Set && volts > c.Input.VoltageMax.Value {
				out = append(out, lint.Proposal{
					Do:      sentence("Fit %s as a controller that takes %s.", lint.Quote(c), quantity.Format(volts, quantity.Voltage)),
					Changes: []lint.Change{{At: c.Addr, In: "input", Attr: "voltage_max", Value: text(volts, "V")}},
					Sources: []string{"usual input limits: " + practice},
					Part:    "The controller's sheet has to say this voltage, at the coldest.",
				})
			}
		}
	}
	return out
}

// SmallerOutput offers converters whose output is limited to a lower current.
func SmallerOutput(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Converter](p, v) {
		if c.Output == nil || !c.Output.CurrentMax.Set {
			continue
		}
		for _, r := range below(c.Output.CurrentMax.Value) {
			out = append(out, lint.Proposal{
				Do:      sentence("Limit the output of %s to %s, from %s.", lint.Quote(c), current(r.V), c.Output.CurrentMax),
				Changes: []lint.Change{{At: c.Addr, In: "output", Attr: "current_max", Value: text(r.V, "A")}},
				Sources: []string{"steps of output current: " + practice},
				Part:    "By a setting that its sheet describes, or a smaller one in its place. What it charges takes so much longer.",
			})
		}
	}
	return out
}

// BreaksFirst offers switches that leave one contact before they make the next.
func BreaksFirst(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, at := range v.State {
		if s, ok := schema.Lookup[*schema.Switch](p.Plan, at.Addr); ok && s.Transition.Value != "break-before-make" && len(s.Positions) > 1 {
			out = append(out, lint.Proposal{
				Do:      sentence("Fit %s as a switch that breaks before it makes.", lint.Quote(s)),
				Changes: []lint.Change{lint.Set(s.Addr, "transition", `"break-before-make"`)},
				Sources: []string{practice},
				Part:    "Its sheet has to say break before make.",
			})
		}
	}
	return out
}

// OwnBattery offers an alarm or light with a battery of its own.
func OwnBattery(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, l := range head(about[*schema.Load](p, v)) {
		if l.Kind.Value == "alarm" {
			out = append(out, lint.Proposal{
				Do:      sentence("Fit %s as one with a battery of its own.", lint.Quote(l)),
				Changes: []lint.Change{lint.Set(l.Addr, "own_battery", "true")},
				Sources: []string{practice},
				Part:    "A second layer beside the wire, not instead of it: test it, and replace its battery when its sheet says.",
				Second:  true,
			})
		}
	}
	return out
}
