package switching

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var offButLive = &lint.Rule{
	ID:      "switching/off-but-live",
	Claim:   "The switch says off and something behind it is still live.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Caution},
	Harm:    true,
	Subject: "switch",
	When: "A load terminal of a hand switch is energised above 5 V in an allowed state in which the switch joins it to nothing; or a disconnect has batteries on both " +
		"sides. A terminal is a supply terminal where, with this switch open and every other contact closed, a source is on its side and not through a " +
		"converter (in a circuit that only converters feed, or at any switch but a disconnect on a side that takes no power: a converter's output); all others are load terminals. Or a way round a disconnect joins two of its terminals while it does not, and they are live.",
	Why: "Hands go in because the switch is off, and a fire behind it cannot be starved. Warning at a disconnect, caution at the empty position of any other switch, " +
		"danger above 60 V DC or on alternating current.",
	Numbers: "5 V; 60 V DC. Live means: a source, or a converter's output whose input has power in the same state, is joined to it.",
	Not: "Supply terminals: they are meant to stay live. Relays that follow a source, sensing isolators and breakaway switches: nobody reads them as off. Loads that " +
		"are wired ahead of the switch on purpose.",
	Offer: "Move the other source to the supply side; a second disconnect at that source; where it must stay, a label that says what else feeds the place.",
	Meter: "Switch off, then volts at the load terminal with sun, then with shore, then with the engine running: three readings, all written down.",
	Cites: []lint.Citation{
		{Ref: "common practice", Standing: lint.CommonPractice},
		{Ref: "NFPA 70 706.15", Standing: lint.Read, Note: "isolation from all other sources, as summarised; good practice from storage systems", For: []string{"us-rv", "cabin"}},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.OtherEnd, remedy.BlocksReverse},
	Since:  "0.1",
	Run:    stillLive,
}

const (
	liveVolts  = 5.0
	touchVolts = 60.0
)

func stillLive(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, x := range p.Plan.Switches {
		out = append(out, afterOff(p, x))
	}
	return out
}

// byHand says whether somebody reads the switch's position as off.
func byHand(x *schema.Switch) bool {
	return !x.Follows.Set && !x.CutIn.Set && !x.CutOut.Set && x.Kind.Value != "breakaway" && x.Kind.Value != "isolator" && x.Kind.Value != "relay"
}

func afterOff(p *lint.Pass, x *schema.Switch) lint.Verdict {
	holds := lint.Verdict{Subject: x, Outcome: lint.Holds}
	if !byHand(x) {
		return holds
	}
	supply, batteries := sides(p.Net, x)
	if x.Kind.Value == "disconnect" && len(batteries) > 1 {
		return lint.Verdict{Subject: x, Outcome: lint.Violated, Word: lint.Warning, Cause: "batteries on both sides", Related: batteries,
			Message: fmt.Sprintf("Disconnect %s has a battery on each side: whichever side is worked on, the other's battery is no more than a contact away, and neither is off.", lint.Quote(x))}
	}
	worst := holds
	if x.Kind.Value == "disconnect" {
		worst = roundabout(p, x)
	}
	for _, t := range x.Terminals.List {
		if supply[t.Value] {
			continue
		}
		if v := terminalLive(p, x, t.Value); graver(v, worst) {
			worst = v
		}
	}
	return worst
}

// roundabout looks for a state in which a way round a disconnect joins two of its terminals, and they are live: which
// of them is the load's does not matter then.
func roundabout(p *lint.Pass, x *schema.Switch) lint.Verdict {
	holds := lint.Verdict{Subject: x, Outcome: lint.Holds}
	own, complete := terminals(p.Net, x), true
	for i, a := range own {
		side := sideOf(p.Net, x, a)
		for _, b := range own[:i] {
			z := p.Net.ZoneOf(a)
			if !side[b] || z == nil || p.Net.Nodes[a].Return || p.Net.Nodes[b].Return || !parts(p.Net, x, a, b) {
				continue
			}
			zone := around(p.Net, z)
			round := func(v *explore.View) bool {
				return v.Transit == nil && apart(p.Net, v, x, a) && v.Joined(a, b) && len(v.Live(lets, nil).At(a)) > 0
			}
			views, whole := p.Space.Views(zone, p.Space.About(p.Space.Closed(explore.All(), own...), own...))
			if own := p.Net.Var(x.Addr); !whole && own >= 0 {
				off := p.Space.With(explore.All(), own, func(position int) bool { return offAt(p.Net, x, own, a, position) })
				var more []*explore.View
				more, whole = p.Space.Sought(zone, off, nil, func(v *explore.View) bool {
					return v.Transit == nil && v.Joined(a, b) && len(v.Live(lets, nil).At(a)) > 0
				})
				views = append(slices.Clone(views), more...)
			}
			complete = complete && whole
			if k := slices.IndexFunc(views, round); k >= 0 {
				return wayRound(p, x, views[k], views[k].Live(lets, nil), a, b)
			}
		}
	}
	if !complete {
		return lint.Unfinished(x, lint.Warning)
	}
	return holds
}

