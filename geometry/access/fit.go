package access

import (
	"fmt"
	"math"

	"lugwright/part"
)

// weldment is ISO 13920 class B for lengths, as reproduced second hand: up to a length in mm, give or take so much. The standard's first range is
// from memory.
var weldment = []struct{ toMM, mm float64 }{{30, 1}, {120, 2}, {400, 2}, {1000, 3}, {2000, 4}, {4000, 6}}

// WeldmentMM is how far apart in either sense two places a length apart may come out after welding.
func WeldmentMM(lengthMM float64) float64 {
	for _, w := range weldment {
		if lengthMM <= w.toMM {
			return w.mm
		}
	}
	return weldment[len(weldment)-1].mm * lengthMM / weldment[len(weldment)-1].toMM
}

const (
	cutMM   = 0.3 // place of a hole cut or drilled in one piece; common practice, no source
	drillMM = 1.0 // place of a hole drilled in the frame by a template; common practice, no source
)

// Fits says of every bolt pattern and pin line whether its holes meet after welding, in words for the drawing. Two plies with holes larger than the bolt by
// c meet when their places differ by no more than c.
func Fits(b *part.Bracket) []string {
	var out []string
	for i := range b.Bolts {
		g := &b.Bolts[i]
		if g.SameAs != "" || len(g.Points) < 2 {
			continue
		}
		need, have := cutMM+drillMM, g.HoleMM-g.DiaMM
		if need > have+1e-9 {
			out = append(out, fmt.Sprintf("%s: holes may be off by %.1f mm and have %.1f mm of play over the bolt: match-drill the far side through the bracket", called("bolts", g.ID), need, have))
		}
	}
	for i := range b.Pins {
		if words := pinLine(b, &b.Pins[i]); words != "" {
			out = append(out, words)
		}
	}
	return out
}

// called is what a thing is and its name, once where they are the same.
func called(what, id string) string {
	if id == what {
		return id
	}
	return what + " " + id
}

// pinLine reckons the ears' own holes: those that are welded apart from each other.
func pinLine(b *part.Bracket, p *part.Pin) string {
	lo, hi, play := math.Inf(1), math.Inf(-1), math.Inf(1)
	n := 0
	for _, s := range p.Seats {
		if b.Plate(s.Thing) == nil {
			continue
		}
		n++
		lo, hi, play = min(lo, s.AtMM), max(hi, s.AtMM), min(play, s.HoleMM-p.DiaMM)
	}
	if n < 2 {
		return ""
	}
	if off := WeldmentMM(hi - lo); off > play+1e-9 {
		return fmt.Sprintf("%s: its holes may come out %.1f mm off line by welding (ISO 13920 class B) and have %.1f mm of play: weld with a dummy pin through them, or ream in place", called("pin", p.ID), off, play)
	}
	return ""
}
