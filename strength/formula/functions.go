package formula

// This file holds the functions and comparisons that an expression may use: one line each.

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// A function takes between least and most arguments.
type function struct {
	least, most int
	apply       func(e *evaluator, n *node, args []result) result
}

const anyNumber = 100

var functions = map[string]function{
	"min":  {2, anyNumber, extreme(math.Min)},
	"max":  {2, anyNumber, extreme(math.Max)},
	"sqrt": {1, 1, squareRoot},
	"pow":  {2, 2, power},
	"abs":  {1, 1, absolute},
	"sin":  {1, 1, pure(math.Sin)},
	"cos":  {1, 1, pure(math.Cos)},
	"tan":  {1, 1, pure(math.Tan)},
	"atan": {1, 1, pure(math.Atan)},
	"exp":  {1, 1, pure(math.Exp)},
	"log":  {1, 1, pure(math.Log)},
}

var comparisons = map[string]func(a, b float64) bool{
	"<":  func(a, b float64) bool { return a < b },
	"<=": func(a, b float64) bool { return a <= b },
	">":  func(a, b float64) bool { return a > b },
	">=": func(a, b float64) bool { return a >= b },
	"==": func(a, b float64) bool { return a == b },
	"!=": func(a, b float64) bool { return a != b },
}

func functionNames() string {
	return strings.Join(slices.Sorted(maps.Keys(functions)), ", ") + ", when"
}

func (f function) takes() string {
	switch {
	case f.most == anyNumber:
		return fmt.Sprintf("at least %d arguments", f.least)
	case f.least == 1:
		return "one argument"
	}
	return fmt.Sprintf("%d arguments", f.least)
}

func extreme(pick func(x, y float64) float64) func(*evaluator, *node, []result) result {
	return func(e *evaluator, n *node, args []result) result {
		best := args[0]
		for _, a := range args[1:] {
			dim := e.alike(n, best, a, "compares")
			best = result{pick(best.v, a.v), dim, best.zero && a.zero}
		}
		return best
	}
}

func pure(f func(float64) float64) func(*evaluator, *node, []result) result {
	return func(e *evaluator, n *node, args []result) result {
		if args[0].dim != (Dim{}) {
			return e.fail(n, "needs a pure number, not "+args[0].dim.spoken())
		}
		return result{v: f(args[0].v)}
	}
}

func absolute(_ *evaluator, _ *node, args []result) result {
	return result{math.Abs(args[0].v), args[0].dim, args[0].zero}
}

func squareRoot(e *evaluator, n *node, args []result) result {
	dim, ok := args[0].dim.power(0.5)
	if !ok {
		return e.fail(n, "has no exact dimension")
	}
	return result{v: math.Sqrt(args[0].v), dim: dim}
}

// power takes a dimensioned base to a whole or a literal exponent only: another exponent would let the dimension depend on a
// number that is not in the formula.
func power(e *evaluator, n *node, args []result) result {
	base, exponent := args[0], args[1]
	if exponent.dim != (Dim{}) {
		return e.fail(n, "has an exponent in "+exponent.dim.spoken()+"; it needs a pure number")
	}
	whole := exponent.v == math.Trunc(exponent.v)
	if base.dim != (Dim{}) && !whole && !n.args[1].literal() {
		return e.fail(n, "takes "+base.dim.spoken()+" to a power that is neither whole nor written as a number")
	}
	dim, ok := base.dim.power(exponent.v)
	if !ok {
		return e.fail(n, "has no exact dimension")
	}
	return result{v: math.Pow(base.v, exponent.v), dim: dim}
}

// literal says whether the node is made of numbers only: 1.5, -2, 1/3.
func (n *node) literal() bool {
	ok := true
	n.walk(func(a *node) { ok = ok && (a.op == opNumber || a.op >= opNeg && a.op <= opDiv) })
	return ok
}
