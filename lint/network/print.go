package network

import (
	"fmt"
	"io"
	"strings"
)

// Print writes the network for a reader who wants to know what a plan became: variables, nodes,
// edges with the positions in which they conduct, ports, zones. Names are the plan's own and not
// escaped; those of positions may be any text.
func (n *Network) Print(w io.Writer) {
	p := &printer{n, w}
	p.section("Variables", len(n.Vars), p.variable)
	p.section("Nodes", len(n.Nodes), p.node)
	p.section("Edges", len(n.Edges), func(i int) string {
		e := &n.Edges[i]
		return fmt.Sprintf("%-7s %s: %s - %s%s", e.Kind, e.Addr, p.name(e.A), p.name(e.B), p.when(e.When))
	})
	p.section("Sources", len(n.Sources), func(i int) string { s := &n.Sources[i]; return s.Addr + p.port(s.Port) + p.present(s.Present) })
	p.section("Loads", len(n.Loads), func(i int) string { l := &n.Loads[i]; return l.Addr + p.port(l.Port) + p.present(l.Present) })
	p.section("Converters", len(n.Converters), func(i int) string {
		c := &n.Converters[i]
		return c.Addr + " in" + p.port(c.In) + "; out" + p.port(c.Out) + p.present(c.Present)
	})
	p.section("Zones", len(n.Zones), p.zone)
}

type printer struct {
	*Network
	w io.Writer
}

func (p *printer) section(title string, count int, line func(int) string) {
	fmt.Fprintf(p.w, "%s: %d\n", title, count)
	for i := range count {
		fmt.Fprintf(p.w, "  %d %s\n", i, clean(line(i)))
	}
}

// clean keeps a name with a line break in it from looking like two lines of the list.
func clean(s string) string {
	return strings.NewReplacer("\n", `\n`, "\r", `\r`).Replace(s)
}

func (p *printer) name(id NodeID) string {
	if id == None {
		return "nothing"
	}
	return p.Nodes[id].Name()
}

func (p *printer) variable(i int) string {
	v := &p.Vars[i]
	s := v.Addr + ": " + strings.Join(v.Positions, ", ")
	for _, t := range v.Throws {
		word := "gap"
		if t.Overlap {
			word = "overlap"
		}
		s += fmt.Sprintf("; %s>%s (%s)", v.Positions[t.From], v.Positions[t.To], word)
	}
	if v.Follower {
		var names []string
		for _, f := range v.Follows {
			names = append(names, p.Vars[f].Addr)
		}
		s += fmt.Sprintf("; %s while %s", v.Positions[v.Closed], words(names))
	}
	return s
}

// words joins names; a follower of what never goes away has none.
func words(names []string) string {
	if len(names) == 0 {
		return "always"
	}
	return strings.Join(names, " and ")
}

func (p *printer) node(i int) string {
	s := p.Nodes[i].Name()
	if p.Nodes[i].AC {
		s += " (ac)"
	}
	if p.Nodes[i].Return {
		s += " (return)"
	}
	return s
}

func (p *printer) when(c Condition) string {
	s := ""
	for i, l := range c {
		word := " and "
		if i == 0 {
			word = ", when "
		}
		var at []string
		for k, ok := range l.At {
			if ok {
				at = append(at, p.Vars[l.Var].Positions[k])
			}
		}
		if len(at) == 0 {
			at = []string{"nowhere"}
		}
		s += word + p.Vars[l.Var].Addr + " = " + strings.Join(at, " or ")
	}
	return s
}

func (p *printer) port(x Port) string {
	s := ": " + p.name(x.Hot) + " over " + p.name(x.Ret)
	if x.Ground != None {
		s += ", ground " + p.name(x.Ground)
	}
	return s
}

func (p *printer) present(v int) string {
	if v < 0 {
		return ""
	}
	return ", while " + p.Vars[v].Addr + " is present"
}

func (p *printer) zone(i int) string {
	z := p.Zones[i]
	var names []string
	for _, id := range z.Nodes {
		names = append(names, p.name(id))
	}
	s := strings.Join(names, " ")
	if z.AC {
		s += " (ac)"
	}
	return s
}
