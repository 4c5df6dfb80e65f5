package formula

// This file holds dimensions: exponents of N, mm and kg, exact in sixtieths, so that a root of any common order and its
// power cancel. Angles are pure numbers.

import (
	"fmt"
	"math"
	"strings"
)

// Dim is a dimension. The zero Dim is a pure number. Two dimensions are alike when they are ==. ParseUnit makes one.
type Dim struct {
	n, mm, kg int32 // exponents in sixtieths
}

const sixtieths = 60

// highest is the largest exponent, in either sense, that a dimension may reach.
const highest = 100 * sixtieths

var (
	dimForce  = Dim{n: sixtieths}
	dimLength = Dim{mm: sixtieths}
	dimMass   = Dim{kg: sixtieths}
)

func (d Dim) times(o Dim) Dim { return Dim{d.n + o.n, d.mm + o.mm, d.kg + o.kg} }

func (d Dim) over(o Dim) Dim { return Dim{d.n - o.n, d.mm - o.mm, d.kg - o.kg} }

func (d Dim) usual() bool {
	return max(d.n, d.mm, d.kg, -d.n, -d.mm, -d.kg) <= highest
}

// power raises d to the exponent p, or says false when that has no exact dimension.
func (d Dim) power(p float64) (Dim, bool) {
	if d == (Dim{}) {
		return d, true
	}
	n, ok1 := scaled(d.n, p)
	mm, ok2 := scaled(d.mm, p)
	kg, ok3 := scaled(d.kg, p)
	return Dim{n, mm, kg}, ok1 && ok2 && ok3
}

func scaled(exponent int32, p float64) (int32, bool) {
	x := float64(exponent) * p
	whole := math.Round(x)
	ok := math.Abs(x-whole) < 1e-9 && math.Abs(whole) <= highest
	if !ok {
		return 0, false
	}
	return int32(whole), true
}

// String writes the dimension as ParseUnit reads it where the exponents are whole: "N*mm", "N/mm^2", "1".
func (d Dim) String() string {
	var above, below []string
	for _, b := range []struct {
		name     string
		exponent int32
	}{{"N", d.n}, {"kg", d.kg}, {"mm", d.mm}} {
		switch {
		case b.exponent > 0:
			above = append(above, raised(b.name, b.exponent))
		case b.exponent < 0:
			below = append(below, raised(b.name, -b.exponent))
		}
	}
	if len(above) == 0 {
		above = []string{"1"}
	}
	return strings.Join(append([]string{strings.Join(above, "*")}, below...), "/")
}

func raised(name string, exponent int32) string {
	switch {
	case exponent == sixtieths:
		return name
	case exponent%sixtieths == 0:
		return fmt.Sprintf("%s^%d", name, exponent/sixtieths)
	}
	return fmt.Sprintf("%s^%.6g", name, float64(exponent)/sixtieths)
}

// spoken is the dimension as a message names it.
func (d Dim) spoken() string {
	switch d {
	case Dim{}:
		return "a pure number"
	case dimStress:
		return "MPa"
	}
	return d.String()
}
