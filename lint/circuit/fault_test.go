package circuit_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// short is the largest short at a node over all sections.
func short(t *testing.T, c *circuit.Circuit, corner circuit.Corner, node string) *circuit.Short {
	t.Helper()
	var best *circuit.Short
	for _, z := range c.Net.Stacks() {
		sections, _ := c.Sections(z, all)
		for s := range sections {
			x, lacks, ok := c.Faults(s, corner, false).At(c.Net.Node(node))
			if ok && (best == nil || x.Amps() > best.Amps()) {
				if best = x; len(lacks) > 0 {
					t.Errorf("short at %s: missing %v", node, lacks)
				}
			}
		}
	}
	if best == nil {
		t.Fatalf("no short at %s", node)
	}
	return best
}

func cell(name, ohms string) string {
	return fmt.Sprintf("source %q {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  capacity = \"100 Ah\"\n  resistance = %q\n}\n", name, ohms)
}

// Six 6 V batteries in three parallel strings of two, 2 400 A each, make 7 200 A, drawn as one bank and
// block by block: explanatory text to the marine standard (ABYC E-11, interrupting capacity).
func TestShortOfBank(t *testing.T) {
	unit := "  kind = \"battery\"\n  chemistry = \"flooded\"\n  voltage = \"6 V\"\n  capacity = \"220 Ah\"\n  short_circuit = \"2400 A\"\n"
	c := build(t, system+"source \"bank\" {\n"+unit+"  series = 2\n  parallel = 3\n}\n")
	near(t, "bank as one block", short(t, c, circuit.Prospective, "source.bank.pos").Amps(), 7200, 1e-6)
	text := system + "bus \"p\" {\n  polarity = \"positive\"\n}\nbus \"n\" {\n  polarity = \"negative\"\n}\n"
	link := func(name, from, to, polarity string) string {
		return fmt.Sprintf("conductor %q {\n  from = %s\n  to = %s\n  polarity = %q\n  size = \"4/0 AWG\"\n  length = \"1 mm\"\n}\n", name, from, to, polarity)
	}
	for i := range 3 {
		top, foot := fmt.Sprintf("t%d", i), fmt.Sprintf("f%d", i)
		text += fmt.Sprintf("source %q {\n%s}\nsource %q {\n%s}\n", top, unit, foot, unit)
		text += link("m"+top, "source."+top+".neg", "source."+foot+".pos", "positive") + link("p"+top, "source."+top+".pos", "bus.p", "positive") + link("n"+top, "source."+foot+".neg", "bus.n", "negative")
	}
	c = build(t, text)
	s := short(t, c, circuit.Prospective, "bus.p")
	near(t, "bank block by block, links of 1 mm", s.Amps(), 7200, 7200*0.001)
	for i := range 3 {
		near(t, "each string", math.Abs(s.Through(c.Net.EdgesOf(fmt.Sprintf("conductor.mt%d", i))[0])), 2400, 2400*0.001)
	}
}

// 12 m of 18 AWG there and back is 0.60 ohm hot (0.021
// ohm/m at 20 C, NFPA 70 chapter 9 table 8); with 30 mohm some 19 A of 12 V: Ohm's law by hand.
func TestShortOfThinWire(t *testing.T) {
	c := build(t, system+cell("b", "30 mohm")+load("lamp", 1)+"\nconductor \"run\" {\n  from = source.b\n  to = load.lamp\n  size = \"18 AWG\"\n  length = \"12 m\"\n}\n")
	s := short(t, c, circuit.Least, "load.lamp.pos")
	near(t, "least short, 12 V against 11.8 V empty", s.Amps()*12/11.8, 19, 0.5)
	loop, _ := c.Ohms(c.Net.EdgesOf("conductor.run")[0], circuit.Least)
	near(t, "by Ohm's law", s.Amps(), 11.8/(0.03+2*loop.Value), 1e-9)
	if n := s.Number(-1); n.Value != s.Amps() || len(n.From) < 3 {
		t.Errorf("%g A is made of %d numbers", n.Value, len(n.From))
	}
}

