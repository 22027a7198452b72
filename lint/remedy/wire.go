package remedy

import (
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// ThickerWire offers the next sizes of each wire that the verdict is about, and of all of them together.
func ThickerWire(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	wires := about[*schema.Conductor](p, v)
	if len(wires) == 0 {
		wires = along(p, v.Path)
	}
	var out []lint.Proposal
	for n := range mostSizes {
		var all lint.Proposal
		for _, c := range wires {
			if one, ok := thicker(c, n); ok {
				out = append(out, one)
				all.Changes = append(all.Changes, one.Changes...)
				all.Sources, all.Part, all.Second = one.Sources, one.Part, all.Second || one.Second
			}
		}
		if len(all.Changes) > 1 {
			all.Do = sentence("Lay %d wires on this way %s larger.", len(all.Changes), sizes(n+1))
			out = append(out, all)
		}
	}
	return out
}

// ThickerOwnWire is ThickerWire with the wires first that serve the subject alone, which are those behind the
// last bus, battery or converter on the way: copper in a shared one is laid for all that hangs there.
func ThickerOwnWire(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	own := map[string]bool{v.Subject.Header().Addr: true}
	for _, c := range along(p, v.Path[lastShared(p, v.Path):]) {
		own[c.Addr] = true
	}
	out := ThickerWire(p, v)
	for i := range out {
		out[i].Second = slices.ContainsFunc(out[i].Changes, func(c lint.Change) bool { return !own[c.At] })
	}
	return out
}

// lastShared is where on a way the last part stands that others may hang on too, before its end.
func lastShared(p *lint.Pass, path []string) int {
	for i := len(path) - 2; i >= 0; i-- {
		switch p.Plan.Block(block(p, path[i])).(type) {
		case *schema.Bus, *schema.Source, *schema.Converter:
			return i
		}
	}
	return 0
}

// Unless adds to what an offer needs that a reading may spare it.
func Unless(o lint.Offer, reading string) lint.Offer {
	return func(p *lint.Pass, v lint.Verdict) []lint.Proposal {
		out := o(p, v)
		for i := range out {
			out[i].Part = strings.TrimSpace(out[i].Part + " " + reading)
		}
		return out
	}
}

func sizes(n int) string {
	if n == 1 {
		return "one size"
	}
	return sentence("%d sizes", n)
}

// mostCopper is how many times its section a wire may grow before what it ends on, which was chosen for about its size,
// takes it no more; up to bendable mm2, a wire of 4 AWG, more is offered with a word of warning. Common practice.
const (
	mostCopper = 4.3
	bendable   = 22
	mostSizes  = 12
)

func thicker(c *schema.Conductor, n int) (lint.Proposal, bool) {
	sizes, from := tables.Thicker(c.Size.Size)
	if !c.Size.Set || n >= len(sizes) || sizes[n].Area > max(mostCopper*c.Size.Area, bendable) {
		return lint.Proposal{}, false
	}
	out := lint.Proposal{
		Do:      sentence("Lay %s in %s.", lint.Quote(c), sizes[n]),
		Changes: []lint.Change{lint.Set(c.Addr, "size", `"`+sizes[n].String()+`"`)},
		Sources: []string{"wire size: " + from.String()},
	}
	if sizes[n].Area > mostCopper*c.Size.Area {
		out.Second = true
		out.Part = sentence("What %s ends on was chosen for a wire of about %s: look whether it takes this one.", lint.Quote(c), c.Size.Size)
	}
	return out, true
}

// end is one end of a wire and the attribute that says it.
type end struct {
	attr string
	at   schema.Ref
}

func ends(c *schema.Conductor) []end { return []end{{"from", c.From}, {"to", c.To}} }

// along lists the wires whose two ends a path names one after the other.
func along(p *lint.Pass, path []string) []*schema.Conductor {
	next := map[[2]string]bool{}
	for i := 1; i < len(path); i++ {
		next[[2]string{path[i-1], path[i]}], next[[2]string{path[i], path[i-1]}] = true, true
	}
	var out []*schema.Conductor
	for _, c := range p.Plan.Conductors {
		if next[[2]string{place(c.From), place(c.To)}] {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b *schema.Conductor) int { return strings.Compare(a.Addr, b.Addr) })
	return out
}

// place is a terminal as paths name it.
func place(r schema.Ref) string {
	s := r.Addr
	for _, x := range []string{r.Terminal, r.Contact} {
		if x != "" {
			s += "." + x
		}
	}
	return s
}

// BetterInsulation offers insulation for higher temperatures, in the steps of the ampacity table.
func BetterInsulation(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Conductor](p, v)) {
		for _, t := range tables.Insulations() {
			if now := 60.0; t > max(now, c.Insulation.Value) && t <= 125 {
				out = append(out, lint.Proposal{
					Do:      sentence("Lay %s with insulation for %s.", lint.Quote(c), quantity.Format(t, quantity.Temperature)),
					Changes: []lint.Change{lint.Set(c.Addr, "insulation", text(t, "C"))},
					Sources: []string{"insulation ratings: 33 CFR 183.425 Table 5"},
					Part:    "The jacket's print has to say so, and what the wire ends on must bear the heat.",
				})
			}
		}
	}
	return out
}

// OwnReturn offers a return wire of its own beside a plus that comes home through metal: the pair, and
// the lead from its negative to the metal away.
func OwnReturn(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, lead := range about[*schema.Conductor](p, v) {
		part := lead.From
		if b, ok := schema.Lookup[*schema.Bus](p.Plan, part.Addr); ok && b.Polarity.Value == "chassis" {
			part = lead.To
		}
		for _, c := range p.Plan.Conductors {
			if c.Polarity.Value == "positive" && part.Pole == schema.Neg && (place(c.From) == place(part) || place(c.To) == place(part)) {
				out = append(out, paired(p, c, lead))
				if x, ok := schema.Lookup[*schema.Converter](p.Plan, part.Addr); ok && !x.Isolated.True() {
					out = append(out, isolatedToo(paired(p, c, lead), x))
				}
			}
		}
	}
	return out
}

// isolatedToo adds to a proposal that a converter keeps its two sides apart.
func isolatedToo(a lint.Proposal, x *schema.Converter) lint.Proposal {
	b := isolated(x)
	a.Do += " " + b.Do
	a.Changes = append(a.Changes, b.Changes...)
	a.Part = b.Part
	return a
}

func paired(p *lint.Pass, c, lead *schema.Conductor) lint.Proposal {
	changes := []lint.Change{lint.Unset(c.Addr, "polarity"), {At: lead.Addr, Drop: true}}
	for _, e := range ends(c) {
		if e.at.Pole == schema.Pos {
			changes = append(changes, lint.Set(c.Addr, e.attr, place(e.at)))
		}
		if f, ok := schema.Lookup[*schema.Fuse](p.Plan, e.at.Addr); ok && f.On.Pole == schema.Pos {
			changes = append(changes, lint.Set(f.Addr, "on", place(f.On)))
		}
	}
	if c.Bundle.Set { // the return lies with it
		changes = append(changes, lint.Set(c.Addr, "bundle", count(c.Bundle.Value+1)))
	}
	return lint.Proposal{
		Do:      sentence("Lay a return of the same size beside %s, and take %s away.", lint.Quote(c), lint.Quote(lead)),
		Changes: changes,
		Sources: []string{practice},
	}
}
