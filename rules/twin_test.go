package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// twinPlan draws a plan that an owner could have drawn: batteries behind fuses on one or two buses, a plug
// or a source that comes and goes, and circuits behind switches, selectors, plugs and choosers, nested.
type twinPlan struct {
	t     *rapid.T
	b     strings.Builder
	n     int
	buses []string
	pins  []string
	packs []string // batteries that lift out
	mode  bool     // there is to be a mode "camp"
}

func (p *twinPlan) add(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

func (p *twinPlan) upTo(least, most int, what string) int {
	return rapid.IntRange(least, most).Draw(p.t, what)
}

func (p *twinPlan) flip(what string) bool { return rapid.Bool().Draw(p.t, what) }

func (p *twinPlan) name(kind string) string {
	p.n++
	return fmt.Sprintf("%s%d", kind, p.n)
}

func (p *twinPlan) wire(from, to string) {
	p.add("conductor %q {\n  from = %s\n  to = %s\n  size = %q\n  length = \"%d cm\"\n  insulation = \"105 C\"\n}", p.name("w"), from, to,
		rapid.SampledFrom([]string{"6 AWG", "10 AWG", "14 AWG"}).Draw(p.t, "size"), 50*p.upTo(1, 6, "length"))
}

func (p *twinPlan) battery() {
	s, f := p.name("bat"), p.name("fuse")
	removable := p.flip("removable")
	p.add("source %q {\n  kind = \"battery\"\n  role = \"house\"\n  chemistry = \"lifepo4\"\n  voltage = \"12 V\"\n  capacity = \"100 Ah\"\n  short_circuit = \"2 kA\"\n  discharge_limit = \"100 A\"\n  charge_limit = \"50 A\"\n  cold_charge_cutoff = true\n  charge_voltage_max = \"14.6 V\"\n  removable = %v\n}", s, removable)
	p.add("fuse %q {\n  kind = \"class-t\"\n  rating = \"60 A\"\n  voltage_rating = \"58 V dc\"\n  interrupting = \"20 kA\"\n  on = source.%s\n}", f, s)
	if removable {
		p.packs = append(p.packs, s)
		p.pins = append(p.pins, fmt.Sprintf("source.%s = \"absent\"", s), fmt.Sprintf("source.%s = \"present\"", s))
	}
	at := "fuse." + f + ".load"
	if p.flip("behind") {
		x := p.selector()
		p.wire(at, x+".c")
		at = x + ".a"
	}
	p.wire(at, rapid.SampledFrom(p.buses).Draw(p.t, "bus"))
}

// selector draws a switch of two to four positions with the terminals c, a and b.
func (p *twinPlan) selector() string {
	s := p.name("sw")
	p.add("switch %q {\n  terminals = [\"c\", \"a\", \"b\"]\n  kind = %q\n  rating = \"100 A\"\n  voltage_rating = \"58 V dc\"\n  transition = %q", s, rapid.SampledFrom([]string{"manual", "manual", "disconnect"}).Draw(p.t, "kind"),
		rapid.SampledFrom([]string{"break-before-make", "make-before-break"}).Draw(p.t, "transition"))
	all := []string{`[["c", "a"]]`, `[]`, `[["c", "b"]]`, `[["c", "a", "b"]]`}
	count := p.upTo(2, 3, "positions")
	if p.upTo(0, 3, "poles") == 0 {
		p.add("  poles = 2")
	}
	for i := range count {
		joins := all[i]
		if p.upTo(0, 4, "odd") == 0 {
			joins = rapid.SampledFrom(all).Draw(p.t, "joins")
		}
		p.add("  position \"p%d\" {\n    joins = %s\n  }", i, joins)
		p.pins = append(p.pins, fmt.Sprintf("switch.%s = \"p%d\"", s, i))
	}
	p.add("}")
	return "switch." + s
}

func (p *twinPlan) load(at string) { p.wire(at, "load."+p.drawer()) }

// drawer draws a load that hangs nowhere yet.
func (p *twinPlan) drawer() string {
	l, odd := p.name("load"), false // rated for other volts than the circuit's
	p.add("load %q {", l)
	switch p.upTo(0, 2, "figure") {
	case 0:
		p.add("  draw = \"%d A\"", p.upTo(1, 9, "amps"))
		if how := p.upTo(0, 3, "behavior"); how < 3 {
			p.add("  behavior = %q", []string{"constant-current", "constant-power", "resistive"}[how])
		}
		if odd = p.upTo(0, 5, "rated") == 0; odd {
			p.add("  rated_voltage = \"%d V\"", rapid.SampledFrom([]int{6, 14, 24}).Draw(p.t, "rated for"))
		}
	case 1:
		p.add("  power = \"%d W\"\n  behavior = \"constant-power\"", 20*p.upTo(1, 3, "watts"))
	default:
		p.add("  resistance = \"%d ohm\"", p.upTo(2, 8, "ohms"))
	}
	p.add("  kind = %q", rapid.SampledFrom([]string{"light", "light", "heater", "electronics", "motor", "alarm", "brake"}).Draw(p.t, "kind"))
	if p.mode && p.upTo(0, 3, "moded") == 0 {
		p.add("  %s = [mode.camp]", rapid.SampledFrom([]string{"runs_in", "needed_in"}).Draw(p.t, "when"))
	}
	if p.upTo(0, 4, "counts") == 0 {
		p.add("  critical = %q", rapid.SampledFrom([]string{"none", "life-safety", "navigation"}).Draw(p.t, "critical"))
	}
	if p.flip("voltage") && !odd {
		p.add("  voltage_min = \"10 V\"\n  voltage_max = \"16 V\"")
	}
	if p.upTo(0, 3, "brief") == 0 {
		p.add("  hours_per_day = %q", rapid.SampledFrom([]string{"10 s", "20 min", "2 h", "5 h"}).Draw(p.t, "runs"))
	}
	if p.upTo(0, 4, "starts") == 0 {
		p.add("  surge = \"%d A\"\n  surge_time = %q", 20*p.upTo(1, 4, "surge"), rapid.SampledFrom([]string{"100 ms", "20 s"}).Draw(p.t, "for"))
	}
	if len(p.packs) > 0 && p.upTo(0, 7, "packed") == 0 {
		p.add("  part_of = source.%s", rapid.SampledFrom(p.packs).Draw(p.t, "pack"))
	}
	p.add("}")
	return l
}

// lowSide draws a selector in the negative: loads that hang on one wire and come home by one of two.
func (p *twinPlan) lowSide(at string) {
	s := p.selector()
	one := func(from, to string) {
		p.add("conductor %q {\n  from = %s\n  to = %s\n  polarity = \"positive\"\n  size = \"10 AWG\"\n  length = \"1 m\"\n  insulation = \"105 C\"\n}", p.name("w"), from, to)
	}
	one(at+".neg", s+".c.pos")
	for _, t := range []string{"a", "b"} {
		l := p.drawer()
		one(at+".pos", "load."+l)
		one(s+"."+t+".pos", "load."+l+".neg")
	}
}

// circuit hangs something on a place: a load, or a switch or plug with more behind it.
func (p *twinPlan) circuit(at string, deep int) {
	kind := p.upTo(0, 5, "circuit")
	if deep == 0 {
		kind = 0
	}
	switch kind {
	case 0, 1:
		p.load(at)
	case 2:
		s := p.selector()
		p.wire(at, s+".c")
		p.circuit(s+".a", deep-1)
		p.circuit(s+".b", deep-1)
	case 4:
		p.lowSide(at)
	case 3:
		k := p.name("plug")
		p.add("connector %q {\n  style = %q\n  rating = \"30 A\"\n  voltage_rating = \"58 V dc\"\n  load_break = true\n  exposed = \"free\"\n  tow = %v\n}", k, k, p.upTo(0, 2, "tow") == 0)
		p.pins = append(p.pins, fmt.Sprintf("connector.%s = \"unmated\"", k))
		p.wire(at, "connector."+k+".fixed")
		p.circuit("connector."+k+".free", deep-1)
	default: // picks among two buses
		s := p.selector()
		p.wire(at, s+".a")
		p.wire(rapid.SampledFrom(p.buses).Draw(p.t, "other"), s+".b")
		p.circuit(s+".c", deep-1)
	}
}

// engine draws an alternator with its starting battery, and a converter from there to a battery's bus.
func (p *twinPlan) engine() {
	p.add("source \"start\" {\n  kind = \"battery\"\n  role = \"starting\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  capacity = \"80 Ah\"\n  short_circuit = \"2 kA\"\n  charge_limit = \"20 A\"\n}")
	p.add("source \"alternator\" {\n  kind = \"alternator\"\n  voltage = \"12 V\"\n  rated = \"80 A\"\n  regulated_voltage = \"14.2 V\"\n}")
	p.wire("source.alternator", "source.start")
	p.converter("dc-dc", "source.start")
	if p.flip("tied") {
		x := p.selector()
		p.wire("source.start", x+".c")
		p.wire(x+".a", rapid.SampledFrom(p.buses).Draw(p.t, "tie"))
	}
}

// sun draws an array with its tracker, now and then on a plug.
func (p *twinPlan) sun() {
	p.add("source \"array\" {\n  kind = \"solar\"\n  voc = \"22 V\"\n  isc = \"10 A\"\n}")
	p.converter("mppt", "source.array")
}

// shore draws a charger on an inlet.
func (p *twinPlan) shore() {
	p.add("source \"shore\" {\n  kind = \"shore\"\n  voltage = \"120 V ac\"\n  rated = \"30 A\"\n  short_circuit = \"2 kA\"\n}")
	p.add("connector \"inlet\" {\n  style = \"inlet\"\n  rating = \"30 A\"\n  voltage_rating = \"250 V ac\"\n  load_break = true\n  exposed = \"free\"\n}")
	p.wire("source.shore", "connector.inlet.fixed")
	p.pins = append(p.pins, "connector.inlet = \"unmated\"", "source.shore = \"present\"")
	p.converter("load-center", "connector.inlet.free")
}

func (p *twinPlan) converter(kind, from string) {
	c, f := p.name("conv"), p.name("fuse")
	blocks := rapid.SampledFrom([]string{"", "  blocks_reverse = true\n", "  blocks_reverse = false\n"}).Draw(p.t, "blocks")
	least, most := "9 V", "30 V"
	if kind == "load-center" {
		least, most = "100 V ac", "135 V ac"
	}
	p.add("converter %q {\n  kind = %q\n%s  input {\n    voltage_min = %q\n    voltage_max = %q\n    current_max = \"20 A\"\n  }\n  output {\n    voltage = \"14.4 V\"\n    current_max = \"15 A\"\n  }\n}", c, kind, blocks, least, most)
	if kind != "load-center" && p.flip("way in") {
		x := p.selector()
		p.wire(from, x+".c")
		from = x + ".a"
	}
	p.wire(from, "converter."+c+".in")
	p.add("fuse %q {\n  kind = \"blade\"\n  rating = \"25 A\"\n  voltage_rating = \"58 V dc\"\n  interrupting = \"2 kA\"\n  on = %s\n}", f, rapid.SampledFrom(p.buses).Draw(p.t, "charged"))
	p.wire("converter."+c+".out", "fuse."+f+".load")
}

func drawTwin(t *rapid.T) string {
	p := &twinPlan{t: t}
	p.add("system \"t\" {\n  practice = [\"us-rv\"]\n  ambient = \"40 C\"\n}")
	for range p.upTo(1, 2, "buses") {
		b := p.name("bus")
		p.add("bus %q {\n  rating = \"200 A\"\n}", b)
		p.buses = append(p.buses, "bus."+b)
	}
	for range p.upTo(1, 2, "batteries") {
		p.battery()
	}
	p.mode = p.upTo(0, 2, "mode") == 0
	switch p.upTo(0, 5, "more") {
	case 0:
		p.engine()
	case 1:
		p.sun()
	case 2:
		p.shore()
	}
	for range p.upTo(1, 4, "circuits") {
		f := p.name("fuse")
		p.add("fuse %q {\n  kind = \"blade\"\n  rating = \"%d A\"\n  voltage_rating = \"58 V dc\"\n  interrupting = \"2 kA\"\n  on = %s\n}", f, 5*p.upTo(1, 4, "rating"), rapid.SampledFrom(p.buses).Draw(t, "on"))
		p.circuit("fuse."+f+".load", 2)
	}
	if p.mode {
		state := ""
		if len(p.pins) > 0 {
			state = "\n  state = { " + rapid.SampledFrom(p.pins).Draw(t, "moded") + " }"
		}
		p.add("mode \"camp\" {\n  occupied = %v%s\n}", p.flip("occupied"), state)
	}
	if len(p.pins) > 2 && p.upTo(0, 3, "locked") == 0 {
		a, b := rapid.SampledFrom(p.pins).Draw(t, "pin"), rapid.SampledFrom(p.pins).Draw(t, "pin")
		if strings.Fields(a)[0] != strings.Fields(b)[0] {
			p.add("interlock \"i\" {\n  never = [{ %s, %s }]\n  by = \"hardware\"\n}", a, b)
		}
	}
	return p.b.String()
}

// TestTwinAgrees: a run that tells selectors apart one by one says the same of every part as one that
// lists every combination of positions. What is carried in each state is checked where it is worked out:
// TestBoundsCoverTrees, in lint/circuit.
func TestTwinAgrees(t *testing.T) {
	var list []*lint.Rule
	for _, r := range All() {
		if r.Run != nil {
			list = append(list, r)
		}
	}
	day := time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)
	rapid.Check(t, func(t *rapid.T) {
		text := drawTwin(t)
		plan, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
		if diags.HasErrors() {
			t.Fatalf("%v\n%s", diags, text)
		}
		quick := check.Run(plan, list, check.Options{Today: day})
		twin := check.Run(plan, list, check.Options{Today: day, Plain: true, Bound: 1 << 11})
		if len(quick.Diagnostics) > 0 || twin.Tainted() {
			t.Skip("no plan, or one too large for its twin")
		}
		if quick.Tainted() {
			t.Fatalf("not finished: %v\n%s", quick.Failures, text)
		}
		for _, r := range list {
			compareTwin(t, r, verdictsOf(quick, r), verdictsOf(twin, r), text)
		}
	})
}