// parts says whether a switch joins two of its terminals in some position, and parts them in another: two that it
// never joins are no two sides.
func parts(n *network.Network, x *schema.Switch, a, b network.NodeID) bool {
	if len(x.Positions) == 0 {
		return true
	}
	in := func(g []schema.Text, id network.NodeID) bool {
		return slices.ContainsFunc(g, func(t schema.Text) bool { return t.Value == n.Nodes[id].Terminal })
	}
	return slices.ContainsFunc(x.Positions, func(p *schema.Position) bool {
		return slices.ContainsFunc(p.Joins.Groups, func(g []schema.Text) bool { return in(g, a) && in(g, b) })
	})
}

func wayRound(p *lint.Pass, x *schema.Switch, v *explore.View, e *explore.Energy, a, b network.NodeID) lint.Verdict {
	by, addr := feeder(p.Net, e, a)
	way := v.Between(a, b)
	out := lint.Verdict{Subject: x, Outcome: lint.Violated, Word: lint.Warning, Cause: "a way round", Related: []string{addr}, Path: v.Places(a, way)}
	out.State = lint.SortState(append(stateOf(p, x, v, e, a), v.Witness(way.Edges())...))
	out.State = slices.Compact(out.State)
	out.Message = fmt.Sprintf("With %s off, a way round it joins its two sides: what is behind it stays live from %s.", lint.Quote(x), lint.Quote(by))
	return out
}

func graver(a, b lint.Verdict) bool {
	rank := func(v lint.Verdict) int {
		switch v.Outcome {
		case lint.Violated:
			return 100 + int(v.Word)
		case lint.NotProven:
			return 10 + int(v.Word)
		}
		return 0
	}
	return rank(a) > rank(b)
}

// terminalLive looks at one load terminal over all states in which the switch joins it to nothing.
func terminalLive(p *lint.Pass, x *schema.Switch, terminal string) lint.Verdict {
	holds := lint.Verdict{Subject: x, Outcome: lint.Holds}
	at := hot(p.Net, x, terminal)
	z := p.Net.ZoneOf(at)
	if z == nil {
		return holds
	}
	word := lint.Caution
	if x.Kind.Value == "disconnect" {
		word = lint.Warning
	}
	volts, _, _ := p.Circuit.Highest(at)
	if z.AC && volts.Value > 30 || volts.Value > touchVolts {
		word = lint.Danger
	}
	own, zone := terminals(p.Net, x), around(p.Net, z)
	views, complete := p.Space.Views(zone, p.Space.About(p.Space.Closed(explore.All(), own...), own...))
	if !complete {
		views, complete = soughtLive(p, x, zone, at, views)
	}
	doubt := lint.Verdict{}
	for _, v := range views {
		if v.Transit != nil || !apart(p.Net, v, x, at) || !empty(x, v, p.Net) {
			continue
		}
		if e := v.Live(lets, nil); len(e.At(at)) > 0 {
			return report(p, x, terminal, at, v, e, word, volts)
		}
		if e := v.Live(mayLet, nil); len(e.At(at)) > 0 && doubt.Outcome == 0 {
			doubt = unsure(p, x, terminal, at, v, e, word)
		}
	}
	switch {
	case doubt.Outcome != 0:
		return doubt
	case !complete:
		return lint.Unfinished(x, word)
	}
	if volts.Kind != 0 {
		holds.Numbers = []derive.Number{volts}
	}
	return holds
}

// soughtLive looks where the bound has cut the list of states: for one in which the terminal is live for
// certain, and for one in doubt.
func soughtLive(p *lint.Pass, x *schema.Switch, zone *network.Zone, at network.NodeID, views []*explore.View) ([]*explore.View, bool) {
	own := p.Net.Var(x.Addr)
	if own < 0 {
		return views, false
	}
	off := p.Space.With(explore.All(), own, func(position int) bool { return offAt(p.Net, x, own, at, position) })
	complete := true
	for _, back := range []func(*network.Converter) bool{lets, mayLet} {
		list, known := p.Space.Sought(zone, off, nil, func(v *explore.View) bool {
			return v.Transit == nil && len(v.Live(back, nil).At(at)) > 0
		})
		views, complete = append(views, list...), complete && known
	}
	return views, complete
}

