package solar

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var stringBackfeed = &lint.Rule{
	ID:      "solar/string-backfeed",
	Claim:   "What is in parallel with a shorted string, or a battery behind it, drives more current into it than its modules or wires take.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "array, and each conductor that arrays feed",
	When: "In some state the other strings on an array's pair of wires give together more than its modules' `max_series_fuse` with no device of that size before it; or arrays " +
		"give more than a conductor of theirs carries; or a battery reaches the array, directly or backwards through a converter that does not block, without such a device.",
	Why: "An array cannot be switched off while the sun is up, and its current is too small to open a large device. The module or lead glows on the roof all day with the others feeding it, and no switch " +
		"below helps: warning.",
	Numbers: "1.25 x short-circuit current x strings, of every array but the one that is shorted; with `parallel` strings in one block, of all strings but one. What lies behind a device counts for no more than its rating. " +
		"One string like the one that is shorted cannot harm it, so two like strings need no figure. Conductors: their ampacity against what arrays drive into a short at either end; code asks of new " +
		"wiring another 1.25, 1.56 in all, which is not asked here.",
	Not: "More modules than a controller can use: it limits its own current. Volts in the cold are solar/cold-voltage. String fuses inside one block: draw each string as a source of its own to show " +
		"them. A device in an array's negative. Diodes and converters that block reverse current.",
	Offer: "A fuse made for arrays in each string; two strings; a converter that blocks reverse current; a thicker wire.",
	Meter: "A clamp on each string at noon: they read alike, and none reads backwards.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 690.8(A), 690.9(A)", Standing: lint.Read, Note: "1.25 x short-circuit current, and a device for what can feed a circuit from elsewhere; read in trade articles; good practice from it outside buildings"},
		{Ref: "NFPA 70 690.9(A) exception", Standing: lint.FromMemory, Note: "that two strings need no device"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "from three strings on, each has a fuse"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BlocksReverse, remedy.StringDevice, remedy.ThickerWire, remedy.FewerStrings},
	Folds:  []string{"conductor/ampacity", "backfeed/reverse-through-converter"},
	Since:  "0.1",
	Run:    backfeeds,
}

func backfeeds(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "solar" {
			out = append(out, arrayVerdicts(p, i)...)
		}
	}
	return append(out, arrayWires(p)...)
}

// arrayVerdicts asks an array of the strings beside it and of batteries; one answer where both hold.
func arrayVerdicts(p *lint.Pass, array int) []lint.Verdict {
	beside, behind := stringsBeside(p, array), batteryBehind(p, array)
	switch {
	case behind.Outcome == lint.Holds:
		beside.Numbers = append(beside.Numbers, behind.Numbers...)
		return []lint.Verdict{beside}
	case beside.Outcome == lint.Holds:
		return []lint.Verdict{behind}
	}
	return []lint.Verdict{beside, behind}
}

// takesBack is the most that an array's modules take backwards.
func takesBack(a *schema.Source) (derive.Number, []lint.Missing) {
	if !a.MaxSeriesFuse.Set {
		return derive.Number{}, []lint.Missing{{Subject: a.Addr, Attribute: "max_series_fuse"}}
	}
	return derive.Read("largest series fuse of the modules of "+lint.Quote(a), "Imax", a.MaxSeriesFuse.Value, "A", a.Addr, "max_series_fuse", a.MaxSeriesFuse.Range), nil
}

// crowd is what the other strings drive into one string of an array in a view.
type crowd struct {
	view    *explore.View
	amps    float64
	others  []int // other arrays that take part
	parts   []derive.Number
	lacks   []lint.Missing
	alike   float64 // what one string of the array itself gives
	witness []lint.Position
}

