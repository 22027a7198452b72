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
	"ferrule/schema"
)

var unprotectedRun = &lint.Rule{
	ID:      "overcurrent/unprotected-run",
	Claim:   "A wire that a battery can feed has no fuse or breaker close to that battery.",
	Words:   []lint.Severity{lint.Danger, lint.Caution},
	Harm:    true,
	Subject: "conductor",
	When: "In some state a battery reaches a conductor through wires and closed contacts, with more conductor before the first overcurrent device than the " +
		"practice allows or with no device further on at all, and a short at the conductor's far end draws more than the conductor carries.",
	Why: "Nothing but the wire itself limits what a battery gives. A chafed or crushed wire glows until it has burnt through, in the space people occupy: danger. " +
		"Braking and breakaway circuits are cautioned only, since a blown device there takes the brakes away.",
	Numbers: "Length of conductor from the battery, as laid, by the shortest way without a device; a device that sits `on` the battery is at 0. Longest run: " +
		"`us-boat` 7 in (178 mm), 40 in (1.02 m) sheathed or enclosed all the way, 72 in (1.83 m) sheathed and straight from the battery; `us-rv` 18 in (457 mm); " +
		"`iso-boat` 200 mm, 1.0 m enclosed; otherwise 18 in. Where several practices speak, the strictest. The fault is a bolted short with the battery full, at its lowest " +
		"resistance and cold wires.",
	Not: "Conductors marked `cranking`, which practice exempts, though many fuse them anyway; what is tapped off one is measured from its end. A thin tap off a bigger run " +
		"may be unguarded up to the same distance if a device that guards it stands at its end. What is inside a bought pack. Sources that limit their own current are " +
		"left to overcurrent/second-source-unguarded, and a device that is there but too big to overcurrent/oversize-device.",
	Offer: "A fuse on the battery's own post, with thicker wires where they are too thin for one that carries the load; the first device moved nearer; the run sheathed all the way where that allows the longer distance.",
	Meter: "Power off, battery lug lifted: measure along the cable from post to device with a tape. Then continuity shows that no second way leads around the device.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(b)", Standing: lint.Read, Note: "7 in, or 40 in sheathed or enclosed; read as good practice outside the boats it binds", For: []string{"us-boat"}},
		{Ref: "ABYC E-11 11.10.1.1.1", Standing: lint.Read, Note: "7, 40 and 72 in, cranking conductors exempt; read as quoted, and in the body's own quiz", For: []string{"us-boat"}},
		{Ref: "NFPA 70 552.10(E)(4)", Standing: lint.Read, Note: "18 in, written for park trailers; good practice from it elsewhere; read in a trade summary", For: []string{"us-rv"}},
		{Ref: "ANSI/RVIA LV 3-1", Standing: lint.Read, Note: "overcurrent protection near the battery; read in a press report", For: []string{"us-rv"}},
		{Ref: "NFPA 70 552.10(A)", Standing: lint.Read, Note: "leaves braking circuits out; read in the 2008 text"},
		{Ref: "AS/NZS 3001.2 5.4", Standing: lint.Read, Note: "200 mm, or 1.0 m enclosed; read in trade guidance", For: []string{"iso-boat"}},
		{Ref: "ISO 13297 12", Standing: lint.FromMemory, Note: "200 mm", For: []string{"iso-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "18 in from the battery", For: []string{"general", "vehicle", "cabin"}},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.DeviceAtSource, remedy.DeviceMoved, remedy.DeviceAhead, remedy.DeviceAndWires},
	Folds:  []string{"overcurrent/oversize-device", "overcurrent/clears-too-late", "overcurrent/interrupting-rating"},
	Since:  "0.1",
	Run:    unprotectedRuns,
}

func unprotectedRuns(p *lint.Pass) []lint.Verdict {
	found := map[string][]*bareRun{} // by conductor
	unfinished := map[string]bool{}
	for _, z := range p.Net.Zones {
		a := newArea(p, z)
		if a == nil || !slices.ContainsFunc(a.feeds(), func(f feed) bool { return f.battery(p.Net) }) {
			continue
		}
		for _, b := range bareRuns(a) {
			addr := b.wire().Addr
			found[addr] = append(found[addr], b)
		}
		for _, e := range a.wires() {
			unfinished[p.Net.Edges[e].Addr] = !a.complete
		}
	}
	var out []lint.Verdict
	for _, c := range p.Plan.Conductors {
		out = append(out, answers(c, found[c.Addr], unfinished[c.Addr])...)
	}
	return out
}

// answers gives what was found of a conductor, each end by itself; one answer where nothing was.
func answers(c *schema.Conductor, found []*bareRun, unfinished bool) []lint.Verdict {
	holds := lint.Verdict{Subject: c, Outcome: lint.Holds}
	var out []lint.Verdict
	for _, b := range found {
		if b.verdict.Outcome == lint.Holds {
			holds = b.verdict
		} else {
			out = append(out, b.verdict)
		}
	}
	switch {
	case len(out) > 0:
		return out
	case unfinished:
		return []lint.Verdict{lint.Unfinished(c, lint.Danger)}
	}
	return []lint.Verdict{holds}
}

// bareRun is the worst that was found of one end at which a battery can feed a conductor.
type bareRun struct {
	*run
	allow   allowance
	verdict lint.Verdict
}

// bareRuns judges every end at which a conductor can be fed by a battery before any device.
func bareRuns(a *area) []*bareRun {
	s := &search{area: a, allow: allowanceOf(a.p.Plan), worst: map[explore.Hop]*bareRun{}, known: map[string]bool{}}
	for _, v := range a.views {
		for _, f := range a.feeds() {
			if f.battery(a.n) && f.present(a.n, v) {
				s.look(v, f)
			}
		}
	}
	s.group()
	return s.list
}

// search goes over the views of an area.
type search struct {
	*area
	allow allowance
	list  []*bareRun
	worst map[explore.Hop]*bareRun
	known map[string]bool // ways whose answer does not hang on the view
}

func (s *search) look(v *explore.View, f feed) {
	reach := s.bare(v, f.at, -1)
	for _, e := range s.wires() {
		r, ok := s.through(f, v, reach, e)
		if !ok || s.known[r.key()] {
			continue
		}
		old := s.worst[r.last()]
		if old != nil && old.verdict.Outcome == lint.Violated && old.verdict.Word == lint.Danger {
			continue
		}
		now := &bareRun{run: r, allow: s.allow}
		s.known[r.key()] = now.judge()
		switch {
		case old == nil:
			s.worst[r.last()] = now
			s.list = append(s.list, now)
		case graver(now.verdict, old.verdict):
			*old = *now
		}
	}
}

// graver says whether an answer says worse than another.
func graver(a, b lint.Verdict) bool {
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	return cmp.Or(weight[a.Outcome]-weight[b.Outcome], int(a.Word)-int(b.Word)) > 0
}

// group puts runs of one cause together: the first conductor on the way at which the limit passes
// leads.
func (s *search) group() {
	for _, b := range s.list {
		if b.verdict.Outcome != lint.Violated {
			continue
		}
		for _, h := range b.way {
			if first := s.worst[h]; first != nil && first.verdict.Outcome == lint.Violated {
				b.verdict.Group = "run through " + first.wire().Addr + " from " + s.n.Nodes[h.From].Place()
				break
			}
		}
	}
}

// judge answers for one run; settled says that no other state of the same way can answer otherwise.
func (r *bareRun) judge() (settled bool) {
	c, from := r.wire(), r.feed.block
	r.verdict = lint.Verdict{Subject: c, Outcome: lint.Holds, Word: lint.Danger, Cause: from.Header().Addr, Related: []string{from.Header().Addr}}
	v := &r.verdict
	if c.Cranking.True() {
		return true
	}
	far, noLength := r.far()
	known, sheathed, noSheath := r.limit(r.allow)
	v.Numbers = lint.Known(noLength, known, far)
	if r.brakes() {
		v.Word = lint.Caution
	}
	on := r.beyond(r.last())
	none := len(on.devices) == 0 && on.users > 0
	switch {
	case none, far.Value > sheathed.Value && !r.tap(on):
		return r.burns(known, none && far.Value <= known.Value)
	case far.Value > known.Value && !r.tap(on):
		r.unproven(noSheath, fmt.Sprintf("%s may run %s from %s without an overcurrent device only where it is sheathed all the way, which is not written.",
			lint.Quote(c), far.Text(), lint.Quote(from)))
	case far.Value <= known.Value && noLength != nil:
		r.unproven(noLength, fmt.Sprintf("How far %s runs from %s before the first overcurrent device is not written.", lint.Quote(c), lint.Quote(from)))
	}
	return true
}

func (r *bareRun) unproven(lacks []lint.Missing, message string) {
	r.verdict.Outcome, r.verdict.Missing, r.verdict.Message = lint.NotProven, lacks, message
}

// brakes says whether the run belongs to a braking or breakaway circuit.
func (r *bareRun) brakes() bool {
	return slices.ContainsFunc(r.way, func(h explore.Hop) bool { return r.breakaway(h.Edge) }) || r.braking(r.last())
}

// tap says whether the conductor is a thin tap off a bigger run that is itself in order, with a device
// that guards it at its end, no farther off than a device may be.
func (r *bareRun) tap(on *beyond) bool {
	start := r.bigger()
	d := on.end()
	if start < 0 || d < 0 || !r.n.Edges[d].Fuse.Rating.Set {
		return false
	}
	if big := (&run{r.area, r.feed, r.view, r.way[:start]}); !big.wire().Cranking.True() {
		far, lacks := big.far()
		if known, _, _ := big.limit(r.allow); lacks != nil || far.Value > known.Value {
			return false
		}
	}
	tap := &run{r.area, feed{block: r.feed.block, source: -1}, r.view, r.way[start:]}
	far, lacks := tap.far()
	known, _, _ := tap.limit(r.allow)
	most := ceilingOf(r.p, r.wire(), r.last().From)
	return lacks == nil && far.Value+on.far[d] <= known.Value && most.most.Kind != 0 && most.lacks == nil && !most.tooBig(r.n.Edges[d].Fuse.Rating.Value)
}

// bigger is the number of hops after which the run has left the last conductor bigger than its own;
// -1 where there is none.
func (r *bareRun) bigger() int {
	own := r.wire()
	for i := len(r.way) - 2; i >= 0; i-- {
		e := &r.n.Edges[r.way[i].Edge]
		if e.Kind == network.Wire && own.Size.Set && (e.Wire.Cranking.True() || e.Wire.Size.Set && e.Wire.Size.Area > own.Size.Area) {
			return i + 1
		}
	}
	return -1
}

// burns compares the fault at the far end with what the conductor carries.
func (r *bareRun) burns(limit derive.Number, none bool) (settled bool) {
	v, c := &r.verdict, r.wire()
	v.State, v.Path = r.feed.witness(r.view, r.way), r.view.Places(r.feed.at, r.way)
	iz, lacks := r.p.Circuit.Ampacity(c)
	fault, lacksToo := r.fault(iz.Value)
	lacks = slices.Concat(lacks, lacksToo)
	if iz.Kind != 0 && fault.Kind != 0 {
		v.Numbers = append(v.Numbers, iz, fault)
	}
	text := r.where(limit, none) + r.first(none)
	switch assumed := assumedOhms(fault); {
	case iz.Kind != 0 && lacksToo == nil && fault.Value > iz.Value:
		v.Outcome, v.Message = lint.Violated, text+"."
		if v.Word == lint.Caution {
			v.Message += " A braking circuit may go without one, so that a blown device cannot take the brakes away; then nothing but the wire limits a fault in it."
		}
		if t, m := r.p.Circuit.WithstandTime(c, fault); m == nil {
			v.Numbers = append(v.Numbers, t)
		}
	case lacks != nil:
		r.unproven(lacks, text+"; whether a short at its far end draws more than it carries cannot be told.")
	case assumed != nil && 2*fault.Value > iz.Value:
		r.unproven(assumed, text+"; a short at its far end draws less than it carries only if an assumed battery resistance is right.")
	}
	return false
}

// fault is what the run's battery gives into a short at the far end, and where that is no more than
// the conductor carries, with what every other battery gives that has no device on its way.
func (r *bareRun) fault(carries float64) (derive.Number, []lint.Missing) {
	f := r.p.Circuit.FaultAt(&r.n.Sources[r.feed.source], r.way)
	parts, lacks, sum := []derive.Number{f.Most}, f.Lacks, f.Most.Value
	if lacks != nil || sum > carries {
		return f.Most, lacks
	}
	for _, x := range r.feeds() {
		if x.at == r.feed.at || !x.battery(r.n) || !x.present(r.n, r.view) {
			continue
		}
		if o, ok := r.through(x, r.view, r.bare(r.view, x.at, -1), r.last().Edge); ok {
			g := r.p.Circuit.FaultAt(&r.n.Sources[x.source], o.way)
			parts, lacks, sum = append(parts, g.Most), append(lacks, g.Lacks...), sum+g.Most.Value
		}
	}
	if len(parts) == 1 {
		return f.Most, lacks
	}
	return derive.Compute("most fault current at the end of the run", "Ipf", sum, "A", "sum of what each battery gives", parts...), lacks
}

// assumedOhms names the battery resistances that a fault current leans on without the maker's figure.
func assumedOhms(fault derive.Number) []lint.Missing {
	var out []lint.Missing
	derive.Walk([]derive.Number{fault}, func(n derive.Number) {
		if n.Kind == derive.Assumption && n.Attribute == "resistance" {
			out = append(out, lint.Missing{Subject: n.Subject, Attribute: n.Attribute})
		}
	})
	return out
}

// where tells the conductor and the distance without a device.
func (r *bareRun) where(limit derive.Number, none bool) string {
	c := r.wire()
	what := lint.Quote(c)
	if c.Size.Set && c.Length.Set {
		what = fmt.Sprintf("%s (%s, %s)", what, c.Size.Size, derive.Text(c.Length.Value, "m"))
	}
	if none {
		return fmt.Sprintf("%s is fed from %s with no overcurrent device", what, lint.Quote(r.feed.block))
	}
	return fmt.Sprintf("%s meets source %s with no overcurrent device in the first %s", what, lint.Quote(r.feed.block), limit.Text())
}

// first tells the first device on the way.
func (r *bareRun) first(none bool) string {
	on := r.beyond(r.last())
	best := -1
	for _, d := range on.devices {
		if best < 0 || on.far[d] < on.far[best] {
			best = d
		}
	}
	switch far, lacks := r.far(); {
	case none:
		return ", neither before it nor after it"
	case best < 0:
		return ", and there is none on the way"
	case lacks != nil:
		return fmt.Sprintf("; the first one on the way is %s", lint.Quote(r.n.Edges[best].Fuse))
	default:
		return fmt.Sprintf("; the first one on the way is %s, %s off", lint.Quote(r.n.Edges[best].Fuse), derive.Text(far.Value+on.far[best], "m"))
	}
}
