package lifesafety

import (
	"fmt"
	"math"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var bilgePumpBehindSwitch = &lint.Rule{
	ID:      "life-safety/bilge-pump-behind-switch",
	Claim:   "Leave the boat with the switch off and the bilge pump is off too.",
	Words:   []lint.Severity{lint.Warning, lint.Notice},
	Harm:    true,
	Subject: "bilge pump; system of a boat",
	When: "A load of kind `bilge-pump` has no power in some state at rest with a battery aboard, people aboard or not, its own `control` switch apart; or some way to it has no device at " +
		"or below its maker's `max_fuse`; or a day of its duty takes more than what feeds it holds, with nothing charging. In a plan graded for boats without a bilge pump: notice.",
	Why: "The boat fills while nobody is there, and sinks at its berth: warning. Where people are aboard as well and the pump is marked life-safety, " +
		"life-safety/alarm-can-be-switched-off says danger.",
	Numbers: "A day of duty is the pump's current times `hours_per_day`, or 24 h where a day of running without a break fits too. What a battery holds is its capacity times `usable`, left out: " +
		"half for lead-acid, 80 % for lithium. The least battery that feeds it alone in some state counts.",
	Not: "Whether the pump is large enough; a high-water alarm, which is an alarm like any other; open boats that are stored with the plug out: a state nobody is to be asked about is kept out by an " +
		"interlock. The fuse's distance from the battery is overcurrent/unprotected-run's, volts at the pump conductor/voltage-drop's.",
	Offer: "A feed straight from the battery with its own fuse of the maker's size; a manual override at the helm from another feed.",
	Meter: "All switches off, lift the float: it pumps.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-11 11.6.1.2.1", Standing: lint.Read, For: []string{"us-boat"}, Note: "bilge pumps may bypass the battery switch; read as quoted in an article"},
		{Ref: "inspection scheme for UK inland boats, battery master switch", Standing: lint.Read, For: []string{"iso-boat"}, Note: "pumps may bypass the master switch where they are protected on their own"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "an automatic pump works with every switch off; owners report bilges full behind an open one"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerDevice, remedy.DeviceAhead, remedy.OtherFeed},
	Folds:  []string{"life-safety/one-cutoff-takes-all", "switching/off-but-live", "conductor/voltage-drop"},
	Since:  "0.1",
	Run:    bilgePumps,
}

func bilgePumps(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Loads {
		if p.Net.Loads[i].Kind.Value == "bilge-pump" {
			out = append(out, newPump(p, i).verdicts()...)
		}
	}
	if p.Plan.Graded("us-boat") || p.Plan.Graded("iso-boat") {
		v := lint.Verdict{Subject: p.Plan.System, Outcome: lint.Holds, Word: lint.Notice, Cause: "no pump"}
		if len(out) == 0 {
			v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: p.Plan.System.Addr, Attribute: "a bilge pump"}}
			v.Message = "The plan is of a boat and has no bilge pump: a decked boat needs one."
		}
		out = append(out, v)
	}
	return out
}

// pump is one bilge pump with the states in which it is dark and has power.
type pump struct {
	p         *lint.Pass
	l         *network.Load
	i         int
	dark, fed []*explore.View
	complete  bool
}

func newPump(p *lint.Pass, i int) *pump {
	u := &pump{p: p, l: &p.Net.Loads[i], i: i}
	views, complete := p.Space.Views(supplyOf(p.Net, u.l), p.Space.About(p.Space.Closed(explore.All(), u.l.Hot, u.l.Ret), u.l.Hot, u.l.Ret))
	u.complete = complete
	for _, v := range views {
		if v.Transit != nil || !v.HasLoad(i) || !batteryAboard(p.Net, v) || choice(p.Net, v, u.l.Load) {
			continue
		}
		if v.Live(nil, nil).Feeds(u.l.Port) {
			u.fed = append(u.fed, v)
		} else {
			u.dark = append(u.dark, v)
		}
	}
	return u
}

// batteryAboard says whether some battery that can feed the zone is there; where none can, it is.
func batteryAboard(n *network.Network, v *explore.View) bool {
	any := false
	for _, i := range v.Zone.Sources {
		if n.Sources[i].Kind.Value != "battery" {
			continue
		}
		if any = true; v.HasSource(i) {
			return true
		}
	}
	return !any
}

