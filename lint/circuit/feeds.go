package circuit

import (
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// collect lists what pushes current into the section.
func (f *Faults) collect(sure bool) {
	n := f.c.Net
	for _, i := range f.Section.Sources {
		f.source(i)
	}
	for _, i := range f.Section.Outputs {
		f.output(i)
	}
	for _, i := range f.Section.Inputs {
		x := &n.Converters[i]
		lacks, blocked := reverse(x)
		if blocked || lacks != nil && (sure || f.corner == Least) {
			continue
		}
		if f.behind(x.In, x.Out, i) {
			f.doubts = merge(f.doubts, lacks...)
		}
	}
}

func (f *Faults) source(i int) {
	s := &f.c.Net.Sources[i]
	if s.Hot == network.None || s.Ret == network.None {
		return
	}
	if s.Kind.Value == "battery" {
		f.battery(i)
		return
	}
	if f.corner == Least {
		return
	}
	a, _, lacks := f.c.SourceFault(s.Source)
	f.lacks = merge(f.lacks, lacks...)
	if a.Kind != 0 {
		f.feeds = append(f.feeds, feed{port: s.Port, source: i, conv: -1, amps: a.Value, numbers: []derive.Number{a}})
	}
}

// battery is the end-of-charge volts behind the low resistance for the most, the empty volts behind the
// high one for the least.
func (f *Faults) battery(i int) {
	s := &f.c.Net.Sources[i]
	v, lacks := f.c.BatteryVolts(s.Source)
	low, high, _, more := f.c.BatteryOhms(s.Source)
	if lacks = merge(lacks, more...); lacks != nil {
		f.lacks = merge(f.lacks, lacks...)
		return
	}
	volts, ohms := v.Full, low
	if f.corner == Least {
		volts, ohms = v.Empty, high
	}
	r := ohms.Value
	if len(f.c.Guessed(ohms)) > 0 {
		r *= f.slack
	}
	f.feeds = append(f.feeds, feed{port: s.Port, source: i, conv: -1, volts: volts.Value, ohms: max(r, leastOhms), numbers: []derive.Number{volts, ohms}})
}

// output is a converter's limit, or what is behind it where it does not limit.
func (f *Faults) output(i int) {
	x := &f.c.Net.Converters[i]
	a, behind, lacks := f.c.OutputFault(x.Converter)
	switch {
	case x.Out.Hot == network.None || x.Out.Ret == network.None:
	case behind:
		f.behind(x.Out, x.In, i)
	case f.corner == Least:
	default:
		f.lacks = merge(f.lacks, lacks...)
		if a.Kind != 0 {
			f.feeds = append(f.feeds, feed{port: x.Out, source: -1, conv: i, amps: a.Value, numbers: []derive.Number{a}})
		}
	}
}

// blockingKinds block reverse current unless the plan says otherwise.
var blockingKinds = []string{"charger", "diode", "inverter", "load-center"}

// reverse says whether current is kept from coming out of a converter's input; lacks names the flag
// that nothing is known without.
func reverse(x *network.Converter) (lacks []derive.Missing, blocked bool) {
	switch {
	case x.In.Hot == network.None || x.In.Ret == network.None || x.BlocksReverse.True():
		return nil, true
	case x.BlocksReverse.Set:
		return nil, false
	case slices.Contains(blockingKinds, x.Kind.Value):
		return nil, true
	}
	return missing(x.Converter, "blocks_reverse"), false
}

// equivalent is what a port gives as one source: volts behind a resistance, or a current.
type equivalent struct {
	found   bool
	volts   float64
	ohms    float64
	amps    float64
	numbers []derive.Number
	lacks   []derive.Missing
}

// behind adds what a converter's other side gives, as it stands behind that side; false where nothing
// is there.
func (f *Faults) behind(out, in network.Port, conv int) bool {
	q := f.c.equivalent(in, f.corner)
	f.lacks = merge(f.lacks, q.lacks...)
	if q.found {
		f.feeds = append(f.feeds, feed{port: out, source: -1, conv: conv, volts: q.volts, ohms: q.ohms, amps: q.amps, numbers: q.numbers})
	}
	return q.found || q.lacks != nil
}

type equivalentKey struct {
	at     network.NodeID
	corner Corner
}

// equivalent is what feeds a port in the state in which it gives most, or least. A ring of converters
// ends where it began.
func (c *Circuit) equivalent(p network.Port, corner Corner) equivalent {
	k := equivalentKey{p.Hot, corner}
	if q, ok := c.equivalents[k]; ok {
		return q
	}
	if c.equivalents == nil {
		c.equivalents = map[equivalentKey]equivalent{}
	}
	c.equivalents[k] = equivalent{}
	out := c.feedsAt(p, corner)
	c.equivalents[k] = out
	return out
}

func (c *Circuit) feedsAt(p network.Port, corner Corner) (out equivalent) {
	z := c.Net.ZoneOf(p.Hot)
	if z == nil {
		return out
	}
	list, complete := c.Sections(c.Net.Stack(z), c.Space.Closed(explore.All()))
	if !complete {
		out.lacks = []derive.Missing{{Subject: "plan", Attribute: "states"}}
	}
	most := 0.0
	for s := range list {
		if !slices.Contains(s.Nodes, p.Hot) {
			continue
		}
		x, lacks, ok := c.Faults(s, corner, false).At(p.Hot)
		out.lacks = merge(out.lacks, lacks...)
		if !ok || out.found && (corner == Least) != (x.Amps() < most) {
			continue
		}
		most = x.Amps()
		out.found, out.volts, out.ohms, out.amps = true, x.Amps()*x.ohms, x.ohms, x.Amps()
		out.numbers = []derive.Number{x.Number(-1)}
	}
	return out
}

// Guessed names the batteries without a resistance or short-circuit figure of their own whose default a
// number leans on.
func (c *Circuit) Guessed(numbers ...derive.Number) []derive.Missing {
	var out []derive.Missing
	derive.Walk(numbers, func(n derive.Number) {
		if n.Kind != derive.Assumption || n.Attribute != "resistance" && n.Attribute != "resistance (high)" {
			return
		}
		if s, ok := schema.Lookup[*schema.Source](c.Net.Plan, n.Subject); ok && !s.ShortCircuit.Set {
			out = merge(out, derive.Missing{Subject: n.Subject, Attribute: "resistance"})
		}
	})
	return out
}

// Ports lists where current is pushed in: by what only wire limits, or by what limits itself.
func (f *Faults) Ports(limited bool) []network.Port {
	var out []network.Port
	for i := range f.feeds {
		if (f.feeds[i].ohms == 0) == limited {
			out = append(out, f.feeds[i].port)
		}
	}
	return out
}

// Lacks is what is not known of what pushes current into the section.
func (f *Faults) Lacks() []derive.Missing { return f.lacks }

// Doubts names the flags without which it is not known whether something pushes current in at all.
func (f *Faults) Doubts() []derive.Missing { return f.doubts }
