package ac

import (
	"fmt"

	"ferrule/lint"
	"ferrule/schema"
)

const mostTrusted = 16 // interlocks that are put back one by one

// trusted asks whether interlocks of which the plan does not say what they are keep a supply away, and
// which of them are needed for that.
func trusted(p *lint.Pass, v lint.Verdict, ask func(*lint.Pass) (lint.Verdict, schema.Block)) lint.Verdict {
	var unsaid []schema.Block
	for _, x := range p.Plan.Interlocks {
		if !x.By.Set {
			unsaid = append(unsaid, x)
		}
	}
	if len(unsaid) == 0 || v.Outcome != lint.Holds {
		return v
	}
	loose := func(without []schema.Block) (lint.Verdict, schema.Block) {
		return ask(lint.NewPass(p.Net, p.Space.Without(without...), lint.Guesses{}, p.Today))
	}
	w, by := loose(unsaid)
	if w.Outcome != lint.Violated {
		return w
	}
	needed := unsaid
	for i := 0; i < len(needed) && len(unsaid) <= mostTrusted; {
		fewer := append(append([]schema.Block{}, needed[:i]...), needed[i+1:]...)
		if x, who := loose(fewer); len(fewer) > 0 && x.Outcome == lint.Violated {
			needed, w, by = fewer, x, who
		} else {
			i++
		}
	}
	return unsaidOf(v, w, needed, by)
}

// unsaidOf names every interlock that has to be told of, not the first alone.
func unsaidOf(v, found lint.Verdict, needed []schema.Block, by schema.Block) lint.Verdict {
	v.Outcome, v.State, v.Cause = lint.NotProven, found.State, needed[0].Header().Addr
	var names []string
	for _, x := range needed {
		v.Missing = append(v.Missing, lint.Missing{Subject: x.Header().Addr, Attribute: "by"})
		names = append(names, lint.Quote(x))
	}
	keep, are := "keeps", "it is"
	if len(names) > 1 {
		keep, are = "keep", "they are"
	}
	v.Message = fmt.Sprintf("Only %s %s %s off %s, and whether %s hardware or somebody's habit is not written.", lint.And(names...), keep, lint.Quote(by), lint.Quote(v.Subject), are)
	return v
}
