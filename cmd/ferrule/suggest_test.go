package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/suggest"
	"ferrule/rules"
	"ferrule/schema/files"
)

// left are the findings of the flawed examples that no verified suggestion clears, and why. All else that is
// violated there is led to clean by suggestions alone.
var left = map[string]string{
	"curlew life-safety/one-cutoff-takes-all fuse.house_main":       "one main fuse is how a small boat is built; the clean twin has it too",
	"heron charging/drains-starting-battery source.start":           "a position of the selector is there to drink from the vehicle; giving it up is for the owner to decide",
	"heron conductor/voltage-drop conductor.panel_feed":             "most of it is lost between the vehicle and the selector, in that position",
	"heron overcurrent/undersize-device fuse.trailer_feed":          "in that position the trailer asks more of the vehicle than its feed is made for; what is to stay off then is for the owner to decide",
	"heron plan/guess-decides system.heron":                         "the plan does not say the batteries' resistance; that is to be read, not bought",
	"wren overcurrent/interrupting-rating use.left_bunk.fuse.light": "it is written in a kit, which other plans may use too",
}

func today() check.Options {
	return check.Options{Today: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}
}

func opened(t *testing.T, path string) *suggest.Desk {
	t.Helper()
	d, diags := suggest.New(path, &files.Reader{}, rules.All(), today())
	if len(diags) > 0 || d.Report.Tainted() {
		t.Fatalf("%s: %v", path, diags)
	}
	return d
}

// TestFlawedExamplesAreLedToClean accepts verified suggestions only, one after the other, each checked here
// again against the plan that it was made for.
func TestFlawedExamplesAreLedToClean(t *testing.T) {
	if testing.Short() {
		t.Skip("half a minute")
	}
	for _, name := range []string{"curlew", "heron", "siskin", "wren"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			d := opened(t, filepath.Join(exampleFolder, "flawed", name+".wiring.hcl"))
			after, all := d.All()
			for _, x := range all {
				if x.Kind == suggest.Sketch || len(x.Edits) == 0 {
					t.Errorf("accepted: %s for %s", x.Kind, x.Finding.Rule.ID)
				}
			}
			for _, x := range all {
				for _, n := range x.Clears { // by the numbers that the reader has
					if f := d.Report.Findings[n-1]; found(after.Report)[key(f)] {
						t.Errorf("finding %d, %s, is said to be gone with %q, and stands", n, key(f), x.Steps)
					}
				}
			}
			if text := whole(t, d, all); string(text) != string(after.Src) {
				t.Error("the edits one after the other do not give the proposal's text")
			}
			if worse := worsened(d.Report, after.Report); len(worse) > 0 {
				t.Errorf("worse: %q", worse)
			}
			open := map[string]bool{}
			for _, f := range after.Report.Findings {
				what := name + " " + f.Rule.ID + " " + f.Verdict.Subject.Header().Addr
				open[what] = true
				if f.Waived == nil && f.Verdict.Outcome == lint.Violated && left[what] == "" {
					t.Errorf("left: %s %s: %s", f.Severity, what, f.Message())
				}
			}
			for what := range left {
				if strings.HasPrefix(what, name+" ") && !open[what] {
					t.Errorf("it is said to be left, and is gone: %s", what)
				}
			}
			if after.Report.Reaches(lint.Warning) {
				t.Error("the proposal does not pass at warning")
			}
		})
	}
}

// whole applies the edits of accepted suggestions one after the other.
func whole(t *testing.T, d *suggest.Desk, all []suggest.Accepted) []byte {
	t.Helper()
	text := d.Src
	for _, x := range all {
		next, err := suggest.Apply(text, x.Edits)
		if err != nil {
			t.Fatal(err)
		}
		text = next
	}
	return text
}

