package switching

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var noBatteryDisconnect = &lint.Rule{
	ID:      "switching/no-battery-disconnect",
	Claim:   "Nothing within reach takes the battery off the loads.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "battery",
	When: "A battery of more than 100 Ah, with those that stand on one wire with it, reaches loads or an inverter in every allowed position of the disconnects, manual and transfer " +
		"switches that somebody aboard can throw. A plug that may be pulled under load counts as a disconnect.",
	Why:     "A small electrical fire cannot be starved: caution. With an inverter on the battery there is more energy behind it, and the inverter draws on: warning.",
	Numbers: "More than 100 Ah, the capacities of batteries joined by wire, devices and plugs added up.",
	Not: "Bilge pumps, alarms, loads marked life-safety and chargers of another battery, by `charges` or because it is a starting one or of more than 100 Ah: they stay live on purpose. A starting battery of a vehicle. Switches that spring back, that " +
		"follow a source or that sense a voltage, and switches in the negative. A breaker: draw the one that serves as a switch as a switch beside it. A switch counts if it can be thrown " +
		"in one mode with people aboard. Cold cranking amperes, which a plan does not tell.",
	Offer: "A switch after the main fuse; safety loads ahead of it, each with a fuse of its own.",
	Meter: "Switch off, chargers dead: volts on the house bus fall to 0.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-11 11.6.1.2.1", Standing: lint.Read, Note: "a battery switch from 100 Ah or 800 A cranking, with exemptions; read in a quotation", For: []string{"us-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "every house battery has a switch that can be reached"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.Disconnect},
	Since:  "0.1",
	Run:    disconnects,
}

const (
	mostWithoutSwitch = 100.0 // Ah
	mostSettings      = 4096  // of switches that have no off, or that an interlock ties
)

func disconnects(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "battery" {
			c := &cutting{Pass: p, battery: i}
			out = append(out, c.verdict())
		}
	}
	return out
}

// cutting asks what stays on one battery whatever is thrown.
type cutting struct {
	*lint.Pass
	battery int
}

func (c *cutting) verdict() lint.Verdict {
	b := c.Net.Sources[c.battery].Source
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: lint.Caution}
	if b.Role.Value == "starting" && c.Plan.Graded("vehicle") {
		return v
	}
	n, lacks := c.together()
	v.Numbers = lint.Known(lacks, n)
	if len(lacks) == 0 && n.Value <= mostWithoutSwitch {
		return v
	}
	left, known := c.least(false)
	if len(left) == 0 {
		return v
	}
	if slices.ContainsFunc(left, inverting) {
		v.Word = lint.Warning
	}
	if !known {
		return lint.Unfinished(b, v.Word)
	}
	names := []string{}
	for _, x := range left {
		v.Related = append(v.Related, x.Header().Addr)
		names = append(names, lint.Quote(x))
	}
	if k := len(names); k > 4 {
		names = append(names[:3], fmt.Sprintf("%d more", k-3))
	}
	v.Outcome, v.Group = lint.Violated, "on one wire with "+c.first()
	v.Message = fmt.Sprintf("No switch that somebody aboard can throw takes %s off %s.", lint.Quote(b), lint.And(names...))
	if n.Value <= mostWithoutSwitch {
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message += " Whether it is large enough to need one is not known: " + lint.Lacking(lacks[0], true) + " is missing."
	} else if still, known := c.least(true); len(still) == 0 && known {
		v.Outcome = lint.NotProven
		for _, x := range c.plugs() {
			v.Missing = append(v.Missing, lint.Missing{Subject: x.Addr, Attribute: "load_break"})
		}
		v.Message += " A plug does, and whether it may be pulled under load is not written."
	}
	return v
}

func inverting(b schema.Block) bool {
	x, ok := b.(*schema.Converter)
	return ok && x.Kind.Value == "inverter"
}

// together is the capacity of the battery and of those that wire, devices and plugs join to it.
func (c *cutting) together() (derive.Number, []lint.Missing) {
	seen := c.onOneWire()
	var parts []derive.Number
	var lacks []lint.Missing
	sum := 0.0
	for i := range c.Net.Sources {
		s := &c.Net.Sources[i]
		if s.Kind.Value != "battery" || !seen[s.Hot] {
			continue
		}
		n, m := c.Circuit.Capacity(s.Source)
		lacks = append(lacks, m...)
		if m == nil {
			parts, sum = append(parts, n), sum+n.Value*float64(s.Parallel.Or(1))
		}
	}
	if len(parts) == 0 {
		return derive.Number{}, lacks
	}
	return derive.Compute("capacity on one wire", "C", sum, "Ah", "C = sum of the units in parallel", parts...), lacks
}

// onOneWire is the live nodes that wire, devices and plugs join to the battery.
func (c *cutting) onOneWire() map[network.NodeID]bool {
	return c.walk(func(e *network.Edge) bool { return e.Kind != network.Contact }, false)
}

// first is the first battery on one wire with this one: they are told together.
func (c *cutting) first() string {
	seen := c.onOneWire()
	i := slices.IndexFunc(c.Net.Sources, func(s network.Source) bool { return s.Kind.Value == "battery" && seen[s.Hot] })
	return c.Net.Sources[i].Addr
}

// walk is the live nodes that the battery reaches over edges that conduct; through says whether it
// goes on behind converters that feed loads.
func (c *cutting) walk(conducts func(*network.Edge) bool, through bool) map[network.NodeID]bool {
	from := c.Net.Sources[c.battery].Hot
	seen := map[network.NodeID]bool{}
	var queue []network.NodeID
	visit := func(id network.NodeID) {
		if id != network.None && !seen[id] && !c.Net.Nodes[id].Return {
			seen[id] = true
			queue = append(queue, id)
		}
	}
	for visit(from); len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, e := range c.Net.At(at) {
			if k := &c.Net.Edges[e]; conducts(k) {
				visit(k.Other(at))
			}
		}
		for i := range c.Net.Converters {
			if x := &c.Net.Converters[i]; through && x.In.Hot == at && x.Kind.Value != "inverter" && !c.charges(x) {
				visit(x.Out.Hot)
			}
		}
	}
	return seen
}

