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

// Distinct counts the different joined networks of the whole plan. It is false where the states
// are more than most, so that nobody waits for a number that nobody needs.
func (s *Space) Distinct(most int64) (int, bool) {
	if total, ok := s.Total(); !ok || !total.IsInt64() || total.Int64() > most {
		return 0, false
	}
	seen := map[string]bool{}
	whole := s.Each(func(v *View) { seen[v.Signature()] = true })
	return len(seen), whole
}
