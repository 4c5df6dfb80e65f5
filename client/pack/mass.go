package pack

// This file measures pieces. Masses are rounded to the gram and cut lengths to a tenth of a mm once, here, so that the totals of a
// list are the sums of its rows.

import (
	"math"

	"lugwright/client/run"
	"lugwright/part"
)

// measured is a plate as it leaves the table: holes at the diameter that is cut.
func measured(p *part.Plate, b *run.Bracket, kgPerMM3 float64) *piece {
	cut := p.Shape(true)
	return &piece{
		plate: p, hand: b.Part.Hand, count: b.Spec.Quantity,
		grams:   grams(cut.Area() * p.ThicknessMM * kgPerMM3),
		tenths:  int64(math.Round(cut.Length() * 10)),
		pierces: 1 + len(cut.Holes),
	}
}

func grams(kg float64) int64 { return int64(math.Round(kg * 1000)) }
