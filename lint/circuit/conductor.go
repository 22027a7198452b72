package circuit

import (
	"fmt"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// Ampacity is what a conductor carries without overheating, in A: the table's figure for its size
// and insulation, times heat, bundle and strands in parallel. lacks names what was left out; the
// number is then the largest it can be.
func (c *Circuit) Ampacity(x *schema.Conductor) (iz derive.Number, lacks []derive.Missing) {
	if !x.Size.Set {
		return iz, missing(x, "size")
	}
	if x.Material.Value == "aluminum" {
		return iz, missing(x, "ampacity of aluminum")
	}
	ins := derive.Assume("insulation rating of "+quote(x), "Tins", 60, "C", x.Addr, "insulation", "the lowest column of the table")
	if x.Insulation.Set {
		ins = read("insulation rating of "+quote(x), "Tins", x.Insulation, "C", x, "insulation")
	}
	ac := c.isAC(x)
	look, symbol := tables.Ampacity, "I0"
	if ac {
		look = tables.AmpacityAC
	}
	v, column, row, ok := look(x.Size.Size, ins.Value)
	if !ok {
		return iz, missing(x, "a size and insulation that the table covers")
	}
	base := derive.LookUp(fmt.Sprintf("table ampacity of %s at %g C insulation", row, column), symbol, v.V, "A", v.Cite.String(), ins)
	heat := c.heat(x, column)
	bundle, short := c.bundle(x, ac)
	n := float64(x.Parallel.Or(1))
	formula, from := "Iz = I0 x kT x kB", []derive.Number{base, heat, bundle}
	if n > 1 {
		formula += " x n"
		from = append(from, derive.Read("conductors in parallel", "n", n, "", x.Addr, "parallel", x.Parallel.Range))
	}
	iz = derive.Compute("ampacity of "+quote(x), "Iz", base.Value*heat.Value*bundle.Value*n, "A", formula, from...)
	return iz, short
}

func (c *Circuit) isAC(x *schema.Conductor) bool {
	for _, e := range c.Net.EdgesOf(x.Addr) {
		return c.Net.Nodes[c.Net.Edges[e].A].AC
	}
	return false
}

// heat is the factor of the hottest space that the conductor passes.
func (c *Circuit) heat(x *schema.Conductor, column float64) derive.Number {
	var worst derive.Number
	for _, t := range c.ambients(x) {
		f := tables.HeatFactor(column, t.n.Value, t.engineDefault)
		n := derive.LookUp("heat factor", "kT", f.V, "", f.Cite.String(), t.n)
		if worst.Kind == 0 || n.Value < worst.Value {
			worst = n
		}
	}
	return worst
}

type ambient struct {
	n             derive.Number
	engineDefault bool
}

// ambients lists the ambient temperature of every space that a conductor passes.
func (c *Circuit) ambients(x *schema.Conductor) []ambient {
	var out []ambient
	for _, r := range x.Through.List {
		if k, ok := schema.Lookup[*schema.Compartment](c.Net.Plan, r.Addr); ok {
			out = append(out, c.ambientOf(k))
		}
	}
	if len(out) == 0 {
		out = append(out, c.ambientOf(nil))
	}
	return out
}

// AmbientOf is the hottest temperature of a compartment, in C: its own; else 50 C in an engine space,
// unless the system's is higher still; else the system's; else 40 C. nil asks for a part that names no
// compartment.
func (c *Circuit) AmbientOf(k *schema.Compartment) derive.Number { return c.ambientOf(k).n }

func (c *Circuit) ambientOf(k *schema.Compartment) ambient {
	sys := c.Net.Plan.System
	switch engine := c.guessAmbient(50); {
	case k != nil && k.Ambient.Set:
		return ambient{read("ambient in "+quote(k), "Ta", k.Ambient, "C", k, "ambient"), false}
	case k != nil && k.Engine.True() && !(sys.Ambient.Set && sys.Ambient.Value > engine):
		return ambient{derive.Assume("ambient in the engine space "+quote(k), "Ta", engine, "C", k.Addr, "ambient", "basis of the engine-space factors of 33 CFR 183.425"), c.Guesses.Ambient == nil}
	case sys.Ambient.Set:
		return ambient{read("ambient", "Ta", sys.Ambient, "C", sys, "ambient"), false}
	}
	return ambient{derive.Assume("ambient", "Ta", c.guessAmbient(40), "C", sys.Addr, "ambient", "common practice"), false}
}

func (c *Circuit) guessAmbient(usual float64) float64 {
	if c.Guesses.Ambient != nil {
		return *c.Guesses.Ambient
	}
	return usual
}

func (c *Circuit) bundle(x *schema.Conductor, ac bool) (derive.Number, []derive.Missing) {
	if x.Bundle.Set {
		n := derive.Read("current-carrying conductors that run touching", "nB", float64(x.Bundle.Value), "", x.Addr, "bundle", x.Bundle.Range)
		f := tables.BundleFactor(x.Bundle.Value, ac)
		return derive.LookUp("bundle factor", "kB", f.V, "", f.Cite.String(), n), nil
	}
	f := tables.BundleFactor(2, ac)
	n := derive.Assume("current-carrying conductors that run touching", "nB", 2, "", x.Addr, "bundle", "the pair alone")
	alone := derive.LookUp("bundle factor", "kB", f.V, "", f.Cite.String(), n)
	if len(x.Through.List) > 1 {
		return alone, missing(x, "bundle")
	}
	return alone, nil
}

// Corner says for which question a resistance is wanted.
type Corner uint8

// The corners. The zero value is invalid.
const (
	_           Corner = iota
	Operating          // conductors at their ambient, worst of their class, joints counted
	Prospective        // 20 C, nominal area, joints at zero: the most that a fault can be
	Least              // 20 % over 20 C, joints counted: the least that a fault can be
)

// Ohms is the resistance of an edge, in ohm: a wire with the joints at its two ends, or a connector's
// contact; other parts count as nothing.
func (c *Circuit) Ohms(edge int, corner Corner) (derive.Number, []derive.Missing) {
	k := ohmsKey{edge, corner}
	r, ok := c.ohms[k]
	if !ok {
		r.n, r.lacks = c.findOhms(edge, corner)
		c.ohms[k] = r
	}
	return r.n, r.lacks
}

type ohmsKey struct {
	edge   int
	corner Corner
}

type ohms struct {
	n     derive.Number
	lacks []derive.Missing
}

func (c *Circuit) findOhms(edge int, corner Corner) (derive.Number, []derive.Missing) {
	switch e := &c.Net.Edges[edge]; e.Kind {
	case network.Wire:
		return c.wireOhms(e, corner)
	case network.Mate:
		if x, ok := schema.Lookup[*schema.Connector](c.Net.Plan, e.Addr); ok && corner != Prospective {
			return c.contactOhms(x), nil
		}
	}
	return derive.Number{}, nil
}

func (c *Circuit) contactOhms(x *schema.Connector) derive.Number {
	if x.ContactResistance.Set {
		return read("contact of "+quote(x), "Rc", x.ContactResistance, "ohm", x, "contact_resistance")
	}
	j := tables.Joint("contact")
	return derive.Assume("contact of "+quote(x), "Rc", j.V*c.Guesses.joints(), "ohm", x.Addr, "contact_resistance", j.Cite.String())
}

func (c *Circuit) wireOhms(e *network.Edge, corner Corner) (derive.Number, []derive.Missing) {
	x := e.Wire
	size, attribute := x.Size, "size"
	if e.Pole == schema.Ground && x.Grounding.Set {
		size, attribute = x.Grounding, "grounding"
	}
	if !size.Set {
		return derive.Number{}, missing(x, attribute)
	}
	if !x.Length.Set {
		return derive.Number{}, missing(x, "length")
	}
	temp, scale := derive.Number{Value: 20}, 1.0
	if corner == Operating {
		for _, a := range c.ambients(x) {
			if temp.Kind == 0 || a.n.Value > temp.Value {
				temp = a.n
			}
		}
	}
	if corner == Least {
		scale = 1.2
	}
	material := x.Material.Value
	if material == "tinned-copper" {
		material = "copper"
	}
	r, how, ok := tables.OhmPerMetre(size.Size, x.Stranding.Value != "solid", material, temp.Value, corner != Prospective)
	if !ok {
		return derive.Number{}, missing(x, "material")
	}
	from := []derive.Number{derive.Compute("resistance of "+size.Name+" for each metre", "r", r.V*scale, "ohm/m", how+hotter(corner)+"; "+r.Cite.String(), known(temp)...),
		read("length of "+quote(x), "L", x.Length, "m", x, "length")}
	total, formula := r.V*scale*x.Length.Value/float64(x.Parallel.Or(1)), "R = r x L"
	if x.Parallel.Or(1) > 1 {
		formula += " / n"
	}
	if corner != Prospective {
		for _, end := range []network.NodeID{e.A, e.B} {
			if j := c.jointAt(end, x); j.Kind != 0 {
				total += j.Value
				from = append(from, j)
			}
		}
		formula += " + joints"
	}
	return derive.Compute("resistance of one run of "+quote(x), "R", total, "ohm", formula, from...), nil
}

func hotter(corner Corner) string {
	if corner == Least {
		return ", x 1.2 for a hot conductor"
	}
	return ""
}

// known keeps the numbers that have an origin.
func known(ns ...derive.Number) []derive.Number {
	var out []derive.Number
	for _, n := range ns {
		if n.Kind != 0 {
			out = append(out, n)
		}
	}
	return out
}

// jointAt is the joint of a conductor's end: a stud, or a blade or glass fuse's holder. A connector's
// contact is counted by itself.
func (c *Circuit) jointAt(id network.NodeID, x *schema.Conductor) derive.Number {
	n := &c.Net.Nodes[id]
	kind := "stud"
	switch b := c.Net.Plan.Block(n.Addr).(type) {
	case *schema.Connector:
		return derive.Number{}
	case *schema.Fuse:
		if (b.Kind.Value == "blade" || b.Kind.Value == "glass") && !n.Return {
			kind = b.Kind.Value
		}
	}
	j := tables.Joint(kind)
	return derive.Assume("joint on a "+kindWord(kind)+" at "+n.Place(), "Rj", j.V*c.Guesses.joints(), "ohm", "joints", kindWord(kind), j.Cite.String())
}

func kindWord(kind string) string {
	if kind == "stud" {
		return kind
	}
	return kind + " holder"
}

// Withstand is how much I^2 t a conductor bears without damage, in A^2 s.
func (c *Circuit) Withstand(x *schema.Conductor) (derive.Number, []derive.Missing) {
	if !x.Size.Set {
		return derive.Number{}, missing(x, "size")
	}
	if x.Material.Value == "aluminum" {
		return derive.Number{}, missing(x, "withstand of aluminum")
	}
	ins := 60.0
	if x.Insulation.Set {
		ins = x.Insulation.Value
	}
	n := float64(x.Parallel.Or(1))
	v := tables.Withstand(x.Size.Area, ins)
	if v.Cite.Status == tables.Memory {
		return derive.Assume("withstand of "+quote(x), "k2S2", v.V*n*n, "A2s", x.Addr, "short-time withstand", v.Cite.String()), nil
	}
	return derive.LookUp("withstand of "+quote(x), "k2S2", v.V*n*n, "A2s", v.Cite.String()), nil
}

// WithstandTime is how long a conductor bears a fault current, in s: good below about 5 s.
func (c *Circuit) WithstandTime(x *schema.Conductor, fault derive.Number) (derive.Number, []derive.Missing) {
	w, lacks := c.Withstand(x)
	if lacks != nil || fault.Value <= 0 {
		return derive.Number{}, lacks
	}
	return derive.Compute("time that "+quote(x)+" withstands it", "tw", w.Value/(fault.Value*fault.Value), "s", "tw = k2S2 / I^2", w, fault), nil
}
