package charging

import (
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
)

var belowFreezing = &lint.Rule{
	ID:      "charging/below-freezing",
	Claim:   "A lithium battery gets charged while its cells are below freezing.",
	Words:   []lint.Severity{lint.Warning, lint.Notice},
	Harm:    true,
	Subject: "battery",
	When: "A lithium battery can be below 0 C where it sits, and in some state something charges it that neither the battery's own cut-off nor the " +
		"charger's stops in the cold.",
	Why: "Charging a frozen cell plates metal inside it. The damage shows as a short inside the cell months later, where no cut-off can open it; hence warning. " +
		"Where the plan says nothing at all of the place, it is asked once, as a notice.",
	Numbers: "0 C for the cells. A place is cold where its compartment is `unheated` or its `coldest` is below 0 C; without either the system's `coldest` " +
		"speaks. A battery's protection counts if `cold_charge_cutoff` is true or its `bms` stops charging at 0 C or above; a `bms` that stops it only below 0 C does not. " +
		"What charges: a converter whose output is across the battery or its string while its input has power, one without reverse blocking whose input is, and " +
		"an alternator, regulated supply or solar array that is joined to it directly. These three have no cut-off of their own.",
	Not: "Lead-acid batteries. A place that is heated only in the modes in which charging happens: nothing says so in a plan. How far the cells lag behind the air. " +
		"Charge from another battery in parallel, which is a question of unlike batteries.",
	Offer: "A charger with a sensor on the battery; a pack whose heater runs off the charger; a heated place.",
	Meter: "With the pack below freezing by its own sensor, the clamp at the battery must read 0 A with the charger on.",
	Cites: []lint.Citation{
		{Ref: "battery encyclopedia, charging at high and low temperatures, Table 1", Standing: lint.Read, Note: "lithium: no charge permitted below freezing"},
		{Ref: "battery makers' sheets", Standing: lint.FromMemory, Note: "cut-off commonly set at 2 to 5 C"},
		{Ref: "common practice", Standing: lint.CommonPractice},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.ColdStopsCharger, remedy.ColdStopsBattery},
	Since:  "0.1",
	Run:    frozenCharge,
}

func frozenCharge(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		b := &p.Net.Sources[i]
		if b.Kind.Value == "battery" && (tables.Lithium(b.Chemistry.Value) || !b.Chemistry.Set) {
			out = append(out, frozen(p, i))
		}
	}
	return out
}

// known is what a plan says of a protection.
type known uint8

const (
	unknown known = iota
	yes
	no
)

func knownFlag(f schema.Flag) known {
	switch {
	case !f.Set:
		return unknown
	case f.Value:
		return yes
	}
	return no
}

func frozen(p *lint.Pass, battery int) lint.Verdict {
	b := p.Net.Sources[battery].Source
	place := coldPlace(p.Plan, b)
	guard, how := coldCutoff(b)
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Numbers: append(how, place.numbers...)}
	if place.cold == no || guard == yes {
		return v
	}
	chargers, complete := coldChargers(p, battery)
	var open, unsure []*coldCharger
	for _, c := range chargers {
		switch {
		case c.cutoff == yes:
		case c.cutoff == no && guard == no && place.cold == yes && b.Chemistry.Set:
			open = append(open, c)
		default:
			unsure = append(unsure, c)
		}
	}
	switch {
	case len(open) > 0:
		return frozenVerdict(v, lint.Violated, open, place.why)
	case len(unsure) > 0:
		v.Missing = missingCold(b, guard, place, unsure)
		v = frozenVerdict(v, lint.NotProven, unsure, place.why)
		if place.asked { // asked once per plan, as a notice
			v.Word, v.Group = lint.Notice, "no compartment"
		}
		return v
	case !complete:
		return lint.Unfinished(b, lint.Warning)
	}
	return v
}

func frozenVerdict(v lint.Verdict, o lint.Outcome, by []*coldCharger, why string) lint.Verdict {
	v.Outcome, v.Word = o, lint.Warning
	var names []string
	for _, c := range by {
		v.Related = append(v.Related, c.block.Header().Addr)
		names = append(names, lint.Quote(c.block))
	}
	slices.Sort(v.Related)
	v.State = by[0].state
	v.Cause = strings.Join(v.Related, " ")
	v.Message = lint.Quote(v.Subject) + " " + why + ", and " + lint.And(names...)
	if o == lint.Violated {
		v.Message += " can charge it then: nothing on either side stops that in the cold."
		return v
	}
	var ask []string
	for _, m := range v.Missing {
		ask = append(ask, "`"+m.Attribute+"` of "+m.Subject)
	}
	v.Message += " can charge it. Whether something stops that in the cold turns on what is not written: " + lint.And(ask...) + "."
	return v
}

// coldness is whether a battery can be below freezing where it sits.
type coldness struct {
	cold    known
	why     string
	numbers []derive.Number
	missing []lint.Missing
	asked   bool // no compartment and no temperature at all
}

