package remedy

import (
	"math"

	"ferrule/lint"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// Unbundle offers to lay a wire apart from the others: with its own return alone, or by itself.
func Unbundle(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Conductor](p, v)) {
		alone := 2
		if c.Polarity.Set && c.Polarity.Value != "pair" {
			alone = 1
		}
		if !c.Bundle.Set || c.Bundle.Value <= alone {
			continue
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Lay %s apart from the other wires.", lint.Quote(c)),
			Changes: []lint.Change{lint.Set(c.Addr, "bundle", count(alone))},
			Sources: []string{practice},
			Part:    "All the way, with air around it: where wires meet again they are a bundle.",
		})
	}
	return out
}

// shorter are the shares of its length that a wire is offered in. Common practice.
var shorter = []float64{0.75, 0.5}

// ShorterRun offers a shorter way for each wire that the verdict is about. Where the parts can stand is the
// owner's to say, so it comes after what can be bought.
func ShorterRun(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	wires := about[*schema.Conductor](p, v)
	if len(wires) == 0 {
		wires = along(p, v.Path)
	}
	var out []lint.Proposal
	for _, share := range shorter {
		for _, c := range wires {
			metres := math.Floor(c.Length.Value*share*10) / 10
			if !c.Length.Set || metres <= 0 {
				continue
			}
			out = append(out, lint.Proposal{
				Do:      sentence("Find a way of %s for %s.", quantity.Format(metres, quantity.Length), lint.Quote(c)),
				Changes: []lint.Change{lint.Set(c.Addr, "length", text(metres, "m"))},
				Sources: []string{practice},
				Part:    "If the parts can stand that much nearer: measure the way before anything is moved.",
				Second:  true,
			})
		}
	}
	return out
}

// FewerStrings offers an array with a string less beside the others.
func FewerStrings(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range head(about[*schema.Source](p, v)) {
		if n := s.Parallel.Or(1); s.Kind.Value == "solar" && n > 1 {
			out = append(out, lint.Proposal{
				Do:      sentence("Put one string fewer side by side in %s: %d.", lint.Quote(s), n-1),
				Changes: []lint.Change{lint.Set(s.Addr, "parallel", count(n-1))},
				Sources: []string{practice},
				Second:  true,
			})
		}
	}
	return out
}

// RelayFollows offers a relay that closes with the engine, in each wire between a starting battery and a load that
// goes on drinking from it.
func RelayFollows(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, engine := range p.Plan.Sources {
		if engine.Kind.Value != "alternator" || engine.Always.True() {
			continue
		}
		for _, c := range betweenBatteryAndLoad(p, v) {
			if up := above(roughly(c)/1.5 - 1); len(up) > 0 {
				out = append(out, following(p, c, engine, up[0].V))
			}
		}
	}
	return out
}

// betweenBatteryAndLoad lists the pairs of wires on the way from the source to the load that a verdict is about.
func betweenBatteryAndLoad(p *lint.Pass, v lint.Verdict) []*schema.Conductor {
	var out []*schema.Conductor
	for _, s := range head(about[*schema.Source](p, v)) {
		for _, l := range head(about[*schema.Load](p, v)) {
			for _, c := range along(p, way(p, s.Addr, l.Addr)) {
				if (!c.Polarity.Set || c.Polarity.Value == "pair") && !composed(c) {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// following puts a relay into a wire near its end.
func following(p *lint.Pass, c *schema.Conductor, engine *schema.Source, amps float64) lint.Proposal {
	name := fresh(p, "switch", bare(c.Addr)+"_relay")
	lead := fresh(p, "conductor", bare(c.Addr)+"_relay")
	block := "switch \"" + name + "\" {\n" + attrs("  ", [2]string{"kind", `"relay"`}, [2]string{"terminals", `["engine", "house"]`}, [2]string{"follows", "[" + engine.Addr + "]"},
		[2]string{"rating", text(amps, "A")}, [2]string{"voltage_rating", `"32 V dc"`}, [2]string{"compartment", compartment(p, c.To)}) +
		"\n  position \"open\" {}\n  position \"closed\" { joins = [[\"engine\", \"house\"]] }\n}\n"
	return lint.Proposal{
		Do: sentence("Put a relay for %s that closes with %s into %s, %s from where the wire now ends.", current(amps), lint.Quote(engine), lint.Quote(c),
			quantity.Format(shortRun, quantity.Length)),
		Changes: []lint.Change{lint.Set(c.Addr, "to", "switch."+name+".engine"), {At: c.Addr, Block: block}, {At: c.Addr, Block: wire(lead, "switch."+name+".house", place(c.To), c)}},
		Sources: []string{"steps of ratings: " + practice},
		Part:    "Its coil on what is live only while the engine runs, through a device of its own; rated for this current without a break.",
	}
}
