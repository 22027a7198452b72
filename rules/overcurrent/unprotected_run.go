package overcurrent

import (
	"cmp"
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
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
	Offer: "A fuse on the battery's own post; the first device moved nearer; the run sheathed all the way where that allows the longer distance.",
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
	Folds:  []string{"overcurrent/oversize-device", "overcurrent/clears-too-late", "overcurrent/interrupting-rating"},
	Since:  "0.1",
	Run:    unprotectedRuns,
}

func unprotectedRuns(p *lint.Pass) []lint.Verdict {
	found := map[string][]*bareRun{} // by conductor
	unfinished := map[string]bool{}
	for _, z := range p.Net.Zones {
		if a := newArea(p, z); a != nil && slices.ContainsFunc(a.feeds(), func(f feed) bool { return f.battery(p.Net) }) {
			for _, b := range bareRuns(a) {
				found[b.wire().Addr] = append(found[b.wire().Addr], b)
			}
			for _, e := range a.wires() {
				unfinished[p.Net.Edges[e].Addr] = !a.complete
			}
		}
	}
	return sortRuns(p, found, unfinished)
}

// bareRun is the worst that was found of one end of a conductor.
type bareRun struct {
	*run
	verdict lint.Verdict
	leader  *bareRun // the run of the same cause that comes first on its way; itself where none does
}

// bareRuns judges every end at which a conductor can be fed by a battery before any device.
func bareRuns(a *area) []*bareRun {
	type entry struct {
		edge int
		at   network.NodeID
	}
	limit := allowanceOf(a.p.Plan)
	worst := map[entry]*bareRun{}
	var out []*bareRun
	wires := a.wires()
	for _, v := range a.views {
		for _, f := range a.feeds() {
			if !f.battery(a.n) || !f.present(a.n, v) {
				continue
			}
			reach := a.bare(v, f.at, -1)
			for _, e := range wires {
				r, ok := a.through(f, v, reach, e)
				if !ok {
					continue
				}
				k := entry{e, r.last().From}
				old := worst[k]
				if old == nil {
					old = &bareRun{run: r, verdict: r.judge(limit)}
					worst[k] = old
					out = append(out, old)
				} else if old.verdict.Outcome != lint.Violated {
					if w := r.judge(limit); graver(w, old.verdict) {
						old.run, old.verdict = r, w
					}
				}
			}
		}
	}
	for _, b := range out {
		b.leader = b
		for _, h := range b.way {
			if first := worst[entry{h.Edge, h.From}]; first != nil && first.verdict.Outcome == b.verdict.Outcome && b.leader == b {
				b.leader = first
			}
		}
	}
	return out
}

// graver says whether an answer says worse than another.
func graver(a, b lint.Verdict) bool {
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	return cmp.Or(weight[a.Outcome]-weight[b.Outcome], int(a.Word)-int(b.Word)) > 0
}

// judge answers for one run.
func (r *bareRun) judge() lint.Verdict {
	c := r.wire()
	v := lint.Verdict{Subject: c, Outcome: lint.Holds, Word: lint.Danger, Cause: r.feed.block.Header().Addr}
	v.Related = []string{v.Cause}
	if c.Cranking.True() {
		return v
	}
	far, noLength := r.far()
	known, sheathed, noSheath := r.limit(r.allow)
	v.Numbers = []derive.Number{known, far}
	on := r.beyond(r.last().Edge, r.last().To)
	none := len(on.devices) == 0 && len(on.loads)+len(on.machines) > 0
	if r.braking(on) {
		v.Word = lint.Caution
	}
	switch {
	case !none && far.Value <= known.Value && noLength == nil:
		return v
	case !none && far.Value <= known.Value:
		v.Outcome, v.Missing = lint.NotProven, noLength
		v.Message = fmt.Sprintf("How far %s runs from %s before the first overcurrent device is not written.", lint.Quote(c), lint.Quote(r.feed.block))
		return v
	case !none && r.tap(on):
		return v
	case !none && far.Value <= sheathed.Value && noLength == nil:
		v.Outcome, v.Missing = lint.NotProven, noSheath
		v.Message = fmt.Sprintf("%s may run %s from %s without an overcurrent device only where it is sheathed all the way, which is not written.",
			lint.Quote(c), far.Text(), lint.Quote(r.feed.block))
		return v
	}
	return r.burns(v, known, on)
}
