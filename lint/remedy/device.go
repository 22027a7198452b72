package remedy

import (
	"regexp"
	"strconv"
	"strings"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// SmallerDevice offers the standard ratings under that of the device, the largest first, as far down as what is known to
// pass it for hours, and one more.
func SmallerDevice(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		if !f.Rating.Set {
			continue
		}
		least, _ := demand(p, f.Addr)
		for _, r := range below(f.Rating.Value) {
			if out = append(out, rated(f, r)); r.V < least/tables.Continuous*(1-1e-9) {
				break
			}
		}
	}
	return out
}

// LargerDevice offers the standard ratings over that of the device, the smallest first.
func LargerDevice(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		if f.Rating.Set {
			for _, r := range above(max(f.Rating.Value, lasting(v)*(1-1e-9))) {
				out = append(out, rated(f, r))
			}
		}
	}
	return out
}

// lasting is what passes a device for hours, where a verdict turns on that: a rating under it is no use. What passes it
// for less may be more than its rating.
func lasting(v lint.Verdict) float64 {
	if n := len(v.Numbers); n > 0 && v.Numbers[n-1].Symbol == "Ilong" {
		return v.Numbers[n-1].Value
	}
	return 0
}

func rated(f *schema.Fuse, r tables.Value) lint.Proposal {
	changes := []lint.Change{lint.Set(f.Addr, "rating", text(r.V, "A"))}
	return lint.Proposal{
		Do:      sentence("Fit %s as a device of %s.", lint.Quote(f), quantity.Format(r.V, quantity.Current)),
		Changes: append(changes, relabelled(f, r.V)...),
		Sources: []string{"standard rating: " + r.Cite.String()},
	}
}

// relabelled changes a label that says the old rating: a label that says another one invites the wrong
// spare.
func relabelled(f *schema.Fuse, amps float64) []lint.Change {
	if !own(&f.Head, f.Label.Attr) || strings.ContainsAny(f.Label.Value, "\"\\${}%\n") {
		return nil
	}
	number := func(a float64) string { return strconv.FormatFloat(a, 'f', -1, 64) }
	said := regexp.MustCompile(`(^|[^0-9.])` + regexp.QuoteMeta(number(f.Rating.Value)) + `([ \x{a0}]?[Aa]([Mm][Pp][Ss]?)?($|[^A-Za-z0-9]))`)
	if len(said.FindAllString(f.Label.Value, -1)) != 1 {
		return nil
	}
	return []lint.Change{lint.Set(f.Addr, "label", `"`+said.ReplaceAllString(f.Label.Value, "${1}"+number(amps)+"${2}")+`"`)}
}

// stronger are the kinds of device that are offered for more volts or a larger fault, the commoner first, from the
// least to the most A that they are made for, from memory.
var stronger = []struct {
	kind, called string
	least, most  float64 // A
}{{"cartridge", "cartridge fuse for solar strings", 1, 30}, {"terminal", "terminal fuse", 30, 300}, {"class-t", "class-t fuse", 1, 1200}}

// opens is what a kind of device opens on direct current: volts and amps.
func opens(kind string) (volts, amps tables.Value, known bool) {
	if kind == "cartridge" {
		volts, amps = tables.SolarCartridge()
		return volts, amps, true
	}
	return tables.FuseKind(kind)
}

// StrongerDevice offers devices of the same rating and of a kind that opens more.
func StrongerDevice(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		for _, s := range stronger {
			volts, amps, known := opens(s.kind)
			if !known || alternating(p, f.Addr) || s.kind != "class-t" && onLithium(p, f) || f.Rating.Set && (f.Rating.Value < s.least || f.Rating.Value > s.most) {
				continue
			}
			out = append(out, lint.Proposal{
				Do: sentence("Fit %s as a %s of the same rating, made for %s dc and %s.", lint.Quote(f), s.called,
					quantity.Format(volts.V, quantity.Voltage), quantity.Format(amps.V, quantity.Current)),
				Changes: []lint.Change{
					lint.Set(f.Addr, "kind", `"`+s.kind+`"`), lint.Set(f.Addr, "voltage_rating", text(volts.V, "V dc")), lint.Set(f.Addr, "interrupting", interrupting(amps.V)),
					lint.Unset(f.Addr, "reset"), lint.Unset(f.Addr, "trip"), lint.Unset(f.Addr, "polarized"), lint.Unset(f.Addr, "curve"), lint.Unset(f.Addr, "series_rated_with"),
				},
				Sources: []string{"voltage of the kind: " + volts.Cite.String(), "interrupting rating of the kind: " + amps.Cite.String()},
				Part:    sentence("Read both ratings on %s before it is fitted; its holder has to change with it. Where the kind is not made in this size, the next one under it that carries the load.", lint.Quote(f)),
			})
		}
	}
	return out
}

// onLithium says whether a device sits on a lithium battery: what shorts drive there is for the strongest kind.
func onLithium(p *lint.Pass, f *schema.Fuse) bool {
	s, ok := schema.Lookup[*schema.Source](p.Plan, f.On.Addr)
	return ok && s.Kind.Value == "battery" && tables.Lithium(s.Chemistry.Value)
}

func interrupting(amps float64) string {
	if amps >= 1000 {
		return text(amps/1000, "kA")
	}
	return text(amps, "A")
}

// alternating says whether any node of a part is of alternating current.
func alternating(p *lint.Pass, addr string) bool {
	for _, n := range p.Net.Nodes {
		if n.Addr == addr && n.AC {
			return true
		}
	}
	return false
}

// ListedTogether offers what only a maker can say: that the device may be used behind a stronger one.
func ListedTogether(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	fuses := about[*schema.Fuse](p, v)
	if len(fuses) < 2 {
		return nil
	}
	f, ahead := fuses[0], fuses[len(fuses)-1]
	for _, x := range fuses[1:] {
		if x.Interrupting.Value > ahead.Interrupting.Value {
			ahead = x
		}
	}
	return []lint.Proposal{{
		Do:      sentence("Rely on %s, ahead of %s, if their makers list them as series rated.", lint.Quote(ahead), lint.Quote(f)),
		Changes: []lint.Change{lint.Set(f.Addr, "series_rated_with", ahead.Addr)},
		Open:    "whether the makers list the two together is theirs to say",
	}}
}

// ResetByHand offers a breaker that stays open.
func ResetByHand(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		out = append(out, lint.Proposal{
			Do:      sentence("Fit %s as a breaker that is reset by hand.", lint.Quote(f)),
			Changes: []lint.Change{lint.Set(f.Addr, "reset", `"manual"`)},
			Part:    "The breaker's sheet has to say that it stays open.",
			Sources: []string{practice},
		})
	}
	return out
}
