package switching

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// packs writes ten packs that come and go, each on a selector of two buses: 6e7 states. A disconnect stands
// before the lamp, and behind it, if asked, a charger.
func packs(charger bool) string {
	var b strings.Builder
	add := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	add("system \"t\" {\n  practice = [\"general\"]\n}\nbus \"a\" {}\nbus \"b\" {}\nbus \"house\" {}")
	wire := func(name, from, to string) {
		add("conductor %q {\n  from = %s\n  to = %s\n  size = \"6 AWG\"\n}", name, from, to)
	}
	for i := range 10 {
		add("source \"p%d\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  removable = true\n}", i)
		add("switch \"s%d\" {\n  terminals = [\"c\", \"a\", \"b\"]\n  position \"a\" { joins = [[\"c\", \"a\"]] }\n  position \"off\" {}\n  position \"b\" { joins = [[\"c\", \"b\"]] }\n}", i)
		wire(fmt.Sprint("c", i), fmt.Sprintf("source.p%d", i), fmt.Sprintf("switch.s%d.c", i))
		wire(fmt.Sprint("a", i), fmt.Sprintf("switch.s%d.a", i), "bus.a")
		wire(fmt.Sprint("b", i), fmt.Sprintf("switch.s%d.b", i), "bus.b")
	}
	add("switch \"main\" {\n  kind = \"disconnect\"\n  terminals = [\"supply\", \"house\"]\n  position \"off\" {}\n  position \"on\" { joins = [[\"supply\", \"house\"]] }\n}")
	wire("supply", "bus.a", "switch.main.supply")
	wire("house", "switch.main.house", "bus.house")
	add("load \"lamp\" {\n  draw = \"1 A\"\n}")
	wire("lamp", "bus.house", "load.lamp")
	if charger {
		add("converter \"charger\" {\n  kind = \"dc-dc\"\n  blocks_reverse = true\n  output {\n    voltage = \"14 V\"\n  }\n}")
		wire("in", "bus.b", "converter.charger.in")
		wire("out", "converter.charger.out", "bus.house")
	}
	return b.String()
}

// TestOffIsSoughtBeyondTheBound: where the states are too many to list, a terminal that is live is found and
// one that is not is proven.
func TestOffIsSoughtBeyondTheBound(t *testing.T) {
	for charger, want := range map[bool]lint.Outcome{true: lint.Violated, false: lint.Holds} {
		plan, diags := schema.Decode("t.wiring.hcl", []byte(packs(charger)), nil)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		n, _ := network.Build(plan)
		space := explore.New(n, explore.DefaultBound)
		p := lint.NewPass(n, space, lint.Guesses{}, time.Time{})
		for _, v := range stillLive(p) {
			if v.Subject.Header().Addr == "switch.main" && v.Outcome != want {
				t.Errorf("charger %v: %v %s %v", charger, v.Outcome, v.Message, v.State)
			} else if v.Subject.Header().Addr == "switch.main" && charger && len(v.State) > 3 {
				t.Errorf("the state is told with more than matters: %v", v.State)
			}
		}
		if space.Complete() {
			t.Error("all states were listed")
		}
	}
}
