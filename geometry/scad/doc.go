// Package scad writes a finished bracket as one OpenSCAD source file that a person can read, turn and change. It never
// decides a shape: everything comes from the bracket, and an edit in the file goes no further than the file.
//
// Written: named variables for thicknesses of plates that are neither bent nor rolled, hole diameters, facets and the exploding distance, with the ranges that the
// customizer shows; one flat and one solid module for each different piece; for a bent plate one more as it is folded; an
// assembly, in which bent plates are folded. Holes have their finished diameter. Not written: rolling (such plates stand
// flat), welds, washers, threads, toe radii of rolled angles.
//
// Facets. An arc's points lie on the true arc; a round hole is drawn so that its flats touch the true circle from outside,
// so no hole is undersize. With steps of d = 2 pi / facets the area of a flat piece is off by less than d^2/12 times
// the sum of r^2 times sweep over its arcs and holes; a solid's volume by that times its thickness.
//
// Folds. A bend is a part of a cylinder with square ends, as long as its line; package fold says by how much a folded plate is
// larger than its flat pattern times the thickness. Its flat faces have edges within 0.01 mm of the outline's arcs.
//
//	write.go    the file from head to assembly
//	names.go    names of parts, modules and variables
//	model.go    pieces, where they stand, the variables they share
//	member.go   angle, tube and bar
//	folded.go   bent plates as they are folded
//	writer.go   lines and numbers
package scad

// Options of Write. The zero value is the usual file.
type Options struct {
	Facets    int     // sides of a full circle, 8 to 720; 0 for 96
	ExplodeMM float64 // how far parts move out from the middle, 0 for the assembled bracket
}

const usualFacets = 96
