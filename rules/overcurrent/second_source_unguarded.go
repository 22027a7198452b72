package overcurrent

import (
	"cmp"
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
)

var secondSourceUnguarded = &lint.Rule{
	ID:      "overcurrent/second-source-unguarded",
	Claim:   "A wire is guarded against the source you thought of, but not against the other thing that can feed it.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "conductor that two sources can feed, or a converter alone",
	When: "A conductor can be fed by two sources, in one state or in different ones, and one of them that limits its own current reaches it with no overcurrent device between " +
		"while it can push more than the conductor carries. An output that does not limit, or an input that does not block reverse current, counts with what is behind it. " +
		"Or a supply or the output of a converter alone feeds it, on direct current, in the same way.",
	Why: "The device everybody points at opens, and the fault goes on being fed from the other end. Warning, since the current is limited; danger where a battery " +
		"stands behind a converter that neither limits nor blocks, with no device on the way.",
	Numbers: "What a source pushes into a short: array 1.25 x short-circuit current; alternator and supply 1.25 x rated; a converter that limits its `current_max`; shore and " +
		"generator their `short_circuit`. A self-limiting current within the conductor's ampacity is the only excuse, but for a device that guards the conductor at its end " +
		"within the practice's distance.",
	Not: "A battery that reaches a wire without a device near it is overcurrent/unprotected-run, and a device that is there but too big is overcurrent/oversize-device, " +
		"whichever source it faces. A wire that an array, an alternator or the mains alone can feed is left to the rules about those and to conductor/ampacity. " +
		"A return wire of its own is held against the device before what it brings home, by overcurrent/oversize-device; where no device is there, it is not asked. Converters of kind charger, load-center, inverter and diode are taken to block reverse current.",
	Offer: "A second device at the other source; a converter that blocks reverse current; a wire that carries what the limited source gives.",
	Meter: "Open the way to each source in turn and look for volts at the middle of the run with the others live.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(a)", Standing: lint.Read, Note: "every ungrounded current-carrying conductor is protected; read as good practice outside the boats it binds", For: []string{"us-boat"}},
		{Ref: "ISO 13297:2020 12.3", Standing: lint.Read, Note: "charging sources: a device within 1.8 m unless self-limiting; read in a preview", For: []string{"iso-boat"}},
		{Ref: "NFPA 70 690.9(A)", Standing: lint.Read, Note: "the device stands at the end that can give more; read in trade articles", For: []string{"us-rv", "cabin"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "every end that can feed gets its own device"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerOutput, remedy.BlocksReverse, remedy.ThickerWire, remedy.DeviceAtFeed, remedy.DeviceAhead},
	Folds:  []string{"overcurrent/limited-source-cannot-clear", "backfeed/load-center-feeds-back", "backfeed/reverse-through-converter"},
	Since:  "0.1",
	Run:    secondSources,
}

func secondSources(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, z := range p.Net.Zones {
		if a := newArea(p, z); a != nil {
			out = append(out, pairsIn(a)...)
		}
	}
	return out
}

// pair is a conductor with a feed that reaches it without a device, and another that reaches it at all.
type pair struct {
	*run
	push  push
	other feed
}

func pairsIn(a *area) []lint.Verdict {
	feeds := a.feeds()
	runs, reached, bare := bareWays(a, feeds)
	pushes := make([]push, len(feeds))
	for i, f := range feeds {
		pushes[i] = pushOf(a.p, f)
	}
	var found []*pair
	for _, e := range a.wires() {
		for i := range feeds {
			r := runs[way{e, i}]
			if o, ok := otherFeed(a.n, feeds, pushes, reached, e, i); r != nil && !bare[r.last()] && (ok || a.alone(feeds[i])) {
				found = append(found, &pair{r, pushes[i], o})
			}
		}
	}
	slices.SortStableFunc(found, func(x, y *pair) int { return cmp.Compare(len(x.way), len(y.way)) })
	var out []lint.Verdict
	for _, x := range found {
		out = append(out, x.judge())
	}
	if !a.complete && (len(feeds) > 1 || slices.ContainsFunc(feeds, a.alone)) {
		return unfinished(a, out)
	}
	return out
}

