package main

import (
	"io"

	"github.com/spf13/cobra"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/explain"
	"ferrule/lint/report"
)

func (c *cli) rulesCommand() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use: "rules", Short: "Lists what is looked for",
		Long:    "Rules lists every rule with the highest signal word that it can carry. ferrule explain RULE says the rest.",
		Example: "  ferrule rules\n  ferrule rules --format json",
		Args:    exactly(0, "no arguments"),
		RunE: func(*cobra.Command, []string) error {
			if err := oneOf("format", format, "text", "json"); err != nil {
				return err
			}
			rules := check.Asked(c.rules())
			if format == "json" {
				return report.Encode(c.out, listed(rules))
			}
			_, err := io.WriteString(c.out, report.Rules(rules, style(c.out, "never")))
			return err
		},
	}
	cmd.Flags().StringVar(&format, "format", "text", "text or json")
	complete(cmd, "format", "text", "json")
	return cmd
}

type listedRule struct {
	ID       string           `json:"id"`
	Words    []string         `json:"words"`
	Claim    string           `json:"claim"`
	Subject  string           `json:"subject"`
	When     string           `json:"when"`
	Why      string           `json:"why"`
	Numbers  string           `json:"numbers"`
	Not      string           `json:"not"`
	Offer    string           `json:"offer"`
	Meter    string           `json:"meter"`
	Cites    []listedCitation `json:"citations"`
	Remedy   bool             `json:"remedy"`
	Since    string           `json:"since"`
	Unproven bool             `json:"counts_up_to_warning_unproven"`
}

type listedCitation struct {
	Ref  string `json:"ref"`
	Note string `json:"note"`
}

func listed(rules []*lint.Rule) []listedRule {
	out := []listedRule{}
	for _, r := range rules {
		l := listedRule{ID: r.ID, Words: []string{}, Claim: r.Claim, Subject: r.Subject, When: r.When, Why: r.Why, Numbers: r.Numbers, Not: r.Not,
			Offer: r.Offer, Meter: r.Meter, Cites: []listedCitation{}, Remedy: r.Remedy, Since: r.Since, Unproven: r.Harm}
		for _, w := range r.Words {
			l.Words = append(l.Words, w.String())
		}
		for _, x := range r.Cites {
			l.Cites = append(l.Cites, listedCitation{x.Ref, explain.Standing(x)})
		}
		out = append(out, l)
	}
	return out
}
