package remedy

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// HigherRating offers a switch, a connector or a bus for more current: for what it is found to carry, and up.
func HigherRating(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	now, limit := rating(v.Subject)
	var out []lint.Proposal
	for _, r := range above(max(now.Value, largest(v, "A")*(1-1e-9))) {
		if !now.Set || r.V > limit {
			break
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as one for %s.", lint.Quote(v.Subject), quantity.Format(r.V, quantity.Current)),
			Changes: []lint.Change{lint.Set(v.Subject.Header().Addr, "rating", text(r.V, "A"))},
			Sources: []string{"steps of ratings: " + practice},
			Part:    "The rating is for direct current at this voltage.",
		})
	}
	return out
}

// rating is what a part may carry, and the most for which its kind is made.
func rating(b schema.Block) (now schema.Quantity, limit float64) {
	limit = math.Inf(1)
	switch x := b.(type) {
	case *schema.Switch:
		now = x.Rating
	case *schema.Connector:
		now = x.Rating
		if x.Tow.True() { // its pattern is fixed: no such plug is made for more
			most, _ := tables.ContactLimit("tow-auxiliary")
			limit = most.V
		}
	case *schema.Bus:
		now = x.Rating
	}
	return now, limit
}

// largest is the largest of the two figures that decide a verdict, in a unit; 0 where neither has it.
func largest(v lint.Verdict, unit string) float64 {
	out := 0.0
	for _, n := range v.Numbers[max(0, len(v.Numbers)-2):] {
		if n.Unit == unit {
			out = max(out, n.Value)
		}
	}
	return out
}

// contactVolts are usual voltage ratings of DC switches and connectors, in V. Common practice.
var contactVolts = []float64{32, 48, 60, 80, 125, 150, 250, 600}

// HigherVolts offers a switch or a connector that can break more volts.
func HigherVolts(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	addr := v.Subject.Header().Addr
	var now schema.Quantities
	switch x := v.Subject.(type) {
	case *schema.Switch:
		now = x.VoltageRating
	case *schema.Connector:
		now = x.VoltageRating
		if x.Tow.True() { // made for the volts of a vehicle
			return nil
		}
	}
	need := largest(v, "V")
	if len(now.List) != 1 || now.List[0].Kind != quantity.DC || alternating(p, addr) {
		return nil
	}
	var out []lint.Proposal
	for _, volts := range contactVolts {
		if volts < need || len(out) == 2 {
			continue
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as one that breaks %s dc.", lint.Quote(v.Subject), quantity.Format(volts, quantity.Voltage)),
			Changes: []lint.Change{lint.Set(addr, "voltage_rating", text(volts, "V dc"))},
			Sources: []string{"steps of voltage ratings: " + practice},
			Part:    "Its print has to say this voltage with DC beside it, at the current that it carries.",
		})
	}
	return out
}

// setpoints are usual volts of chargers and converters for a nominal 12 V, in V; for 24, 36 and 48 V two, three
// and four times as much. Common practice.
var setpoints = []float64{14.4, 14.2, 13.8, 13.5}

// LowerSetpoint offers converters set to hold no more volts than a part takes, the highest setting first.
func LowerSetpoint(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	if v.Cause != "high" || len(v.Numbers) == 0 {
		return nil
	}
	limit := v.Numbers[0].Value
	var out []lint.Proposal
	for _, c := range p.Plan.Converters {
		if c.Output == nil || !c.Output.Voltage.Set || c.Output.Voltage.Value <= limit || c.Output.Voltage.Kind == quantity.AC {
			continue
		}
		for _, volts := range steps(limit, c.Output.Voltage.Value) {
			out = append(out, lint.Proposal{
				Do:      sentence("Set %s to %s.", lint.Quote(c), quantity.Format(volts, quantity.Voltage)),
				Changes: []lint.Change{{At: c.Addr, In: "output", Attr: "voltage", Value: text(volts, "V")}},
				Sources: []string{"usual settings: " + practice},
				Part:    "By a setting that its sheet describes, and that the battery's sheet allows.",
			})
		}
	}
	return out
}

// steps are the usual settings up to a limit that are for the system of another: not more than a fifth below.
func steps(limit, now float64) []float64 {
	var out []float64
	for k := 4.0; k >= 1; k-- {
		for _, s := range setpoints {
			if k*s <= limit && k*s >= now*0.8 {
				out = append(out, math.Round(k*s*10)/10)
			}
		}
	}
	return out
}
