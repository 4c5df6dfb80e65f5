// Package svg draws: a plate at full size with true arcs, and a bracket as a shaded isometric picture with part marks. It
// never measures or decides anything, and no machine cuts from it.
//
// Written: svg, title, g, path and text with plain attributes, so that a picture can be set into any page; no styles,
// scripts, fonts or references. Coordinates are mm, y down as the format has it, so a counter-clockwise arc has sweep flag 0.
//
// In the bracket's picture bends are sharp and rolling is not shown (such plates stand flat), nor are welds, root fillets, or holes of
// members other than angles; bolt heads are hexagons, not to any standard. Things are painted from back to front: who
// covers whom is decided pair by pair by a plane between them; where no plane parts two things, by their distance.
//
//	plate.go    a plate at full size
//	bracket.go  the picture of a bracket
//	solid.go    plates, members, pins and bolts as extruded outlines
//	order.go    from back to front
//	interlock.go  plates that pass through one another, cut so that planes part them
//	paint.go    the faces of one solid
//	label.go    part marks beside the picture
//	writer.go   elements and numbers
package svg
