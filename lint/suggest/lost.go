package suggest

import (
	"cmp"
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// much is how much less is less: figures are not that exact.
const much = 0.02

// lost says what a part can no longer do, "" where each still does its work.
func (d *Desk) lost(after *Desk) string {
	was, is := d.service, after.service
	for _, src := range d.Plan.Sources {
		b := d.Plan.Block(src.Addr)
		switch {
		case was.feeds[src.Addr] > 0 && is.feeds[src.Addr] == 0:
			return lint.Quote(b) + " then feeds nothing"
		case was.charges[src.Addr] > 0 && is.charges[src.Addr] == 0:
			return "nothing then charges " + lint.Quote(b)
		case was.backed[src.Addr] && !is.backed[src.Addr]:
			return "no battery is then on the wires of " + lint.Quote(b) + ": an alternator that runs without one puts out a spike"
		}
	}
	for _, x := range after.Plan.Switches {
		for _, pos := range x.Positions {
			if at := x.Addr + " " + pos.Name; was.lit[at] && !is.lit[at] {
				return fmt.Sprintf("nothing then comes in at position %q of %s", pos.Name, lint.Quote(x))
			}
		}
	}
	for _, c := range d.Plan.Converters {
		if now, ok := is.gives[c.Addr]; ok && now < was.gives[c.Addr] && now < is.asked[c.Addr]*(1-much) {
			return fmt.Sprintf("%s, which nothing helps to feed what hangs on it, then gives %s of the %s that is asked of it", lint.Quote(c), derive.Text(now, "A"), derive.Text(is.asked[c.Addr], "A"))
		}
	}
	for _, l := range d.Plan.Loads {
		if was.fed[l.Addr] && !is.fed[l.Addr] {
			return "nothing then feeds " + lint.Quote(l)
		}
		if was.still[l.Addr] && !is.still[l.Addr] {
			return lint.Quote(l) + " then has power only while the engine runs"
		}
		if was.stored[l.Addr] && !is.stored[l.Addr] {
			return "no battery then feeds " + lint.Quote(l)
		}
	}
	if starved := d.starved(after); starved != "" {
		return starved
	}
	return was.standstill(d.Plan, is)
}

// starved says which converter that is new, or gives less than before, gives less than what hangs on it asks in a state in
// which nothing else feeds that; "" where none does.
func (d *Desk) starved(after *Desk) string {
	n := after.pass.Net
	for i := range n.Converters {
		c := &n.Converters[i]
		give, lacks := after.pass.Circuit.OutputGives(c.Converter)
		old, there := schema.Lookup[*schema.Converter](d.Plan, c.Addr)
		gave, none := d.pass.Circuit.OutputGives(cmp.Or(old, c.Converter))
		enough := !there || len(none) > 0 || gave.N.Value > give.N.Value && d.alone(c.Addr) <= gave.N.Value*(1+much) // it was, and less is given now
		if len(lacks) > 0 || !enough {
			continue
		}
		if asked := after.alone(c.Addr); asked > give.N.Value*(1+much) {
			return fmt.Sprintf("%s, which alone feeds what hangs on it in some state, then gives %s of the %s that is asked of it", lint.Quote(c), derive.Text(give.N.Value, "A"), derive.Text(asked, "A"))
		}
	}
	return ""
}

// alone is the most that a converter is asked for, in A, in a state in which nothing else feeds what hangs on it.
func (d *Desk) alone(addr string) (most float64) {
	n := d.pass.Net
	converter := slices.IndexFunc(n.Converters, func(c network.Converter) bool { return c.Addr == addr })
	if converter < 0 || n.ZoneOf(n.Converters[converter].Out.Hot) == nil {
		return 0
	}
	out := n.Converters[converter].Out.Hot
	z := n.ZoneOf(out)
	views, _ := d.pass.Space.Views(z, d.pass.Space.Closed(explore.All()))
	for _, v := range views {
		if !v.HasConverter(converter) || slices.ContainsFunc(z.Sources, func(i int) bool { return v.HasSource(i) && v.Joined(n.Sources[i].Hot, out) }) ||
			slices.ContainsFunc(z.Outputs, func(i int) bool { return i != converter && v.HasConverter(i) && v.Joined(n.Converters[i].Out.Hot, out) }) {
			continue
		}
		asked := 0.0
		for _, l := range z.Loads {
			if amps, _ := d.pass.Circuit.LoadCurrent(l); v.Joined(n.Loads[l].Hot, out) {
				asked += amps.Value
			}
		}
		most = max(most, asked)
	}
	return most
}

// standstill says which battery can no longer start an engine, "" where none.
func (s *service) standstill(plan *schema.Plan, is service) string {
	for _, src := range plan.Sources {
		if s.cranks[src.Addr] && !is.cranks[src.Addr] {
			return lint.Quote(src) + " then reaches the engine only while that runs, and starts nothing"
		}
	}
	return ""
}
