package nest

import "math/bits"

const (
	wordBits = 64
	words    = 6
	maxRows  = words * wordBits
)

// column is a column of cells, the lowest first.
type column [words]uint64

// upTo has the n lowest cells set.
func upTo(n int) column {
	var b column
	for i := range b {
		switch left := n - i*wordBits; {
		case left >= wordBits:
			b[i] = ^uint64(0)
		case left > 0:
			b[i] = 1<<left - 1
		}
	}
	return b
}

// down moves every bit n places down.
func (b *column) down(n int) column {
	var out column
	whole, part := n/wordBits, uint(n%wordBits)
	for i := 0; i+whole < words; i++ {
		out[i] = b[i+whole] >> part
		if part > 0 && i+whole+1 < words {
			out[i] |= b[i+whole+1] << (wordBits - part)
		}
	}
	return out
}

// smeared has every bit set from which one of n cells upwards is set in b.
func (b *column) smeared(n int) column {
	out := *b
	for have := 1; have < n; {
		step := min(have, n-have)
		more := out.down(step)
		for i := range out {
			out[i] |= more[i]
		}
		have += step
	}
	return out
}

// without clears the column of c, and says whether any is left.
func (b *column) without(c *column) bool {
	any := uint64(0)
	for i := range b {
		b[i] &^= c[i]
		any |= b[i]
	}
	return any != 0
}

// set sets the column from lo to below hi.
func (b *column) set(lo, hi int) {
	low, high := upTo(lo), upTo(hi)
	for i := range b {
		b[i] |= high[i] &^ low[i]
	}
}

// lowest is the place of the lowest bit, -1 when none is set.
func (b *column) lowest() int {
	for i, w := range b {
		if w != 0 {
			return i*wordBits + bits.TrailingZeros64(w)
		}
	}
	return -1
}
