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

// Figures of the converter that is offered between two sources: steps of output current in A, the
// efficiency and the input window of a 12 V one in V. Common practice.
var outputs = []float64{30, 20, 10}

const (
	efficiency = 0.9
	inputMin   = 11
	inputMax   = 16
	shortRun   = 0.3 // m from the converter to the part that the wire ended on
)

// OneWayBetween offers a converter that limits current and runs one way, in each wire between a lithium
// battery and what it must not meet.
func OneWayBetween(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var lithium *schema.Source
	for _, s := range about[*schema.Source](p, v) {
		if lithium == nil && tables.Lithium(s.Chemistry.Value) && nominal(s) <= 14 {
			lithium = s
		}
	}
	if lithium == nil {
		return nil
	}
	_, _, end := tables.BatteryVolts(lithium.Chemistry.Value, tables.CellsFor(lithium.Chemistry.Value, nominal(lithium)))
	volts := math.Floor(end.V*10-2+1e-9) / 10
	if most := lithium.ChargeVoltageMax; most.Set {
		volts = min(volts, most.Value)
	}
	var out []lint.Proposal
	for _, c := range along(p, v.Path) {
		if c.Polarity.Set && c.Polarity.Value != "pair" || composed(c) {
			continue
		}
		for _, amps := range outputs {
			if !lithium.ChargeLimit.Set || amps <= lithium.ChargeLimit.Value {
				one := between(p, c, lithium, toward(v.Path, c, lithium), volts, amps)
				out = append(append(out, one), home(p, v, c, lithium, one, amps)...)
			}
		}
	}
	return out
}

// home leads the output of a converter that was put into a wire straight to the battery, to a device of its own there:
// where a switch on the old way would have power on both sides.
func home(p *lint.Pass, v lint.Verdict, c *schema.Conductor, battery *schema.Source, one lint.Proposal, amps float64) []lint.Proposal {
	forward := toward(v.Path, c, battery)
	end := c.To
	if !forward {
		end = c.From
	}
	metres, known := rest(p, v.Path, place(end), battery)
	up := above(amps / tables.Continuous * (1 - 1e-9))
	if end.Addr == battery.Addr || !known || end.Pole != schema.WholePair || len(up) == 0 || !strings.HasPrefix(one.Changes[0].Value, "converter.") {
		return nil
	}
	x := strings.TrimSuffix(strings.TrimSuffix(one.Changes[0].Value, ".in"), ".out")
	f := seat(p, tap{battery, "", schema.Ref{Addr: battery.Addr}}, up[0], classT())
	name := fresh(p, "fuse", bare(c.Addr)+"_limit")
	f.Changes[1].Block = strings.Replace(f.Changes[1].Block, "fuse \""+bare(battery.Addr)+"_main", "fuse \""+name, 1)
	out := one
	out.Do += sentence(" Lead its output straight to %s, to a device of %s right on it.", lint.Quote(battery), current(up[0].V))
	out.Part += " " + newWay
	out.Sources = slices.Concat(one.Sources, f.Sources)
	lead := wireOf(fresh(p, "conductor", bare(c.Addr)+"_limit_out"), x+".out", "fuse."+name+".load", c, metres)
	out.Changes = []lint.Change{one.Changes[0], one.Changes[1], {At: c.Addr, Block: f.Changes[1].Block}, {At: c.Addr, Block: lead}}
	if !forward {
		out.Changes[3] = one.Changes[2]
		out.Changes = append(out.Changes, lint.Set(c.Addr, "from", "fuse."+name+".load"), lint.Set(c.Addr, "length", text(whole(metres+c.Length.Value), "m")))
	}
	return []lint.Proposal{out}
}

// rest is the length of the wires of a way from one of its places to the battery at one of its ends, in m; not known where
// one has none.
func rest(p *lint.Pass, path []string, from string, battery *schema.Source) (metres float64, known bool) {
	i := slices.Index(path, from)
	if i < 0 {
		return 0, false
	}
	part := path[i:]
	if path[0] == battery.Addr {
		part = path[:i+1]
	}
	for _, c := range along(p, part) {
		if !c.Length.Set {
			return 0, false
		}
		metres += c.Length.Value
	}
	return max(metres, shortRun), true
}

func nominal(s *schema.Source) float64 { return s.Voltage.Value }

// IgnitionBetween offers a converter that runs only with the engine, in each wire between a starting
// battery and a load that goes on drinking from it.
func IgnitionBetween(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range head(about[*schema.Source](p, v)) {
		for _, l := range head(about[*schema.Load](p, v)) {
			path := way(p, s.Addr, l.Addr)
			for _, c := range betweenBatteryAndLoad(p, v) {
				if stores(p, l.Addr, c) { // what gives a load its volts charges no battery
					continue
				}
				for _, amps := range outputs {
					out = append(out, between(p, c, nil, !toward(path, c, s), 13.2, amps))
				}
			}
		}
	}
	return out
}

