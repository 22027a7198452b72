package suggest

import (
	"fmt"
	"strings"
	"testing"
)

// tells says whether what is said to be lost is what is wanted: nothing, or words with these among them.
func tells(got, want string) bool { return (got == "") == (want == "") && strings.Contains(got, want) }

// What a part is for is kept: an alternator its battery, a load its power with the engine off, a converter no less than
// what it alone feeds.
func TestService(t *testing.T) {
	const plan = `system "tern" {}
source "engine" {
  kind = "alternator"
  voltage = "12 V"
}
source "start" {
  kind = "battery"
  voltage = "12 V"
}
conductor "charge" {
  from = source.engine
  to = %s
}
converter "step" {
  kind = "dc-dc"
  %s
  output {
    voltage = "12 V"
    current_max = "%s"
  }
}
conductor "in" {
  from = source.start
  to = converter.step.in
}
conductor "out" {
  from = converter.step.out
  to = load.pump
}
load "pump" {
  draw = "20 A"
}
`
	was := desk(t, fmt.Sprintf(plan, "source.start", "", "30 A"))
	for _, c := range []struct{ to, trigger, amps, lost string }{
		{"source.start", "", "25 A", ""},
		{"load.pump", "", "30 A", "no battery is then on the wires"},
		{"source.start", `trigger = "ignition"`, "30 A", "only while the engine runs"},
		{"source.start", "", "10 A", "then gives 10 A of the"},
	} {
		got := was.lost(desk(t, fmt.Sprintf(plan, c.to, c.trigger, c.amps)))
		if !tells(got, c.lost) {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestServiceOfBatteries puts a relay that follows the engine into the wires of a boat with two batteries, and a limit on
// the input of an inverter.
func TestServiceOfBatteries(t *testing.T) {
	const plan = `system "tern" {}
source "engine" {
  kind = "alternator"
  voltage = "12 V"
}
source "start" {
  kind = "battery"
  role = "starting"
  voltage = "12 V"
}
source "house" {
  kind = "battery"
  voltage = "12 V"
}
switch "relay" {
  kind = "relay"
  terminals = ["a", "b"]
  follows = [source.engine]
  position "open" {}
  position "closed" { joins = [["a", "b"]] }
}
bus "house" {}
conductor "start" {
  from = source.start
  to = %s
}
conductor "relay" {
  from = switch.relay.b
  to = source.engine
}
conductor "tie" {
  from = source.engine
  to = %s
}
conductor "house" {
  from = source.house
  to = %s
}
conductor "house_relay" {
  from = switch.relay.a
  to = bus.house
}
conductor "lamp" {
  from = bus.house
  to = load.lamp
}
load "lamp" { draw = "2 A" }
conductor "inverter" {
  from = bus.house
  to = converter.inverter.in
}
converter "inverter" {
  kind = "inverter"
  efficiency = 0.9
  input { current_max = "%s" }
  output {
    voltage = "120 V ac"
    current_max = "15 A"
  }
}
conductor "kettle" {
  from = converter.inverter.out
  to = load.kettle
}
load "kettle" { power = "1500 W" }
`
	was := desk(t, fmt.Sprintf(plan, "source.engine", "bus.house", "bus.house", "200 A"))
	for _, c := range []struct{ start, tie, house, in, lost string }{
		{"source.engine", "bus.house", "bus.house", "160 A", ""},
		{"source.engine", "bus.house", "bus.house", "125 A", `"inverter", which nothing helps`}, // 125 A x 12 V x 0.9 is 1350 W
		{"switch.relay.a", "switch.relay.b", "bus.house", "200 A", `"start" then reaches the engine only while that runs`},
		{"source.engine", "bus.house", "source.engine", "200 A", ""},
		{"source.engine", "switch.relay.b", "bus.house", "200 A", ""},
		{"source.engine", "switch.relay.b", "switch.relay.b", "200 A", "then has power only while the engine runs"},
	} {
		got := was.lost(desk(t, fmt.Sprintf(plan, c.start, c.tie, c.house, c.in)))
		if !tells(got, c.lost) {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestStarvedInAPosition puts a converter of 10 A into a feed that a load of 20 A has to itself in one position.
func TestStarvedInAPosition(t *testing.T) {
	const plan = `system "tern" {}
source "car" {
  kind = "battery"
  voltage = "12 V"
}
source "house" {
  kind = "battery"
  voltage = "12 V"
}
switch "from" {
  terminals = ["car", "house", "bar"]
  position "car" { joins = [["car", "bar"]] }
  position "house" { joins = [["house", "bar"]] }
}
%s
conductor "house" {
  from = source.house
  to = switch.from.house
}
conductor "pump" {
  from = switch.from.bar
  to = load.pump
}
load "pump" { draw = "20 A" }
`
	const wire = "conductor \"car\" {\n  from = source.car\n  to = switch.from.car\n}\n"
	step := func(amps string) string {
		return "converter \"step\" {\n  kind = \"dc-dc\"\n  output {\n    voltage = \"12 V\"\n    current_max = \"" + amps + "\"\n  }\n}\nconductor \"in\" {\n  from = source.car\n  to = converter.step.in\n}\n" +
			"conductor \"car\" {\n  from = converter.step.out\n  to = switch.from.car\n}\n"
	}
	for _, c := range []struct{ was, is, lost string }{
		{wire, step("30 A"), ""},
		{wire, step("10 A"), "in some state, then gives 10 A of the"},
		{step("30 A"), step("10 A"), "in some state, then gives 10 A of the"},
		{step("10 A"), step("15 A"), ""},
		{step("15 A"), step("10 A"), ""}, // it was not enough before
	} {
		got := desk(t, fmt.Sprintf(plan, c.was)).lost(desk(t, fmt.Sprintf(plan, c.is)))
		if !tells(got, c.lost) {
			t.Errorf("%q, want %q", got, c.lost)
		}
	}
}
