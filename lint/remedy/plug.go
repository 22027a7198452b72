package remedy

import (
	"strconv"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// The remedies of connectors, and of what a part is bought as: each changes one word of the plan, and
// needs a part of which that word is true.

// OtherStyle offers a connector of a family of its own.
func OtherStyle(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range about[*schema.Connector](p, v) {
		if !c.Style.Set {
			continue
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Fit both halves of %s in a family of their own, that mates with nothing else aboard.", lint.Quote(c)),
			Changes: []lint.Change{lint.Set(c.Addr, "style", strconv.Quote(unlike(p, c.Style.Value)))},
			Sources: []string{practice},
			Part:    "Try its halves on every other plug before it goes live.",
			Open:    "the family's own name is to be written as its style",
		})
	}
	return out
}

// unlike is a style that no connector has.
func unlike(p *lint.Pass, style string) string {
	for n := 2; ; n++ {
		name := sentence("%s, family %d", style, n)
		taken := false
		for _, c := range p.Plan.Connectors {
			taken = taken || c.Style.Value == name
		}
		if !taken {
			return name
		}
	}
}

// word changes one attribute of the first connector that a verdict is about.
func word(p *lint.Pass, v lint.Verdict, attr, value, what string) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Connector](p, v)) {
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as %s.", lint.Quote(c), what),
			Changes: []lint.Change{lint.Set(c.Addr, attr, value)},
			Sources: []string{practice},
			Part:    "The connector itself has to be so: look at both halves.",
		})
	}
	return out
}

// Keyed offers a connector that goes in one way only.
func Keyed(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	return word(p, v, "key", `"keyed"`, "one that goes in one way only")
}

// LoadBreak offers a connector that may be pulled while it carries current.
func LoadBreak(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	return word(p, v, "load_break", "true", "one that its maker rates to be pulled under load")
}

// Shrouded offers connectors whose touchable contacts are on the other side, or nowhere.
func Shrouded(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Connector](p, v)) {
		other := map[string]string{"free": "fixed", "fixed": "free"}[c.Exposed.Value]
		if other != "" {
			out = append(out, word(p, v, "exposed", strconv.Quote(other), "one whose shrouded half is on the live side")...)
		}
		out = append(out, word(p, v, "exposed", `"none"`, "one with no contact that a finger or a wrench can touch on either half")...)
	}
	return out
}

// NotPolarized offers a breaker that opens current of either direction, or a fuse.
func NotPolarized(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		if !f.Polarized.True() {
			continue // what is not written is asked for, not bought
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as a breaker for either direction of current.", lint.Quote(f)),
			Changes: []lint.Change{lint.Set(f.Addr, "polarized", "false")},
			Sources: []string{practice},
			Part:    "Its sheet has to say so: marks for line and load, or plus and minus, say the opposite.",
		})
	}
	return out
}

// MeantForDC offers a charger whose input its maker gives for a battery or a converter too.
func MeantForDC(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Converter](p, v)) {
		if c.Input != nil {
			out = append(out, lint.Proposal{
				Do:      sentence("Fit %s as one whose input is meant for a stiff source too.", lint.Quote(c)),
				Changes: []lint.Change{{At: c.Addr, In: "input", Attr: "accepts", Value: `["solar", "dc"]`}},
				Sources: []string{practice},
				Part:    "Its maker's sheet has to name the input for direct current from a battery or a converter.",
			})
		}
	}
	return out
}

// SmallerInput offers converters that draw less.
func SmallerInput(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, c := range head(about[*schema.Converter](p, v)) {
		if c.Input == nil || !c.Input.CurrentMax.Set {
			continue
		}
		for _, r := range below(c.Input.CurrentMax.Value) {
			out = append(out, lint.Proposal{
				Do:      sentence("Limit the input of %s to %s, from %s.", lint.Quote(c), current(r.V), c.Input.CurrentMax),
				Changes: []lint.Change{{At: c.Addr, In: "input", Attr: "current_max", Value: text(r.V, "A")}},
				Sources: []string{"steps of input current: " + practice},
				Part:    "By a setting that its sheet describes, or a smaller one in its place. What it gives is so much less.",
				Second:  true,
			})
		}
	}
	return out
}

// OneMore offers one more battery of the same kind beside those of a bank.
func OneMore(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range head(about[*schema.Source](p, v)) {
		if s.Kind.Value != "battery" || s.Removable.True() {
			continue
		}
		n := s.Parallel.Or(1) + 1
		out = append(out, lint.Proposal{
			Do:      sentence("Make %s a bank of %d in parallel.", lint.Quote(s), n),
			Changes: []lint.Change{lint.Set(s.Addr, "parallel", count(n))},
			Sources: []string{practice},
			Part:    "Batteries of one make, age and charge, each with a device of its own.",
		})
	}
	return out
}

// DropWaiver offers to take out a waiver that is of no use.
func DropWaiver(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	w, ok := v.Subject.(*schema.Waiver)
	if !ok {
		return nil
	}
	return []lint.Proposal{{
		Do:      sentence("Take the waiver %q out.", w.Name),
		Changes: []lint.Change{{At: w.Addr, Drop: true}},
	}}
}

// StringDevice offers a fuse for each string, no larger than its modules allow.
func StringDevice(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, s := range head(about[*schema.Source](p, v)) {
		for _, c := range p.Plan.Conductors {
			for _, e := range ends(c) {
				if e.at.Addr != s.Addr || composed(c) || e.at.Pole != schema.WholePair || !s.MaxSeriesFuse.Set {
					continue
				}
				for _, a := range below(s.MaxSeriesFuse.Value + 1) {
					out = append(out, stringFuse(p, c, e, a))
				}
			}
		}
	}
	return out
}

// Written asks for the figures that a verdict rests on and that were assumed, where a plan has a place for them.
func Written(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, n := range v.Numbers {
		if n.Kind != derive.Assumption || p.Plan.Block(n.Subject) == nil || strings.Contains(n.Attribute, " ") || len(out) == most {
			continue
		}
		out = append(out, lint.Proposal{
			Do:      sentence("Write %s; %s was assumed.", lint.Lacking(lint.Missing{Subject: n.Subject, Attribute: n.Attribute}, true), n.Text()),
			Changes: []lint.Change{lint.Set(n.Subject, n.Attribute, "null")},
			Open:    "only a reading or the part's sheet says the value",
		})
	}
	return out
}
