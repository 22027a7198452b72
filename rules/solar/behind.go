package solar

import (
	"fmt"
	"math"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// rearward is a battery that reaches an array in a view, with the device that limits it.
type rearward struct {
	battery       int
	converter     int // through which, -1 where directly
	explore.Guard     // of the array, against the battery
	state         []lint.Position
}

// batteryBehind asks for batteries that can feed an array backwards.
func batteryBehind(p *lint.Pass, array int) lint.Verdict {
	a := &p.Net.Sources[array]
	v := lint.Verdict{Subject: a.Source, Outcome: lint.Holds, Word: lint.Warning, Cause: "battery"}
	nodes := []network.NodeID{a.Hot}
	z := p.Net.ZoneOf(a.Hot)
	if z == nil {
		return v
	}
	for _, i := range z.Inputs {
		if c := &p.Net.Converters[i]; !blocks(c) {
			nodes = append(nodes, c.Out.Hot)
		}
	}
	zone := behindOf(p.Net, z, nodes)
	views, complete := p.Space.Views(zone, p.Space.About(p.Space.Closed(explore.All())))
	var worst, doubtful *rearward
	seen := map[string]bool{}
	for _, view := range views {
		if !open(p.Net, view, array) {
			continue
		}
		for _, x := range rearwards(p, view, array, seen) {
			at := &worst
			if x.converter >= 0 && !p.Net.Converters[x.converter].BlocksReverse.Set {
				at = &doubtful
			}
			if *at == nil || x.Rating > (*at).Rating {
				*at = x
			}
		}
	}
	return judgeBattery(p, v, worst, doubtful, complete)
}

// behindOf is the zone of an array with those behind its converters, less what is no battery there.
func behindOf(n *network.Network, z *network.Zone, nodes []network.NodeID) *network.Zone {
	zone := n.Together(nodes...)
	for _, i := range zone.Sources {
		if s := &n.Sources[i]; s.Kind.Value == "battery" {
			nodes = append(nodes, s.Hot)
		}
	}
	for _, i := range z.Inputs {
		nodes = append(nodes, n.Converters[i].In.Hot)
	}
	return n.Trim(zone, nodes...)
}

// blocks says whether a converter lets no current back; those of the usual kinds do unless the plan
// says otherwise.
func blocks(c *network.Converter) bool {
	if c.BlocksReverse.Set {
		return c.BlocksReverse.Value
	}
	switch c.Kind.Value {
	case "charger", "diode", "inverter", "load-center":
		return true
	}
	return false
}

// rearwards lists the batteries that reach an array in a view, each once for each way in which contacts stand.
func rearwards(p *lint.Pass, view *explore.View, array int, seen map[string]bool) []*rearward {
	a := &p.Net.Sources[array]
	var out []*rearward
	contacts := view.Contacts()
	first := func(b, converter int) bool {
		key := fmt.Sprint(b, " ", converter, contacts)
		old := seen[key]
		seen[key] = true
		return !old
	}
	for _, b := range view.Zone.Sources {
		s := &p.Net.Sources[b]
		if s.Kind.Value != "battery" || !view.HasSource(b) {
			continue
		}
		row := view.Series(b)
		if row.Across(a.Port) && first(b, -1) {
			if g := view.Guards(s.Hot).At(a.Hot); g.Reached {
				out = append(out, &rearward{b, -1, g, view.Witness(g.Path.Edges(), array, b)})
			}
		}
		for _, i := range view.Zone.Inputs {
			c := &p.Net.Converters[i]
			if blocks(c) || !view.HasConverter(i) || !view.Across(c.In, a.Port) || !row.Across(c.Out) || !first(b, i) {
				continue
			}
			near, far := view.Guards(s.Hot).At(c.Out.Hot), view.Guards(c.In.Hot).At(a.Hot)
			if !near.Reached || !far.Reached {
				continue
			}
			g := near
			if far.Rating < near.Rating {
				g = far
			}
			g.Unknown = append(near.Unknown, far.Unknown...)
			out = append(out, &rearward{b, i, g, view.Witness(append(near.Path.Edges(), far.Path.Edges()...), array, b)})
		}
	}
	return out
}

func judgeBattery(p *lint.Pass, v lint.Verdict, worst, doubtful *rearward, complete bool) lint.Verdict {
	a := v.Subject.(*schema.Source)
	most, lacks := takesBack(a)
	over := func(x *rearward) bool {
		return x != nil && (math.IsInf(x.Rating, 1) || most.Kind == 0 || x.Rating > most.Value)
	}
	x := worst
	if !over(worst) {
		x = doubtful
	}
	if !over(x) {
		if !complete {
			return lint.Unfinished(a, lint.Warning)
		}
		if x != nil {
			v.Numbers = lint.Known(nil, most, x.limit(p))
		}
		return v
	}
	v.Outcome, v.State, v.Numbers = lint.Violated, x.state, lint.Known(nil, most, x.limit(p))
	b := p.Net.Sources[x.battery].Source
	v.Related = []string{b.Addr}
	how := "directly"
	if x.converter >= 0 {
		c := p.Net.Converters[x.converter].Converter
		v.Related, how = append(v.Related, c.Addr), "backwards through "+lint.Quote(c)
	}
	v.Message = fmt.Sprintf("%s reaches %s %s", lint.Quote(b), lint.Quote(a), how)
	switch {
	case x == doubtful:
		v.Missing = []lint.Missing{{Subject: p.Net.Converters[x.converter].Addr, Attribute: "blocks_reverse"}}
	case math.IsInf(x.Rating, 1) && len(x.Unknown) > 0:
		v.Missing = []lint.Missing{{Subject: p.Net.Edges[x.Unknown[0]].Addr, Attribute: "rating"}}
	case !math.IsInf(x.Rating, 1) && most.Kind == 0:
		v.Missing = lacks
	case math.IsInf(x.Rating, 1):
		v.Message += " with no device on the way: a shorted string is fed by all that the battery gives."
	default:
		v.Message += fmt.Sprintf(", and the smallest device on the way, %s, is %s; the modules take %s.", lint.Quote(p.Net.Edges[x.Device].Fuse), x.limit(p).Text(), most.Text())
	}
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
		v.Message = fmt.Sprintf("Whether %s drives more into %s %s than it takes turns on %s, which is not written.", lint.Quote(b), lint.Quote(a), how, lint.Lacking(v.Missing[0], true))
	}
	return v
}

// limit is the rating of the device that limits it; Kind 0 where none does.
func (x *rearward) limit(p *lint.Pass) derive.Number {
	if x.Device < 0 {
		return derive.Number{}
	}
	f := p.Net.Edges[x.Device].Fuse
	return derive.Read("rating of "+lint.Quote(f), "In", f.Rating.Value, "A", f.Addr, "rating", f.Rating.Range)
}
