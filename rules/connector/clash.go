package connector

import (
	"cmp"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// clash is what one half brings to another that is not made for it.
type clash struct {
	x, y    *half
	brings  nature
	word    lint.Severity
	missing []lint.Missing
}

// before orders clashes: the graver first, then what is sure, more volts, a battery that is met, any supply that is.
func (k *clash) before(o *clash) bool {
	if o == nil {
		return true
	}
	yes := func(b bool) int {
		if b {
			return 1
		}
		return 0
	}
	return cmp.Or(
		cmp.Compare(k.word, o.word),
		yes(len(k.missing) == 0)-yes(len(o.missing) == 0),
		cmp.Compare(k.brings.volts.Value, o.brings.volts.Value),
		yes(k.y.has(battery))-yes(o.y.has(battery)),
		yes(len(k.y.brings) > 0)-yes(len(o.y.brings) > 0),
	) > 0
}

func (k *clash) numbers() []derive.Number {
	var out []derive.Number
	for _, n := range append([]nature{k.brings}, k.y.fits()...) {
		out = append(out, lint.Known(nil, n.volts)...)
	}
	return out
}

// against finds the worst of what x brings and y is not made for; nil where all of it is as it would be
// with one of their own partners.
func (m *meetings) against(x, y *half) *clash {
	if !y.takes && len(y.brings) == 0 || same(x.brings, y.other.brings) || same(y.brings, x.other.brings) {
		return nil
	}
	var worst *clash
	for _, n := range x.brings {
		word, lacks := agree(n, y.fits())
		if k := (&clash{x, y, n, word, lacks}); word > 0 && k.before(worst) {
			worst = k
		}
	}
	return worst
}

// agree grades a supply against all that a half is made for: by that which it differs from least, 0 where
// it is one of them. With lacks it may be.
func agree(n nature, fits []nature) (word lint.Severity, lacks []lint.Missing) {
	word = lint.Danger
	if len(fits) == 0 {
		return lint.Warning, nil
	}
	for _, f := range fits {
		w, l := differ(n, f)
		switch {
		case w == 0 && len(l) == 0:
			return 0, nil
		case w == 0:
			lacks = l
		}
		word = min(word, max(w, lint.Warning))
	}
	return word, lacks
}

const (
	otherVolts = 1.5 // ratio of nominal volts that are not the same
	manyVolts  = 3.0
)

// differ grades a supply against one that a half is made for: 0 where they agree, or where lacks are
// needed to tell.
func differ(n, f nature) (word lint.Severity, lacks []lint.Missing) {
	ratio := 1.0
	if n.volts.Kind != 0 && f.volts.Kind != 0 {
		ratio = n.volts.Value / f.volts.Value
	}
	switch {
	case n.ac != f.ac:
		return lint.Danger, nil
	case n.reversed != f.reversed && (n.what == battery || f.what == battery):
		return lint.Danger, nil
	case ratio >= manyVolts && n.what != array:
		return lint.Danger, nil
	case n.reversed != f.reversed, n.what != f.what, ratio >= otherVolts, 1/ratio >= otherVolts:
		return lint.Warning, nil
	}
	return 0, slices.Concat(n.lacks, f.lacks)
}

// same says whether two sides bring the same, and anything at all.
func same(a, b []nature) bool {
	within := func(a, b []nature) bool {
		return !slices.ContainsFunc(a, func(n nature) bool {
			return !slices.ContainsFunc(b, func(f nature) bool {
				word, lacks := differ(n, f)
				return word == 0 && len(lacks) == 0
			})
		})
	}
	return len(a) > 0 && len(b) > 0 && within(a, b) && within(b, a)
}

// state is a state in which both connectors are apart and what the one half brings is there: that with the
// fewest positions; without one, that the two are apart.
func (m *meetings) state(k *clash) []lint.Position {
	own := []int{m.Net.Var(k.x.c.Addr), m.Net.Var(k.y.c.Addr)}
	var best, apart []lint.Position
	views, _ := m.Space.Views(around(m.Net, k.x.hotNodes()...), m.Space.About(m.Space.Closed(explore.All()), k.x.hotNodes()...))
	for _, v := range views {
		if v.Transit != nil || v.At(own[0]) > 0 || v.At(own[1]) > 0 {
			continue
		}
		if s := v.State(own); apart == nil && len(s) > 0 {
			apart = s
		}
		e := v.Live(lets, nil)
		for _, id := range k.x.hotNodes() {
			if len(e.At(id)) == 0 {
				continue
			}
			if s := wayTo(m.Net, v, e, id).state(m.Net, v, own...); best == nil || len(s) < len(best) {
				best = s
			}
		}
	}
	if best == nil {
		best = apart
	}
	return m.withApart(best, own)
}

// withApart adds the connectors that a zone's states do not tell of.
func (m *meetings) withApart(s []lint.Position, own []int) []lint.Position {
	for _, i := range own {
		if x := &m.Net.Vars[i]; !x.Follower {
			s = append(s, lint.Position{Addr: x.Addr, Position: "unmated"})
		}
	}
	return lint.SortState(s)
}

func (h *half) hotNodes() []network.NodeID {
	var out []network.NodeID
	for _, id := range []network.NodeID{h.hot, h.ret} {
		if id != network.None {
			out = append(out, id)
		}
	}
	return out
}
