package conductor

import (
	"fmt"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var unequalParallels = &lint.Rule{
	ID:      "conductor/unequal-parallels",
	Claim:   "Wires in parallel do not share what their device lets through.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "wires in parallel",
	When: "Two wires or more join the same two places with no device between, or one is drawn as several in parallel; what the devices before or behind them let " +
		"through is more than one of them bears; and their resistances differ by more than 5 %, or they are smaller than 1/0 AWG, so that the others are burnt if one comes loose.",
	Why: "The shorter wire carries the larger part, and the device, which sees the sum, does not open: warning, since the heat is made inside walls with the fuse intact.",
	Numbers: "Share of each = its conductance over the sum, by size and length at 20 C. Joints count as nothing: they are alike, or one of them is what comes loose. Wires one after " +
		"another with nothing branching off count as one way. What devices let through: their ratings, side by side added up; of sources that limit themselves, no more than they give. " +
		"From 1/0 AWG up equal wires may share one device (recalled).",
	Not: "Returns in parallel, which conductor/return-weaker-than-feed asks; links between batteries of a bank; ways with a device each. A set of which every wire alone bears what " +
		"the devices let through holds, equal or not.",
	Offer: "One larger wire; equal lengths of one size with a device for each, and returns of which any one bears the whole.",
	Meter: "A clamp meter on each of them at full load: the readings must be alike.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 310.10(G)", Standing: lint.FromMemory, Note: "conductors in parallel: 1/0 and larger, of one length, size and make"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "the 5 %, and a device for each of several wires"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.ThickerWire, remedy.DeviceAtSource},
	Since:  "0.1",
	Run:    parallels,
}

const (
	mostUnlike = 0.05  // of the smaller resistance
	oughtArea  = 53.49 // mm2 of 1/0 AWG, ASTM B258
)

func parallels(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, s := range setsOf(p) {
		out = append(out, s.verdict(p))
	}
	return out
}

// strand is one of several ways in parallel; a conductor drawn as several in parallel is one strand
// that counts for that many.
type strand struct {
	run
	count int
	ohms  derive.Number // of one, in ohm
	bears derive.Number // the least ampacity of one along the way, in A
	least *schema.Conductor
	lacks []lint.Missing // of its resistance
	short []lint.Missing // of its ampacity
}

// set is the strands between two places.
type set []strand

// setsOf finds the sets of a plan, in the order of their first edge.
func setsOf(p *lint.Pass) []set {
	var sets []set
	at := map[[2]int]int{}
	for _, r := range liveRuns(p.Net) {
		k := [2]int{int(min(r.a, r.b)), int(max(r.a, r.b))}
		i, seen := at[k]
		if !seen {
			i = len(sets)
			at[k] = i
			sets = append(sets, nil)
		}
		sets[i] = append(sets[i], strandOf(p, r))
	}
	out := sets[:0]
	for _, s := range sets {
		if len(s) > 1 || s[0].count > 1 {
			out = append(out, s)
		}
	}
	return out
}

func strandOf(p *lint.Pass, r run) strand {
	s := strand{run: r}
	var parts []derive.Number
	sum := 0.0
	for _, e := range r.edges {
		x := p.Net.Edges[e].Wire
		if x == nil {
			continue
		}
		n := x.Parallel.Or(1)
		if s.count == 0 || n < s.count {
			s.count = n
		}
		ohms, lacks := bareOhms(p.Circuit, e)
		s.lacks = append(s.lacks, lacks...)
		iz, short := p.Circuit.Ampacity(x)
		s.short = append(s.short, short...)
		if iz.Kind != 0 && (s.bears.Kind == 0 || iz.Value/float64(n) < s.bears.Value) {
			s.bears, s.least = iz, x
			if n > 1 {
				s.bears = derive.Compute("ampacity of one of "+lint.Quote(x), "Iz1", iz.Value/float64(n), "A", "Iz1 = Iz / n", iz)
			}
		}
		if ohms.Kind != 0 {
			parts, sum = append(parts, ohms), sum+ohms.Value*float64(n)
		}
	}
	if s.count > 1 {
		s.ohms = derive.Compute("resistance of one of "+s.name(p), "R1", sum, "ohm", "R1 = n x R, joints left out", parts...)
	} else {
		s.ohms = derive.Compute("resistance of "+s.name(p)+" between the two places", "R", sum, "ohm", "sum of the wires one after another, joints left out", parts...)
	}
	return s
}

// wires lists the conductors of a strand.
func (s *strand) wires(p *lint.Pass) []*schema.Conductor {
	var out []*schema.Conductor
	for _, e := range s.edges {
		if x := p.Net.Edges[e].Wire; x != nil {
			out = append(out, x)
		}
	}
	return out
}

