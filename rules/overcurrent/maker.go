package overcurrent

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// allowed is a load whose maker allows less than the device ahead of it lets through.
type allowed struct {
	*area
	load int
	feed feed
	view *explore.View
	most float64 // A that the device and the feed let through
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
		x := allowed{s.area, l, s.feeds[i], v, s.rating(g.device)}
		if push := s.pushes[i]; push.bare == nil && len(push.lacks) == 0 && len(push.doubt) == 0 {
			x.most = min(x.most, push.amps.Value)
		}
		into := s.found[s.n.Edges[g.device].Addr]
		if x.ratio() > 1+1e-9 && (into.maker == nil || x.ratio() > into.maker.ratio()*(1+1e-9)) {
			into.maker = &x
		}
	}
}

func (x *allowed) violated(f *schema.Fuse) lint.Verdict {
	l := x.of()
	most := derive.Read("the maker's largest fuse of "+lint.Quote(l), "Imax", l.MaxFuse.Value, "A", l.Addr, "max_fuse", l.MaxFuse.Range)
	way := x.view.Guards(x.feed.at).At(liveEnd(x.n, x.n.Loads[x.load].Port)).Path
	return lint.Verdict{
		Subject: f, Outcome: lint.Violated, Word: lint.Warning, Cause: "maker", Related: []string{l.Addr},
		Numbers: []derive.Number{most, rated(f)}, State: x.feed.witness(x.view, way), Path: x.view.Places(x.feed.at, way),
		Message: fmt.Sprintf("%s (%s) is all that guards %s, whose maker allows %s at most.", lint.Quote(f), rated(f).Text(), lint.Quote(l), most.Text()),
	}
}
