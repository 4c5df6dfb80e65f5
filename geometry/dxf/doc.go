// Package dxf writes one plate as a DXF cut file, reads such files back and checks them before they leave the house. It
// knows no kinds and no geometry beyond what is cut; it never writes texts, dimensions, borders, blocks or splines.
//
// Written: header with version, units, extents and limits; the tables that readers insist on; lines, arcs, circles and
// lightweight polylines in model space. R2000 (AC1015) has closed LWPOLYLINE with bulges, the form shops ask for. R12
// (AC1009) has only LINE, ARC and CIRCLE with shared end points, the form that every reader tried gets right.
//
//	write.go    what goes into the file, in which order, on which layer
//	writer.go   tags, numbers, handles
//	r12.go      sections and entities of AC1009
//	r2000.go    sections and entities of AC1015
//	tags.go     the file as tags, and its sections
//	read.go     the file as contours and strokes
//	chain.go    lines and arcs to contours
//	check.go    the rules a cut file must keep
package dxf

// Layers. The cut layer holds only what is cut.
const (
	LayerCut    = "CUT"
	LayerEtch   = "ETCH"
	LayerBend   = "BEND"
	LayerCentre = "CENTRE"
)

// layers in the order of the tables, with their colour numbers.
var layers = []struct {
	name   string
	colour int
}{{LayerEtch, 5}, {LayerBend, 3}, {LayerCentre, 1}, {LayerCut, 7}}

// Version is a version of the format.
type Version int

const (
	R2000 Version = iota // AC1015: closed lightweight polylines with bulges
	R12                  // AC1009: lines, arcs and circles
)

func (v Version) String() string { return [...]string{"R2000", "R12"}[v] }

// Options of Write. The zero value is the main file: R2000 in mm.
type Options struct {
	Version Version
	Inch    bool // coordinates in inches
}

// mmPerInch is exact by definition.
const mmPerInch = 25.4
