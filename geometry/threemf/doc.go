// Package threemf writes a bracket's solids as one 3MF file, for a program that shows, measures or prints them. It never decides a shape, and nothing is cut from
// its files.
//
// Why 3MF and not STL: a 3MF file says that its numbers are mm, holds every part as an object of its own with its name and part mark, and joins triangles by the
// number of their corners, so that a closed shell is closed for every reader. STL has neither unit nor names, and a reader guesses which corners are one.
// Source: 3MF Core Specification 1.3 of the 3MF Consortium, from memory.
//
// Written: plates with their finished holes, bent ones folded; angles, tubes and bars with the holes of flat faces; pins. Parts stand where they stand in the
// bracket, in its axes and from its datum, so that a program that ignores placements shows them right too; a program that prints moves them onto its table.
// Not written: bolts, nuts, washers, rods, welds, threads, engraved marks, toe radii of rolled angles, the roundness of rolled plates. What differs for one part
// is in the file's description.
//
// Facets are off by at most the facet error; package mesh says what follows for volumes.
package threemf

// Options of Write. The zero value is the usual file.
type Options struct {
	FacetMM float64 // how far a facet may be from its arc, 0.001 to 10; 0 for 0.01
}

const usualFacetMM = 0.01
