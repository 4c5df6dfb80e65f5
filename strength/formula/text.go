package formula

// This file prints a formula for a reader, with as few parentheses as keep its meaning. After a division no further factor or
// divisor follows without parentheses: a/b·c is read both ways, so it is (a/b)·c (as NIST SP 811, 6.1.6, asks for units).

import (
	"strconv"
	"strings"
)

// Text prints the formula for a reader: 2·t·b_e·F_u, x^2, √(x), π, and {a if x ≤ y; b otherwise}.
func (e *Expr) Text() string { return e.root.print(nil) }

// WithNumbers is Text with numbers in place of symbols. Number gives the text for a symbol, which may carry a unit ("12 mm"); a
// symbol for which it says false stays.
func (e *Expr) WithNumbers(number func(symbol string) (string, bool)) string {
	return e.root.print(number)
}

func (n *node) print(number func(string) (string, bool)) string {
	return printer{number}.print(n).text
}

// How tightly a printed part holds together, loosest first.
const (
	loose    = iota // anything unknown: always in parentheses
	sum             // a + b
	quotient        // a/b
	product         // a·b
	raisedTo        // a^b, √(a)
	atom            // a, 12, f(a)
)

type printed struct {
	text  string
	holds int
}

// in gives the text for a place that needs parts to hold at least so tightly. A leading minus needs parentheses everywhere but
// at the left.
func (p printed) in(least int, atLeft bool) string {
	if p.holds < least || (!atLeft && strings.HasPrefix(p.text, "-")) {
		return "(" + p.text + ")"
	}
	return p.text
}

// under is in for a place at the right, keeping how tightly the outcome holds.
func (p printed) under(least int) printed {
	if text := p.in(least, false); text != p.text {
		return printed{text, atom}
	}
	return p
}

type printer struct {
	number func(string) (string, bool)
}

func (p printer) print(n *node) printed {
	switch n.op {
	case opPi:
		return printed{"π", atom}
	case opSymbol:
		return p.symbol(n.name)
	case opNumber, opUnit:
		return printed{n.name, atom}
	case opNeg:
		x := p.print(n.args[0]).under(quotient)
		return printed{"-" + x.text, min(x.holds, product)}
	case opCall:
		return p.call(n)
	case opWhen:
		return p.when(n)
	}
	return p.binary(n)
}

// symbol puts the number's text in place of a symbol. A bare number holds as one; a number with a unit is a product.
func (p printer) symbol(name string) printed {
	if p.number == nil {
		return printed{name, atom}
	}
	text, ok := p.number(name)
	if !ok {
		return printed{name, atom}
	}
	text = strings.ReplaceAll(text, "−", "-")
	value, unit, hasUnit := strings.Cut(text, " ")
	switch {
	case !isDecimal(value) || hasUnit && !isUnitName(unit):
		return printed{text, loose}
	case strings.Contains(unit, "/"):
		return printed{text, quotient}
	case hasUnit || value[0] == '-':
		return printed{text, product}
	}
	return printed{text, atom}
}

func isDecimal(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil && strings.Trim(text, "0123456789.eE+-") == ""
}

func isUnitName(text string) bool {
	_, _, err := ParseUnit(text)
	return err == nil
}

func (p printer) call(n *node) printed {
	if n.name == "pow" {
		base, exponent := p.print(n.args[0]), p.print(n.args[1])
		return printed{base.in(atom, false) + "^" + exponent.in(atom, false), raisedTo}
	}
	var args []string
	for _, a := range n.args {
		args = append(args, p.print(a).text)
	}
	list := "(" + strings.Join(args, ", ") + ")"
	switch n.name {
	case "sqrt":
		return printed{"√" + list, raisedTo}
	case "log":
		return printed{"ln" + list, atom}
	}
	return printed{n.name + list, atom}
}

var comparisonSigns = map[string]string{"<=": "≤", ">=": "≥", "==": "=", "!=": "≠", "<": "<", ">": ">"}

func (p printer) when(n *node) printed {
	text := "{" + p.print(n.args[1]).text + " if " + p.print(n.args[0]).text + "; " + p.print(n.args[2]).text + " otherwise}"
	return printed{text, atom}
}

func (p printer) binary(n *node) printed {
	a, b := p.print(n.args[0]), p.print(n.args[1])
	switch n.op {
	case opCompare:
		return printed{a.text + " " + comparisonSigns[n.name] + " " + b.text, loose}
	case opAdd:
		return printed{a.in(sum, true) + " + " + b.in(sum, false), sum}
	case opSub:
		return printed{a.in(sum, true) + " - " + b.in(quotient, false), sum}
	case opDiv:
		return printed{a.in(product, true) + "/" + b.in(raisedTo, false), quotient}
	}
	if n.args[0].op == opNumber && n.args[1].op == opUnit {
		return printed{a.text + " " + b.text, product}
	}
	b = b.under(quotient)
	return printed{a.in(product, true) + "·" + b.text, min(b.holds, product)}
}
