package spicetest

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// maker draws a plan: circuits of one or more voltages, joined by converters, each with places to which
// parts are wired through fuses, switches and connectors.
type maker struct {
	t      *rapid.T
	text   strings.Builder
	count  int
	linear bool // no constant power, converter or array
	meshed bool
	places [][]string // by circuit
	volts  []int      // by circuit
}

var (
	gauges = []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG", "2/0 AWG", "6 mm2", "25 mm2"}
	kinds  = map[int]string{12: "agm flooded gel lifepo4 li-ion", 24: "agm flooded lifepo4", 48: "lifepo4 agm"}
)

func (m *maker) add(format string, args ...any) { fmt.Fprintf(&m.text, format+"\n", args...) }

func (m *maker) pick(label string, from ...string) string {
	return rapid.SampledFrom(from).Draw(m.t, label)
}

func (m *maker) upTo(least, most int, label string) int {
	return rapid.IntRange(least, most).Draw(m.t, label)
}

func (m *maker) chance(in int, label string) bool { return m.upTo(1, in, label) == 1 }

func (m *maker) name(kind string) string {
	m.count++
	return fmt.Sprintf("%s%d", kind, m.count)
}

// wire joins two terminals as a pair, or as one wire out and another back over the chassis.
func (m *maker) wire(from, to string) {
	size, length := m.pick("size", gauges...), m.upTo(1, 60, "decimetres")
	one := func(from, to, polarity string) {
		m.add("conductor %q {\n  from = %s\n  to = %s\n  polarity = %q\n  size = %q\n  length = \"%d0 cm\"\n}", m.name("c"), from, to, polarity, size, length)
	}
	if m.chance(6, "chassis") {
		one(from, to, "positive")
		one(to+".neg", "bus.chassis", "negative")
		return
	}
	one(from, to, "pair")
}

// lead wires something to a place of a circuit, through a device or two, and gives the terminal at its end.
func (m *maker) lead(circuit int) string {
	at := m.pick("place", m.places[circuit]...)
	for range m.upTo(0, 2, "devices") {
		var in, out string
		switch m.upTo(0, 5, "device") {
		case 0, 1:
			n := m.name("f")
			m.add("fuse %q {\n  kind = %q\n  rating = \"30 A\"\n}", n, m.pick("kind", "blade", "terminal", "breaker"))
			in, out = "fuse."+n+".line", "fuse."+n+".load"
		case 2:
			n := m.name("s")
			m.add("switch %q {\n  terminals = [\"a\", \"b\"]\n  poles = %d\n  position \"on\" {\n    joins = [[\"a\", \"b\"]]\n  }\n  position \"off\" {\n  }\n}", n, m.upTo(1, 2, "poles"))
			in, out = "switch."+n+".a", "switch."+n+".b"
		case 3:
			n := m.name("k")
			m.add("connector %q {\n  style = \"x\"\n  mated = \"always\"\n}", n)
			in, out = "connector."+n+".fixed", "connector."+n+".free"
		default:
			n := m.name("b")
			m.add("bus %q {\n}", n)
			in, out = "bus."+n, "bus."+n
			m.places[circuit] = append(m.places[circuit], in)
		}
		m.wire(at, in)
		at = out
	}
	return at
}

func (m *maker) battery(circuit int) {
	volts := m.volts[circuit]
	n := m.name("p")
	m.add("source %q {\n  kind = \"battery\"\n  chemistry = %q\n  voltage = \"%d V\"\n  capacity = \"%d Ah\"", n, m.pick("chemistry", strings.Fields(kinds[volts])...), volts, m.upTo(20, 300, "Ah"))
	switch m.upTo(0, 4, "figures") {
	case 0:
		m.add("  resistance = \"%d mohm\"", m.upTo(1, 40, "mohm"))
	case 1:
		m.add("  short_circuit = \"%d A\"", m.upTo(500, 5000, "Isc"))
	case 2:
		m.add("  parallel = %d", m.upTo(2, 3, "parallel"))
	case 3:
		m.add("  charge_limit = \"%d A\"\n  removable = true", m.upTo(5, 60, "limit"))
	}
	m.add("}")
	m.wire(m.lead(circuit), "source."+n)
}

func (m *maker) supply(circuit int) {
	volts := m.volts[circuit]
	n := m.name("a")
	if m.chance(2, "alternator") {
		m.add("source %q {\n  kind = \"alternator\"\n  regulated_voltage = \"%d.%d V\"\n  rated = \"%d.71 A\"\n}", n, volts*14/12, m.upTo(0, 5, "tenths"), m.upTo(10, 120, "A"))
	} else {
		m.add("source %q {\n  kind = \"supply\"\n  voltage = \"%d.%d V\"\n  rated = \"%d.71 A\"\n}", n, volts*13/12, m.upTo(0, 9, "tenths"), m.upTo(2, 60, "A"))
	}
	m.wire(m.lead(circuit), "source."+n)
}

func (m *maker) load(circuit int) {
	volts := m.volts[circuit]
	n := m.name("l")
	most := 4
	if m.linear {
		most = 2
	}
	watts := m.upTo(1, 25, "watts") * m.upTo(1, 16, "times")
	switch m.upTo(0, most, "behaviour") {
	case 0:
		m.add("load %q {\n  power = \"%d W\"\n  behavior = \"resistive\"\n}", n, watts)
	case 1:
		m.add("load %q {\n  draw = \"%d A\"\n  behavior = \"constant-current\"\n  surge = \"%d A\"\n}", n, max(1, watts/volts), 2+watts*3/volts)
	case 2:
		m.add("load %q {\n  resistance = \"%d.5 ohm\"\n}", n, m.upTo(0, 40, "ohm"))
	case 3:
		m.add("load %q {\n  power = \"%d W\"\n  kind = \"electronics\"\n}", n, watts)
	default:
		m.add("load %q {\n  draw = \"%d A\"\n  behavior = \"constant-power\"\n}", n, 1+watts/volts)
	}
	m.wire(m.lead(circuit), "load."+n)
}