// stores says whether a battery is joined with a place by any contacts, without a wire.
func stores(p *lint.Pass, from string, without *schema.Conductor) bool {
	a, b := place(without.From), place(without.To)
	seen := walk(p, from, func(x, y string) bool { return !(x == a && y == b || x == b && y == a) })
	return slices.ContainsFunc(p.Plan.Sources, func(s *schema.Source) bool { return s.Kind.Value == "battery" && seen[s.Addr] })
}

// walk are the terminals that are reached from one by the steps that may be gone.
func walk(p *lint.Pass, from string, may func(x, y string) bool) map[string]bool {
	g := graph(p, false)
	seen := map[string]bool{from: true}
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		for _, s := range g[queue[0]] {
			if !seen[s.to] && may(queue[0], s.to) {
				seen[s.to] = true
				queue = append(queue, s.to)
			}
		}
	}
	return seen
}

// way is the shortest way between two terminals over wires and contacts, as a path names it.
func way(p *lint.Pass, from, to string) []string {
	g := graph(p, false)
	came := map[string]string{from: from}
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		for _, s := range g[queue[0]] {
			if came[s.to] == "" {
				came[s.to] = queue[0]
				queue = append(queue, s.to)
			}
		}
	}
	if came[to] == "" {
		return nil
	}
	out := []string{to}
	for at := to; at != from; {
		at = came[at]
		out = append(out, at)
	}
	slices.Reverse(out)
	return out
}

// toward says whether a wire is written toward a source along a path: its end comes nearer to it.
func toward(path []string, c *schema.Conductor, s *schema.Source) bool {
	at := map[string]int{}
	for i, x := range path {
		at[x] = i
	}
	if len(path) > 0 && path[0] == s.Addr {
		return at[place(c.To)] < at[place(c.From)]
	}
	return at[place(c.To)] > at[place(c.From)]
}

// between splits a wire: it ends on the converter's input, and a short one goes on from its output.
func between(p *lint.Pass, c *schema.Conductor, to *schema.Source, forward bool, volts, amps float64) lint.Proposal {
	name := fresh(p, "converter", bare(c.Addr)+"_limit")
	lead := fresh(p, "conductor", bare(c.Addr)+"_limit_out")
	side, far := "in", "out"
	if !forward { // the wire begins at the lithium side
		side, far = "out", "in"
	}
	in := math.Ceil(volts * amps / efficiency / inputMin)
	charges, profile, float, cold, needs := "", "", "", "", "false"
	trigger := `"ignition"`
	if to != nil {
		charges, profile, float, cold, trigger = "["+to.Addr+"]", `"`+to.Chemistry.Value+`"`, text(math.Floor(volts*9.4)/10, "V"), "true", `"13.3 V"`
	}
	body := "converter \"" + name + "\" {\n" + attrs("  ",
		[2]string{"kind", `"dc-dc"`}, [2]string{"rated", text(math.Ceil(volts*amps/10)*10, "W")}, [2]string{"efficiency", "0.9"}, [2]string{"isolated", "true"},
		[2]string{"blocks_reverse", "true"}, [2]string{"limits_current", "true"}, [2]string{"needs_battery", needs}, [2]string{"cold_charge_cutoff", cold},
		[2]string{"trigger", trigger}, [2]string{"charges", charges}, [2]string{"compartment", compartment(p, c.To)}) +
		"\n  input {\n" + attrs("    ", [2]string{"voltage_min", text(inputMin, "V")}, [2]string{"voltage_max", text(inputMax, "V")},
		[2]string{"current_max", text(in, "A")}, [2]string{"accepts", `["dc"]`}) + "  }\n\n  output {\n" +
		attrs("    ", [2]string{"voltage", text(volts, "V")}, [2]string{"current_max", text(amps, "A")},
			[2]string{"profile", profile}, [2]string{"float", float}) + "  }\n}\n"
	changes := []lint.Change{
		lint.Set(c.Addr, "to", "converter."+name+"."+side),
		{At: c.Addr, Block: body},
		{At: c.Addr, Block: wire(lead, "converter."+name+"."+far, place(c.To), c)},
	}
	return lint.Proposal{
		Do: sentence("Put a one-way converter that limits its output to %s into %s, %s from where the wire now ends.", quantity.Format(amps, quantity.Current),
			lint.Quote(c), quantity.Format(shortRun, quantity.Length)),
		Changes: changes,
		Sources: []string{"output steps, efficiency and input window: " + practice, "charging voltage by chemistry, a little under its end of charge"},
		Part:    "A dc-dc converter whose sheet says every line of the new block; what it starts at and its profile are settings.",
	}
}

// wire is the text of a short conductor like another one.
func wire(name, from, to string, like *schema.Conductor) string {
	return wireOf(name, from, to, like, shortRun)
}

