package main

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/network"
	"ferrule/lint/suggest"
	"ferrule/rules"
	"ferrule/schema"
	"ferrule/schema/files"
	"ferrule/schema/quantity"
)

// spot is a value of a plan and what an owner's mistake makes of it.
type spot struct {
	what string
	at   hcl.Range
	text string
}

// mistakes lists every place of a plan at which a mistake of some kind can be made: the kinds of the small
// edits that owners make.
func mistakes(p *schema.Plan) []spot {
	var out []spot
	add := func(what string, a schema.Attr, format string, args ...any) {
		if a.Set && a.Range.Filename == p.File {
			out = append(out, spot{what, a.Range, fmt.Sprintf(format, args...)})
		}
	}
	flag := func(what string, f schema.Flag) {
		if f.True() {
			add(what, f.Attr, "false")
		}
	}
	volts := func(what string, q schema.Quantities, text string) {
		if len(q.List) == 1 && q.List[0].Kind == quantity.DC && q.List[0].Value > 32 {
			add(what, q.Attr, "%q", text)
		}
	}
	for _, c := range p.Conductors {
		if c.Size.System == quantity.AWG && c.Size.AWG+4 <= 18 {
			add("thinner wire", c.Size.Attr, "%q", quantity.Gauge(c.Size.AWG+4).String())
		}
		add("longer wire", c.Length.Attr, `"%g m"`, c.Length.Value*4)
		add("poorer insulation", c.Insulation.Attr, `"60 C"`)
		add("a fuller bundle", c.Bundle.Attr, "12")
		if s, ok := schema.Lookup[*schema.Switch](p, c.To.Addr); ok {
			for _, t := range s.Terminals.List {
				if t.Value != c.To.Terminal {
					add("wire on another contact", c.To.Attr, "%s.%s", s.Addr, t.Value)
				}
			}
		}
		if x, ok := schema.Lookup[*schema.Converter](p, c.To.Addr); ok && c.To.Terminal == "in" && c.To.Pole == schema.WholePair {
			add("converter gone round", c.To.Attr, "%s.out", x.Addr)
		}
		for _, f := range p.Fuses {
			if c.From.Addr == f.Addr && c.From.Terminal == "load" && f.On.Set && c.Addr == "conductor."+c.Name {
				add("device left out", c.From.Attr, "%s", f.On.Text)
			}
		}
	}
	for _, f := range p.Fuses {
		add("bigger device", f.Rating.Attr, `"%g A"`, f.Rating.Value*3)
		add("smaller device", f.Rating.Attr, `"%g A"`, f.Rating.Value/2)
		volts("device for fewer volts", f.VoltageRating, "16 V dc")
		add("weaker device", f.Interrupting.Attr, `"400 A"`)
	}
	for _, l := range p.Loads {
		add("doubled draw", l.Draw.Attr, `"%g A"`, l.Draw.Value*2)
	}
	for _, s := range p.Sources {
		if s.Kind.Value == "solar" {
			add("one module more", s.Series.Attr, "%d", s.Series.Value+1)
		}
		flag("no cutoff in the cold", s.ColdChargeCutoff)
		add("a pack that gives less", s.DischargeLimit.Attr, `"%g A"`, s.DischargeLimit.Value/4)
		add("a pack that takes less", s.ChargeLimit.Attr, `"%g A"`, s.ChargeLimit.Value/4)
	}
	for _, c := range p.Converters {
		flag("does not block", c.BlocksReverse)
		flag("does not limit", c.LimitsCurrent)
		flag("not isolated", c.Isolated)
		flag("no sensor for cold", c.ColdChargeCutoff)
		if c.Output != nil {
			add("charger set higher", c.Output.Voltage.Attr, `"%g V"`, c.Output.Voltage.Value*1.15)
			add("stronger charger", c.Output.CurrentMax.Attr, `"%g A"`, c.Output.CurrentMax.Value*3)
		}
	}
	for _, s := range p.Switches {
		if s.Transition.Value == "break-before-make" {
			add("joins in passing", s.Transition.Attr, `"make-before-break"`)
		}
		add("smaller switch", s.Rating.Attr, `"%g A"`, s.Rating.Value/4)
	}
	for _, c := range p.Connectors {
		add("smaller plug", c.Rating.Attr, `"%g A"`, c.Rating.Value/4)
		add("no key", c.Key.Attr, `"none"`)
		add("bare side", c.Exposed.Attr, `"fixed"`)
	}
	for _, b := range p.Buses {
		add("smaller bus", b.Rating.Attr, `"%g A"`, b.Rating.Value/4)
	}
	for _, b := range p.Branches {
		for _, x := range p.Buses {
			if x.Addr != b.From.Addr {
				add("moved to another bus", b.From.Attr, "%s", x.Addr)
			}
		}
	}
	add("hotter site", p.System.Ambient.Attr, `"55 C"`)
	add("colder site", p.System.Coldest.Attr, `"-40 C"`)
	return out
}

