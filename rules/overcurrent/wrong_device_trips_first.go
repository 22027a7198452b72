package overcurrent

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var wrongDeviceTripsFirst = &lint.Rule{
	ID:      "overcurrent/wrong-device-trips-first",
	Claim:   "A fault in one circuit may take the power of another that is needed.",
	Words:   []lint.Severity{lint.Caution, lint.Warning},
	Subject: "fuse",
	When: "In some state a bolted short right behind a device passes another device ahead of it, which opens first or may do so, and that other device also feeds a life-safety or " +
		"navigation load that then has no other supply, or the converter that alone feeds one.",
	Why: "Nothing burns, but what warns goes silent just when a fault has happened: caution; warning where the load is for life safety and needed in that state.",
	Numbers: "Two devices with a `curve` of their own are compared at the prospective fault that passes each. Fuses of one kind: the one ahead is rated at least twice the other. Fuses of two kinds, which " +
		"differ in speed: at least four times, and below twice it is not. A device ahead that the fault drives to less than 1.35 times its rating stays closed.",
	Not:   "Loads on the faulted circuit itself. Loads behind a converter, where something else may feed them too. Loads with a battery of their own. A breaker without its curve is not proven. A battery's own cut-off that opens first.",
	Offer: "A supply of its own for the load that is needed, ahead of the shared device; a smaller device in the branch; the makers' curves.",
	Meter: "None; by curves. What else goes dark when this device is opened by hand shows what it is shared with.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-11", Standing: lint.Read, Note: "tells main from branch devices; read as quoted", For: []string{"us-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "fuses of one class are selective at 2:1"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerDevice, remedy.OtherFeed},
	Since:  "0.1",
	Run:    wrongDevicesTripFirst,
}

// Ratios of ratings at which two fuses are selective: of one kind, and of two.
const (
	selective      = 2
	selectiveMixed = 4
)

func wrongDevicesTripFirst(p *lint.Pass) []lint.Verdict {
	t := &tripping{p: p, worst: map[*schema.Fuse]*tripped{}, unfinished: map[*schema.Fuse]bool{}}
	t.walk(explore.All(), lint.Caution, func(l *schema.Load) bool { return l.Critical.Set && l.Critical.Value != "none" })
	done := map[string]bool{}
	for _, l := range p.Plan.Loads {
		k := fmt.Sprint(addresses(l.NeededIn))
		if l.Critical.Value != "life-safety" || done[k] {
			continue
		}
		done[k] = true
		t.walk(p.Space.OneOf(l.NeededIn), lint.Warning, func(o *schema.Load) bool {
			return o.Critical.Value == "life-safety" && fmt.Sprint(addresses(o.NeededIn)) == k
		})
	}
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		out = append(out, t.verdict(f))
	}
	return out
}

func addresses(list schema.Refs) []string {
	var out []string
	for _, r := range list.List {
		out = append(out, r.Addr)
	}
	slices.Sort(out)
	return out
}

// tripped is a short behind a device, and a device ahead of it that may open first.
type tripped struct {
	section *circuit.Section
	short   *circuit.Short
	device  int
	ahead   int
	dark    []dependent // what the one ahead takes with it
	word    lint.Severity
	outcome lint.Outcome
	lacks   []lint.Missing
	known   bool    // what passes them is known
	ratio   float64 // of ratings, or of times; less is worse
}

// dependent is a load that counts, and where it hangs in a section: at its own terminal, or at the input
// of the converter that alone feeds it.
type dependent struct {
	load int
	at   network.NodeID
}

// tripping goes over the sections.
type tripping struct {
	p          *lint.Pass
	worst      map[*schema.Fuse]*tripped
	unfinished map[*schema.Fuse]bool
}

