package rules

import (
	"slices"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// hiddenWhole is all that a pair of plans may have: the flawed plan these findings, each in its state and with
// what is folded under it, and neither plan any other that is not waived.
type hiddenWhole struct {
	plan     string
	findings []string // rule, subject, word, state, then what is folded
}

var hiddenWholes = []hiddenWhole{
	{"3_1", []string{
		"life-safety/breakaway-without-power load.brakes danger source.pack=absent" +
			" < life-safety/one-cutoff-takes-all fuse.pack_main < life-safety/one-cutoff-takes-all source.pack",
	}},
	{"3_2", []string{"converter/constant-power-collapse converter.boost caution connector.tow=mated" +
		" < conductor/voltage-drop conductor.from_plug < load/outside-voltage-window converter.boost < overcurrent/undersize-device fuse.boost"}},
	{"3_3", []string{
		"connector/live-contacts-exposed connector.tow warning connector.tow=unmated",
		"overcurrent/second-source-unguarded conductor.run warning source.shore=present" +
			" < backfeed/load-center-feeds-back conductor.run < backfeed/load-center-feeds-back converter.center",
		"overcurrent/undersize-device fuse.battery notice",
	}},
	{"3_4", []string{
		"backfeed/charge-loop converter.charge caution connector.tow=mated source.alternator=absent source.roof=present",
		"charging/drains-starting-battery source.start caution connector.tow=mated source.alternator=absent source.roof=present",
	}},
	{"3_5", []string{
		"ac/feeds-the-grid source.shore danger connector.inverter_cord=mated connector.shore_cord=mated switch.inverter=on" +
			" < ac/two-sources-joined converter.inverter",
		"ac/live-inlet-pins connector.shore_cord danger connector.inverter_cord=mated connector.shore_cord=unmated switch.inverter=on" +
			" < connector/live-contacts-exposed connector.shore_cord",
		"backfeed/charge-loop converter.inverter caution connector.inlet=mated connector.inverter_cord=mated connector.shore_cord=unmated switch.inverter=on switch.load_center=on",
		"bonding/neutral-bond-count converter.inverter warning connector.inlet=mated connector.inverter_cord=mated connector.shore_cord=mated source.shore=absent switch.inverter=on",
	}},
	{"3_6", []string{
		"charging/battery-drops-out converter.controller warning source.roof=present switch.disconnect=off",
		"switching/off-but-live switch.disconnect warning source.roof=present switch.disconnect=off",
	}},
	{"3_7", []string{
		"charging/battery-drops-out source.alternator warning after=source.pack: bms opens source.alternator=present" +
			" < switching/opens-charging-source source.pack",
		"charging/lithium-meets-alternator source.pack warning source.alternator=present",
		"life-safety/one-cutoff-takes-all fuse.pack notice after=fuse.pack: opens source.alternator=absent",
		"life-safety/one-cutoff-takes-all source.pack warning after=source.pack: bms opens source.alternator=absent",
	}},
	{"3_8", []string{
		"charging/lithium-meets-alternator source.pack warning switch.select=truck>pack (overlap)" +
			" < source/unlike-in-parallel source.pack < source/unlike-in-parallel source.start",
		"switching/contact-rating switch.select warning switch.select=truck>pack (overlap)"}},
	{"3_9", []string{"conductor/return-weaker-than-feed conductor.pigtail danger connector.tow=mated source.alternator=present switch.brakes=on" +
		" < bonding/chassis-return bus.ground < conductor/ampacity conductor.pigtail < conductor/voltage-drop load.brakes" +
		" < overcurrent/oversize-device fuse.brakes < overcurrent/oversize-device fuse.feed"}},
	{"3_10", []string{
		"converter/shorts-through converter.step warning after=converter.step: shorts through",
	}},
	{"3_11", []string{
		"ac/two-sources-joined converter.inverter caution connector.generator_plug=mated source.generator=present switch.inverter=on",
		"bonding/neutral-bond-count converter.inverter warning connector.generator_plug=mated switch.inverter=on switch.second=inverter switch.transfer=inverter",
		"bonding/neutral-bond-count converter.pack danger connector.pack_plug=mated source.pack=present switch.transfer=inlet",
		"bonding/neutral-bond-count source.generator warning connector.generator_plug=mated source.generator=present switch.second=generator switch.transfer=inverter",
	}},
	{"3_12", []string{
		"connector/live-contacts-exposed connector.panel warning connector.panel=unmated source.panel=present",
		"connector/live-contacts-exposed connector.power warning connector.panel=mated source.pack=absent source.panel=present",
		"connector/live-contacts-exposed connector.power warning source.pack=absent",
		"connector/wrong-partner connector.port danger source.engine=present source.pack=absent" +
			" < connector/live-contacts-exposed connector.port < connector/wrong-partner connector.panel < connector/wrong-partner connector.power",
	}},
}

func TestHiddenWhole(t *testing.T) {
	for _, h := range hiddenWholes {
		t.Run(h.plan, func(t *testing.T) {
			if got := standing(t, h.plan+"_flawed"); !slices.Equal(got, h.findings) {
				t.Errorf("flawed:\n%s\nwanted:\n%s", strings.Join(got, "\n"), strings.Join(h.findings, "\n"))
			}
			if got := standing(t, h.plan+"_mended"); len(got) > 0 {
				t.Errorf("mended:\n%s", strings.Join(got, "\n"))
			}
		})
	}
}

// standing tells the findings of a plan that are not waived, in order.
func standing(t *testing.T, name string) (out []string) {
	t.Helper()
	p, diags, _ := (&files.Reader{}).Load("../testdata/hidden/" + name + ".wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	r := check.Run(p, All(), check.Options{Today: time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)})
	if r.Diagnostics.HasErrors() || len(r.Failures) > 0 || !r.Summary.States.Complete || r.Summary.Checks == 0 {
		t.Fatal(r.Diagnostics, r.Failures, r.Summary)
	}
	for _, f := range r.Findings {
		if f.Waived != nil {
			continue
		}
		words := []string{f.Rule.ID, f.Verdict.Subject.Header().Addr, f.Severity.String()}
		if f.Verdict.Outcome != lint.Violated {
			words = append(words, f.Verdict.Outcome.String())
		}
		for _, p := range lint.SortState(slices.Clone(f.Verdict.State)) {
			words = append(words, p.Addr+"="+p.Position)
		}
		var under []string
		for _, x := range f.Folded {
			under = append(under, "< "+x.Rule+" "+x.Subject)
		}
		slices.Sort(under)
		out = append(out, strings.Join(append(words, under...), " "))
	}
	slices.Sort(out)
	return out
}
