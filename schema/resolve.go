package schema

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/schema/quantity"
)

// poles are the names that pick one node of a terminal, and reserved all names that an owner's
// terminal cannot have.
var (
	poles    = map[string]Pole{"pos": Pos, "neg": Neg, "line": Line, "neutral": Neutral, "ground": Ground}
	reserved = []string{"pos", "neg", "line", "load", "in", "out", "fixed", "free", "neutral", "ground"}
)

// resolve finds the block that a reference names, and its terminal.
func (d *decoder) resolve(p *pending) {
	b, rest := d.lookup(p)
	if b == nil {
		return
	}
	h := b.Header()
	wanted := p.field.refs
	switch {
	case slices.Contains(wanted, "terminal"), slices.Contains(wanted, "block"):
	case !slices.Contains(wanted, h.Type):
		d.refWrong(p, "Wrong kind of part", "%s is a %s: a %s is wanted.", stepsText(p.steps), h.Type, and(wanted, "or"))
		return
	}
	if whole := !slices.Contains(wanted, "terminal") && !slices.Contains(wanted, "block") && p.field.name != "on"; whole && len(rest) > 0 {
		d.refWrong(p, "Unknown reference", "a whole %s is wanted: %s.", h.Type, stepsText(p.steps[:len(p.steps)-len(rest)]))
		return
	}
	if d.terminal(p, b, rest) {
		p.ref.Addr = h.Addr
	}
}

func (d *decoder) refWrong(p *pending, summary, format string, args ...any) {
	d.problems.add(p.ref.Range, summary, "%s: %s", p.field.name, fmt.Sprintf(format, args...))
}

// lookup walks the names as far as they form a block's address, and gives the rest.
func (d *decoder) lookup(p *pending) (Block, []string) {
	prefix, steps := p.scope.prefix, p.steps
	for {
		root := steps[0]
		if _, ok := words().byName[root]; !ok {
			d.refWrong(p, "Unknown reference", "%s: there is no kind of part %q.%s", clip(stepsText(p.steps)), clip(root), d.near.hint(root, words().names))
			return nil, nil
		}
		if len(steps) < 2 {
			d.refWrong(p, "Unknown reference", "%s is a kind of part: name one, as in %s.NAME.%s", clip(stepsText(p.steps)), root, d.known(prefix+root))
			return nil, nil
		}
		addr := prefix + root + "." + steps[1]
		b := d.plan.index[addr]
		if b == nil || strings.Contains(steps[1], ".") {
			d.unknown(p, prefix+root, steps[1])
			return nil, nil
		}
		rest := steps[2:]
		if len(rest) == 0 {
			return b, nil
		}
		switch root {
		case "branch":
			return d.branchPart(p, b, rest)
		case "use":
			if d.broken[addr] {
				return nil, nil
			}
			prefix, steps = addr+".", rest
			continue
		}
		return b, rest
	}
}

// branchPart finds branch.NAME.fuse, .conductor, .load.LOAD and .switch.LOAD.
func (d *decoder) branchPart(p *pending, branch Block, rest []string) (Block, []string) {
	base := branch.Header().Addr + "." + rest[0]
	if b := d.plan.index[base]; b != nil {
		return b, rest[1:]
	}
	if len(rest) > 1 {
		if b := d.plan.index[base+"."+rest[1]]; b != nil {
			return b, rest[2:]
		}
		if len(d.names[base]) > 0 {
			d.unknown(p, base, rest[1])
			return nil, nil
		}
	}
	if d.broken[branch.Header().Addr] {
		return nil, nil
	}
	var parts []string
	for _, a := range branch.(*Branch).Parts {
		parts = append(parts, strings.TrimPrefix(a, p.scope.prefix))
	}
	d.refWrong(p, "Unknown reference", "%s names no part of the branch: its parts are %s.", clip(stepsText(p.steps)), and(parts, "and"))
	return nil, nil
}

func (d *decoder) unknown(p *pending, group, name string) {
	typ := group[strings.LastIndexByte(group, '.')+1:]
	hint := d.near.hint(name, d.names[group])
	if len(d.names[group]) == 0 {
		hint = fmt.Sprintf(" There is no %s here at all.", typ)
	}
	if p.scope.use != nil {
		hint += " A kit sees its own parts only."
	}
	d.refWrong(p, "Unknown reference", "there is no %s %q.%s", typ, clip(name), hint)
}

func (d *decoder) known(group string) string {
	if names := d.names[group]; len(names) > 0 && len(names) <= 24 {
		return " There is " + and(names, "and") + "."
	}
	return ""
}

