package plan

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
)

var blackBoxPort = &lint.Rule{
	ID:      "plan/black-box-port",
	Claim:   "The plan uses a port whose inside is unknown.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Caution, lint.Notice},
	Harm:    true,
	Subject: "converter; lift-out battery; tow plug",
	When: "A converter or a battery that lifts out is wired, and the plan leaves out a figure of one of its ports: limits of voltage and current, whether current can come back, whether the two sides share a negative, " +
		"what it gives into a short. Or the vehicle's side of a tow plug is drawn to nothing.",
	Why: "It is never a violation, it is not proven. Rules that need the figure are held up: the word is that of the gravest of them, and notice where none is.",
	Numbers: "None. By kind: a charger, load centre, inverter and diode block reverse current and share no negative across alternating current; what a diode passes is what feeds it. " +
		"`rated` will do for a current limit.",
	Not:    "Figures that the plan states: they are the maker's word. What no rule can know: the inside of packs, of vehicles and of their control.",
	Offer:  "Ask the maker: largest volts and amps in and out, can it feed back, are the negatives joined, what does it give into a short. A technician can measure the first two on a bench.",
	Meter:  "Open-circuit volts, polarity, and isolation to the case of a port below 60 V DC, nothing else connected; no more.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "nothing is concluded through a port without its maker's figure"}},
	Remedy: true,
	Since:  "0.1",
	Review: blackBoxes,
}

func blackBoxes(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Converters {
		c := &p.Net.Converters[i]
		if wired(p.Net, c.Converter, c.In.Hot) || wired(p.Net, c.Converter, c.Out.Hot) {
			out = append(out, box(p, ran, c.Converter, converterLacks(c.Converter)))
		} else {
			out = append(out, lint.Verdict{Subject: c.Converter, Outcome: lint.Holds})
		}
	}
	for i := range p.Net.Sources {
		if s := &p.Net.Sources[i]; s.Kind.Value == "battery" && s.Removable.True() && wired(p.Net, s.Source, s.Hot) {
			out = append(out, box(p, ran, s.Source, lacking(given{"short_circuit", s.ShortCircuit.Set}, given{"discharge_limit", s.DischargeLimit.Set})))
		}
	}
	for _, x := range p.Plan.Connectors {
		if x.Tow.True() {
			out = append(out, vehicle(p.Net, x))
		}
	}
	return out
}

// given is an attribute and whether the plan has it.
type given struct {
	attribute string
	set       bool
}

func lacking(all ...given) []string {
	var out []string
	for _, g := range all {
		if !g.set {
			out = append(out, g.attribute)
		}
	}
	return out
}

// converterLacks lists the port figures that a converter of its kind lacks.
func converterLacks(x *schema.Converter) []string {
	var in, out schema.Port
	if x.Input != nil {
		in = *x.Input
	}
	if x.Output != nil {
		out = *x.Output
	}
	volts, least := given{"input voltage_max", in.VoltageMax.Set}, given{"limits_current", x.LimitsCurrent.Set}
	takes := given{"input current_max", in.CurrentMax.Set || x.Rated.Set}
	gives := given{"output current_max", out.CurrentMax.Set || x.Rated.Set}
	switch x.Kind.Value {
	case "diode":
		return nil
	case "charger", "load-center", "inverter":
		return lacking(volts, takes, gives, least)
	}
	return lacking(given{"blocks_reverse", x.BlocksReverse.Set}, given{"isolated", x.Isolated.Set}, volts, takes, gives, least)
}

// portFigures are the attributes that tell what a port does.
var portFigures = []string{"blocks_reverse", "limits_current", "isolated", "short_circuit", "discharge_limit", "rated", "current_max", "voltage"}

// box is the verdict on one part: what it lacks, and which rules wait on it.
func box(p *lint.Pass, ran *lint.Ran, b schema.Block, lacks []string) lint.Verdict {
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: lint.Notice}
	var waiting []string
	for _, r := range ran.Rules {
		for _, w := range ran.Verdicts[r.ID] {
			for _, m := range w.Missing {
				if w.Outcome != lint.NotProven || m.Subject != b.Header().Addr || !isPort(m.Attribute) {
					continue
				}
				if v.Word = max(v.Word, counts(r, w)); !slices.Contains(waiting, r.ID) {
					waiting = append(waiting, r.ID)
				}
				if !slices.Contains(lacks, m.Attribute) {
					lacks = append(lacks, m.Attribute)
				}
			}
		}
	}
	if len(lacks) == 0 {
		return v
	}
	v.Outcome = lint.NotProven
	for _, a := range lacks {
		v.Missing = append(v.Missing, lint.Missing{Subject: b.Header().Addr, Attribute: a})
	}
	v.Message = fmt.Sprintf("What %s does at its ports is not fully written: %s.", lint.Quote(b), lint.And(lacks...))
	if len(waiting) > 0 {
		v.Message += fmt.Sprintf(" It holds up %s.", lint.And(waiting...))
	}
	return v
}

func isPort(attribute string) bool {
	return slices.ContainsFunc(portFigures, func(f string) bool { return strings.Contains(attribute, f) })
}

// counts is the word with which a finding that is held up would count here as it does there.
func counts(r *lint.Rule, v lint.Verdict) lint.Severity {
	if r.Harm {
		return v.Word
	}
	return r.CountsAs(v)
}

// vehicle asks of a tow plug whether anything is drawn on both of its sides.
func vehicle(n *network.Network, x *schema.Connector) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Notice}
	var sides []string
	for _, side := range []string{"fixed", "free"} {
		if !drawn(n, x, side) {
			v.Outcome, v.Missing = lint.NotProven, append(v.Missing, lint.Missing{Subject: x.Addr, Attribute: "what is behind its " + side + " side"})
			sides = append(sides, side)
		}
	}
	if len(sides) > 0 {
		v.Message = fmt.Sprintf("Nothing is drawn behind the %s side of the tow plug %s: what the vehicle gives there, and takes, is unknown.", strings.Join(sides, " and the "), lint.Quote(x))
	}
	return v
}

// drawn says whether a wire or another part leads to any contact of one side of a connector.
func drawn(n *network.Network, x *schema.Connector, side string) bool {
	for id := range n.Nodes {
		if n.Nodes[id].Addr == x.Addr && n.Nodes[id].Terminal == side && wired(n, x, network.NodeID(id)) {
			return true
		}
	}
	return false
}
