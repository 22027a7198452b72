package solve

import (
	"crypto/sha256"
	"encoding/binary"
	"math"
	"sync"
)

// Memory remembers networks that were solved: many questions come to the same one, figure by figure. Goroutines
// may share it. What it gives is not to be changed. A nil one remembers nothing.
type Memory struct {
	mu     sync.Mutex
	points map[key]*Point
	most   map[key]float64
}

// key stands for all figures of a network.
type key [sha256.Size]byte

// mostRemembered bounds how many networks are remembered.
const mostRemembered = 1 << 12

// Solve prepares a network and finds its operating point. The error says that it is too densely meshed.
func (m *Memory) Solve(n *Net) (*Point, error) {
	return recall(m, func() *map[key]*Point { return &m.points }, n, 0, 0, func() (*Point, error) {
		s, err := New(n)
		if err != nil {
			return nil, err
		}
		return s.Solve(), nil
	})
}

// recall gives what is remembered of a network and two of its nodes, or else works it out.
func recall[T any](m *Memory, of func() *map[key]T, n *Net, p, q int, find func() (T, error)) (T, error) {
	if m == nil {
		return find()
	}
	k := n.key(p, q)
	m.mu.Lock()
	known, ok := (*of())[k]
	m.mu.Unlock()
	if ok {
		return known, nil
	}
	x, err := find()
	if err != nil {
		return x, err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if list := of(); *list == nil || len(*list) >= mostRemembered {
		*list = map[key]T{}
	}
	(*of())[k] = x
	return x, nil
}

func (n *Net) key(p, q int) key {
	out := make([]byte, 0, 64+8*len(n.References)+24*len(n.Branches)+72*len(n.Elements)+120*len(n.Converters))
	whole := func(list ...int) {
		for _, i := range list {
			out = binary.LittleEndian.AppendUint64(out, uint64(i))
		}
	}
	figures := func(list ...float64) {
		for _, x := range list {
			out = binary.LittleEndian.AppendUint64(out, math.Float64bits(x))
		}
	}
	whole(p, q, n.Nodes, len(n.References), len(n.Branches), len(n.Elements), len(n.Converters))
	whole(n.References...)
	for _, b := range n.Branches {
		whole(b.A, b.B)
		figures(b.Ohms)
	}
	for _, e := range n.Elements {
		whole(int(e.Kind), e.P, e.N, one(e.Back), one(e.Cell != nil))
		figures(e.Volts, e.Ohms, e.Amps, e.Watts, e.Floor)
		if c := e.Cell; c != nil {
			figures(c.light, c.diode, c.open, c.a, c.series, c.none)
		}
	}
	for _, c := range n.Converters {
		whole(c.InP, c.InN, c.OutP, c.OutN, one(c.Back))
		figures(c.Volts, c.Ohms, c.Amps, c.Efficiency, c.Idle, c.Ceiling, c.InAmps)
	}
	return sha256.Sum256(out)
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}