func verdictsOf(r *check.Report, rule *lint.Rule) map[string]lint.Verdict {
	out := map[string]lint.Verdict{}
	for _, v := range r.Verdicts[rule.ID] {
		key := v.Subject.Header().Addr
		if old, ok := out[key]; !ok || graver(v, old) {
			out[key] = v
		}
	}
	return out
}

// graver orders the verdicts of one part: what is violated first, then by word.
func graver(a, b lint.Verdict) bool {
	rank := []lint.Outcome{lint.Holds, lint.NotProven, lint.Violated}
	x, y := slices.Index(rank, a.Outcome), slices.Index(rank, b.Outcome)
	return x > y || x == y && a.Word > b.Word
}

// unsolved says whether the twin has no answer since the solver gave up on one of its states: one that draws less
// than another, and need not be looked at, may be among them.
func unsolved(v lint.Verdict) bool {
	return v.Outcome == lint.NotProven && len(v.Missing) == 1 && v.Missing[0].Attribute == "a solution of its circuit"
}

func compareTwin(t *rapid.T, r *lint.Rule, quick, twin map[string]lint.Verdict, text string) {
	if len(quick) != len(twin) {
		t.Fatalf("%s: %d parts judged, by the twin %d\n%s", r.ID, len(quick), len(twin), text)
	}
	for addr, want := range twin {
		got := quick[addr]
		if unsolved(want) {
			continue
		}
		if got.Outcome != want.Outcome || want.Outcome != lint.Holds && got.Word != want.Word {
			t.Fatalf("%s of %s: %v %v %q, by the twin %v %v %q\n%s", r.ID, addr, got.Outcome, got.Word, got.Message, want.Outcome, want.Word, want.Message, text)
		}
	}
}