// wireOf is the text of a conductor like another one, of a length in m.
func wireOf(name, from, to string, like *schema.Conductor, metres float64) string {
	insulation, bundle, size := "", "", ""
	if like.Insulation.Set {
		insulation = text(like.Insulation.Value, "C")
	}
	if like.Bundle.Set {
		bundle = count(like.Bundle.Value)
	}
	if like.Size.Set {
		size = `"` + like.Size.String() + `"`
	}
	volts := ""
	if l := like.VoltageRating.List; len(l) == 1 {
		volts = text(l[0].Value, "V "+l[0].Kind.String())
	}
	through := ""
	if like.Through.Set && len(like.Through.List) == 1 { // a short one lies where it does; of a longer way it is not known
		through = "[" + like.Through.List[0].Addr + "]"
	}
	polarity := ""
	if strings.HasSuffix(from, ".pos") || strings.HasSuffix(to, ".pos") {
		polarity = `"positive"`
	}
	pairs := [][2]string{{"from", from}, {"to", to}, {"polarity", polarity}, {"size", size}, {"length", text(whole(metres), "m")}, {"insulation", insulation}, {"voltage_rating", volts},
		{"bundle", bundle}, {"through", through}}
	return "conductor \"" + name + "\" {\n" + attrs("  ", append(pairs, kind(like)...)...) + "}\n"
}

// kind is what a conductor is made of and belongs to: a piece of it is no other.
func kind(c *schema.Conductor) (out [][2]string) {
	for _, x := range []struct {
		name string
		of   schema.Text
	}{{"material", c.Material}, {"stranding", c.Stranding}} {
		if x.of.Set {
			out = append(out, [2]string{x.name, `"` + x.of.Value + `"`})
		}
	}
	if c.Parallel.Or(1) > 1 {
		out = append(out, [2]string{"parallel", count(c.Parallel.Value)})
	}
	for _, x := range []struct {
		name string
		of   schema.Flag
	}{{"sheathed", c.Sheathed}, {"cranking", c.Cranking}} {
		if x.of.True() {
			out = append(out, [2]string{x.name, "true"})
		}
	}
	if c.PartOf.Set {
		out = append(out, [2]string{"part_of", c.PartOf.Addr})
	}
	return out
}

// compartment is the space of the part that a reference names, "" where the plan does not say.
func compartment(p *lint.Pass, at schema.Ref) string {
	var r schema.Ref
	switch x := p.Plan.Block(at.Addr).(type) {
	case *schema.Switch:
		r = x.Compartment
	case *schema.Fuse:
		r = x.Compartment
	case *schema.Bus:
		r = x.Compartment
	case *schema.Connector:
		r = x.Compartment
	case *schema.Converter:
		r = x.Compartment
	case *schema.Load:
		r = x.Compartment
	case *schema.Source:
		r = x.Compartment
	}
	return r.Addr
}

// batteryOf is the small battery that is offered for what must work alone: capacity in Ah, its charge limit
// a quarter of it in A. Common practice.
const batteryOf = 12

// SmallBattery offers a small fixed battery of its own to the nearest device upstream of a load.
func SmallBattery(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, l := range head(about[*schema.Load](p, v)) {
		for i := range p.Net.Loads {
			if n, ok := p.Circuit.Nominal(p.Net.Loads[i].Hot); p.Net.Loads[i].Addr == l.Addr && ok && n.Value > sameVolts*12 {
				return nil // there is none of those volts to be had off the shelf
			}
		}
		for _, t := range taps(p, true, l.Addr) {
			f, ok := t.of.(*schema.Fuse)
			if !ok || t.attr != "on" {
				continue
			}
			name := fresh(p, "source", bare(f.Addr)+"_battery")
			body := "source \"" + name + "\" {\n" + attrs("  ", [2]string{"kind", `"battery"`}, [2]string{"chemistry", `"agm"`}, [2]string{"voltage", `"12 V"`},
				[2]string{"capacity", text(batteryOf, "Ah")}, [2]string{"charge_limit", text(batteryOf/4, "A")}, [2]string{"compartment", beside(p, t.at)}) + "}\n"
			out = append(out, lint.Proposal{
				Do:      sentence("Give %s a small fixed battery of its own, with %s at it.", lint.Quote(l), lint.Quote(f)),
				Changes: []lint.Change{lint.Set(f.Addr, "on", "source."+name), {At: f.Addr, Block: body}},
				Sources: []string{"capacity and charge limit: " + practice},
				Part:    "It needs charge: on the bench before each trip, or by a charger of its own from the tow feed.",
			})
			break
		}
	}
	return out
}

// beside is the space of a part, or of the first battery aboard where the plan does not say.
func beside(p *lint.Pass, at schema.Ref) string {
	if s := compartment(p, at); s != "" {
		return s
	}
	for _, s := range p.Plan.Sources {
		if s.Kind.Value == "battery" && s.Role.Value != "starting" && s.Compartment.Set && !s.Removable.True() {
			return s.Compartment.Addr
		}
	}
	return ""
}
