package suggest

import (
	"errors"
	"sync/atomic"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
	"ferrule/schema/files"
)

// Desk is a plan on which suggestions are worked out.
type Desk struct {
	Path   string
	Src    []byte
	Plan   *schema.Plan
	Report *check.Report // what all rules say of it

	reader  *files.Reader
	rules   []*lint.Rule
	opt     check.Options
	page    *page
	pass    *lint.Pass
	before  compare.Answers
	service service
	inOrder bool         // the parts of plans that are read are put in order
	stopped *atomic.Bool // of all desks of one plan
}

// Stopped says whether a search was told to end before it was through.
func (d *Desk) Stopped() bool { return d.stopped.Load() }

// errUnread says that a text is no sound plan: no verdict can be had of it.
var errUnread = errors.New("the plan cannot be read")

// New reads and checks a plan. The diagnostics say why it cannot be worked on, where it cannot.
func New(path string, reader *files.Reader, rules []*lint.Rule, opt check.Options) (*Desk, hcl.Diagnostics) {
	d := &Desk{Path: path, reader: reader, rules: rules, opt: opt, stopped: &atomic.Bool{}}
	d.opt.Kept = &check.Kept{}
	if stop := opt.Stop; stop != nil {
		d.opt.Stop = func() bool {
			if stop() {
				d.stopped.Store(true)
			}
			return d.stopped.Load()
		}
	}
	var diags hcl.Diagnostics
	if d.Plan, diags, d.Src = reader.Load(path); len(diags) > 0 || d.Plan.Kit != nil {
		return d, diags
	}
	d.Report = check.Run(d.Plan, rules, d.opt)
	if len(d.Report.Diagnostics) > 0 {
		return d, d.Report.Diagnostics
	}
	d.open()
	return d, nil
}

// open prepares a checked plan for proposals.
func (d *Desk) open() {
	d.before = compare.Of(d.Report)
	d.page, _ = newPage(d.Path, d.Src)                                     // nil for a plan in JSON: nothing is placed in it
	if net, diags := network.Build(d.Plan.Ordered()); !diags.HasErrors() { // what is proposed does not turn on where parts stand
		d.pass = lint.NewPass(net, explore.New(net, d.opt.Bound), lint.Guesses{}, d.opt.Today)
		d.service = serviceOf(d.pass)
	}
}

// sorted is the desk with the parts of the plan in the order of their addresses, checked so: what is found does not turn on
// where they stand in the file then, not even between equals.
func (d *Desk) sorted() *Desk {
	out := d.after(d.Src, d.Plan.Ordered())
	out.inOrder = true
	out.Report = check.Run(out.Plan, d.rules, d.opt)
	out.open()
	return out
}

// read gives the plan that a text would be.
func (d *Desk) read(src []byte) (*schema.Plan, error) {
	r, err := d.reader.Instead(d.Path, src)
	if err != nil {
		return nil, err
	}
	plan, diags, _ := r.Load(d.Path)
	if diags.HasErrors() {
		return nil, errUnread
	}
	if d.inOrder {
		plan = plan.Ordered()
	}
	return plan, nil
}

// after is the desk with another text on it, not checked yet.
func (d *Desk) after(src []byte, plan *schema.Plan) *Desk {
	return &Desk{Path: d.Path, Src: src, Plan: plan, reader: d.reader, rules: d.rules, opt: d.opt, stopped: d.stopped, inOrder: d.inOrder}
}

// runs are the rules that a run without reviews asks: those look at the others again and again.
func runs(rules []*lint.Rule) []*lint.Rule {
	var out []*lint.Rule
	for _, r := range rules {
		if r.Run != nil {
			out = append(out, r)
		}
	}
	return out
}