func (u *pump) verdicts() []lint.Verdict {
	if u.l.OwnBattery.True() {
		return []lint.Verdict{{Subject: u.l.Load, Outcome: lint.Holds, Cause: "path"}}
	}
	return []lint.Verdict{u.path(), u.device(), u.day()}
}

func (u *pump) path() lint.Verdict {
	v := lint.Verdict{Subject: u.l.Load, Outcome: lint.Holds, Word: lint.Warning, Cause: "path"}
	switch {
	case len(u.dark) > 0:
		w := smallest(u.p.Net, u.dark, u.fed, func(x *explore.View) bool { return !x.Live(nil, nil).Feeds(u.l.Port) })
		v.Outcome, v.State = lint.Violated, w.view.State(w.kept)
		v.Message = lint.Quote(u.l.Load) + " has no power in any state"
		if len(u.fed) > 0 {
			v.Message = lint.Quote(u.l.Load) + " has no power " + w.ways(u.p)
		}
		v.Message += ": the boat fills."
	case !u.complete:
		return lint.Unfinished(u.l.Load, lint.Warning)
	}
	return v
}

// device asks whether every way to the pump has a device of its maker's size.
func (u *pump) device() lint.Verdict {
	v := lint.Verdict{Subject: u.l.Load, Outcome: lint.Holds, Word: lint.Warning, Cause: "device"}
	g, at := u.guard()
	if !g.Reached {
		return v
	}
	if !u.l.MaxFuse.Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: u.l.Addr, Attribute: "max_fuse"}}
		v.Message = fmt.Sprintf("The largest fuse that the maker of %s allows is not written.", lint.Quote(u.l.Load))
		return v
	}
	most := derive.Read("the maker's largest fuse of "+lint.Quote(u.l.Load), "Imax", u.l.MaxFuse.Value, "A", u.l.Addr, "max_fuse", u.l.MaxFuse.Range)
	v.Numbers = []derive.Number{most}
	switch {
	case math.IsInf(g.Rating, 1) && len(g.Unknown) > 0:
		x := u.p.Net.Edges[g.Unknown[0]].Fuse
		v.Outcome, v.Numbers, v.Missing = lint.NotProven, nil, []lint.Missing{{Subject: x.Addr, Attribute: "rating"}}
		v.Message = fmt.Sprintf("The rating of %s is not written; the maker of %s allows %s.", lint.Quote(x), lint.Quote(u.l.Load), most.Text())
	case math.IsInf(g.Rating, 1):
		v.Outcome, v.State = lint.Violated, at.Witness(g.Path.Edges())
		v.Message = fmt.Sprintf("%s is fed with no overcurrent device; its maker allows %s at most.", lint.Quote(u.l.Load), most.Text())
	default:
		x := u.p.Net.Edges[g.Device].Fuse
		v.Numbers = append(v.Numbers, derive.Read("rating of "+lint.Quote(x), "In", x.Rating.Value, "A", x.Addr, "rating", x.Rating.Range))
		if g.Rating > u.l.MaxFuse.Value*(1+1e-9) {
			v.Outcome, v.State, v.Related = lint.Violated, at.Witness(g.Path.Edges()), []string{x.Addr}
			v.Message = fmt.Sprintf("%s is fed through %s (%s); its maker allows %s at most: a pump that jams burns.", lint.Quote(u.l.Load), lint.Quote(x), v.Numbers[1].Text(), most.Text())
		}
	}
	return v
}

// guard is the least protected way to the pump, over all states in which it has power.
func (u *pump) guard() (worst explore.Guard, at *explore.View) {
	for _, v := range u.fed {
		var from []network.NodeID
		for _, i := range v.Zone.Sources {
			if u.p.Net.Sources[i].Kind.Value == "battery" && v.HasSource(i) {
				from = append(from, u.p.Net.Sources[i].Hot)
			}
		}
		for _, i := range v.Zone.Outputs {
			if v.HasConverter(i) {
				from = append(from, u.p.Net.Converters[i].Out.Hot)
			}
		}
		for _, id := range from {
			if !v.Joined(id, u.l.Hot) {
				continue
			}
			if g := v.Guards(id).At(u.l.Hot); g.Reached && (!worst.Reached || g.Rating > worst.Rating) {
				worst, at = g, v
			}
		}
	}
	return worst, at
}

