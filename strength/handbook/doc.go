// Package handbook holds published worked examples against a design basis: givens and results as printed, ours beside them.
// It never knows a rule, and it never reads a file.
//
//	example.go   Example, Run: what a case file says
//	bench.go     Bench: who evaluates, a basis itself or a service
//	check.go     Check: the rows, ours beside printed
//	values.go    a run's givens as the numbers of a limit state
//	quantity.go  printed quantities, and half a unit of the last printed digit
package handbook
