package shop

import (
	"slices"

	"lugwright/part"
)

// Finished gives the bracket with every hole of its plates made as the shop makes it. Finished diameters stay; a hole that would be left with
// less than the smallest the shop cuts, by what is taken off for the drill or reamer, becomes a punch mark.
func (s *Profile) Finished(b *part.Bracket) *part.Bracket {
	out := *b
	out.Plates = slices.Clone(b.Plates)
	for i := range out.Plates {
		p := &out.Plates[i]
		p.Holes = slices.Clone(p.Holes)
		for k := range p.Holes {
			s.make(&p.Holes[k], p.ThicknessMM)
		}
		p.Etch = s.Marks.drawn(p.Etch)
	}
	return &out
}

// make settles how one hole is made.
func (s *Profile) make(h *part.Hole, thicknessMM float64) {
	if h.Finish == part.Tapped {
		s.makeTapped(h, thicknessMM)
		return
	}
	i := slices.IndexFunc(s.Holes, func(r HoleRule) bool { return r.fits(h, thicknessMM) })
	r := &s.Holes[i]
	least := s.SmallestHole.At(thicknessMM)
	switch r.Make {
	case ToSize:
		h.CutMM, h.Finish = h.DiaMM, part.AsCut
	case Undersize:
		h.CutMM, h.Finish = h.DiaMM-r.LessMM, r.Then
	case PilotOnly:
		h.CutMM, h.Finish = min(r.PilotMM, h.DiaMM), r.Then
	case PunchOnly:
		h.CutMM, h.Finish = 0, r.Then
	}
	if h.Finish != part.AsCut && h.CutMM < least {
		h.CutMM = 0
	}
}

// makeTapped cuts the hole for the tap where the shop can, else marks it.
func (s *Profile) makeTapped(h *part.Hole, thicknessMM float64) {
	drill, err := part.TapDrillMM(h.Thread)
	if err != nil || drill < s.SmallestHole.At(thicknessMM) || s.Process.thermal() {
		drill = 0 // a tap does not live in a hardened edge
	}
	h.CutMM = drill
}

func (r *HoleRule) fits(h *part.Hole, thicknessMM float64) bool {
	return (len(r.For) == 0 || slices.Contains(r.For, h.Purpose)) &&
		(r.UnderPerThick == 0 || h.DiaMM < r.UnderPerThick*thicknessMM) &&
		(r.UnderMM == 0 || h.DiaMM < r.UnderMM) &&
		(r.OverThickMM == 0 || thicknessMM > r.OverThickMM)
}

// drawn gives the marks in the shop's style. A mark's place was found for its own height, so that it is never made higher.
func (m *Marks) drawn(marks []part.Etch) []part.Etch {
	if m.Style == NoMarks {
		return nil
	}
	marks = slices.Clone(marks)
	for i := range marks {
		marks[i].HeightMM = min(marks[i].HeightMM, m.HeightMM)
	}
	return marks
}