func coldPlace(plan *schema.Plan, b *schema.Source) coldness {
	read := func(addr string, q schema.Quantity) []derive.Number {
		return []derive.Number{derive.Read("coldest temperature at "+lint.Quote(b), "Tmin", q.Value, "C", addr, "coldest", q.Range)}
	}
	site := plan.System.Coldest
	c, ok := schema.Lookup[*schema.Compartment](plan, b.Compartment.Addr)
	switch {
	case ok && c.Unheated.True():
		return coldness{cold: yes, why: "sits in " + lint.Quote(c) + ", which can fall below freezing"}
	case ok && c.Coldest.Set && c.Coldest.Value < 0:
		return coldness{cold: yes, why: "sits in " + lint.Quote(c) + ", where it gets down to " + derive.Text(c.Coldest.Value, "C"), numbers: read(c.Addr, c.Coldest)}
	case ok && c.Coldest.Set:
		return coldness{cold: no, numbers: read(c.Addr, c.Coldest)}
	case ok && c.Unheated.False():
		return coldness{cold: no}
	case site.Set && site.Value >= 0:
		return coldness{cold: no, numbers: read(plan.System.Addr, site)}
	case ok && site.Set:
		return coldness{why: "sits in " + lint.Quote(c) + ", at a site that gets down to " + derive.Text(site.Value, "C"), numbers: read(plan.System.Addr, site),
			missing: []lint.Missing{{Subject: c.Addr, Attribute: "unheated"}}}
	case ok:
		return coldness{cold: no, numbers: []derive.Number{derive.Assume("falls below freezing", "", 0, "", c.Addr, "unheated", "left out: false")}}
	case site.Set:
		return coldness{why: "is at a site that gets down to " + derive.Text(site.Value, "C"), numbers: read(plan.System.Addr, site),
			missing: []lint.Missing{{Subject: b.Addr, Attribute: "compartment"}}}
	}
	return coldness{asked: true, why: "sits nowhere that the plan names, so how cold it gets is not known", missing: []lint.Missing{{Subject: b.Addr, Attribute: "compartment"}}}
}

// coldCutoff is what the plan says of the battery's own protection.
func coldCutoff(b *schema.Source) (known, []derive.Number) {
	if b.BMS != nil && b.BMS.OpensChargeBelow.Set {
		q := b.BMS.OpensChargeBelow
		n := []derive.Number{derive.Read("charge cut-off of "+lint.Quote(b), "Tcut", q.Value, "C", b.Addr, "bms opens_charge_below", q.Range)}
		if q.Value < 0 {
			return no, n
		}
		return yes, n
	}
	return knownFlag(b.ColdChargeCutoff), nil
}

func missingCold(b *schema.Source, guard known, place coldness, by []*coldCharger) []lint.Missing {
	out := append([]lint.Missing(nil), place.missing...)
	if !b.Chemistry.Set {
		out = append(out, lint.Missing{Subject: b.Addr, Attribute: "chemistry"})
	}
	if guard == unknown {
		out = append(out, lint.Missing{Subject: b.Addr, Attribute: "cold_charge_cutoff"})
	}
	for _, c := range by {
		if c.cutoff == unknown {
			out = append(out, lint.Missing{Subject: c.block.Header().Addr, Attribute: "cold_charge_cutoff"})
		}
	}
	return out
}

// coldCharger is something that charges a battery in some state.
type coldCharger struct {
	*charger
	cutoff known
	state  []lint.Position
}

// coldChargers lists what can charge a battery, each with the first state in which it does, in the
// plan's order; states come with fewest parts moved first.
func coldChargers(p *lint.Pass, battery int) ([]*coldCharger, bool) {
	zone := p.Net.Series(battery)
	views, complete := p.Space.Views(zone, p.Space.About(p.Space.Closed(explore.All())))
	open := mayCharge(p.Net, zone)
	found := map[string]*coldCharger{}
	for _, v := range views {
		if len(open) == 0 {
			break
		}
		if !v.HasSource(battery) {
			continue
		}
		row := v.Series(battery)
		open = slices.DeleteFunc(open, func(c *coldCharger) bool {
			if !c.charges(v, row) {
				return false
			}
			edges, sources := row.Way(c.at), []int{battery}
			if c.source >= 0 {
				sources = append(sources, c.source)
			}
			if c.behind != c.at {
				more, from := v.Live(nil, nil).Way(c.behind)
				edges, sources = append(edges, more...), append(sources, from...)
			}
			c.state = v.Witness(edges, sources...)
			found[c.block.Header().Addr] = c
			return true
		})
	}
	var out []*coldCharger
	for _, b := range p.Plan.Blocks() {
		if c := found[b.Header().Addr]; c != nil {
			out = append(out, c)
		}
	}
	return out, complete
}

// mayCharge lists what could charge a battery of a zone.
func mayCharge(n *network.Network, z *network.Zone) []*coldCharger {
	var out []*coldCharger
	for _, c := range chargersOf(n, z) {
		cutoff := no // a source has nothing in it that could
		if c.converter >= 0 {
			cutoff = converterCutoff(&n.Converters[c.converter])
		}
		out = append(out, &coldCharger{charger: c, cutoff: cutoff})
	}
	return out
}

// converterCutoff is what the plan says of a charger; a plain diode has nothing that could cut off.
func converterCutoff(c *network.Converter) known {
	if c.Kind.Value == "diode" && !c.ColdChargeCutoff.Set {
		return no
	}
	return knownFlag(c.ColdChargeCutoff)
}