// charges says whether a converter is there for a battery: what hangs behind it is that battery's, and
// asked of it. A small one only steadies what the converter feeds.
func (c *cutting) charges(x *network.Converter) bool {
	z := c.Net.ZoneOf(x.Out.Hot)
	return len(x.Charges.List) > 0 || z != nil && slices.ContainsFunc(z.Sources, func(i int) bool {
		s := c.Net.Sources[i].Source
		n, lacks := c.Circuit.Capacity(s)
		return s.Kind.Value == "battery" && (s.Role.Value == "starting" || len(lacks) > 0 || n.Value*float64(s.Parallel.Or(1)) > mostWithoutSwitch)
	})
}

// least is what stays on the battery in the setting of the switches that leaves fewest on it. pulled
// says that plugs of which nothing is said count as disconnects too.
func (c *cutting) least(pulled bool) (best []schema.Block, known bool) {
	at, tied := c.settings()
	if i := c.Net.Sources[c.battery].Present; i >= 0 {
		at[i] = 1
	}
	known = true
	tries, first := 0, true
	var try func(rest []int)
	try = func(rest []int) {
		if tries >= mostSettings {
			known = false
			return
		}
		if len(rest) > 0 {
			for pos := range c.Net.Vars[rest[0]].Positions {
				at[rest[0]] = pos
				try(rest[1:])
			}
			delete(at, rest[0])
			return
		}
		tries++
		ok, sure := c.Space.Allows(at)
		known = known && (ok || sure)
		if !ok {
			return
		}
		if left := c.left(at, pulled); first || len(left) < len(best) {
			best, first = left, false
		}
	}
	try(tied)
	if first { // no setting is allowed with the battery there: nothing is known to come off
		best = c.left(map[int]int{}, pulled)
	}
	return best, known || len(best) == 0
}

// settings gives the switches that can stand open whatever else does, opened, and those that have no
// off or that an interlock ties.
func (c *cutting) settings() (open map[int]int, tied []int) {
	open = map[int]int{}
	seen := c.walk(func(*network.Edge) bool { return true }, true)
	for _, x := range c.Plan.Switches {
		v := c.Net.Var(x.Addr)
		if v < 0 || !c.thrown(x) || !slices.ContainsFunc(c.Net.EdgesOf(x.Addr), func(e int) bool { return seen[c.Net.Edges[e].A] }) {
			continue
		}
		off := slices.IndexFunc(x.Positions, func(p *schema.Position) bool { return len(p.Joins.Groups) == 0 })
		if off >= 0 && !c.locked(x.Addr) {
			open[v] = off
		} else {
			tied = append(tied, v)
		}
	}
	return open, tied
}

// thrown says whether somebody aboard can throw the switch and it stays.
func (c *cutting) thrown(x *schema.Switch) bool {
	if !byHand(x) || x.Momentary.True() {
		return false
	}
	return !x.ReachableWhile.Set || slices.ContainsFunc(c.Plan.Modes, func(m *schema.Mode) bool { return c.Space.Aboard(m) && x.ReachableWhile.Has(m.Addr) })
}

func (c *cutting) locked(addr string) bool {
	for _, x := range c.Plan.Interlocks {
		for _, k := range x.Never.List {
			if slices.ContainsFunc(k.List, func(p schema.Pin) bool { return p.Ref.Addr == addr }) {
				return true
			}
		}
	}
	return false
}

// left lists the loads and inverters that the battery reaches with some switches at positions and
// everything else closed.
func (c *cutting) left(at map[int]int, pulled bool) []schema.Block {
	seen := c.walk(func(e *network.Edge) bool {
		if x, ok := schema.Lookup[*schema.Connector](c.Plan, e.Addr); ok && e.Kind == network.Mate && pullable(x, pulled) {
			return false
		}
		for _, l := range e.When {
			if pos, held := at[l.Var]; held && !l.At[pos] || !held && !slices.Contains(l.At, true) {
				return false
			}
		}
		return true
	}, true)
	var out []schema.Block
	for i := range c.Net.Loads {
		if l := &c.Net.Loads[i]; seen[l.Hot] && !staysLive(l.Load) {
			out = append(out, l.Load)
		}
	}
	for i := range c.Net.Converters {
		if x := &c.Net.Converters[i]; seen[x.In.Hot] && x.Kind.Value == "inverter" {
			out = append(out, x.Converter)
		}
	}
	return out
}

func pullable(x *schema.Connector, unsaid bool) bool {
	return x.Mated.Value != "always" && (x.LoadBreak.True() || unsaid && !x.LoadBreak.Set)
}

// plugs lists the plugs of which it is not said whether they may be pulled under load.
func (c *cutting) plugs() []*schema.Connector {
	seen := c.walk(func(*network.Edge) bool { return true }, true)
	var out []*schema.Connector
	for _, x := range c.Plan.Connectors {
		if pullable(x, true) && !x.LoadBreak.Set && slices.ContainsFunc(c.Net.EdgesOf(x.Addr), func(e int) bool { return seen[c.Net.Edges[e].A] }) {
			out = append(out, x)
		}
	}
	return out
}

// staysLive says whether a load is meant to have power while the battery is switched off.
func staysLive(l *schema.Load) bool {
	return l.Kind.Value == "alarm" || l.Kind.Value == "bilge-pump" || l.Critical.Value == "life-safety"
}
