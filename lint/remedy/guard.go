package remedy

import (
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// DeviceAtFeed offers a device where a wire begins at a converter that can push into it.
func DeviceAtFeed(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Conductor](p, v)) {
		for _, e := range ends(c) {
			if len(v.Path) == 0 || place(e.at) != v.Path[0] || composed(c) {
				continue
			}
			for _, a := range fitting(p, c) {
				out = append(out, guarded(p, c, e, a))
			}
		}
	}
	return out
}

// composed says whether a wire is part of a branch or a kit: its ends are not its own to move.
func composed(c *schema.Conductor) bool { return c.Addr != "conductor."+c.Name }

// guarded puts a device into a wire near one of its ends.
func guarded(p *lint.Pass, c *schema.Conductor, e end, a tables.Value) lint.Proposal {
	name := fresh(p, "fuse", bare(c.Addr)+"_guard")
	lead := fresh(p, "conductor", bare(c.Addr)+"_guard")
	d := classT()
	block := "fuse \"" + name + "\" {\n" + attrs("  ", [2]string{"kind", `"` + d.kind + `"`}, [2]string{"rating", text(a.V, "A")},
		[2]string{"voltage_rating", d.volts}, [2]string{"interrupting", d.amps}, [2]string{"compartment", compartment(p, e.at)}) + "}\n"
	return lint.Proposal{
		Do: sentence("Put a device of %s into %s, %s from %s.", current(a.V), lint.Quote(c),
			quantity.Format(shortRun, quantity.Length), lint.Quote(p.Plan.Block(e.at.Addr))),
		Changes: []lint.Change{
			lint.Set(c.Addr, e.attr, "fuse."+name+".load"+pole(e.at)),
			{At: c.Addr, Block: block},
			{At: c.Addr, Block: wire(lead, place(e.at)+pole(e.at), "fuse."+name+".line"+pole(e.at), c)},
		},
		Sources: []string{"standard rating: " + a.Cite.String(), d.from},
		Part:    "Read its ratings before it is fitted.",
	}
}

// Disconnect offers a switch behind the device that sits on a battery, for the wire that goes on from there,
// and in each wire between two buses, so that what must never go dark can stay ahead of it.
func Disconnect(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	main := mainOf(p, v.Subject.Header().Addr)
	if main == nil {
		return nil
	}
	up := above(main.Rating.Value - 1)
	var out []lint.Proposal
	for _, c := range p.Plan.Conductors {
		if composed(c) || len(up) == 0 || c.Polarity.Set && c.Polarity.Value != "pair" {
			continue
		}
		_, from := schema.Lookup[*schema.Bus](p.Plan, c.From.Addr)
		_, to := schema.Lookup[*schema.Bus](p.Plan, c.To.Addr)
		for i, e := range ends(c) {
			if e.at.Addr == main.Addr && e.at.Terminal == "load" || i == 0 && from && to && !alternating(p, c.From.Addr) {
				out = append(out, switched(p, c, e, up[0]))
			}
		}
	}
	slices.SortFunc(out, func(a, b lint.Proposal) int { return strings.Compare(a.Changes[0].At, b.Changes[0].At) })
	return out
}

// mainOf is the largest device that sits on a part, nil where none with a rating does.
func mainOf(p *lint.Pass, addr string) *schema.Fuse {
	var out *schema.Fuse
	for _, f := range p.Plan.Fuses {
		if f.On.Addr == addr && f.Rating.Set && (out == nil || f.Rating.Value > out.Rating.Value) {
			out = f
		}
	}
	return out
}

// breaks is the usual voltage rating of battery switches in V: 48, and 125 where a battery has more than a nominal
// 36 V. Common practice.
func breaks(p *lint.Pass) float64 {
	for _, s := range p.Plan.Sources {
		if s.Kind.Value == "battery" && s.Voltage.Value > 37 {
			return 125
		}
	}
	return 48
}

