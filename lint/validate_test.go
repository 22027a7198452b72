package lint

import (
	"strings"
	"testing"
)

func sound() *Rule {
	return &Rule{
		ID: "x/sound-rule", Claim: "c", Words: []Severity{Warning}, Subject: "s", When: "w", Why: "w", Numbers: "n", Not: "n", Offer: "o",
		Cites: []Citation{{Ref: "common practice", Standing: CommonPractice}}, Since: "0.1", Run: func(*Pass) []Verdict { return nil },
	}
}

func TestValidate(t *testing.T) {
	if err := Validate([]*Rule{sound()}); err != nil {
		t.Error(err)
	}
	if err := Validate([]*Rule{sound(), sound()}); err == nil || !strings.Contains(err.Error(), "two rules") {
		t.Errorf("two rules of one id: %v", err)
	}
	for want, spoil := range map[string]func(*Rule){
		"family/name":     func(r *Rule) { r.ID = "Sound" },
		"Claim":           func(r *Rule) { r.Claim = " " },
		"Not is empty":    func(r *Rule) { r.Not = "" },
		"Offer":           func(r *Rule) { r.Offer = "" },
		"Since":           func(r *Rule) { r.Since = "" },
		"no signal":       func(r *Rule) { r.Words = nil },
		"invalid":         func(r *Rule) { r.Words = []Severity{0} },
		"twice":           func(r *Rule) { r.Words = []Severity{Danger, Danger} },
		"cites nothing":   func(r *Rule) { r.Cites = nil },
		"standing":        func(r *Rule) { r.Cites[0].Standing = 0 },
		"reference":       func(r *Rule) { r.Cites[0].Ref = "" },
		"cannot fold":     func(r *Rule) { r.Folds = []string{r.ID} },
		`fold "x/other "`: func(r *Rule) { r.Folds = []string{"x/other "} },
		"offers edits":    func(r *Rule) { r.Offers = []Offer{nil} },
		"exactly one":     func(r *Rule) { r.Run = nil },
	} {
		r := sound()
		spoil(r)
		if err := Validate([]*Rule{r}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("wanted %q, got %v", want, err)
		}
	}
}
