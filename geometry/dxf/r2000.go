package dxf

import (
	"strconv"

	"lugwright/geometry/shape"
)

func (w *writer) r2000File(d *drawing, o Options, t *tables) {
	w.r2000Head(d, o, t.handles+len(d.strokes)+len(d.contours)+objects)
	w.open(t)
	to, points := w.buf, d.points
	for _, s := range d.strokes {
		to = w.r2000Stroke(to, s, points[:s.points])
		points = points[s.points:]
	}
	for i := range d.contours {
		to = w.r2000Contour(to, &d.contours[i])
	}
	w.buf = to
	w.endSection()
	w.r2000Objects()
	w.tag(0, "EOF")
}

func (w *writer) r2000Head(d *drawing, o Options, handles int) {
	version, units := "AC1015", "  9\n$INSUNITS\n 70\n4\n  9\n$MEASUREMENT\n 70\n1\n"
	if o.Version == R2010 {
		version = "AC1024"
	}
	if o.Inch {
		units = "  9\n$INSUNITS\n 70\n1\n  9\n$MEASUREMENT\n 70\n0\n"
	}
	w.text("999\n" + kerfComment + "\n  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n")
	w.tag(1, version)
	w.text("  9\n$DWGCODEPAGE\n  3\nANSI_1252\n")
	w.sizes(d.box)
	w.text("  9\n$LUNITS\n 70\n2\n")
	w.text(units)
	w.text("  9\n$HANDSEED\n")
	w.reference(5, handles+1)
	w.endSection()
}

func (w *writer) r2000Tables() {
	w.section("CLASSES")
	w.endSection()
	w.section("TABLES")
	paper := w.r2000SymbolTables()
	w.endSection()
	w.section("BLOCKS")
	w.r2000Block("*Model_Space", w.space, false)
	w.r2000Block("*Paper_Space", paper, true)
	w.endSection()
	w.section("ENTITIES")
}

// r2000SymbolTables returns the handle of the paper space's block record; the model space's is kept for the entities.
func (w *writer) r2000SymbolTables() (paper int) {
	w.emptyTable("VPORT")
	w.r2000LineTypes()
	w.r2000Layers()

	t := w.r2000Table("STYLE", 1)
	w.r2000Record("STYLE", t, "AcDbTextStyleTableRecord", "STANDARD")
	w.textStyle()
	w.tag(0, "ENDTAB")

	w.emptyTable("VIEW")
	w.emptyTable("UCS")

	t = w.r2000Table("APPID", 1)
	w.r2000Record("APPID", t, "AcDbRegAppTableRecord", "ACAD")
	w.tag(0, "ENDTAB")

	w.r2000DimStyles()

	t = w.r2000Table("BLOCK_RECORD", 2)
	w.space = w.r2000BlockRecord(t, "*Model_Space")
	paper = w.r2000BlockRecord(t, "*Paper_Space")
	w.tag(0, "ENDTAB")
	return paper
}

func (w *writer) r2000LineTypes() {
	names := []string{"BYBLOCK", "BYLAYER", "CONTINUOUS"}
	t := w.r2000Table("LTYPE", len(names))
	for _, name := range names {
		w.r2000Record("LTYPE", t, "AcDbLinetypeTableRecord", name)
		w.tag(3, "")
		w.count(72, 65)
		w.count(73, 0)
		w.number(40, 0)
	}
	w.tag(0, "ENDTAB")
}

func (w *writer) r2000Layers() {
	t := w.r2000Table("LAYER", len(w.layers.named())+1)
	w.r2000Layer(t, "0", 7)
	for _, l := range w.layers.named() {
		w.r2000Layer(t, l.name, l.colour)
	}
	w.tag(0, "ENDTAB")
}

// r2000DimStyles: the one record whose handle is in group 105.
func (w *writer) r2000DimStyles() {
	t := w.r2000Table("DIMSTYLE", 1)
	w.tag(100, "AcDbDimStyleTable")
	w.tag(0, "DIMSTYLE")
	w.reference(105, w.handle())
	w.reference(330, t)
	w.tag(100, "AcDbSymbolTableRecord")
	w.tag(100, "AcDbDimStyleTableRecord")
	w.tag(2, "STANDARD")
	w.count(70, 0)
	w.tag(0, "ENDTAB")
}

func (w *writer) emptyTable(name string) {
	w.r2000Table(name, 0)
	w.tag(0, "ENDTAB")
}

