package overcurrent

import (
	"fmt"
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
)

var parallelBatteryBranch = &lint.Rule{
	ID:      "overcurrent/parallel-battery-branch",
	Claim:   "One battery of a bank fails and its brothers feed the failure through unfused links.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "battery",
	When: "In some state two or more other batteries reach a battery with no overcurrent device between; or one does, and what it drives into a short inside the battery is more than the " +
		"weakest link carries. A bank written as one battery with `parallel` above 1 is not proven: what is in its branches cannot be seen.",
	Why:     "One internal short draws on all the rest, at the battery, inside the box. Warning; danger where the others together drive more than 10 kA and the battery is in an occupied compartment.",
	Numbers: "End-of-charge volts over the low resistance of each other battery, and for one alone over the links' resistance there and back too; ampacity of the weakest link; 10 kA.",
	Not:     "Two lead-acid batteries of one chemistry and capacity with links of 4/0 AWG or more. What a battery's own electronics do. A device in a battery's negative does not count.",
	Offer:   "A terminal or class T fuse at each battery, no larger than its link carries or its maker allows.",
	Meter:   "Clamp each link while charging: shares within 10 %.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-11 11.10.1.4.1", Standing: lint.Read, Note: "a device in each branch of a bank over 500 Ah; read in a summary", For: []string{"us-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "every battery of a bank has a fuse of its own"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.DeviceAtSource},
	Since:  "0.1",
	Run:    branches,
}

const (
	graveFault = 10e3  // A, in an occupied compartment
	stoutLink  = 107.0 // mm2, 4/0 AWG
)

func branches(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "battery" {
			out = append(out, branch(p, i))
		}
	}
	return out
}

// brothers is what reaches a battery bare in a state, each with its way.
type brothers struct {
	view *explore.View
	list []int
	ways []explore.Path
}

func branch(p *lint.Pass, battery int) lint.Verdict {
	b := p.Net.Sources[battery].Source
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: lint.Warning}
	meets, complete := most(p, battery)
	for _, k := range meets {
		judge := pairOf
		if len(k.list) > 1 {
			judge = fedBy
		}
		if w := judge(p, battery, k); worseBranch(w, v) {
			v = w
		}
	}
	switch {
	case v.Outcome != lint.Holds:
	case b.Parallel.Or(1) > 1:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.Addr, Attribute: "a device in each branch"}}
		v.Message = fmt.Sprintf("%s is %d batteries in parallel written as one: whether each has a device of its own cannot be seen.", lint.Quote(b), b.Parallel.Or(1))
	case !complete:
		return lint.Unfinished(b, lint.Warning)
	}
	return v
}

// worseBranch orders verdicts: violated before not proven before holds, then by word; holds with numbers
// before holds without.
func worseBranch(a, b lint.Verdict) bool {
	rank := func(v lint.Verdict) int {
		switch v.Outcome {
		case lint.Violated:
			return 200 + int(v.Word)
		case lint.NotProven:
			return 100 + int(v.Word)
		}
		return min(len(v.Numbers), 1)
	}
	return rank(a) > rank(b)
}

const mostMeetings = 64 // different meetings of a battery that are judged

// most finds the states in which most other batteries reach one without a device between, each meeting
// once: two batteries may meet by a stout link in one state, and others by a thin one in another.
func most(p *lint.Pass, battery int) (best []*brothers, complete bool) {
	s := &p.Net.Sources[battery]
	z := p.Net.ZoneOf(s.Hot)
	if z == nil {
		return nil, true
	}
	told := map[string]bool{}
	views, complete := p.Space.Views(p.Net.Stack(z), p.Space.About(p.Space.Closed(explore.All())))
	for _, v := range views {
		if v.Transit != nil || !v.HasSource(battery) {
			continue
		}
		bare := v.Reach(s.Hot, func(e int, at network.NodeID) bool {
			k := &p.Net.Edges[e]
			return k.Kind != network.Element && !p.Net.Nodes[k.Other(at)].Return
		}, nil)
		row := v.Series(battery)
		now := &brothers{view: v}
		for i := range p.Net.Sources {
			o := &p.Net.Sources[i]
			_, reached := bare.Dist[o.Hot]
			if i != battery && o.Kind.Value == "battery" && reached && v.HasSource(i) && (row.Meets(v.Series(i)) || v.Across(s.Port, o.Port)) {
				now.list, now.ways = append(now.list, i), append(now.ways, bare.To(o.Hot))
			}
		}
		key := fmt.Sprint(now.list, now.edges())
		switch {
		case len(now.list) == 0 || told[key] || len(best) > 0 && len(now.list) < len(best[0].list):
			continue
		case len(best) > 0 && len(now.list) > len(best[0].list):
			best = nil
		case len(best) >= mostMeetings:
			complete = false
			continue
		}
		told[key] = true
		best = append(best, now)
	}
	return best, complete
}

// edges lists what the ways run over.
func (k *brothers) edges() []int {
	var out []int
	for _, w := range k.ways {
		out = append(out, w.Edges()...)
	}
	return out
}

