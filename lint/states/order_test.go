package states

import (
	"fmt"
	"testing"

	"ferrule/lint/derive"
)

// Two lamps that are called alike and draw the same differ by their lines alone: what an answer rests
// on is told in one order, whichever way the program happened to gather it.
func TestSameStepsEveryTime(t *testing.T) {
	text := "system \"gull\" {\n}\n" + source + `
conductor "feed" {
  from     = source.pack.pos
  to       = bus.panel.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "3 m"
}
conductor "beside" {
  from     = source.pack.pos
  to       = bus.panel.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "3 m"
}
conductor "home" {
  from     = source.pack.neg
  to       = bus.panel.neg
  polarity = "negative"
  size     = "8 AWG"
  length   = "3 m"
}
bus "panel" {
}
`
	for _, name := range []string{"a", "b", "c", "d"} {
		text += fmt.Sprintf("conductor %q {\n  from = bus.panel\n  to = load.%s\n  size = \"12 AWG\"\n  length = \"2 m\"\n}\n", name, name)
		text += fmt.Sprintf("load %q {\n  label = \"Lamp\"\n  draw = \"5 A\"\n}\n", name)
	}
	steps := func() string {
		s := survey(t, text)
		q, err := s.Volts("load.d", noHint)
		if err != nil {
			t.Fatal(err)
		}
		l := s.Answer(ask(t, s, "pack=present"), q)
		return fmt.Sprint(derive.Steps(l.Answers[0].Least.Number))
	}
	first := steps()
	for range 20 {
		if again := steps(); again != first {
			t.Fatalf("another run tells\n%s\nnot\n%s", again, first)
		}
	}
}
