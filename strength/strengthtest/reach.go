package strengthtest

// Which argument of each min, max and when has governed. An argument that never governs is a line no test has looked at.

import (
	"fmt"
	"go/ast"
	"go/parser"
	"slices"
	"strings"

	"lugwright/strength/formula"
)

// A reach knows the choices of all formulas met, in the order in which they were met.
type reach struct {
	read    map[string]*formula.Expr
	choices map[string]bool // "limit: formula: argument" to whether it has governed
	order   []string
	trees   map[string]*tree // by limit and formula
	never   []string
	seen    map[string]bool // formula texts met in any limit
}

// A tree is a formula with its own text, so that its parts can be evaluated alone.
type tree struct {
	text string
	root ast.Expr
	keys []string
	done bool
}

func newReach(never []string) *reach {
	return &reach{
		read: map[string]*formula.Expr{}, choices: map[string]bool{}, trees: map[string]*tree{}, never: never, seen: map[string]bool{},
	}
}

// eval reads each text once.
func (r *reach) eval(text string, env map[string]formula.Value) (formula.Value, error) {
	e, ok := r.read[text]
	if !ok {
		var err error
		if e, err = formula.Parse(text); err != nil {
			return formula.Value{}, err
		}
		r.read[text] = e
	}
	return e.Eval(env)
}

// note marks what governs in a formula that has just been evaluated without error.
func (r *reach) note(limit, text string, env map[string]formula.Value) {
	r.seen[text] = true
	t := r.tree(limit, text)
	if t.done {
		return
	}
	r.mark(t, limit, t.root, env)
	t.done = !slices.ContainsFunc(t.keys, func(k string) bool { return !r.choices[k] })
}

func (r *reach) tree(limit, text string) *tree {
	id := limit + ": " + text
	if t, ok := r.trees[id]; ok {
		return t
	}
	root, err := parser.ParseExpr(text)
	if err != nil {
		panic(err) // formula.Parse has read it
	}
	t := &tree{text: text, root: root}
	ast.Inspect(root, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			for _, a := range parts(c) {
				k := t.key(limit, c, a)
				t.keys = append(t.keys, k)
				r.choices[k] = false
				r.order = append(r.order, k)
			}
		}
		return true
	})
	r.trees[id] = t
	return t
}

// parts are the arguments between which a call chooses; nil when it does not choose.
func parts(c *ast.CallExpr) []ast.Expr {
	switch c.Fun.(*ast.Ident).Name {
	case "min", "max":
		return c.Args
	case "when":
		return c.Args[1:]
	}
	return nil
}

// key names one choice as a message shows it. The need "a <= b" is when(a <= b, 1, 0).
func (t *tree) key(limit string, c *ast.CallExpr, a ast.Expr) string {
	whole, part := t.of(c), t.of(a)
	condition, isNeed := strings.CutSuffix(strings.TrimPrefix(whole, "when("), ", 1, 0)")
	switch {
	case isNeed && part == "1":
		return limit + ": " + condition + ": holds"
	case isNeed:
		return limit + ": " + condition + ": fails"
	}
	return limit + ": " + whole + ": " + part
}

func (t *tree) of(n ast.Node) string { return t.text[n.Pos()-1 : n.End()-1] }

func (r *reach) mark(t *tree, limit string, n ast.Expr, env map[string]formula.Value) {
	switch n := n.(type) {
	case *ast.ParenExpr:
		r.mark(t, limit, n.X, env)
	case *ast.UnaryExpr:
		r.mark(t, limit, n.X, env)
	case *ast.BinaryExpr:
		r.mark(t, limit, n.X, env)
		r.mark(t, limit, n.Y, env)
	case *ast.CallExpr:
		r.markCall(t, limit, n, env)
	}
}

func (r *reach) markCall(t *tree, limit string, c *ast.CallExpr, env map[string]formula.Value) {
	name := c.Fun.(*ast.Ident).Name
	if name == "when" {
		taken := c.Args[2]
		if v, err := r.eval("when("+t.of(c.Args[0])+", 1, 0)", env); err == nil && v.V == 1 {
			taken = c.Args[1]
		}
		r.choices[t.key(limit, c, taken)] = true
		r.mark(t, limit, taken, env)
		return
	}
	if name == "min" || name == "max" {
		r.markExtreme(t, limit, c, name == "max", env)
	}
	for _, a := range c.Args {
		r.mark(t, limit, a, env)
	}
}

// markExtreme marks the argument that governs alone; of equals none does.
func (r *reach) markExtreme(t *tree, limit string, c *ast.CallExpr, largest bool, env map[string]formula.Value) {
	best, alone := -1, true
	var value float64
	for i, a := range c.Args {
		v, err := r.eval(t.of(a), env)
		switch {
		case err != nil:
			return
		case best < 0 || (v.V < value) != largest && v.V != value:
			best, value, alone = i, v.V, true
		case v.V == value:
			alone = false
		}
	}
	if alone {
		r.choices[t.key(limit, c, c.Args[best])] = true
	}
}

// whole says whether everything met of a limit has been reached, but for what never is.
func (r *reach) whole(limit string) bool {
	for _, k := range r.order {
		if strings.HasPrefix(k, limit+": ") && !r.choices[k] && !slices.Contains(r.never, k) {
			return false
		}
	}
	return true
}

func (r *reach) report(t T) {
	t.Helper()
	reached := 0
	for _, k := range r.order {
		switch listed := slices.Contains(r.never, k); {
		case r.choices[k]:
			reached++
		case !listed:
			t.Errorf("never reached: %q; give it givens that reach it, or list it", k)
		default:
			t.Logf("never governs, as listed: %s", k)
		}
	}
	for _, k := range r.never {
		if done, known := r.choices[k]; done || !known {
			t.Errorf("listed as never reached: %q, but it %s", k, map[bool]string{true: "is reached", false: "does not exist"}[known])
		}
	}
	t.Logf("%s", fmt.Sprintf("%d of %d arguments and conditions reached, %d formulas", reached, len(r.order), len(r.seen)))
}
