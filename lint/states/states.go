// Package states tells the different states of a plan, one after another: what is live, what feeds
// what, and the numbers of each. It judges nothing.
//
// Every number is one of the solved operating points at the corners below, with all loads that have
// power running at once. What the plan leaves out is named, and no number is given for what is
// joined to it; where there is no operating point there is no number either.
package states

import (
	"slices"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

const (
	mostWork = 1 << 22 // nodes times solved points: what one listing may cost
	fullest  = 3       // conductors that a state names as its fullest
)

// Survey answers for the states of one plan. It is not for use by several goroutines at once.
type Survey struct {
	Plan  *schema.Plan
	Net   *network.Network
	Space *explore.Space

	c      *circuit.Circuit
	whole  *network.Zone
	places map[string]network.Port // by the terminal's name without its pole
	buses  []*schema.Bus
	shares []int // by zone: zones that come home over one wire, or lie behind one converter
	iz     map[string]ampacity
}

// New prepares a plan. A plan whose wiring is in error has no states, only diagnostics.
func New(p *schema.Plan, stop func() bool) (*Survey, hcl.Diagnostics) {
	net, diags := network.Build(p)
	if diags.HasErrors() {
		return nil, diags
	}
	space := explore.New(net, 0)
	space.Stop = stop
	s := &Survey{Plan: p, Net: net, Space: space, c: circuit.New(space, circuit.Guesses{}), whole: net.Whole(), places: map[string]network.Port{}, iz: map[string]ampacity{}}
	s.name()
	s.tie()
	return s, nil
}

// name groups the nodes of each terminal.
func (s *Survey) name() {
	for i := range s.Net.Nodes {
		n := &s.Net.Nodes[i]
		p, ok := s.places[n.Place()]
		if !ok {
			p = network.Port{Hot: network.None, Ret: network.None, Ground: network.None}
		}
		switch n.Pole {
		case schema.Neg, schema.Neutral:
			p.Ret = network.NodeID(i)
		case schema.Ground:
			p.Ground = network.NodeID(i)
		default:
			p.Hot = network.NodeID(i)
		}
		s.places[n.Place()] = p
	}
	s.buses = s.Plan.Buses
}

// Listing is the states that were asked for, up to a limit.
type Listing struct {
	File, System string
	Total        string // resting states that the plan allows; "" where they could not be counted
	Distinct     string // different networks among those asked for; "" where they could not be counted
	Examined     int    // states looked at, those that make the same network among them
	More         bool   // there are more than were listed
	Complete     bool   // false where the search met its bound
	Transits     bool   // switches in transit were asked for
	Limit        int
	Variables    []Variable
	Held         []lint.Position // what all listed states have in common
	Corners      []Corner        // at which numbers were worked out
	States       []*State
	Answers      []*Answer // to the questions that were put; then States is empty

	alike map[string]int // blocks by what they are called
}

// Unsolved says whether some state could not be solved at some corner, though it may have a point.
func (l *Listing) Unsolved() bool {
	return slices.ContainsFunc(l.States, func(x *State) bool {
		return slices.ContainsFunc(x.NoPoint, func(n NoPoint) bool { return n.Unsolved })
	}) || slices.ContainsFunc(l.Answers, func(a *Answer) bool {
		return slices.ContainsFunc(a.NoPoint, func(f Fold) bool { return f.Unsolved })
	})
}

// Called is a part in the owner's words; its address is added where several are called alike.
func (l *Listing) Called(b schema.Block) string {
	h := b.Header()
	if l.alike[h.Type+" "+h.Named()] > 1 {
		return lint.Quote(b) + " (" + h.Addr + ")"
	}
	return lint.Quote(b)
}

// Variable is one thing that has positions.
type Variable struct {
	Block     schema.Block
	Positions []string
	Throws    []string // its transits, as a state names them
	Follower  bool
	Follows   []string // addresses of what fixes it
}

// Wanted is what to list.
type Wanted struct {
	explore.Ask
	Limit int
}

// List tells the different states, resting ones unless transits were asked for.
func (s *Survey) List(w Wanted) *Listing {
	l := s.listing(w)
	views := s.views(w, l)
	vary := s.held(l, views)
	for i, v := range views {
		if s.stopped(l) {
			break
		}
		l.States = append(l.States, s.state(i+1, v, vary))
	}
	l.Corners = s.corners(views)
	return l
}

// stopped asks the caller; a listing that ends early is not complete.
func (s *Survey) stopped(l *Listing) bool {
	stop := s.Space.Stop != nil && s.Space.Stop()
	l.Complete = l.Complete && !stop
	return stop
}

func (s *Survey) listing(w Wanted) *Listing {
	l := &Listing{File: s.Plan.File, System: s.Plan.System.Name, alike: map[string]int{}, Transits: w.Transits || len(w.Throws) > 0, Limit: w.Limit}
	if t := s.Plan.System.Title; t.Set && t.Value != "" {
		l.System = t.Value
	}
	if total, ok := s.Space.Total(); ok {
		l.Total = total.String()
	}
	for _, b := range s.Plan.Blocks() {
		l.alike[b.Header().Type+" "+b.Header().Named()]++
	}
	for i := range s.Net.Vars {
		l.Variables = append(l.Variables, s.variable(i))
	}
	return l
}

func (s *Survey) variable(i int) Variable {
	x := &s.Net.Vars[i]
	out := Variable{Block: s.Plan.Block(x.Addr), Positions: x.Positions, Follower: x.Follower}
	for _, t := range x.Throws {
		out.Throws = append(out.Throws, transit(x, &t))
	}
	for _, f := range x.Follows {
		out.Follows = append(out.Follows, s.Net.Vars[f].Addr)
	}
	return out
}

func transit(x *network.Variable, t *network.Throw) string {
	word := " (gap)"
	if t.Overlap {
		word = " (overlap)"
	}
	return x.Positions[t.From] + ">" + x.Positions[t.To] + word
}

// views picks the different networks, and counts all that there are.
func (s *Survey) views(w Wanted, l *Listing) []*explore.View {
	var out []*explore.View
	seen := map[string]bool{}
	most := min(w.Limit, max(1, mostWork/(1+len(s.Net.Nodes)*len(corners))))
	l.Complete = s.Space.List(s.whole, w.Ask, func(v *explore.View) bool {
		l.Examined++
		if k := v.Signature(); !seen[k] {
			seen[k] = true
			if len(out) < most {
				out = append(out, v)
			}
		}
		return len(seen) <= most
	})
	l.More = len(seen) > len(out)
	if n, ok := s.Space.Different(s.whole, w.Ask); ok {
		l.Distinct = n.String()
	}
	// Listing fewer than were asked for is no choice of whoever asked; a list that is full is.
	l.Complete = len(out) == w.Limit || l.Complete && len(out) == len(seen)
	return out
}

// held finds what all views have in common, and gives the variables that tell them apart.
func (s *Survey) held(l *Listing, views []*explore.View) (vary []int) {
	if len(views) == 0 {
		return nil
	}
	var same []int
	for i := range s.Net.Vars {
		first := views[0].State([]int{i})
		switch {
		case s.Net.Vars[i].Follower:
		case slices.ContainsFunc(views, func(v *explore.View) bool { return !slices.Equal(v.State([]int{i}), first) }):
			vary = append(vary, i)
		default:
			same = append(same, i)
		}
	}
	l.Held = views[0].State(same)
	return vary
}

// followers tells where the parts stand that nobody sets by hand.
func (s *Survey) followers(v *explore.View) []lint.Position {
	var out []lint.Position
	for i := range s.Net.Vars {
		if x := &s.Net.Vars[i]; x.Follower && v.At(i) >= 0 {
			out = append(out, lint.Position{Addr: x.Addr, Position: x.Positions[v.At(i)]})
		}
	}
	return lint.SortState(out)
}
