package explore

import "math/bits"

// bitset is a set of the values of one variable. Sets of one variable have the same length.
type bitset []uint64

func newBitset(size int) bitset { return make(bitset, (size+63)/64) }

func (b bitset) add(i int)      { b[i/64] |= 1 << (i % 64) }
func (b bitset) has(i int) bool { return b[i/64]>>(i%64)&1 == 1 }

func (b bitset) empty() bool {
	for _, w := range b {
		if w != 0 {
			return false
		}
	}
	return true
}

func (b bitset) count() (n int) {
	for _, w := range b {
		n += bits.OnesCount64(w)
	}
	return n
}

// meets says whether the sets share a value.
func (b bitset) meets(o bitset) bool {
	for i, w := range b {
		if w&o[i] != 0 {
			return true
		}
	}
	return false
}

// within says whether every value of b is in o.
func (b bitset) within(o bitset) bool {
	for i, w := range b {
		if w&^o[i] != 0 {
			return false
		}
	}
	return true
}

func (b bitset) and(o bitset) bitset {
	out := make(bitset, len(b))
	for i, w := range b {
		out[i] = w & o[i]
	}
	return out
}

func (b bitset) less(o bitset) bitset {
	out := make(bitset, len(b))
	for i, w := range b {
		out[i] = w &^ o[i]
	}
	return out
}

func (b bitset) or(o bitset) bitset {
	out := make(bitset, len(b))
	for i, w := range b {
		out[i] = w | o[i]
	}
	return out
}