// switched puts a hand switch into a wire near one of its ends.
func switched(p *lint.Pass, c *schema.Conductor, e end, a tables.Value) lint.Proposal {
	name := fresh(p, "switch", bare(c.Addr)+"_off")
	lead := fresh(p, "conductor", bare(c.Addr)+"_off")
	block := "switch \"" + name + "\" {\n" + attrs("  ", [2]string{"kind", `"disconnect"`}, [2]string{"terminals", `["battery", "panel"]`}, [2]string{"rating", text(a.V, "A")},
		[2]string{"voltage_rating", text(breaks(p), "V dc")}, [2]string{"poles", "1"}, [2]string{"compartment", compartment(p, e.at)}) +
		"\n  position \"off\" {}\n  position \"on\" { joins = [[\"battery\", \"panel\"]] }\n}\n"
	return lint.Proposal{
		Do:      sentence("Put a switch for %s into %s, %s behind %s.", current(a.V), lint.Quote(c), quantity.Format(shortRun, quantity.Length), lint.Quote(p.Plan.Block(e.at.Addr))),
		Changes: []lint.Change{lint.Set(c.Addr, e.attr, "switch."+name+".panel"), {At: c.Addr, Block: block}, {At: c.Addr, Block: wire(lead, place(e.at), "switch."+name+".battery", c)}},
		Sources: []string{"steps of ratings and voltage of battery switches: " + practice},
		Part:    "Within reach of somebody aboard, and rated for direct current. What must never go dark stays ahead of it.",
	}
}

// DeviceAtSource offers a device right on the battery or bus that a run begins at, the smallest that lets
// the rest be as it was first.
func DeviceAtSource(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range p.Plan.Conductors {
		for _, e := range ends(c) {
			if len(v.Path) == 0 || place(e.at) != v.Path[0] || composed(c) || e.at.Pole == schema.Neg || !holds(p, e.at) {
				continue
			}
			for _, a := range fitting(p, c) {
				out = append(out, onSource(p, c, e, a))
			}
		}
	}
	for _, t := range sitting(p, v) {
		for _, c := range head(begun(p, v)) {
			for _, a := range fitting(p, c) {
				out = append(out, led(p, t, c, a))
			}
		}
	}
	return out
}

// DeviceMoved offers to put the device that stands further on in a wire right on the battery or bus that the way begins at:
// the two wires that met in it become one.
func DeviceMoved(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	if len(v.Path) == 0 {
		return nil
	}
	var out []lint.Proposal
	for _, f := range p.Plan.Fuses {
		before, behind := meeting(p, f, "line"), meeting(p, f, "load")
		if f.On.Set || len(before) != 1 || len(behind) != 1 || composed(before[0]) || composed(behind[0]) {
			continue
		}
		a, b := before[0], behind[0]
		from, attr := a.From, "from"
		if a.From.Addr == f.Addr {
			from = a.To
		}
		if b.To.Addr == f.Addr {
			attr = "to"
		}
		if place(from) != v.Path[0] || from.Pole != schema.WholePair || !holds(p, from) || !oneMake(a, b) {
			continue
		}
		stands := lint.Unset(f.Addr, "compartment")
		if at := compartment(p, from); at != "" {
			stands = lint.Set(f.Addr, "compartment", at)
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Move %s right onto %s, and let %s go on from it in one piece with %s.", lint.Quote(f), lint.Quote(p.Plan.Block(from.Addr)), lint.Quote(b), lint.Quote(a)),
			Changes: []lint.Change{lint.Set(f.Addr, "on", place(from)), stands, {At: a.Addr, Drop: true}, lint.Set(b.Addr, attr, f.Addr+".load"), lint.Set(b.Addr, "length", text(whole(a.Length.Value+b.Length.Value), "m"))},
			Sources: []string{practice},
		})
	}
	return out
}

