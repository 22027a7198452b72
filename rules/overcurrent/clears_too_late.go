package overcurrent

import (
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

var clearsTooLate = &lint.Rule{
	ID:      "overcurrent/clears-too-late",
	Claim:   "A short at the far end does not draw enough to open the device before the wire burns.",
	Words:   []lint.Severity{lint.Warning},
	Harm:    true,
	Subject: "conductor",
	When: "In some state in which a battery feeds a conductor through devices, a bolted short at the conductor's far end passes more than the conductor's ampacity, and the devices on " +
		"the way take longer to open than the conductor withstands it, or may never open.",
	Why: "Long thin runs and tired batteries glow rather than blow: the device is there, is the right size, and does not open. Warning: it takes a short far down the run.",
	Numbers: "Least fault: batteries empty behind their high resistance, wires 20 % above 20 C, joints counted, both runs, solved for the whole network; once more for the most. A run is guarded " +
		"where each way to it has a device rated no more than the ampacity and passes at least 1.35 times its rating. Else the time to open, by the device's own `curve` or the published or " +
		"assumed gates of its kind, slowest, straight in log-log, is compared with the time that the conductor withstands: (k S)^2 over I^2, k after IEC 60364-4-43. Beyond 5 s, where heat has time to spread, the " +
		"device has to be within that time by its own curve. A device is taken never to open below 1.35 times its rating. Where a battery's high resistance is guessed, the run has to be in order at twice the guess too.",
	Not: "A run whose ampacity is above the most that the fault can be. A run that some battery feeds with no device at all (overcurrent/unprotected-run). States with limited sources alone " +
		"(overcurrent/limited-source-cannot-clear). Faults with a resistance of their own.",
	Offer: "A smaller device, a bigger wire, or a device of its own for that wire.",
	Meter: "The loop's resistance from the drop at a known load, dV / I; least battery volts over it give the least fault current.",
	Cites: []lint.Citation{
		{Ref: "IEC 60364-4-43", Standing: lint.FromMemory, Note: "disconnection before the conductor's limit, I2t <= k2S2; overload coordination"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a device opens on a short at the far end of its run"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerDevice, remedy.ThickerWire, remedy.ShorterRun, remedy.DeviceAhead},
	Since:  "0.1",
	Run:    clearTooLate,
}

// adiabatic is the time in s up to which a conductor's withstand holds as it stands.
const adiabatic = 5

func clearTooLate(p *lint.Pass) []lint.Verdict {
	c := &clearing{p: p, worst: map[string]*cleared{}, unfinished: map[string]bool{}}
	eachSection(p, explore.All(), c.look)
	var out []lint.Verdict
	for _, w := range p.Plan.Conductors {
		v := lint.Verdict{Subject: w, Outcome: lint.Holds, Word: lint.Warning}
		if x := c.worst[w.Addr]; x != nil {
			x.say(p, &v)
		}
		if v.Outcome == lint.Holds && c.unfinished[w.Addr] {
			v = lint.Unfinished(w, lint.Warning)
		}
		out = append(out, v)
	}
	return out
}

// clearing goes over the sections.
type clearing struct {
	p          *lint.Pass
	worst      map[string]*cleared // by conductor
	unfinished map[string]bool
}

// cleared is what a short at one end of a conductor does.
type cleared struct {
	section *circuit.Section
	wire    *schema.Conductor
	edge    int
	hop     explore.Hop
	short   *circuit.Short
	amps    float64 // A in the conductor
	device  int     // the device that opens last; -1 where every way is guarded, or the wire carries it
	guarded bool    // every way is
	seconds float64 // that it takes from the time that the others have opened; +Inf where it may not
	opened  []int   // the others
	held    derive.Number
	iz      derive.Number // Kind 0 where it is not known
	outcome lint.Outcome
	lacks   []lint.Missing
}

func (c *clearing) look(s *circuit.Section, unfinished bool) {
	if len(s.Anew) == 0 {
		return
	}
	least := c.p.Circuit.Faults(s, circuit.Least, true)
	if len(elements(c.p, s.Edges)) == 0 || !least.Fed() && least.Lacks() == nil {
		return
	}
	cases := []*circuit.Faults{least, c.p.Circuit.Faults(s, circuit.Prospective, true), c.p.Circuit.FaultsWith(s, circuit.Least, 2)}
	for _, e := range s.Anew {
		x := &c.p.Net.Edges[e]
		if x.Kind != network.Wire {
			continue
		}
		c.unfinished[x.Addr] = c.unfinished[x.Addr] || unfinished
		for _, h := range ends(x) {
			if h.Edge = e; slices.Contains(s.Nodes, h.To) && slices.Contains(s.Nodes, h.From) {
				c.end(cases, h)
			}
		}
	}
}

// end judges a short at one end: at the least, then at the most, then at the least with twice the guessed
// resistances.
func (c *clearing) end(cases []*circuit.Faults, h explore.Hop) {
	x := c.judge(cases[0], h)
	if x == nil {
		return
	}
	if x.outcome == lint.Holds && !x.guarded {
		if most := c.judge(cases[1], h); most != nil && most.outcome != lint.Holds {
			x = most
		}
	}
	if x.outcome == lint.Holds {
		if guessed := c.p.Circuit.Guessed(x.short.Number(-1)); guessed != nil {
			if weak := c.judge(cases[2], h); weak == nil || weak.outcome != lint.Holds {
				x.outcome, x.lacks = lint.NotProven, guessed
			}
		}
	}
	if old := c.worst[x.wire.Addr]; old == nil || x.worse(old) {
		c.worst[x.wire.Addr] = x
	}
}

// judge answers for one short; nil where nothing comes through the conductor, or a battery feeds it with
// no device.
func (c *clearing) judge(f *circuit.Faults, h explore.Hop) *cleared {
	s := f.Section
	x := &cleared{section: s, wire: c.p.Net.Edges[h.Edge].Wire, edge: h.Edge, hop: h, device: -1, outcome: lint.Holds}
	short, lacks, ok := f.At(h.To)
	if ok {
		x.short, x.amps = short, towards(c.p, short, h.Edge, h.To)
		if x.amps <= 1e-6*short.Amps() {
			return nil
		}
	}
	ways := newApproach(c.p, f, h)
	if ways.bare() || !ways.open(func(int) bool { return false }) {
		return nil
	}
	if iz, noSize := c.p.Circuit.Ampacity(x.wire); len(noSize) == 0 {
		x.iz = iz
	}
	switch held, m := c.p.Circuit.Withstand(x.wire); {
	case lacks != nil || !ok:
		if !ok && lacks == nil {
			return nil
		}
		x.outcome, x.lacks = lint.NotProven, lacks
	case x.iz.Kind != 0 && x.amps <= x.iz.Value:
	case x.iz.Kind != 0 && ways.guarded(short, x.amps, x.iz.Value):
		x.guarded = true
	case m != nil:
		x.outcome, x.lacks = lint.NotProven, m
	default:
		x.held = held
		x.race(ways)
	}
	return x
}

// race lets one device after another open, each by its slowest curve and what it has borne before, until
// nothing feeds the conductor any more, or no more than it carries.
func (x *cleared) race(w *approach) {
	borne := map[int]float64{} // by device, the share of its time that has passed
	elapsed, spent := 0.0, 0.0
	for {
		d, wait := w.next(x.short, borne)
		if x.device, x.seconds = d, wait; math.IsInf(wait, 1) {
			x.outcome = lint.Violated
			break
		}
		elapsed, spent = elapsed+wait, spent+x.amps*x.amps*wait
		if spent > x.held.Value {
			x.outcome = lint.Violated
			break
		}
		if w.before(d) {
			x.opened = append(x.opened, d)
		}
		if w = w.after(d); !w.open(func(int) bool { return false }) {
			break
		}
		short, _, ok := w.f.At(w.h.To)
		if !ok {
			break
		}
		amps := towards(w.p, short, w.h.Edge, w.h.To)
		if amps <= 1e-6*x.amps || x.iz.Kind != 0 && (amps <= x.iz.Value || w.guarded(short, amps, x.iz.Value)) {
			break
		}
		x.short, x.amps = short, amps
	}
	x.doubt(w, elapsed)
}

// doubt is what keeps a race from being decided: a device without a rating, or a time beyond which a
// conductor's withstand does not hold.
func (x *cleared) doubt(w *approach, elapsed float64) {
	if x.outcome == lint.Violated {
		for _, d := range elements(w.p, w.f.Section.Edges) {
			if u := w.p.Net.Edges[d].Fuse; !u.Rating.Set && math.Abs(x.short.Through(d)) > 1e-6*x.short.Amps() {
				x.outcome, x.lacks = lint.NotProven, ratingLess(u)
				return
			}
		}
	}
	if x.device < 0 {
		x.outcome = lint.Holds // it comes by no device after all
		return
	}
	f := w.p.Net.Edges[x.device].Fuse
	if x.outcome == lint.Holds && elapsed > adiabatic && !f.Curve.Set {
		x.outcome, x.lacks = lint.NotProven, []lint.Missing{{Subject: f.Addr, Attribute: "curve"}}
	}
}

func (x *cleared) worse(old *cleared) bool {
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	if a, b := weight[x.outcome], weight[old.outcome]; a != b {
		return a > b
	}
	if (x.device >= 0) != (old.device >= 0) {
		return x.device >= 0
	}
	if x.device >= 0 && x.seconds != old.seconds {
		return x.seconds > old.seconds*(1+1e-9)
	}
	return old.short != nil && (x.short == nil || x.amps < old.amps*(1-1e-9))
}

func (x *cleared) say(p *lint.Pass, v *lint.Verdict) {
	v.Outcome, v.Missing = x.outcome, x.lacks
	if x.short == nil || x.outcome == lint.NotProven && (len(x.lacks) == 0 || x.lacks[0].Attribute != "resistance" && x.lacks[0].Attribute != "curve") {
		if x.outcome == lint.NotProven {
			v.Message = fmt.Sprintf("Whether a short at the far end of %s opens a device in time cannot be told.", lint.Quote(x.wire))
		}
		return
	}
	v.Numbers = lint.Known(nil, x.iz, x.short.Number(x.edge))
	if x.device < 0 {
		if x.outcome == lint.NotProven {
			v.Message = fmt.Sprintf("A short at the far end of %s opens the device that guards it only if a guessed battery resistance is right.", lint.Quote(x.wire))
		}
		return
	}
	f := p.Net.Edges[x.device].Fuse
	through := math.Abs(x.short.Through(x.device))
	opens, _ := circuit.Opens(f, through)
	holds := derive.Compute("time that "+lint.Quote(x.wire)+" withstands it", "tw", x.held.Value/(x.amps*x.amps), "s", "tw = k2S2 / I^2", x.held, x.short.Number(x.edge))
	if f.Rating.Set {
		v.Numbers = append(v.Numbers, rated(f))
	}
	v.Numbers = append(v.Numbers, holds)
	if !math.IsInf(x.seconds, 1) {
		v.Numbers = append(v.Numbers, opens)
	}
	v.Related = []string{f.Addr}
	what := lint.Quote(x.wire)
	if x.wire.Size.Set && x.wire.Length.Set {
		what = fmt.Sprintf("%s (%s, %s)", what, x.wire.Size.Size, derive.Text(x.wire.Length.Value, "m"))
	}
	switch {
	case x.outcome == lint.NotProven && x.lacks[0].Attribute == "curve":
		v.Message = fmt.Sprintf("%s takes up to %s to open on a short at the far end of %s, too long to count on the wire's short-time withstand.", lint.Quote(f), opens.Text(), what)
	case x.outcome == lint.NotProven:
		v.Message = fmt.Sprintf("A short at the far end of %s opens %s in time only if a guessed battery resistance is right.", what, lint.Quote(f))
	case x.outcome == lint.Violated:
		v.State, v.Path = x.short.Witness(), route(p, x.section, x.short)
		draws := fmt.Sprintf("A short at the far end of %s draws %s through it", what, derive.Text(x.amps, "A"))
		if len(x.opened) > 0 {
			draws += " once " + lint.And(x.names(p)...) + " has opened"
		}
		if math.IsInf(x.seconds, 1) {
			v.Message = fmt.Sprintf("%s, on which %s (%s) may stay closed for good; the wire withstands that for %s.", draws, lint.Quote(f), rated(f).Text(), holds.Text())
			return
		}
		v.Message = fmt.Sprintf("%s; %s (%s) takes up to %s to open, and the wire withstands that for %s.", draws, lint.Quote(f), rated(f).Text(), opens.Text(), holds.Text())
	}
}

func (x *cleared) names(p *lint.Pass) []string {
	var out []string
	for _, d := range x.opened {
		out = append(out, lint.Quote(p.Net.Edges[d].Fuse))
	}
	return out
}
