package compare

import (
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
)

// upheld are the symbols of figures of which more is better: what a part carries, opens, takes or asks for at least,
// the least fault current, the volts and the charge that are left, the length that is allowed.
var upheld = []string{"Iz", "Iz1", "Icont", "Icn", "Imf", "Ichg", "Imax", "Idis", "Ih", "Vmax", "Vr", "Vlow", "Vin", "V0", "Q", "Lmax", "limit", "tw"}

// summed are the units of which the largest figure tells, whatever its name; plain those of which more is worse, figure
// by figure. Of others, such as times, resistances and temperatures, which way is worse depends.
var (
	summed = []string{"A", "V", "W"}
	plain  = []string{"Ah", "m", ""}
)

// strayed says whether what stands in two plans rests on figures that may be worse in the second: those of what is
// not proven, and of what is violated with no limit of their own kind to be measured by. More is worse, but less of what
// is upheld, and a device that opens no more; of figures of other kinds any move may be.
//
// any counts the moves of other figures too.
func strayed(x, old Answer, any bool) bool {
	if grade(x.Verdict) == 0 || x.Outcome != old.Outcome {
		return false
	}
	_, is := beyond(x.Verdict)
	_, was := beyond(old.Verdict)
	if x.Outcome == lint.Violated && is && was {
		return false
	}
	a, b := extremes(x.Numbers), extremes(old.Numbers)
	borne := bears(a, b)
	for k, v := range a {
		w, ok := b[k]
		switch {
		case !ok || !off(v, w), borne && (k.unit == "A" || k.unit == "A2s"):
		case k.unit == "s" && k.place > 0 && math.IsInf(v, 1), k.any && any, !k.any && !k.less && v > w, k.less && v < w:
			return true
		}
	}
	return false
}

// bears says whether a wire withstands the fault that both verdicts rest on no less long in the first: that tells of the fault
// current and of the wire together, and a thicker wire on which more flows may well bear it longer.
func bears(a, b map[extreme]float64) bool {
	k := extreme{unit: "s", symbol: "tw", less: true}
	t, is := a[k]
	before, was := b[k]
	return is && was && (t >= before || !off(t, before))
}

// off says whether two figures are further apart than things lie in another order.
func off(a, b float64) bool { return a != b && !(math.Abs(a-b) <= much*math.Abs(b)) }

// extreme names the worst figure of a kind: by unit the largest of amps, volts or watts, by symbol the least of what
// is upheld, by symbol and place the others.
type extreme struct {
	unit, symbol string
	less, any    bool // less of it is worse; any move may be
	place        int
}

func extremes(numbers []derive.Number) map[extreme]float64 {
	out := map[extreme]float64{}
	seen := map[[2]string]int{}
	for _, n := range numbers {
		if n.Kind == derive.Assumption {
			continue
		}
		k := extreme{unit: n.Unit}
		switch {
		case slices.Contains(upheld, n.Symbol):
			k.symbol, k.less = n.Symbol, true
		case !slices.Contains(summed, n.Unit):
			s := [2]string{n.Symbol, n.Unit}
			k.symbol, k.any, k.place = n.Symbol, !slices.Contains(plain, n.Unit), seen[s]
			seen[s]++
		}
		v, ok := out[k]
		switch {
		case !ok:
			v = n.Value
		case k.less:
			v = min(v, n.Value)
		default:
			v = max(v, n.Value)
		}
		out[k] = v
	}
	return out
}
