package explore

import (
	"slices"

	"ferrule/lint/network"
)

// Sought completes a list of views that the bound has cut, for one question: is there a state of which so
// is true? so must be one of those things that more joining and more presence can only bring about. Where
// the list has no such state the rest is searched, not listed; a state that is found is added. known is
// false where the search met its own budget.
func (s *Space) Sought(z *network.Zone, f Filter, list []*View, so func(*View) bool) (more []*View, known bool) {
	if slices.ContainsFunc(list, so) {
		return list, true
	}
	a := s.Seek(z, f, func(sp *Span) Truth {
		switch {
		case !so(sp.Most):
			return No
		case so(sp.Least):
			return Yes
		}
		return Open
	})
	if a.Found == Yes {
		return append(slices.Clip(slices.Clone(list)), a.View), true
	}
	return list, a.Found == No
}
