package formula

// This file turns text into nodes. Go's own parser reads the text; only the forms named here are taken over.

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
)

// longest is far more than a printed formula needs, in bytes.
const longest = 2000

// Parse reads one formula. What is not in the package's list of forms is refused with an *Error; nothing is evaluated.
func Parse(text string) (*Expr, error) {
	switch {
	case strings.TrimSpace(text) == "":
		return nil, &Error{text, "", "is empty; write an expression such as 2*t*b_e*F_u"}
	case len(text) > longest:
		return nil, &Error{text[:40] + "...", "", "is longer than 2000 bytes"}
	case strings.ContainsAny(text, "\n\r;") || strings.Contains(text, "//") || strings.Contains(text, "/*"):
		return nil, &Error{text, "", "has a comment, a semicolon or a second line; write one expression"}
	}
	tree, err := parser.ParseExpr(text)
	if err != nil {
		return nil, &Error{text, "", "cannot be read: " + firstLine(err)}
	}
	r := reader{text: text}
	root := r.value(tree)
	if r.err != nil {
		return nil, r.err
	}
	return &Expr{text, root}, nil
}

func firstLine(err error) string {
	line, _, _ := strings.Cut(err.Error(), "\n")
	return line
}

// A reader keeps the first error; after it, the nodes are of no use.
type reader struct {
	text string
	err  *Error
}

func (r *reader) refuse(at ast.Node, reason string) *node {
	if r.err == nil {
		from, to := int(at.Pos())-1, int(at.End())-1
		part := r.text
		if 0 <= from && from < to && to <= len(r.text) {
			part = r.text[from:to]
		}
		r.err = &Error{r.text, part, reason}
	}
	return &node{}
}

func (r *reader) value(x ast.Expr) *node {
	switch x := x.(type) {
	case *ast.ParenExpr:
		return r.value(x.X)
	case *ast.BasicLit:
		return r.literal(x)
	case *ast.Ident:
		return r.name(x)
	case *ast.UnaryExpr:
		if x.Op == token.SUB {
			return &node{op: opNeg, args: []*node{r.value(x.X)}}
		}
		return r.refuse(x, "the sign "+x.Op.String()+" is not read; only a leading minus is")
	case *ast.BinaryExpr:
		return r.binary(x)
	case *ast.CallExpr:
		return r.call(x)
	}
	return r.refuse(x, "this form of Go is not read; use numbers, symbols, + - * / and the functions "+functionNames())
}

func (r *reader) literal(x *ast.BasicLit) *node {
	plain := strings.Trim(x.Value, "0123456789.eE+-") == ""
	octal := x.Kind == token.INT && len(x.Value) > 1 && x.Value[0] == '0'
	if (x.Kind != token.INT && x.Kind != token.FLOAT) || !plain || octal {
		return r.refuse(x, "is not a decimal number such as 2.5 or 5e-3")
	}
	v, err := strconv.ParseFloat(x.Value, 64)
	if err != nil || math.IsInf(v, 0) {
		return r.refuse(x, "is too large a number")
	}
	return &node{op: opNumber, name: x.Value, num: v}
}

func (r *reader) name(x *ast.Ident) *node {
	_, isFunction := functions[x.Name]
	_, isUnit := constants[x.Name]
	switch {
	case x.Name == "pi":
		return &node{op: opPi, name: x.Name, num: math.Pi}
	case isFunction || x.Name == "when":
		return r.refuse(x, "is a function and needs its arguments in parentheses")
	case isUnit:
		return &node{op: opUnit, name: x.Name}
	case strings.Trim(x.Name, "_") == "":
		return r.refuse(x, "is not a symbol")
	}
	return &node{op: opSymbol, name: x.Name}
}

var arithmetic = map[token.Token]op{token.ADD: opAdd, token.SUB: opSub, token.MUL: opMul, token.QUO: opDiv}

func (r *reader) binary(x *ast.BinaryExpr) *node {
	if o, ok := arithmetic[x.Op]; ok {
		return &node{op: o, name: x.Op.String(), args: []*node{r.value(x.X), r.value(x.Y)}}
	}
	switch {
	case comparisons[x.Op.String()] != nil:
		return r.refuse(x, "a comparison stands only first in when(x <= y, a, b)")
	case x.Op == token.XOR:
		return r.refuse(x, "^ is not a power here; write pow(x, y)")
	}
	return r.refuse(x, "the operator "+x.Op.String()+" is not read; use + - * /")
}

func (r *reader) call(x *ast.CallExpr) *node {
	id, ok := x.Fun.(*ast.Ident)
	if !ok || x.Ellipsis.IsValid() {
		return r.refuse(x, "is not a call of a known function; known are "+functionNames())
	}
	if id.Name == "when" {
		return r.when(x)
	}
	f, ok := functions[id.Name]
	switch {
	case !ok:
		return r.refuse(x, "the function "+id.Name+" is not known; known are "+functionNames())
	case len(x.Args) < f.least || len(x.Args) > f.most:
		return r.refuse(x, "takes "+f.takes())
	}
	n := &node{op: opCall, name: id.Name}
	for _, a := range x.Args {
		n.args = append(n.args, r.value(a))
	}
	return n
}

func (r *reader) when(x *ast.CallExpr) *node {
	if len(x.Args) != 3 {
		return r.refuse(x, "takes a comparison and two values: when(x <= y, a, b)")
	}
	c, ok := ast.Unparen(x.Args[0]).(*ast.BinaryExpr)
	if !ok || comparisons[c.Op.String()] == nil {
		return r.refuse(x.Args[0], "is not a comparison; when needs one first: when(x <= y, a, b)")
	}
	condition := &node{op: opCompare, name: c.Op.String(), args: []*node{r.value(c.X), r.value(c.Y)}}
	return &node{op: opWhen, name: "when", args: []*node{condition, r.value(x.Args[1]), r.value(x.Args[2])}}
}