// terminal reads what follows the block: a terminal, a contact, a pole.
func (d *decoder) terminal(p *pending, b Block, rest []string) bool {
	wanted := slices.Contains(p.field.refs, "terminal")
	names, own := terminalsOf(b)
	addr := strings.TrimPrefix(b.Header().Addr, p.scope.prefix)
	if !own && len(names) == 0 {
		if _, ok := b.(*Switch); ok { // its terminals could not be read
			return true
		}
		switch {
		case wanted:
			d.refWrong(p, "No terminal", "%s has no terminals.", clip(stepsText(p.steps)))
		case len(rest) > 0:
			d.refWrong(p, "Unknown reference", "the reference ends at %s.", addr)
		}
		return !wanted && len(rest) == 0
	}
	if len(names) > 0 {
		if len(rest) == 0 {
			if wanted {
				d.refWrong(p, "Terminal missing", "%s has the terminals %s: say which, as in %s.", addr, and(names, "and"), stepsText(append(slices.Clone(p.steps), names[0])))
			}
			return !wanted
		}
		if !slices.Contains(names, rest[0]) {
			d.refWrong(p, "Unknown terminal", "%s has no terminal %q: it has %s.%s", addr, clip(rest[0]), and(names, "and"), d.near.did(rest[0], names))
			return false
		}
		p.ref.Terminal, rest = rest[0], rest[1:]
		if c, ok := b.(*Connector); ok && len(rest) > 0 && contact(c, rest[0]) {
			p.ref.Contact, rest = rest[0], rest[1:]
		}
	}
	return d.pole(p, b, addr, rest)
}

func contact(c *Connector, name string) bool {
	return slices.ContainsFunc(c.Contacts.List, func(t Text) bool { return t.Value == name })
}

// pole reads the last name of a reference, which picks one node.
func (d *decoder) pole(p *pending, b Block, addr string, rest []string) bool {
	if len(rest) == 0 {
		return true
	}
	fit := polesOf(b)
	if p.ref.Contact != "" {
		fit = nil
	}
	if !slices.Contains(fit, rest[0]) {
		if c, ok := b.(*Connector); ok && p.ref.Contact == "" {
			for _, t := range c.Contacts.List {
				fit = append(fit, t.Value)
			}
		}
		what := "nothing can follow " + stepsText(p.steps[:len(p.steps)-len(rest)])
		if len(fit) > 0 {
			what = "what can follow is " + and(fit, "or")
		}
		d.refWrong(p, "Unknown terminal", "%s has no %q: %s.%s", addr, clip(rest[0]), what, d.near.did(rest[0], fit))
		return false
	}
	if len(rest) > 1 {
		d.refWrong(p, "Unknown reference", "%s is one node: nothing can follow it.", stepsText(p.steps[:len(p.steps)-len(rest)+1]))
		return false
	}
	p.ref.Pole = poles[rest[0]]
	return true
}

// terminalsOf lists the names of a block's terminals; own reports a block that is its own terminal.
func terminalsOf(b Block) (names []string, own bool) {
	switch x := b.(type) {
	case *Source, *Load, *Bus:
		return nil, true
	case *Fuse:
		return []string{"line", "load"}, false
	case *Converter:
		return []string{"in", "out"}, false
	case *Connector:
		return []string{"fixed", "free"}, false
	case *Switch:
		for _, t := range x.Terminals.List {
			names = append(names, t.Value)
		}
	}
	return names, false
}

// polesOf lists the nodes that a terminal of the block can have, by its kind of current where that
// is known.
func polesOf(b Block) []string {
	dc, ac := []string{"pos", "neg"}, []string{"line", "neutral", "ground"}
	switch x := b.(type) {
	case *Source:
		switch {
		case x.Kind.Value == "shore" || x.Kind.Value == "generator" || x.Voltage.Kind == quantity.AC:
			return ac
		case x.Kind.Set:
			return dc
		}
	case *Bus:
		switch x.Polarity.Value {
		case "positive":
			return []string{"pos"}
		case "negative", "chassis":
			return []string{"neg"}
		case "ground":
			return []string{"ground"}
		}
	}
	return append(dc, ac...)
}

// oneNode reports whether a resolved reference names a single node, which a pair cannot end on.
func (d *decoder) oneNode(r Ref) bool {
	if r.Pole != WholePair || r.Contact != "" {
		return true
	}
	b, ok := d.plan.index[r.Addr].(*Bus)
	return ok && b.Polarity.Set && b.Polarity.Value != "pair"
}
