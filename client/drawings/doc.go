// Package drawings makes dimensioned drawings of plates and brackets. It never computes a shape or a load, and knows no file format.
//
// Conventions are the general ones of ISO 128, ISO 129-1 and ISO 5455 (lines, dimensioning, scales), from memory. Plates have running dimensions
// from one datum, in mm or in inches.
//
//	options.go  what a drawing is made for: units and room on the sheet
//	set.go      the drawings of one bracket, each made once
//	page.go     lines, words and arrows in mm on paper
//	spread.go   rows that keep off one another
//	plate.go    a plate with its dimensions
//	ordinate.go running dimensions along two sides
//	callout.go  words with a leader
//	bracket.go  a bracket's parts in an isometric picture, and their list
//	views.go    three views of a bracket with dimensions
//	viewwelds.go weld symbols beside the views
//	welds.go    welds and their symbols
//	loads.go    forces of load cases
//	picture.go  what is seen of a bracket, brought to paper, with tags beside it
package drawings
