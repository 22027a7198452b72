package explore_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// verdicts answers the same questions of a plan, by names, however it is written: counts, a way between
// nodes, whether loads can be dark, and what lies beyond wires.
func verdicts(t *rapid.T, text string, ends []string, name func(string) string) string {
	n, s := build(t, text)
	var b strings.Builder
	total, _ := s.Total()
	different, _ := s.Distinct()
	fmt.Fprintf(&b, "%v states, %v networks\n", total, different)
	whole := n.Whole()
	for i := 0; i+1 < len(ends); i += 2 {
		a := s.Path(whole, explore.All(), nil, explore.Ends{A: n.Node(name(ends[i])), B: n.Node(name(ends[i+1]))})
		fmt.Fprintf(&b, "%s to %s: %v by %d\n", ends[i], ends[i+1], a.Found, len(a.Vars))
	}
	for k := range 3 {
		for i := range n.Loads {
			if l := &n.Loads[i]; l.Addr == name(fmt.Sprintf("load.l%d", k)) {
				a := s.Cut(n.Together(l.Hot, l.Ret), explore.All(), l.Port, nil, nil)
				fmt.Fprintf(&b, "load %d dark: %v by %d\n", k, a.Found, len(a.Vars))
			}
		}
	}
	return b.String()
}

func asWritten(s string) string { return s }

// questions draws the names of some pairs of nodes.
func questions(t *rapid.T, n *network.Network) (out []string) {
	for range 6 {
		out = append(out, n.Nodes[rapid.IntRange(0, len(n.Nodes)-1).Draw(t, "node")].Name())
	}
	return out
}

// blocks splits a plan into its blocks.
func blocks(text string) []string {
	var out []string
	for _, x := range strings.SplitAfter(text, "\n}\n") {
		if strings.TrimSpace(x) != "" {
			out = append(out, x)
		}
	}
	return out
}

// TestOrderAndNamesMeanNothing: a plan with its blocks in another order, and with other names, gives the
// same answers.
func TestOrderAndNamesMeanNothing(t *testing.T) {
	number := regexp.MustCompile(`\b(w|n|b|c|k|l)(\d+)\b`)
	rapid.Check(t, func(t *rapid.T) {
		text := widePlan(t)
		n, _ := build(t, text)
		ends := questions(t, n)
		want := verdicts(t, text, ends, asWritten)
		shuffled := rapid.Permutation(blocks(text)).Draw(t, "order")
		if got := verdicts(t, strings.Join(shuffled, ""), ends, asWritten); got != want {
			t.Fatalf("in another order:\n%s\nfirst:\n%s\n%s", got, want, text)
		}
		rename := func(s string) string {
			return number.ReplaceAllStringFunc(s, func(x string) string { return x[:1] + fmt.Sprint(99-len(x)) + "x" + x[1:] })
		}
		if got := verdicts(t, rename(text), ends, rename); got != want {
			t.Fatalf("with other names:\n%s\nfirst:\n%s\n%s", got, want, text)
		}
	})
}

// TestSplitWireMeansNothing: a wire cut in two at a joint of its own gives the same answers.
func TestSplitWireMeansNothing(t *testing.T) {
	wire := regexp.MustCompile(`(?s)^conductor "c(\d+)" \{\n  from = (\S+)\n  to = (\S+)\n(.*)\}\n$`)
	rapid.Check(t, func(t *rapid.T) {
		text := widePlan(t)
		n, _ := build(t, text)
		ends := questions(t, n)
		list := blocks(text)
		split := 0
		for i, x := range list {
			if m := wire.FindStringSubmatch(x); m != nil && rapid.Bool().Draw(t, "split") {
				split++
				list[i] = fmt.Sprintf("bus \"j%s\" {\n}\nconductor \"c%s\" {\n  from = %s\n  to = bus.j%s\n%s}\nconductor \"d%s\" {\n  from = bus.j%s\n  to = %s\n%s}\n",
					m[1], m[1], m[2], m[1], m[4], m[1], m[1], m[3], m[4])
			}
		}
		if got, want := verdicts(t, strings.Join(list, ""), ends, asWritten), verdicts(t, text, ends, asWritten); got != want {
			t.Fatalf("with %d wires split:\n%s\nfirst:\n%s\n%s", split, got, want, text)
		}
	})
}

// TestInterlockNeverFinds: what no state does is done by none that an interlock leaves.
func TestInterlockNeverFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s := build(t, widePlan(t))
		whole := n.Whole()
		for _, x := range n.Plan.Interlocks {
			free := s.Without(x)
			for _, l := range n.Loads {
				z := n.Together(l.Hot, l.Ret)
				if free.Cut(z, explore.All(), l.Port, nil, nil).Found == explore.No && s.Cut(z, explore.All(), l.Port, nil, nil).Found != explore.No {
					t.Fatalf("an interlock makes %s dark", l.Addr)
				}
			}
			ends := randomEnds(t, whole)
			if free.Path(whole, explore.All(), nil, ends...).Found == explore.No && s.Path(whole, explore.All(), nil, ends...).Found != explore.No {
				t.Fatalf("an interlock joins %v", ends)
			}
		}
	})
}
