package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explain"
	"ferrule/lint/states"
	"ferrule/lint/term"
	"ferrule/schema"
)

// The listing of states as text: first what there is to set, then each state with its positions and
// short labelled lines.
//
//	itself  parts that nobody sets by hand      loads   those that have power
//	dark    loads that have none                buses   those that are live
//	feeds   what each supply is joined to       open    live ends at an open contact
//	fullest conductors nearest their ampacity   doubt   what may be live

// mostNamed is how many states without an operating point an answer names.
const mostNamed = 5

// States writes a listing for a terminal.
func States(w io.Writer, l *states.Listing, s Style) error {
	t := &text{Style: s}
	t.Width = max(s.Width, 40)
	t.hung("", term.Clean(l.File+": "+l.System))
	t.line("")
	t.labelled("States", counted(l))
	for _, c := range l.Corners {
		t.labelled("Corner", c.Name+": "+c.What)
	}
	if len(l.Corners) > 0 {
		t.labelled("Numbers", "are solved at these corners, all loads that have power running at once")
	}
	for _, v := range l.Variables {
		t.labelled("--at", settable(v))
	}
	if len(l.Held) > 0 && len(l.States)+len(l.Answers) > 0 {
		t.labelled("Always", inWords(l, l.Held)+", in all states listed")
	}
	for _, x := range l.States {
		t.line("")
		t.oneState(l, x)
	}
	for _, a := range l.Answers {
		t.line("")
		t.answer(l, a)
	}
	t.line("")
	t.hung("", term.Clean("Nothing was measured: all is as the plan says it. "+explain.Cautions(explain.About{})[0].Short))
	_, err := io.WriteString(w, t.String())
	return err
}

// counted says how many states there are and how many of them follow.
func counted(l *states.Listing) string {
	out := "more resting states allowed than could be counted"
	if l.Total != "" {
		out = plural2(roughly(l.Total), "resting state allowed", "resting states allowed")
	}
	what := "at rest"
	if l.Transits {
		what = "switches in transit among them"
	}
	switch {
	case l.Distinct == "0":
		return out + "; none fits what was asked for"
	case l.Distinct != "":
		out += "; " + plural2(roughly(l.Distinct), "different network", "different networks") + " among those asked for (" + what + ")"
	default:
		out += "; the different networks among them were not counted (" + what + ")"
	}
	looked := len(l.States)
	if len(l.Answers) > 0 {
		looked = l.Answers[0].Looked
	}
	if l.More || !l.Complete {
		out += fmt.Sprintf("; %d of them looked at", looked)
	}
	switch {
	case !l.Complete:
		out += ". The search was stopped, or met its bound, before the end: narrow it with --at"
	case l.More:
		out += ". There are more: narrow with --at, or raise --limit"
	}
	return out
}

func plural2(n, one, many string) string {
	if n == "1" {
		return n + " " + one
	}
	return n + " " + many
}

// settable names a thing as --at takes it, with its label and positions.
func settable(v states.Variable) string {
	h := v.Block.Header()
	s := strings.TrimPrefix(h.Addr, h.Type+".")
	if h.Label.Value != "" {
		s += " (" + lint.Quote(v.Block) + ")"
	}
	s += ": " + strings.Join(v.Positions, ", ")
	switch {
	case v.Follower && len(v.Follows) > 0:
		s += "; follows " + lint.And(v.Follows...)
	case v.Follower:
		s += "; follows what never goes away"
	case len(v.Throws) > 0:
		s += "; on its way " + strings.Join(v.Throws, ", ")
	}
	return s
}

func inWords(l *states.Listing, at []lint.Position) string {
	var out []string
	for _, p := range at {
		i := slices.IndexFunc(l.Variables, func(v states.Variable) bool { return v.Block.Header().Addr == p.Addr })
		if i < 0 {
			continue
		}
		between := " "
		if l.Variables[i].Block.Header().Type == "switch" {
			between = " at "
		}
		out = append(out, l.Called(l.Variables[i].Block)+between+p.Position)
	}
	return strings.Join(out, ", ")
}

// entries are the lines under one label; the label stands before the first.
func (t *text) entries(label string, lines ...string) {
	for _, l := range lines {
		t.hung("  "+term.Pad(label, margin), term.Clean(l))
		label = ""
	}
}

