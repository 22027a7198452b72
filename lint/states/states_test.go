package states

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ferrule/lint/explore"
	"ferrule/schema"
)

const source = `
source "pack" {
  label      = "Pack"
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "100 Ah"
  resistance = "10 mohm"
  removable  = true
}
source "aux" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}
`

const selector = `
switch "house_select" {
  label      = "House select"
  terminals  = ["pack", "aux", "house"]
  transition = "make-before-break"
  position "off" {
  }
  position "pack" {
    joins = [["pack", "house"]]
  }
  position "aux" {
    joins = [["aux", "house"]]
  }
}
conductor "pack_run" {
  from   = source.pack
  to     = switch.house_select.pack
  size   = "8 AWG"
  length = "10 m"
}
conductor "aux_run" {
  from   = source.aux
  to     = switch.house_select.aux
  size   = "8 AWG"
  length = "1 m"
}
bus "house" {
}
conductor "house_run" {
  from   = switch.house_select.house
  to     = bus.house
  size   = "8 AWG"
  length = "1 m"
}
conductor "lamp_run" {
  from   = bus.house
  to     = load.lamp
  size   = "14 AWG"
  length = "1 m"
}
load "lamp" {
  resistance = "1 ohm"
}
interlock "gate" {
  label = "Pack gate"
  never = [{ switch.house_select = "pack", source.pack = "absent" }]
}
`

// lone is a pack of 10 mohm with 10 m of 8 AWG at 75 C to a load.
func lone(load string) string {
	return "system \"lone\" {\n  ambient = \"75 C\"\n}\n" + strings.Split(source, "source \"aux\"")[0] + fmt.Sprintf(`
conductor "run" {
  from       = source.pack
  to         = load.lamp
  size       = "8 AWG"
  length     = "10 m"
  insulation = "105 C"
}
load "lamp" {
  kind          = "electronics"
  rated_voltage = "12 V"
  %s
}
`, load)
}

func gull() string { return "system \"gull\" {\n  title = \"Gull\"\n}\n" + source + selector }

func survey(t testing.TB, text string) *Survey {
	t.Helper()
	plan, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatalf("%v\n%s", diags, text)
	}
	s, diags := New(plan, nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return s
}

func noHint(string, []string) string { return "" }

func ask(t testing.TB, s *Survey, at ...string) Wanted {
	t.Helper()
	a, err := s.Ask(at, false, noHint)
	if err != nil {
		t.Fatal(err)
	}
	return Wanted{Ask: a, Limit: 100}
}

func near(t *testing.T, what string, got *Value, want float64) {
	t.Helper()
	if got == nil || math.Abs(got.Value-want) > 0.005*math.Abs(want) {
		t.Errorf("%s is %+v, want %g", what, got, want)
	}
}

// The lamp's volts by Ohm's law. 8 AWG stranded uncoated copper has 2.551 ohm/km at 75 C (NFPA 70
// Chapter 9 Table 8, from memory); a rested lifepo4 cell stands at 3.40 V (common practice).
func TestVoltsByOhmsLaw(t *testing.T) {
	s := survey(t, lone(`resistance = "1 ohm"`))
	l := s.List(ask(t, s, "pack=present"))
	if len(l.States) != 1 || len(l.States[0].Loads) != 1 || l.Total != "2" || l.Distinct != "1" {
		t.Fatalf("%+v", l)
	}
	loop := 1 + 0.010 + 2*(0.02551+2*0.0005)
	x := l.States[0]
	near(t, "the most at the lamp", x.Loads[0].Volts.Most, 4*3.40/loop)
	near(t, "the least at the lamp", x.Loads[0].Volts.Least, 4*2.75/loop)
	near(t, "the most of the pack", x.Feeds[0].Amps.Most, 4*3.40/loop)
	near(t, "the fullest conductor's amps", &x.Fullest[0].Amps, 4*3.40/loop)
	if r := x.Loads[0].Volts; r.Least.Corner != "empty" || r.Most.Corner != "rested" {
		t.Errorf("%+v %+v", r.Least, r.Most)
	}
	q, err := s.Volts("load.lamp", noHint)
	if err != nil {
		t.Fatal(err)
	}
	a := s.Answer(ask(t, s), q).Answers[0]
	if a.Dead != 1 || a.Looked != 2 || a.Most == nil {
		t.Fatalf("%+v", a)
	}
	near(t, "the answer", &Value{Value: a.Most.Value}, 4*3.40/loop)
	if math.Abs(a.Most.Number.Value-a.Most.Value) > 1e-3 || len(a.Most.Number.From) == 0 {
		t.Errorf("the derivation is of %g, the answer is %g", a.Most.Number.Value, a.Most.Value)
	}
}