// oneMake says whether two wires may be one: of the same make, laid in the same way through the same places.
func oneMake(a, b *schema.Conductor) bool {
	through := func(c *schema.Conductor) string {
		out := ""
		for _, r := range c.Through.List {
			out += r.Addr + " "
		}
		return out
	}
	return a.Size.Size == b.Size.Size && a.Insulation.Value == b.Insulation.Value && a.Length.Set && b.Length.Set && through(a) == through(b) && len(a.VoltageRating.List) == len(b.VoltageRating.List) &&
		a.Bundle.Value == b.Bundle.Value && a.Polarity.Value == b.Polarity.Value && slices.Equal(kind(a), kind(b))
}

// meeting lists the wires that end on a terminal of a device.
func meeting(p *lint.Pass, f *schema.Fuse, terminal string) []*schema.Conductor {
	var out []*schema.Conductor
	for _, c := range p.Plan.Conductors {
		for _, e := range ends(c) {
			if e.at.Addr == f.Addr && e.at.Terminal == terminal {
				out = append(out, c)
			}
		}
	}
	return out
}

// sitting are the switches and plugs on a verdict's way that sit on the battery or bus that it begins at.
func sitting(p *lint.Pass, v lint.Verdict) []tap {
	var out []tap
	on := func(b schema.Block, at schema.Ref) {
		if at.Set && len(v.Path) > 0 && place(at) == v.Path[0] && slices.ContainsFunc(v.Path, func(x string) bool { return block(p, x) == b.Header().Addr }) {
			out = append(out, tap{b, "on", at})
		}
	}
	for _, s := range p.Plan.Switches {
		if len(s.Terminals.List) > 0 {
			on(s, s.On)
		}
	}
	for _, c := range p.Plan.Connectors {
		on(c, c.On)
	}
	return out
}

// DeviceAhead offers a device of its own for each wire that the verdict is about, right on the bus or battery that it
// begins at; where it begins at a plug or a switch, right where that has its power from.
func DeviceAhead(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range append(about[*schema.Conductor](p, v), feeding(p, v)...) {
		for _, e := range ends(c) {
			if composed(c) || e.at.Pole == schema.Neg {
				continue
			}
			for _, a := range fitting(p, c) {
				if holds(p, e.at) {
					out = append(out, onSource(p, c, e, a))
				} else {
					out = append(out, upstream(p, c, e, a)...)
				}
			}
		}
	}
	return out
}

// feeding lists the wires that end on the loads that a verdict is about.
func feeding(p *lint.Pass, v lint.Verdict) []*schema.Conductor {
	var out []*schema.Conductor
	for _, l := range about[*schema.Load](p, v) {
		for _, c := range p.Plan.Conductors {
			if c.Polarity.Value != "negative" && (place(c.From) == l.Addr || place(c.To) == l.Addr) {
				out = append(out, c)
			}
		}
	}
	return out
}

// upstream puts a device where the plug or the switch that a wire begins at has its power from.
func upstream(p *lint.Pass, c *schema.Conductor, e end, a tables.Value) []lint.Proposal {
	switch p.Plan.Block(e.at.Addr).(type) {
	case *schema.Connector, *schema.Switch:
	default:
		return nil
	}
	for _, t := range taps(p, false, place(e.at)) {
		if t.of.Header().Addr == c.Addr { // the power comes by the other end
			return nil
		}
		if !holds(p, t.at) {
			continue
		}
		switch x := t.of.(type) {
		case *schema.Conductor:
			if !composed(x) {
				return []lint.Proposal{onSource(p, x, end{t.attr, t.at}, a)}
			}
		case *schema.Connector, *schema.Switch:
			return []lint.Proposal{led(p, t, c, a)}
		}
		return nil
	}
	return nil
}