// converter opens a circuit of another voltage, or joins one of the same that is there.
func (m *maker) converter(from int, kind string) {
	n, volts, amps := m.name("x"), m.volts[from], m.upTo(1, 40, "output")
	out := []int{12, 24, 48}[m.upTo(0, 2, "out")]
	if kind == "diode" {
		out = volts
	}
	to := slices.Index(m.volts, out)
	if to < 0 || to == from || !m.chance(3, "an old circuit") {
		to = len(m.volts)
		m.places, m.volts = append(m.places, nil), append(m.volts, out)
	}
	m.add("converter %q {\n  kind = %q\n  blocks_reverse = %v", n, kind, m.chance(2, "blocks"))
	if kind != "diode" {
		m.add("  efficiency = 0.%d", m.upTo(70, 99, "efficiency"))
		if m.chance(2, "idles") {
			m.add("  idle = \"%d W\"", m.upTo(1, 12, "idle"))
		}
		if m.chance(3, "rated") {
			m.add("  rated = \"%d W\"", max(15, out*amps*m.upTo(5, 15, "rated")/10))
		}
		if m.chance(5, "trigger") {
			m.add("  trigger = \"%d.5 V\"", m.upTo(volts-3, volts+2, "trigger"))
		}
		if m.chance(3, "limited") {
			m.add("  input {\n    current_max = \"%d.13 A\"\n  }", m.upTo(2, 40, "input"))
		}
		m.add("  output {\n    voltage = \"%d.%d V\"\n    current_max = \"%d.37 A\"\n  }", out*13/12, m.upTo(0, 9, "tenths"), amps)
	}
	m.add("}")
	m.wire(m.lead(from), "converter."+n+".in")
	b := m.name("b")
	m.add("bus %q {\n}", b)
	if len(m.places[to]) > 0 {
		m.wire(m.lead(to), "bus."+b)
	}
	m.places[to] = append(m.places[to], "bus."+b)
	m.wire("converter."+n+".out", "bus."+b)
}

// array is a roof with its own circuit, into a tracker as a rule.
func (m *maker) array(to int) {
	n := m.name("r")
	series := m.upTo(1, 3, "series")
	m.add("source %q {\n  kind = \"solar\"\n  voc = \"22.%d V\"\n  isc = \"6.%d A\"\n  vmp = \"18.%d V\"\n  imp = \"5.%d A\"\n  coldest = \"-15 C\"\n  series = %d\n  parallel = %d\n}",
		n, m.upTo(0, 9, "voc"), m.upTo(1, 9, "isc"), m.upTo(0, 9, "vmp"), m.upTo(5, 8, "imp"), series, m.upTo(1, 3, "parallel"))
	if m.chance(5, "no tracker") {
		m.wire(m.lead(to), "source."+n)
		return
	}
	b := m.name("b")
	m.add("bus %q {\n}", b)
	m.wire("source."+n, "bus."+b)
	m.places = append(m.places, []string{"bus." + b})
	m.volts = append(m.volts, 18*series)
	m.converter(len(m.places)-1, "mppt")
}

// meshes joins places of one circuit once more.
func (m *maker) meshes() {
	for range m.upTo(0, 3, "meshes") {
		places := m.places[m.upTo(0, len(m.places)-1, "circuit")]
		if a, b := m.pick("from", places...), m.pick("to", places...); a != b {
			m.meshed = true
			m.wire(a, b)
		}
	}
}

// draw draws a plan of up to so many parts.
func (m *maker) draw() string {
	m.add("system \"t\" {\n  practice = [\"general\"]\n  ambient = \"%d C\"\n}\nbus \"chassis\" {\n  polarity = \"chassis\"\n}\nbus \"main\" {\n}", m.upTo(-10, 60, "ambient"))
	m.places, m.volts = [][]string{{"bus.main"}}, []int{[]int{12, 24, 48}[m.upTo(0, 2, "system")]}
	m.add("conductor \"earth\" {\n  from = bus.main.neg\n  to = bus.chassis\n  polarity = \"negative\"\n  size = \"4 AWG\"\n  length = \"1 m\"\n}")
	for range m.upTo(1, 3, "batteries") {
		m.battery(0)
	}
	for range m.upTo(0, 7, "parts") {
		m.part(m.upTo(0, len(m.places)-1, "circuit"))
	}
	m.meshes()
	return m.text.String()
}

func (m *maker) part(on int) {
	switch k := m.upTo(0, 9, "part"); {
	case k < 5 || m.linear:
		m.load(on)
	case k == 5:
		m.supply(on)
	case k == 6:
		m.array(on)
	case k == 7 && kinds[m.volts[on]] != "":
		m.battery(on)
	default:
		m.converter(on, m.pick("kind", "dc-dc", "dc-dc", "dc-dc", "diode"))
	}
}

// shuffled is up to so many of a list.
func shuffled(t *rapid.T, list []state, most int) []state {
	if len(list) <= most {
		return list
	}
	return slices.Clone(rapid.Permutation(list).Draw(t, "order")[:most])
}