// By the maximum power transfer theorem (any textbook of circuits) a source of E behind R brings at
// most E^2/4R; a load of constant power beyond that has no operating point, up to that share of it.
func TestNoOperatingPoint(t *testing.T) {
	s := survey(t, lone("power = \"1 kW\"\n  behavior = \"constant-power\""))
	l := s.List(ask(t, s, "pack=present"))
	x := l.States[0]
	r := 0.010 + 2*(0.02551+2*0.0005)
	if len(x.NoPoint) != 3 || x.NoPoint[0].Corner != "empty" || math.Abs(x.NoPoint[0].Share-11*11/(4*r)/1000) > 0.01 {
		t.Fatalf("%+v, want a share of %g when empty", x.NoPoint, 11*11/(4*r)/1000)
	}
	if v := x.Loads[0].Volts; v.Least != nil || v.Most != nil || len(v.NoPoint) != 3 {
		t.Errorf("a number without an operating point: %+v", v)
	}
	if len(x.Fullest) > 0 || x.Feeds[0].Amps.Least != nil {
		t.Errorf("amps without an operating point: %+v", x)
	}
	q, _ := s.Amps("conductor.run", noHint)
	a := s.Answer(ask(t, s), q).Answers[0]
	if a.Most != nil || len(a.NoPoint) != 3 || a.Looked != 2 {
		t.Errorf("%+v", a)
	}
}

func state(x *State) string {
	var out []string
	for _, p := range x.At {
		out = append(out, p.Addr+"="+p.Position)
	}
	return strings.Join(out, " ")
}

func TestStates(t *testing.T) {
	s := survey(t, gull())
	l := s.List(ask(t, s))
	var got []string
	for _, x := range l.States {
		line := state(x) + ":"
		for _, d := range x.Dark {
			line += " dark " + d.Header().Name
		}
		for _, f := range x.Feeds {
			for _, b := range f.To {
				line += " " + f.From.Header().Name + ">" + b.Header().Name
			}
		}
		for _, term := range x.Terminals {
			if term.Open {
				line += " open " + term.Place
			}
		}
		got = append(got, line)
	}
	want := []string{
		"source.pack=absent switch.house_select=off: dark lamp open switch.house_select.aux",
		"source.pack=present switch.house_select=off: dark lamp open switch.house_select.pack open switch.house_select.aux",
		"source.pack=present switch.house_select=pack: pack>house pack>lamp open switch.house_select.aux",
		"source.pack=absent switch.house_select=aux: aux>house aux>lamp",
		"source.pack=present switch.house_select=aux: aux>house aux>lamp open switch.house_select.pack",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") || l.Total != "5" || l.Distinct != "5" || l.More || !l.Complete {
		t.Errorf("%+v\n%s", l, strings.Join(got, "\n"))
	}
}

func TestTransits(t *testing.T) {
	s := survey(t, gull())
	l := s.List(ask(t, s, "house_select = AUX > pack"))
	if len(l.States) != 1 || len(l.Held) != 2 || l.Held[1].Position != "pack>aux (overlap)" || !l.Transits {
		t.Fatalf("%+v", l)
	}
	if f := l.States[0].Feeds; len(f) != 2 || len(f[0].To) != 2 || len(f[1].To) != 2 || f[1].Amps.Least.Value > -1 {
		t.Errorf("both batteries are on the house, and the lower one takes current: %+v", f)
	}
	w := ask(t, s)
	w.Transits = true
	if l = s.List(w); l.Distinct != "6" || l.Total != "5" {
		t.Errorf("%s different ones of %s", l.Distinct, l.Total)
	}
}

