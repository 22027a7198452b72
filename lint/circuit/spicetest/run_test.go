// Package spicetest compares operating points with ngspice (Debian package ngspice), a circuit simulator
// that shares nothing with this project.
//
// The netlists are written from the plan's network and the definitions of the model, not from the
// solver's own input. The powers of a netlist are scaled from 0 to 1 by a sweep of one voltage, so that
// ngspice too follows the branch that starts at no power. An open contact is absent.
package spicetest

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// need skips a test where ngspice is missing, or fails it where CI is set, as .ci/test does.
func need(t testing.TB) {
	t.Helper()
	if _, err := exec.LookPath("ngspice"); err == nil {
		return
	}
	if os.Getenv("CI") != "" {
		t.Fatal("ngspice is not installed (Debian package ngspice)")
	}
	t.Skip("ngspice is not installed (Debian package ngspice)")
}

// plot is the result of one analysis: rows by point, columns by name.
type plot struct {
	column map[string]int
	rows   [][]float64
}

func (p *plot) last() []float64 { return p.rows[len(p.rows)-1] }

// at is a vector's value in a row; the ground has none.
func (p *plot) at(row []float64, name string) float64 {
	if k, ok := p.column[name]; ok {
		return row[k]
	}
	return 0
}

// job is a netlist with the analysis wanted of it.
type job struct {
	netlist string
	analyse string // "op", "dc vs 0 1 0.1"
}

// simulate runs jobs in one process. A plot is nil where the analysis gave nothing.
func simulate(dir string, jobs []job) ([]*plot, error) {
	if len(jobs) == 0 {
		return nil, nil
	}
	var script strings.Builder
	script.WriteString("* operating points\n.control\nset filetype=binary\noptran 0 0 0 0 0 0\n")
	for i, j := range jobs {
		deck, raw := filepath.Join(dir, fmt.Sprintf("d%d.cir", i)), filepath.Join(dir, fmt.Sprintf("d%d.raw", i))
		_ = os.Remove(raw)
		if err := os.WriteFile(deck, []byte(j.netlist), 0o600); err != nil {
			return nil, err
		}
		fmt.Fprintf(&script, "source %s\n%s\nwrite %s\ndestroy all\nremcirc\n", deck, j.analyse, raw)
	}
	script.WriteString("quit\n.endc\n.end\n")
	run := filepath.Join(dir, "run.sp")
	if err := os.WriteFile(run, []byte(script.String()), 0o600); err != nil {
		return nil, err
	}
	out, err := exec.Command("ngspice", "-b", run).CombinedOutput()
	plots := make([]*plot, len(jobs))
	for i := range jobs {
		raw, rerr := os.ReadFile(filepath.Join(dir, fmt.Sprintf("d%d.raw", i)))
		if rerr == nil {
			plots[i], rerr = parse(raw)
		}
		if rerr != nil && err != nil {
			return nil, fmt.Errorf("%w\n%s", err, out)
		}
	}
	return plots, nil
}

// parse reads a binary raw file: a text header, then float64 little-endian, point by point.
func parse(raw []byte) (*plot, error) {
	head, data, ok := bytes.Cut(raw, []byte("Binary:\n"))
	if !ok {
		return nil, fmt.Errorf("not a raw file")
	}
	p := &plot{column: map[string]int{}}
	for line := range strings.Lines(string(head)) {
		if f := strings.Fields(line); len(f) == 3 && strings.HasPrefix(line, "\t") {
			p.column[f[1]] = len(p.column)
		}
	}
	width := 8 * len(p.column)
	for width > 0 && len(data) >= width {
		row := make([]float64, len(p.column))
		for k := range row {
			row[k] = math.Float64frombits(binary.LittleEndian.Uint64(data[8*k:]))
		}
		p.rows, data = append(p.rows, row), data[width:]
	}
	if len(p.rows) == 0 {
		return nil, fmt.Errorf("no points")
	}
	return p, nil
}
