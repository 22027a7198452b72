package bonding

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var chassisReturn = &lint.Rule{
	ID:      "bonding/chassis-return",
	Claim:   "Frame, hull or hitch is part of the circuit for a current that it should not carry.",
	Words:   []lint.Severity{lint.Caution, lint.Warning},
	Subject: "chassis bus",
	When: "More than 5 A of house or charge current can come home through a chassis bus, or a tenth of the current of a load that somebody's safety hangs on; on a boat any current " +
		"but a starter's.",
	Why: "Rust, paint and a hitch that moves are no joint: the metal heats at one bolt, loads dim, and what is left looks for a way through shields and lamp filaments. On a boat it also " +
		"eats the metal under water. Caution; warning on a boat, and where brakes or road lights depend on it.",
	Numbers: "Current: a sum of what comes home through the bus, each current by the share that resistance gives it where returns lie in a ring, and no more than what can be given. " +
		"House current is what any source but a starting battery or an alternator can feed; charge current is what converters and batteries other than the starting " +
		"battery take. One rusted joint is taken for 50 mohm, of 10 to 100. What the wires at alternator, starter and starting battery bring is the engine's own.",
	Not: "The vehicle's own lamps, horn and starter on their maker's frame return, and what the engine carries between its own alternator, starter and starting battery. One bond, through " +
		"which nothing comes home. How good the metal really is. Whether the bus is a hull, a mast or an engine: on a boat it counts as each.",
	Offer: "A copper return to the battery or its bus, and one bond to the chassis.",
	Meter: "Millivolts from the battery's negative to the far end of the chassis at full load: below 100 mV.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 552.10(B)", Standing: lint.Read, Note: "lets a frame be a return in park trailers; what else comes home through it is weighed here as good practice", For: []string{"us-rv"}},
		{Ref: "46 CFR 183.370", Standing: lint.Read, Note: "a hull is no conductor except for cranking and cathodic protection; good practice from small passenger vessels", For: []string{"us-boat", "iso-boat"}},
		{Ref: "ABYC E-11", Standing: lint.FromMemory, Note: "two wires for every circuit", For: []string{"us-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a hitch ball is no ground; the 5 A and the 50 mohm"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.OwnReturn, remedy.Isolated},
	Since:  "0.1",
	Run:    chassisReturns,
}

const (
	mostHome  = 5    // A of house or charge current
	leastPart = 1e-3 // A that is told from none
	needed    = 0.1  // of a load's current, that makes a chassis its return
	rusted    = 0.05 // ohm
)

func chassisReturns(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	m := &metal{Pass: p, boat: p.Plan.Graded("us-boat") || p.Plan.Graded("iso-boat")}
	for _, x := range p.Plan.Buses {
		if x.Polarity.Value != "chassis" {
			continue
		}
		if m.ways == nil {
			m.prepare()
		}
		out = append(out, m.verdict(x))
	}
	return out
}

// metal is what chassis buses are part of.
type metal struct {
	*lint.Pass
	boat           bool
	ways           *circuit.Returns
	counted, vital []circuit.Taker // what must not come home through metal; what somebody's safety hangs on
	plain          bool            // what comes home through the metal can be told by resistance
}

func (m *metal) prepare() {
	m.ways = m.Circuit.Returns()
	m.counted, m.plain = m.Circuit.Takers(m.counts)
	m.vital, _ = m.Circuit.Takers(func(b schema.Block) bool {
		l, ok := b.(*schema.Load)
		return ok && m.vitalLoad(l)
	})
}

