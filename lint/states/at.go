package states

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Hint names the word that was probably meant, as " (did you mean x?)", or nothing.
type Hint func(word string, known []string) string

// Ask reads positions such as "house_select=pack", "source.pack=absent" or, for a switch on its way,
// "house_select=pack>aux (overlap)"; several may stand in one text with commas between. The error
// says what is wrong in the owner's words.
func (s *Survey) Ask(texts []string, transits bool, hint Hint) (explore.Ask, error) {
	a := explore.Ask{At: map[int]int{}, Transits: transits, Moving: -1}
	for _, t := range texts {
		for _, part := range split(t) {
			if err := s.pin(&a, part, hint); err != nil {
				return a, err
			}
		}
	}
	return a, s.possible(a)
}

// split cuts a text at commas; a piece without a sign of its own belongs to the name before it.
func split(s string) []string {
	var out []string
	for _, p := range strings.Split(s, ",") {
		if len(out) > 0 && !strings.Contains(p, "=") {
			out[len(out)-1] += "," + p
			continue
		}
		out = append(out, p)
	}
	return out
}

func (s *Survey) pin(a *explore.Ask, text string, hint Hint) error {
	name, position, ok := strings.Cut(text, "=")
	name, position = strings.TrimSpace(name), strings.TrimSpace(position)
	if !ok || name == "" || position == "" {
		return fmt.Errorf("%q is no position; write it like house_select=pack", text)
	}
	v, err := s.find(name, hint)
	if err != nil {
		return err
	}
	x := &s.Net.Vars[v]
	if throws := throwsAt(x, position); len(throws) > 0 {
		if a.Moving >= 0 && a.Moving != v {
			return fmt.Errorf("%s and %s cannot both be on their way: one switch moves at a time", s.Net.Vars[a.Moving].Addr, x.Addr)
		}
		if _, held := a.At[v]; held || a.Moving == v {
			return fmt.Errorf("%s is given two positions", x.Addr)
		}
		a.Moving, a.Throws = v, throws
		return nil
	}
	at := slices.IndexFunc(x.Positions, func(p string) bool { return p == position })
	if at < 0 {
		at = slices.IndexFunc(x.Positions, func(p string) bool { return strings.EqualFold(p, position) })
	}
	if at < 0 {
		known := append(slices.Clone(x.Positions), s.variable(v).Throws...)
		return fmt.Errorf("%s has no position %q%s; it has %s", x.Addr, position, hint(position, known), list(known))
	}
	if old, held := a.At[v]; a.Moving == v || held && old != at {
		return fmt.Errorf("%s is given two positions", x.Addr)
	}
	a.At[v] = at
	return nil
}

// list quotes words that may have spaces in them.
func list(words []string) string {
	var out []string
	for _, w := range words {
		if strings.ContainsAny(w, " ,") {
			w = `"` + w + `"`
		}
		out = append(out, w)
	}
	return lint.And(out...)
}

// throwsAt finds the throws that a text names: "a>b" with "(overlap)", "(gap)" or neither, either way
// round. A position that is itself called so is a position.
func throwsAt(x *network.Variable, text string) []*network.Throw {
	if slices.Contains(x.Positions, text) {
		return nil
	}
	squeeze := func(s string) string { return strings.ToLower(strings.ReplaceAll(s, " ", "")) }
	want := squeeze(text)
	var out []*network.Throw
	for i := range x.Throws {
		t := &x.Throws[i]
		word := "(gap)"
		if t.Overlap {
			word = "(overlap)"
		}
		a, b := squeeze(x.Positions[t.From]), squeeze(x.Positions[t.To])
		if slices.Contains([]string{a + ">" + b + word, b + ">" + a + word, a + ">" + b, b + ">" + a}, want) {
			out = append(out, t)
		}
	}
	// Positions may be called alike but for case and spaces; one pair of ends is meant.
	return slices.DeleteFunc(out, func(t *network.Throw) bool { return t.From != out[0].From || t.To != out[0].To })
}

// find takes the address of a switch, connector or source, its name, or its label.
func (s *Survey) find(name string, hint Hint) (int, error) {
	if v := s.Net.Var(name); v >= 0 {
		return v, nil
	}
	var found []int
	var known, addrs []string
	for i := range s.Net.Vars {
		h := s.Plan.Block(s.Net.Vars[i].Addr).Header()
		short := strings.TrimPrefix(h.Addr, h.Type+".")
		known = append(known, short, h.Addr)
		if strings.EqualFold(name, short) || strings.EqualFold(name, h.Name) || strings.EqualFold(name, h.Named()) {
			found, addrs = append(found, i), append(addrs, h.Addr)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return 0, fmt.Errorf("%q may be %s; write the whole address", name, lint.And(addrs...))
	case s.fixed(name) != "":
		return 0, fmt.Errorf("%s has no positions: it is always as it is drawn", s.fixed(name))
	case len(known) == 0:
		return 0, fmt.Errorf("nothing in this plan has positions")
	}
	return 0, fmt.Errorf("no switch, connector or source with positions is called %q%s; see the list that ferrule states prints first", name, hint(name, known))
}

// fixed is the address of a block that has no positions; "" where none is called so.
func (s *Survey) fixed(name string) string {
	for _, b := range s.Plan.Blocks() {
		h := b.Header()
		switch h.Type {
		case "source", "connector", "switch":
			if strings.EqualFold(name, h.Name) || strings.EqualFold(name, h.Named()) || name == h.Addr {
				return h.Addr
			}
		}
	}
	if s.Plan.Block(name) != nil {
		return name
	}
	return ""
}

// possible says why no state fits, where none does.
func (s *Survey) possible(a explore.Ask) error {
	ends := []map[int]int{a.At}
	if len(a.Throws) > 0 {
		ends = []map[int]int{with(a.At, a.Moving, a.Throws[0].From), with(a.At, a.Moving, a.Throws[0].To)}
	}
	for _, at := range ends {
		ok, known := s.Space.Allows(at)
		switch {
		case ok:
			continue
		case !known:
			return nil // the listing says that the search met its bound
		}
		return s.why(at)
	}
	return nil
}

func with(at map[int]int, v, p int) map[int]int {
	out := map[int]int{v: p}
	for k, x := range at {
		out[k] = x
	}
	return out
}

func (s *Survey) why(at map[int]int) error {
	var by []string
	for _, x := range s.Space.Excludes(at) {
		by = append(by, lint.Quote(x)+" ("+x.Addr+")")
	}
	if len(by) > 0 {
		return fmt.Errorf("no state has %s: excluded by %s", s.told(at), lint.And(by...))
	}
	for v := range s.Net.Vars {
		if _, held := at[v]; held && s.Net.Vars[v].Follower {
			free := with(at, v, 0)
			delete(free, v)
			if ok, _ := s.Space.Allows(free); ok {
				return fmt.Errorf("no state has %s: %s follows %s", s.told(at), s.Net.Vars[v].Addr, s.followed(v))
			}
		}
	}
	return fmt.Errorf("no state has %s: several interlocks together exclude it", s.told(at))
}

func (s *Survey) followed(v int) string {
	if f := s.variable(v).Follows; len(f) > 0 {
		return lint.And(f...)
	}
	return "what never goes away"
}

// told writes positions as they are given.
func (s *Survey) told(at map[int]int) string {
	var out []string
	for v := range s.Net.Vars {
		if p, held := at[v]; held {
			out = append(out, s.Net.Vars[v].Addr+" = "+s.Net.Vars[v].Positions[p])
		}
	}
	return lint.And(out...)
}
