package overcurrent

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var oversizeDevice = &lint.Rule{
	ID:      "overcurrent/oversize-device",
	Claim:   "The fuse or breaker is bigger than the wire it guards.",
	Words:   []lint.Severity{lint.Warning},
	Harm:    true,
	Subject: "fuse",
	When: "In some state a device is the smallest on the least protected way from a source to a conductor, and its rating is above what the practice allows for that conductor; " +
		"or it is the one device at the end of a conductor that a battery feeds, and bigger than that conductor allows; " +
		"or several devices, each small enough, stand side by side before a conductor, and their ratings add up to more than it allows; " +
		"or it is above the `max_fuse` of a load, and no smaller one stands before that; or more comes home by a return wire of its own, of what it lets " +
		"through, than the practice allows for that.",
	Why: "A stalled pump or a half-made short draws more than the wire carries and less than the device opens at, for hours. Warning: it is graded under a missing device.",
	Numbers: "`us-boat` below 50 V: 150 % of the ampacity after heat and bundling; at 50 V and above 100 %, or the next standard rating within 150 %. Other practices 100 %; " +
		"`us-rv` also 15, 20 and 30 A on 14, 12 and 10 AWG, whatever the insulation, and no more than 15 A on thinner ones. Ampacity by size and insulation (60 C where it is left out) times heat and bundle. From a source that " +
		"limits its own current no more counts than it gives. Devices side by side: the most that they let through together to one end of the conductor, from batteries and from " +
		"whatever else gives more than the conductor allows; the largest of them is named, with their number and their sum. A load's `max_fuse` is its maker's figure. " +
		"Where returns share, each carries its part by resistance, contacts between them closed or open.",
	Not: "A motor's own thermal protection is not counted: a plan has no word for it. A thin tap is excused as far as the practice lets a run go without a device, " +
		"if a device that guards it stands at its end. Of ways side by side that all have a device too big, the largest device is named. What a source that gives no more than the " +
		"conductor allows adds to what a battery gives is not added up. What loads draw is conductor/ampacity. " +
		"The `max_fuse` of a bilge pump is asked by life-safety/bilge-pump-behind-switch. Devices side by side are added up before wires, not before loads and " +
		"returns, nor is what several circuits bring home by one wire: a return that serves many is laid for what they draw. What becomes of returns once one of them is open is conductor/return-weaker-than-feed.",
	Offer: "The largest standard device that guards the wire and still carries its load; else the next size of wire, or a device for the load and wires for that device.",
	Meter: "Read the number on the device and the print on the wire's jacket; a clamp meter shows the current at full load.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(c)", Standing: lint.Read, Note: "150 % below 50 V, else 100 % or the next standard rating; read as good practice outside the boats it binds", For: []string{"us-boat"}},
		{Ref: "33 CFR 183.425 Table 5", Standing: lint.Read, Note: "ampacity; used for all direct current"},
		{Ref: "ANSI/RVIA LV 3-2", Standing: lint.Read, Note: "not above the conductor's rating; read in a press report", For: []string{"us-rv"}},
		{Ref: "NFPA 70 240.4(D)", Standing: lint.Read, Note: "15, 20 and 30 A on 14, 12 and 10 AWG; that low-voltage circuits of a vehicle are held to it is common practice", For: []string{"us-rv"}},
		{Ref: "ISO 13297:2020 13.1.5", Standing: lint.Read, Note: "not above the conductor, said of alternating current; read in a preview", For: []string{"iso-boat"}},
		{Ref: "makers' instructions", Standing: lint.CommonPractice, Note: "the largest fuse of a load is its maker's"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a device no larger than what its wire carries", For: []string{"general", "vehicle", "cabin"}},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerDevice, remedy.ThickerWire, remedy.Unbundle, remedy.DeviceAhead, remedy.DeviceEach, remedy.DeviceAndWires},
	Folds:  []string{"overcurrent/clears-too-late"},
	Since:  "0.1",
	Run:    oversizeDevices,
}

func oversizeDevices(p *lint.Pass) []lint.Verdict {
	found := map[string]*sizing{}
	returns := homesOf(p)
	for _, z := range p.Net.Zones {
		if a := newArea(p, z); a != nil && len(a.devices()) > 0 {
			sizeDevices(a, returns, found)
		}
	}
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		s := found[f.Addr]
		if s == nil {
			s = &sizing{complete: true}
		}
		out = append(out, s.verdict(p, f))
		if s.beside != nil && f.Rating.Set {
			out = append(out, s.beside.violated(f))
		}
		if f.Rating.Set {
			out = append(out, s.others(f)...)
		}
	}
	return out
}

