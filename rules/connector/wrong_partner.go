package connector

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var wrongPartner = &lint.Rule{
	ID:      "connector/wrong-partner",
	Claim:   "Two plugs that fit each other should never meet.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Subject: "connector",
	When: "Two connectors of one `style` and `key` can both be apart at once, and a half of one then fits a half of the other that is made for something else: alternating for direct current, nominal volts that " +
		"differ by half or more, plus for minus, or a battery, an array and a charging output for each other.",
	Why: "Somebody plugs in what fits. Danger where alternating meets direct current, where three times the volts or more meet a circuit, or where a battery is reversed; warning otherwise.",
	Numbers: "Nominal volts: a battery's, an array's at most power, a setpoint, each as its class of 12, 24, 36 or 48 V. A half is made for what supplies its own side and for what its own other half brings. A `key` of " +
		"`none` fits every key of its style. A fixed half fits a free one, and like halves fit where the style is genderless or `exposed` tells that one has pins and the other sockets. Contacts with names are held " +
		"against contacts of the same name.",
	Not: "How far a lead reaches: `apart_from` says that two can never be brought together. Pairs that an interlock never lets be apart at once. Outlets of one circuit, and plugs of which neither half brings " +
		"anything. Adapters that nobody drew. Which of two alternating supplies may meet is ac/two-sources-joined's.",
	Offer: "Another colour or key that does not fit, or another family; a tether that is too short; a label only as the last resort.",
	Meter: "Before the first mating: volts and sign at the contacts of both halves, direct current below 60 V only.",
	Cites: []lint.Citation{
		{Ref: "owners' reports of adapters and outlets", Standing: lint.Read, Note: "adapters between two seven-way families swapped brakes and auxiliary; an outlet of a 120 V shape wired for 240 V"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "one family and key for one voltage and purpose"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.OtherStyle},
	Folds:  []string{"connector/live-contacts-exposed", "connector/reversible"},
	Since:  "0.1",
	Run:    partners,
}

func partners(p *lint.Pass) []lint.Verdict {
	m := newMeetings(p)
	worst := make([]*clash, len(m.parts))
	for i, a := range m.parts {
		for j, b := range m.parts[:i] {
			k := m.meet(b, a)
			if k == nil {
				continue
			}
			ok, known := m.bothApart(a.c, b.c)
			if !known {
				k.missing = append(k.missing, lint.Missing{Subject: "plan", Attribute: "states"})
			}
			if !ok {
				continue
			}
			for _, one := range []int{i, j} {
				if k.before(worst[one]) {
					worst[one] = k
				}
			}
		}
	}
	var out []lint.Verdict
	for i, x := range m.parts {
		v := lint.Verdict{Subject: x.c, Outcome: lint.Holds}
		if worst[i] != nil {
			v = worst[i].verdict(m, x.c)
		}
		out = append(out, v)
	}
	return out
}

// meet asks whether two connectors can be mated to each other and what that would do: the worst of it,
// nil for nothing.
func (m *meetings) meet(a, b *part) *clash {
	fits, lacks := fit(a.c, b.c)
	if !fits || m.Net.Var(a.c.Addr) < 0 || m.Net.Var(b.c.Addr) < 0 {
		return nil
	}
	var worst *clash
	for _, x := range a.halves {
		for _, y := range b.halves {
			mates, unsure := genders(a.c, x, b.c, y)
			if x.contact != y.contact || !mates {
				continue
			}
			for _, k := range []*clash{m.against(x, y), m.against(y, x)} {
				if k == nil {
					continue
				}
				k.missing = slices.Concat(lacks, unsure, k.missing)
				if k.before(worst) {
					worst = k
				}
			}
		}
	}
	return worst
}

// fit says whether two connectors can be of one family and key; lacks is what that is not known
// without.
func fit(a, b *schema.Connector) (fits bool, lacks []lint.Missing) {
	if a.ApartFrom.Has(b.Addr) || b.ApartFrom.Has(a.Addr) {
		return false, nil
	}
	like := func(x, y schema.Text) bool {
		return strings.EqualFold(strings.TrimSpace(x.Value), strings.TrimSpace(y.Value))
	}
	if a.Style.Set && b.Style.Set && !like(a.Style, b.Style) {
		return false, nil
	}
	if a.Key.Set && b.Key.Set && !like(a.Key, b.Key) && !unkeyed(a) && !unkeyed(b) {
		return false, nil
	}
	for _, c := range []*schema.Connector{a, b} {
		if !c.Style.Set {
			lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: "style"})
		}
	}
	for _, c := range []*schema.Connector{a, b} {
		if !c.Key.Set && !(unkeyed(a) || unkeyed(b)) {
			lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: "key"})
		}
	}
	return true, lacks
}

