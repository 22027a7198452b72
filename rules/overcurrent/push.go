package overcurrent

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// push is what a feed can push into a dead short.
type push struct {
	amps    derive.Number  // Kind 0 where not known; where something is lacking, the least that it can be
	bare    *schema.Source // a battery with no device before it: nothing limits the current
	blocked bool           // current cannot come out there
	lacks   []lint.Missing
	doubt   []lint.Missing // whether current can come out there at all is not written
}

// blockingKinds block reverse current unless the plan says otherwise.
var blockingKinds = []string{"charger", "diode", "inverter", "load-center"}

// pushOf is what a feed can give. Through a converter that does not limit current, what is behind it
// decides, as the devices on the way there let it.
func pushOf(p *lint.Pass, f feed) push { return (&pusher{p, map[network.NodeID]*push{}}).of(f) }

// pusher follows current back through converters; a ring of them ends where it began.
type pusher struct {
	p    *lint.Pass
	seen map[network.NodeID]*push
}

func (x *pusher) of(f feed) push {
	if f.source >= 0 {
		s := x.p.Net.Sources[f.source].Source
		n, stiff, lacks := x.p.Circuit.SourceFault(s)
		if stiff {
			return push{bare: s}
		}
		return push{amps: n, lacks: lacks}
	}
	if old, ok := x.seen[f.at]; ok {
		return *old
	}
	x.seen[f.at] = &push{blocked: true}
	out := x.converter(f)
	x.seen[f.at] = &out
	return out
}

func (x *pusher) converter(f feed) push {
	c := &x.p.Net.Converters[f.converter]
	if !f.reverse {
		n, behind, lacks := x.p.Circuit.OutputFault(c.Converter)
		if behind {
			return x.turned(c, x.behind(c.In))
		}
		return push{amps: n, lacks: lacks}
	}
	switch {
	case c.BlocksReverse.True():
		return push{blocked: true}
	case c.BlocksReverse.Set:
		return x.behind(c.Out)
	case slices.Contains(blockingKinds, c.Kind.Value):
		return push{blocked: true, amps: derive.Assume("reverse current through "+lint.Quote(c.Converter), "", 0, "A", c.Addr, "blocks_reverse", "a "+c.Kind.Value+" is taken to block it")}
	}
	out := x.behind(c.Out)
	out.doubt = []lint.Missing{{Subject: c.Addr, Attribute: "blocks_reverse"}}
	return out
}

// turned is what is pushed into a converter that does not limit, as it comes out: more amps where it takes volts down.
func (x *pusher) turned(c *network.Converter, in push) push {
	high, ok := x.p.Circuit.Nominal(c.In.Hot)
	low, known := x.p.Circuit.Nominal(c.Out.Hot)
	if c.Output != nil && c.Output.Voltage.Set {
		low, known = derive.Read("output voltage of "+lint.Quote(c.Converter), "Vout", c.Output.Voltage.Value, "V", c.Addr, "output voltage", c.Output.Voltage.Range), true
	}
	if in.bare == nil && in.amps.Kind != 0 && ok && known && low.Value > 0 && high.Value > low.Value {
		in.amps = derive.Compute("what passes "+lint.Quote(c.Converter), "Iout", in.amps.Value*high.Value/low.Value, "A", "Iout = I x Vn / Vout", in.amps, high, low)
	}
	return in
}

// behind is the most that any one feed can push to a port, with every contact closed.
func (x *pusher) behind(port network.Port) push {
	z := x.p.Net.ZoneOf(port.Hot)
	if z == nil {
		return push{blocked: true}
	}
	a := newArea(x.p, z)
	if a == nil {
		return push{blocked: true}
	}
	out := push{blocked: true}
	cut := a.cut(a.open, a.devices())
	for _, f := range a.feeds() {
		if g, ok := cut.from(f)[cut.at(port.Hot)]; ok {
			out = out.more(a.limited(x.of(f), g))
		}
	}
	return out
}

// limited is a push as the devices on its way let it through.
func (a *area) limited(x push, g guards) push {
	if g.device < 0 && len(g.unrated) > 0 && (x.bare != nil || len(x.lacks) > 0) {
		return push{lacks: append(x.lacks, lint.Missing{Subject: a.n.Edges[g.unrated[0]].Addr, Attribute: "rating"})}
	}
	if g.device >= 0 && (x.bare != nil || len(x.lacks) > 0 || x.amps.Value > a.rating(g.device)) {
		return push{amps: rated(a.n.Edges[g.device].Fuse), doubt: x.doubt, blocked: x.blocked}
	}
	return x
}

// more is the larger of two pushes.
func (x push) more(y push) push {
	switch {
	case y.blocked:
		return x
	case x.blocked:
		return y
	}
	out := push{amps: x.amps, bare: x.bare, lacks: append(slices.Clip(x.lacks), y.lacks...), doubt: append(slices.Clip(x.doubt), y.doubt...)}
	if y.amps.Value > x.amps.Value {
		out.amps = y.amps
	}
	if out.bare == nil {
		out.bare = y.bare
	}
	return out
}

// rated is a device's rating.
func rated(f *schema.Fuse) derive.Number {
	return derive.Read("rating of "+lint.Quote(f), "In", f.Rating.Value, "A", f.Addr, "rating", f.Rating.Range)
}