// sizing is what was found of one device.
type sizing struct {
	tight    *guarded // the conductor that its rating suits least
	unknown  []guarded
	beside   *together // the worst conductor that it guards side by side with others
	maker    *allowed  // the load behind it whose maker allows least of it
	home     *homeward // the return wire that allows least of it
	asked    [2]bool   // whether any load's maker, and any return wire, allows something
	complete bool
}

// others are the answers about makers of loads and return wires, where there are such.
func (s *sizing) others(f *schema.Fuse) []lint.Verdict {
	var out []lint.Verdict
	switch {
	case s.maker != nil:
		out = append(out, s.maker.verdict(f))
	case s.asked[0]:
		out = append(out, lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning, Cause: "maker"})
	}
	switch {
	case s.home != nil:
		out = append(out, s.home.verdict(f))
	case s.asked[1]:
		out = append(out, lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning, Cause: "return"})
	}
	return out
}

// guarded is a conductor that a device guards against a feed.
type guarded struct {
	*area
	edge  int
	feed  feed
	view  *explore.View
	limit *ceiling
	most  float64 // A that the device and the feed let through
	lacks []lint.Missing
	ends  bool // the device stands behind the conductor, not before it
}

func (g *guarded) wire() *schema.Conductor { return g.n.Edges[g.edge].Wire }

func (g *guarded) ratio() float64 { return g.most / g.limit.most.Value }

// sizer goes over the states of an area.
type sizer struct {
	*area
	returns *homes
	backs   map[int]network.NodeID // by feed, where its current ends
	feeds   []feed
	pushes  []push
	limits  map[int]*ceiling // by wire
	taps    map[int]bool     // wires with a device that guards them at their end, near enough
	sums    map[int]float64  // by wire, the most that devices side by side were found to let through, in A
	found   map[string]*sizing
}

func sizeDevices(a *area, returns *homes, found map[string]*sizing) {
	s := &sizer{area: a, returns: returns, backs: map[int]network.NodeID{}, feeds: a.feeds(), limits: map[int]*ceiling{}, taps: map[int]bool{}, sums: map[int]float64{}, found: found}
	for _, f := range s.feeds {
		s.pushes = append(s.pushes, pushOf(a.p, f))
	}
	for _, e := range a.wires() {
		c := ceilingOf(a.p, a.n.Edges[e].Wire, a.n.Edges[e].A)
		s.limits[e] = &c
	}
	for _, e := range a.wires() {
		s.taps[e] = s.tap(e)
	}
	devices := a.devices()
	for _, d := range devices {
		if old := found[a.n.Edges[d].Addr]; old == nil {
			found[a.n.Edges[d].Addr] = &sizing{complete: a.complete}
		}
	}
	for _, v := range a.views {
		cut := a.cut(v, devices)
		by := map[int]map[int32]guards{}
		for i, f := range s.feeds {
			if f.present(a.n, v) && !s.pushes[i].blocked {
				by[i] = cut.from(f)
				s.look(v, cut, i, by[i])
				s.makers(v, cut, i, by[i])
				s.homes(v, cut, i, by[i])
			}
		}
		if len(devices) > 1 {
			s.together(cut, devices, by)
		}
	}
}

// look compares what one feed can push through each device with the conductors that the device guards.
func (s *sizer) look(v *explore.View, cut *patches, i int, by map[int32]guards) {
	for _, e := range s.wires() {
		if !v.Conducts(e) {
			continue
		}
		x, _ := cut.ends(e)
		g, ok := by[x]
		switch {
		case !ok:
		case g.device >= 0 && !s.taps[e]:
			s.note(v, i, e, g.device, g.unrated, false)
		case g.device < 0 && len(g.unrated) == 0 && s.feeds[i].battery(s.n):
			for _, h := range s.hops(e) {
				if d := s.beyond(h).end(); d >= 0 && s.n.Edges[d].Fuse.Rating.Set {
					s.note(v, i, e, d, nil, true)
				}
			}
		}
	}
}

// hops are the two directions through an edge.
func (s *sizer) hops(e int) [2]explore.Hop {
	x := &s.n.Edges[e]
	return [2]explore.Hop{{Edge: e, From: x.A, To: x.B}, {Edge: e, From: x.B, To: x.A}}
}