// genders says whether two halves go together; unsure is what that is not known without.
func genders(a *schema.Connector, x *half, b *schema.Connector, y *half) (mates bool, unsure []lint.Missing) {
	if genderless(a) || genderless(b) {
		return true, nil
	}
	told := func(c *schema.Connector) bool { return c.Exposed.Value == "fixed" || c.Exposed.Value == "free" }
	if told(a) && told(b) {
		return (a.Exposed.Value == x.side) != (b.Exposed.Value == y.side), nil
	}
	if x.side != y.side {
		return true, nil
	}
	for _, c := range []*schema.Connector{a, b} {
		if !c.Exposed.Set {
			unsure = append(unsure, lint.Missing{Subject: c.Addr, Attribute: "exposed"})
		}
	}
	return len(unsure) > 0, unsure
}

// mostAsked bounds how often the interlocks of a plan are searched.
const mostAsked = 256

// bothApart says whether both connectors can be unmated in one state; known is false where the search
// over interlocks met its bound.
func (m *meetings) bothApart(a, b *schema.Connector) (ok, known bool) {
	own := []int{m.Net.Var(a.Addr), m.Net.Var(b.Addr)}
	if !m.interlocked(own[0]) && !m.interlocked(own[1]) {
		return true, true
	}
	if m.asked++; m.asked > mostAsked {
		return true, false
	}
	ok, known = m.Space.Allows(map[int]int{own[0]: 0, own[1]: 0})
	return ok || !known, known
}

// interlocked says whether an interlock speaks of a connector, or of what it follows.
func (m *meetings) interlocked(variable int) bool {
	for _, r := range append(roots(m.Net, variable), variable) {
		if m.pinned[m.Net.Vars[r].Addr] {
			return true
		}
	}
	return false
}

// verdict tells a clash to one of its two connectors.
func (k *clash) verdict(m *meetings, c *schema.Connector) lint.Verdict {
	other := k.x.c
	if other == c {
		other = k.y.c
	}
	v := lint.Verdict{Subject: c, Outcome: lint.Violated, Word: k.word, Cause: other.Addr, Related: []string{other.Addr}, Missing: k.missing, Numbers: k.numbers(),
		Group: "style " + strings.ToLower(c.Style.Value), State: m.state(k)}
	if len(k.missing) > 0 {
		v.Outcome = lint.NotProven
	}
	v.Message = fmt.Sprintf("%s and %s fit each other: the %s half of %s, with %s, then meets the %s half of %s, which is made for %s.", lint.Quote(c), lint.Quote(other),
		k.x.where(), lint.Quote(k.x.c), k.brings.words(), k.y.where(), lint.Quote(k.y.c), k.y.made())
	if v.Outcome == lint.NotProven {
		v.Message = fmt.Sprintf("Whether %s and %s fit each other, or agree, turns on %s, which is not written: the %s half of %s has %s, and the %s half of %s is made for %s.", lint.Quote(c), lint.Quote(other),
			lint.Lacking(k.missing[0], true), k.x.where(), lint.Quote(k.x.c), k.brings.words(), k.y.where(), lint.Quote(k.y.c), k.y.made())
	}
	return v
}