func (s *strand) name(p *lint.Pass) string {
	var names []string
	for _, x := range s.wires(p) {
		names = append(names, lint.Quote(x))
	}
	return strings.Join(names, " with ")
}

func (s set) verdict(p *lint.Pass) lint.Verdict {
	low, high := &s[0], &s[0] // by resistance
	weak := &s[0]             // by what it bears
	v := lint.Verdict{Outcome: lint.Holds, Word: lint.Warning}
	total := 0.0
	for i := range s {
		x := &s[i]
		v.Missing = append(v.Missing, x.lacks...)
		if x.ohms.Value < low.ohms.Value && len(x.lacks) == 0 {
			low = x
		}
		if x.ohms.Value > high.ohms.Value {
			high = x
		}
		if x.bears.Kind == 0 || weak.bears.Kind != 0 && x.bears.Value < weak.bears.Value {
			weak = x
		}
		total += float64(x.count) / max(x.ohms.Value, 1e-9)
	}
	v.Subject = low.wires(p)[0]
	v.Related = s.others(p, v.Subject)
	safe, lacks := kept(p, weak, s)
	switch {
	case safe && len(lacks) == 0:
		v.Missing, v.Numbers = nil, []derive.Number{weak.bears}
		return v
	case safe, weak.bears.Kind == 0, len(v.Missing) > 0:
		if safe {
			v.Missing = lacks
		}
		v.Outcome, v.Missing = lint.NotProven, append(weak.unsized(), v.Missing...)
		v.Message = fmt.Sprintf("How %s share what runs through them is not known: %s is missing.", s.told(p), attribute(v.Missing))
		return v
	}
	share := derive.Compute("share of "+low.name(p), "s", 1/max(low.ohms.Value, 1e-9)/total, "", "s = (1 / R) / sum of 1 / R", low.ohms, high.ohms)
	unlike := high.ohms.Value > low.ohms.Value*(1+mostUnlike)
	area := derive.Assume("smallest size for several under one device", "Smin", oughtArea, "mm2", "wires in parallel", "size", "NFPA 70 310.10(G) (from memory): 1/0 AWG")
	switch {
	case unlike:
		v.Outcome, v.Numbers = lint.Violated, []derive.Number{low.ohms, high.ohms, weak.bears, share}
		v.Message = fmt.Sprintf("%s and %s run in parallel and do not share alike: %s takes %.0f %%, and the device sees the sum. No device keeps them to the %s that %s bears.",
			low.name(p), high.name(p), low.name(p), 100*share.Value, weak.bears.Text(), lint.Quote(weak.least))
	case s.smallest(p) < oughtArea*(1-1e-3):
		v.Outcome, v.Numbers = lint.Violated, []derive.Number{area, share, weak.bears}
		v.Message = fmt.Sprintf("One current is shared by %s; if one comes loose, no device keeps the rest to the %s that one of them bears.", s.told(p), weak.bears.Text())
	default:
		v.Numbers = []derive.Number{weak.bears, share, area}
	}
	return v
}

// unsized is what the ampacity lacks of a strand that has none.
func (s *strand) unsized() []lint.Missing {
	if s.bears.Kind == 0 {
		return s.short
	}
	return nil
}

// told names the strands in a sentence.
func (s set) told(p *lint.Pass) string {
	var names []string
	for i := range s {
		n := s[i].name(p)
		if s[i].count > 1 {
			n = fmt.Sprintf("the %d wires of %s", s[i].count, n)
		}
		names = append(names, n)
	}
	return lint.And(names...)
}

// others lists the conductors of a set but one.
func (s set) others(p *lint.Pass, but schema.Block) []string {
	var out []string
	for i := range s {
		for _, x := range s[i].wires(p) {
			if schema.Block(x) != but {
				out = append(out, x.Addr)
			}
		}
	}
	return out
}

// smallest is the area of the smallest wire, in mm2.
func (s set) smallest(p *lint.Pass) float64 {
	least := 0.0
	for i := range s {
		for _, x := range s[i].wires(p) {
			if x.Size.Set && (least == 0 || x.Size.Area < least) {
				least = x.Size.Area
			}
		}
	}
	return least
}

// kept says whether no more runs through the set than one strand bears, whatever happens: devices
// keep it to that, or nothing that feeds it gives more. lacks is what it turns on and is not written.
func kept(p *lint.Pass, weak *strand, s set) (safe bool, lacks []lint.Missing) {
	e := s[0].edges[0]
	if weak.bears.Kind == 0 {
		return false, nil
	}
	if p.Circuit.Guarded(e, weak.bears.Value) {
		return true, weak.short
	}
	g := gives(p, e)
	if g.endless || g.amps > weak.bears.Value {
		return false, nil
	}
	return true, append(g.lacks, weak.short...)
}