func (t *tripping) walk(f explore.Filter, word lint.Severity, counts func(*schema.Load) bool) {
	eachSection(t.p, f, func(s *circuit.Section, unfinished bool) {
		loads := t.loads(s, counts)
		devices := elements(t.p, s.Edges)
		if len(loads) == 0 || len(devices) < 2 {
			return
		}
		for _, d := range devices {
			f := t.p.Net.Edges[d].Fuse
			t.unfinished[f] = t.unfinished[f] || unfinished
		}
		t.look(s, devices, loads, word)
	})
}

// loads are those of a section, and those behind its converters, that count and have no battery of their own.
func (t *tripping) loads(s *circuit.Section, counts func(*schema.Load) bool) []dependent {
	var out []dependent
	add := func(i int, at network.NodeID) {
		l := &t.p.Net.Loads[i]
		if counts(l.Load) && !l.OwnBattery.True() && slices.Contains(s.Nodes, at) && (l.Present < 0 || s.View.At(l.Present) != 0) {
			out = append(out, dependent{i, at})
		}
	}
	for i := range t.p.Net.Loads {
		add(i, t.p.Net.Loads[i].Hot)
	}
	for _, k := range s.Inputs {
		for _, i := range t.p.Net.Served(k) {
			add(i, t.p.Net.Converters[k].In.Hot)
		}
	}
	return out
}

func (t *tripping) look(s *circuit.Section, devices []int, loads []dependent, word lint.Severity) {
	most := t.p.Circuit.Faults(s, circuit.Prospective, false)
	ports := supplies(t.p, s)
	dark, some := t.dark(s, devices, ports, loads)
	if !some {
		return
	}
	for _, d := range devices {
		for _, h := range ends(&t.p.Net.Edges[d]) {
			h.Edge = d
			short, lacks, ok := most.At(h.To)
			if !ok && lacks == nil || ok && towards(t.p, short, d, h.To) <= 1e-6*short.Amps() {
				continue
			}
			for _, u := range devices {
				others := without(dark[u], dark[d])
				if u == d || len(others) == 0 || ok && math.Abs(short.Through(u)) <= 1e-6*short.Amps() || !ok && !t.ahead(s, u, h, ports) {
					continue
				}
				t.keep(&tripped{section: s, short: short, device: d, ahead: u, dark: others, word: word, outcome: lint.Holds}, lacks)
			}
		}
	}
}

// ahead says whether a device stands on every way to another: what is known of a fault whose current is not.
func (t *tripping) ahead(s *circuit.Section, u int, h explore.Hop, ports []network.Port) bool {
	fed := func(stops func(int) bool) bool {
		return reaches(spread(t.p, s, h.From, func(e int) bool { return e == h.Edge || stops(e) }), ports)
	}
	return fed(func(int) bool { return false }) && !fed(func(e int) bool { return e == u })
}

// dark lists, by device, the loads that lose every supply when it opens; some says that there are any.
func (t *tripping) dark(s *circuit.Section, devices []int, ports []network.Port, loads []dependent) (by map[int][]dependent, some bool) {
	var from []network.NodeID
	for _, x := range ports {
		for _, id := range []network.NodeID{x.Hot, x.Ret} {
			if id != network.None && !t.p.Net.Nodes[id].Return {
				from = append(from, id)
			}
		}
	}
	fed := func(opened int) map[network.NodeID]bool {
		return spreadAll(t.p, s, from, func(e int) bool { return e == opened })
	}
	by = map[int][]dependent{}
	all := fed(-1)
	for _, d := range devices {
		left := fed(d)
		for _, x := range loads {
			if all[x.at] && !left[x.at] {
				by[d], some = append(by[d], x), true
			}
		}
	}
	return by, some
}

func without(list, but []dependent) []dependent {
	var out []dependent
	for _, x := range list {
		if !slices.Contains(but, x) {
			out = append(out, x)
		}
	}
	return out
}

