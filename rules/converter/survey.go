package converter

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// puller is a part that may draw a constant power, with the worst that was found for it.
type puller struct {
	p        *lint.Pass
	block    schema.Block
	port     network.Port
	home     *network.Zone // where it is asked; nil where it is not
	least    derive.Number // lowest volts it works at; Kind 0 where not known
	limited  bool          // its input folds back at a limit of its own
	worst    stand
	lacks    []lint.Missing
	complete bool
}

// trouble orders what can be wrong, worst last.
type trouble int

const (
	nothing trouble = iota
	over            // more current than something on the way bears for long
	steep
	belowMin
	folds
)

// stand is how a puller stands in one state.
type stand struct {
	trouble trouble
	low     *circuit.Low
	pull    circuit.Pull
	way     circuit.Way
	limit   derive.Number // that is passed
	weak    schema.Block  // whose it is
	hot     bool          // a wire sheds less than it draws, and no device holds that
}

// survey asks all pullers of a plan, zone by zone and state by state.
type survey struct {
	p       *lint.Pass
	pullers []*puller // converters, then loads
	done    map[*network.Zone]bool
	izs     map[*schema.Conductor]derive.Number
}

func newSurvey(p *lint.Pass) *survey {
	s := &survey{p: p, done: map[*network.Zone]bool{}, izs: map[*schema.Conductor]derive.Number{}}
	for i := range p.Net.Converters {
		x := &p.Net.Converters[i]
		q := &puller{p: p, block: x.Converter, port: x.In, complete: true, limited: x.Input != nil && x.Input.CurrentMax.Set}
		if x.Input != nil && x.Input.VoltageMin.Set {
			q.least = derive.Read("lowest input volts of "+lint.Quote(x.Converter), "Vmin", x.Input.VoltageMin.Value, "V", x.Addr, "input voltage_min", x.Input.VoltageMin.Range)
		}
		if z := p.Net.ZoneOf(x.In.Hot); z != nil && !z.AC && x.Kind.Value != "diode" {
			q.home = p.Circuit.LowZone(z)
		}
		s.pullers = append(s.pullers, q)
	}
	for i := range p.Net.Loads {
		x := &p.Net.Loads[i]
		q := &puller{p: p, block: x.Load, port: x.Port, complete: true, limited: true}
		if z := p.Net.ZoneOf(x.Hot); z != nil && !z.AC {
			q.home = p.Circuit.LowZone(z)
		}
		s.pullers = append(s.pullers, q)
	}
	return s
}

// of is the puller that a pull is of.
func (s *survey) of(x *circuit.Pull) *puller {
	if x.Converter >= 0 {
		return s.pullers[x.Converter]
	}
	return s.pullers[len(s.p.Net.Converters)+x.Load]
}

func (s *survey) zone(z *network.Zone) {
	left := circuit.MostLows
	for _, o := range s.p.Circuit.Occasions(z) {
		for _, v := range o.Views {
			if left--; v.Transit == nil && left > 0 {
				s.state(v, o.Runs)
			}
		}
		for _, q := range s.pullers {
			q.complete = q.complete && (o.Complete && left > 0 || q.home != z)
		}
	}
}

func (s *survey) state(v *explore.View, runs func(int) bool) {
	k := circuit.LowCase{Runs: runs}
	low := s.p.Circuit.Low(v, k)
	met := map[*puller]bool{}
	s.noteAll(low, met, nil)
	for _, i := range v.Zone.Inputs {
		if x := &s.p.Net.Converters[i]; x.Trigger.Set && !x.Trigger.Ignition {
			if low, ok := s.p.Circuit.Started(v, k, i); ok {
				s.noteAll(low, met, s.pullers[i])
			}
		}
	}
	for _, q := range s.pullers {
		if q.home == v.Zone && !met[q] {
			q.lack(unmet(low, q))
		}
	}
}

// noteAll notes the pulls of a state, or those of one part.
func (s *survey) noteAll(low *circuit.Low, met map[*puller]bool, only *puller) {
	for i := range low.Pulls {
		if q := s.of(&low.Pulls[i]); only == nil || q == only {
			met[q] = true
			s.note(q, stand{low: low, pull: low.Pulls[i]})
		}
	}
}

// note keeps a state that is worse than those before.
func (s *survey) note(q *puller, w stand) {
	if q.home != w.low.View.Zone {
		return
	}
	if w.pull.Short || w.low.Starved(q.port) {
		return
	}
	if w.pull.Unsure {
		q.lack([]lint.Missing{{Subject: "plan", Attribute: "a solution of its circuit"}})
		return
	}
	q.lack(bearing(w.low, q))
	s.judge(q, &w)
	o := &q.worst
	if o.low == nil || w.trouble > o.trouble || w.trouble == o.trouble && (w.hot && !o.hot || w.hot == o.hot && lower(&w, o)) {
		q.worst = w
	}
}

func lower(a, b *stand) bool {
	if a.trouble == folds {
		return a.pull.Share < b.pull.Share
	}
	return a.pull.Volts < b.pull.Volts
}

func (q *puller) lack(more []lint.Missing) {
	for _, m := range more {
		if !slices.Contains(q.lacks, m) {
			q.lacks = append(q.lacks, m)
		}
	}
}

// lossy is the share of the volts above which what is lost on the way, and not an empty battery, makes
// a converter fall out.
const lossy = 0.1