// Two batteries side by side, each behind a run of its own: by Thevenin and Ohm, hand-worked. A battery's own
// run carries what the battery gives, the common run all.
func TestShortOfTwoBatteries(t *testing.T) {
	c := build(t, system+cell("a", "4 mohm")+cell("b", "6 mohm")+"bus \"p\" {\n}\n"+load("lamp", 1)+"\n"+
		wire("ra", "source.a", "bus.p", "pair", 1)+"\n"+wire("rb", "source.b", "bus.p", "pair", 3)+"\n"+wire("run", "bus.p", "load.lamp", "pair", 2)+"\n")
	ohms := func(name string) float64 {
		r, _ := c.Ohms(c.Net.EdgesOf("conductor." + name)[0], circuit.Prospective)
		return 2 * r.Value
	}
	ga, gb := 1/(0.004+ohms("ra")), 1/(0.006+ohms("rb"))
	want := 14.8 / (1/(ga+gb) + ohms("run"))
	s := short(t, c, circuit.Prospective, "load.lamp.pos")
	near(t, "short behind both", s.Amps(), want, 1e-6)
	near(t, "the common run", s.Through(c.Net.EdgesOf("conductor.run")[0]), want, 1e-6)
	near(t, "the share of one", s.Through(c.Net.EdgesOf("conductor.ra")[0]), want*ga/(ga+gb), 1e-6)
	// At one's own terminals the other's share comes through both runs.
	s = short(t, c, circuit.Prospective, "source.a.pos")
	near(t, "from its brother", -s.Through(c.Net.EdgesOf("conductor.ra")[0]), 14.8/(0.006+ohms("ra")+ohms("rb")), 1e-6)
}

// A single wire to the frame: the most is with a return of nothing, the least with the return drawn.
func TestShortOfOneWire(t *testing.T) {
	c := build(t, system+cell("b", "10 mohm")+load("lamp", 1)+"\n"+wire("out", "source.b", "load.lamp", "positive", 4)+"\n"+wire("home", "source.b", "load.lamp", "negative", 6)+"\n")
	r := func(name string, corner circuit.Corner) float64 {
		n, _ := c.Ohms(c.Net.EdgesOf("conductor." + name)[0], corner)
		return n.Value
	}
	near(t, "most", short(t, c, circuit.Prospective, "load.lamp.pos").Amps(), 14.8/(0.01+r("out", circuit.Prospective)), 1e-6)
	near(t, "least", short(t, c, circuit.Least, "load.lamp.pos").Amps(), 11.8/(0.01+r("out", circuit.Least)+r("home", circuit.Least)), 1e-6)
}

// Limited sources give a current, 1.25 isc and 1.25 rated (NFPA 70 690.8(A); common practice); a diode passes on what
// stands behind it.
func TestShortOfLimitedSources(t *testing.T) {
	c := build(t, system+"source \"roof\" {\n  kind = \"solar\"\n  isc = \"10 A\"\n  voc = \"22 V\"\n  always = true\n}\nsource \"alt\" {\n  kind = \"alternator\"\n  rated = \"40 A\"\n  voltage = \"12 V\"\n  always = true\n}\nbus \"p\" {\n}\n"+
		wire("a", "source.roof", "bus.p", "pair", 3)+"\n"+wire("b", "source.alt", "bus.p", "pair", 3)+"\n")
	near(t, "array and alternator", short(t, c, circuit.Prospective, "bus.p.pos").Amps(), 12.5+50, 1e-6)
	c = build(t, system+cell("b", "10 mohm")+"converter \"d\" {\n  kind = \"diode\"\n}\nbus \"p\" {\n}\n"+wire("a", "source.b", "converter.d.in", "pair", 3)+"\n"+wire("b", "converter.d.out", "bus.p", "pair", 5)+"\n")
	n, _ := c.Ohms(c.Net.EdgesOf("conductor.a")[0], circuit.Prospective)
	near(t, "battery behind a diode", short(t, c, circuit.Prospective, "bus.p.pos").Amps(), 14.8/(0.01+2*n.Value*8/3), 1e-6)
}

