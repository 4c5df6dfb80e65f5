// Package sheet writes the calc sheet: every check of a job with its clause, its numbers and its formulas, as Markdown that
// reads well raw. It never computes a check; what it prints comes from the services' reports.
//
//	sheet.go    the paper from head to signatures
//	bracket.go  what a bracket is: parameters, parts, loads, notes
//	order.go    checks in the order of the drawing
//	check.go    one check in full
//	lines.go    the lines of a calculation
//	text.go     tables, escapes, numbers
package sheet