// judge says what is wrong with a stand.
func (s *survey) judge(q *puller, w *stand) {
	switch {
	case w.pull.Folds:
		w.trouble = folds
	case q.least.Kind != 0 && w.pull.Volts < q.least.Value*(1-1e-9) && w.low.Terminals(q.port)-w.pull.Volts > lossy*w.low.Open(q.port):
		w.trouble, w.limit = belowMin, q.least
	case w.low.Steep(&w.pull):
		w.trouble = steep
	}
	if w.trouble == nothing && q.limited {
		return
	}
	w.way, _ = w.low.Way(q.port)
	for _, e := range w.way.Edges {
		s.bears(q, w, e)
	}
}

// longShare is the part of a device's rating that it carries for hours.
const longShare = 0.8

// bears holds one edge of the way against the current.
func (s *survey) bears(q *puller, w *stand, e int) {
	x := &s.p.Net.Edges[e]
	amps, all := w.low.AmpsOf(&w.pull, e)
	if w.trouble == folds { // what folds together heats together
		amps = all
	}
	var limit derive.Number
	switch {
	case x.Kind == network.Element && x.Fuse.Rating.Set:
		r := derive.Read("rating of "+lint.Quote(x.Fuse), "In", x.Fuse.Rating.Value, "A", x.Addr, "rating", x.Fuse.Rating.Range)
		limit = derive.Compute("what "+lint.Quote(x.Fuse)+" carries for long", "I", longShare*r.Value, "A", "I = 0.8 x In", r)
	case x.Kind == network.Wire:
		limit = s.iz(x.Wire)
	}
	if limit.Kind == 0 || amps <= limit.Value*(1+1e-9) {
		return
	}
	feed := e
	if f := s.p.Circuit.FeedOf(e); f >= 0 { // what guards the plus of a pair guards its return
		feed = f
	}
	w.hot = w.hot || x.Kind == network.Wire && !s.p.Circuit.Guarded(feed, limit.Value)
	if w.trouble <= over && !q.limited && (w.weak == nil || limit.Value < w.limit.Value) {
		w.trouble, w.weak, w.limit = over, s.p.Plan.Block(x.Addr), limit
	}
}

func (s *survey) iz(x *schema.Conductor) derive.Number {
	n, ok := s.izs[x]
	if !ok {
		n, _ = s.p.Circuit.Ampacity(x)
		s.izs[x] = n
	}
	return n
}

// unmet is what is missing where a part draws nothing that is known of: its own figures, and those of
// what could feed it.
func unmet(low *circuit.Low, q *puller) []lint.Missing {
	var out []lint.Missing
	for _, m := range low.Lacks {
		if m.Subject == q.block.Header().Addr || m.Subject == "plan" || low.SourceAt(m.Subject, q.port) {
			out = append(out, m)
		}
	}
	return out
}

// bearing is what is missing of a state that bears on a part: of what is joined to it, and of the wire on
// its way alone.
func bearing(low *circuit.Low, q *puller) []lint.Missing {
	if len(low.Lacks) == 0 {
		return nil
	}
	way, _ := low.Way(q.port)
	var out []lint.Missing
	for _, m := range low.Lacks {
		if slices.Contains(way.Lacks, m) || m.Subject == "plan" || low.PartAt(m.Subject, q.port) {
			out = append(out, m)
		}
	}
	return out
}

// related lists what lies on the way.
func (w *stand) related(p *lint.Pass) []string {
	var out []string
	for _, e := range w.way.Edges {
		x := &p.Net.Edges[e]
		if b := p.Plan.Block(x.Addr); b != nil && x.Kind != network.Joint && !slices.Contains(out, x.Addr) {
			out = append(out, x.Addr)
		}
	}
	return out
}

// leader is the largest of those that fold together with it; nil where it folds alone or not at all.
func (w *stand) leader(p *lint.Pass) schema.Block {
	x := w.low.Beside(w.pull.Port)
	switch {
	case w.trouble != folds || x == nil || x.Port == w.pull.Port:
		return nil
	case x.Converter >= 0:
		return p.Net.Converters[x.Converter].Converter
	}
	return p.Net.Loads[x.Load].Load
}

// state is the positions that matter: those on the way, and those without which more would feed it.
func (q *puller) state() []lint.Position {
	w := &q.worst
	v := w.low.View
	vars := map[int]bool{}
	for _, e := range w.way.Edges {
		for _, l := range q.p.Net.Edges[e].When {
			vars[l.Var] = true
		}
	}
	var rest, on []int
	for _, i := range v.Zone.Vars {
		if vars[i] {
			on = append(on, i)
		} else {
			rest = append(rest, i)
		}
	}
	for i := range q.p.Net.Sources {
		if s := &q.p.Net.Sources[i]; s.Present >= 0 && v.HasSource(i) && v.Zone.Local(s.Hot) >= 0 && v.Joined(s.Hot, q.port.Hot) && !vars[s.Present] {
			on = append(on, s.Present)
		}
	}
	if len(rest) > mostWeighed { // each is solved for: of very many, those that switch loads on are taken as on, like all else
		rest = slices.DeleteFunc(rest, q.p.Space.Leaf)
	}
	if len(rest) <= mostWeighed {
		rest = v.Keep(rest, q.still)
	}
	return v.State(append(on, rest...))
}

// mostWeighed bounds the positions of a state of which each is weighed.
const mostWeighed = 24

// still says whether the same is wrong in another view.
func (q *puller) still(o *explore.View) bool {
	low := q.p.Circuit.Low(o, q.worst.low.Case)
	s := &survey{p: q.p, izs: map[*schema.Conductor]derive.Number{}}
	for i := range low.Pulls {
		if x := low.Pulls[i]; x.Port == q.port {
			w := stand{low: low, pull: x}
			s.judge(q, &w)
			return w.trouble == q.worst.trouble
		}
	}
	return false
}
