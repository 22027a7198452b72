package tables

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"sync"
)

//go:embed data/*.csv
var files embed.FS

// library is every table of data/, parsed. It is never written after it was made.
type library struct {
	figures     map[string]Value
	dc, ac      ampacities
	engineSpace []keyed            // by insulation temperature
	bundle      map[string][]keyed // by "dc" or "ac"; key is the most conductors the factor serves
	class5      []keyed            // ohm per km by area in mm2, ascending
	voc         []keyed            // factor by coldest temperature, warm to cold
	adiabatic   []keyed            // k by insulation temperature, ascending
	ratings     []keyed
	gates       []gateRow
}

// keyed is one row of a table with one argument.
type keyed struct {
	at float64
	Value
}

// lib parses the embedded tables once, when first asked: a start of the program that needs no
// figure pays nothing. They are part of the program, so a damaged one is a defect of the program.
var lib = sync.OnceValue(func() *library {
	l, err := parse(files)
	if err != nil {
		panic("embedded table: " + err.Error())
	}
	return l
})

// figure is the single figure at a key of figures.csv, such as "distance/us-boat/bare"; not Known
// where there is none.
func figure(key string) Value { return lib().figures[key] }

func parse(fsys fs.FS) (*library, error) {
	r := &reader{fsys: fsys}
	l := &library{
		figures:     r.figures(),
		dc:          r.ampacities("data/ampacity_dc.csv"),
		ac:          r.ampacities("data/ampacity_ac.csv"),
		engineSpace: r.keyed("data/engine_space.csv", "insulation_c", "factor"),
		bundle:      r.bundle(),
		class5:      r.keyed("data/class5.csv", "area_mm2", "ohm_per_km"),
		voc:         r.keyed("data/voc.csv", "coldest_c", "factor"),
		adiabatic:   r.keyed("data/adiabatic.csv", "insulation_c", "k"),
		ratings:     r.keyed("data/ratings.csv", "rating_a", "rating_a"),
		gates:       r.gates(),
	}
	return l, r.err
}

// reader reads tables and keeps the first error.
type reader struct {
	fsys fs.FS
	err  error
}

// row is one line of a table with its place for error messages.
type row struct {
	r     *reader
	place string
	cells map[string]string
	cite  Cite
}

func (r *reader) fail(place string, problem any) {
	if r.err == nil {
		r.err = fmt.Errorf("%s: %v", place, problem)
	}
}

// rows reads a file. Every line must have a cell per column, a source and a status, and a clause
// unless it is common practice.
func (r *reader) rows(name string) []row {
	f, err := r.fsys.Open(name)
	if err != nil {
		r.fail(name, err)
		return nil
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil || len(lines) < 2 {
		r.fail(name, fmt.Sprint("no rows: ", err))
		return nil
	}
	var out []row
	for i, line := range lines[1:] {
		w := row{r: r, place: fmt.Sprintf("%s line %d", name, i+2), cells: map[string]string{}}
		for j, head := range lines[0] {
			w.cells[head] = line[j]
		}
		w.cite = w.origin()
		out = append(out, w)
	}
	return out
}

func (w row) origin() Cite {
	c := Cite{w.cells["clause"], w.cells["edition"], w.cells["source"], statusWords[w.cells["status"]]}
	if c.Status == 0 || c.Basis == "" || (c.Clause == "") != (c.Status == CommonPractice) {
		w.r.fail(w.place, "origin is not complete")
	}
	return c
}

// number reads a cell; a number that is missing or not finite is an error.
func (w row) number(column string) float64 {
	v, err := strconv.ParseFloat(w.cells[column], 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		w.r.fail(w.place, fmt.Sprintf("%s is no number: %q", column, w.cells[column]))
	}
	return v
}

// or reads a cell that may be empty.
func (w row) or(column string, empty float64) float64 {
	if w.cells[column] == "" {
		return empty
	}
	return w.number(column)
}

func (r *reader) figures() map[string]Value {
	out := map[string]Value{}
	for _, w := range r.rows("data/figures.csv") {
		key := w.cells["key"]
		if out[key].Known() {
			r.fail(w.place, "a second "+key)
		}
		out[key] = Value{w.number("value"), w.cite}
	}
	return out
}

func (r *reader) keyed(name, key, value string) []keyed {
	var out []keyed
	for _, w := range r.rows(name) {
		out = append(out, keyed{w.number(key), Value{w.number(value), w.cite}})
	}
	return out
}

func (r *reader) bundle() map[string][]keyed {
	out := map[string][]keyed{}
	for _, w := range r.rows("data/bundle.csv") {
		current := w.cells["current"]
		out[current] = append(out[current], keyed{w.or("most", math.Inf(1)), Value{w.number("factor"), w.cite}})
	}
	return out
}
