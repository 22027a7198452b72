package remedy

import (
	"fmt"
	"os"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// pass reads the plan that the tests propose changes of.
func pass(t *testing.T) *lint.Pass {
	t.Helper()
	src, err := os.ReadFile("testdata/dunnock.wiring.hcl")
	if err != nil {
		t.Fatal(err)
	}
	return passOf(t, string(src))
}

// passOf reads a plan.
func passOf(t *testing.T, src string) *lint.Pass {
	t.Helper()
	plan, diags := schema.Decode("dunnock.wiring.hcl", []byte(src), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, diags := network.Build(plan)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return lint.NewPass(n, explore.New(n, 0), lint.Guesses{}, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
}

// proposed are the proposals of an offer, one line each: what to do, then the changes.
func proposed(p *lint.Pass, o lint.Offer, v lint.Verdict) string {
	var out []string
	for _, x := range o(p, v) {
		s := x.Do
		for _, c := range x.Changes {
			switch {
			case c.Drop:
				s += fmt.Sprintf(" [%s %s gone]", c.At, c.In)
			case c.Block != "":
				s += fmt.Sprintf(" [behind %s: %s]", c.At, strings.Join(strings.Fields(c.Block), " "))
			case c.Value == "":
				s += fmt.Sprintf(" [%s %s out]", c.At, c.Attr)
			default:
				s += fmt.Sprintf(" [%s %s %s=%s]", c.At, c.In, c.Attr, c.Value)
			}
		}
		out = append(out, strings.ReplaceAll(s, "  ", " "))
	}
	return strings.Join(out, "\n")
}

func TestOffers(t *testing.T) {
	p := pass(t)
	at := func(addr string, more ...string) lint.Verdict {
		return lint.Verdict{Subject: p.Plan.Block(addr), Related: more}
	}
	numbered := func(addr, unit string, limit, value float64) lint.Verdict {
		v := at(addr)
		v.Numbers = []derive.Number{{Name: "limit", Value: limit, Unit: unit}, {Name: "value", Value: value, Unit: unit}}
		return v
	}
	high := numbered("branch.lamp.load.lamp", "V", 15, 17)
	high.Cause = "high"
	long := at("branch.lamp.fuse")
	long.Numbers = []derive.Number{{Symbol: "Ilong", Value: 30, Unit: "A"}}
	way := lint.Verdict{Subject: p.Plan.Block("source.pack"), Related: []string{"source.start"},
		Path: []string{"source.pack", "fuse.pack.line", "fuse.pack.load", "switch.join.house", "switch.join.start", "source.start"}}
	for _, c := range []struct {
		name  string
		offer lint.Offer
		v     lint.Verdict
		lines int
		first string // the first line
	}{
		{"smaller", SmallerDevice, at("branch.lamp.fuse"), 3, `Fit "Lamp, 10 A" as a device of 7.5 A. [branch.lamp.fuse rating="7.5 A"] [branch.lamp.fuse label="Lamp, 7.5 A"]`},
		{"larger", LargerDevice, at("branch.lamp.fuse"), 6, `Fit "Lamp, 10 A" as a device of 15 A. [branch.lamp.fuse rating="15 A"] [branch.lamp.fuse label="Lamp, 15 A"]`},
		{"none without a rating", SmallerDevice, at("fuse.bare"), 0, ""},
		{"thicker", ThickerWire, at("conductor.feed"), 4, `Lay "feed" in 6 AWG. [conductor.feed size="6 AWG"]`},
		{"thicker by the path", ThickerWire, way, 12, `Lay "house_side" in 6 AWG. [conductor.house_side size="6 AWG"]`},
		{"insulation", BetterInsulation, at("conductor.feed"), 2, `Lay "feed" with insulation for 105 C. [conductor.feed insulation="105 C"]`},
		{"stronger", StrongerDevice, at("branch.lamp.fuse"), 2, `Fit "Lamp, 10 A" as a cartridge fuse for solar strings of the same rating, made for 1 000 V dc and 10 kA. ` +
			`[branch.lamp.fuse kind="cartridge"] [branch.lamp.fuse voltage_rating="1000 V dc"] [branch.lamp.fuse interrupting="10 kA"] [branch.lamp.fuse reset out] [branch.lamp.fuse trip out] [branch.lamp.fuse polarized out] [branch.lamp.fuse curve out] [branch.lamp.fuse series_rated_with out]`},
		{"not for mains", StrongerDevice, at("fuse.shore"), 0, ""},
		{"not reverse", BlocksReverse, at("converter.tracker"), 1, `Fit "tracker" as one through which nothing runs from output to input. [converter.tracker blocks_reverse=true]`},
		{"fewer", FewerInSeries, at("converter.tracker", "source.roof"), 2, `Put one module fewer in series in "roof": 3. [source.roof series=3]`},
		{"higher input", HigherInput, at("converter.tracker"), 3, `Fit "tracker" as a controller that takes 100 V. [converter.tracker input voltage_max="100 V"]`},
		{"smaller output", SmallerOutput, at("source.pack", "converter.tracker"), 6, `Limit the output of "tracker" to 10 A, from 15 A. [converter.tracker output current_max="10 A"]`},
		{"rating", HigherRating, at("switch.off"), 6, `Fit "off" as one for 110 A. [switch.off rating="110 A"]`},
		{"a tow plug has its limit", HigherRating, at("connector.tow"), 2, `Fit "tow" as one for 25 A. [connector.tow rating="25 A"]`},
		{"own battery", OwnBattery, at("branch.alarm.load.alarm"), 1, `Fit "alarm" as one with a battery of its own. [branch.alarm.load.alarm own_battery=true]`},
		{"own battery, for alarms", OwnBattery, at("branch.lamp.load.lamp"), 0, ""},
		{"other feed", OtherFeed, at("branch.alarm.load.alarm"), 21, `Feed "alarm" from "post". [branch.alarm from=bus.post]`},
		{"other end", OtherEnd, at("switch.off", "converter.tracker"), 21, `Feed "tracker_out" from "post". [fuse.tracker_out on=bus.post]`},
		{"without a position", WithoutPosition, lint.Verdict{Subject: p.Plan.Block("source.start"), State: []lint.Position{{Addr: "switch.three", Position: "a>b (overlap)"}}}, 2,
			`Give up position "a" of "three". [switch.three terminals=["b", "bar"]] [switch.three position a gone]`},
		{"apart", Unbundle, at("conductor.idle_lead"), 1, `Lay "idle_lead" apart from the other wires. [conductor.idle_lead bundle=2]`},
		{"apart already", Unbundle, at("conductor.feed"), 0, ""},
		{"a shorter way", ShorterRun, at("conductor.joint"), 2, `Find a way of 1.5 m for "joint". [conductor.joint length="1.5 m"]`},
		{"a string less", FewerStrings, at("source.east"), 1, `Put one string fewer side by side in "east": 1. [source.east parallel=1]`},
		{"a relay", RelayFollows, at("source.pack", "branch.lamp.load.lamp"), 3, `Put a relay for 70 A that closes with "engine" into "feed", 300 mm from where the wire now ends. [conductor.feed to=switch.feed_relay.engine] ` +
			`[behind conductor.feed: switch "feed_relay" { kind = "relay" terminals = ["engine", "house"] follows = [source.engine] rating = "70 A" voltage_rating = "32 V dc" position "open" {} position "closed" { joins = [["engine", "house"]] } }] ` +
			`[behind conductor.feed: conductor "feed_relay" { from = switch.feed_relay.house to = switch.off.battery size = "8 AWG" length = "0.3 m" insulation = "90 C" }]`},
		{"through it", ThroughConverter, at("bus.post"), 2, `End "round_in" on converter.round.in: nothing ends there, and what it carries goes round "round". [conductor.round_in to=converter.round.in]`},
		{"more volts", HigherVolts, numbered("switch.three", "V", 32, 56.8), 2, `Fit "three" as one that breaks 60 V dc. [switch.three voltage_rating="60 V dc"]`},
		{"more amps", HigherRating, numbered("switch.off", "A", 100, 170), 6, `Fit "off" as one for 175 A. [switch.off rating="175 A"]`},
		{"lower volts", LowerSetpoint, high, 3, `Set "round" to 14.4 V. [converter.round output voltage="14.4 V"]`},
		{"another family", OtherStyle, at("connector.tow"), 1, `Fit both halves of "tow" in a family of their own, that mates with nothing else aboard. [connector.tow style="seven, family 2"]`},
		{"the other side", Shrouded, at("connector.tow"), 2, `Fit "tow" as one whose shrouded half is on the live side. [connector.tow exposed="free"]`},
		{"a device on the post", DeviceAhead, at("conductor.feed"), 15, `Put a device of 60 A right on "post", ahead of "feed". [conductor.feed from=fuse.feed_main.load] ` +
			`[behind conductor.feed: fuse "feed_main" { kind = "class-t" rating = "60 A" voltage_rating = "125 V dc" interrupting = "20 kA" on = bus.post compartment = compartment.box }]`},
		{"device and wires", DeviceAndWires, long, 2, `Fit "Lamp, 10 A" as a device of 40 A. Lay "lamp" in 8 AWG. [branch.lamp.fuse rating="40 A"] [branch.lamp.fuse label="Lamp, 40 A"] [branch.lamp.conductor size="8 AWG"]`},
		{"the wires carry it", DeviceAndWires, at("branch.lamp.fuse"), 0, ""},
		{"ahead of a plug", DeviceAhead, at("conductor.bench_lamp"), 3, `Put a device of 5 A right on "post", ahead of "bench". "bench" sits on it no more: a wire of 300 mm leads there. [connector.bench on out] ` +
			`[behind connector.bench: fuse "bench_main" { kind = "class-t" rating = "5 A" voltage_rating = "125 V dc" interrupting = "20 kA" on = bus.post compartment = compartment.box }] ` +
			`[behind connector.bench: conductor "bench_lead" { from = fuse.bench_main.load to = connector.bench.fixed size = "16 AWG" length = "0.3 m" }]`},
		{"one way between", OneWayBetween, way, 12, `Put a one-way converter that limits its output to 30 A into "house_side", 300 mm from where the wire now ends. [conductor.house_side to=converter.house_side_limit.out] ` +
			`[behind conductor.house_side: converter "house_side_limit" { kind = "dc-dc" rated = "440 W" efficiency = 0.9 isolated = true blocks_reverse = true limits_current = true needs_battery = false cold_charge_cutoff = true trigger = "13.3 V" charges = [source.pack] ` +
			`input { voltage_min = "11 V" voltage_max = "16 V" current_max = "44 A" accepts = ["dc"] } output { voltage = "14.4 V" current_max = "30 A" profile = "lifepo4" float = "13.5 V" } }] ` +
			`[behind conductor.house_side: conductor "house_side_limit_out" { from = converter.house_side_limit.in to = switch.join.house size = "8 AWG" length = "0.3 m" }]`},
	} {
		got := proposed(p, c.offer, c.v)
		lines := strings.Split(got, "\n")
		if got == "" {
			lines = nil
		}
		if len(lines) != c.lines || c.lines > 0 && lines[0] != c.first {
			t.Errorf("%s: %d lines, want %d\n%s\nwant first\n%s", c.name, len(lines), c.lines, got, c.first)
		}
	}
}

// TestOwnWiresFirst has the volts to a switch lost on two wires: the one that only serves it goes first.
func TestOwnWiresFirst(t *testing.T) {
	p := pass(t)
	v := lint.Verdict{Subject: p.Plan.Block("switch.off"), Path: []string{"source.pack", "fuse.pack.load", "bus.post", "switch.off.battery"}}
	n := 0
	for _, x := range ThickerOwnWire(p, v) {
		own := len(x.Changes) == 1 && x.Changes[0].At == "conductor.feed"
		if n++; own == x.Second {
			t.Errorf("%s: second %v", x.Do, x.Second)
		}
	}
	if n != 12 {
		t.Errorf("%d proposals for two wires in four sizes, and both together", n)
	}
}

// every is each offer of the room, told by its name.
var every = []lint.Offer{
	SmallerDevice, LargerDevice, StrongerDevice, ListedTogether, ThickerWire, ThickerOwnWire, Unbundle, ShorterRun, FewerStrings, RelayFollows, ThroughConverter, HigherVolts, LowerSetpoint, BetterInsulation, OwnReturn, BlocksReverse, Isolated, IsolatedNear,
	ColdStopsCharger, ColdStopsBattery, FewerInSeries, HigherInput, SmallerOutput, SmallerInput, HigherRating, BreaksFirst, OwnBattery, OtherFeed,
	OtherEnd, OneWayBetween, IgnitionBetween, DeviceAtFeed, DeviceAtSource, DeviceMoved, DeviceAhead, DeviceEach, DeviceAndWires, SmallBattery, WithoutPosition, OtherStyle, Keyed, LoadBreak,
	Shrouded, NotPolarized, MeantForDC, OneMore, DropWaiver, StringDevice, NoBatteryNeeded, Disconnect, Written,
}

// TestEveryOfferOnEveryPart asks every offer about every part: none crashes, each says what to do and where its
// figures are from, sizes and ratings are those of the tables, and the same question gets the same answer.
func TestEveryOfferOnEveryPart(t *testing.T) {
	p := pass(t)
	for _, o := range every {
		name := runtime.FuncForPC(reflect.ValueOf(o).Pointer()).Name()
		for _, b := range p.Plan.Blocks() {
			for _, path := range [][]string{nil, {"source.pack", "fuse.pack.line"}, {"converter.tracker.out", "fuse.tracker_out.load"}, {"nothing.here"}} {
				v := lint.Verdict{Subject: b, Path: path, Related: []string{"source.start", "gone.away"}, State: []lint.Position{{Addr: "switch.join", Position: "on"}, {Addr: "after", Position: "x"}}}
				if a, b := proposed(p, o, v), proposed(p, o, v); a != b {
					t.Fatalf("%s answers in two ways:\n%s\n%s", name, a, b)
				}
				for _, x := range o(p, v) {
					sound(t, name, x)
				}
			}
		}
	}
}

func sound(t *testing.T, name string, x lint.Proposal) {
	t.Helper()
	if !strings.HasSuffix(x.Do, ".") || len(x.Changes) == 0 {
		t.Errorf("%s says %q and changes %d things", name, x.Do, len(x.Changes))
	}
	for _, c := range x.Changes {
		if c.Attr == "rating" && !slices.ContainsFunc(tables.StandardRatings(), func(a float64) bool { return text(a, "A") == c.Value }) {
			t.Errorf("%s: %s is no standard rating", name, c.Value)
		}
		if c.Attr == "size" {
			if _, err := quantity.ParseSize(strings.Trim(c.Value, `"`)); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if (c.Attr == "rating" || c.Attr == "size" || c.Block != "") && len(x.Sources) == 0 {
			t.Errorf("%s: %q does not say whose figures it uses", name, x.Do)
		}
	}
}

// A piece of a wire is of the same stuff, as many in parallel, and comes and goes with the same source.
func TestPieceOfAWire(t *testing.T) {
	const src = `system "tern" {}
source "pack" {
  kind = "battery"
  removable = true
}
bus "panel" {}
conductor "lead" {
  from = source.pack
  to = bus.panel
  size = "2 AWG"
  material = "aluminum"
  parallel = 2
  sheathed = true
  cranking = true
  part_of = source.pack
}
`
	plan, diags := schema.Decode("tern.wiring.hcl", []byte(src), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	got := strings.Join(strings.Fields(wire("piece", "source.pack", "fuse.x.line", plan.Conductors[0])), " ")
	if want := `material = "aluminum" parallel = 2 sheathed = true cranking = true part_of = source.pack }`; !strings.HasSuffix(got, want) {
		t.Errorf("%s", got)
	}
}

// TestLabels has labels that say the rating in several ways, and those of which it is not sure.
func TestLabels(t *testing.T) {
	for _, c := range []struct{ label, want string }{
		{"Lamp, 10 A", "Lamp, 7.5 A"},
		{"10A lamp", "7.5A lamp"},
		{"lamp (10 amp)", "lamp (7.5 amp)"},
		{"10 AWG lamp", ""},
		{"circuit 10", ""},
		{"110 A", ""},
		{"10 A, was 10 A", ""},
		{"2.10 A", ""},
	} {
		plan, diags := schema.Decode("dunnock.wiring.hcl", []byte("system \"dunnock\" {}\nfuse \"f\" {\n  label = \""+c.label+"\"\n  rating = \"10 A\"\n}\n"), nil)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		got := ""
		for _, x := range relabelled(plan.Fuses[0], 7.5) {
			got = x.Value
		}
		if got != "" && got != `"`+c.want+`"` || got == "" && c.want != "" {
			t.Errorf("%q: %s, want %q", c.label, got, c.want)
		}
	}
}

// TestStrings has arrays of two modules before a tracker on a battery of 24 V: a string of one is offered where it has the
// volts, is a sketch where those are not written, and is none where it has not.
func TestStrings(t *testing.T) {
	for _, c := range []struct {
		volts string
		said  string
	}{
		{`vmp = "31 V"`, "offered"},
		{`vmp = "25 V"`, ""}, // a battery of 24 V ends its charge at 28.8 V
		{`voc = "24 V"`, ""}, // vmp is less
		{`voc = "40 V"`, "open"},
		{"", "open"},
	} {
		src := `system "tern" {}
source "roof" {
  kind = "solar"
  series = 2
  ` + c.volts + `
}
source "pack" {
  kind = "battery"
  voltage = "24 V"
}
converter "tracker" { kind = "mppt" }
conductor "in" {
  from = source.roof
  to = converter.tracker.in
}
conductor "out" {
  from = converter.tracker.out
  to = source.pack
}
`
		p := passOf(t, src)
		got := ""
		for _, x := range head(FewerInSeries(p, lint.Verdict{Subject: p.Plan.Block("source.roof")})) {
			if got = "offered"; x.Open != "" {
				got = "open"
			}
		}
		if got != c.said {
			t.Errorf("%s: %q, want %q", c.volts, got, c.said)
		}
	}
}

// TestDeviceMoved moves a device to the battery where the wires on its two sides may be one, and nowhere else.
func TestDeviceMoved(t *testing.T) {
	for _, c := range []struct {
		a, b  string
		moved bool
	}{
		{"", "", true},
		{`through = [compartment.engine]`, "", false},
		{"parallel = 2", "", false},
		{"", `insulation = "105 C"`, false},
		{"", "sheathed = true", false},
	} {
		src := `system "tern" {}
compartment "engine" {}
compartment "box" {}
source "pack" {
  kind = "battery"
  voltage = "12 V"
  compartment = compartment.box
}
fuse "main" { rating = "20 A" }
conductor "a" {
  from = source.pack
  to = fuse.main.line
  size = "10 AWG"
  length = "2 m"
  ` + c.a + `
}
conductor "b" {
  from = fuse.main.load
  to = load.lamp
  size = "10 AWG"
  length = "1 m"
  ` + c.b + `
}
load "lamp" { draw = "2 A" }
`
		p := passOf(t, src)
		want := ""
		if c.moved {
			want = `Move "main" right onto "pack", and let "b" go on from it in one piece with "a". [fuse.main on=source.pack] [fuse.main compartment=compartment.box] [conductor.a gone] [conductor.b from=fuse.main.load] [conductor.b length="3 m"]`
		}
		if got := proposed(p, DeviceMoved, lint.Verdict{Subject: p.Plan.Block("conductor.a"), Path: []string{"source.pack", "fuse.main.line"}}); got != want {
			t.Errorf("%s, %s: %q, want %q", c.a, c.b, got, want)
		}
	}
}

// TestDeviceForTheCharge has an alternator and a converter that charge a battery by one wire: a device in it carries what both
// give, and one ahead of a load beside them what the load draws.
func TestDeviceForTheCharge(t *testing.T) {
	p := passOf(t, `system "tern" {}
source "engine" {
  kind = "alternator"
  voltage = "12 V"
  rated = "60 A"
  regulated_voltage = "14.2 V"
}
source "pack" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "50 Ah"
  charge_limit = "100 A"
}
bus "bar" {}
conductor "charge" {
  from = source.engine
  to = bus.bar
  size = "2 AWG"
}
converter "tracker" {
  kind = "mppt"
  blocks_reverse = true
  output {
    voltage = "14.4 V"
    current_max = "20 A"
  }
}
conductor "sun" {
  from = converter.tracker.out
  to = bus.bar
  size = "2 AWG"
}
conductor "main" {
  from = source.pack
  to = bus.bar
  size = "1/0 AWG"
}
conductor "lamp" {
  from = bus.bar
  to = load.lamp
  size = "10 AWG"
}
load "lamp" { draw = "2 A" }
`)
	for addr, want := range map[string]string{"conductor.main": "Put a device of 100 A", "conductor.lamp": "Put a device of 3 A"} {
		if got := proposed(p, DeviceAhead, lint.Verdict{Subject: p.Plan.Block(addr)}); !strings.HasPrefix(got, want) {
			t.Errorf("%s: %q, want %q", addr, got, want)
		}
	}
}
