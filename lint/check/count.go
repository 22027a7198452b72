package check

import "ferrule/lint"

// summary counts findings, answers and states.
func (r *run) summary(findings []*Finding) Summary {
	s := Summary{States: r.states()}
	for _, f := range findings {
		if f.Waived != nil {
			s.Waived++
			continue
		}
		*s.Count(f.Severity)++
		if f.Verdict.Outcome == lint.NotProven {
			s.NotProven++
		}
	}
	for _, vs := range r.verdicts {
		s.Checks += len(vs)
		for _, v := range vs {
			if v.Outcome == lint.Holds {
				s.Holds++
			}
		}
	}
	return s
}

func (r *run) states() States {
	out := States{Examined: r.space.Examined(), Complete: r.space.Complete() && !r.stopped}
	r.guard("the count of states", func() {
		total, ok := r.space.Total()
		out.Complete = out.Complete && ok
		if ok {
			out.Total = total.String()
		}
		if r.stopped {
			return
		}
		if n, ok := r.space.Distinct(); ok {
			out.Distinct = n.String()
		}
	})
	return out
}