// alone says whether a feed is asked about where nothing else feeds a wire: a supply, or the output of a converter, of direct
// current. What limits itself opens no device, and a wire that bears less glows on.
func (a *area) alone(f feed) bool {
	return !a.n.Nodes[f.at].AC && (f.source < 0 && !f.reverse || f.source >= 0 && a.n.Sources[f.source].Kind.Value == "supply")
}

// unfinished says of every wire of which nothing was found that not all states were looked at.
func unfinished(a *area, found []lint.Verdict) []lint.Verdict {
	out := slices.DeleteFunc(found, func(v lint.Verdict) bool { return v.Outcome == lint.Holds })
	said := map[string]bool{}
	for _, v := range out {
		said[v.Subject.Header().Addr] = true
	}
	for _, e := range a.wires() {
		if w := a.n.Edges[e].Wire; !said[w.Addr] {
			said[w.Addr] = true
			out = append(out, lint.Unfinished(w, lint.Danger))
		}
	}
	return out
}

// way names a wire and a feed of an area.
type way struct{ edge, feed int }

// bareWays goes over all states: the runs by which feeds that are no batteries come to wires without
// a device, which wires each feed comes to at all, and the ends at which a battery comes to a wire
// without a device. What else comes in there lacks the same device, and that is said of the battery.
func bareWays(a *area, feeds []feed) (runs map[way]*run, reached map[way]bool, batteries map[explore.Hop]bool) {
	runs, reached, batteries = map[way]*run{}, map[way]bool{}, map[explore.Hop]bool{}
	wires := a.wires()
	for _, v := range a.views {
		cut := a.cut(v, nil)
		for i, f := range feeds {
			if !f.present(a.n, v) {
				continue
			}
			var bare *explore.Reach
			for _, e := range wires {
				if !v.Conducts(e) || !v.Joined(f.at, a.n.Edges[e].A) {
					continue
				}
				reached[way{e, i}] = true
				if x, _ := cut.ends(e); runs[way{e, i}] != nil || x != cut.at(f.at) {
					continue
				}
				if bare == nil {
					bare = a.bare(v, f.at, -1)
				}
				if r, ok := a.through(f, v, bare, e); ok && f.battery(a.n) {
					batteries[r.last()] = true
				} else if ok {
					runs[way{e, i}] = r
				}
			}
		}
	}
	return runs, reached, batteries
}

// otherFeed is a feed other than the i-th that comes to a wire, a battery before others. An input out
// of which current may come, but is not said to, is none.
func otherFeed(n *network.Network, feeds []feed, pushes []push, reached map[way]bool, edge, i int) (feed, bool) {
	best := -1
	for j, f := range feeds {
		counts := j != i && reached[way{edge, j}] && !pushes[j].blocked && pushes[j].doubt == nil
		if counts && (best < 0 || f.battery(n) && !feeds[best].battery(n)) {
			best = j
		}
	}
	if best < 0 {
		return feed{}, false
	}
	return feeds[best], true
}

