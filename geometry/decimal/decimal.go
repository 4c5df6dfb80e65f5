// Package decimal writes numbers with a fixed number of decimals, digit for digit as the standard library's format 'f', and some ten times
// faster. It knows no file format.
package decimal

import (
	"math"
	"math/bits"
	"strconv"
)

// Most is the largest number, of either sign, that is taken, and Places the most decimals.
const (
	Most   = 1e6
	Places = 12
)

var powers = [Places + 1]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12}

// Append adds a number of at most Most with so many decimals, without the noughts at their end, never as -0.
func Append(to []byte, v float64, places int) []byte {
	n := Scaled(math.Abs(v), powers[places])
	if v < 0 && n > 0 {
		to = append(to, '-')
	}
	if places <= 3 {
		return appendThousandths(to, uint32(n*powers[3-places]))
	}
	to = strconv.AppendUint(to, n/powers[places], 10)
	part := n % powers[places]
	if part == 0 {
		return to
	}
	to = append(to, '.')
	for ; part > 0; places-- {
		unit := powers[places-1]
		to = append(to, byte('0'+part/unit))
		part %= unit
	}
	return to
}

// appendThousandths is the way of nearly all numbers in files.
func appendThousandths(to []byte, n uint32) []byte {
	whole, part := n/1000, n%1000
	switch {
	case whole < 10:
		to = append(to, byte('0'+whole))
	case whole < 100:
		to = append(to, byte('0'+whole/10), byte('0'+whole%10))
	case whole < 1000:
		to = append(to, byte('0'+whole/100), byte('0'+whole/10%10), byte('0'+whole%10))
	default:
		to = strconv.AppendUint(to, uint64(whole), 10)
	}
	a, b, c := byte('0'+part/100), byte('0'+part/10%10), byte('0'+part%10)
	switch {
	case part == 0:
		return to
	case c != '0':
		return append(to, '.', a, b, c)
	case b != '0':
		return append(to, '.', a, b)
	}
	return append(to, '.', a)
}

// Scaled is v times a power of ten up to 1e12 to the nearest whole number, to the even one half-way: exact, as the product of two floats is not.
// It takes v from 0 to Most.
func Scaled(v float64, power uint64) uint64 {
	b := math.Float64bits(v)
	mantissa, exponent := b&(1<<52-1), b>>52
	if exponent > 0 {
		mantissa, exponent = mantissa|1<<52, exponent-1
	}
	high, low := bits.Mul64(mantissa, power)
	shift := 1074 - exponent // v is mantissa / 2^shift, and shift at least 33
	var whole, rest uint64   // the rest in 2^-64
	if shift < 64 {
		whole, rest = high<<(64-shift)|low>>shift, low<<(64-shift)
	} else {
		shift -= 64
		whole, rest = high>>shift, high<<(64-shift)|low>>shift
		if low<<(64-shift) != 0 || shift > 64 {
			rest |= 1
		}
	}
	if rest > 1<<63 || rest == 1<<63 && whole&1 == 1 {
		whole++
	}
	return whole
}
