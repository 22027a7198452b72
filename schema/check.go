package schema

import (
	"slices"

	"github.com/hashicorp/hcl/v2"

	"ferrule/schema/quantity"
)

// check reports figures of a block that cannot all be true. Every message names both places.
func (d *decoder) check(b Block) {
	d.checkPartOf(b.Header())
	switch x := b.(type) {
	case *System:
		d.climate(x.Coldest, x.Ambient, false)
	case *Compartment:
		d.climate(x.Coldest, x.Ambient, x.Engine.True())
	case *Source:
		d.checkSource(x)
	case *Switch:
		d.checkSwitch(x)
	case *Fuse:
		d.relateFuse(x)
		d.checkRatings(x.VoltageRating)
		d.checkSelf(x.Addr, "series_rated_with", x.SeriesRatedWith)
	case *Converter:
		d.relateConverter(x)
	case *Connector:
		d.checkConnector(x)
	case *Load:
		d.checkLoad(x)
	case *Conductor:
		d.checkConductor(x)
	case *Branch:
		if x.From.Addr != "" && d.oneNode(x.From) {
			d.problems.add(x.From.Range, "Pair on a single node", "from: %s is one node, and a branch is a pair. Draw it as a fuse, conductors with polarity = \"positive\" or \"negative\", and loads.", x.From.Text)
		}
	case *Mode:
		d.checkPins("state", x.State)
	case *Interlock:
		for _, c := range x.Never.List {
			d.checkPins("never", c)
			if c.Set && len(c.List) == 0 {
				d.problems.add(c.Range, "Empty combination", "never: a combination names one position or more.")
			}
		}
	}
}

func (d *decoder) contradiction(at hcl.Range, format string, args ...any) {
	d.problems.add(at, "Figures contradict each other", format, args...)
}

func (d *decoder) checkPartOf(h *Head) {
	s, ok := d.plan.index[h.PartOf.Addr].(*Source)
	if !ok {
		return
	}
	if s.Kind.Value == "battery" && !s.Removable.True() {
		d.contradiction(h.PartOf.Range, "part_of: %s, at %s, does not say removable = true, so nothing can lift out with it.", s.Addr, place(s.Range))
	}
	for steps := 0; s != nil && steps < 50; steps++ {
		if s.Addr == h.Addr {
			d.contradiction(h.PartOf.Range, "part_of: %s would be part of itself.", h.Addr)
			return
		}
		s, _ = d.plan.index[s.PartOf.Addr].(*Source)
	}
}

func (d *decoder) checkSelf(addr, name string, refs ...Ref) {
	for _, r := range refs {
		if r.Addr == addr {
			d.contradiction(r.Range, "%s: %s cannot name itself.", name, addr)
		}
	}
}

func (d *decoder) checkSource(x *Source) {
	d.relateSource(x)
	if x.Kind.Value == "solar" {
		d.climate(x.Coldest, Quantity{}, false)
	}
	alternating := x.Kind.Value == "shore" || x.Kind.Value == "generator"
	if x.Kind.Set && (x.Voltage.Kind == quantity.DC && alternating || x.Voltage.Kind == quantity.AC && !alternating) {
		d.contradiction(x.Voltage.Range, "voltage: %s does not go with the kind %s, at %s.", x.Voltage.Quantity, x.Kind.Value, place(x.Kind.Range))
	}
}

func (d *decoder) checkSwitch(x *Switch) {
	d.relate(relation{says("cut_out", x.CutOut), 0.5, 1, says("cut_in", x.CutIn)})
	d.checkRatings(x.VoltageRating)
	if x.Terminals.Set && len(x.Terminals.List) < 2 {
		d.problems.add(x.Terminals.Range, "Too few terminals", "terminals: a switch has two or more.")
	}
	if !x.implied {
		d.checkNames("terminals", x.Terminals)
	}
	for _, t := range x.Senses.List {
		d.checkTerminal(x, "senses", t)
	}
	first := map[string]hcl.Range{}
	for _, p := range x.Positions {
		if at, ok := first[p.Name]; ok && p.Name != "" {
			d.problems.add(p.Range, "Name used twice", "The switch has a position %q already, at %s.", clip(p.Name), place(at))
		}
		first[p.Name] = p.Range
		for _, g := range p.Joins.Groups {
			for _, t := range g {
				d.checkTerminal(x, "joins", t)
			}
			if len(g) < 2 {
				d.problems.add(p.Joins.Range, "Too few terminals", "joins: a group has two terminals or more.")
			}
		}
	}
}

