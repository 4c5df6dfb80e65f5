package dxf

import "lugwright/geometry/shape"

func (w *writer) r12File(d *drawing, o Options, t *tables) {
	w.r12Head(d, o.Inch, t.handles+d.segments())
	w.open(t)
	to, points := w.buf, d.points
	for _, s := range d.strokes {
		to = w.r12Stroke(to, s, points[:s.points])
		points = points[s.points:]
	}
	for i := range d.contours {
		to = w.r12Contour(to, &d.contours[i])
	}
	w.buf = to
	w.endSection()
	w.tag(0, "EOF")
}

// segments counts the drawing's lines, arcs and circles.
func (d *drawing) segments() int {
	n := len(d.points)
	for _, s := range d.strokes {
		if !s.closed {
			n--
		}
	}
	for i := range d.contours {
		if c := &d.contours[i]; c.round {
			n++
		} else {
			n += len(c.loop)
		}
	}
	return n
}

// r12Head writes the header. R12 has no variable for the unit, so a comment names it.
func (w *writer) r12Head(d *drawing, inch bool, handles int) {
	w.tag(999, unitComment(inch))
	w.text("999\n" + kerfComment + "\n  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1009\n")
	w.sizes(d.box)
	w.text("  9\n$LUNITS\n 70\n2\n  9\n$HANDLING\n 70\n1\n  9\n$HANDSEED\n")
	w.reference(5, handles+1)
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

func (w *writer) r12Tables() {
	w.section("TABLES")
	w.r12LineTypes()
	w.r12Layers()
	w.r12Table("STYLE", 1)
	w.r12Record("STYLE", "STANDARD")
	w.textStyle()
	w.tag(0, "ENDTAB")
	w.endSection()
	w.section("BLOCKS")
	// Empty as they are, one reader returns nothing without them.
	w.r12Block("$MODEL_SPACE")
	w.r12Block("$PAPER_SPACE")
	w.endSection()
	w.section("ENTITIES")
}

func (w *writer) r12LineTypes() {
	w.r12Table("LTYPE", 1)
	w.r12Record("LTYPE", "CONTINUOUS")
	w.tag(3, "Solid line")
	w.count(72, 65)
	w.count(73, 0)
	w.number(40, 0)
	w.tag(0, "ENDTAB")
}

func (w *writer) r12Layers() {
	w.r12Table("LAYER", len(w.layers.named())+1)
	w.r12Layer("0", 7)
	for _, l := range w.layers.named() {
		w.r12Layer(l.name, l.colour)
	}
	w.tag(0, "ENDTAB")
}

func (w *writer) r12Table(name string, records int) {
	w.tag(0, "TABLE")
	w.tag(2, name)
	w.count(70, records)
}

func (w *writer) r12Record(kind, name string) {
	w.tag(0, kind)
	w.reference(5, w.handle())
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
	w.reference(5, w.handle())
	w.tag(8, "0")
	w.tag(2, name)
	w.count(70, 0)
	w.text(origin)
	w.tag(3, name)
	w.tag(1, "")
	w.tag(0, "ENDBLK")
	w.reference(5, w.handle())
	w.tag(8, "0")
}

func (w *writer) r12Stroke(to []byte, s polyline, points []shape.Point) []byte {
	for i := range len(points) - 1 {
		to = w.r12Line(to, s.layer, points[i], points[i+1])
	}
	if s.closed {
		to = w.r12Line(to, s.layer, points[len(points)-1], points[0])
	}
	return to
}

func (w *writer) r12Contour(to []byte, c *cut) []byte {
	if c.round {
		to = w.r12Entity(to, "  0\nCIRCLE\n  5\n", w.layers.Cut)
		return w.circle(to, c.center, c.dia/2)
	}
	for i := range c.loop {
		if e := c.loop.Edge(i); e.IsArc() {
			to = w.r12Arc(to, e)
		} else {
			to = w.r12Line(to, w.layers.Cut, e.A, e.B)
		}
	}
	return to
}

func (w *writer) r12Arc(to []byte, e shape.Edge) []byte {
	to = w.r12Entity(to, "  0\nARC\n  5\n", w.layers.Cut)
	center := e.Center()
	to = w.circle(to, center, e.Radius())
	start, end := arcDegrees(e, center)
	to = append(to, " 50\n"...)
	to = w.real(to, start)
	to = append(to, " 51\n"...)
	return w.real(to, end)
}

func (w *writer) r12Line(to []byte, layer string, a, b shape.Point) []byte {
	return w.ends(w.r12Entity(to, "  0\nLINE\n  5\n", layer), a, b)
}

// r12Entity adds the head, which is the kind of entity, the handle and the layer's group.
func (w *writer) r12Entity(to []byte, head, layer string) []byte {
	to = appendHex(append(to, head...), w.handle())
	return append(to, layer...)
}
