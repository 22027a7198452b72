package circuit

import "ferrule/lint/derive"

// Loop is the resistance of the edges of a way, there and back, in ohm. An edge whose figure the
// plan leaves out counts as nothing and is named, so the number is then a least one.
func (c *Circuit) Loop(edges []int, corner Corner) (derive.Number, []derive.Missing) {
	var parts []derive.Number
	var lacks []derive.Missing
	sum := 0.0
	for _, e := range edges {
		r, m := c.Ohms(e, corner)
		lacks = merge(lacks, m...)
		if r.Kind != 0 {
			parts, sum = append(parts, r), sum+r.Value
		}
	}
	return derive.Compute("resistance of the way, both runs", "Rw", sum, "ohm", "sum of the runs on the way", parts...), lacks
}
