package dxf

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"
	"strconv"

	"lugwright/geometry/decimal"
)

// numerals keep numbers already written, also in files before: most coordinates of a plate come more than once, and all of them in each of its files.
type numerals [128]numeral

type numeral struct {
	bits  uint64   // of the number, with the sign bit set: the zero value is of none
	text  [22]byte // seven digits, the point, twelve decimals, the line end, and what put writes beyond
	size  uint8
	minus uint8 // 1 where a negative one has a sign: what rounds to nothing has none
}

const signBit = 1 << 63

// real adds a number and the end of its line: the digits of strconv's format 'f' with 12 decimals, without the noughts at their end. A value
// that rounds to nothing is 0.0, never -0.
func (w *writer) real(to []byte, v float64) []byte {
	bits := math.Float64bits(v)
	n := &w.numerals[(bits|signBit)*0x9e3779b97f4a7c15>>57]
	if n.bits != bits|signBit {
		if n = w.numeral(n, math.Abs(v)); n == nil {
			return to
		}
	}
	const most = len(n.text) + 1
	at := len(to)
	to = slices.Grow(to, most)
	out := to[at : at+most]
	out[0] = '-'
	sign := int(bits>>63) & int(n.minus)
	*(*[len(n.text)]byte)(out[sign:]) = n.text
	return to[:at+sign+int(n.size)]
}

// numeral makes the text of a number, nil when it has none.
func (w *writer) numeral(n *numeral, v float64) *numeral {
	if !(v <= decimal.Most) {
		if w.err == nil {
			w.err = fmt.Errorf("number %g; numbers must be finite and at most 1e6", v)
		}
		return nil
	}
	whole := decimal.Scaled(v, 1e12)
	n.bits, n.minus = math.Float64bits(v)|signBit, uint8(min(1, whole))
	n.spell(uint32(whole/1e12), whole%1e12)
	return n
}

// spell writes a number of at most seven digits and twelve decimals.
func (n *numeral) spell(whole uint32, decimals uint64) {
	out, at := n.text[:], 3
	switch {
	case whole < 10:
		out[0], at = byte('0'+whole), 1
	case whole < 100:
		put(out, triples[whole]>>8)
		at = 2
	case whole < 1000:
		put(out, triples[whole])
	default:
		at = len(strconv.AppendUint(out[:0], uint64(whole), 10))
	}
	out = out[at : at+15]
	out[0], out[1] = '.', '0'
	end := 2
	if decimals > 0 {
		high, low := uint32(decimals/1e6), uint32(decimals%1e6)
		before, last := triples[high/1000], triples[high%1000]
		put(out[1:], before)
		put(out[4:], last)
		end = 4
		if low > 0 {
			before, last = triples[low/1000], triples[low%1000]
			put(out[7:], before)
			put(out[10:], last)
			end = 10
		}
		if last>>24 == 0 {
			end, last = end-3, before
		}
		end += int(last >> 24)
	}
	out[end] = '\n'
	n.size = uint8(at + end + 1)
}

// triples are the numbers below 1000 in three digits, the first in the lowest byte, and in the highest byte how many of the digits are not noughts
// at the end.
var triples = func() (all [1000]uint32) {
	for i := range all {
		d := [4]byte{byte('0' + i/100), byte('0' + i/10%10), byte('0' + i%10), 3}
		for d[3] > 0 && d[d[3]-1] == '0' {
			d[3]--
		}
		all[i] = binary.LittleEndian.Uint32(d[:])
	}
	return all
}()

// put writes three digits, and one byte more.
func put(out []byte, triple uint32) { binary.LittleEndian.PutUint32(out, triple) }
