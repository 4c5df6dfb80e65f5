// Package dxf writes plates as DXF cut files, one or several in a file, reads such files back and checks them before they leave the house.
// It knows no kinds and no geometry beyond what is cut; it never writes texts, dimensions, borders, blocks or splines, and never offsets a
// contour for the kerf.
//
// Written: header with version, units, extents and limits; the tables that readers insist on; lines, arcs, circles and
// lightweight polylines in model space. R2000 (AC1015) has closed LWPOLYLINE with bulges, the form shops ask for; R2010 (AC1024) is the
// same under a later version, for shops that refuse the older. R12 (AC1009) has only LINE, ARC and CIRCLE with shared end points, the form
// that every reader tried gets right.
//
//	write.go    one file
//	drawing.go  what goes into it, in which order, on which layer
//	writer.go   tags, handles, points
//	number.go   numbers
//	tables.go   the sections before the entities, made once
//	r12.go      sections and entities of AC1009
//	r2000.go    sections and entities of AC1015
//	tags.go     the file as tags, and its sections
//	read.go     the file as contours and strokes
//	chain.go    lines and arcs to contours
//	check.go    the rules a cut file must keep
package dxf

import "slices"

// Layers are the names of a file's layers; what has none is left out. The cut layer holds only what is cut. The zero value stands for
// OurLayers.
type Layers struct{ Cut, Etch, Bend, Centre string }

// OurLayers are the names used unless a shop wants others.
var OurLayers = Layers{"CUT", "ETCH", "BEND", "CENTRE"}

func (l Layers) orOurs() Layers {
	if l == (Layers{}) {
		return OurLayers
	}
	return l
}

// layer is a name with its colour number.
type layer struct {
	name   string
	colour int
}

// named lists the layers that have a name, in the order of the tables.
func (l Layers) named() []layer {
	all := []layer{{l.Etch, 5}, {l.Bend, 3}, {l.Centre, 1}, {l.Cut, 7}}
	return slices.DeleteFunc(all, func(x layer) bool { return x.name == "" })
}

// Version is a version of the format.
type Version int

const (
	R2000 Version = iota // AC1015: closed lightweight polylines with bulges
	R12                  // AC1009: lines, arcs and circles
	R2010                // AC1024: as R2000
)

func (v Version) String() string { return [...]string{"R2000", "R12", "R2010"}[v] }

// Options of Write. The zero value is the main file: R2000 in mm.
type Options struct {
	Version Version
	Inch    bool // coordinates in inches
	Layers  Layers
	// OutlineMarks draws the strokes of part marks as closed outlines instead of single lines.
	OutlineMarks bool
}

// mmPerInch is exact by definition.
const mmPerInch = 25.4
