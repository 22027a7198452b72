package schema

import (
	"reflect"
)

var branchParts = []string{"fuse", "conductor", "load"}

// circuit is a branch being read.
type circuit struct {
	*Branch
	fuse      *Fuse
	conductor *Conductor
	loads     []*Load
}

// branch reads a fused circuit and lays it out as plain blocks: a fuse that sits on the branch's
// origin, a conductor, and at its far end the loads, each behind a hand switch where it has one.
func (d *decoder) branch(sc *scope, b block) {
	t := words().byName["branch"]
	c := &circuit{Branch: &Branch{}}
	h := d.header(sc.prefix, c.Branch, b)
	take := func(p block) bool { return d.part(sc, c, p) }
	d.fill(sc, t.contents, h, reflect.ValueOf(c.Branch).Elem(), b.body(branchSpec()), contents{block: take})
	if !d.record(t, c.Branch) {
		return
	}
	if c.fuse == nil || c.conductor == nil || c.loads == nil {
		d.broken[h.Addr] = true
		d.problems.add(h.Range, "Branch incomplete", "A branch has a fuse { }, a conductor { } and one load \"NAME\" { } or more.")
	}
	d.layOut(c)
}

// branchSpec lists the blocks of a branch for the JSON reader.
func branchSpec() *spec {
	s := &spec{}
	for _, typ := range branchParts {
		s.blocks = append(s.blocks, &nested{name: typ, many: typ == "load"})
	}
	return s
}

// part reads one block inside a branch. It reports false for a block that is no part of one.
func (d *decoder) part(sc *scope, c *circuit, b block) bool {
	t := words().byName[b.typ]
	if t == nil {
		return false
	}
	switch p := t.make().(type) {
	case *Fuse:
		if d.single(sc, c, b, p, c.fuse == nil) {
			c.fuse = p
		}
	case *Conductor:
		if d.single(sc, c, b, p, c.conductor == nil) {
			c.conductor = p
		}
		if p.Polarity.Set && p.Polarity.Value != "pair" {
			d.problems.add(p.Polarity.Range, "Attribute out of place", "polarity: the conductor of a branch is a pair.")
		}
	case *Load:
		d.header(c.Addr+".", p, b)
		d.fillPart(sc, b, p)
		c.loads = append(c.loads, p)
	default:
		return false
	}
	return true
}

// single reads a part that a branch has one of. It goes by the name and label of the branch.
func (d *decoder) single(sc *scope, c *circuit, b block, p Block, first bool) bool {
	*p.Header() = Head{Type: b.typ, Name: c.Name, Addr: c.Addr + "." + b.typ, Range: b.header, Body: b.whole}
	if len(b.labels) > 0 {
		d.problems.add(b.where[0], "Too many names", "The %s of a branch has no name.", b.typ)
	}
	if !first {
		d.problems.add(b.header, "Block written twice", "A branch has one %s.", b.typ)
	}
	d.fillPart(sc, b, p)
	d.after = append(d.after, func() {
		if !p.Header().Label.Set {
			p.Header().Label = c.Label
		}
	})
	return first
}

func (d *decoder) fillPart(sc *scope, b block, p Block) {
	t := words().byName[b.typ]
	d.fill(sc, t.contents, p.Header(), reflect.ValueOf(p).Elem(), b.body(t.contents), contents{place: "branch", given: []string{"from", "to", "on"}})
}

// layOut records a branch's parts and joins them.
func (d *decoder) layOut(c *circuit) {
	at := Attr{Set: true, Range: c.Range}
	ref := func(addr, terminal string) Ref {
		text := addr
		if terminal != "" {
			text += "." + terminal
		}
		return Ref{Attr: at, Text: text, Addr: addr, Terminal: terminal}
	}
	add := func(p Block) {
		if d.record(words().byName[p.Header().Type], p) {
			c.Parts = append(c.Parts, p.Header().Addr)
		}
	}
	if c.fuse != nil {
		add(c.fuse)
		d.after = append(d.after, func() {
			d.plan.Links = append(d.plan.Links, Link{A: c.From, B: ref(c.fuse.Addr, "line")})
		})
	}
	if c.conductor != nil {
		c.conductor.From = ref(c.Addr+".fuse", "load")
		add(c.conductor)
	}
	var far *Ref
	for _, l := range c.loads {
		if l.Addr == "" || d.plan.index[l.Addr] != nil {
			add(l) // which says what is wrong with its name
			continue
		}
		end := ref(l.Addr, "")
		if l.Switched.True() {
			s := d.handSwitch(c, l)
			add(s)
			d.plan.Links = append(d.plan.Links, Link{A: ref(s.Addr, "load"), B: end})
			end = ref(s.Addr, "feed")
		}
		add(l)
		if far == nil {
			far = &end
		} else {
			d.plan.Links = append(d.plan.Links, Link{A: *far, B: end})
		}
	}
	if c.conductor != nil && far != nil {
		c.conductor.To = *far
	}
	d.inherit(&c.PartOf, &c.Parts)
}

// handSwitch is the switch that stands before a switched load.
func (d *decoder) handSwitch(c *circuit, l *Load) *Switch {
	at := l.Switched.Attr
	text := func(s string) Text { return Text{at, s} }
	x := &Switch{implied: true}
	x.Head = Head{Type: "switch", Name: l.Name, Addr: c.Addr + ".switch." + l.Name, Range: l.Range, Body: l.Body}
	contents := words().byName["switch"].contents
	for _, f := range contents.fields {
		attrOf(reflect.ValueOf(x).Elem(), f).Range = l.Range
	}
	x.Kind, x.Poles = text("manual"), Count{at, 1}
	x.Terminals = Texts{at, []Text{text("feed"), text("load")}}
	x.Positions = []*Position{
		{Name: "off", Range: at.Range, Joins: Joins{Attr: Attr{Range: at.Range}}},
		{Name: "on", Range: at.Range, Joins: Joins{at, [][]Text{{text("feed"), text("load")}}}},
	}
	d.after = append(d.after, func() { x.Label, x.PartOf, x.Place = l.Label, l.PartOf, l.Place })
	return x
}

// inherit gives the parts of a branch or a kit the part_of of the whole, where they have none.
func (d *decoder) inherit(of *Ref, parts *[]string) {
	d.after = append(d.after, func() {
		for _, addr := range *parts {
			if h := d.plan.index[addr].Header(); of.Set && !h.PartOf.Set {
				h.PartOf = *of
			}
		}
	})
}
