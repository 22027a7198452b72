package remedy

import (
	"ferrule/lint"
	"ferrule/schema"
)

// ThroughConverter offers to end a wire on the side of a converter on which nothing ends, where all end on the
// other: what should go through it goes round it.
func ThroughConverter(p *lint.Pass, _ lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	at := landings(p)
	for _, x := range p.Plan.Converters {
		in, to := x.Addr+".in", x.Addr+".out"
		switch {
		case x.Kind.Value != "dc-dc" && x.Kind.Value != "mppt": // the others may have the mains on one side
		case len(at[in]) == 0:
			out = append(out, across(p, x, at[to], in)...)
		case len(at[to]) == 0:
			out = append(out, across(p, x, at[in], to)...)
		}
	}
	return out
}

// landing is the end of a wire on a terminal; wire is nil for a device or a link that sits there.
type landing struct {
	wire *schema.Conductor
	end
}

// landings lists what ends on each terminal.
func landings(p *lint.Pass) map[string][]landing {
	out := map[string][]landing{}
	for _, c := range p.Plan.Conductors {
		for _, e := range ends(c) {
			out[place(e.at)] = append(out[place(e.at)], landing{c, e})
		}
	}
	for _, f := range p.Plan.Fuses {
		if f.On.Set {
			out[place(f.On)] = append(out[place(f.On)], landing{})
		}
	}
	for _, x := range p.Plan.Switches {
		out[place(x.On)] = append(out[place(x.On)], landing{})
	}
	for _, x := range p.Plan.Connectors {
		out[place(x.On)] = append(out[place(x.On)], landing{})
	}
	for _, x := range p.Plan.Branches {
		out[place(x.From)] = append(out[place(x.From)], landing{})
	}
	for _, l := range p.Plan.Links {
		out[place(l.A)], out[place(l.B)] = append(out[place(l.A)], landing{}), append(out[place(l.B)], landing{})
	}
	return out
}

// across moves each of the wires of one side to the other, if more than one end there.
func across(p *lint.Pass, x *schema.Converter, at []landing, other string) []lint.Proposal {
	var out []lint.Proposal
	for _, l := range at {
		if l.wire == nil || len(at) < 2 || composed(l.wire) || l.at.Pole != schema.WholePair {
			continue
		}
		out = append(out, lint.Proposal{
			Do:      sentence("End %s on %s: nothing ends there, and what it carries goes round %s.", lint.Quote(l.wire), other, lint.Quote(x)),
			Changes: []lint.Change{lint.Set(l.wire.Addr, l.attr, other)},
			Sources: []string{practice},
		})
	}
	return out
}
