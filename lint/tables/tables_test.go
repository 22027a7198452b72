package tables

import (
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"ferrule/schema/quantity"
)

// size reads "10 AWG", "6 mm2", "250 kcmil".
func size(t testing.TB, s string) quantity.Size {
	t.Helper()
	out, err := quantity.ParseSize(s)
	if err != nil {
		t.Fatalf("size %q: %v", s, err)
	}
	return out
}

// within fails unless got is want to within an absolute tolerance.
func within(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(got >= want-tolerance && got <= want+tolerance) {
		t.Errorf("%s = %.6g, want %.6g +- %.2g", what, got, want, tolerance)
	}
}

// check reads a table of testdata: published figures that the package must give back.
func check(t *testing.T, name string) []row {
	t.Helper()
	r := &reader{fsys: os.DirFS(".")}
	rows := r.rows("testdata/" + name + ".csv")
	if r.err != nil {
		t.Fatal(r.err)
	}
	return rows
}

// Every row of every table says what was read, in which clause, and how well it is known.
func TestEveryFigureHasItsOrigin(t *testing.T) {
	for _, pattern := range []string{"data/*.csv", "testdata/*.csv"} {
		names, err := fs.Glob(os.DirFS("."), pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(names), err)
		}
		r := &reader{fsys: os.DirFS(".")}
		for _, name := range names {
			for _, w := range r.rows(name) {
				checkOrigin(t, w)
			}
		}
		if r.err != nil {
			t.Error(r.err)
		}
	}
}

func checkOrigin(t *testing.T, w row) {
	t.Helper()
	recalled := strings.HasPrefix(w.cite.Basis, "recalled")
	if recalled && w.cite.Status == Verified {
		t.Errorf("%s: a recalled figure is marked verified", w.place)
	}
	for column, cell := range w.cells {
		if strings.Contains(cell, "://") || strings.TrimSpace(cell) != cell {
			t.Errorf("%s: %s reads %q", w.place, column, cell)
		}
	}
}

func TestEmbeddedTablesParse(t *testing.T) {
	l, err := parse(files)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range l.ratings {
		if i > 0 && r.V <= l.ratings[i-1].V {
			t.Errorf("rating %g A stands after %g A", r.V, l.ratings[i-1].V)
		}
	}
	for i, c := range l.class5 {
		if i > 0 && (c.at <= l.class5[i-1].at || c.V >= l.class5[i-1].V) {
			t.Errorf("class 5: %g mm2 is out of order", c.at)
		}
	}
}

func TestDamagedTableIsAnError(t *testing.T) {
	head := "key,value,unit,source,clause,edition,status\n"
	good := "a,1,A,law text,33 CFR 1,,verified\n"
	for name, text := range map[string]string{
		"no status":           head + "a,1,A,law text,33 CFR 1,,\n",
		"unknown status":      head + "a,1,A,law text,33 CFR 1,,certain\n",
		"no source":           head + "a,1,A,,33 CFR 1,,verified\n",
		"verified, no clause": head + "a,1,A,law text,,,verified\n",
		"practice and clause": head + "a,1,A,trade,33 CFR 1,,common-practice\n",
		"not a number":        head + "a,NaN,A,law text,33 CFR 1,,verified\n",
		"cell missing":        head + "a,1,A,law text,33 CFR 1,verified\n",
		"key twice":           head + good + good,
		"no rows":             head,
	} {
		r := &reader{fsys: fstest.MapFS{"data/figures.csv": {Data: []byte(text)}}}
		if r.figures(); r.err == nil {
			t.Errorf("%s: read without an error", name)
		}
	}
	r := &reader{fsys: fstest.MapFS{"data/figures.csv": {Data: []byte(head + good)}}}
	if f := r.figures(); r.err != nil || f["a"].V != 1 {
		t.Errorf("a sound table: %v, %v", f, r.err)
	}
}

func TestCiteString(t *testing.T) {
	for want, c := range map[string]Cite{
		"33 CFR 183.425(b) Table 5":           {Clause: "33 CFR 183.425(b) Table 5", Status: Verified},
		"NFPA 70 310.16 (2020)":               {Clause: "NFPA 70 310.16", Edition: "2020", Status: Verified},
		"NFPA 70 690.7(A) (from memory)":      {Clause: "NFPA 70 690.7(A)", Status: Memory},
		"ISO 10133 4 (2012, from memory)":     {Clause: "ISO 10133 4", Edition: "2012", Status: Memory},
		"common practice":                     {Basis: "per pole", Status: CommonPractice},
		"battery makers' texts (from memory)": {Clause: "battery makers' texts", Status: Memory},
	} {
		if got := fmt.Sprint(c); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if (Value{}).Known() {
		t.Error("a value without origin is known")
	}
}
