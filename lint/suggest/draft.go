package suggest

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

// group gives the other verdicts of the rule that are folded under the finding.
func (s *search) group() []lint.Verdict {
	var out []lint.Verdict
	for _, x := range s.finding.Folded {
		if x.Rule != s.finding.Rule.ID {
			continue
		}
		for _, v := range s.Report.Verdicts[x.Rule] {
			if v.Subject.Header().Addr == x.Subject && v.Message == x.Message && v.Outcome != lint.Holds {
				out = append(out, v)
			}
		}
	}
	return out
}

// always is offered with whatever a rule offers: mistakes that many rules trip over, each by what follows of it.
var always = []lint.Offer{remedy.ThroughConverter}

// drafts places everything that a rule offers for a verdict, and for those that one cause makes with it
// at once, the least change first.
func (s *search) drafts(d *Desk, rule *lint.Rule, v lint.Verdict, group []lint.Verdict) []draft {
	var out []draft
	can := func(cs []lint.Change) bool {
		_, err := d.page.edits(d.Plan, cs)
		return err == nil
	}
	if d.page == nil {
		return nil
	}
	s.placed = 0
	for i, o := range slices.Concat(rule.Offers, always[:min(len(rule.Offers), len(always))]) {
		offer := func(pass *lint.Pass, v lint.Verdict) []lint.Proposal { return s.ask(rule, o, pass, v) }
		first := offer(d.pass, v)
		for j, p := range first {
			if p.Open == "" && presumes(p, v) {
				p.Open = "whether the part is so is not written: look first, and write what it is"
			}
			out = s.place(d, out, fmt.Sprint(rule.ID, i), p)
			if all := joined(d.pass, offer, group, can, p, j); all != nil {
				out = s.place(d, out, fmt.Sprint(rule.ID, i, " all"), *all)
			}
		}
	}
	seen := map[string]bool{} // two offers may come to the same
	out = slices.DeleteFunc(out, func(x draft) bool {
		old := seen[string(x.Src)]
		seen[string(x.Src)] = true
		return old
	})
	slices.SortStableFunc(out, func(a, b draft) int { return cmp.Or(boolean(a.Second)-boolean(b.Second), a.cost.order(b.cost)) })
	// One edit for all that one cause makes is better than the same edit for one of them.
	slices.SortStableFunc(out, func(a, b draft) int {
		return boolean(strings.HasSuffix(b.offer, " all")) - boolean(strings.HasSuffix(a.offer, " all"))
	})
	return out
}

// presumes says whether a proposal answers what a verdict misses with the answer that suits it: a fact is read from
// the part, and not chosen.
func presumes(p lint.Proposal, v lint.Verdict) bool {
	return slices.ContainsFunc(p.Changes, func(c lint.Change) bool {
		fact := c.Value == "true" || c.Value == "false" || c.Attr == "exposed" || c.Attr == "key" || c.Attr == "transition"
		return fact && slices.ContainsFunc(v.Missing, func(m lint.Missing) bool {
			return m.Subject == c.At && m.Attribute == strings.TrimSpace(c.In+" "+c.Attr)
		})
	})
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// ask gives what an offer proposes. One that crashes proposes nothing: its defect is told beside what others
// propose, and takes none of that away.
func (s *search) ask(rule *lint.Rule, o lint.Offer, pass *lint.Pass, v lint.Verdict) (out []lint.Proposal) {
	defer func() {
		if x := recover(); x != nil {
			out = nil
			s.near = append(s.near, miss{draft: draft{Desk: s.Desk, steps: []string{"Nothing."}, offer: "crash"}, why: fmt.Sprintf("the tool failed at what %s offers: %v", rule.ID, x)})
		}
	}()
	return o(pass, v)
}

// joined makes one proposal of what an offer proposes for every verdict of a group that can be edited: the same, or where
// that is not among it what stands in the same place of its list, in its own words.
func joined(pass *lint.Pass, offer lint.Offer, group []lint.Verdict, can func([]lint.Change) bool, p lint.Proposal, at int) *lint.Proposal {
	if len(group) == 0 {
		return nil
	}
	all := p
	all.Changes = slices.Clone(p.Changes)
	var names []string
	var own []string // what is to be done otherwise for some
	for _, v := range group {
		more := offer(pass, v)
		i := slices.IndexFunc(more, func(x lint.Proposal) bool { return plain(x.Do) == plain(p.Do) })
		same := i >= 0
		if !same {
			i = at
		}
		if i >= len(more) || !alikeIn(p, more[i]) || !can(more[i].Changes) {
			continue
		}
		before := len(all.Changes)
		for _, c := range more[i].Changes {
			if !slices.Contains(all.Changes, c) {
				all.Changes = append(all.Changes, c)
			}
		}
		switch {
		case same:
			names = append(names, lint.Quote(v.Subject))
		case len(all.Changes) > before:
			own = append(own, more[i].Do)
		}
	}
	if len(all.Changes) == len(p.Changes) {
		return nil
	}
	if len(names) > 0 {
		all.Do = strings.TrimSuffix(p.Do, ".") + fmt.Sprintf(", and do the same for %s, found with it.", others(names))
	}
	all.Do = strings.Join(append([]string{all.Do}, own...), " ")
	return &all
}

// quotedName is the name of a part in a sentence.
var quotedName = regexp.MustCompile(`"[^"]*"`)

// plain is what a sentence says without the names of parts.
func plain(do string) string { return quotedName.ReplaceAllString(do, "") }

// alikeIn says whether two proposals do the same to two parts, on the same conditions.
func alikeIn(a, b lint.Proposal) bool {
	return a.Open == b.Open && a.Second == b.Second && slices.EqualFunc(a.Changes, b.Changes, func(x, y lint.Change) bool {
		return x.In == y.In && x.Attr == y.Attr && x.Drop == y.Drop && (x.Block == "") == (y.Block == "")
	})
}

// mostNamed is how many of a group are named in a sentence.
const mostNamed = 4

func others(names []string) string {
	if n := len(names); n > mostNamed+1 {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("%d more", n-mostNamed))
	}
	return lint.And(names...)
}

