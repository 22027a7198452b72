package report

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ferrule/lint/states"
	"ferrule/lint/term"
	"ferrule/schema"
)

const skua = `
system "skua" {
  title = "Skua"
}

source "pack" {
  label      = "Pack"
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "100 Ah"
  resistance = "5 mohm"
  removable  = true
}

source "roof" {
  label  = "Roof"
  kind   = "solar"
  always = true
  voc    = "22 V"
  isc    = "6 A"
  vmp    = "18 V"
  imp    = "5.5 A"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  charges        = [source.pack]
  limits_current = true

  output {
    voltage     = "14.2 V"
    current_max = "20 A"
    profile     = "lifepo4"
  }
}

conductor "sun" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "4 m"
}

conductor "charge" {
  label  = "Charge run"
  from   = converter.tracker.out
  to     = bus.main
  size   = "8 AWG"
  length = "1 m"
}

bus "main" {
  label = "Main bus"
}

connector "dock" {
  label   = "Dock"
  follows = source.pack
}

conductor "feed" {
  label  = "Feed"
  from   = source.pack
  to     = connector.dock.free
  size   = "6 AWG"
  length = "1 m"
}

conductor "hold" {
  from   = connector.dock.fixed
  to     = bus.main
  size   = "6 AWG"
  length = "1 m"
}

switch "light" {
  label     = "Lamp"
  terminals = ["a", "b"]
  on        = bus.main
}

conductor "lamp" {
  from   = switch.light.b
  to     = load.lamp
  size   = "14 AWG"
  length = "3 m"
}

load "lamp" {
  label = "Lamp"
  kind  = "light"
  draw  = "2 A"
}

conductor "pump" {
  from = bus.main
  to   = load.pump
  size = "12 AWG"
  SIZE
}

load "pump" {
  label = "Pump"
  kind  = "motor"
  draw  = "5 A"
}
`

func listed(t *testing.T, text string, limit int, at []string, volts, amps string) *states.Listing {
	t.Helper()
	plan, diags := schema.Decode("skua.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	s, diags := states.New(plan, nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	hint := func(string, []string) string { return "" }
	ask, err := s.Ask(at, true, hint)
	if err != nil {
		t.Fatal(err)
	}
	w := states.Wanted{Ask: ask, Limit: limit}
	if volts == "" {
		return s.List(w)
	}
	v, err := s.Volts(volts, hint)
	if err != nil {
		t.Fatal(err)
	}
	a, err := s.Amps(amps, hint)
	if err != nil {
		t.Fatal(err)
	}
	return s.Answer(w, v, a)
}

func whole() string { return strings.Replace(skua, "SIZE", "length = \"3 m\"", 1) }

// cases are listings of all kinds: whole, cut, answered, and with something missing.
func cases(t *testing.T) map[string]*states.Listing {
	huge := strings.Replace(whole(), `draw  = "5 A"`, "power = \"9 kW\"\n  rated_voltage = \"12 V\"\n  behavior = \"constant-power\"", 1)
	return map[string]*states.Listing{
		"states.txt":         listed(t, whole(), 200, nil, "", ""),
		"states-missing.txt": listed(t, strings.Replace(skua, "SIZE", "", 1), 1, []string{"pack=present"}, "", ""),
		"states-asked.txt":   listed(t, whole(), 200, []string{"light=closed"}, "load.lamp", "conductor.feed"),
		"states-hot.txt":     listed(t, strings.Replace(whole(), "title = \"Skua\"", "ambient = \"70 C\"", 1), 1, []string{"pack=present"}, "", ""),
		"states-fold.txt":    listed(t, huge, 200, []string{"pack=present"}, "load.pump", "source.pack"),
	}
}

func statesText(t *testing.T, l *states.Listing, width int) string {
	t.Helper()
	var b strings.Builder
	if err := States(&b, l, Style{Width: width}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestStatesGolden(t *testing.T) {
	for name, l := range cases(t) {
		// How numbers come about is the page of another room.
		got, _, _ := strings.Cut(statesText(t, l, 80), "\nHow the ")
		file := "testdata/" + name
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(string(want), got); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

func TestStatesJSONMeetsItsSchema(t *testing.T) {
	var b bytes.Buffer
	if err := StatesJSON(&b, "test", nil, errorsOf(t, "bad.wiring.hcl", "system {")); err != nil {
		t.Fatal(err)
	}
	meets(t, StatesSchema, &b)
	for name, l := range cases(t) {
		b.Reset()
		if err := StatesJSON(&b, "test", l, nil); err != nil {
			t.Fatal(name, err)
		}
		text := b.String()
		meets(t, StatesSchema, &b)
		var got jsonListing
		if err := json.Unmarshal([]byte(text), &got); err != nil {
			t.Fatal(err)
		}
		if got.Plan == nil || len(got.Plan.Listed) != len(l.States) || len(got.Plan.Questions) != len(l.Answers) {
			t.Errorf("%s: %d states and %d answers", name, len(got.Plan.Listed), len(got.Plan.Questions))
		}
	}
}

// What a plan's text could do to a terminal it does not do, at any width.
func TestStatesAreEscapedAndFit(t *testing.T) {
	evil := strings.NewReplacer(`"Pack"`, `"P\u001b[31m\u202e`+strings.Repeat("x", 120)+`"`, `"Lamp"`, `"a\nDANGER b"`, `"Skua"`, `"\u0007"`).Replace(whole())
	for _, width := range []int{40, 80} {
		for _, l := range []*states.Listing{listed(t, evil, 200, nil, "", ""), listed(t, evil, 200, nil, "load.lamp", "source.pack")} {
			for line := range strings.Lines(statesText(t, l, width)) {
				line = strings.TrimSuffix(line, "\n")
				if strings.ContainsFunc(line, func(r rune) bool { return !term.Shown(r) }) || strings.HasPrefix(line, "DANGER") {
					t.Errorf("%q", line)
				}
				if term.Width(line) > width {
					t.Errorf("%d columns: %s", term.Width(line), line)
				}
			}
			var b bytes.Buffer
			if err := StatesJSON(&b, "test", l, nil); err != nil {
				t.Fatal(err)
			}
			if strings.ContainsFunc(b.String(), func(r rune) bool { return r != '\n' && !term.Shown(r) }) {
				t.Error("the JSON steers a terminal")
			}
		}
	}
}