func (m *metal) verdict(x *schema.Bus) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Caution}
	limit := derive.LookUp("most house or charge current in a chassis", "limit", mostHome, "A", "common practice")
	if m.boat {
		v.Word = lint.Warning
		limit = derive.LookUp("current in hull, mast or engine", "limit", 0, "A", "46 CFR 183.370, read as good practice")
	}
	f := m.through(x)
	v.Numbers = lint.Known(f.lacks, limit, f.n)
	load, road := m.hangs(x)
	if road {
		v.Word = lint.Warning
	}
	if f.edge >= 0 {
		v.Related = []string{m.Net.Edges[f.edge].Addr}
		v.Group = "home by " + m.Net.Edges[f.edge].Addr
	}
	switch {
	case f.n.Value > limit.Value+leastPart:
		m.violated(&v, f, load)
	case load != nil:
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s, on which somebody's safety hangs, has its return through %s.", lint.Quote(load), lint.Quote(x))
	case len(f.lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, f.lacks
		v.Message = fmt.Sprintf("How much comes home through %s is not known: %s is missing.", lint.Quote(x), lint.Lacking(f.lacks[0], true))
	}
	return v
}

func (m *metal) violated(v *lint.Verdict, f flow, load *schema.Load) {
	v.Outcome = lint.Violated
	what := fmt.Sprintf("Up to %s of house and charge current comes home through %s", f.n.Text(), lint.Quote(v.Subject))
	least := f.n
	if f.most != nil {
		least = f.part
		what = fmt.Sprintf("%s has its return through %s, up to %s", lint.Quote(f.most), lint.Quote(v.Subject), f.part.Text())
	}
	so := "hull, mast and engine are no conductor"
	if !m.boat {
		so = m.joint(v, least)
	}
	v.Message = fmt.Sprintf("%s; %s.", what, so)
	if f.n.Value > least.Value*1.05 {
		v.Message += fmt.Sprintf(" With others it is %s at most.", f.n.Text())
	}
	if load != nil && schema.Block(load) != f.most {
		v.Message += fmt.Sprintf(" %s depends on it too.", lint.Quote(load))
	}
}

// joint tells what a current does at one rusted joint.
func (m *metal) joint(v *lint.Verdict, i derive.Number) string {
	r := derive.Assume("one rusted joint in the metal", "Rj", rusted, "ohm", v.Subject.Header().Addr, "resistance of its joints", "common practice, 10 to 100 mohm")
	heat := derive.Compute("heat at one rusted joint", "P", i.Value*i.Value*rusted, "W", "P = I^2 x Rj", i, r)
	v.Numbers = append(v.Numbers, heat)
	return fmt.Sprintf("one rusted joint of %s makes %s of it", r.Text(), heat.Text())
}

// flow is what comes home through a chassis bus.
type flow struct {
	n     derive.Number
	most  schema.Block // what takes the most of it; nil where nothing comes home
	part  derive.Number
	edge  int // the wire by which most comes home, -1 likewise
	lacks []lint.Missing
}

// through is the most that comes home through a chassis bus: of each current the largest part. Without
// knowing the parts it is at least what its strongest wire carries, and the parts are what is missing.
func (m *metal) through(x *schema.Bus) flow {
	f := flow{edge: -1}
	edges := m.Net.At(m.Net.Node(x.Addr))
	foreign := func(e int) bool { return !m.own(x, e) }
	top := 0.0
	for _, e := range edges {
		w := m.Circuit.Worst(e)
		if !foreign(e) {
			continue
		}
		f.lacks = append(f.lacks, w.Lacks...)
		if w.Steady.Value > top {
			top, f.edge = w.Steady.Value, e
		}
	}
	if f.edge < 0 {
		return f
	}
	if !m.plain || slices.ContainsFunc(edges, func(e int) bool { return !m.ways.Knows(e) }) {
		f.lacks = append(f.lacks, m.ways.Lacks...)
		if len(f.lacks) == 0 {
			f.lacks = []lint.Missing{{Subject: "plan", Attribute: "returns without sources in a row"}}
		}
		return f
	}
	f.n = m.ways.Through(edges, foreign, m.counted, "largest current home through "+lint.Quote(x))
	for _, t := range m.counted {
		if n := m.ways.Through(edges, foreign, []circuit.Taker{t}, "largest current home through "+lint.Quote(x)); n.Value > f.part.Value {
			f.most, f.part = t.Block, n
		}
	}
	return f
}

