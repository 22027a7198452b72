package derive_test

import (
	"testing"

	"ferrule/lint/derive"
)

func TestText(t *testing.T) {
	for _, c := range []struct {
		value float64
		unit  string
		want  string
	}{
		{0.82, "", "0.82"},
		{3, "", "3"},
		{1.3225e6, "A2s", "1 320 000 A2s"},
		{0.0033, "ohm/m", "0.0033 ohm/m"},
		{0.25, "A/Ah", "0.25 A/Ah"},
		{1420, "A", "1 420 A"},
		{0.006, "ohm", "6 mohm"},
		{-0.003, "1/C", "-0.3 %/C"},
		{40, "C", "40 C"},
	} {
		if got := derive.Text(c.value, c.unit); got != c.want {
			t.Errorf("%g %q prints %q, want %q", c.value, c.unit, got, c.want)
		}
	}
}

func TestStepsAreOrderedAndOnce(t *testing.T) {
	r := derive.Assume("r", "r", 2, "ohm", "source.pack", "resistance", "common practice")
	a := derive.Compute("a", "a", 4, "V", "a = 2 r", r)
	b := derive.Compute("b", "b", 6, "V", "b = a + r", a, r)
	var got string
	steps := derive.Steps(b, a)
	for _, s := range steps {
		got += s.Quantity
	}
	if got != "rab" {
		t.Errorf("steps %q, want what went in before what came out, each once: \"rab\"", got)
	}
	if s := steps[0]; s.Kind != derive.Assumption || s.Subject != "source.pack" || s.Attribute != "resistance" || s.Source != "common practice" {
		t.Errorf("an assumption lost what it stands for: %+v", s)
	}
}

// The same name with another value is another step: nothing that differs is merged.
func TestStepsKeepWhatDiffers(t *testing.T) {
	a := derive.LookUp("factor", "k", 0.82, "", "a table")
	b := derive.LookUp("factor", "k", 0.75, "", "a table")
	if n := len(derive.Steps(a, b, a)); n != 2 {
		t.Errorf("%d steps, want 2", n)
	}
}

// A derivation whose steps share their inputs has 2^60 ways through it; a walk takes each part once.
func TestWalkOfSharedInputs(t *testing.T) {
	n := derive.Compute("0", "n", 0, "A", "n")
	for i := range 60 {
		n = derive.Compute("twice", "n", float64(i+1), "A", "n + n", n, n)
	}
	if got := len(derive.Steps(n)); got != 61 {
		t.Errorf("%d steps, want 61", got)
	}
}
