// Package rules joins the families of rules. It decides nothing else.
package rules

import (
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/rules/backfeed"
	"ferrule/rules/charging"
	"ferrule/rules/conductor"
	lifesafety "ferrule/rules/life-safety"
	"ferrule/rules/overcurrent"
	"ferrule/rules/plan"
	"ferrule/rules/solar"
	"ferrule/rules/source"
	"ferrule/rules/switching"
)

// All lists every rule, by id.
func All() []*lint.Rule {
	all := slices.Concat(backfeed.Rules, charging.Rules, conductor.Rules, lifesafety.Rules,
		overcurrent.Rules, plan.Rules, solar.Rules, source.Rules, switching.Rules)
	slices.SortFunc(all, func(a, b *lint.Rule) int { return strings.Compare(a.ID, b.ID) })
	return all
}
