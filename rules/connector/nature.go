package connector

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// nature is what one supply brings to a contact.
type nature struct {
	by       schema.Block
	what     string // "battery", "array", "charging output", "alternating current"
	ac       bool
	reversed bool
	volts    derive.Number // nominal; no kind where not known
	lacks    []lint.Missing
}

func (a nature) words() string {
	s := fmt.Sprintf("%s of %s", a.volts.Text(), lint.Quote(a.by))
	if a.volts.Kind == 0 {
		s = lint.Quote(a.by)
	}
	if a.reversed {
		s += ", plus and minus changed over"
	}
	return s
}

// part is a connector with the halves of each of its contacts.
type part struct {
	c      *schema.Connector
	halves []*half
}

// half is one contact, or the pair, of one side.
type half struct {
	c             *schema.Connector
	side, contact string
	hot, ret      network.NodeID
	brings        []nature // what supplies its side
	takes         bool     // something is there that draws
	other         *half    // its own partner
}

func (h *half) where() string {
	if h.contact != "" {
		return h.side + " " + h.contact
	}
	return h.side
}

// fits lists what a half is made for: what it brings itself, and what its own partner brings.
func (h *half) fits() []nature { return slices.Concat(h.brings, h.other.brings) }

// has says whether a half brings something of a kind.
func (h *half) has(what string) bool {
	return slices.ContainsFunc(h.brings, func(n nature) bool { return n.what == what })
}

func (h *half) made() string {
	if n := h.fits(); len(n) > 0 {
		return n[0].words()
	}
	return "no supply"
}

// meetings asks which halves may meet.
type meetings struct {
	*lint.Pass
	parts  []*part
	pinned map[string]bool // addresses that interlocks speak of
	asked  int
}

func newMeetings(p *lint.Pass) *meetings {
	m := &meetings{Pass: p, pinned: map[string]bool{}}
	for _, x := range p.Plan.Interlocks {
		for _, never := range x.Never.List {
			for _, pin := range never.List {
				m.pinned[pin.Ref.Addr] = true
			}
		}
	}
	for _, c := range p.Plan.Connectors {
		x := &part{c: c}
		for _, contact := range append([]schema.Text{{}}, c.Contacts.List...) {
			fixed, free := m.half(c, "fixed", contact.Value), m.half(c, "free", contact.Value)
			fixed.other, free.other = free, fixed
			x.halves = append(x.halves, fixed, free)
		}
		m.parts = append(m.parts, x)
	}
	return m
}

func (m *meetings) half(c *schema.Connector, side, contact string) *half {
	h := &half{c: c, side: side, contact: contact, hot: network.None, ret: network.None}
	name := c.Addr + "." + side
	if contact != "" {
		h.hot = m.Net.Node(name + "." + contact)
	} else {
		for _, pole := range []string{".pos", ".line"} {
			if id := m.Net.Node(name + pole); id != network.None {
				h.hot = id
			}
		}
		h.ret = m.Net.Node(name + ".neg")
	}
	m.fill(h, h.hot, false)
	m.fill(h, h.ret, true)
	if h.has(battery) { // it holds the volts of what charges it
		h.brings = slices.DeleteFunc(h.brings, func(n nature) bool { return n.what == charging })
	}
	return h
}

const (
	battery     = "battery"
	array       = "array"
	charging    = "charging output"
	alternating = "alternating current"
)

// fill adds what is on a contact's side with every contact closed but the connector's own; a diode
// passes on what feeds it.
func (m *meetings) fill(h *half, from network.NodeID, reversed bool) {
	if from == network.None || m.Net.Nodes[from].Return {
		return
	}
	seen := m.side(h.c, from)
	for i := range m.Net.Sources {
		if s := &m.Net.Sources[i]; seen[s.Hot] {
			n := m.sourceNature(s)
			m.stack(&n, h.c, i)
			h.bring(n, reversed)
		}
	}
	for i := range m.Net.Converters {
		c := &m.Net.Converters[i]
		h.takes = h.takes || seen[c.In.Hot]
		if seen[c.Out.Hot] && c.Kind.Value != "diode" {
			h.bring(m.outputNature(c), reversed)
		}
	}
	for i := range m.Net.Loads {
		h.takes = h.takes || seen[m.Net.Loads[i].Hot]
	}
}

