// Package formula reads a printed formula, written as a quoted Go expression such as "min(2.8*e_2/d_0 - 1.7, 2.5)", and
// gives its value with its dimension, its text for a reader, and that text with numbers in it.
// It never decides what a formula should be: a wrong factor of no dimension passes here, and only a published example shows it.
//
// An expression has numbers, symbols, + - * /, parentheses, a leading minus, pi, the functions min, max, sqrt, pow, abs, sin,
// cos, tan, atan, exp and log (natural), the choice when(x <= y, a, b), and these unit names as constants: mm, in, ft, N, kN,
// lbf, kip, MPa, ksi, kg, rad, deg. A unit name cannot be a symbol. Everything else of Go is refused.
package formula

// This file holds the expression, its errors, and the list of its symbols.

import (
	"fmt"
	"slices"
)

// Expr is a formula that has been read. It is not changed by any method and may be used by several goroutines.
type Expr struct {
	text string
	root *node
}

// Value is a number in N, mm, kg and rad (so stress in MPa), with its dimension.
type Value struct {
	V   float64
	Dim Dim
}

// Error says which part of which formula is at fault.
type Error struct {
	Text   string // the formula as written
	Part   string // the sub-expression; empty when the text could not be read at all
	Reason string // "adds mm to a pure number"
}

// Error gives one line: the formula, the part, the reason.
func (e *Error) Error() string {
	if e.Part == "" {
		return fmt.Sprintf("formula %q: %s", e.Text, e.Reason)
	}
	return fmt.Sprintf("formula %q: %s: %s", e.Text, e.Part, e.Reason)
}

type op int

const (
	opNumber op = iota
	opSymbol
	opUnit
	opPi
	opNeg
	opAdd
	opSub
	opMul
	opDiv
	opCompare
	opCall
	opWhen // condition, then, else
)

// A node is one step of the expression. Name is the literal, symbol, unit, function or comparison as written.
type node struct {
	op   op
	name string
	num  float64
	args []*node
}

// Symbols lists the symbols in order of first appearance, without unit names and pi.
func (e *Expr) Symbols() []string {
	var found []string
	e.root.walk(func(n *node) {
		if n.op == opSymbol && !slices.Contains(found, n.name) {
			found = append(found, n.name)
		}
	})
	return found
}

func (n *node) walk(visit func(*node)) {
	visit(n)
	for _, a := range n.args {
		a.walk(visit)
	}
}