// keep compares two devices and remembers the worst.
func (t *tripping) keep(x *tripped, lacks []lint.Missing) {
	x.compare(t.p, lacks)
	f := t.p.Net.Edges[x.device].Fuse
	if old := t.worst[f]; old == nil || x.worse(old) {
		t.worst[f] = x
	}
}

func (x *tripped) compare(p *lint.Pass, lacks []lint.Missing) {
	d, u := p.Net.Edges[x.device].Fuse, p.Net.Edges[x.ahead].Fuse
	if missing := append(ratingLess(u), ratingLess(d)...); missing != nil {
		x.outcome, x.lacks = lint.NotProven, missing
		return
	}
	x.ratio, x.known = u.Rating.Value/d.Rating.Value, len(lacks) == 0
	if x.short != nil {
		lacks = slices.Concat(lacks, x.short.Vague())
	}
	breaker := u.Kind.Value == "breaker" || d.Kind.Value == "breaker"
	one := u.Kind.Set && u.Kind.Value == d.Kind.Value
	switch {
	case x.known && x.short.Amps() < circuit.MayCarry(u):
	case u.Curve.Set && d.Curve.Set:
		if len(lacks) > 0 {
			x.outcome, x.lacks = lint.NotProven, lacks
			return
		}
		first := circuit.StaysClosed(u, math.Abs(x.short.Through(x.ahead)))
		second, ok := circuit.OpensWithin(d, math.Abs(x.short.Through(x.device)))
		if x.ratio = first / second; !ok || x.ratio <= 1 {
			x.outcome = lint.Violated
		}
	case breaker:
		x.outcome, x.lacks = lint.NotProven, append(curveless(u), curveless(d)...)
	case x.ratio < selective:
		x.outcome = lint.Violated
	case !one && x.ratio < selectiveMixed:
		x.outcome, x.lacks = lint.NotProven, append(curveless(u), curveless(d)...)
	}
}

func curveless(f *schema.Fuse) []lint.Missing {
	if f.Curve.Set {
		return nil
	}
	return []lint.Missing{{Subject: f.Addr, Attribute: "curve"}}
}

func (x *tripped) worse(old *tripped) bool {
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	if by := cmp.Or(weight[x.outcome]-weight[old.outcome], int(x.word)-int(old.word)); by != 0 {
		return by > 0
	}
	return x.ratio < old.ratio*(1-1e-9)
}

func (t *tripping) verdict(f *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning}
	x := t.worst[f]
	switch {
	case x != nil && x.outcome != lint.Holds:
	case t.unfinished[f]:
		return lint.Unfinished(f, lint.Warning)
	case x == nil:
		return v
	}
	u := t.p.Net.Edges[x.ahead].Fuse
	v.Outcome, v.Word, v.Missing = x.outcome, x.word, x.lacks
	if f.Rating.Set && u.Rating.Set {
		v.Numbers = []derive.Number{rated(f), rated(u)}
	}
	if x.outcome == lint.Holds {
		return v
	}
	v.Cause, v.Group, v.Related = u.Addr, "with "+u.Addr, []string{u.Addr}
	var names []string
	for _, d := range x.dark {
		l := t.p.Net.Loads[d.load].Load
		names, v.Related = append(names, lint.Quote(l)), append(v.Related, l.Addr)
	}
	if x.outcome == lint.NotProven {
		v.Message = fmt.Sprintf("Whether a short behind %s opens it before %s, which also feeds %s, cannot be told.", lint.Quote(f), lint.Quote(u), lint.And(names...))
		return v
	}
	if x.short != nil {
		v.State, v.Path = x.short.Witness(), route(t.p, x.section, x.short)
	}
	if x.known && x.short.Vague() == nil {
		v.Numbers = append(v.Numbers, x.short.Number(x.ahead))
	}
	v.Message = fmt.Sprintf("A short behind %s (%s) may open %s (%s) first, which also feeds %s.",
		lint.Quote(f), rated(f).Text(), lint.Quote(u), rated(u).Text(), lint.And(names...))
	return v
}