func (x *pair) judge() lint.Verdict {
	c := x.wire()
	v := lint.Verdict{
		Subject: c, Outcome: lint.Holds, Word: lint.Warning, Cause: x.n.Nodes[x.feed.at].Place(), Group: x.n.Nodes[x.feed.at].Place(),
		Related: x.related(),
		State:   x.feed.witness(x.view, x.way), Path: x.view.Places(x.feed.at, x.way),
	}
	if x.push.bare != nil {
		v.Word = lint.Danger
	}
	iz, noSize := x.p.Circuit.Ampacity(c)
	v.Numbers = lint.Known(x.push.lacks, iz, x.push.amps)
	exceeds := iz.Kind != 0 && (x.push.bare != nil || x.push.amps.Value > iz.Value)
	lacks := slices.Concat(noSize, x.push.lacks)
	switch {
	case x.push.blocked, x.ended(), !exceeds && len(lacks) == 0:
	case !exceeds:
		v.Outcome, v.Missing = lint.NotProven, append(lacks, x.push.doubt...)
		v.Message = fmt.Sprintf("%s comes to %s with no overcurrent device on its way; whether it can push more than %s carries is not written.",
			lint.Quote(x.feed.block), lint.Quote(c), lint.Quote(c))
	case x.feed.converter >= 0:
		x.energised(&v, iz)
	default:
		v.Outcome, v.Message = lint.Violated, x.message(iz)
	}
	return v
}

// ended says whether a device that guards the conductor stands at its end, no farther off than a
// device may be.
func (x *pair) ended() bool {
	on := x.beyond(x.last())
	d := on.end()
	if d < 0 || !x.n.Edges[d].Fuse.Rating.Set {
		return false
	}
	far, lacks := x.far()
	known, _, _ := x.limit(allowanceOf(x.p.Plan))
	most := ceilingOf(x.p, x.wire(), x.last().From)
	return lacks == nil && far.Value+on.far[d] <= known.Value && most.most.Kind != 0 && most.lacks == nil && !most.tooBig(x.n.Edges[d].Fuse.Rating.Value)
}

// energised answers for a converter: only in a state in which its other side has power, and not from
// itself, does it feed the conductor.
func (x *pair) energised(v *lint.Verdict, iz derive.Number) {
	side := x.n.Converters[x.feed.converter].In
	if x.feed.reverse {
		side = x.n.Converters[x.feed.converter].Out
	}
	zone := x.n.Upstream(x.zone)
	if z := x.n.ZoneOf(side.Hot); z != nil {
		zone = x.n.Join(zone, x.n.Upstream(z))
	}
	views, complete := x.p.Space.Views(zone, x.p.Space.Closed(explore.All()))
	for _, view := range views {
		r, ok := x.through(x.feed, view, x.bare(view, x.feed.at, -1), x.last().Edge)
		if !ok || !view.HasConverter(x.feed.converter) {
			continue
		}
		live := view.Live(nil, nil)
		if !slices.ContainsFunc(live.At(side.Hot), func(s explore.Supply) bool { return s.Converter != x.feed.converter }) || !live.Feeds(side) {
			continue
		}
		edges, sources := live.Way(side)
		v.State = view.Witness(append(r.way.Edges(), edges...), sources...)
		v.Path = view.Places(x.feed.at, r.way)
		v.Outcome, v.Message = lint.Violated, x.message(iz)
		if x.push.doubt != nil {
			v.Outcome, v.Missing = lint.NotProven, x.push.doubt
			v.Message = fmt.Sprintf("Whether %s blocks reverse current is not written: if it does not, %s", lint.Quote(x.feed.block), x.message(iz))
		}
		return
	}
	if !complete {
		*v = lint.Unfinished(x.wire(), v.Word)
	}
}

func (x *pair) related() []string {
	out := []string{x.feed.block.Header().Addr}
	if x.other.block != nil {
		out = append(out, x.other.block.Header().Addr)
	}
	return out
}

func (x *pair) message(iz derive.Number) string {
	amount, way := x.push.amps.Text(), ""
	if x.push.bare != nil {
		amount = "all that " + lint.Quote(x.push.bare) + " gives"
	}
	if x.feed.reverse {
		way = " out of its input"
	}
	s := fmt.Sprintf("%s can push %s%s into %s, which carries %s, with no overcurrent device between them", lint.Quote(x.feed.block), amount, way, lint.Quote(x.wire()), iz.Text())
	if x.other.block == nil {
		return s + "."
	}
	return s + fmt.Sprintf("; a device that faces %s does not stop it.", lint.Quote(x.other.block))
}
