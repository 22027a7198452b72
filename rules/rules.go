// Package rules joins the families of rules. It decides nothing else.
package rules

import (
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/rules/ac"
	"ferrule/rules/backfeed"
	"ferrule/rules/bonding"
	"ferrule/rules/charging"
	"ferrule/rules/conductor"
	"ferrule/rules/connector"
	"ferrule/rules/converter"
	lifesafety "ferrule/rules/life-safety"
	"ferrule/rules/load"
	"ferrule/rules/overcurrent"
	"ferrule/rules/plan"
	"ferrule/rules/solar"
	"ferrule/rules/source"
	"ferrule/rules/switching"
)

// All lists every rule, by id.
func All() []*lint.Rule {
	all := slices.Concat(ac.Rules, backfeed.Rules, bonding.Rules, charging.Rules, conductor.Rules, connector.Rules, converter.Rules, lifesafety.Rules, load.Rules,
		overcurrent.Rules, plan.Rules, solar.Rules, source.Rules, switching.Rules)
	slices.SortFunc(all, func(a, b *lint.Rule) int { return strings.Compare(a.ID, b.ID) })
	return all
}
