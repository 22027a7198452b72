package overcurrent

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// opening is the time after which a device has opened at a current, at the latest: by its own curve,
// else by the gates of its kind, straight in log-log between points and constant I2t after the last.
// ok is false below the first point, where it may stay closed for good.
func opening(f *schema.Fuse, amps float64) (n derive.Number, ok bool) {
	points, from := slowest(f)
	t, ok := onCurve(points, amps)
	if !ok {
		return n, false
	}
	return derive.Compute("time after which "+lint.Quote(f)+" has opened", "t", t, "s", "its curve, straight in log-log; constant I2t beyond the last point", from...), true
}

// slowest lists the points by which a device must have opened, by rising current.
func slowest(f *schema.Fuse) (points []schema.CurvePoint, from []derive.Number) {
	if f.Curve.Set {
		for _, p := range f.Curve.Points {
			points = append(points, p)
			from = append(from, derive.Read("opens at "+derive.Text(p.Amps, "A")+" within", "t", p.Seconds, "s", f.Addr, "curve", f.Curve.Range))
		}
		return points, from
	}
	for _, g := range tables.OpeningGates(f.Kind.Value, f.Rating.Value) {
		at := "opens at " + derive.Text(g.Multiple*f.Rating.Value, "A") + " within"
		points = append(points, schema.CurvePoint{Amps: g.Multiple * f.Rating.Value, Seconds: g.MaxS})
		if g.Cite.Status == tables.Verified {
			from = append(from, derive.LookUp(at, "t", g.MaxS, "s", g.Cite.String()))
		} else {
			from = append(from, derive.Assume(at, "t", g.MaxS, "s", f.Addr, "curve", g.Cite.String()))
		}
	}
	return points, from
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

// staysClosed is how long a device carries a current at the least, in s: what its own curve says of a
// higher current, else the gate of its kind at the next higher multiple. 0 where nothing says.
func staysClosed(f *schema.Fuse, amps float64) float64 {
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
