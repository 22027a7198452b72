package conductor

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var hotPlace = &lint.Rule{
	ID:      "conductor/hot-place",
	Claim:   "A wire's insulation is rated below what an engine space asks of it.",
	Words:   []lint.Severity{lint.Caution, lint.Warning},
	Subject: "conductor",
	When:    "A wire passes an engine space, or ends at a part in one, and its insulation is rated below 75 C, or below that space's own ambient.",
	Why: "Insulation ages faster the hotter it is: over some seasons it turns brittle and cracks, next to hot metal. Caution; warning where gas, a gasoline tank or a " +
		"gasoline engine is in that space.",
	Numbers: "75 C for insulation in an engine space (recalled), or the space's written ambient where that is more. Insulation that is not written counts as 60 C. How warm its " +
		"own current makes a wire is conductor/ampacity's question, and the heat of the space is in its factor.",
	Not: "A starter's cable (`cranking = true`), which is warm for seconds. Whether insulation withstands oil: the language has no word for it. A wire of less than 75 C " +
		"whose spaces are not written, and not those of the parts at both its ends, is not proven, once per plan, if the plan has an engine space.",
	Offer: "Cross-linked wire for 105 or 125 C; a way round the engine.",
	Meter: "A thermometer strip on the jacket, read after an hour's run.",
	Cites: []lint.Citation{
		{Ref: "SAE J1128, SAE J1127", Standing: lint.Read, Note: "vehicle cable comes in classes of 85, 105 and 125 C; their scopes were read"},
		{Ref: "33 CFR 183.430", Standing: lint.FromMemory, Note: "insulation in engine spaces; good practice from it outside the boats it binds"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "75 C at least beside an engine"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BetterInsulation},
	Since:  "0.1",
	Run:    hotPlaces,
}

// engineLeast is the least insulation rating in an engine space, in C.
const engineLeast = 75

func hotPlaces(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	var hottest derive.Number // what the hottest engine space asks
	for _, k := range p.Plan.Compartments {
		if n := asks(k); k.Engine.True() && n.Value > hottest.Value {
			hottest = n
		}
	}
	for _, x := range p.Plan.Conductors {
		out = append(out, inHeat(p, x, hottest))
	}
	return out
}

// asks is the insulation rating that an engine space asks for, in C.
func asks(k *schema.Compartment) derive.Number {
	if k.Ambient.Set && k.Ambient.Value > engineLeast {
		return derive.Read("ambient in "+lint.Quote(k), "Ta", k.Ambient.Value, "C", k.Addr, "ambient", k.Ambient.Range)
	}
	return derive.Assume("least insulation rating in an engine space", "Tmin", engineLeast, "C", k.Addr, "least insulation", "33 CFR 183.430 (from memory)")
}

func inHeat(p *lint.Pass, x *schema.Conductor, hottest derive.Number) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Caution}
	if hottest.Kind == 0 || x.Cranking.True() {
		return v
	}
	rated := derive.Assume("insulation rating of "+lint.Quote(x), "Tins", 60, "C", x.Addr, "insulation", "the lowest column of the table")
	how := "its insulation is not written and taken for 60 C"
	if x.Insulation.Set {
		rated = derive.Read("insulation rating of "+lint.Quote(x), "Tins", x.Insulation.Value, "C", x.Addr, "insulation", x.Insulation.Range)
		how = "its insulation is rated " + rated.Text()
	}
	v.Numbers = []derive.Number{rated, hottest}
	spaces, all := spacesOf(p.Plan, x)
	for _, k := range spaces {
		need := asks(k)
		if !k.Engine.True() || rated.Value >= need.Value {
			continue
		}
		if k.FuelVapor.True() {
			v.Word = lint.Warning
		}
		if v.Outcome != lint.Violated || k.FuelVapor.True() {
			v.Outcome, v.Numbers, v.Related = lint.Violated, []derive.Number{rated, need}, []string{k.Addr}
			v.Message = fmt.Sprintf("%s runs in %s, and %s; an engine space asks for %s at least.", lint.Quote(x), lint.Quote(k), how, need.Text())
			if k.FuelVapor.True() {
				v.Message += " Fuel is kept or burnt there."
			}
		}
	}
	if v.Outcome == lint.Holds && !all && rated.Value < hottest.Value {
		v.Outcome, v.Group = lint.NotProven, "spaces"
		v.Missing = []lint.Missing{{Subject: x.Addr, Attribute: "through"}}
		v.Message = fmt.Sprintf("Whether %s passes an engine space is not written, and %s.", lint.Quote(x), how)
	}
	return v
}

// spacesOf lists the spaces that a conductor is known to be in: those it passes, and those of the
// parts at its ends. all says that nothing else is left: the first are written, or both of the latter.
func spacesOf(plan *schema.Plan, x *schema.Conductor) (out []*schema.Compartment, all bool) {
	add := func(r schema.Ref) bool {
		k, ok := schema.Lookup[*schema.Compartment](plan, r.Addr)
		if ok {
			out = append(out, k)
		}
		return ok
	}
	for _, r := range x.Through.List {
		add(r)
	}
	ends := 0
	for _, end := range []schema.Ref{x.From, x.To} {
		if at := placeOf(plan.Block(end.Addr)); at != nil && add(at.Compartment) {
			ends++
		}
	}
	return out, x.Through.Set || ends == 2
}

// placeOf is where a part sits; nil for a block that sits nowhere.
func placeOf(b schema.Block) *schema.Place {
	switch b := b.(type) {
	case *schema.Source:
		return &b.Place
	case *schema.Switch:
		return &b.Place
	case *schema.Fuse:
		return &b.Place
	case *schema.Converter:
		return &b.Place
	case *schema.Bus:
		return &b.Place
	case *schema.Connector:
		return &b.Place
	case *schema.Load:
		return &b.Place
	}
	return nil
}
