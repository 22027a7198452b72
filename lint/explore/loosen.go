package explore

// anywhere is the position of a variable that counts as at every one of its positions at once.
const anywhere = -2

// Loosen is the view with some variables at every position at once: an edge conducts if any
// position lets it, and what comes and goes is there. Nothing is joined in a state that differs
// from the view in these variables only without being joined here too.
func (v *View) Loosen(vars ...int) *View {
	out := *v
	out.root = nil
	out.pos = append([]int(nil), v.pos...)
	for _, i := range vars {
		out.pos[i] = anywhere
		if v.Transit != nil && v.Transit.Var == i {
			out.Transit = nil
		}
	}
	return &out
}

// Keep loosens the variables one after another, in the order given, as long as still says that the
// view is as it was, and returns those that could not be loosened: whatever the others do, their
// positions alone make it so. Where joining more can only end what still tells, such as "this load
// is dark", the positions that are kept are proof.
func (v *View) Keep(vars []int, still func(*View) bool) []int {
	var kept []int
	for _, i := range vars {
		if v.pos[i] < 0 {
			continue
		}
		if w := v.Loosen(i); still(w) {
			v = w
		} else {
			kept = append(kept, i)
		}
	}
	return kept
}

// Without says whether what still tells ends at some other position of a variable: whether the
// variable matters to it.
func (v *View) Without(i int, still func(*View) bool) bool {
	if v.pos[i] < 0 {
		return false
	}
	for p := range v.net.Vars[i].Positions {
		if p == v.pos[i] {
			continue
		}
		out := *v
		out.root = nil
		out.pos = append([]int(nil), v.pos...)
		out.pos[i] = p
		if !still(&out) {
			return true
		}
	}
	return false
}
