package solve

import "math"

const (
	mostSteps = 60    // of Newton's method for one scale of the powers, and some for each corner
	mostTries = 12    // halvings of one step
	mostWalls = 20    // steps in a row that do not lower the residual, and some for each corner
	mostVolts = 1e4   // beyond, a step went astray
	beside    = 1e-5  // V, from a root at which the matrix is much the same
	nudge     = 1e-4  // V, with which a way over a flat piece begins
	past      = 1e-10 // V, by which a step goes past a corner
	amount    = 1e-10 // A, that may be left over at a node of small currents
	relative  = 1e-13 // of the largest current
	rounding  = 1e-15 // of what leaves a node, in A, with all others at 0 V
)

// newton moves x to a root at one scale of the powers; false where it does not get there, or gets to
// a root off the branch that starts at no power.
//
// A step is cut where it would go past a corner of a characteristic, and until it lowers the residual.
// Where it cannot, the way leads over a flat piece, as behind a diode that nothing draws through yet: the
// step then goes on to where the network's content is least along it (slide), which no corner hinders.
func (s *System) newton(scale float64) bool {
	s.moved = math.Inf(1)
	s.load(s.left, s.x, scale, false)
	best, walls := norm(s.left), 0
	for range mostSteps + 4*s.corners {
		if s.settled() {
			return s.ended(scale)
		}
		if !s.direct(scale) {
			return false
		}
		if !s.search(scale) && !s.slide(scale) {
			return false
		}
		s.x, s.trial = s.trial, s.x
		s.left, s.leaving = s.leaving, s.left
		if merit := norm(s.left); merit < best*(1-1e-6) {
			best, walls = merit, 0
		} else if walls++; walls > mostWalls+s.corners || merit != merit {
			return false
		}
	}
	return false
}

// settled says whether what is left over at every node is rounding.
func (s *System) settled() bool {
	high := min(max(1, greatest(s.x)), mostVolts)
	allow := amount + relative*s.largest
	for i, a := range s.left[:s.n] {
		if !(math.Abs(a) <= allow+rounding*high*s.stiff[i]) {
			return false
		}
	}
	return true
}

// ended says whether a root is on the branch: without powers there is but one; with them the matrix is
// that of a network which resists, and every power stands in its range. The last matrix will do where it
// was made next to the root.
func (s *System) ended(scale float64) bool {
	return scale == 0 || (s.moved < beside || s.decompose() && s.resists()) && s.inRange(s.x)
}

// resists says whether the pivots are those of a network on the branch: all above zero, or with
// converters, whose two sides differ, an even number below.
func (s *System) resists() bool {
	if s.f.symmetric {
		return s.f.negative == 0
	}
	return s.f.negative%2 == 0
}

// direct finds the step from the matrix as it is loaded.
func (s *System) direct(scale float64) bool {
	upright := s.decompose() && s.resists()
	if !upright {
		s.load(s.left, s.x, scale, true)
		if !s.decompose() {
			return false
		}
	}
	copy(s.step, s.left)
	s.f.solve(s.step[:s.n])
	s.reach = greatest(s.step)
	if s.moved = s.reach; !upright {
		s.moved = math.Inf(1)
	}
	return true
}

// try loads the network at a share of the step.
func (s *System) try(t, scale float64) {
	for i, x := range s.x {
		s.trial[i] = x - t*s.step[i]
	}
	s.load(s.leaving, s.trial, scale, false)
	s.budget -= len(s.f.values) + len(s.branches) + s.corners
}

// furthest is how much of a step can be believed: where little holds a node it can be astronomic.
func (s *System) furthest() float64 { return min(1, mostVolts/s.reach) }

// search finds how much of a step makes the residual smaller: all until the first corner, a half of
// that, a quarter.
func (s *System) search(scale float64) bool {
	merit, t := norm(s.left), min(s.untilCorner(), s.furthest())
	for range mostTries {
		s.try(t, scale)
		if m := norm(s.leaving); m < merit*(1-1e-4*t) {
			return true
		}
		t /= 2
	}
	return false
}

// slide goes along a step to about where the current against it first turns. In a network that resists,
// what leaves the nodes is the slope of its content, which is convex and smooth over all corners; with
// constant powers it has a hollow for each point at which they can stand, and none on the way down means
// that they collapse.
func (s *System) slide(scale float64) bool {
	start, all := along(s.left, s.step), s.furthest()
	low, high := 0.0, math.Inf(1)
	t := min(all, nudge/s.reach)
	for range 100 {
		if !(start > 0) || s.budget < 0 {
			return false
		}
		s.try(t, scale)
		g := along(s.leaving, s.step)
		switch {
		case math.Abs(g) <= start/2 && (g <= 0 || !math.IsInf(high, 1)) || g > 0 && t == all:
			return true
		case g > 0 && scale > 0 && !s.inRange(s.trial):
			return false
		case g > 0:
			low = t
		default:
			high = t
		}
		if t = (low + high) / 2; math.IsInf(high, 1) {
			t = min(all, 1.5*low)
		}
	}
	return false
}

func along(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}

// greatest is the largest of a list, of either sign.
func greatest(v []float64) float64 {
	low, high := 0.0, 0.0
	for _, x := range v {
		if x > high {
			high = x
		} else if x < low {
			low = x
		}
	}
	return max(high, -low)
}

func norm(v []float64) float64 { return along(v, v) }
