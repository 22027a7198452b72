package circuit_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
)

// TestShortsAreToldOnce: a short at an edge that a section does not give anew draws the same, through the
// same devices, as one at it in an earlier section.
func TestShortsAreToldOnce(t *testing.T) {
	left := 0
	rapid.Check(t, func(t *rapid.T) {
		m := &maker{t: t}
		m.draw()
		m.tree()
		if rapid.Bool().Draw(t, "meshed") {
			m.graph()
		}
		c := build(t, m.text())
		for _, z := range c.Net.Stacks() {
			known := map[string]bool{}
			list, _ := c.Sections(z, all)
			for s := range list {
				fresh := map[int]bool{}
				for _, e := range s.Anew {
					fresh[e] = true
				}
				for _, e := range s.Edges {
					for _, k := range shortsAt(c, s, e) {
						switch {
						case fresh[e]:
							known[k] = true
						case !known[k]:
							t.Fatalf("%s in none of the sections before\n%s", k, m.text())
						default:
							left++
						}
					}
				}
			}
		}
	})
	if left == 0 {
		t.Error("every short was told anew")
	}
}

// shortsAt tells shorts at the ends of an edge: what they draw, in all and through it and every device.
func shortsAt(c *circuit.Circuit, s *circuit.Section, e int) []string {
	var out []string
	for _, corner := range []circuit.Corner{circuit.Least, circuit.Prospective} {
		f := c.Faults(s, corner, true)
		for _, end := range []network.NodeID{c.Net.Edges[e].A, c.Net.Edges[e].B} {
			x, lacks, ok := f.At(end)
			k := fmt.Sprint(corner, " at ", c.Net.Edges[e].Addr, e, " ", c.Net.Nodes[end].Name(), ok, lacks)
			if ok {
				k += fmt.Sprintf(" %.3f A, %.3f", x.Amps(), math.Abs(x.Through(e)))
				for d := range c.Net.Edges {
					if c.Net.Edges[d].Kind == network.Element {
						k += fmt.Sprintf(" %.3f", math.Abs(x.Through(d)))
					}
				}
			}
			out = append(out, k)
		}
	}
	return out
}
