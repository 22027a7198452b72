package suggest

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
)

// needed leaves out of a proposal what later steps make needless: the plan without the step is checked again, and nothing
// may be worse for it. It gives the plan that is left, checked. number is that of a finding for the reader.
func (d *Desk) needed(at *Desk, all []Accepted, number func(*check.Finding) int) (*Desk, []Accepted) {
	for i := 0; i < len(all)-1 && !d.Stopped(); {
		less := slices.Delete(slices.Clone(all), i, i+1)
		made := d.remade(less)
		if made == nil || !made.clears(all[i].Finding) {
			i++
			continue
		}
		made.Report = check.Run(made.Plan, d.rules, d.opt)
		made.open()
		if made.Report.Tainted() || len(made.before.Worse(at.before)) > 0 || len(made.before.Strayed(at.before)) > 0 || at.lost(made) != "" {
			i++
			continue
		}
		d.credit(less, i, all[i], number)
		at, all = made, less
	}
	return at, all
}

// remade makes steps anew, one after the other, and notes in each what it edits then. It gives the plan that they lead to,
// not checked; nil where one needs what is not there.
func (d *Desk) remade(all []Accepted) *Desk {
	at := d
	for i := range all {
		page, err := newPage(d.Path, at.Src)
		if err != nil {
			return nil
		}
		src, err := page.with(at.Plan, all[i].changes)
		if err != nil {
			return nil
		}
		plan, err := d.read(src)
		if err != nil {
			return nil
		}
		all[i].Edits, all[i].Result = Between(d.Path, at.Src, src), src
		at = d.after(src, plan)
	}
	return at
}

// clears says whether a finding's own rule finds it no more.
func (d *Desk) clears(f *check.Finding) bool {
	if f.Rule.Run == nil {
		return true // all rules are to be asked
	}
	own := check.Run(d.Plan, []*lint.Rule{f.Rule}, d.opt)
	return !own.Tainted() && !compare.Of(own).Stands(compare.Asked(f))
}

// credit says of the first step with which the finding of one that was left out is gone that it is.
func (d *Desk) credit(all []Accepted, from int, out Accepted, number func(*check.Finding) int) {
	for i := from; i < len(all); i++ {
		made := d.remade(slices.Clone(all[:i+1]))
		if i < len(all)-1 && (made == nil || !made.clears(out.Finding)) {
			continue
		}
		for _, n := range append(slices.Clone(out.Clears), number(out.Finding)) {
			if n > 0 && !slices.Contains(all[i].Clears, n) && n != number(all[i].Finding) {
				all[i].Clears = append(all[i].Clears, n)
			}
		}
		slices.Sort(all[i].Clears)
		return
	}
}

// number is that of a finding in the plan as it was, 0 where it was not found there.
func (d *Desk) number(f *check.Finding) int {
	for _, x := range d.Report.Findings {
		if compare.Asked(x) == compare.Asked(f) {
			return x.Number
		}
	}
	return 0
}
