package switching

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// cutOff looks for a battery whose BMS parts the alternator from the last that it has.
func (a *alternator) cutOff(v *explore.View) {
	for _, i := range a.batteries {
		b := a.Net.Sources[i].Source
		lithium := b.Chemistry.Value == "lifepo4" || b.Chemistry.Value == "li-ion"
		if cuts := b.BMS != nil || b.ColdChargeCutoff.True(); !cuts && !lithium && b.Chemistry.Set || !v.HasSource(i) || a.held(v, i) {
			continue
		}
		w := a.after(v, b, "bms opens", "the BMS of "+lint.Quote(b), func(w *explore.View) bool { return !a.held(w, i) }, i)
		w.Cause = "bms"
		if b.BMS == nil && !b.ColdChargeCutoff.True() {
			w.Outcome, w.Missing = lint.NotProven, []lint.Missing{{Subject: b.Addr, Attribute: "bms"}}
			w.Message += " Whether it has one is not written."
		}
		a.keep(b.Addr, w)
	}
}

// opened looks for a device that parts the alternator from the last battery that it has.
func (a *alternator) opened(v *explore.View) {
	if a.own {
		return
	}
	done := map[string]bool{}
	for _, e := range a.edges() {
		f := a.Net.Edges[e].Fuse
		if f == nil || done[f.Addr] || !v.Conducts(e) {
			continue
		}
		done[f.Addr] = true
		if bare := func(w *explore.View) bool { return a.bare(w.Opened(f.Addr)) }; bare(v) {
			a.keep(f.Addr, a.after(v, f, "opens", lint.Quote(f), bare, a.first(v)))
		}
	}
}

// first is a battery that the alternator has in a view: one without which it would have none, if any is.
func (a *alternator) first(v *explore.View) int {
	best := -1
	at := v.Onward(a.Net.Sources[a.source].Port)
	for _, i := range a.batteries {
		switch {
		case !v.HasSource(i) || at.To(a.Net.Sources[i].Hot) == nil && !v.Joined(a.Net.Sources[a.source].Hot, a.Net.Sources[i].Hot):
		case !at.Held(i):
			return i
		case best < 0:
			best = i
		}
	}
	return best
}

// after tells of something that opens: with the positions that leave no other battery, and those on the way
// to the one that is lost.
func (a *alternator) after(v *explore.View, b schema.Block, how, says string, still func(*explore.View) bool, battery int) lint.Verdict {
	s := &a.Net.Sources[a.source]
	w := lint.Verdict{Subject: b, Outcome: lint.Violated, Word: lint.Warning, Cause: s.Addr, Related: []string{s.Addr}}
	w.State = append(v.State(v.Keep(a.zone.Vars, still)), lint.Position{Addr: "after", Position: b.Header().Addr + ": " + how})
	sources := []int{a.source}
	var way []int
	if battery >= 0 {
		sources, way = append(sources, battery), v.Onward(s.Port).To(a.Net.Sources[battery].Hot)
	}
	w.State = lint.SortState(append(w.State, v.Witness(way, sources...)...))
	w.Message = fmt.Sprintf("If %s opens, %s runs on with no battery.", says, lint.Quote(s.Source))
	return w
}

func removable(b schema.Block) bool {
	s, ok := b.(*schema.Source)
	return ok && s.Removable.True()
}