// electricians are the families of rules on the mains, whose remedies are for an electrician.
var electricians = map[string]bool{"ac": true, "bonding": true}

// TestMistakesAreMended makes mistakes in clean examples, two of each kind in each, and counts how many of the
// dangers and warnings that follow get a verified suggestion.
func TestMistakesAreMended(t *testing.T) {
	if testing.Short() {
		t.Skip("a minute")
	}
	tally, mains, kits := map[string][2]int{}, 0, 0
	for _, name := range []string{"heron", "siskin", "wren"} {
		path := filepath.Join(exampleFolder, name+".wiring.hcl")
		d := opened(t, path)
		known := found(d.Report)
		for _, s := range drawn(mistakes(d.Plan)) {
			src := string(d.Src[:s.at.Start.Byte]) + s.text + string(d.Src[s.at.End.Byte:])
			reader, err := (&files.Reader{}).Instead(path, []byte(src))
			if err != nil {
				t.Fatal(err)
			}
			flawed, diags := suggest.New(path, reader, rules.All(), today())
			if len(diags) > 0 { // that mistake is no plan
				continue
			}
			for _, f := range flawed.Report.Findings {
				if f.Severity < lint.Warning || f.Verdict.Outcome != lint.Violated || known[key(f)] {
					continue
				}
				if at := f.Verdict.Subject.Header(); onMains(flawed.Plan, at.Addr) || electricians[f.Rule.Family()] {
					mains++
					continue
				} else if at.Range.Filename != path {
					kits++
					continue
				}
				best, n := flawed.Best(f).List, tally[f.Rule.ID]
				n[1]++
				if len(best) > 0 && best[0].Kind != suggest.Sketch {
					n[0]++
				} else if os.Getenv("FERRULE_SHOW") != "" {
					t.Logf("%s, %s %q: %s %s: %s %+v", name, s.what, s.text, f.Rule.ID, f.Verdict.Subject.Header().Addr, f.Message(), reasons(best))
				}
				tally[f.Rule.ID] = n
			}
		}
	}
	var mended, all int
	for id, n := range tally {
		t.Logf("%3d of %3d %s", n[0], n[1], id)
		mended, all = mended+n[0], all+n[1]
	}
	t.Logf("verified suggestions for %d of %d dangers and warnings, %.0f %%; %d more on the mains and %d in kits, where there are none", mended, all, 100*float64(mended)/float64(all), mains, kits)
	if all < 20 || mended*10 < all*9 {
		t.Errorf("verified suggestions for %d of %d; want nine in ten", mended, all)
	}
}

// onMains says whether a part carries nothing but alternating current: an electrician's, not the owner's.
func onMains(p *schema.Plan, addr string) bool {
	n, _ := network.Build(p)
	ac, dc := false, false
	see := func(id network.NodeID) { ac, dc = ac || n.Nodes[id].AC, dc || !n.Nodes[id].AC }
	for i := range n.Nodes {
		if n.Nodes[i].Addr == addr {
			see(network.NodeID(i))
		}
	}
	for _, e := range n.EdgesOf(addr) {
		see(n.Edges[e].A)
	}
	return ac && !dc
}

func reasons(all []suggest.Suggestion) []string {
	var out []string
	for _, x := range all {
		out = append(out, strings.Join(x.Steps, " ")+" | "+x.Reason)
	}
	return out
}

// drawn takes two of each kind of mistake, always the same ones.
func drawn(all []spot) []spot {
	rnd := rand.New(rand.NewSource(1))
	rnd.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	taken := map[string]int{}
	return slices.DeleteFunc(all, func(s spot) bool {
		taken[s.what]++
		return taken[s.what] > 2
	})
}

func key(f *check.Finding) string {
	return f.Rule.ID + " " + f.Verdict.Subject.Header().Addr + " " + f.Verdict.Cause
}

func found(r *check.Report) map[string]bool {
	out := map[string]bool{}
	for _, f := range r.Findings {
		out[key(f)] = true
	}
	return out
}
