package spicetest

import (
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
	"ferrule/schema/files"
)

var corners = []circuit.Charge{circuit.Empty, circuit.Rested, circuit.EndOfCharge}

func numbers(p *schema.Plan) *circuit.Circuit {
	n, _ := network.Build(p)
	return circuit.New(explore.New(n, 0), circuit.Guesses{})
}

// distinct lists the states of a plan that differ, up to so many.
func distinct(c *circuit.Circuit, most int) (list []*explore.View, all bool) {
	seen := map[string]bool{}
	all = true
	c.Space.Each(func(v *explore.View) {
		if k := v.Signature(); !seen[k] {
			if seen[k] = true; len(list) < most {
				list = append(list, v)
			} else {
				all = false
			}
		}
	})
	return list, all
}

// Random plans: each run of rapid draws 100 by default, so the tests draw 500 between them.
const runs = 4

func TestRandomLinearPlansAgree(t *testing.T) { random(t, true, 1) }

func TestRandomPlansAgree(t *testing.T) { random(t, false, runs) }

func random(t *testing.T, linear bool, runs int) {
	need(t)
	dir := t.TempDir()
	var y tally
	plans, meshed := 0, 0
	for k := range runs {
		seed(t, k)
		rapid.Check(t, func(t *rapid.T) {
			m := &maker{t: t, linear: linear}
			text := m.draw()
			p, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
			if diags.HasErrors() {
				t.Fatalf("%v\n%s", diags, text)
			}
			c := numbers(p)
			views, _ := distinct(c, 60)
			var cases []state
			for _, v := range views {
				cases = append(cases, state{v, setting(t, c)})
			}
			plans++
			if m.meshed {
				meshed++
			}
			if err := y.check(dir, c, shuffled(t, cases, 4)); err != nil {
				t.Fatalf("%v\n%s", err, text)
			}
		})
	}
	t.Logf("%d plans, %d of them meshed: %+v", plans, meshed, y)
	enough(t, &y, 0.05, 0.05)
}

func setting(t *rapid.T, c *circuit.Circuit) circuit.Setting {
	s := circuit.Setting{Charge: rapid.SampledFrom(corners).Draw(t, "corner"), High: rapid.Bool().Draw(t, "high"), Dark: rapid.IntRange(0, 5).Draw(t, "dark") == 0}
	if n := len(c.Net.Loads); n > 0 && rapid.IntRange(0, 3).Draw(t, "starts") == 0 {
		s.Starting = rapid.IntRange(1, n).Draw(t, "starting")
	}
	return s
}

// enough fails a comparison that has compared too little to show anything. shares are how many states
// ngspice may leave without an answer of its own, in which the point is put into its netlist, and of how
// many it may follow the branch only down from the point.
func enough(t *testing.T, y *tally, pinned, back float64) {
	t.Helper()
	n := float64(y.states)
	if y.found < y.states/2 || float64(y.lost) > 2+n/20 || float64(y.pinned) > 2+pinned*n || float64(y.back) > 2+back*n || float64(y.elsewhere) > 2+n/50 || y.strayed > 3+y.none/3 {
		t.Errorf("too few states stand compared: %+v", *y)
	}
}

// Every example in its distinct states, at most 30 of a plan, at all corners.
func TestExamplesAgree(t *testing.T) {
	need(t)
	const most = 30
	root := filepath.Join("..", "..", "..", "examples")
	paths, err := files.Find([]string{root, filepath.Join(root, "flawed")}, false)
	if err != nil || len(paths) < 8 {
		t.Fatal(paths, err)
	}
	dir := t.TempDir()
	var y tally
	for _, path := range paths {
		plan, diags, _ := (&files.Reader{}).Load(path)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		c := numbers(plan)
		views, all := distinct(c, most)
		var cases []state
		for _, v := range views {
			for k, charge := range corners {
				cases = append(cases, state{v, circuit.Setting{Charge: charge, High: k%2 == 0}})
			}
		}
		before := y
		for len(cases) > 0 {
			n := min(len(cases), 60)
			if err := y.check(dir, c, cases[:n]); err != nil {
				t.Errorf("%s: %v", path, err)
				break
			}
			cases = cases[n:]
		}
		t.Logf("%s: %d states, all of them: %v; %d compared, %d without a point", filepath.Base(path), len(views), all, y.found-before.found, y.none-before.none)
	}
	t.Logf("%+v", y)
	enough(t, &y, 0.2, 0.2)
}
