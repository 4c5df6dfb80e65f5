// Package svg draws: a plate at full size with true arcs, and a bracket as a shaded isometric picture with part marks. It
// never measures or decides anything, and no machine cuts from it.
//
// Written: svg, title, g, path and text with plain attributes, so that a picture can be set into any page; no styles,
// scripts, fonts or references. Coordinates are mm, y down as the format has it, so a counter-clockwise arc has sweep flag 0.
//
// What is seen of a bracket is found by package view.
//
//	plate.go    a plate at full size
//	bracket.go  the picture of a bracket
//	paint.go    the faces of one thing
//	label.go    part marks beside the picture
//	writer.go   elements and numbers
package svg
