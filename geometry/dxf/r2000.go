package dxf

import "lugwright/geometry/shape"

// versionNames are what a header calls the versions.
var versionNames = map[Version]string{R2000: "AC1015", R12: "AC1009", R2010: "AC1024"}

func (w *writer) r2000Head(d drawing, o Options, handles int) {
	w.tag(999, kerfComment)
	w.section("HEADER")
	w.variable("$ACADVER")
	w.tag(1, versionNames[o.Version])
	w.variable("$DWGCODEPAGE")
	w.tag(3, "ANSI_1252")
	w.sizes(d.box)
	w.variable("$LUNITS")
	w.count(70, 2)
	insert, metric := 4, 1
	if o.Inch {
		insert, metric = 1, 0
	}
	w.variable("$INSUNITS")
	w.count(70, insert)
	w.variable("$MEASUREMENT")
	w.count(70, metric)
	w.variable("$HANDSEED")
	w.tag(5, hex(handles+1))
	w.endSection()
	w.section("CLASSES")
	w.endSection()
}

func (w *writer) r2000Body(d drawing) {
	w.section("TABLES")
	paper := w.r2000Tables()
	w.endSection()
	w.section("BLOCKS")
	w.r2000Block("*Model_Space", w.space, false)
	w.r2000Block("*Paper_Space", paper, true)
	w.endSection()
	w.section("ENTITIES")
	for _, s := range d.strokes {
		w.r2000Stroke(s)
	}
	for _, l := range d.contours {
		w.r2000Contour(l)
	}
	w.endSection()
	w.r2000Objects()
	w.tag(0, "EOF")
}

// r2000Tables returns the handle of the paper space's block record; the model space's is kept for the entities.
func (w *writer) r2000Tables() (paper string) {
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
	w.tag(105, w.handle())
	w.tag(330, t)
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

func (w *writer) r2000Table(name string, records int) (handle string) {
	handle = w.handle()
	w.tag(0, "TABLE")
	w.tag(2, name)
	w.tag(5, handle)
	w.tag(330, "0")
	w.tag(100, "AcDbSymbolTable")
	w.count(70, records)
	return handle
}

func (w *writer) r2000Record(kind, table, class, name string) {
	w.r2000RecordHead(kind, table, class, name)
	w.count(70, 0)
}

func (w *writer) r2000RecordHead(kind, table, class, name string) (handle string) {
	handle = w.handle()
	w.tag(0, kind)
	w.tag(5, handle)
	w.tag(330, table)
	w.tag(100, "AcDbSymbolTableRecord")
	w.tag(100, class)
	w.tag(2, name)
	return handle
}

func (w *writer) r2000BlockRecord(table, name string) (handle string) {
	return w.r2000RecordHead("BLOCK_RECORD", table, "AcDbBlockTableRecord", name)
}

func (w *writer) r2000Layer(table, name string, colour int) {
	w.r2000Record("LAYER", table, "AcDbLayerTableRecord", name)
	w.count(62, colour)
	w.tag(6, "CONTINUOUS")
}

func (w *writer) r2000Block(name, record string, paper bool) {
	w.r2000BlockPart("BLOCK", "AcDbBlockBegin", record, paper)
	w.tag(2, name)
	w.count(70, 0)
	w.point(10, shape.Point{}, false)
	w.tag(3, name)
	w.tag(1, "")
	w.r2000BlockPart("ENDBLK", "AcDbBlockEnd", record, paper)
}

func (w *writer) r2000BlockPart(kind, class, record string, paper bool) {
	w.tag(0, kind)
	w.tag(5, w.handle())
	w.tag(330, record)
	w.tag(100, "AcDbEntity")
	if paper {
		w.count(67, 1)
	}
	w.tag(8, "0")
	w.tag(100, class)
}

func (w *writer) r2000Entity(kind, layer, class string) {
	w.tag(0, kind)
	w.tag(5, w.handle())
	w.tag(330, w.space)
	w.tag(100, "AcDbEntity")
	w.tag(8, layer)
	w.tag(100, class)
}

func (w *writer) r2000Stroke(s Stroke) {
	if len(s.Points) == 2 && !s.Closed {
		w.r2000Entity("LINE", s.Layer, "AcDbLine")
		w.point(10, s.Points[0], false)
		w.point(11, s.Points[1], false)
		return
	}
	w.r2000Polyline(s.Layer, len(s.Points), s.Closed)
	for _, p := range s.Points {
		w.point(10, p, true)
	}
}

func (w *writer) r2000Contour(l shape.Loop) {
	if center, dia, ok := l.IsCircle(); ok {
		w.r2000Entity("CIRCLE", w.layers.Cut, "AcDbCircle")
		w.circle(center, dia)
		return
	}
	w.r2000Polyline(w.layers.Cut, len(l), true)
	for _, v := range l {
		w.point(10, v.Point, true)
		// One widely used importer loses the straight edges of a polyline that writes a bulge of 0.
		if v.Bulge != 0 {
			w.number(42, v.Bulge)
		}
	}
}

func (w *writer) r2000Polyline(layer string, vertices int, closed bool) {
	w.r2000Entity("LWPOLYLINE", layer, "AcDbPolyline")
	w.count(90, vertices)
	if closed {
		w.count(70, 1)
	} else {
		w.count(70, 0)
	}
}

// r2000Objects writes the root dictionary with its one required entry.
func (w *writer) r2000Objects() {
	root, group := w.handle(), w.handle()
	w.section("OBJECTS")
	w.dictionary(root, "0")
	w.tag(3, "ACAD_GROUP")
	w.tag(350, group)
	w.dictionary(group, root)
	w.endSection()
}

func (w *writer) dictionary(handle, owner string) {
	w.tag(0, "DICTIONARY")
	w.tag(5, handle)
	w.tag(330, owner)
	w.tag(100, "AcDbDictionary")
	w.count(281, 1)
}
