package source

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// bar is something on a way with what it is made for, in A.
type bar struct {
	block schema.Block
	most  derive.Number
	says  string
}

// barsOn lists the devices, plugs and contacts among edges, each once, and those whose rating the plan
// leaves out.
func barsOn(p *lint.Pass, edges []int) (out []bar, lacks []lint.Missing) {
	seen := map[string]bool{}
	for _, e := range edges {
		x := &p.Net.Edges[e]
		if seen[x.Addr] {
			continue
		}
		b := p.Plan.Block(x.Addr)
		rating, ok := ratingOf(b, x.Kind)
		switch {
		case !ok:
			continue
		case !rating.Set:
			lacks = append(lacks, lint.Missing{Subject: x.Addr, Attribute: "rating"})
		default:
			out = append(out, bar{b, derive.Read("rating of "+lint.Quote(b), "Ir", rating.Value, "A", x.Addr, "rating", rating.Range), "is made for"})
		}
		seen[x.Addr] = true
	}
	return out, lacks
}

// ratingOf is the rating of what current passes in a block by an edge of a kind; false where it has none.
func ratingOf(b schema.Block, k network.EdgeKind) (schema.Quantity, bool) {
	switch x := b.(type) {
	case *schema.Fuse:
		return x.Rating, k == network.Element
	case *schema.Switch:
		return x.Rating, k == network.Contact
	case *schema.Connector:
		return x.Rating, k == network.Mate
	}
	return schema.Quantity{}, false
}

// bars lists what the batteries of a stack give and take. Lithium must say what it takes, for its
// cut-off opens there; lead-acid takes what comes for a while.
func (s stack) bars(p *lint.Pass) (out []bar, lacks []lint.Missing) {
	for _, i := range s {
		x := p.Net.Sources[i].Source
		if x.ChargeLimit.Set {
			out = append(out, bar{x, perString(x, "charge limit", "Ichg", "charge_limit", x.ChargeLimit), "takes"})
		} else if !tables.LeadAcid(x.Chemistry.Value) {
			lacks = append(lacks, lint.Missing{Subject: x.Addr, Attribute: "charge_limit"})
		}
		if x.DischargeLimit.Set {
			out = append(out, bar{x, perString(x, "discharge limit", "Idis", "discharge_limit", x.DischargeLimit), "gives"})
		}
	}
	return out, lacks
}

// perString is a figure of one unit for all strings in parallel.
func perString(s *schema.Source, name, symbol, attribute string, q schema.Quantity) derive.Number {
	one := derive.Read(name+" of "+lint.Quote(s), symbol, q.Value, "A", s.Addr, attribute, q.Range)
	if n := s.Parallel.Or(1); n > 1 {
		return derive.Compute(name+" of the bank "+lint.Quote(s), symbol, one.Value*float64(n), "A", "strings x figure of one", one)
	}
	return one
}

// burning finds a conductor among edges that carries less than a current, with no device among them
// that practice holds small enough for it; nil where there is none. volts are the circuit's.
func burning(p *lint.Pass, edges []int, amps, volts float64) (*schema.Conductor, derive.Number) {
	least := amps
	for _, e := range edges {
		if f := p.Net.Edges[e].Fuse; p.Net.Edges[e].Kind == network.Element && f.Rating.Set {
			least = min(least, f.Rating.Value/multiple(p.Plan, volts))
		}
	}
	var worst *schema.Conductor
	var at derive.Number
	for _, e := range edges {
		w := p.Net.Edges[e].Wire
		if w == nil {
			continue
		}
		iz, _ := p.Circuit.Ampacity(w)
		if iz.Kind != 0 && iz.Value < least && (worst == nil || iz.Value < at.Value) {
			worst, at = w, iz
		}
	}
	return worst, at
}

// multiple is how much of a conductor's ampacity the strictest practice allows a device.
func multiple(plan *schema.Plan, volts float64) float64 {
	best := 0.0
	for _, practice := range plan.Practices() {
		if k := tables.DeviceLimit(practice, volts); k.Known() && (best == 0 || k.V < best) {
			best = k.V
		}
	}
	return max(1, best)
}
