package check

import (
	"maps"
	"slices"
	"sync"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Kept remembers what rules answered of the plans that were asked last, over runs with the same options: who
// tries an edit asks one rule of it, then more. Runs side by side may share it.
type Kept struct {
	mu     sync.Mutex
	list   []*answers // the last first
	memory circuit.Memory
}

// mostKept is how many plans are remembered: as many as are looked at side by side.
const mostKept = 4

// answers are what rules said of one plan. Those that review others said it of just those rules.
type answers struct {
	plan     *schema.Plan
	space    *explore.Space // nil before the first run
	pass     *lint.Pass
	memory   *circuit.Memory
	diags    hcl.Diagnostics
	said     map[*lint.Rule][]lint.Verdict
	reviewed []*lint.Rule
}

// take gives what is known of a plan, to one run at a time.
func (k *Kept) take(p *schema.Plan) *answers {
	a := &answers{plan: p, said: map[*lint.Rule][]lint.Verdict{}, memory: &circuit.Memory{}}
	if k != nil {
		a.memory = &k.memory
		k.mu.Lock()
		defer k.mu.Unlock()
		if i := slices.IndexFunc(k.list, func(a *answers) bool { return a.plan == p }); i >= 0 {
			a = k.list[i]
			k.list = slices.Delete(k.list, i, i+1)
		}
	}
	return a
}

// put remembers the answers of a run that was finished.
func (k *Kept) put(a *answers) {
	if k != nil {
		k.mu.Lock()
		defer k.mu.Unlock()
		k.list = slices.Insert(k.list, 0, a)
		k.list = k.list[:min(len(k.list), mostKept)]
	}
}

// build prepares the network and the states of the plan, if that is not done.
func (r *run) build() {
	k := r.known
	if k.space != nil {
		r.net, r.space = k.space.Net, k.space
		return
	}
	net, diags := network.Build(r.plan)
	r.net, r.space = net, explore.New(net, r.opt.Bound)
	r.space.Stop, r.space.Halts, r.space.Plain = r.opt.Stop, true, r.opt.Plain
	k.space, k.pass, k.diags = r.space, r.pass(r.space, lint.Guesses{}), diags
	if !diags.HasErrors() {
		k.diags = append(diags, stateless(r.plan, r.space)...)
	}
}

// once answers a rule that was not asked before.
func (r *run) once(rule *lint.Rule, question func() []lint.Verdict) []lint.Verdict {
	said, ok := r.known.said[rule]
	if !ok {
		said = r.askOne(rule, question)
		r.known.said[rule] = said
	}
	return said
}

// review forgets what rules said in review of others than these.
func (k *answers) review(rules []*lint.Rule) {
	if !slices.Equal(k.reviewed, rules) {
		k.reviewed = rules
		maps.DeleteFunc(k.said, func(r *lint.Rule, _ []lint.Verdict) bool { return r.Review != nil })
	}
}