// place adds a proposal as a draft. What cannot be placed in the text, or gives no sound plan, is no
// draft; what a person has to fill in is kept as a sketch.
func (s *search) place(d *Desk, out []draft, offer string, p lint.Proposal) []draft {
	if s.placed++; s.placed > mostPlaced {
		s.left = true
		return out
	}
	p.Changes = d.page.real(d.Plan, p.Changes)
	if p.Open == "" && mains(d.pass.Net, p.Changes) {
		p.Open = "it is a part of the mains, and what is done there is for an electrician"
	}
	edits, err := d.page.edits(d.Plan, p.Changes)
	if err != nil {
		s.near = append(s.near, miss{draft: draft{Desk: d, Proposal: p, steps: []string{p.Do}, offer: offer}, why: err.Error()})
		return out
	}
	src, err := Apply(d.Src, edits)
	if err != nil || bytes.Equal(src, d.Src) {
		return out
	}
	plan, err := d.read(src)
	if err != nil {
		return out
	}
	x := draft{Desk: d.after(src, plan), Proposal: p, offer: offer, changes: p.Changes, steps: []string{p.Do}, needs: append(filled(p.Part), vapour(d.Plan, p)...), sources: p.Sources}
	x.cost = cost(s.Plan, plan, p.Changes)
	if p.Open != "" {
		s.open = append(s.open, s.suggestion(x, Sketch, p.Open, nil))
		return out
	}
	return append(out, x)
}

// vapour warns of parts that are new in a space that fuel vapour can come to: no rule asks for what makes them safe there.
func vapour(plan *schema.Plan, p lint.Proposal) []string {
	for _, c := range p.Changes {
		for _, x := range plan.Compartments {
			comes := c.Block != "" && strings.Contains(c.Block, "= "+x.Addr+"\n") || c.Attr == "compartment" && c.Value == x.Addr
			if comes && !x.FuelVapor.False() && x.FuelVapor.Set {
				return []string{"What is new stands in " + lint.Quote(x) + ", where fuel vapour can be: it has to be made for that (ignition protected), or to stand elsewhere."}
			}
		}
	}
	return nil
}

func filled(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// cost counts what changes between two plans.
func cost(old, new *schema.Plan, changes []lint.Change) Cost {
	var c Cost
	parts := map[string]bool{}
	for _, x := range changes {
		if x.Block != "" {
			c.Parts++
			continue
		}
		parts[x.At] = true
		switch x.Attr {
		case "", "from", "to", "on", "label", "size":
		default:
			c.Ratings++
		}
	}
	c.Parts += len(parts)
	for _, w := range new.Conductors {
		if was, ok := schema.Lookup[*schema.Conductor](old, w.Addr); !ok || was.Size.Size != w.Size.Size || paired(w) && !paired(was) || was.Insulation.Value != w.Insulation.Value || w.Length.Value > was.Length.Value ||
			leads(new, was.From, w.From) || leads(new, was.To, w.To) {
			c.Metres += w.Length.Value
			if !w.Length.Set {
				c.Unmeasured++
			}
		}
	}
	c.Metres = math.Round(c.Metres*1000) / 1000
	return c
}

// leads says whether an end of a wire leads to another place than before. A device that is put right on the old one is no
// other place.
func leads(plan *schema.Plan, was, is schema.Ref) bool {
	f, ok := schema.Lookup[*schema.Fuse](plan, is.Addr)
	return was.Addr != is.Addr && !(ok && f.On.Addr == was.Addr)
}

// paired says whether a conductor is both ways: one that was not has a second wire to be laid.
func paired(w *schema.Conductor) bool { return !w.Polarity.Set || w.Polarity.Value == "pair" }
