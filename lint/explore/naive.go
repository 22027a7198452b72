package explore

// Each lists every allowed state of the whole plan, resting states and transits, as a view of the
// zone that Whole gives. It is the plain enumeration that everything else is checked against. It is
// false where the bound or the caller's stop ended it.
func (s *Space) Each(each func(*View)) bool {
	z := s.Net.Whole()
	set := make([]int, len(s.Net.Vars))
	for i := range set {
		set[i] = i
	}
	allowed := map[string]bool{}
	var resting [][]int
	whole := s.assignments(set, nil, func(pos []int) bool {
		allowed[pack(set, pos)] = true
		resting = append(resting, append([]int(nil), pos...))
		return true
	})
	for _, pos := range resting {
		if s.Stop != nil && s.Stop() {
			return false
		}
		each(s.view(z, pos, nil))
		for _, t := range s.transits(z, set, pos, allowed) {
			each(s.view(z, pos, t))
		}
	}
	return whole
}