// led takes a plug or a switch off the part that it sits on: a device sits there, and a short wire leads on from it.
func led(p *lint.Pass, t tap, like *schema.Conductor, a tables.Value) lint.Proposal {
	addr := t.of.Header().Addr
	out := seat(p, t, a, classT())
	terminal := ".fixed"
	if s, ok := t.of.(*schema.Switch); ok {
		terminal = "." + s.Terminals.List[0].Value
	}
	lead := fresh(p, "conductor", bare(addr)+"_lead")
	out.Do += sentence(" %s sits on it no more: a wire of %s leads there.", lint.Quote(t.of), quantity.Format(shortRun, quantity.Length))
	out.Changes = []lint.Change{lint.Unset(addr, t.attr), out.Changes[1], {At: addr, Block: wire(lead, out.Changes[0].Value, addr+terminal+pole(t.at), like)}}
	return out
}

// roughly is a current in A above which no device guards a wire in any practice: half as much again as the
// table has for it. Where the table has nothing, no current is.
func roughly(c *schema.Conductor) float64 {
	insulation := c.Insulation.Value
	if !c.Insulation.Set {
		insulation = 60
	}
	iz, _, _, ok := tables.Ampacity(c.Size.Size, insulation)
	if !c.Size.Set || !ok {
		return math.Inf(1)
	}
	return 1.5*iz.V*float64(c.Parallel.Or(1)) + 1
}

// holds says whether a device can sit right on a part.
func holds(p *lint.Pass, at schema.Ref) bool {
	switch p.Plan.Block(at.Addr).(type) {
	case *schema.Source, *schema.Bus:
		return true
	}
	return false
}

// device is a fuse that is put in: its kind and the figures of the kind.
type device struct {
	kind, volts, amps, from string
}

func classT() device {
	volts, amps, _ := tables.FuseKind("class-t")
	return device{"class-t", text(volts.V, "V dc"), interrupting(amps.V), "voltage and interrupting rating of the kind: " + volts.Cite.String()}
}

// forStrings is the fuse that is usual for strings of modules.
func forStrings() device {
	volts, amps := tables.SolarCartridge()
	return device{"cartridge", text(volts.V, "V dc"), interrupting(amps.V), "voltage and interrupting rating of the kind: " + volts.Cite.String()}
}

func onSource(p *lint.Pass, c *schema.Conductor, e end, a tables.Value) lint.Proposal {
	return seat(p, tap{c, e.attr, e.at}, a, classT())
}

func stringFuse(p *lint.Pass, c *schema.Conductor, e end, a tables.Value) lint.Proposal {
	return seat(p, tap{c, e.attr, e.at}, a, forStrings())
}

// seat puts a device right on the part that something has its power from.
func seat(p *lint.Pass, t tap, a tables.Value, d device) lint.Proposal {
	addr := t.of.Header().Addr
	name := fresh(p, "fuse", bare(addr)+"_main")
	where := p.Plan.Block(t.at.Addr)
	block := "fuse \"" + name + "\" {\n" + attrs("  ", [2]string{"kind", `"` + d.kind + `"`}, [2]string{"rating", text(a.V, "A")},
		[2]string{"voltage_rating", d.volts}, [2]string{"interrupting", d.amps}, [2]string{"on", place(t.at) + pole(t.at)},
		[2]string{"part_of", partOf(where)}, [2]string{"compartment", compartment(p, t.at)}) + "}\n"
	return lint.Proposal{
		Do:      sentence("Put a device of %s right on %s, ahead of %s.", current(a.V), lint.Quote(where), lint.Quote(t.of)),
		Changes: []lint.Change{lint.Set(addr, t.attr, "fuse."+name+".load"+pole(t.at)), {At: addr, Block: block}},
		Sources: []string{"standard rating: " + a.Cite.String(), d.from},
		Part:    "Read its ratings before it is fitted.",
	}
}

// pole is the node of a terminal that a reference names, as a plan writes it behind the terminal.
func pole(r schema.Ref) string {
	if r.Pole == schema.WholePair {
		return ""
	}
	return "." + r.Pole.String()
}

// partOf is what a new part at a source lifts out with.
func partOf(b schema.Block) string {
	if s, ok := b.(*schema.Source); ok && s.Removable.True() {
		return s.Addr
	}
	return b.Header().PartOf.Addr
}
