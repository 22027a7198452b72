package explore_test

import (
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// drawn is a random plan with modes, and a question's zone and filter.
type drawn struct {
	n    *network.Network
	s    *explore.Space
	text string
}

func draw(t *rapid.T) drawn {
	w := &wide{}
	text := w.plan(t)
	w.b.Reset()
	w.modes()
	text += w.b.String()
	n, s := build(t, text)
	return drawn{n, s, text}
}

func (d drawn) filter(t *rapid.T) explore.Filter {
	f := rapid.SampledFrom(filters(d.s, d.n.Plan.Modes)).Draw(t, "filter")
	if v := rapid.IntRange(0, 2*len(d.n.Vars)).Draw(t, "held"); v < len(d.n.Vars) {
		f = d.s.Held(f, map[int]int{v: rapid.IntRange(0, len(d.n.Vars[v].Positions)-1).Draw(t, "at")})
	}
	return f
}

// TestCutAgainstListing asks whether loads can be dark, with current coming back through converters
// and without some sources too.
func TestCutAgainstListing(t *testing.T) {
	count := map[explore.Truth]int{}
	many(t, 400, func(t *rapid.T) {
		d := draw(t)
		for _, l := range d.n.Loads {
			z, f := d.n.Together(l.Hot, l.Ret), d.filter(t)
			if rapid.Bool().Draw(t, "whole") {
				z = d.n.Whole()
			}
			var back func(*network.Converter) bool
			if rapid.IntRange(0, 3).Draw(t, "back") == 0 {
				back = func(*network.Converter) bool { return true }
			}
			var skip func(*network.Source) bool
			if rapid.IntRange(0, 3).Draw(t, "skip") == 0 {
				skip = func(s *network.Source) bool { return s.Addr == "source.b1" }
			}
			dark := func(v *explore.View) bool { return !v.Live(back, skip).Feeds(l.Port) }
			h := held{T: t, s: d.s, f: f, all: listed(t, d.s, z, f), is: dark,
				by:   func(k explore.Known, vars []int) bool { return dark(k.View().Loosen(k.Free(vars)...)) },
				tell: func() { t.Logf("%s\n%s", l.Addr, d.text) }}
			a := d.s.Cut(z, f, l.Port, back, skip)
			h.check(a)
			count[a.Found]++
		}
	})
	if count[explore.Yes] == 0 || count[explore.No] == 0 {
		t.Errorf("answers: %v", count)
	}
}

// TestSeekAgainstListing asks questions that only joining can bring about, that only parting can, and
// that are of neither kind, with reasons and without.
func TestSeekAgainstListing(t *testing.T) {
	count := map[explore.Truth]int{}
	many(t, 450, func(t *rapid.T) {
		d := draw(t)
		z, f := rapid.SampledFrom(append(d.n.Zones, d.n.Whole())).Draw(t, "zone"), d.filter(t)
		kind := rapid.SampledFrom(kinds).Draw(t, "kind")
		q := kind.of(d.n, randomEnds(t, z), rapid.SampledFrom(append([]int{-1}, z.Loads...)).Draw(t, "load"))
		ask := q
		if rapid.Bool().Draw(t, "without reasons") {
			ask = func(sp *explore.Span) explore.Truth { return q(&explore.Span{Most: sp.Most, Least: sp.Least}) }
		}
		h := held{T: t, s: d.s, f: f, all: listed(t, d.s, z, f),
			is: func(v *explore.View) bool { return q(&explore.Span{Most: v, Least: v}) == explore.Yes },
			by: func(k explore.Known, vars []int) bool {
				most, least := k.Between(vars)
				return q(&explore.Span{Most: most, Least: least}) == explore.Yes
			},
			tell: func() { t.Logf("%s\n%s", kind.name, d.text) }}
		a := d.s.Seek(z, f, ask)
		h.check(a)
		count[a.Found]++
	})
	if count[explore.Yes] == 0 || count[explore.No] == 0 {
		t.Errorf("answers: %v", count)
	}
}

// kinds are ways to ask about ends and a load.
var kinds = []struct {
	name string
	of   func(n *network.Network, ends []explore.Ends, load int) func(*explore.Span) explore.Truth
}{
	{"joined", func(_ *network.Network, ends []explore.Ends, _ int) func(*explore.Span) explore.Truth {
		return func(sp *explore.Span) explore.Truth { return sp.Joins(ends...) }
	}},
	{"parted", func(_ *network.Network, ends []explore.Ends, _ int) func(*explore.Span) explore.Truth {
		return func(sp *explore.Span) explore.Truth { return sp.Joins(ends...).Not() }
	}},
	{"joined at first, parted at last", func(_ *network.Network, ends []explore.Ends, _ int) func(*explore.Span) explore.Truth {
		return func(sp *explore.Span) explore.Truth {
			return sp.Joins(ends[0]).And(sp.Joins(ends[len(ends)-1]).Not())
		}
	}},
	{"joined or fed", func(n *network.Network, ends []explore.Ends, load int) func(*explore.Span) explore.Truth {
		return func(sp *explore.Span) explore.Truth {
			t := sp.Joins(ends...)
			if load >= 0 {
				t = t.Or(sp.Feeds(n.Loads[load].Port, nil, nil))
			}
			return t
		}
	}},
	{"joined and dark", func(n *network.Network, ends []explore.Ends, load int) func(*explore.Span) explore.Truth {
		return func(sp *explore.Span) explore.Truth {
			t := sp.Joins(ends...)
			if load >= 0 {
				t = t.And(sp.Feeds(n.Loads[load].Port, nil, nil).Not())
			}
			return t
		}
	}},
}
