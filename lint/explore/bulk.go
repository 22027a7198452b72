package explore

import (
	"fmt"
	"math"
	"slices"

	"ferrule/lint/network"
	"ferrule/schema"
)

// bulk is what can be drawn, by kind of load: of loads of one kind the sums say who draws more.
type bulk struct {
	kinds  map[string]*mass
	amps   float64 // about; of a load without a figure none
	drop   float64 // bounds what the wires before the loads drop, as a share of the volts
	single string  // all that matters of a lone load and its wires; "" of more

	drawn  mass // of loads that state a current, whatever they are
	unsaid bool // some load states none or for other volts than the circuit's, or more is asked of it
}

type mass struct {
	sum, lasting float64
	plain        bool // a constant current: the wires before it do not change it
	loads        map[int]bool
}

func newBulk() *bulk { return &bulk{kinds: map[string]*mass{}} }

// add counts a load; an engine's starter, whose current some questions leave out, by itself.
func (b *bulk) add(l *network.Load, i int, starter bool) {
	kind, value, plain := kindOf(l, i)
	if starter {
		kind, value, plain = fmt.Sprint("load ", i), 1, true
	}
	m := b.kinds[kind]
	if m == nil {
		m = &mass{plain: plain, loads: map[int]bool{}}
		b.kinds[kind] = m
	}
	b.amps += ampsOf(l)
	long := !l.HoursPerDay.Set || l.HoursPerDay.Value >= threeHours
	m.add(value, long)
	m.loads[i] = true
	if l.Draw.Set && !l.RatedVoltage.Set && !starter && !asked(l) && !passing(l) {
		b.drawn.add(l.Draw.Value, long)
	} else {
		b.unsaid = true
	}
}

func (m *mass) add(value float64, long bool) {
	m.sum += value
	if long {
		m.lasting += value
	}
}

// merge adds what hangs on a limb further in.
func (b *bulk) merge(c *bulk) {
	for kind, m := range c.kinds {
		if b.kinds[kind] == nil {
			b.kinds[kind] = &mass{plain: m.plain, loads: map[int]bool{}}
		}
		b.kinds[kind].sum += m.sum
		b.kinds[kind].lasting += m.lasting
		for i := range m.loads {
			b.kinds[kind].loads[i] = true
		}
	}
	b.drawn.sum, b.drawn.lasting = b.drawn.sum+c.drawn.sum, b.drawn.lasting+c.drawn.lasting
	b.unsaid = b.unsaid || c.unsaid
	b.amps += c.amps
	b.drop = max(b.drop, c.drop)
}

// either adds what a limb further in draws where that is not sure: no other sum makes up for it.
func (b *bulk) either(v int, c *bulk) {
	kind := fmt.Sprint("limb ", v)
	if b.kinds[kind] == nil {
		b.kinds[kind] = &mass{plain: true, sum: 1, lasting: 1, loads: map[int]bool{}}
	}
	for _, m := range c.kinds {
		for i := range m.loads {
			b.kinds[kind].loads[i] = true
		}
	}
	b.unsaid = true
	b.amps += c.amps
	b.drop = max(b.drop, c.drop)
}

const threeHours = 3 * 3600 // s: what runs for less does not count as lasting

const lowVolts = 12 // the lowest class: what is dropped weighs most there

// ampsOf bounds about what a load draws in the lowest class, A: what it draws at volts of its own it may draw
// many times there, or power by their square.
func ampsOf(l *network.Load) float64 {
	other := 1.0
	if v := l.RatedVoltage.Value; l.RatedVoltage.Set && v > 0 {
		other = max(v/lowVolts, lowVolts/v)
	}
	switch {
	case l.Draw.Set:
		return l.Draw.Value * other
	case l.Power.Set:
		return l.Power.Value / lowVolts * other * other
	case l.Resistance.Set && l.Resistance.Value > 0:
		return 2 * lowVolts / l.Resistance.Value
	}
	return 0
}

const (
	jointOhms = 0.02       // ohm: bounds the joints and contacts of one part, at four times the usual too
	ohmMetre  = 0.04 / 1e6 // ohm m: bounds copper and aluminum, warm
)

// ohmsOf bounds the resistance of an edge and of its return.
func ohmsOf(n *network.Network, e *network.Edge) float64 {
	if x, ok := schema.Lookup[*schema.Connector](n.Plan, e.Addr); ok && x.ContactResistance.Set {
		return 2 * max(jointOhms, x.ContactResistance.Value)
	}
	if e.Kind != network.Wire {
		return 2 * jointOhms
	}
	if !e.Wire.Size.Set || !e.Wire.Length.Set || e.Wire.Size.Area <= 0 {
		return math.Inf(1)
	}
	return 2 * (jointOhms + ohmMetre*e.Wire.Length.Value/(e.Wire.Size.Area*1e-6))
}

