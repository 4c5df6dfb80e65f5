// Package sheet makes the calc sheet as a paper: what was assumed, and every check of a job with its numbers, the deciding ones in full. It never
// computes a check; what it says comes from the services' reports.
//
//	sheet.go    the paper from verdict to signatures
//	masses.go   what rides on the vehicle, by state
//	bracket.go  what a bracket is: parts, parameters, loads, notes
//	order.go    checks in the order of the drawing
//	check.go    tables of checks, and those in full
//	lines.go    the lines of a calculation
//	text.go     numbers and words
package sheet
