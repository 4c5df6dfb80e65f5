package fab

// Where a part mark fits on a plate.

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
)

const (
	markMarginMM = 2.5 // steel round the text, half a millimetre of it for rounding
	markSteps    = 6   // places tried along each side
)

// markHeights are tried from the easiest to read down. Common practice, no source.
var markHeights = []float64{8, 7, 6, 5, 4}

// MarkLetters is the length to reckon with for a mark grown from a root: hand letter and number follow it.
func MarkLetters(root string) int { return max(8, len([]rune(root))+4) }

// MarkAll etches the part mark of every plate that has room for one. The text lies wholly in the steel, clear of
// edges and holes, near the middle of the plate, level or upright; where there is room for it, also clear of what is welded onto the plate.
func MarkAll(b *part.Bracket, root string) {
	for i, first := range firsts(b.Plates) {
		p := &b.Plates[i]
		if first < i {
			if e := b.Plates[first].Etch; len(e) > 0 {
				p.Etch = append(p.Etch, e...)
			}
			continue
		}
		taken := covered(b, p)
		if !mark(p, MarkLetters(root), taken) && taken != nil {
			mark(p, MarkLetters(root), nil)
		}
	}
}

// firsts gives for each plate the first that is the same piece, so that like pieces stay alike.
func firsts(plates []part.Plate) []int {
	out := make([]int, len(plates))
	for i := range plates {
		for out[i] < i && !plates[out[i]].SamePiece(&plates[i]) {
			out[i]++
		}
	}
	return out
}

// covered lists what is welded onto a plate, each as the box round its weld.
func covered(b *part.Bracket, p *part.Plate) []shape.Box {
	var out []shape.Box
	for i := range b.Welds {
		w := &b.Welds[i]
		if w.Joins[1] != p.ID {
			continue
		}
		box := shape.EmptyBox()
		for _, s := range w.Segments {
			for _, at := range [2]part.Vec{s.A, s.B} {
				u, v, _ := p.Pose.Local(at)
				box = box.Extend(shape.Point{X: u, Y: v})
			}
		}
		out = append(out, box.Grow(w.LegMM))
	}
	return out
}

// mark etches one plate, clear of some boxes; false when the plate is too small.
func mark(p *part.Plate, letters int, taken []shape.Box) bool {
	s := newSheet(p, taken)
	for _, h := range markHeights {
		long := stroke.LettersMM(letters, h)
		if at, ok := s.place(long, h); ok {
			p.Etch = append(p.Etch, part.Etch{Text: part.MarkHere, At: at.Add(shape.Point{X: long / 2, Y: h / 2}), HeightMM: h})
			return true
		}
		if at, ok := s.place(h, long); ok {
			p.Etch = append(p.Etch, part.Etch{Text: part.MarkHere, At: at.Add(shape.Point{X: h / 2, Y: long / 2}), HeightMM: h, AngleRad: math.Pi / 2})
			return true
		}
	}
	return false
}

// place looks for the corner of a w x h box in the steel, from the middle outwards.
func (s *sheet) place(w, h float64) (shape.Point, bool) {
	roomX, roomY := s.box.Width()-w-2*markMarginMM, s.box.Height()-h-2*markMarginMM
	if roomX < 0 || roomY < 0 {
		return shape.Point{}, false
	}
	for i := range markSteps + 1 {
		for j := range markSteps + 1 {
			at := s.box.Min.Add(shape.Point{
				X: markMarginMM + roomX*fromMiddle(i), Y: markMarginMM + roomY*fromMiddle(j),
			})
			text := shape.Box{Min: at, Max: at.Add(shape.Point{X: w, Y: h})}
			if !s.covered(text) && s.clear(text) && s.offFolds(text) {
				return at, true
			}
		}
	}
	return shape.Point{}, false
}

// fromMiddle runs 1/2, then a step to either side in turn, out to 0 and 1.
func fromMiddle(i int) float64 {
	step := float64((i+1)/2) / markSteps
	if i%2 == 1 {
		step = -step
	}
	return 0.5 + step
}