// oracle is a dense nodal solution of one short in one state: contacts and devices of 0.1 uohm, batteries
// by voltage and resistance.
func oracle(c *circuit.Circuit, v *explore.View, hot, ret network.NodeID) map[int]float64 {
	n := c.Net
	size := len(n.Nodes)
	a := make([][]float64, size)
	for i := range a {
		a[i] = make([]float64, size+1)
		a[i][i] = 1e-9
	}
	join := func(x, y network.NodeID, g float64) {
		a[x][x], a[y][y] = a[x][x]+g, a[y][y]+g
		a[x][y], a[y][x] = a[x][y]-g, a[y][x]-g
	}
	g := map[int]float64{}
	for e := range n.Edges {
		if v.Conducts(e) {
			r, _ := c.Ohms(e, circuit.Least)
			g[e] = 1 / max(r.Value, 1e-7)
			join(n.Edges[e].A, n.Edges[e].B, g[e])
		}
	}
	join(hot, ret, 1e7)
	for i := range n.Sources {
		if s := &n.Sources[i]; v.HasSource(i) {
			x, _ := c.BatteryVolts(s.Source)
			_, high, _, _ := c.BatteryOhms(s.Source)
			join(s.Hot, s.Ret, 1/high.Value)
			a[s.Hot][size], a[s.Ret][size] = a[s.Hot][size]+x.Empty.Value/high.Value, a[s.Ret][size]-x.Empty.Value/high.Value
		}
	}
	volts := eliminate(a)
	out := map[int]float64{-1: 1e7 * (volts[hot] - volts[ret])}
	for e, k := range g {
		out[e] = k * (volts[n.Edges[e].A] - volts[n.Edges[e].B])
	}
	return out
}

// TestShortsAgreeWithDenseSolution: in meshes of any shape every current of a short is that of a textbook
// solution of all node equations, and what flows into a node flows out of it.
func TestShortsAgreeWithDenseSolution(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &maker{t: t}
		m.draw()
		m.tree()
		m.graph()
		c := build(t, m.text())
		for _, z := range c.Net.Stacks() {
			list, _ := c.Sections(z, all)
			i := 0
			for s := range list {
				if i++; i <= 12 {
					agree(t, c, s, m.text())
				}
			}
		}
	})
}

func agree(t *rapid.T, c *circuit.Circuit, s *circuit.Section, text string) {
	f := c.Faults(s, circuit.Least, true)
	for k, id := range s.Nodes {
		mate := c.Net.Mate(id)
		x, lacks, ok := f.At(id)
		if k%3 != 0 || mate == network.None || !ok || !s.View.Joined(mate, c.Net.Sources[s.Sources[0]].Ret) {
			continue
		}
		want := oracle(c, s.View, id, mate)
		at := c.Net.Nodes[id].Name()
		if math.Abs(x.Amps()-want[-1]) > 2e-3*want[-1]+1e-3 || len(lacks) > 0 {
			t.Fatalf("short at %s: %g A, textbook %g A, missing %v\n%s", at, x.Amps(), want[-1], lacks, text)
		}
		into := map[network.NodeID]float64{}
		for e := range c.Net.Edges {
			amps := x.Through(e)
			into[c.Net.Edges[e].A] -= amps
			into[c.Net.Edges[e].B] += amps
			if math.Abs(amps-want[e]) > 5e-3*want[-1]+1e-3 && c.Net.Edges[e].Kind == network.Wire {
				t.Fatalf("short at %s: %s carries %g A, textbook %g A\n%s", at, c.Net.Edges[e].Addr, amps, want[e], text)
			}
		}
		for node, amps := range into {
			if port(c, node) || node == id || node == mate {
				continue
			}
			if math.Abs(amps) > 1e-6*x.Amps() {
				t.Fatalf("short at %s: %g A vanish at %s\n%s", at, amps, c.Net.Nodes[node].Name(), text)
			}
		}
	}
}

func port(c *circuit.Circuit, id network.NodeID) bool {
	for i := range c.Net.Sources {
		if s := &c.Net.Sources[i]; s.Hot == id || s.Ret == id {
			return true
		}
	}
	return false
}

func BenchmarkShorts(b *testing.B) {
	net := build(b, panel()).Net
	for b.Loop() {
		c := circuit.New(explore.New(net, 0), circuit.Guesses{})
		places := 0
		for _, z := range net.Stacks() {
			list, _ := c.Sections(z, all)
			for s := range list {
				f := c.Faults(s, circuit.Prospective, true)
				for _, id := range s.Nodes {
					if x, _, ok := f.At(id); ok && x.Through(s.Edges[0]) >= -1e9 {
						places++
					}
				}
			}
		}
		b.ReportMetric(float64(places), "places")
	}
}