func stringsBeside(p *lint.Pass, array int) lint.Verdict {
	a := &p.Net.Sources[array]
	v := lint.Verdict{Subject: a.Source, Outcome: lint.Holds, Word: lint.Warning, Cause: "strings"}
	views, complete := p.Space.Views(p.Net.Series(array), p.Space.Closed(explore.All()))
	var worst, unsure *crowd
	for _, view := range views {
		if !open(p.Net, view, array) {
			continue
		}
		x := crowdOf(p, view, array)
		if worst == nil || x.amps > worst.amps {
			worst = x
		}
		if unsure == nil && len(x.lacks) > 0 {
			unsure = x
		}
	}
	if worst == nil {
		if !complete {
			return lint.Unfinished(a.Source, lint.Warning)
		}
		return v
	}
	return worst.judge(p, v, unsure, complete)
}

// crowdOf sums the strings beside one string of an array: those in its own block, and arrays on the
// same pair of wires as devices let them through.
func crowdOf(p *lint.Pass, view *explore.View, array int) *crowd {
	a := &p.Net.Sources[array]
	x := &crowd{view: view}
	inside := float64(a.Parallel.Or(1))
	g, lacks := p.Circuit.SourceGives(a.Source)
	x.alike = g.N.Value / inside
	if inside > 1 {
		x.amps, x.parts, x.lacks = g.N.Value-x.alike, lint.Known(nil, g.N), lacks
	}
	row := view.Series(array)
	for _, top := range row.Tops() {
		hot := p.Net.Sources[top].Hot
		amps := map[network.NodeID]float64{}
		for _, j := range view.Zone.Sources {
			o := &p.Net.Sources[j]
			if o.Kind.Value != "solar" || j == top || !open(p.Net, view, j) || !view.Joined(hot, o.Hot) || !row.Meets(view.Series(j)) {
				continue
			}
			g, m := p.Circuit.SourceGives(o.Source)
			amps[o.Hot] += g.N.Value
			x.others, x.lacks, x.parts = append(x.others, j), append(x.lacks, m...), append(x.parts, lint.Known(nil, g.N)...)
		}
		x.amps += p.Circuit.Through(view, hot, -1, amps)
		if len(x.others) > 0 {
			var edges []int
			for _, j := range x.others {
				edges = append(edges, view.Between(hot, p.Net.Sources[j].Hot).Edges()...)
			}
			x.witness = view.Witness(edges, append([]int{array}, x.others...)...)
			break
		}
	}
	return x
}

// together names a crowd, the same from every one of its arrays.
func together(one string, others []string) string {
	all := append([]string{one}, others...)
	slices.Sort(all)
	return strings.Join(all, " ")
}

func (x *crowd) judge(p *lint.Pass, v lint.Verdict, unsure *crowd, complete bool) lint.Verdict {
	a := v.Subject.(*schema.Source)
	most, lacks := takesBack(a)
	amps := derive.Compute("current that the other strings drive into one of "+lint.Quote(a), "Iback", x.amps, "A", "sum of the others, no more than devices let pass", x.parts...)
	v.Numbers = lint.Known(x.lacks, most, amps)
	for _, j := range x.others {
		v.Related = append(v.Related, p.Net.Sources[j].Addr)
	}
	switch {
	case most.Kind != 0 && x.amps > most.Value:
		v.Outcome, v.State, v.Group = lint.Violated, x.witness, "strings "+together(a.Addr, v.Related)
		v.Message = fmt.Sprintf("If one string of %s is shorted, the others drive up to %s into it. Its modules take %s, and no device of that size stands before the string.",
			lint.Quote(a), amps.Text(), most.Text())
	case unsure != nil:
		v.Outcome, v.Missing = lint.NotProven, unsure.lacks
		v.Message = fmt.Sprintf("What the other strings drive into a shorted string of %s is not known: %s is missing.", lint.Quote(a), lint.Lacking(v.Missing[0], true))
	case len(lacks) > 0 && x.amps > x.alike*(1+1e-9):
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("If one string of %s is shorted, the others drive up to %s into it; what its modules take is not written.", lint.Quote(a), amps.Text())
	case !complete:
		return lint.Unfinished(a, lint.Warning)
	}
	return v
}