func TestLimit(t *testing.T) {
	s := survey(t, gull())
	w := ask(t, s)
	w.Limit = 2
	if l := s.List(w); len(l.States) != 2 || !l.More || !l.Complete || l.Distinct != "5" {
		t.Errorf("%+v", l)
	}
	w.Limit = 100
	s.Space.Stop = func() bool { return true }
	q, _ := s.Volts("load.lamp", noHint)
	for _, l := range []*Listing{s.List(w), s.Answer(w, q)} {
		if l.Complete || len(l.States) > 0 {
			t.Errorf("a stopped search passes for whole: %+v", l)
		}
	}
	s.Space.Stop, s.Space.Bound = nil, 3
	if l := s.List(w); l.Complete || l.Distinct != "5" {
		t.Errorf("a search that was cut passes for whole: %+v", l)
	}
}

func TestAtSaysWhatIsWrong(t *testing.T) {
	s := survey(t, gull())
	hint := func(word string, known []string) string { return " <" + strings.Join(known, " ") + ">" }
	for at, want := range map[string]string{
		"":                                 `"" is no position`,
		"house_select":                     `"house_select" is no position; write it like`,
		"hose=off":                         `is called "hose" <pack source.pack house_select switch.house_select>`,
		"house_select=of":                  `switch.house_select has no position "of" <off pack aux pack>aux (overlap)>; it has off, pack, aux and "pack>aux (overlap)"`,
		"aux=present":                      "source.aux has no positions",
		"load.lamp=on":                     "load.lamp has no positions",
		"pack=absent,pack=there":           `no position "there"`,
		"pack=absent, source.pack=present": "source.pack is given two positions",
		"pack=absent,House select=pack":    `excluded by "Pack gate" (interlock.gate)`,
		"pack=absent,house_select=pack>aux (overlap)":            `excluded by "Pack gate" (interlock.gate)`,
		"house_select=pack>aux,house_select=off":                 "given two positions",
		"house_select=off,house_select=pack>aux":                 "given two positions",
		"house_select=pack>aux,house_select=pack>aux (overlap) ": "given two positions",
	} {
		_, err := s.Ask([]string{at}, false, hint)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", at, err, want)
		}
	}
}

func TestFollowerExcludes(t *testing.T) {
	s := survey(t, gull()+"connector \"dock\" {\n  follows = source.pack\n}\n")
	_, err := s.Ask([]string{"dock=unmated,pack=present"}, false, noHint)
	if err == nil || !strings.Contains(err.Error(), "connector.dock follows source.pack") {
		t.Error(err)
	}
	l := s.List(ask(t, s, "dock=mated"))
	if len(l.Held) != 1 || l.Held[0].Position != "present" || l.States[0].Followers[0].Position != "mated" {
		t.Errorf("%+v", l.Held)
	}
}

// What is left out of one circuit silences that circuit only, and only where current runs.
func TestMissingStaysWhereItMatters(t *testing.T) {
	s := survey(t, strings.Replace(gull(), "length = \"10 m\"", "", 1))
	known := map[string]bool{}
	for _, x := range s.List(ask(t, s, "pack=present")).States {
		known[state(x)] = len(x.Missing) == 0
		for _, d := range x.Loads {
			if (d.Volts.Least != nil) != (len(x.Missing) == 0) {
				t.Errorf("%s: %+v with %v missing", state(x), d.Volts, x.Missing)
			}
		}
	}
	if !known["switch.house_select=aux"] || known["switch.house_select=pack"] || !known["switch.house_select=off"] {
		t.Errorf("%v", known)
	}
	q, _ := s.Volts("load.lamp", noHint)
	a := s.Answer(ask(t, s), q).Answers[0]
	if a.Unknown != 1 || len(a.Missing) != 1 || a.Missing[0].Subject != "conductor.pack_run" {
		t.Errorf("%+v", a)
	}
	// One node of the negative may carry anybody's current.
	q, _ = s.Volts("switch.house_select.house.neg", noHint)
	if a := s.Answer(ask(t, s, "house_select=pack"), q).Answers[0]; a.Most != nil || a.Unknown != 1 {
		t.Errorf("%+v", a)
	}
}

