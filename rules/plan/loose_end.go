package plan

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
)

var looseEnd = &lint.Rule{
	ID:      "plan/loose-end",
	Claim:   "A part is drawn, and nothing is wired to one of its terminals, or no source can ever send current through it.",
	Words:   []lint.Severity{lint.Warning},
	Harm:    true,
	Subject: "part",
	When: "A source, load, converter or overcurrent device has a terminal, or one pole of it, to which no conductor, mounting or other part leads; or a load or a " +
		"converter's input is wired, and no source is on its circuit nor on any that feeds it through converters, or its return leads to no return of what feeds it; or " +
		"wires are drawn with no source and no part that uses power; or a plan draws no source at all.",
	Why: "What was checked of a part that is joined to nothing says nothing of the part as it will be built: one forgotten line in a plan would make every rule hold. It " +
		"is never a violation, it is not proven; it counts as a warning because it can hide everything else.",
	Numbers: "None.",
	Not:     "Switches, buses and plugs, which may have spare terminals.",
	Offer:   "The missing conductor, or `on =` where a device sits directly on a battery or bus; or take the part out of the plan.",
	Meter:   "",
	Cites:   []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "a drawing is checked for open ends before anything else"}},
	Since:   "0.1",
	Run:     openEnds,
}

func openEnds(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	n := p.Net
	for i := range n.Sources {
		out = append(out, ends(p, n.Sources[i].Source, terminal{"", n.Sources[i].Port}))
	}
	for _, x := range p.Plan.Fuses {
		at := func(name string) terminal {
			id := n.Node(x.Addr + "." + name + ".pos")
			if id == network.None {
				id = n.Node(x.Addr + "." + name + ".line")
			}
			return terminal{name, network.Port{Hot: id, Ret: network.None}}
		}
		out = append(out, ends(p, x, at("line"), at("load")))
	}
	w := newWays(n)
	for i := range n.Converters {
		c := &n.Converters[i]
		v := ends(p, c.Converter, terminal{"input", c.In}, terminal{"output", c.Out})
		out = append(out, fed(n, w, v, c.In, "the input of "))
	}
	for i := range n.Loads {
		v := ends(p, n.Loads[i].Load, terminal{"", n.Loads[i].Port})
		out = append(out, fed(n, w, v, n.Loads[i].Port, ""))
	}
	out = append(out, darkWires(p, w)...)
	if len(n.Sources) == 0 && !slices.ContainsFunc(out, func(v lint.Verdict) bool { return v.Outcome == lint.NotProven }) {
		out = append(out, open(p.Plan.System, "a source", "The plan draws no source: nothing in it carries current, and nothing was checked."))
	}
	return out
}

// fed looks at where current through a part comes from and goes to, if its ends are wired.
func fed(n *network.Network, w *ways, v lint.Verdict, at network.Port, side string) lint.Verdict {
	switch {
	case v.Outcome != lint.Holds:
		return v
	case !reachable(n, at.Hot):
		return open(v.Subject, "a source that reaches it", fmt.Sprintf("No source can reach %s%s in any position.", side, lint.Quote(v.Subject)))
	case !w.home(at):
		return open(v.Subject, "a return of it", fmt.Sprintf("The return of %s%s leads to no return of what feeds it, in any position: current cannot come home, and rules "+
			"that follow it find nothing.", side, lint.Quote(v.Subject)))
	}
	return v
}

// darkWires reports wires that lead to no source, load or converter in any position, the first of each
// circuit: every rule would hold of them.
func darkWires(p *lint.Pass, w *ways) []lint.Verdict {
	var out []lint.Verdict
	ported, seen := w.ported(p.Net), map[string]bool{}
	for _, e := range p.Net.Edges {
		at := w.find(int(e.A))
		if e.Kind != network.Wire || ported[at] || p.Net.Nodes[e.A].Return {
			continue
		}
		ported[at] = true
		if x := e.Wire; !seen[x.Addr] { // its other pole may be a circuit of its own
			seen[x.Addr] = true
			out = append(out, open(x, "a source that reaches it", fmt.Sprintf("No source can reach %s in any position: what was checked of it says nothing.", lint.Quote(x))))
		}
	}
	return out
}

// terminal is a terminal of a part by its name in a sentence; Ret is None where it does not matter.
type terminal struct {
	name string
	network.Port
}

func ends(p *lint.Pass, x schema.Block, terminals ...terminal) lint.Verdict {
	for _, t := range terminals {
		where := "it"
		if t.name != "" {
			where = "its " + t.name
		}
		hot, ret := wired(p.Net, x, t.Hot), t.Ret == network.None || wired(p.Net, x, t.Ret)
		switch {
		case !hot && !ret, !hot && t.Ret == network.None:
			return open(x, "a wire to "+where, fmt.Sprintf("Nothing is wired to %s of %s: what was checked of it says nothing.", called(t.name), lint.Quote(x)))
		case !hot:
			return open(x, "a wire to the positive of "+where, fmt.Sprintf("Nothing is wired to the live side of %s of %s.", called(t.name), lint.Quote(x)))
		case !ret:
			return open(x, "a return of "+where, fmt.Sprintf("No return is drawn for %s of %s: current cannot come home, and rules that follow it find nothing.", called(t.name), lint.Quote(x)))
		}
	}
	return lint.Verdict{Subject: x, Outcome: lint.Holds}
}

func called(terminal string) string {
	if terminal == "" {
		return "the terminals"
	}
	return "the " + terminal
}

func open(x schema.Block, what, message string) lint.Verdict {
	return lint.Verdict{Subject: x, Outcome: lint.NotProven, Word: lint.Warning, Message: message,
		Missing: []lint.Missing{{Subject: x.Header().Addr, Attribute: what}}, Cause: what}
}

// wired says whether anything but the part itself leads to a node.
func wired(n *network.Network, x schema.Block, id network.NodeID) bool {
	if id == network.None {
		return false
	}
	for _, e := range n.At(id) {
		if k := n.Edges[e].Kind; k == network.Wire || k == network.Joint || n.Edges[e].Addr != x.Header().Addr {
			return true
		}
	}
	return false
}

// reachable says whether any source is on the circuit of a node, or on one that feeds it.
func reachable(n *network.Network, hot network.NodeID) bool {
	z := n.ZoneOf(hot)
	return z != nil && len(n.Upstream(z).Sources) > 0
}
