package scad

// Bent plates as they are folded: flat faces and the bends between them.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/fold"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// faceMM is how far an edge of a flat face may be off an arc of the outline.
const faceMM = 0.01

// folding takes a bent plate apart; it says why a plate stands flat although it is bent.
func folding(p *part.Plate) (s *fold.Pattern, flat string) {
	if len(p.Bends) == 0 || p.RolledMM > 0 {
		return nil, ""
	}
	s, err := fold.Take(p, faceMM)
	if err != nil {
		return nil, " (stands flat: " + err.Error() + ")"
	}
	return s, ""
}

// foldHelpers are the modules that bent plates share.
func (w *writer) foldHelpers() {
	w.line(`
// children of a flat pattern, turned with what a bend moves; its frame has x along the bend's line and y towards what moves
module turned(frame, back, take, radius, angle, thickness) {
  middle = sign(angle) * (radius + thickness / 2);
  multmatrix(frame) translate([0, -take / 2, middle]) rotate([angle, 0, 0]) translate([0, -take / 2, -middle]) multmatrix(back) children();
}
// the bend itself, square at its ends
module bend(frame, from, to, take, radius, angle, thickness) {
  a = abs(angle);
  r = radius + thickness;
  k = tan(a / 4);
  multmatrix(frame) translate([from, -take / 2, sign(angle) * (radius + thickness / 2)]) mirror([0, 0, angle < 0 ? 1 : 0])
    multmatrix([[0, 0, 1, 0], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 0, 1]]) linear_extrude(height = to - from)
      outline([[0, -r, k], [r * sin(a), -r * cos(a), 0], [radius * sin(a), -radius * cos(a), -k], [0, -radius, 0]]);
}`)
}

// folded writes the module of a bent plate as it is folded.
func (w *writer) folded(m *model, p piece) {
	thickness := w.thicknessOf(m, p.plate)
	var shown []string
	for _, f := range p.folds.Faces {
		if f.Bend >= 0 {
			continue
		}
		name := fmt.Sprintf("%s_face_%d", p.module, len(shown)+1)
		w.face(m, p, name, f)
		shown = append(shown, w.moves(p, f.Beyond, thickness)+fmt.Sprintf("linear_extrude(height = %s, center = true, convexity = 10) %s();", thickness, name))
	}
	for i, b := range p.folds.Bends {
		at := slices.IndexFunc(p.folds.Faces, func(f fold.Face) bool { return f.Bend == i })
		frame, _ := frames(b)
		shown = append(shown, w.moves(p, p.folds.Faces[at].Beyond[1:], thickness)+fmt.Sprintf("bend(%s, %s, %s, %s);",
			w.value(frame), w.number(b.From), w.number(b.To), w.about(b, thickness)))
	}
	w.line("module %s() {", p.foldedModule)
	for _, s := range shown {
		w.line("  %s", s)
	}
	w.line("}")
}

// moves are the calls that turn a face with the bends that move it, the innermost first.
func (w *writer) moves(p piece, beyond []int, thickness string) string {
	var out strings.Builder
	for _, i := range slices.Backward(beyond) {
		b := p.folds.Bends[i]
		frame, back := frames(b)
		fmt.Fprintf(&out, "turned(%s, %s, %s) ", w.value(frame), w.value(back), w.about(b, thickness))
	}
	return out.String()
}

// about is what both modules of a bend are told.
func (w *writer) about(b fold.Bend, thickness string) string {
	return fmt.Sprintf("%s, %s, %s, %s", w.number(b.FlatMM), w.number(b.RadiusMM), w.number(b.AngleRad*180/math.Pi), thickness)
}

// frames take a bend's own axes to those of the flat pattern, and back.
func frames(b fold.Bend) (frame, back part.Pose) {
	frame = part.Pose{Origin: part.Vec{X: b.A.X, Y: b.A.Y}, U: part.Vec{X: b.Along.X, Y: b.Along.Y}, V: part.Vec{X: b.Out.X, Y: b.Out.Y}}
	back = part.Pose{
		Origin: part.Vec{X: -b.A.Dot(b.Along), Y: -b.A.Dot(b.Out)},
		U:      part.Vec{X: b.Along.X, Y: b.Out.X}, V: part.Vec{X: b.Along.Y, Y: b.Out.Y},
	}
	return frame, back
}

// face writes a flat face with its openings.
func (w *writer) face(m *model, p piece, name string, f fold.Face) {
	points := make([]shape.Point, len(f.Outer))
	for i, v := range f.Outer {
		points[i] = p.folds.Points[v]
	}
	w.outline(name+"_outer", shape.Polyline(points...))
	w.line("module %s() {", name)
	w.line("  difference() {")
	w.line("    outline(%s_outer);", name)
	for _, k := range f.Openings {
		if k < len(p.plate.Holes) {
			h := p.plate.Holes[k]
			w.line("    translate(%s) hole(%s);", h.Center, find(m.holes, h.DiaMM))
		} else {
			w.line("    outline(%s_cutout_%d);", p.module, k-len(p.plate.Holes)+1)
		}
	}
	w.line("  }")
	w.line("}")
}
