package access

import (
	"fmt"
	"math"
	"slices"

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
	for _, f := range fits(b) {
		out = append(out, f.words)
	}
	return out
}

// AtHole is what is done at one hole of a plate or member because its line may not meet after welding, in words for that piece's drawing and its line of a list.
type AtHole struct{ Piece, Hole, Words string }

// AtHoles are those of Fits, hole by hole.
func AtHoles(b *part.Bracket) []AtHole {
	var out []AtHole
	for _, f := range fits(b) {
		for i := range b.Plates {
			p := &b.Plates[i]
			for _, face := range p.Folded() {
				for k := range face.Holes {
					out = f.at(out, p.ID, &face, &face.Holes[k])
				}
			}
		}
		for i := range b.Members {
			m := &b.Members[i]
			if m.Profile.Kind != part.Angle {
				continue
			}
			legA, legB := m.Legs()
			for _, leg := range [2]part.Plate{legA, legB} {
				for k := range leg.Holes {
					out = f.at(out, m.ID, &leg, &leg.Holes[k])
				}
			}
		}
	}
	return out
}

// fit is a bolt pattern or pin line whose holes may not meet.
type fit struct {
	words        string
	hole, tapped string // what is done at its holes, and at tapped ones
	lines        []part.Vec
	along        part.Vec
	pieces       []string // whose holes: plates, faces, legs; tapped ones are looked for in every plate
}

// at adds the words for a hole that lies on one of the lines. A tapped one that is cut is where it is.
func (f *fit) at(out []AtHole, piece string, face *part.Plate, h *part.Hole) []AtHole {
	words := f.hole
	switch {
	case h.Finish == part.Tapped:
		words = f.tapped
		if h.CutMM > 0 {
			return out
		}
	case !slices.Contains(f.pieces, face.ID) && !slices.Contains(f.pieces, piece):
		return out
	}
	if words == "" || !f.on(face, h) {
		return out
	}
	return append(out, AtHole{Piece: piece, Hole: h.ID, Words: words})
}

// on says whether a hole of a flat face lies on one of the lines.
func (f *fit) on(face *part.Plate, h *part.Hole) bool {
	const same = 0.5 // off the line, mm
	centre := face.HoleAt(*h)
	return slices.ContainsFunc(f.lines, func(p part.Vec) bool {
		off := centre.Sub(p)
		return off.AddScaled(-off.Dot(f.along), f.along).Norm() < same
	})
}

func fits(b *part.Bracket) []fit {
	var out []fit
	for i := range b.Bolts {
		if g := &b.Bolts[i]; g.SameAs == "" && len(g.Points) >= 2 {
			out = append(out, pattern(b, g)...)
		}
	}
	for i := range b.Pins {
		out = append(out, pinLine(b, &b.Pins[i])...)
	}
	return out
}

// pattern holds the near ply's holes against the far ply's: drilled in place, or tapped in the bracket's own steel, cut for the tap or marked by punch.
func pattern(b *part.Bracket, g *part.BoltGroup) []fit {
	near := b.Owner(g.Plies[0].Thing)
	f := fit{along: g.Pose.W(), pieces: []string{g.Plies[0].Thing}, hole: "match-drill the far side through it"}
	for _, p := range g.Points {
		f.lines = append(f.lines, g.Pose.At(p.X, p.Y, 0))
	}
	need, have, words := cutMM+drillMM, g.HoleMM-g.DiaMM, "match-drill the far side through the bracket"
	outermost, under := tappedOn(b, &f, g.Plies[1].Thing)
	if outermost != nil {
		f.hole, f.tapped, words = "", "after welding, marked off through the "+near, "mark the tapped holes off through the "+near+" after welding, then drill and tap"
		if outermost.CutMM > 0 {
			need = cutMM + cutMM
		}
	}
	switch far := b.Owner(g.Plies[1].Thing); {
	case need > have+1e-9:
		f.words = fmt.Sprintf("%s: holes may be off by %.1f mm and have %.1f mm of play over the bolt: %s", called("bolts", g.ID), need, have, words)
	case under:
		f.tapped = "after welding, drilled through the " + far
		f.words = fmt.Sprintf("%s: drill what lies under the %s through its holes after welding, then tap", called("bolts", g.ID), far)
	default:
		return nil
	}
	return []fit{f}
}

// tappedOn is a tapped hole of the far ply on a pattern's lines, nil for none, and whether one that is not cut lies under one that is.
func tappedOn(b *part.Bracket, f *fit, far string) (outermost *part.Hole, under bool) {
	for i := range b.Plates {
		p := &b.Plates[i]
		for k := range p.Holes {
			h := &p.Holes[k]
			if h.Finish != part.Tapped || !f.on(p, h) {
				continue
			}
			if p.ID == b.Owner(far) {
				outermost = h
			} else if h.CutMM == 0 {
				under = true
			}
		}
	}
	return outermost, under && outermost != nil && outermost.CutMM > 0
}

// called is what a thing is and its name, once where they are the same.
func called(what, id string) string {
	if id == what {
		return id
	}
	return what + " " + id
}

// pinLine reckons the ears' own holes: those that are welded apart from each other.
func pinLine(b *part.Bracket, p *part.Pin) []fit {
	lo, hi, play := math.Inf(1), math.Inf(-1), math.Inf(1)
	var ears []string
	for _, s := range p.Seats {
		if b.Plate(s.Thing) == nil {
			continue
		}
		ears = append(ears, s.Thing)
		lo, hi, play = min(lo, s.AtMM), max(hi, s.AtMM), min(play, s.HoleMM-p.DiaMM)
	}
	if len(ears) < 2 {
		return nil
	}
	off := WeldmentMM(hi - lo)
	if off <= play+1e-9 {
		return nil
	}
	return []fit{{
		along: p.Axis, lines: []part.Vec{p.Center}, pieces: ears, hole: "weld with a dummy pin through it, or ream in place",
		words: fmt.Sprintf("%s: its holes may come out %.1f mm off line by welding (ISO 13920 class B) and have %.1f mm of play: weld with a dummy pin through them, or ream in place", called("pin", p.ID), off, play),
	}}
}