// bring adds a supply; one of a kind is enough.
func (h *half) bring(n nature, reversed bool) {
	n.reversed = reversed
	if !slices.ContainsFunc(h.brings, func(o nature) bool {
		return o.what == n.what && o.ac == n.ac && o.reversed == n.reversed && o.volts.Value == n.volts.Value && len(o.lacks) == len(n.lacks)
	}) {
		h.brings = append(h.brings, n)
	}
}

func (m *meetings) side(c *schema.Connector, from network.NodeID) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{from: true}
	queue := []network.NodeID{from}
	visit := func(id network.NodeID) {
		if id != network.None && !seen[id] && !m.Net.Nodes[id].Return {
			seen[id] = true
			queue = append(queue, id)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		for _, e := range m.Net.At(queue[0]) {
			if k := &m.Net.Edges[e]; k.Kind != network.Mate || k.Addr != c.Addr {
				visit(k.Other(queue[0]))
			}
		}
		for i := range m.Net.Converters {
			if x := &m.Net.Converters[i]; x.Kind.Value == "diode" && x.Out.Hot == queue[0] {
				visit(x.In.Hot)
			}
		}
	}
	return seen
}

func (m *meetings) sourceNature(s *network.Source) nature {
	n := nature{by: s.Source, ac: m.Net.Nodes[s.Hot].AC, what: charging}
	q, attribute := s.Voltage, "voltage"
	switch {
	case n.ac:
		n.what = alternating
	case s.Kind.Value == "battery":
		n.what = battery
	case s.Kind.Value == "solar":
		n.what, q, attribute = array, s.Vmp, "vmp"
	case !q.Set:
		q, attribute = s.RegulatedVoltage, "regulated_voltage"
	}
	n.stand(q, s.Source, attribute, s.Series.Or(1))
	return n
}

// stack adds the volts of the sources that one stands on: blocks that are drawn in series.
func (m *meetings) stack(n *nature, c *schema.Connector, top int) {
	met := map[int]bool{top: true}
	for at := top; !n.ac && at >= 0; {
		ret := m.Net.Sources[at].Ret
		at = -1
		if ret == network.None || m.Net.Nodes[ret].Return {
			return
		}
		seen := m.side(c, ret)
		for i := range m.Net.Sources {
			if s := &m.Net.Sources[i]; at < 0 && !met[i] && seen[s.Hot] {
				met[i], at = true, i
				n.onto(m.sourceNature(s))
			}
		}
	}
}

// onto stands a source on another one.
func (a *nature) onto(o nature) {
	switch {
	case len(o.lacks) > 0:
		a.lacks, a.volts = append(a.lacks, o.lacks...), derive.Number{}
	case a.volts.Kind != 0:
		a.volts = derive.Compute("nominal voltage of the string under "+lint.Quote(a.by), "Vn", a.volts.Value+o.volts.Value, "V", "sum of the blocks in series", a.volts, o.volts)
	}
}

func (m *meetings) outputNature(c *network.Converter) nature {
	n := nature{by: c.Converter, ac: m.Net.Nodes[c.Out.Hot].AC, what: charging}
	if n.ac {
		n.what = alternating
	}
	var q schema.Quantity
	if c.Output != nil {
		q = c.Output.Voltage
	}
	n.stand(q, c.Converter, "output voltage", 1)
	return n
}

// stand sets the nominal volts: the class of a stated figure.
func (a *nature) stand(q schema.Quantity, b schema.Block, attribute string, series int) {
	if !q.Set {
		a.lacks = []lint.Missing{{Subject: b.Header().Addr, Attribute: attribute}}
		return
	}
	read := derive.Read(attribute+" of "+lint.Quote(b), "V", q.Value, "V", b.Header().Addr, attribute, q.Range)
	v := q.Value * float64(series)
	if !a.ac && a.what != array {
		v = class(v)
	}
	if a.volts = read; v != q.Value {
		a.volts = derive.Compute("nominal voltage of "+lint.Quote(b), "Vn", v, "V", "class of the stated voltage, all in series", read)
	}
}

// class is the nominal class of what a 12, 24, 36 or 48 V circuit stands at.
func class(v float64) float64 {
	for _, c := range []float64{12, 24, 36, 48} {
		if v > c*0.85 && v <= c*1.26 {
			return c
		}
	}
	return v
}