func (d *decoder) checkTerminal(x *Switch, attribute string, t Text) {
	names, _ := terminalsOf(x)
	if x.Terminals.Set && !slices.Contains(names, t.Value) {
		d.problems.add(t.Range, "Unknown terminal", "%s: %s has no terminal %q.%s", attribute, x.Addr, clip(t.Value), d.near.hint(t.Value, names))
	}
}

// checkNames reports terminal names that an owner cannot give, or gives twice.
func (d *decoder) checkNames(attribute string, names Texts) {
	first := map[string]hcl.Range{}
	for _, t := range names.List {
		at, twice := first[t.Value]
		switch {
		case t.Value == "":
			d.problems.add(t.Range, "Unfit name", "%s: a name is wanted.", attribute)
		case slices.Contains(reserved, t.Value):
			d.problems.add(t.Range, "Reserved name", "%s: %q has a meaning of its own in references. Reserved are %s.", attribute, t.Value, and(reserved, "and"))
		case twice:
			d.problems.add(t.Range, "Name used twice", "%s: there is a %q already, at %s.", attribute, clip(t.Value), place(at))
		}
		first[t.Value] = t.Range
	}
}

// checkRatings reports two voltage ratings for one kind of current.
func (d *decoder) checkRatings(q Quantities) {
	first := map[quantity.Kind]Quantity{}
	for _, v := range q.List {
		if f, ok := first[v.Kind]; ok {
			d.contradiction(v.Range, "voltage_rating: %s, beside %s at %s: one for dc and one for ac.", v.Quantity, f.Quantity, place(f.Range))
		}
		first[v.Kind] = v
	}
}

func (d *decoder) checkConnector(x *Connector) {
	d.checkNames("contacts", x.Contacts)
	d.checkRatings(x.VoltageRating)
	d.checkSelf(x.Addr, "follows", x.Follows.List...)
	d.checkSelf(x.Addr, "apart_from", x.ApartFrom.List...)
}

func (d *decoder) checkLoad(x *Load) {
	d.relateLoad(x)
	var first *Quantity
	for _, q := range []*Quantity{&x.Draw, &x.Power, &x.Resistance} {
		if first != nil && q.Set {
			d.contradiction(q.Range, "A load says one of draw, power and resistance: this one says %s too, at %s.", first.Quantity, place(first.Range))
		}
		if q.Set {
			first = q
		}
	}
}

// checkConductor compares a conductor's ends with its polarity: a pair ends on pairs.
func (d *decoder) checkConductor(x *Conductor) {
	d.checkRatings(x.VoltageRating)
	if x.From.Addr != "" && same(x.From, x.To) {
		d.contradiction(x.To.Range, "to: the conductor ends where it starts, %s at %s.", x.From.Text, place(x.From.Range))
	}
	if x.Polarity.Set && x.Polarity.Value != "pair" {
		return
	}
	for _, end := range []Ref{x.From, x.To} {
		if end.Addr != "" && d.oneNode(end) {
			d.problems.add(end.Range, "Pair on a single node", "%s is one node, and the conductor is a pair: say polarity = \"positive\", \"negative\" or \"grounding\" to draw one wire.", end.Text)
		}
	}
}

// same reports whether two references name the same thing.
func same(a, b Ref) bool {
	return a.Addr == b.Addr && a.Terminal == b.Terminal && a.Contact == b.Contact && a.Pole == b.Pole
}

func (d *decoder) checkPins(attribute string, pins Pins) {
	first := map[string]hcl.Range{}
	for _, p := range pins.List {
		if p.Ref.Addr == "" {
			continue
		}
		if at, ok := first[p.Ref.Addr]; ok {
			d.contradiction(p.Ref.Range, "%s: %s has a position already, at %s.", attribute, p.Ref.Text, place(at))
		}
		first[p.Ref.Addr] = p.Ref.Range
		if names := positions(d.plan.index[p.Ref.Addr]); p.Position.Set && !slices.Contains(names, p.Position.Value) {
			d.problems.add(p.Position.Range, "Unknown position", "%s: %s has no position %q.%s", attribute, p.Ref.Text, clip(p.Position.Value), d.near.hint(p.Position.Value, names))
		}
	}
}

// positions lists the positions that a part can be pinned at. A switch drawn without any has two.
func positions(b Block) []string {
	switch x := b.(type) {
	case *Source:
		return []string{"present", "absent"}
	case *Connector:
		return []string{"mated", "unmated"}
	case *Switch:
		var out []string
		for _, p := range x.Positions {
			out = append(out, p.Name)
		}
		if len(out) == 0 {
			out = []string{"open", "closed"}
		}
		return out
	}
	return nil
}
