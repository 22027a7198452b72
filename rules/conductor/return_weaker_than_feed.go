package conductor

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var returnWeakerThanFeed = &lint.Rule{
	ID:      "conductor/return-weaker-than-feed",
	Claim:   "The plus got upgraded, the minus did not.",
	Words:   []lint.Severity{lint.Warning, lint.Danger},
	Harm:    true,
	Subject: "conductor; return contact of a connector or switch",
	When: "A return wire carries more than its ampacity, or a return contact more than its rating, in some state or after one of several returns has opened; or the way back from " +
		"something that takes or gives current has more than 1.5 times the resistance of the way there, counting every return that shares the current, and loses more than 1 % of nominal volts.",
	Why: "No fuse is in it: it heats among the lamp and brake wires that it runs with, and it burns open at the heaviest load. Warning; danger where brakes or road lights of a " +
		"trailer come home through it, for they go with it, when the brakes are on.",
	Numbers: "Ampacity as in conductor/ampacity. Current: a sum of what comes home through the wire from every circuit; where returns lie in a ring it divides by resistance. One return " +
		"of a ring at a time is taken to be open. A starter's current counts in every conductor without `cranking = true`, however short. " +
		"Resistances: wires at 20 C and contacts, all ways that share taken together; what is lost counts joints and heat too. At 25 A a 10 AWG wire makes 2 W in each metre, 18 AWG 13 W.",
	Not: "A wire of a pair whose plus carries as much: what is wrong with that is conductor/ampacity's, and a contact of which the same is so switching/contact-rating's. A return that " +
		"serves several feeds and carries them all. A way back that is long but loses less than 1 % of the volts. Alternating current. Resistance where batteries are drawn in series. " +
		"That a plug's pin opens is asked of the wires at it.",
	Offer: "A return of the size of its feed, on a pin of its own; never the hitch.",
	Meter: "Millivolts from the load's negative to the battery's at full load: about as many as on the positive side.",
	Cites: []lint.Citation{
		{Ref: "owners' reports of burnt trailer grounds", Standing: lint.Read, Note: "a 10 AWG feed with an 18 to 20 AWG return that burned off"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a return as large as its feed"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.IsolatedNear, remedy.ThickerWire, remedy.BetterInsulation, remedy.HigherRating},
	Folds:  []string{"bonding/chassis-return", "conductor/ampacity return", "conductor/voltage-drop", "switching/contact-rating current"},
	Since:  "0.1",
	Run:    weakReturns,
}

func weakReturns(p *lint.Pass) []lint.Verdict {
	r := newReturns(p)
	r.unnamed()
	r.compare()
	r.open()
	var out []lint.Verdict
	for _, l := range r.legs {
		out = append(out, r.verdict(l))
	}
	return out
}

// returns asks about all that current comes home by.
type returns struct {
	*lint.Pass
	legs                  []*leg
	ways                  *circuit.Returns
	plain                 bool                    // what comes home through a return can be told by resistance
	takers, running, road []circuit.Taker         // all; but for starters; a trailer's brakes and road lights
	told                  map[string]lint.Verdict // by part: what the way back says of it
	opened                map[string]lint.Verdict // by part: what it carries after another return has opened
	unopened              map[*leg]bool           // of which that could not be told
	unfinished            bool                    // the search over states met its bound
}

// leg is one part that current comes home by.
type leg struct {
	block      schema.Block
	home, live []int         // its edges
	limit      derive.Number // ampacity or rating, in A
	short      []lint.Missing
	cranking   bool
}

func newReturns(p *lint.Pass) *returns {
	r := &returns{Pass: p, ways: p.Circuit.Returns(), told: map[string]lint.Verdict{}, opened: map[string]lint.Verdict{}, unopened: map[*leg]bool{}}
	r.findTakers()
	for _, x := range p.Plan.Conductors {
		l := r.leg(x)
		l.limit, l.short = p.Circuit.Ampacity(x)
		l.cranking = x.Cranking.True()
		r.legs = append(r.legs, l)
	}
	contact := func(b schema.Block, rating schema.Quantity) {
		l := r.leg(b)
		if l.short = []lint.Missing{{Subject: b.Header().Addr, Attribute: "rating"}}; rating.Set {
			l.limit, l.short = derive.Read("rating of "+lint.Quote(b), "Ir", rating.Value, "A", b.Header().Addr, "rating", rating.Range), nil
		}
		if len(l.home) > 0 {
			l.cranking = p.Circuit.CrankingAt(l.home[0])
			r.legs = append(r.legs, l)
		}
	}
	for _, x := range p.Plan.Connectors {
		contact(x, x.Rating)
	}
	for _, x := range p.Plan.Switches {
		contact(x, x.Rating)
	}
	return r
}

// findTakers lists the currents that come home.
func (r *returns) findTakers() {
	starter, road := map[schema.Block]bool{}, map[schema.Block]bool{}
	for _, i := range r.Circuit.Starters() {
		starter[r.Net.Loads[i].Load] = true
	}
	for i := range r.Net.Loads {
		road[r.Net.Loads[i].Load] = onTheRoad(r.Pass, i)
	}
	r.takers, r.plain = r.Circuit.Takers(nil)
	for _, t := range r.takers {
		if !starter[t.Block] {
			r.running = append(r.running, t)
		}
		if road[t.Block] {
			r.road = append(r.road, t)
		}
	}
}

func (r *returns) leg(b schema.Block) *leg {
	l := &leg{block: b}
	for _, e := range r.Net.EdgesOf(b.Header().Addr) {
		switch x := &r.Net.Edges[e]; {
		case x.Kind != network.Wire && x.Kind != network.Mate && x.Kind != network.Contact:
		case homeward(r.Net, e):
			l.home = append(l.home, e)
		case positive(r.Net, x.A) && positive(r.Net, x.B):
			l.live = append(l.live, e)
		}
	}
	return l
}

// rank orders outcomes, the plainest first.
var rank = map[lint.Outcome]int{lint.Violated: 0, lint.NotProven: 1, lint.Holds: 2}

// verdict is the gravest of what is known of a part.
func (r *returns) verdict(l *leg) lint.Verdict {
	v := lint.Verdict{Subject: l.block, Outcome: lint.Holds, Word: lint.Warning}
	for i, e := range l.home {
		if w := r.judge(l, e); i == 0 || rank[w.Outcome] < rank[v.Outcome] {
			v = w
		}
	}
	addr := l.block.Header().Addr
	for _, w := range []lint.Verdict{r.opened[addr], r.told[addr]} {
		switch {
		case w.Outcome == 0:
		case rank[w.Outcome] < rank[v.Outcome], w.Outcome == lint.Violated && v.Outcome == lint.Violated && w.Word > v.Word:
			v = w
		case w.Outcome == lint.Holds && v.Outcome == lint.Holds:
			v.Numbers = append(v.Numbers, w.Numbers...)
		}
	}
	switch {
	case v.Outcome == lint.Holds && r.unfinished && len(l.home)+len(l.live) > 0:
		return lint.Unfinished(l.block, lint.Warning)
	case v.Outcome == lint.Holds && r.unopened[l]:
		v.Outcome, v.Group, v.Missing = lint.NotProven, "unopened", r.ways.Lacks
		if len(v.Missing) == 0 {
			v.Missing = []lint.Missing{{Subject: "plan", Attribute: "returns without sources in a row"}}
		}
		v.Message = fmt.Sprintf("What %s carries once another return is open is not known: %s is missing.", l.name(), attribute(v.Missing))
	}
	return v
}

// judge holds what one wire or contact carries home against what it can carry.
func (r *returns) judge(l *leg, e int) lint.Verdict {
	c := carriedBy(r.Pass, e, l.cranking)
	r.oneWay(&c, l, e)
	v := lint.Verdict{Subject: l.block, Outcome: lint.Holds, Word: lint.Warning, Numbers: lint.Known(c.lacks, c.n, l.limit)}
	guarded := c.feed >= 0 && l.limit.Kind != 0 && r.Circuit.Guarded(c.feed, l.limit.Value)
	switch {
	case c.n.Value == 0 && len(c.lacks) == 0, r.asStrong(l, c):
		return v
	case l.limit.Kind == 0:
		v.Outcome, v.Missing = lint.NotProven, append(l.short[:len(l.short):len(l.short)], c.lacks...)
		v.Message = fmt.Sprintf("What %s can carry is not known: %s is missing.", l.name(), attribute(l.short))
	case c.n.Value > l.limit.Value*(1+1e-9) && !guarded:
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s carries up to %s%s, and can carry %s.", capital(l.name()), c.n.Text(), r.beside(l), l.limit.Text())
		if c.feed >= 0 {
			v.State = r.Circuit.StateOf(c.feed)
		} else {
			v.State = r.shared(l, e)
		}
	case len(l.short) > 0:
		v.Outcome, v.Missing = lint.NotProven, l.short
		v.Message = fmt.Sprintf("%s can carry %s at most, and less by an unknown factor: %s is missing.", capital(l.name()), l.limit.Text(), attribute(l.short))
	case len(c.lacks) > 0 && !guarded:
		v.Outcome, v.Missing = lint.NotProven, c.lacks
		v.Message = fmt.Sprintf("What comes home through %s is not known: %s is missing; it can carry %s.", l.name(), attribute(c.lacks), l.limit.Text())
	case !c.complete:
		return lint.Unfinished(l.block, lint.Warning)
	}
	return r.graded(v, e, -1)
}

// carried is what a return edge carries.
type carried struct {
	n        derive.Number
	lacks    []lint.Missing
	feed     int // a live edge that carries the same, -1 where there is none
	complete bool
}

func carriedBy(p *lint.Pass, e int, cranking bool) carried {
	at, feed := e, p.Circuit.FeedOf(e)
	if feed >= 0 {
		at = feed
	}
	w := p.Circuit.Worst(at)
	c := carried{w.Capped, p.Circuit.LacksAt(at), feed, w.Complete}
	if cranking {
		c.n, c.lacks = p.Circuit.Beside(at)
	}
	return c
}

// asStrong says whether the plus of the same part carries as much as what comes home through it: then
// the return is no weaker than its feed.
func (r *returns) asStrong(l *leg, c carried) bool {
	for _, e := range l.live {
		w := r.Circuit.Worst(e)
		n, lacks := w.Capped, r.Circuit.LacksAt(e)
		if l.cranking {
			n, lacks = r.Circuit.Beside(e)
		}
		if n.Value >= c.n.Value*(1-1e-9) && len(lacks) >= len(c.lacks) {
			return true
		}
	}
	return false
}

// beside tells what the plus of the same part carries.
func (r *returns) beside(l *leg) string {
	most := derive.Number{}
	for _, e := range l.live {
		if n := r.Circuit.Worst(e).Capped; n.Value > most.Value {
			most = n
		}
	}
	if most.Value == 0 {
		return ""
	}
	return fmt.Sprintf(", its plus %s", most.Text())
}

func (l *leg) name() string {
	size := ""
	if x, ok := l.block.(*schema.Conductor); ok && x.Size.Set {
		size = " (" + x.Size.Name + ")"
	}
	switch {
	case len(l.home) == 0:
		return lint.Quote(l.block) + size
	case l.block.Header().Type != "conductor":
		return "the return contact of " + lint.Quote(l.block)
	case len(l.live) > 0:
		return "the return wire of " + lint.Quote(l.block) + size
	}
	return "the return " + lint.Quote(l.block) + size
}

// capital starts a sentence.
func capital(s string) string {
	if s != "" && s[0] == 't' {
		return "T" + s[1:]
	}
	return s
}
