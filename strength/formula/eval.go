package formula

// This file evaluates: value and dimension together.

import "math"

// Eval gives the value of the formula with the given symbols. Adding or comparing unlike dimensions, a symbol that is missing
// or not finite, a given symbol that is also a unit name, and a result that is not finite are each an *Error that names the
// part. The literal 0 is of any dimension. Both branches of when are checked for dimension; only the taken one must be finite.
func (e *Expr) Eval(env map[string]Value) (Value, error) {
	run := evaluator{text: e.text, env: env}
	r := run.value(e.root)
	if run.err == nil && !finite(r.v) {
		run.fail(run.suspect, "is not finite (a division by zero, a root of a negative number, or too large)")
	}
	if run.err != nil {
		return Value{}, run.err
	}
	return Value{r.v, r.dim}, nil
}

// A result with zero set is the literal 0, which goes with any dimension.
type result struct {
	v    float64
	dim  Dim
	zero bool
}

// An evaluator keeps its first error, and the first node whose value stopped being finite.
type evaluator struct {
	text    string
	env     map[string]Value
	err     *Error
	suspect *node
}

func (e *evaluator) fail(n *node, reason string) result {
	if e.err == nil {
		e.err = &Error{e.text, n.print(nil), reason}
	}
	return result{}
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

func (e *evaluator) value(n *node) result {
	r := e.step(n)
	if !finite(r.v) && e.suspect == nil {
		e.suspect = n
	}
	if !r.dim.usual() {
		return e.fail(n, "has a dimension beyond the 100th power")
	}
	return r
}

func (e *evaluator) step(n *node) result {
	switch n.op {
	case opNumber, opPi:
		return result{v: n.num, zero: n.num == 0}
	case opSymbol:
		return e.symbol(n)
	case opUnit:
		return e.unit(n)
	case opWhen:
		return e.when(n)
	}
	args := make([]result, len(n.args))
	for i, a := range n.args {
		args[i] = e.value(a)
	}
	if n.op == opCall {
		return functions[n.name].apply(e, n, args)
	}
	return e.arithmetic(n, args)
}

func (e *evaluator) symbol(n *node) result {
	given, ok := e.env[n.name]
	switch {
	case !ok:
		return e.fail(n, "is not given")
	case !finite(given.V):
		return e.fail(n, "is given a value that is not finite")
	}
	return result{v: given.V, dim: given.Dim}
}

func (e *evaluator) unit(n *node) result {
	if _, ok := e.env[n.name]; ok {
		return e.fail(n, "is given as a symbol, but is a unit name here; give the symbol another name")
	}
	u := constants[n.name]
	return result{v: u.V, dim: u.Dim}
}

func (e *evaluator) arithmetic(n *node, args []result) result {
	a := args[0]
	if n.op == opNeg {
		return result{-a.v, a.dim, a.zero}
	}
	b := args[1]
	switch n.op {
	case opAdd:
		return result{v: a.v + b.v, dim: e.alike(n, b, a, "adds")}
	case opSub:
		return result{v: a.v - b.v, dim: e.alike(n, a, b, "takes the difference of")}
	case opMul:
		return result{v: a.v * b.v, dim: a.dim.times(b.dim)}
	}
	return result{v: a.v / b.v, dim: a.dim.over(b.dim)}
}

// alike gives the common dimension of two values, or fails with what the part does to them.
func (e *evaluator) alike(n *node, a, b result, does string) Dim {
	switch {
	case a.zero:
		return b.dim
	case b.zero || a.dim == b.dim:
		return a.dim
	}
	joint := " and "
	if n.op == opAdd {
		joint = " to "
	}
	e.fail(n, does+" "+a.dim.spoken()+joint+b.dim.spoken())
	return a.dim
}

// when evaluates both branches, so that a slip in the branch not taken shows too.
func (e *evaluator) when(n *node) result {
	condition := n.args[0]
	x, y := e.value(condition.args[0]), e.value(condition.args[1])
	e.alike(condition, x, y, "compares")
	if e.err == nil && (math.IsNaN(x.v) || math.IsNaN(y.v)) {
		e.fail(condition, "compares what is not a number")
	}
	taken, other := n.args[1], n.args[2]
	if !comparisons[condition.name](x.v, y.v) {
		taken, other = other, taken
	}
	r := e.value(taken)
	suspect := e.suspect
	o := e.value(other)
	e.suspect = suspect
	dim := e.alike(n, r, o, "chooses between")
	return result{r.v, dim, r.zero && o.zero}
}
