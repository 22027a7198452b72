package rules

import "testing"

// Rings that no single position shows: the engine is off, or shore is away, and what charges is fed by
// what it charges.
var hiddenLoops = []hiddenState{
	{"3_4", "backfeed/charge-loop", "converter.charge", "connector.tow=mated source.alternator=absent source.roof=present"},
	{"3_4", "charging/drains-starting-battery", "source.start", "connector.tow=mated source.alternator=absent source.roof=present"},
	{"3_5", "backfeed/charge-loop", "converter.inverter",
		"connector.inlet=mated connector.inverter_cord=mated connector.shore_cord=unmated switch.inverter=on switch.load_center=on"},
}

func TestHiddenLoops(t *testing.T) {
	for _, h := range hiddenLoops {
		if n := h.found(t, "flawed"); n != 1 {
			t.Errorf("%s flawed: %s of %s is violated %d times with %s", h.plan, h.rule, h.subject, n, h.state)
		}
		h.clean(t)
	}
}
