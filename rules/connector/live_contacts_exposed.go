package connector

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var liveContactsExposed = &lint.Rule{
	ID:      "connector/live-contacts-exposed",
	Claim:   "Unplugged, a bare contact is still live.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Notice},
	Subject: "connector; end of a wire at a part that lifts out",
	When: "A connector is unmated, and in some state a contact on its `exposed` side is energised: by alternating current, by a battery of 12 V or more, or by a limited source of 12 V or more. " +
		"Halves of a genderless style are alike, so both sides count. What lifts out carries its half of a plug away, with its own sources behind it. A conductor's end at a part that is lifted out " +
		"is bare too.",
	Why: "A ring, a tool or the next plug closes the circuit. Danger for alternating current or above 60 V; warning for a battery, which can burn and arc, and for a limited source that gives " +
		"5 A above 30 V or 240 W; notice for one that gives less.",
	Numbers: "Volts: batteries rested full, arrays open on their coldest morning, converters at their highest setpoint. Amperes: what limited sources on the contact give together, an array 1.25 times its " +
		"short-circuit current. A converter with `limits_current = false`, a diode, or one that lets current come back passes on what is behind it.",
	Not: "Contacts that a finger cannot reach: say `exposed = \"none\"`. What a pulled breakaway switch puts on the brake contact: in that minute the brakes come first. Return contacts. A connector that is " +
		"never taken apart.",
	Offer: "Turn the connector round, so that the live side has the shrouded half; a dc-dc converter or a diode that blocks reverse; a relay that closes with the mating. A dust cover is no answer.",
	Meter: "Direct current below 60 V only: the connector apart, every switch where it usually stands, volts between the two contacts of each half.",
	Cites: []lint.Citation{
		{Ref: "owners' discussions of genderless connectors", Standing: lint.Read, Note: "both halves are alike, so the live one is never shrouded by its kind"},
		{Ref: "240 VA as a limit of energy that may be touched", Standing: lint.FromMemory},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "the live side has the contacts that cannot be touched"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.Shrouded, remedy.BlocksReverse},
	Since:  "0.1",
	Run:    exposed,
}

func exposed(p *lint.Pass) []lint.Verdict {
	x := newExposure(p)
	var out []lint.Verdict
	for _, c := range p.Plan.Connectors {
		out = append(out, x.connector(c)...)
	}
	for _, l := range looseEnds(p.Net) {
		out = append(out, x.loose(l))
	}
	return out
}

// bareSides lists the sides of a connector whose contacts can be touched; sure is false where the plan
// does not tell.
func bareSides(c *schema.Connector) (list []string, sure bool) {
	switch {
	case c.Exposed.Value == "none":
		return nil, true
	case genderless(c):
		return sides, true
	case c.Exposed.Set:
		return []string{c.Exposed.Value}, true
	}
	return sides, false
}

// connector answers for one connector, each bare side by its worst state.
func (x *exposure) connector(c *schema.Connector) []lint.Verdict {
	own := x.Net.Var(c.Addr)
	list, sure := bareSides(c)
	if own < 0 {
		list = nil
	}
	var out []lint.Verdict
	for _, side := range list {
		t := &target{nodes: liveNodes(x.Net, c, side), variable: own, parts: sourcesParted(x.Net, own)}
		if len(t.nodes) == 0 {
			continue
		}
		complete := x.search(t)
		for _, f := range t.found() {
			out = append(out, x.told(c, side, sure, f))
		}
		if len(t.found()) == 0 && !complete {
			out = append(out, lint.Unfinished(c, lint.Warning))
		}
	}
	if len(out) == 0 {
		return []lint.Verdict{{Subject: c, Outcome: lint.Holds}}
	}
	return out
}

// sourcesParted lists the sources that a connector parts from the rest by following them.
func sourcesParted(n *network.Network, own int) []int {
	var out []int
	for _, r := range roots(n, own) {
		if r != own && n.Vars[r].Kind == network.SourceVar {
			out = append(out, r)
		}
	}
	return out
}

