package solve

// pair is where a part between two nodes stands: their unknowns (of references, the one beyond), and
// where the slope of what enters each by each lies in the matrix.
type pair struct {
	at   [2]int32
	code [4]int32
}

// quad is the same for a converter: input, output, positive first.
type quad struct {
	at   [4]int32
	code [16]int32
}

// unknowns fills in where nodes stand.
func (s *islands) unknowns(at []int32, nodes ...int) {
	for i, node := range nodes {
		if at[i] = int32(s.row[node]); s.row[node] < 0 {
			at[i] = int32(s.n)
		}
	}
}

// renumber gives the unknowns their places.
func (s *islands) renumber(place []int32) {
	for i, r := range s.row {
		if r >= 0 {
			s.row[i] = int(place[r])
		}
	}
}

func renumber(at, place []int32) {
	for i, r := range at {
		if int(r) < len(place) {
			at[i] = place[r]
		}
	}
}

// meet notes which unknowns a part couples.
func meet(near [][]int32, at []int32) {
	for _, i := range at {
		for _, j := range at {
			if int(i) < len(near) && int(j) < len(near) && i != j {
				near[i] = append(near[i], j)
			}
		}
	}
}

// place fills in where a part's slopes lie.
func (f *factor) place(code, at []int32) {
	n := int32(f.n)
	for i, a := range at {
		for j, b := range at {
			code[i*len(at)+j] = f.nowhere()
			if a < n && b < n {
				code[i*len(at)+j] = f.code(a, b)
			}
		}
	}
}

// conduct stamps a conductance between the two nodes of a part.
func (t *pair) conduct(values []float64, g float64) {
	values[t.code[0]] += g
	values[t.code[1]] -= g
	values[t.code[2]] -= g
	values[t.code[3]] += g
}

// slopes stamps what the input takes and the output gives by the voltages of the two sides.
func (t *quad) slopes(values []float64, w flow) {
	for i, row := range [4][2]float64{{w.inByIn, w.inByOut}, {-w.inByIn, -w.inByOut}, {-w.outByIn, -w.outByOut}, {w.outByIn, w.outByOut}} {
		values[t.code[4*i]] += row[0]
		values[t.code[4*i+1]] -= row[0]
		values[t.code[4*i+2]] += row[1]
		values[t.code[4*i+3]] -= row[1]
	}
}