func (k *brothers) found(p *lint.Pass, battery int) lint.Verdict {
	v := lint.Verdict{Subject: p.Net.Sources[battery].Source, Outcome: lint.Violated, Word: lint.Warning, Group: "bank",
		State: k.view.Witness(k.edges(), append([]int{battery}, k.list...)...), Path: k.view.Places(p.Net.Sources[battery].Hot, k.ways[0])}
	for _, i := range k.list {
		v.Related = append(v.Related, p.Net.Sources[i].Addr)
	}
	v.Group += " " + lowest(append([]string{v.Subject.Header().Addr}, v.Related...))
	return v
}

func lowest(list []string) string {
	least := list[0]
	for _, s := range list {
		least = min(least, s)
	}
	return least
}

// fedBy is a battery with two or more that feed its failure.
func fedBy(p *lint.Pass, battery int, k *brothers) lint.Verdict {
	v := k.found(p, battery)
	var names []string
	var parts []derive.Number
	sum := 0.0
	for _, i := range k.list {
		names = append(names, lint.Quote(p.Net.Sources[i].Source))
		if n, lacks := drives(p, i, derive.Number{}); len(lacks) == 0 {
			parts, sum = append(parts, n), sum+n.Value
		}
	}
	if len(parts) > 0 {
		v.Numbers = []derive.Number{derive.Compute("what the others drive into it", "If", sum, "A", "sum of the others", parts...)}
	}
	b := p.Net.Sources[battery].Source
	if c, ok := schema.Lookup[*schema.Compartment](p.Plan, b.Compartment.Addr); ok && c.Occupied.True() && sum > graveFault {
		v.Word = lint.Danger
	}
	v.Message = fmt.Sprintf("If %s fails inside, %s feed it with no overcurrent device between.", lint.Quote(b), lint.And(names...))
	return v
}

// drives is what a battery drives into a short inside another.
func drives(p *lint.Pass, i int, wire derive.Number) (derive.Number, []lint.Missing) {
	s := p.Net.Sources[i].Source
	volts, lacks := p.Circuit.BatteryVolts(s)
	low, _, _, m := p.Circuit.BatteryOhms(s)
	lacks = append(append([]lint.Missing{}, lacks...), m...)
	if len(lacks) > 0 || low.Value+wire.Value <= 0 {
		return derive.Number{}, lacks
	}
	from, how := []derive.Number{volts.Full, low}, "I = Vfull / Rlow"
	if wire.Kind != 0 {
		from, how = append(from, wire), "I = Vfull / (Rlow + Rw)"
	}
	return derive.Compute("what "+lint.Quote(s)+" drives into a short", "I", volts.Full.Value/(low.Value+wire.Value), "A", how, from...), nil
}

// pairOf judges two batteries: by what one drives against what the weakest link carries.
func pairOf(p *lint.Pass, battery int, k *brothers) lint.Verdict {
	b, o := p.Net.Sources[battery].Source, p.Net.Sources[k.list[0]].Source
	v := k.found(p, battery)
	weakest, stout, lacks := links(p, k)
	if stout && likeLeadAcid(b, o) || weakest.Kind == 0 && len(lacks) == 0 {
		return lint.Verdict{Subject: b, Outcome: lint.Holds}
	}
	live, m := p.Circuit.Loop(k.edges(), circuit.Prospective)
	wire := derive.Compute("resistance of the links", "Rw", 2*live.Value, "ohm", "twice the live links: the returns run beside them", live.From...)
	lacks = append(lacks, m...)
	amps, m := drives(p, k.list[0], wire)
	if lacks = append(lacks, m...); len(lacks) > 0 {
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("If %s fails inside, %s feeds it with no overcurrent device between, and whether the links carry that is not known: %s is missing.",
			lint.Quote(b), lint.Quote(o), lint.Lacking(lacks[0], true))
		return v
	}
	v.Numbers = []derive.Number{weakest, amps}
	if amps.Value <= weakest.Value {
		return lint.Verdict{Subject: b, Outcome: lint.Holds, Numbers: v.Numbers}
	}
	v.Message = fmt.Sprintf("If %s fails inside, %s drives up to %s into it with no overcurrent device between, through a link that carries %s.",
		lint.Quote(b), lint.Quote(o), amps.Text(), weakest.Text())
	return v
}

// links finds the least ampacity of the wires between two batteries, and whether all are stout.
func links(p *lint.Pass, k *brothers) (weakest derive.Number, stout bool, lacks []lint.Missing) {
	stout, least := true, math.Inf(1)
	for _, e := range k.edges() {
		w := p.Net.Edges[e].Wire
		if w == nil {
			continue
		}
		stout = stout && w.Size.Set && w.Size.Area >= stoutLink
		iz, m := p.Circuit.Ampacity(w)
		if iz.Kind == 0 {
			lacks = append(lacks, m...)
		} else if iz.Value < least {
			weakest, least = iz, iz.Value
		}
	}
	return weakest, stout, lacks
}

func likeLeadAcid(a, b *schema.Source) bool {
	return a.Chemistry.Set && a.Chemistry.Value == b.Chemistry.Value && !tables.Lithium(a.Chemistry.Value) && a.Capacity.Set && a.Capacity.Value == b.Capacity.Value
}
