package backfeed

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// runs remembers what wires carry and what edges resist, which do not change from state to state.
type runs struct {
	p     *lint.Pass
	iz    map[*schema.Conductor]derive.Number
	lacks map[*schema.Conductor][]lint.Missing
	ohms  map[int]float64
	near  float64 // m that the practice leaves unguarded
}

func newRuns(p *lint.Pass) *runs {
	r := &runs{p, map[*schema.Conductor]derive.Number{}, map[*schema.Conductor][]lint.Missing{}, map[int]float64{}, math.Inf(1)}
	for _, practice := range p.Plan.Practices() {
		bare, _, _ := tables.DeviceDistance(practice)
		r.near = min(r.near, bare.V)
	}
	return r
}

// ampacity is what a wire carries; with something lacking it is the most that it can be.
func (r *runs) ampacity(x *schema.Conductor) (derive.Number, []lint.Missing) {
	if _, ok := r.iz[x]; !ok {
		r.iz[x], r.lacks[x] = r.p.Circuit.Ampacity(x)
	}
	return r.iz[x], r.lacks[x]
}

// ohm is the resistance of an edge; what is not known counts as nothing.
func (r *runs) ohm(edge int) float64 {
	if _, ok := r.ohms[edge]; !ok {
		n, _ := r.p.Circuit.Ohms(edge, circuit.Operating)
		r.ohms[edge] = n.Value
	}
	return r.ohms[edge]
}

// bare is a wire that a supply feeds with nothing before it that limits the current to what the wire
// carries.
type bare struct {
	wire    *schema.Conductor
	edge    int
	iz      derive.Number
	missing []lint.Missing // what leaves it open whether the wire carries it
}

// unguarded finds such a wire from a node on, past the practice's distance: one for which it is sure,
// else one for which it is open. amps is what reaches the node at most.
func (r *runs) unguarded(v *explore.View, from network.NodeID, amps float64) *bare {
	n := r.p.Net
	guards := v.Guards(from)
	reach := v.Reach(from, func(e int, _ network.NodeID) bool {
		return n.Edges[e].Kind != network.Element && !n.Nodes[n.Edges[e].A].Return
	}, func(e int) float64 { return wireLength(&n.Edges[e]) })
	var open *bare
	for _, i := range v.Zone.Edges {
		e := &n.Edges[i]
		if e.Kind != network.Wire || n.Nodes[e.A].Return || !v.Conducts(i) || withinDistance(reach, e, r.near) {
			continue
		}
		iz, lacks := r.ampacity(e.Wire)
		g := guards.Of(i)
		switch limit := min(amps, g.Rating); {
		case !g.Reached:
		case math.IsInf(limit, 1) || iz.Kind != 0 && limit > iz.Value:
			return &bare{e.Wire, i, iz, nil}
		case len(lacks) > 0 && open == nil:
			open = &bare{e.Wire, i, iz, lacks}
		}
	}
	return open
}

func wireLength(e *network.Edge) float64 {
	switch {
	case e.Kind != network.Wire:
		return 0
	case e.Wire.Length.Set:
		return e.Wire.Length.Value
	}
	return math.Inf(1)
}

// withinDistance says whether a wire ends within a length of where the walk began.
func withinDistance(r *explore.Reach, e *network.Edge, most float64) bool {
	near := math.Inf(1)
	for _, end := range []network.NodeID{e.A, e.B} {
		if d, ok := r.Dist[end]; ok {
			near = min(near, d)
		}
	}
	return near+wireLength(e) <= most
}