func (t *text) oneState(l *states.Listing, x *states.State) {
	at := inWords(l, x.At)
	if at == "" {
		at = "the only one"
	}
	t.hung(term.Pad(fmt.Sprintf("State %d", x.Number), margin+1)+" ", term.Clean(at))
	if len(x.Followers) > 0 {
		t.entries("itself", inWords(l, x.Followers))
	}
	for _, n := range x.NoPoint {
		t.entries("no point", folds(n))
	}
	var loads, buses, feeds, open, full []string
	for _, s := range x.Loads {
		loads = append(loads, l.Called(s.Block)+": "+spread(s.Volts, s.Amps))
	}
	for _, s := range x.Buses {
		buses = append(buses, l.Called(s.Block)+": "+spread(s.Volts, states.Range{}))
	}
	for _, f := range x.Feeds {
		feeds = append(feeds, feed(l, f))
	}
	for _, h := range x.Fullest {
		full = append(full, fullest(l, h))
	}
	for _, s := range x.Terminals {
		if s.Open {
			open = append(open, s.Place)
		}
	}
	t.entries("loads", loads...)
	t.entries("dark", joined(l, x.Dark)...)
	t.entries("buses", buses...)
	t.entries("feeds", feeds...)
	if len(open) > 0 {
		t.entries("open", strings.Join(open, ", ")+": live, at an open contact")
	}
	t.entries("fullest", full...)
	if len(x.MayLive) > 0 {
		t.entries("doubt", joined(l, x.MayLive)[0]+": live too if a converter lets current back, which the plan does not say")
	}
	t.entries("missing", lacking(x.Missing)...)
}

func lacking(ms []lint.Missing) []string {
	var out []string
	for _, m := range ms {
		out = append(out, explain.Missing(m))
	}
	return out
}

func joined(l *states.Listing, bs []schema.Block) []string {
	if len(bs) == 0 {
		return nil
	}
	var out []string
	for _, b := range bs {
		out = append(out, l.Called(b))
	}
	return []string{strings.Join(out, ", ")}
}

func (t *text) answer(l *states.Listing, a *states.Answer) {
	title := "Volts at "
	if a.What == "amps" {
		title = "Amps in "
	}
	t.hung("", term.Clean(title+a.Name))
	extreme := func(label string, e *states.Extreme) {
		if e == nil {
			return
		}
		s := derive.Text(e.Value, a.Unit) + " (" + e.Corner + ")"
		if e.Way != "" {
			s += ", " + e.Way
		}
		if at := inWords(l, e.State); at != "" {
			s += ": " + at
		}
		t.entries(label, s)
	}
	extreme("least", a.Least)
	extreme("most", a.Most)
	t.entries("looked", "at "+lookedAt(a))
	t.doubts(l, a)
	for _, e := range []*states.Extreme{a.Least, a.Most} {
		if e == nil || e == a.Most && a.Least != nil && a.Least.Corner == e.Corner && slices.Equal(a.Least.State, e.State) {
			continue
		}
		word := "least"
		if e == a.Most {
			word = "most"
		}
		t.line("")
		t.line("How the %s comes about", word)
		for _, x := range explain.Derivation([]derive.Number{e.Number}) {
			t.hung("  "+term.Pad(x.Mark, 4)+" ", term.Clean(x.Text))
		}
	}
}

func lookedAt(a *states.Answer) string {
	s := plural(a.Looked, "state", "states")
	if a.Dead > 0 {
		word := "not live"
		if a.Unit == "A" {
			word = "no power there"
		}
		s += fmt.Sprintf("; %s in %d of them", word, a.Dead)
	}
	if a.Least == nil && a.Unknown == 0 && len(a.NoPoint) == 0 {
		s += ", so there is no number"
	}
	return s
}

// doubts says what keeps the least and the most from being the whole answer.
func (t *text) doubts(l *states.Listing, a *states.Answer) {
	if l.More || !l.Complete {
		t.entries("partly", "these are the least and the most of the states looked at; others were not")
	}
	for i, f := range a.NoPoint {
		if i == mostNamed {
			t.entries("no point", fmt.Sprintf("%d more", len(a.NoPoint)-i))
			break
		}
		s := folds(f.NoPoint)
		if at := inWords(l, f.State); at != "" {
			s = at + ", " + s
		}
		t.entries("no point", s)
	}
	if a.Unknown > 0 {
		t.entries("unknown", "in "+plural(a.Unknown, "state", "states")+", since something is missing")
	}
	t.entries("missing", lacking(a.Missing)...)
}
