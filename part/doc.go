// Package part holds the shared nouns: the bracket with its plates, members, pins, bolts, welds, contacts, supports, load
// points and load paths, the one thing that passes between the geometry and the strength service. It never knows a kind,
// a design code or a file format, and it computes nothing but placement.
//
// Axes of a bracket are the vehicle's: x rearward, y left, z up, in mm; the origin is the bracket's own datum, stated by
// its kind. Forces are N, moments N*mm, angles rad. The set is left-handed: vector products are taken by components, so that a positive moment about x
// turns y towards z, one about y turns z towards x, one about z turns x towards y; and what is drawn or cut is Bracket.AsMade.
//
//	bracket.go   Bracket and the look-up of its things
//	space.go     vectors and poses
//	plate.go     what is cut: outline, holes, etch marks, bends
//	member.go    what is not cut from plate: angle, tube, bar
//	joint.go     pins, bolts, rods, welds, contacts, composites, splices, supports
//	beam.go      members that span between two supports
//	load.go      load points, shares, paths, sweeps, load cases
//	section.go   sections of members, and where pins lie
//	folded.go    bent plates as flat faces, for pictures
//	mirror.go    the other hand, and the bracket as it stands in space
//	place.go     where in a bracket something stands, in words once it is refused
//	validate.go  what makes a bracket whole: names resolve, numbers are finite, paths end at a support
package part
