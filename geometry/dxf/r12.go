package dxf

import "lugwright/geometry/shape"

// r12Head writes the header. R12 has no variable for the unit, so a comment names it.
func (w *writer) r12Head(d drawing, inch bool, handles int) {
	w.tag(999, unitComment(inch))
	w.tag(999, kerfComment)
	w.section("HEADER")
	w.variable("$ACADVER")
	w.tag(1, versionNames[R12])
	w.sizes(d.box)
	w.variable("$LUNITS")
	w.count(70, 2)
	w.variable("$HANDLING")
	w.count(70, 1)
	w.variable("$HANDSEED")
	w.tag(5, hex(handles+1))
	w.endSection()
}

// kerfComment says what a shop must know: contours are finished edges.
const kerfComment = "CONTOURS ARE FINISHED EDGES, NOT OFFSET FOR THE KERF"

func unitComment(inch bool) string {
	if inch {
		return "UNIT INCH"
	}
	return "UNIT MM"
}

func (w *writer) r12Body(d drawing) {
	w.section("TABLES")
	w.r12Tables()
	w.endSection()
	w.section("BLOCKS")
	// Empty as they are, one reader returns nothing without them.
	w.r12Block("$MODEL_SPACE")
	w.r12Block("$PAPER_SPACE")
	w.endSection()
	w.section("ENTITIES")
	for _, s := range d.strokes {
		for i := range len(s.Points) - 1 {
			w.r12Line(s.Layer, s.Points[i], s.Points[i+1])
		}
		if s.Closed {
			w.r12Line(s.Layer, s.Points[len(s.Points)-1], s.Points[0])
		}
	}
	for _, l := range d.contours {
		w.r12Contour(l)
	}
	w.endSection()
	w.tag(0, "EOF")
}

func (w *writer) r12Tables() {
	w.r12Table("LTYPE", 1)
	w.r12Record("LTYPE", "CONTINUOUS")
	w.tag(3, "Solid line")
	w.count(72, 65)
	w.count(73, 0)
	w.number(40, 0)
	w.tag(0, "ENDTAB")

	w.r12Table("LAYER", len(w.layers.named())+1)
	w.r12Layer("0", 7)
	for _, l := range w.layers.named() {
		w.r12Layer(l.name, l.colour)
	}
	w.tag(0, "ENDTAB")

	w.r12Table("STYLE", 1)
	w.r12Record("STYLE", "STANDARD")
	w.textStyle()
	w.tag(0, "ENDTAB")
}

func (w *writer) r12Table(name string, records int) {
	w.tag(0, "TABLE")
	w.tag(2, name)
	w.count(70, records)
}

func (w *writer) r12Record(kind, name string) {
	w.tag(0, kind)
	w.tag(5, w.handle())
	w.tag(2, name)
	w.count(70, 0)
}

func (w *writer) r12Layer(name string, colour int) {
	w.r12Record("LAYER", name)
	w.count(62, colour)
	w.tag(6, "CONTINUOUS")
}

// textStyle writes the fields of a text style, which readers want even where no text is.
func (w *writer) textStyle() {
	w.number(40, 0)
	w.number(41, 1)
	w.number(50, 0)
	w.count(71, 0)
	w.number(42, 2.5)
	w.tag(3, "txt")
	w.tag(4, "")
}

func (w *writer) r12Block(name string) {
	w.tag(0, "BLOCK")
	w.tag(5, w.handle())
	w.tag(8, "0")
	w.tag(2, name)
	w.count(70, 0)
	w.point(10, shape.Point{}, false)
	w.tag(3, name)
	w.tag(1, "")
	w.tag(0, "ENDBLK")
	w.tag(5, w.handle())
	w.tag(8, "0")
}

func (w *writer) r12Contour(l shape.Loop) {
	if center, dia, ok := l.IsCircle(); ok {
		w.r12Entity("CIRCLE", w.layers.Cut)
		w.circle(center, dia)
		return
	}
	for _, e := range l.Edges() {
		if e.IsArc() {
			w.r12Entity("ARC", w.layers.Cut)
			w.circle(e.Center(), 2*e.Radius())
			start, end := arcDegrees(e)
			w.number(50, start)
			w.number(51, end)
		} else {
			w.r12Line(w.layers.Cut, e.A, e.B)
		}
	}
}

func (w *writer) r12Entity(kind, layer string) {
	w.tag(0, kind)
	w.tag(5, w.handle())
	w.tag(8, layer)
}

func (w *writer) r12Line(layer string, a, b shape.Point) {
	w.r12Entity("LINE", layer)
	w.point(10, a, false)
	w.point(11, b, false)
}

func (w *writer) circle(center shape.Point, dia float64) {
	w.point(10, center, false)
	w.length(40, dia/2)
}