func (w *writer) r2000Table(name string, records int) (handle int) {
	handle = w.handle()
	w.tag(0, "TABLE")
	w.tag(2, name)
	w.reference(5, handle)
	w.reference(330, 0)
	w.tag(100, "AcDbSymbolTable")
	w.count(70, records)
	return handle
}

func (w *writer) r2000Record(kind string, table int, class, name string) {
	w.r2000RecordHead(kind, table, class, name)
	w.count(70, 0)
}

func (w *writer) r2000RecordHead(kind string, table int, class, name string) (handle int) {
	handle = w.handle()
	w.tag(0, kind)
	w.reference(5, handle)
	w.reference(330, table)
	w.tag(100, "AcDbSymbolTableRecord")
	w.tag(100, class)
	w.tag(2, name)
	return handle
}

func (w *writer) r2000BlockRecord(table int, name string) (handle int) {
	return w.r2000RecordHead("BLOCK_RECORD", table, "AcDbBlockTableRecord", name)
}

func (w *writer) r2000Layer(table int, name string, colour int) {
	w.r2000Record("LAYER", table, "AcDbLayerTableRecord", name)
	w.count(62, colour)
	w.tag(6, "CONTINUOUS")
}

func (w *writer) r2000Block(name string, record int, paper bool) {
	w.r2000BlockPart("BLOCK", "AcDbBlockBegin", record, paper)
	w.tag(2, name)
	w.count(70, 0)
	w.text(origin)
	w.tag(3, name)
	w.tag(1, "")
	w.r2000BlockPart("ENDBLK", "AcDbBlockEnd", record, paper)
}

func (w *writer) r2000BlockPart(kind, class string, record int, paper bool) {
	w.tag(0, kind)
	w.reference(5, w.handle())
	w.reference(330, record)
	w.tag(100, "AcDbEntity")
	if paper {
		w.count(67, 1)
	}
	w.tag(8, "0")
	w.tag(100, class)
}

// r2000Entity adds the head, which is the kind of entity, the handle, the space, the layer's group and the class.
func (w *writer) r2000Entity(to []byte, head, layer, class string) []byte {
	to = appendHex(append(to, head...), w.handle())
	to = appendHex(append(to, "330\n"...), w.space)
	to = append(to, "100\nAcDbEntity\n"...)
	to = append(to, layer...)
	to = append(to, "100\n"...)
	return append(to, class...)
}

func (w *writer) r2000Stroke(to []byte, s polyline, points []shape.Point) []byte {
	if len(points) == 2 && !s.closed {
		to = w.r2000Entity(to, "  0\nLINE\n  5\n", s.layer, "AcDbLine\n")
		return w.ends(to, points[0], points[1])
	}
	to = w.r2000Polyline(to, s.layer, len(points), s.closed)
	for _, p := range points {
		to = w.point(to, p)
	}
	return to
}

func (w *writer) r2000Contour(to []byte, c *cut) []byte {
	if c.round {
		to = w.r2000Entity(to, "  0\nCIRCLE\n  5\n", w.layers.Cut, "AcDbCircle\n")
		return w.circle(to, c.center, c.dia/2)
	}
	to = w.r2000Polyline(to, w.layers.Cut, len(c.loop), true)
	for _, v := range c.loop {
		to = w.point(to, v.Point)
		// One widely used importer loses the straight edges of a polyline that writes a bulge of 0.
		if v.Bulge != 0 {
			to = w.real(append(to, " 42\n"...), v.Bulge)
		}
	}
	return to
}

func (w *writer) r2000Polyline(to []byte, layer string, vertices int, closed bool) []byte {
	to = w.r2000Entity(to, "  0\nLWPOLYLINE\n  5\n", layer, "AcDbPolyline\n 90\n")
	to = strconv.AppendInt(to, int64(vertices), 10)
	if closed {
		return append(to, "\n 70\n1\n"...)
	}
	return append(to, "\n 70\n0\n"...)
}

// objects are the handles that r2000Objects gives out.
const objects = 2

// r2000Objects writes the root dictionary with its one required entry.
func (w *writer) r2000Objects() {
	root, group := w.handle(), w.handle()
	w.section("OBJECTS")
	w.dictionary(root, 0)
	w.tag(3, "ACAD_GROUP")
	w.reference(350, group)
	w.dictionary(group, root)
	w.endSection()
}

func (w *writer) dictionary(handle, owner int) {
	w.tag(0, "DICTIONARY")
	w.reference(5, handle)
	w.reference(330, owner)
	w.tag(100, "AcDbDictionary")
	w.count(281, 1)
}