func (x *exposure) told(c *schema.Connector, side string, sure bool, f *finding) lint.Verdict {
	v := f.verdict(c, side)
	if f.parted != nil {
		v.Message = fmt.Sprintf("Apart from its place, %s has the %s side of %s with it, live: %s on contacts that can be touched.", lint.Quote(f.parted), side, lint.Quote(c), f.words())
	} else {
		v.Message = fmt.Sprintf("Unplugged, %s stays live on its %s side: %s on contacts that can be touched.", lint.Quote(c), side, f.words())
	}
	if !sure {
		v.Outcome, v.Missing = lint.NotProven, append([]lint.Missing{{Subject: c.Addr, Attribute: "exposed"}}, v.Missing...)
		v.Message = fmt.Sprintf("Unplugged, %s stays live on its %s side: %s. Whether its contacts can be touched there is not written.", lint.Quote(c), side, f.words())
	}
	return f.doubted(v)
}

// looseEnd is the end of a part at something that lifts out without it.
type looseEnd struct {
	block  schema.Block
	at     network.NodeID
	source *network.Source
}

// looseEnds lists what lands on a part that lifts out, connectors apart: they answer for themselves.
func looseEnds(n *network.Network) []looseEnd {
	var out []looseEnd
	seen := map[string]bool{}
	for i := range n.Nodes {
		s := liftsOut(n, network.NodeID(i))
		if s == nil || n.Nodes[i].Return {
			continue
		}
		for _, e := range n.At(network.NodeID(i)) {
			b := n.Plan.Block(n.Edges[e].Addr)
			if b == nil || b.Header().Type == "connector" || seen[n.Edges[e].Addr] || comesAlong(&n.Edges[e], s.Present) {
				continue
			}
			seen[n.Edges[e].Addr] = true
			out = append(out, looseEnd{b, network.NodeID(i), s})
		}
	}
	return out
}

// liftsOut is the removable battery that a node is of, or lifts out with; nil where it stays.
func liftsOut(n *network.Network, id network.NodeID) *network.Source {
	for i := range n.Sources {
		s := &n.Sources[i]
		if s.Present < 0 || !s.Removable.True() || s.PartOf.Set {
			continue
		}
		if b := n.Plan.Block(n.Nodes[id].Addr); b != nil && (b.Header().Addr == s.Addr || b.Header().PartOf.Addr == s.Addr) {
			return s
		}
	}
	return nil
}

// comesAlong says whether an edge is there only while a source is.
func comesAlong(e *network.Edge, present int) bool {
	for _, l := range e.When {
		if l.Var == present {
			return true
		}
	}
	return false
}

func (x *exposure) loose(l looseEnd) lint.Verdict {
	t := &target{nodes: []network.NodeID{l.at}, variable: l.source.Present}
	complete := x.search(t)
	for _, f := range t.found() {
		v := f.verdict(l.block, "the end at "+l.source.Addr)
		v.Message = fmt.Sprintf("With %s lifted out, the end of %s that served it is bare and live: %s. If it lifts out too, `part_of` says so.",
			lint.Quote(l.source.Source), lint.Quote(l.block), f.words())
		return f.doubted(v)
	}
	if !complete {
		return lint.Unfinished(l.block, lint.Warning)
	}
	return lint.Verdict{Subject: l.block, Outcome: lint.Holds}
}

// words tells what is on a contact.
func (f *finding) words() string {
	if f.touch.volts.Kind == 0 {
		return fmt.Sprintf("%s reaches it", lint.Quote(f.touch.by))
	}
	s := fmt.Sprintf("%s puts %s", lint.Quote(f.touch.by), f.touch.volts.Text())
	switch {
	case f.touch.ac:
		s += " of alternating current"
	case !f.touch.stiff && len(f.touch.amps) > 0 && f.touch.total() > 0:
		s += ", up to " + derive.Text(f.touch.total(), "A") + ","
	}
	return s
}

// doubted adds to a message what it turns on.
func (f *finding) doubted(v lint.Verdict) lint.Verdict {
	if len(f.missing) > 0 {
		v.Message += fmt.Sprintf(" How bad that is turns on %s, which is not written.", lint.Lacking(f.missing[0], true))
	}
	return v
}
