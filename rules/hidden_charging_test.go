package rules

import "testing"

// What charges goes on alone: a disconnect is off while the sun is up, a BMS opens while the engine runs.
var hiddenCharging = []hiddenState{
	{"3_6", "charging/battery-drops-out", "converter.controller", "source.roof=present switch.disconnect=off"},
	{"3_7", "charging/battery-drops-out", "source.alternator", "after=source.pack: bms opens source.alternator=present"},
}

func TestHiddenCharging(t *testing.T) {
	for _, h := range hiddenCharging {
		if n := h.found(t, "flawed"); n != 1 {
			t.Errorf("%s flawed: %s of %s is violated %d times with %s", h.plan, h.rule, h.subject, n, h.state)
		}
		h.clean(t)
	}
}
