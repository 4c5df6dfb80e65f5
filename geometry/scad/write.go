package scad

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"lugwright/part"
)

// Write writes the bracket as one OpenSCAD file. It fails when an option is out of range or a number is not finite or beyond
// 1e6.
func Write(out io.Writer, b *part.Bracket, o Options) error {
	if o.Facets == 0 {
		o.Facets = usualFacets
	}
	if o.Facets < 8 || o.Facets > 720 {
		return fmt.Errorf("facets: %d; 8 to 720 are accepted", o.Facets)
	}
	m := newModel(b)
	var w writer
	w.head(b, m)
	w.settings(m, o)
	w.helpers()
	if slices.ContainsFunc(m.pieces, func(p piece) bool { return p.folds != nil }) {
		w.foldHelpers()
	}
	for _, p := range m.pieces {
		w.piece(m, p)
	}
	w.assembly(b, m)
	w.show(m)
	if w.err != nil {
		return fmt.Errorf("bracket %s: %w", b.Name, w.err)
	}
	_, err := out.Write(w.buf)
	return err
}

func (w *writer) head(b *part.Bracket, m *model) {
	w.line("// %s: %s, %s hand. Lengths in mm; x forward, y left, z up.", plain(b.Name), plain(b.Kind), b.Hand)
	w.line("//")
	if len(b.Params) > 0 {
		w.line("// Built from")
	}
	for _, p := range b.Params {
		value := w.number(p.Number) + " " + p.Unit
		if p.Text != "" {
			value = p.Text
		}
		w.line("//   %s = %s", plain(p.Name), strings.TrimRight(plain(value), " "))
	}
	w.line("// Parts (mark, name, material: where it stands)")
	for _, p := range m.pieces {
		w.line("//   %s", plain(p.says))
	}
	w.line("// A change of thickness or hole here changes this picture and nothing else: cut files and checks keep the numbers above.")
	if slices.ContainsFunc(b.Plates, func(p part.Plate) bool { return formed(&p) }) {
		w.line("// The thickness of a bent or rolled plate is not among the variables: its flat shape was worked out for the thickness it has. Build the")
		w.line("// bracket again for another.")
	}
	w.line("// Bent plates lie flat when they are shown alone and are folded in the assembly; rolled plates stand flat. Holes are finished")
	w.line("// size, and no facet makes one smaller. With d = 2 PI / facets a volume is off by less than")
	w.line("// d^2 / 12 * thickness * (sum of radius^2 * sweep over arcs and holes), for bends with their length as thickness.")
}

func (w *writer) settings(m *model, o Options) {
	w.line("\n/* [View] */")
	w.line("// what to show; a single part lies as it is cut")
	w.line(`part = "assembly"; // [%s]`, strings.Join(append([]string{"assembly"}, m.selectable()...), ", "))
	w.line("// how far parts move out from the middle")
	w.line("explode = %s; // [0:5:300]", o.ExplodeMM)
	w.line("// sides of a full circle")
	w.line("facets = %d; // [12:4:360]", o.Facets)
	w.variables("Thickness", m.thickness)
	w.variables("Holes, finished diameter", m.holes)
	w.line("\n/* [Hidden] */")
}

func (w *writer) variables(tab string, list []variable) {
	if len(list) == 0 {
		return
	}
	w.line("\n/* [%s] */", tab)
	for _, v := range list {
		lo, step, hi := v.slider()
		w.line("// %s", plain(v.comment()))
		w.line("%s = %s; // [%s:%s:%s]", v.name, v.value, lo, step, hi)
	}
}

