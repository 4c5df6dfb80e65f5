// Package strengthtest is the suite that every design basis runs: printed formulas against compiled ones, extremes. It never
// knows a rule, and nothing outside tests imports it. Published examples are in handbook.
//
//	formulas.go  Formulas: each quoted formula gives the value and the unit that Go computed
//	replay.go    one traced calculation, evaluated again from its own lines
//	reach.go     which argument of each min, max and when has governed, and which condition held
//	written.go   the formulas in the basis's own source, so that an unreached line shows
//	draw.go      random givens and factors
//	limits.go    Limits: names, extremes, verdicts, growth with load
//	silent.go    no allocation with the trace off
package strengthtest

// T is what the suites need of a *testing.T.
type T interface {
	Helper()
	Errorf(format string, args ...any)
	Logf(format string, args ...any)
}
