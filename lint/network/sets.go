package network

// sets is a disjoint-set forest over 0..n-1.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

// union joins two sets and returns the new root.
func (s sets) union(i, j int) int {
	i, j = s.find(i), s.find(j)
	if i > j {
		i, j = j, i
	}
	s[j] = i
	return i
}
