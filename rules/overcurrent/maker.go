package overcurrent

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// allowed is a load whose maker allows less than the device ahead of it lets through.
type allowed struct {
	*area
	load  int
	feed  feed
	view  *explore.View
	most  float64 // A that the device and the feed let through
	lacks []lint.Missing
}

func (x *allowed) of() *schema.Load { return x.n.Loads[x.load].Load }

func (x *allowed) ratio() float64 { return x.most / x.of().MaxFuse.Value }

// makers compares what one feed can push through each device with the largest that the makers of the loads behind it
// allow. Bilge pumps have a rule of their own.
func (s *sizer) makers(v *explore.View, cut *patches, i int, by map[int32]guards) {
	for _, l := range s.zone.Loads {
		load := &s.n.Loads[l]
		at := liveEnd(s.n, load.Port)
		if !load.MaxFuse.Set || load.Kind.Value == "bilge-pump" || s.zone.Local(at) < 0 {
			continue
		}
		g, ok := by[cut.at(at)]
		if !ok || g.device < 0 || len(g.unrated) > 0 {
			continue
		}
		x := allowed{s.area, l, s.feeds[i], v, 0, nil}
		x.most, x.lacks = s.through(i, g.device, load.MaxFuse.Value)
		into := s.found[s.n.Edges[g.device].Addr]
		into.asked[0] = true
		if x.ratio() > 1+1e-9 && (into.maker == nil || surer(x.lacks, into.maker.lacks, x.ratio(), into.maker.ratio())) {
			into.maker = &x
		}
	}
}

// through is what a device and a feed let through together, in A, and what is missing to say that it is more than a limit.
func (s *sizer) through(i, device int, limit float64) (amps float64, lacks []lint.Missing) {
	push, rating := s.pushes[i], s.rating(device)
	if push.bare != nil {
		return rating, push.doubt
	}
	sure := min(rating, push.amps.Value)
	if len(push.lacks) == 0 || sure > limit {
		return sure, push.doubt
	}
	return rating, slices.Concat(push.lacks, push.doubt)
}

// surer says whether what is beyond a limit by a ratio is graver than the same with another: what is known goes first.
func surer(lacks, other []lint.Missing, ratio, than float64) bool {
	if known, was := len(lacks) == 0, len(other) == 0; known != was {
		return known
	}
	return ratio > than*(1+1e-9)
}

func (x *allowed) verdict(f *schema.Fuse) lint.Verdict {
	l := x.of()
	most := derive.Read("the maker's largest fuse of "+lint.Quote(l), "Imax", l.MaxFuse.Value, "A", l.Addr, "max_fuse", l.MaxFuse.Range)
	way := x.view.Guards(x.feed.at).At(liveEnd(x.n, x.n.Loads[x.load].Port)).Path
	if len(x.lacks) > 0 {
		return lint.Verdict{
			Subject: f, Outcome: lint.NotProven, Word: lint.Warning, Cause: "maker", Related: []string{l.Addr}, Numbers: []derive.Number{most, rated(f)}, Missing: x.lacks,
			Message: fmt.Sprintf("Whether more than the %s that the maker of the load %s allows comes through %s (%s) cannot be told.", most.Text(), lint.Quote(l), lint.Quote(f), rated(f).Text()),
		}
	}
	return lint.Verdict{
		Subject: f, Outcome: lint.Violated, Word: lint.Warning, Cause: "maker", Related: []string{l.Addr},
		Numbers: []derive.Number{most, rated(f)}, State: x.feed.witness(x.view, way), Path: x.view.Places(x.feed.at, way),
		Message: fmt.Sprintf("%s (%s) is all that guards the load %s, whose maker allows %s at most.", lint.Quote(f), rated(f).Text(), lint.Quote(l), most.Text()),
	}
}