// tap says whether a conductor leads to nothing but a device that guards it, near enough.
func (s *sizer) tap(e int) bool {
	limit := s.limits[e]
	if limit.most.Kind == 0 || limit.lacks != nil {
		return false
	}
	for _, h := range s.hops(e) {
		on := s.beyond(h)
		d := on.end()
		if d < 0 || !s.n.Edges[d].Fuse.Rating.Set || limit.tooBig(s.n.Edges[d].Fuse.Rating.Value) {
			continue
		}
		r := &run{s.area, feed{block: s.n.Edges[d].Fuse, source: -1}, s.open, explore.Path{h}}
		far, lacks := r.far()
		known, _, _ := r.limit(allowanceOf(s.p.Plan))
		if lacks == nil && far.Value+on.far[d] <= known.Value {
			return true
		}
	}
	return false
}

// note keeps the conductor that a device suits least, and those of which it cannot be told.
func (s *sizer) note(v *explore.View, i, e, device int, unrated []int, ends bool) {
	push, rating := s.pushes[i], s.rating(device)
	g := guarded{s.area, e, s.feeds[i], v, s.limits[e], rating, slices.Concat(s.limits[e].lacks, push.doubt), ends}
	if ends && g.wire().Cranking.True() {
		return
	}
	if push.bare == nil {
		sure := min(rating, push.amps.Value)
		if len(push.lacks) == 0 || g.limit.tooBig(sure) {
			g.most = sure
		} else {
			g.lacks = append(g.lacks, push.lacks...)
		}
	}
	for _, d := range unrated {
		g.lacks = append(g.lacks, lint.Missing{Subject: s.n.Edges[d].Addr, Attribute: "rating"})
	}
	into := s.found[s.n.Edges[device].Addr]
	big := g.limit.tooBig(g.most)
	switch {
	case g.limit.most.Kind == 0, big && len(g.lacks) > len(g.limit.lacks), !big && len(g.limit.lacks) > 0:
		if !slices.ContainsFunc(into.unknown, func(u guarded) bool { return u.edge == e }) {
			into.unknown = append(into.unknown, g)
		}
	case into.tight == nil || g.ratio() > into.tight.ratio()*(1+1e-9):
		into.tight = &g
	}
}

func (s *sizing) verdict(p *lint.Pass, f *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning}
	if !f.Rating.Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: f.Addr, Attribute: "rating"}}
		v.Message = fmt.Sprintf("The rating of %s is not written, so it cannot be told whether it guards its wires.", lint.Quote(f))
		return v
	}
	if s.tight != nil {
		v.Numbers = []derive.Number{s.tight.limit.iz, s.tight.limit.most, rated(f)}
	}
	switch {
	case s.tight != nil && s.tight.limit.tooBig(s.tight.most):
		return s.tight.violated(f, v)
	case len(s.unknown) > 0:
		g := s.unknown[0]
		v.Outcome, v.Missing, v.Related = lint.NotProven, g.lacks, []string{g.wire().Addr}
		v.Message = fmt.Sprintf("Whether %s (%s) guards %s cannot be told.", lint.Quote(f), rated(f).Text(), lint.Quote(g.wire()))
	case !s.complete:
		return lint.Unfinished(f, lint.Warning)
	}
	return v
}

func (g *guarded) violated(f *schema.Fuse, v lint.Verdict) lint.Verdict {
	c := g.wire()
	v.Outcome, v.Related = lint.Violated, []string{c.Addr}
	way := append(g.view.Guards(g.feed.at).Of(g.edge).Path, explore.Hop{Edge: g.edge, From: g.n.Edges[g.edge].A, To: g.n.Edges[g.edge].B})
	v.State = g.feed.witness(g.view, way)
	v.Path = g.view.Places(g.feed.at, way[:len(way)-1])
	guards, why := "guards", ""
	if g.ends {
		guards, why = "is all that guards", " It stands at that conductor's end."
	}
	v.Message = fmt.Sprintf("%s (%s) %s %s (%s), which allows %s.%s", lint.Quote(f), rated(f).Text(), guards, lint.Quote(c), c.Size.Size, g.limit.most.Text(), why)
	if g.limit.loose > 0 && f.Rating.Value <= g.limit.loose {
		v.Message += fmt.Sprintf(" Without heat and bundling the table would allow %s.", derive.Text(g.limit.loose, "A"))
	}
	return v
}