// kindOf tells with which other loads a load can be summed. One of which more is asked than its current,
// or whose figure is not known, stands alone.
func kindOf(l *network.Load, i int) (kind string, value float64, plain bool) {
	switch how := fmt.Sprintf("%s %s %g", l.Behavior.Value, l.Kind.Value, l.RatedVoltage.Value); {
	case asked(l), passing(l):
	case l.Draw.Set && l.Behavior.Value == "constant-current":
		return "current", l.Draw.Value, true
	case l.Draw.Set:
		return "draw " + how, l.Draw.Value, false
	case l.Power.Set:
		return "power " + how, l.Power.Value, false
	case l.Resistance.Set && l.Resistance.Value > 0:
		return "conductance " + how, 1 / l.Resistance.Value, false
	}
	return fmt.Sprint("load ", i), 1, true
}

// asked says whether more is asked of a load than what it draws.
func asked(l *network.Load) bool {
	return len(l.RunsIn.List) > 0 || len(l.NeededIn.List) > 0 || l.Critical.Set && l.Critical.Value != "none" || l.Control.Set ||
		slices.Contains([]string{"alarm", "brake", "bilge-pump"}, l.Kind.Value)
}

// passing says whether a load draws something for a while alone: what runs for less, or starts with less, does
// not make up for it.
func passing(l *network.Load) bool {
	return l.Surge.Set || l.HoursPerDay.Set && l.HoursPerDay.Value < threeHours
}

// makeOfLoad tells all that matters of what a lone load draws; "" where more is asked of it.
func makeOfLoad(l *network.Load, parts []string) string {
	kind, value, _ := kindOf(l, 0)
	if asked(l) || ampsOf(l) == 0 {
		return ""
	}
	if passing(l) {
		kind = fmt.Sprint("passing", l.Behavior.Value, l.Kind.Value, l.RatedVoltage.Value, l.Draw.Value, l.Power.Value, l.Resistance.Value, l.Surge.Value, l.SurgeTime.Value)
	}
	return fmt.Sprint(kind, value, l.HoursPerDay.Set, l.HoursPerDay.Value, l.VoltageMin.Value, parts)
}

// makeOf tells all that matters of what a part drops.
func makeOf(e *network.Edge) string {
	switch {
	case e.Wire != nil:
		w := e.Wire
		return fmt.Sprint("wire", w.Size.Name, w.Length.Value, w.Material.Value, w.Stranding.Value, w.Parallel.Value, w.Polarity.Value, addrs(w.Through))
	case e.Fuse != nil:
		return fmt.Sprint("fuse", e.Fuse.Kind.Value, e.Fuse.Rating.Value)
	}
	return e.Kind.String()
}

// outdoes says whether more is drawn than of another bulk, whatever the volts: kind by kind the same loads
// and more, or by so much more that what the wires before them drop cannot turn it.
func (b *bulk) outdoes(c *bulk) bool {
	if b.single != "" && b.single == c.single || b.dwarfs(c) {
		return true
	}
	for kind, m := range c.kinds {
		mine := b.kinds[kind]
		if mine == nil {
			return false
		}
		margin := 1.0
		if !mine.plain {
			margin = c.lifts() / b.sags()
		}
		if (mine.sum < margin*m.sum || mine.lasting < margin*m.lasting) && !(mine.plain && mine.includes(m)) {
			return false
		}
	}
	return true
}

// How far a load's current may be from the one that it states: a resistance follows the volts, a constant
// power runs against them, and a circuit of 12 V has 8 to 18 where anything works in it: four cells of li-ion
// are full at 16.8, a battery of lead equalises at 16.2.
const (
	least, highest = 0.65, 1.5
)

// dwarfs says whether the currents that loads state are so much more than another bulk's that no volts turn it.
func (b *bulk) dwarfs(c *bulk) bool {
	if b.unsaid || c.unsaid {
		return false
	}
	low, high := least*b.sags(), highest*c.lifts()
	return low*b.drawn.sum >= high*c.drawn.sum && low*b.drawn.lasting >= high*c.drawn.lasting
}

// most is the drop, as a share, up to which the current of a load follows the volts about in proportion.
const most = 0.2

// lifts is how many times its figure a load may draw as the volts at it drop, sags how few times.
func (b *bulk) lifts() float64 {
	if b.drop > most {
		return math.Inf(1)
	}
	return 1 + 2*b.drop
}

func (b *bulk) sags() float64 { return max(0, 1-2*b.drop) }

func (m *mass) includes(other *mass) bool {
	for i := range other.loads {
		if !m.loads[i] {
			return false
		}
	}
	return true
}

func addrs(refs schema.Refs) []string {
	var out []string
	for _, r := range refs.List {
		out = append(out, r.Addr)
	}
	return out
}