// worsened lists what a report finds of a part that an earlier one did not, or found less grave: written
// apart from what the suggestions are made by. Notices of the rules that look at the plan's own guesses are
// left out: a suggestion for something graver may bring one, and says so.
func worsened(was, is *check.Report) []string {
	grades := func(r *check.Report) map[string]int {
		out := map[string]int{}
		for id, vs := range r.Verdicts {
			for _, v := range vs {
				k := id + " " + v.Subject.Header().Addr + " " + v.Cause
				if v.Outcome != lint.Holds && (v.Word > lint.Notice || !strings.HasPrefix(id, "plan/")) {
					out[k] = max(out[k], int(v.Word))
				}
			}
		}
		return out
	}
	before := grades(was)
	var out []string
	for k, g := range grades(is) {
		if g > before[k] {
			out = append(out, fmt.Sprintf("%s: %d, was %d", k, g, before[k]))
		}
	}
	return out
}

// TestFirstAdvice holds the first suggestion for some findings against what the trade would do, as the remedies in
// the rules' own words have it (common practice): a feed ahead of the switch before a second layer, the load's own
// wire before the battery's, the part that is wrong before its neighbours.
func TestFirstAdvice(t *testing.T) {
	want := map[string]string{
		"wren life-safety/alarm-can-be-switched-off branch.alarm.load.alarm":       `Feed "Gas and monoxide alarm" from "House post, ahead of the switch".`,
		"wren overcurrent/oversize-device branch.water.fuse":                       `Fit "4 Water pump, 30 A" as a device of 20 A.`,
		"wren conductor/voltage-drop branch.alarm.load.alarm":                      `Lay "Gas and monoxide alarm" in 12 AWG.`,
		"siskin life-safety/alarm-can-be-switched-off branch.alarm.load.gas_alarm": `Put "Step-down, 15 A" right on "48 V bus", and take "step_down_tap" away. Fit "Step-down, 15 A" as a cartridge fuse for solar strings of the same rating, made for 1 000 V dc and 10 kA.`,
		"siskin solar/cold-voltage converter.tracker":                              `Put one module fewer in series in "South roof": 3.`,
	}
	for _, name := range []string{"siskin", "wren"} {
		d := opened(t, filepath.Join(exampleFolder, "flawed", name+".wiring.hcl"))
		for _, f := range d.Report.Findings {
			what := name + " " + f.Rule.ID + " " + f.Verdict.Subject.Header().Addr
			if want[what] == "" {
				continue
			}
			if ways := d.Best(f); !ways.Good() || strings.Join(ways.List[0].Steps, " ") != want[what] {
				t.Errorf("%s: %q, want %q", what, reasons(ways.List), want[what])
			}
			delete(want, what)
		}
	}
	for what := range want {
		t.Errorf("not found any more: %s", what)
	}
}

// TestProposalDoesNotTurnOnTheOrder has the blocks of a plan in another order: the proposal is the same.
func TestProposalDoesNotTurnOnTheOrder(t *testing.T) {
	for _, name := range []string{"siskin", "wren"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			path := filepath.Join(exampleFolder, "flawed", name+".wiring.hcl")
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			reader, err := (&files.Reader{}).Instead(path, turned(src))
			if err != nil {
				t.Fatal(err)
			}
			d, diags := suggest.New(path, reader, rules.All(), today())
			if len(diags) > 0 {
				t.Fatal(diags)
			}
			if a, b := proposed(opened(t, path)), proposed(d); !slices.Equal(a, b) {
				t.Errorf("the lines of the two proposals differ:\n%s", suggest.Unified(name, []byte(strings.Join(a, "")), []byte(strings.Join(b, ""))))
			}
		})
	}
}

// proposed are the lines of a plan after its proposal, sorted.
func proposed(d *suggest.Desk) []string {
	after, _ := d.All()
	out := strings.SplitAfter(strings.TrimSpace(string(after.Src))+"\n", "\n")
	out = slices.DeleteFunc(out, func(l string) bool { return strings.TrimSpace(l) == "" })
	slices.Sort(out)
	return out
}

// turned writes the top-level blocks of a plan, with the comments above them, in the opposite order.
func turned(src []byte) []byte {
	blocks := strings.SplitAfter(string(src), "\n}\n")
	slices.Reverse(blocks)
	return []byte(strings.Join(blocks, "\n"))
}