// offAt says whether a position counts as off for a terminal: what empty and apart say of a state.
func offAt(n *network.Network, x *schema.Switch, own int, at network.NodeID, position int) bool {
	for _, e := range n.At(at) {
		k := &n.Edges[e]
		if k.Kind == network.Contact && k.Addr == x.Addr && !slices.ContainsFunc(k.When, func(l network.Literal) bool { return l.Var == own && !l.At[position] }) {
			return false
		}
	}
	return x.Kind.Value == "disconnect" || len(x.Positions) == 0 || position < len(x.Positions) && len(x.Positions[position].Joins.Groups) == 0
}

// around is a zone with every zone that can feed it: through converters, and backwards through those
// that may let current come back.
func around(n *network.Network, z *network.Zone) *network.Zone {
	zones, in := []*network.Zone{z}, map[*network.Zone]bool{z: true}
	add := func(id network.NodeID) {
		if k := n.ZoneOf(id); k != nil && !in[k] {
			in[k] = true
			zones = append(zones, k)
		}
	}
	for i := 0; i < len(zones); i++ {
		for _, c := range zones[i].Outputs {
			add(n.Converters[c].In.Hot)
		}
		for _, c := range zones[i].Inputs {
			if x := &n.Converters[c]; lets(x) || mayLet(x) {
				add(x.Out.Hot)
			}
		}
	}
	return n.Join(zones...)
}

// lets and mayLet say whether current comes back out of a converter's input: for certain, and where
// the plan does not say.
func lets(c *network.Converter) bool { return c.BlocksReverse.False() }

func mayLet(c *network.Converter) bool {
	return !c.BlocksReverse.True() && (c.Kind.Value == "dc-dc" || c.Kind.Value == "mppt")
}

// apart says whether the switch joins the terminal to nothing.
func apart(n *network.Network, v *explore.View, x *schema.Switch, at network.NodeID) bool {
	for _, e := range n.At(at) {
		if n.Edges[e].Kind == network.Contact && n.Edges[e].Addr == x.Addr && v.Conducts(e) {
			return false
		}
	}
	return true
}

// empty says whether the position counts as off: for a disconnect any that leaves the terminal open,
// for other switches one that joins nothing at all.
func empty(x *schema.Switch, v *explore.View, n *network.Network) bool {
	if x.Kind.Value == "disconnect" || len(x.Positions) == 0 {
		return true
	}
	at := v.At(n.Var(x.Addr))
	return at >= 0 && at < len(x.Positions) && len(x.Positions[at].Joins.Groups) == 0
}

func report(p *lint.Pass, x *schema.Switch, terminal string, at network.NodeID, v *explore.View, e *explore.Energy, word lint.Severity, volts derive.Number) lint.Verdict {
	by, addr := feeder(p.Net, e, at)
	out := lint.Verdict{Subject: x, Outcome: lint.Violated, Word: word, Cause: terminal + " by " + addr, Related: []string{addr}, State: stateOf(p, x, v, e, at)}
	if volts.Kind != 0 {
		out.Numbers = []derive.Number{volts}
		if volts.Value <= liveVolts {
			return lint.Verdict{Subject: x, Outcome: lint.Holds, Numbers: out.Numbers}
		}
	}
	out.Message = fmt.Sprintf("With %s off, its terminal %q is still live: %s feeds it from the other side.", lint.Quote(x), terminal, lint.Quote(by))
	return out
}

func unsure(p *lint.Pass, x *schema.Switch, terminal string, at network.NodeID, v *explore.View, e *explore.Energy, word lint.Severity) lint.Verdict {
	by, addr := feeder(p.Net, e, at)
	return lint.Verdict{Subject: x, Outcome: lint.NotProven, Word: word, Cause: terminal + " by " + addr, Related: []string{addr}, State: stateOf(p, x, v, e, at),
		Missing: []lint.Missing{{Subject: addr, Attribute: "blocks_reverse"}},
		Message: fmt.Sprintf("With %s off, its terminal %q is live if current can come back through %s, and the plan does not say.", lint.Quote(x), terminal, lint.Quote(by))}
}

// feeder is what energises a terminal, a source before a converter.
func feeder(n *network.Network, e *explore.Energy, at network.NodeID) (schema.Block, string) {
	var by schema.Block
	for _, s := range e.At(at) {
		if s.Source >= 0 {
			return n.Sources[s.Source].Source, n.Sources[s.Source].Addr
		}
		if by == nil {
			by = n.Converters[s.Converter].Converter
		}
	}
	return by, by.Header().Addr
}

// stateOf is the switch's position and those that bring power to the terminal.
func stateOf(p *lint.Pass, x *schema.Switch, v *explore.View, e *explore.Energy, at network.NodeID) []lint.Position {
	vars := []int{p.Net.Var(x.Addr)}
	live := func(w *explore.View) bool { return len(w.Live(mayLet, nil).At(at)) > 0 }
	for _, i := range v.Zone.Vars {
		if i != vars[0] && v.Without(i, live) {
			vars = append(vars, i)
		}
	}
	return v.State(vars)
}