const day = 24 * 3600.0 // s

// day asks whether the least battery that feeds the pump lasts for a day of its duty.
func (u *pump) day() lint.Verdict {
	v := lint.Verdict{Subject: u.l.Load, Outcome: lint.Holds, Word: lint.Warning, Cause: "day"}
	battery, at := u.least()
	if battery == nil {
		return v
	}
	amps, lacks := u.p.Circuit.LoadCurrent(u.i)
	charge, also := u.p.Circuit.Capacity(battery)
	if lacks = append(lacks[:len(lacks):len(lacks)], also...); len(lacks) > 0 {
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("Whether %s lasts for a day of %s is not known: %s is not written.", lint.Quote(battery), lint.Quote(u.l.Load), lint.Lacking(lacks[0], false))
		return v
	}
	holds := derive.Compute("what "+lint.Quote(battery)+" gives", "Q", charge.Value*float64(battery.Parallel.Or(1))*usable(battery).Value, "Ah", "C x usable", charge, usable(battery))
	hours := derive.Assume("running in a day of "+lint.Quote(u.l.Load), "t", day, "s", u.l.Addr, "hours_per_day", "without a break, the most there is")
	if u.l.HoursPerDay.Set {
		hours = derive.Read("running in a day of "+lint.Quote(u.l.Load), "t", u.l.HoursPerDay.Value, "s", u.l.Addr, "hours_per_day", u.l.HoursPerDay.Range)
	}
	takes := derive.Compute("a day of "+lint.Quote(u.l.Load), "Qd", amps.Value*hours.Value/3600, "Ah", "Qd = I x t", amps, hours)
	v.Numbers = []derive.Number{holds, takes}
	switch {
	case takes.Value <= holds.Value:
		return v
	case !u.l.HoursPerDay.Set:
		v.Outcome, v.Missing, v.Numbers = lint.NotProven, []lint.Missing{{Subject: u.l.Addr, Attribute: "hours_per_day"}}, []derive.Number{holds}
		v.Message = fmt.Sprintf("How long %s runs in a day is not written; running without a break it empties %s (%s) in less than a day.", lint.Quote(u.l.Load), lint.Quote(battery), holds.Text())
		return v
	}
	edges, sources := at.Live(nil, nil).Way(u.l.Port)
	v.Outcome, v.State, v.Related = lint.Violated, at.Witness(edges, sources...), []string{battery.Addr}
	v.Message = fmt.Sprintf("A day of %s takes %s, and %s gives %s: with nothing charging it is empty before a day is over.", lint.Quote(u.l.Load), takes.Text(), lint.Quote(battery), holds.Text())
	return v
}

// least is the smallest battery that feeds the pump in some state, all that do so together left out of the sum.
func (u *pump) least() (battery *schema.Source, at *explore.View) {
	size := func(s *schema.Source) float64 {
		if n, lacks := u.p.Circuit.Capacity(s); len(lacks) == 0 {
			return n.Value * float64(s.Parallel.Or(1)) * usable(s).Value
		}
		return 0
	}
	for _, v := range u.fed {
		_, sources := v.Live(nil, nil).Way(u.l.Port)
		var largest *schema.Source // of those that are joined, the largest alone stands for all
		for _, i := range v.Zone.Sources {
			s := &u.p.Net.Sources[i]
			feeds := v.HasSource(i) && v.Joined(s.Hot, u.l.Hot)
			for _, k := range sources {
				feeds = feeds || k == i
			}
			if feeds && s.Kind.Value == "battery" && (largest == nil || size(s.Source) > size(largest)) {
				largest = s.Source
			}
		}
		if largest != nil && (battery == nil || size(largest) < size(battery)) {
			battery, at = largest, v
		}
	}
	return battery, at
}

// usable is the share of a battery that may be used.
func usable(s *schema.Source) derive.Number {
	name := "usable share of " + lint.Quote(s)
	switch {
	case s.Usable.Set:
		return derive.Read(name, "usable", s.Usable.Value, "", s.Addr, "usable", s.Usable.Range)
	case lithium(s):
		return derive.Assume(name, "usable", 0.8, "", s.Addr, "usable", "common practice")
	}
	return derive.Assume(name, "usable", 0.5, "", s.Addr, "usable", "common practice")
}
