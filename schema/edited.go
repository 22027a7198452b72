package schema

// Edited is the plan with some of its blocks replaced: edit gives what stands in a block's place, the
// block itself where it stays, or nil where it goes. Addresses stay as they are, and what names a
// block that goes names nothing.
func (p *Plan) Edited(edit func(Block) Block) *Plan {
	q := *p
	q.order, q.index = nil, map[string]Block{}
	for _, b := range p.order {
		if x := edit(b); x != nil {
			q.order = append(q.order, x)
			q.index[x.Header().Addr] = x
		}
	}
	q.Compartments, q.Sources, q.Switches = standing(&q, p.Compartments), standing(&q, p.Sources), standing(&q, p.Switches)
	q.Fuses, q.Converters, q.Buses = standing(&q, p.Fuses), standing(&q, p.Converters), standing(&q, p.Buses)
	q.Connectors, q.Loads, q.Conductors = standing(&q, p.Connectors), standing(&q, p.Loads), standing(&q, p.Conductors)
	q.Modes, q.Interlocks = standing(&q, p.Modes), standing(&q, p.Interlocks)
	return &q
}

// standing lists what stands in an edited plan in the places of some blocks.
func standing[T Block](p *Plan, old []T) []T {
	var out []T
	for _, b := range old {
		if x, ok := Lookup[T](p, b.Header().Addr); ok {
			out = append(out, x)
		}
	}
	return out
}