func TestQuestions(t *testing.T) {
	s := survey(t, gull()+"converter \"boost\" {\n  kind = \"dc-dc\"\n}\n")
	for word, want := range map[string]string{
		"load.lamb": `no terminal "load.lamb"`, "lamp": "its word is in load.lamp", "switch.house_select": "which: switch.house_select.aux, ",
		"conductor.pack_run": "is no terminal",
	} {
		if _, err := s.Volts(word, noHint); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", word, err)
		}
	}
	for word, want := range map[string]string{"conductor.pck": `no part "conductor.pck"`, "bus.house": "no current runs through bus.house", "converter.boost": "which: converter.boost.in or converter.boost.out"} {
		if _, err := s.Amps(word, noHint); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", word, err)
		}
	}
	at := ask(t, s, "house_select=aux", "pack=present")
	amps := map[string]float64{}
	for _, word := range []string{"source.aux", "conductor.aux_run", "switch.house_select", "load.lamp", "source.pack", "conductor.pack_run"} {
		q, err := s.Amps(word, noHint)
		if err != nil {
			t.Fatal(err)
		}
		a := s.Answer(at, q).Answers[0]
		if a.Most == nil {
			t.Fatalf("%s: %+v", word, a)
		}
		amps[word] = a.Most.Value
	}
	for _, same := range []string{"conductor.aux_run", "switch.house_select", "load.lamp"} {
		if i := amps["source.aux"]; i < 5 || math.Abs(amps[same]-i) > 1e-6*i {
			t.Errorf("%v: one loop has one current", amps)
		}
	}
	if amps["source.pack"] != 0 || amps["conductor.pack_run"] != 0 {
		t.Errorf("%v: the pack is not joined to anything", amps)
	}
	q, _ := s.Volts("load.lamp", noHint)
	if a := s.Answer(ask(t, s, "house_select=off"), q).Answers[0]; a.Most != nil || a.Dead != 2 {
		t.Errorf("a dead terminal has no volts: %+v", a)
	}
}

// Every example in its first states: no number is anything but finite, and none stands beside a
// corner without a point that is not told.
func TestExamples(t *testing.T) {
	paths, _ := filepath.Glob("../../examples/*.wiring.hcl")
	if len(paths) < 4 {
		t.Fatal(paths)
	}
	for _, path := range paths {
		s := example(t, path)
		for _, x := range s.List(Wanted{Limit: 25, Ask: explore.Ask{Transits: true}}).States {
			if len(x.Loads)+len(x.Dark) == 0 {
				t.Errorf("%s %s: no load at all", path, state(x))
			}
			for _, d := range x.Terminals {
				r := d.Volts
				if len(r.NoPoint) != len(x.NoPoint) && len(r.Missing) == 0 {
					t.Errorf("%s %s: %s does not tell of %+v", path, state(x), d.Place, x.NoPoint)
				}
				if r.Least != nil && (math.IsNaN(r.Least.Value) || math.IsInf(r.Most.Value, 0) || r.Least.Value > r.Most.Value) {
					t.Errorf("%s: %+v %+v", d.Place, r.Least, r.Most)
				}
			}
		}
	}
}

// A plan of 2^70 states comes back at once, and says that there are more.
func TestVeryManyStates(t *testing.T) {
	var b strings.Builder
	b.WriteString("system \"t\" {\n}\n" + source)
	for i := range 70 {
		fmt.Fprintf(&b, "switch \"s%d\" {\n  terminals = [\"a\", \"b\"]\n}\nconductor \"w%d\" {\n  from = source.aux\n  to = switch.s%d.a\n  size = \"10 AWG\"\n  length = \"1 m\"\n}\n", i, i, i)
	}
	s := survey(t, b.String())
	start := time.Now()
	l := s.List(Wanted{Limit: 20})
	if len(l.States) != 20 || !l.More || !l.Complete || l.Total != "2361183241434822606848" || l.Distinct != l.Total {
		t.Errorf("%d states of %s, %v %v", len(l.States), l.Total, l.More, l.Complete)
	}
	if d := time.Since(start); d > 20*time.Second {
		t.Errorf("it took %s", d)
	}
}
