package circuit

import (
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// carriesFor is the multiple of its rating below which a device is taken never to open.
const carriesFor = 1.35

// MayCarry is the current below which a device is taken never to open, in A.
func MayCarry(f *schema.Fuse) float64 { return carriesFor * f.Rating.Value }

// Opens is the time after which a device has opened at a current, at the latest: by its own curve, else
// by the gates of its kind, straight in log-log between points and constant I2t after the last. ok is
// false below the first point, where it may stay closed for good.
func Opens(f *schema.Fuse, amps float64) (n derive.Number, ok bool) {
	t, ok := OpensWithin(f, amps)
	if !ok {
		return n, false
	}
	return derive.Compute("time after which "+quote(f)+" has opened", "t", t, "s", "its curve, straight in log-log; constant I2t beyond the last point", curve(f)...), true
}

// OpensWithin is Opens without the derivation, in s.
func OpensWithin(f *schema.Fuse, amps float64) (seconds float64, ok bool) {
	return onCurve(points(f), amps)
}

// points are those by which a device must have opened, by rising current.
func points(f *schema.Fuse) []schema.CurvePoint {
	if f.Curve.Set {
		return f.Curve.Points
	}
	var out []schema.CurvePoint
	for _, g := range tables.OpeningGates(f.Kind.Value, f.Rating.Value) {
		out = append(out, schema.CurvePoint{Amps: g.Multiple * f.Rating.Value, Seconds: g.MaxS})
	}
	return out
}

// curve is the same points as numbers.
func curve(f *schema.Fuse) []derive.Number {
	var out []derive.Number
	gates := tables.OpeningGates(f.Kind.Value, f.Rating.Value)
	for i, p := range points(f) {
		at := "opens at " + derive.Text(p.Amps, "A") + " within"
		switch {
		case f.Curve.Set:
			out = append(out, derive.Read(at, "t", p.Seconds, "s", f.Addr, "curve", f.Curve.Range))
		case gates[i].Cite.Status == tables.Verified:
			out = append(out, derive.LookUp(at, "t", p.Seconds, "s", gates[i].Cite.String()))
		default:
			out = append(out, derive.Assume(at, "t", p.Seconds, "s", f.Addr, "curve", gates[i].Cite.String()))
		}
	}
	return out
}

func onCurve(points []schema.CurvePoint, amps float64) (seconds float64, ok bool) {
	if len(points) == 0 || amps < points[0].Amps {
		return 0, false
	}
	for i, b := range points[1:] {
		if a := points[i]; amps < b.Amps {
			share := math.Log(amps/a.Amps) / math.Log(b.Amps/a.Amps)
			return math.Exp(math.Log(a.Seconds) + share*math.Log(b.Seconds/a.Seconds)), true
		}
	}
	last := points[len(points)-1]
	return last.Seconds * (last.Amps / amps) * (last.Amps / amps), true
}

// StaysClosed is how long a device carries a current at the least, in s: what its own curve says of a
// higher current, else the gate of its kind at the next higher multiple. 0 where nothing says.
func StaysClosed(f *schema.Fuse, amps float64) float64 {
	if f.Curve.Set {
		if t, ok := onCurve(f.Curve.Points, amps); ok {
			return t
		}
		if len(f.Curve.Points) > 0 {
			return f.Curve.Points[0].Seconds
		}
		return 0
	}
	for _, g := range tables.OpeningGates(f.Kind.Value, f.Rating.Value) {
		if g.Multiple*f.Rating.Value >= amps && g.MinS > 0 {
			return g.MinS
		}
	}
	return 0
}
