package lifesafety

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// nearDevice is how many times the current the smallest breaker of a brake feed is (common practice).
const nearDevice = 1.5

// devices asks whether something on the way can open while the brakes are needed.
func (m *magnets) devices() lint.Verdict {
	v := lint.Verdict{Subject: m.l.Load, Outcome: lint.Holds, Word: lint.Caution, Cause: "device", Group: "device " + m.group}
	for _, c := range m.cases {
		for _, f := range c.feeds {
			for _, e := range f.edges {
				if d := m.p.Net.Edges[e].Fuse; d != nil {
					m.device(&v, f, d, f.amps[e])
				}
			}
		}
	}
	v.Missing = unique(v.Missing)
	return v
}

// device makes v speak of a device where that is worse than what v says already.
func (m *magnets) device(v *lint.Verdict, f feed, d *schema.Fuse, amps float64) {
	say := func(o lint.Outcome, w lint.Severity, message string) {
		if v.Outcome != lint.Violated && o == lint.Violated || v.Outcome == lint.Holds || v.Outcome == o && w > v.Word {
			v.Outcome, v.Word, v.Message, v.State, v.Related = o, w, message, m.stateOf(f.view), []string{d.Addr}
		}
	}
	name, load := lint.Quote(d), lint.Quote(m.l.Load)
	small := d.Rating.Set && d.Rating.Value < amps
	switch {
	case small:
		say(lint.Violated, lint.Danger, fmt.Sprintf("%s (%s) is on the way to brakes that draw %s: it can open within the fifteen minutes in which %s must hold.",
			name, derive.Text(d.Rating.Value, "A"), derive.Text(amps, "A"), load))
	case d.Reset.Value == "automatic":
		say(lint.Violated, lint.Caution, fmt.Sprintf("%s on the way to %s opens and closes by itself. Some leave this feed without any device, others take one manual-reset breaker of at least 1.5 times its current.", name, load))
	case d.Rating.Set && d.Rating.Value < nearDevice*amps:
		say(lint.Violated, lint.Caution, fmt.Sprintf("%s (%s) is on the way to brakes that draw %s and may open while they are needed. Some leave this feed without any device, others take one manual-reset breaker of at least 1.5 times its current.",
			name, derive.Text(d.Rating.Value, "A"), derive.Text(amps, "A")))
	case !d.Rating.Set:
		v.Missing = append(v.Missing, lint.Missing{Subject: d.Addr, Attribute: "rating"})
		say(lint.NotProven, lint.Danger, fmt.Sprintf("Whether %s can open while %s must hold cannot be told.", name, load))
	case d.Kind.Value == "breaker" && !d.Reset.Set:
		v.Missing = append(v.Missing, lint.Missing{Subject: d.Addr, Attribute: "reset"})
		say(lint.NotProven, lint.Caution, fmt.Sprintf("Whether %s on the way to %s resets itself is not written.", name, load))
	}
}