// own says whether an edge at a chassis is the lead of an alternator, a starter or a starting battery.
func (m *metal) own(x *schema.Bus, e int) bool {
	far := m.Net.Edges[e].Other(m.Net.Node(x.Addr))
	for i := range m.Net.Sources {
		if s := &m.Net.Sources[i]; s.Ret == far && engines(s.Source) {
			return true
		}
	}
	for _, i := range m.Circuit.Starters() {
		if m.Net.Loads[i].Ret == far {
			return true
		}
	}
	return false
}

// engines says whether a source is an engine's own.
func engines(s *schema.Source) bool {
	return s.Kind.Value == "alternator" || s.Kind.Value == "battery" && s.Role.Value == "starting"
}

// counts says what must not come home through metal: house and charge current; on a boat all but a
// starter's.
func (m *metal) counts(b schema.Block) bool {
	switch x := b.(type) {
	case *schema.Load:
		return !m.starter(x) && (m.boat || !m.vehicles(x))
	case *schema.Source:
		return !engines(x)
	}
	return true
}

func (m *metal) starter(l *schema.Load) bool {
	for _, i := range m.Circuit.Starters() {
		if m.Net.Loads[i].Load == l {
			return true
		}
	}
	return false
}

// vehicles says whether nothing but an engine's own sources can feed a load.
func (m *metal) vehicles(l *schema.Load) bool {
	z := m.zone(l)
	if z == nil || len(z.Outputs) > 0 {
		return false
	}
	for _, i := range z.Sources {
		if !engines(m.Net.Sources[i].Source) {
			return false
		}
	}
	return true
}

func (m *metal) zone(l *schema.Load) *network.Zone {
	id := m.Net.Node(l.Addr + ".pos")
	if id == network.None {
		return nil
	}
	return m.Net.ZoneOf(id)
}

// vitalLoad says whether somebody's safety hangs on a load. A vehicle's own lights are its maker's.
func (m *metal) vitalLoad(l *schema.Load) bool {
	switch {
	case m.vehicles(l) && !m.towed(l):
		return false
	case l.Critical.Set:
		return l.Critical.Value != "none"
	case l.Kind.Value == "light":
		return m.towed(l)
	}
	return l.Kind.Value == "brake" || l.Kind.Value == "alarm"
}

// towed says whether a load lies behind a tow plug, so that no source feeds it once the plug parts.
func (m *metal) towed(l *schema.Load) bool {
	z := m.zone(l)
	if z == nil {
		return false
	}
	from := m.Net.Node(l.Addr + ".pos")
	seen, plugged := map[network.NodeID]bool{from: true}, false
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range m.Net.At(queue[0]) {
			if k, ok := schema.Lookup[*schema.Connector](m.Plan, m.Net.Edges[e].Addr); ok && k.Tow.True() {
				plugged = true
				continue
			}
			if to := m.Net.Edges[e].Other(queue[0]); !seen[to] && m.Net.ZoneOf(to) == z {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	for _, i := range z.Sources {
		if seen[m.Net.Sources[i].Hot] {
			return false
		}
	}
	for _, i := range z.Outputs {
		if seen[m.Net.Converters[i].Out.Hot] {
			return false
		}
	}
	return plugged
}

// hangs finds a load that somebody's safety hangs on with a tenth of its return or more through a bus,
// brakes and road lights first; road says that it is one of these.
func (m *metal) hangs(x *schema.Bus) (found *schema.Load, road bool) {
	edges := m.Net.At(m.Net.Node(x.Addr))
	for _, t := range m.vital {
		l := t.Block.(*schema.Load)
		if road || m.ways.Passes(edges, func(e int) bool { return !m.own(x, e) }, t) <= needed {
			continue
		}
		road = l.Kind.Value == "brake" || l.Kind.Value == "light"
		if found == nil || road {
			found = l
		}
	}
	return found, road
}
