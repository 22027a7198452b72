package overcurrent

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// together is a conductor that devices side by side feed: each within what it allows, not all.
type together struct {
	*area
	edge    int
	view    *explore.View
	limit   *ceiling
	fed     circuit.Feeding
	sources []int
	group   string // the devices at all that joins the conductor without a device
}

func (t *together) ratio() float64 { return t.fed.Amps / t.limit.most.Value }

// together adds up what devices side by side let through to each conductor of a view. by is what
// guards each patch against each feed that is there.
func (s *sizer) together(cut *patches, devices []int, by map[int]map[int32]guards) {
	known := map[int32]ways{}
	for _, e := range s.wires() {
		x, _ := cut.ends(e)
		limit := s.limits[e]
		if !cut.view.Conducts(e) || s.taps[e] || limit.most.Kind == 0 {
			continue
		}
		w, seen := known[x]
		if !seen {
			w = s.waysTo(cut, devices, by, x)
			known[x] = w
		}
		if len(w.devices) < 2 || !limit.tooBig(w.most) || w.most <= s.sums[e]*(1+1e-9) {
			continue
		}
		from, sources := s.stiff(x, by, limit)
		fed := s.p.Circuit.Fed(cut.view, e, from)
		if from == nil || len(fed.Devices) < 2 || !limit.tooBig(fed.Amps) || fed.Amps <= s.sums[e]*(1+1e-9) {
			continue
		}
		s.sums[e] = fed.Amps
		into := s.found[s.n.Edges[fed.Devices[0]].Addr]
		if t := (&together{s.area, e, cut.view, limit, fed, sources, s.names(w.devices)}); into.beside == nil || t.ratio() > into.beside.ratio()*(1+1e-9) {
			into.beside = t
		}
	}
}

// stiff is where feeds come in that by themselves give more than a conductor of a patch allows; nil
// where one of them comes through a single device too big, or none, which is told elsewhere.
func (s *sizer) stiff(patch int32, by map[int]map[int32]guards, limit *ceiling) (from map[network.NodeID]bool, sources []int) {
	from = map[network.NodeID]bool{}
	for i, f := range s.feeds {
		g, reached := by[i][patch]
		p := s.pushes[i]
		if !reached || p.doubt != nil || p.bare == nil && !limit.tooBig(p.amps.Value) {
			continue
		}
		if g.device < 0 || limit.tooBig(s.rating(g.device)) {
			return nil, nil
		}
		from[f.at] = true
		if f.source >= 0 {
			sources = append(sources, f.source)
		}
	}
	return from, sources
}

// ways are the devices at a patch behind which a feed can come to it, and the sum of their ratings.
type ways struct {
	devices []int
	most    float64
}

func (s *sizer) waysTo(cut *patches, devices []int, by map[int]map[int32]guards, patch int32) ways {
	beyond := forest(s.zone.Size()) // patches as devices join them, without this one
	var at []int
	for _, d := range devices {
		x, y := cut.ends(d)
		switch {
		case !cut.view.Conducts(d) || x == y:
		case x == patch || y == patch:
			at = append(at, d)
		default:
			join(beyond, x, y)
		}
	}
	fed := map[int32]bool{}
	for i := range by {
		fed[top(beyond, cut.at(s.feeds[i].at))] = true
	}
	var out ways
	for _, d := range at {
		x, y := cut.ends(d)
		if x == patch {
			x = y
		}
		if fed[top(beyond, x)] {
			out.devices, out.most = append(out.devices, d), out.most+s.rating(d)
		}
	}
	return out
}

func (a *area) names(devices []int) string {
	var out []string
	for _, d := range devices {
		out = append(out, a.n.Edges[d].Addr)
	}
	slices.Sort(out)
	return strings.Join(out, " ")
}

func (t *together) violated(f *schema.Fuse) lint.Verdict {
	c := t.n.Edges[t.edge].Wire
	v := lint.Verdict{Subject: f, Outcome: lint.Violated, Word: lint.Warning, Cause: "together", Group: "together " + t.group}
	var ratings []derive.Number
	for _, d := range t.fed.Devices {
		x := t.n.Edges[d].Fuse
		ratings = append(ratings, rated(x))
		if x != f {
			v.Related = append(v.Related, x.Addr)
		}
	}
	v.Related = append(v.Related, c.Addr)
	sum := derive.Compute("devices side by side that feed "+lint.Quote(c), "Isum", t.fed.Amps, "A", "sum of In", ratings...)
	v.Numbers = []derive.Number{t.limit.iz, t.limit.most, sum}
	v.State = t.view.Witness(append(slices.Clone(t.fed.Edges), t.edge), t.sources...)
	v.Message = fmt.Sprintf("%s (%s) is one of %d devices side by side that feed %s (%s): together they let %s through, and it allows %s.",
		lint.Quote(f), rated(f).Text(), len(ratings), lint.Quote(c), c.Size.Size, sum.Text(), t.limit.most.Text())
	return v
}
