package circuit

import (
	"encoding/binary"

	"ferrule/lint/network"
)

// told remembers, over the sections of a zone, at which edges a short has been met: what a short draws, and
// by which ways, is settled by what lies between it and all that can feed it. Dead ends elsewhere, such as
// what hangs on another position of some selector, change nothing.
type told struct {
	c    *Circuit
	ids  map[string]int
	seen map[int]bool
}

func newTold(c *Circuit) *told { return &told{c: c, ids: map[string]int{}, seen: map[int]bool{}} }

func (t *told) id(key []byte) int {
	k, ok := t.ids[string(key)]
	if !ok {
		k = len(t.ids)
		t.ids[string(key)] = k
	}
	return k
}

// anew lists the edges of a section at which a short is another than in every section before. Where an end
// has no return of its own that leads home every section counts: the least is then asked to the farthest
// return of all.
func (t *told) anew(s *Section, returns []byte) []int {
	core, way := t.strip(s)
	base := t.id(t.coreKey(s, core, returns))
	memo := map[int]int{}
	var out []int
	for _, e := range s.Edges {
		x := &t.c.Net.Edges[e]
		k := t.of(e, base, way, memo)
		if !t.seen[k] || !t.home(s, x.A) || !t.home(s, x.B) {
			t.seen[k] = true
			out = append(out, e)
		}
	}
	return out
}

// home says whether a node's own return leads back to something that feeds the section.
func (t *told) home(s *Section, id network.NodeID) bool {
	mate := t.c.Net.Mate(id)
	if mate == network.None {
		return false
	}
	for _, p := range t.ports(s) {
		if p.Ret != network.None && s.View.Joined(mate, p.Ret) {
			return true
		}
	}
	return false
}

// ports lists all that can feed a section.
func (t *told) ports(s *Section) []network.Port {
	var out []network.Port
	for _, i := range s.Sources {
		out = append(out, t.c.Net.Sources[i].Port)
	}
	for _, i := range s.Outputs {
		out = append(out, t.c.Net.Converters[i].Out)
	}
	for _, i := range s.Inputs {
		out = append(out, t.c.Net.Converters[i].In)
	}
	return out
}

// of numbers what lies between an edge and all that feeds it: the core, and the way from there.
func (t *told) of(e, base int, way map[int]int, memo map[int]int) int {
	var chain []int
	k, known := 0, false
	for at := e; ; {
		if k, known = memo[at]; known {
			break
		}
		chain = append(chain, at)
		next, more := way[at]
		if !more {
			k = base
			break
		}
		at = next
	}
	for i := len(chain) - 1; i >= 0; i-- {
		k = t.id(binary.AppendUvarint(binary.AppendUvarint([]byte{'w'}, uint64(k)), uint64(chain[i])))
		memo[chain[i]] = k
	}
	return k
}

func (t *told) coreKey(s *Section, core map[int]bool, returns []byte) []byte {
	key := binary.AppendUvarint([]byte{'c'}, uint64(len(returns)))
	key = append(key, returns...)
	for _, list := range [][]int{s.Sources, s.Outputs, s.Inputs} { // each behind its length, so that no two read alike
		key = binary.AppendUvarint(key, uint64(len(list)))
		for _, i := range list {
			key = binary.AppendUvarint(key, uint64(i))
		}
	}
	for _, e := range s.Edges {
		if core[e] {
			key = binary.AppendUvarint(key, uint64(e))
		}
	}
	return key
}

// strip takes the dead ends off a section: core is what is left, between all that feeds; way leads from an
// edge of a dead end to the next towards the core.
func (t *told) strip(s *Section) (core map[int]bool, way map[int]int) {
	n := t.c.Net
	fed := map[network.NodeID]bool{}
	for _, p := range t.ports(s) {
		fed[p.Hot], fed[p.Ret] = true, true
	}
	core, way = map[int]bool{}, map[int]int{}
	at := map[network.NodeID][]int{}
	for _, e := range s.Edges {
		core[e] = true
		at[n.Edges[e].A] = append(at[n.Edges[e].A], e)
		at[n.Edges[e].B] = append(at[n.Edges[e].B], e)
	}
	left := map[network.NodeID]int{}
	end := func(id network.NodeID) bool { return left[id] == 1 && !fed[id] && !n.Nodes[id].Return }
	var queue []network.NodeID
	for _, id := range s.Nodes {
		if left[id] = len(at[id]); end(id) {
			queue = append(queue, id)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		id := queue[0]
		last := -1
		for _, e := range at[id] {
			if core[e] {
				last = e
			}
		}
		if last < 0 {
			continue
		}
		delete(core, last)
		for _, e := range at[id] {
			if e != last {
				way[e] = last
			}
		}
		to := n.Edges[last].Other(id)
		if left[to]--; end(to) {
			queue = append(queue, to)
		}
	}
	return core, way
}
