// Package strength says what a check is (Limit, Clause, Line, Verdict, Basis) and does the mechanics that every basis
// shares: it carries loads along a bracket's paths to each joint and each critical section, and applies every limit
// state whose feature is present. It never knows a bracket kind or a design code's numbers.
//
//	limit.go    a limit state: identity, givens, evaluation by hand
//	calc.go     one evaluation: lines, needs, demand and capacity
//	features.go what a limit state is applied to: a pin plane, a bore, a cut, a weld, a bolt, ...
//	basis.go    a design basis: card and rules
//	report.go   results
//	model.go    a bracket made ready: names resolved, sections and groups computed once
//	carry.go    loads to joints
//	beam.go     loads on a member that spans between two supports
//	check.go    joints to limit states
package strength