// helpers turn corners with bulges into points on the true arc, as shape.Edge.At does.
func (w *writer) helpers() {
	w.line(`
// points from a to before b on an arc; k is the tangent of a quarter of its sweep, counter-clockwise positive
function arc(a, b, k) = k == 0 ? [a] :
  let (h = 2 * atan(k), n = max(1, ceil(abs(2 * h) * facets / 360 - 0.001)), d = b - a)
  [for (i = [0 : n - 1]) let (s = sin(i / n * h) / sin(h), t = (i / n - 1) * h)
    a + s * [cos(t) * d[0] - sin(t) * d[1], sin(t) * d[0] + cos(t) * d[1]]];
function points(l) = [for (i = [0 : len(l) - 1])
  let (p = l[i], q = l[(i + 1) %% len(l)]) each arc([p[0], p[1]], [q[0], q[1]], p[2])];
module outline(l) { polygon(points(l)); }
// the flats touch the true circle
module hole(d) { circle(d = d / cos(180 / facets), $fn = facets); }
module place(away, pose) { translate(explode * away) multmatrix(pose) children(); }`)
}

func (w *writer) piece(m *model, p piece) {
	w.line("\n// %s", plain(p.says))
	switch {
	case p.plate != nil:
		w.plate(m, p)
	case p.member != nil:
		w.member(m, p)
	default:
		w.line("module %s() { cylinder(d = %s, h = %s, center = true, $fn = facets); }", p.module, p.pin.DiaMM, p.pin.LengthMM)
	}
}

func (w *writer) plate(m *model, p piece) {
	outer, cutouts := loops(p.plate)
	w.outline(p.module+"_outer", outer)
	for i, l := range cutouts {
		w.outline(fmt.Sprintf("%s_cutout_%d", p.module, i+1), l)
	}
	w.line("module %s_2d() {", p.module)
	w.line("  difference() {")
	w.line("    outline(%s_outer);", p.module)
	for _, h := range p.plate.Holes {
		w.line("    translate(%s) hole(%s);", h.Center, find(m.holes, h.DiaMM))
	}
	for i := range cutouts {
		w.line("    outline(%s_cutout_%d);", p.module, i+1)
	}
	w.line("  }")
	w.line("}")
	w.line("module %s() {", p.module)
	w.line("  linear_extrude(height = %s, center = true, convexity = 10) %s_2d();", w.thicknessOf(m, p.plate), p.module)
	w.line("}")
	if p.folds != nil {
		w.folded(m, p)
	}
}

func (w *writer) assembly(b *part.Bracket, m *model) {
	if len(b.Bolts) > 0 {
		w.line("\n// shank from z = -below to above; head and nut are plain discs, not to any standard")
		w.line("module bolt(d, below, above) {")
		w.line("  translate([0, 0, -below]) cylinder(d = d, h = below + above, $fn = facets);")
		w.line("  translate([0, 0, above]) cylinder(d = 1.7 * d, h = 0.65 * d, $fn = facets);")
		w.line("  translate([0, 0, -below - 0.8 * d]) cylinder(d = 1.7 * d, h = 0.8 * d, $fn = facets);")
		w.line("}")
	}
	w.line("\nmodule assembly() {")
	for _, p := range m.pieces {
		w.line("  color(%s) {", colour(p))
		module := p.module
		if p.folds != nil {
			module = p.foldedModule
		}
		for _, s := range p.stands {
			w.line("    place(%s, %s) %s();", s.away, s.pose, module)
		}
		w.line("  }")
	}
	for _, g := range b.Bolts {
		if g.SameAs != "" {
			continue
		}
		for _, pt := range g.Points {
			at := g.Pose
			at.Origin = g.Pose.At(pt.X, pt.Y, 0)
			w.line("  color([0.45, 0.46, 0.48]) place(%s, %s) bolt(%s, %s, %s);", g.Pose.W().Scale(2), at, g.DiaMM, g.GripMM-g.Plies[0].ThicknessMM, g.Plies[0].ThicknessMM)
		}
	}
	w.line("}")
}

func colour(p piece) string {
	switch {
	case p.plate != nil:
		return "[0.72, 0.75, 0.78]"
	case p.member != nil:
		return "[0.60, 0.64, 0.68]"
	}
	return "[0.45, 0.46, 0.48]"
}

func (w *writer) show(m *model) {
	w.line("\nif (part == \"assembly\") assembly();")
	for _, p := range m.pieces {
		w.line("else if (part == \"%s\") %s();", p.name, p.module)
		if p.folds != nil {
			w.line("else if (part == \"%s\") %s();", p.foldedName, p.foldedModule)
		}
	}
}
