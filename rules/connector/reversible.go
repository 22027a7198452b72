package connector

import (
	"fmt"
	"strings"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var reversible = &lint.Rule{
	ID:      "connector/reversible",
	Claim:   "It can be mated backwards, or the battery can.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "connector; battery that lifts out",
	When: "A direct-current connector that comes apart has `key = \"none\"`, and something can energise it. Left out, `key` is asked for. A battery that lifts out while wires land on its own posts can be put " +
		"back with its lugs changed over: then a connector with its `key` is asked for.",
	Why:     "Turned round it drives a short through every diode and battery behind it: boxes die at once, and only a device that can open the fault stands between the wires and fire. Warning.",
	Numbers: "None. What a short can draw there is overcurrent/interrupting-rating's to ask.",
	Not: "Coaxial and barrel plugs, whose shape gives the polarity: the style says so. A connector that is never taken apart. Alternating current. Reverse protection inside a load, which a plan cannot write: a " +
		"keyed connector settles it.",
	Offer: "A keyed connector; for lugs, two sizes of stud, or marks that cannot come off; a device close to the battery that can open a reversed fault.",
	Meter: "Before the first mating: which contact of each half is positive.",
	Cites: []lint.Citation{
		{Ref: "owners' reports of reversed batteries", Standing: lint.Read, Note: "blown 30 to 40 A devices and dead converters; black is plus in some trailer wiring and minus in vehicles"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "two contacts that come apart are keyed"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.Keyed},
	Since:  "0.1",
	Run:    backwards,
}

func backwards(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, c := range p.Plan.Connectors {
		out = append(out, turned(p, c))
	}
	for i := range p.Net.Sources {
		if s := &p.Net.Sources[i]; s.Kind.Value == "battery" && s.Removable.True() {
			out = append(out, lugs(p, s))
		}
	}
	return out
}

// byShape says whether the style gives the polarity.
func byShape(c *schema.Connector) bool {
	style := strings.ToLower(c.Style.Value)
	return strings.Contains(style, "coaxial") || strings.Contains(style, "barrel")
}

// turned answers for a connector.
func turned(p *lint.Pass, c *schema.Connector) lint.Verdict {
	v := lint.Verdict{Subject: c, Outcome: lint.Holds, Word: lint.Warning}
	switch {
	case p.Net.Var(c.Addr) < 0, byShape(c), !canBeLive(p.Net, c), c.Key.Set && !unkeyed(c):
	case c.Key.Set:
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s can be turned round: the plus of one half then meets the minus of the other.", lint.Quote(c))
	default:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: c.Addr, Attribute: "key"}}
		v.Message = fmt.Sprintf("Whether %s can be turned round, plus on minus, is not written.", lint.Quote(c))
	}
	return v
}

// unkeyed says whether a connector can be turned round.
func unkeyed(c *schema.Connector) bool {
	return strings.EqualFold(strings.TrimSpace(c.Key.Value), "none")
}

// canBeLive says whether direct current can reach a connector from anything that supplies.
func canBeLive(n *network.Network, c *schema.Connector) bool {
	for _, side := range sides {
		for _, id := range liveNodes(n, c, side) {
			if n.Nodes[id].AC {
				continue
			}
			if z := around(n, id); len(z.Sources)+len(z.Outputs) > 0 {
				return true
			}
		}
	}
	return false
}

// lugs answers for a battery that lifts out of its wires.
func lugs(p *lint.Pass, s *network.Source) lint.Verdict {
	v := lint.Verdict{Subject: s.Source, Outcome: lint.Holds, Word: lint.Warning}
	for _, e := range p.Net.At(s.Hot) {
		b := p.Plan.Block(p.Net.Edges[e].Addr)
		if b == nil || b.Header().Type == "connector" || comesAlong(&p.Net.Edges[e], s.Present) {
			continue
		}
		v.Outcome, v.Related = lint.NotProven, []string{b.Header().Addr}
		v.Missing = []lint.Missing{{Subject: s.Addr, Attribute: "a connector with its key"}}
		v.Message = fmt.Sprintf("%s lifts out, and %s lands on its posts: whether the two can be changed over when it comes back is not written.", lint.Quote(s.Source), lint.Quote(b))
		break
	}
	return v
}
