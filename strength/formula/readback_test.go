package formula

// This file reads the printed form back with a reader of school notation that shares nothing with the package, and compares
// values over random expressions; and it fuzzes the package's own reader.

import (
	"fmt"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"
)

// A school reads the printed form: blanks and dots multiply, a division takes one factor and ends the product.
type school struct {
	rest string
	env  map[string]Value
}

func (s *school) take(prefix string) bool {
	rest, ok := strings.CutPrefix(s.rest, prefix)
	s.rest = rest
	return ok
}

func (s *school) must(prefix string) {
	if !s.take(prefix) {
		panic(fmt.Sprintf("want %q at %q", prefix, s.rest))
	}
}

func (s *school) sum() float64 {
	v := s.product()
	for {
		switch {
		case s.take(" + "):
			v += s.product()
		case s.take(" - "):
			v -= s.product()
		default:
			return v
		}
	}
}

func (s *school) product() float64 {
	if s.take("-") {
		return -s.product()
	}
	v := s.raised()
	for {
		switch {
		case s.take("·"):
			v *= s.raised()
		case s.take(" deg"):
			v *= math.Pi / 180
		case s.take("/"):
			v /= s.raised()
			if strings.HasPrefix(s.rest, "·") || strings.HasPrefix(s.rest, "/") {
				panic("a factor follows a division: " + s.rest)
			}
			return v
		default:
			return v
		}
	}
}

func (s *school) raised() float64 {
	v := s.atom()
	if s.take("^") {
		v = math.Pow(v, s.atom())
	}
	return v
}

func (s *school) atom() float64 {
	switch {
	case s.take("("):
		v := s.sum()
		s.must(")")
		return v
	case s.take("√("):
		v := math.Sqrt(s.sum())
		s.must(")")
		return v
	case s.take("{"):
		return s.choice()
	case s.take("π"):
		return math.Pi
	}
	end := strings.IndexFunc(s.rest, func(r rune) bool { return !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz_0123456789.", r) })
	if end < 0 {
		end = len(s.rest)
	}
	word := s.rest[:end]
	s.rest = s.rest[end:]
	if s.take("(") {
		return s.function(word)
	}
	if v, ok := s.env[word]; ok {
		return v.V
	}
	v, err := strconv.ParseFloat(word, 64)
	if err != nil {
		panic("neither number nor symbol: " + word + " before " + s.rest)
	}
	return v
}

func (s *school) function(name string) float64 {
	v := s.sum()
	if name == "min" || name == "max" {
		s.must(", ")
		pick := map[string]func(a, b float64) float64{"min": math.Min, "max": math.Max}[name]
		v = pick(v, s.sum())
	} else {
		v = map[string]func(float64) float64{"sin": math.Sin, "abs": math.Abs, "ln": math.Log}[name](v)
	}
	s.must(")")
	return v
}

func (s *school) choice() float64 {
	yes := s.sum()
	s.must(" if ")
	x := s.sum()
	s.must(" ≤ ")
	y := s.sum()
	s.must("; ")
	no := s.sum()
	s.must(" otherwise}")
	if x <= y {
		return yes
	}
	return no
}

// randomText writes an expression with every parenthesis in place.
func randomText(r *rand.Rand, depth int) string {
	if depth == 0 {
		return []string{"a", "b_e", "c_1", "2.5", "3", "pi", "7", "40*deg"}[r.Intn(8)]
	}
	sub := func() string { return "(" + randomText(r, depth-1-r.Intn(depth)) + ")" }
	switch r.Intn(12) {
	case 0:
		return "-" + sub()
	case 1:
		return "sqrt" + sub()
	case 2:
		return "pow(" + sub() + ", " + []string{"2", "-1", "0.5", "1/3", "b_e"}[r.Intn(5)] + ")"
	case 3:
		return "min(" + sub() + ", " + sub() + ")"
	case 4:
		return "max(" + sub() + ", " + sub() + ")"
	case 5:
		return "when(" + sub() + " <= " + sub() + ", " + sub() + ", " + sub() + ")"
	case 6:
		return []string{"sin", "abs", "log"}[r.Intn(3)] + sub()
	}
	return sub() + []string{"+", "-", "*", "/", "*"}[r.Intn(5)] + sub()
}

func TestTextReadsBack(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	env := map[string]Value{"a": {V: 1.7}, "b_e": {V: 0.9}, "c_1": {V: 3.1}}
	compared := 0
	for range 20000 {
		text := randomText(r, 5)
		e := mustParse(t, text)
		v, err := e.Eval(env)
		if err != nil || math.Abs(v.V) > 1e6 {
			continue
		}
		s := school{e.Text(), env}
		got := s.sum()
		if s.rest != "" || math.Abs(got-v.V) > 1e-6*max(1, math.Abs(v.V)) {
			t.Fatalf("%s\nprinted %s\ngot %v, want %v, unread %q", text, e.Text(), got, v.V, s.rest)
		}
		compared++
	}
	if compared < 5000 {
		t.Errorf("only %d expressions compared", compared)
	}
}

// Printing the numbers themselves and reading them back gives the value, whatever their sign.
func TestNumbersReadBack(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for range 5000 {
		text := randomText(r, 4)
		e := mustParse(t, text)
		env := map[string]Value{"a": {V: -1.75}, "b_e": {V: 2}, "c_1": {V: -3.5}}
		v, err := e.Eval(env)
		if err != nil || math.Abs(v.V) > 1e6 {
			continue
		}
		s := school{rest: e.WithNumbers(func(symbol string) (string, bool) {
			return strconv.FormatFloat(env[symbol].V, 'g', -1, 64), true
		})}
		printed := s.rest
		if got := s.sum(); math.Abs(got-v.V) > 1e-6*max(1, math.Abs(v.V)) {
			t.Fatalf("%s\nprinted %s\ngot %v, want %v", text, printed, got, v.V)
		}
	}
}

// Deep nesting must not make the work grow out of all proportion: printing once took twice as long for every pow inside a pow.
func TestDeepNesting(t *testing.T) {
	env := map[string]Value{"a": {V: 1}}
	for _, c := range []struct {
		open, close string
		depth       int
	}{
		{"(", ")", 990}, {"-(", ")", 600}, {"pow(", ", 1)", 200}, {"sqrt(", ")", 300}, {"when(a < 2, a, ", ")", 110}, {"a*(", ")", 400}, {"min(a, ", ")", 200},
	} {
		e := mustParse(t, strings.Repeat(c.open, c.depth)+"a"+strings.Repeat(c.close, c.depth))
		if _, err := e.Eval(env); err != nil || e.Text() == "" {
			t.Errorf("%s at depth %d: %v", c.open, c.depth, err)
		}
	}
	for _, open := range []string{"a[", "func(", "[]", "*", "a.", "a(", "func(){", "struct{a ", "<-chan ", "map[a]", "((a)("} {
		if _, err := Parse(strings.Repeat(open, longest/len(open)) + "a"); err == nil {
			t.Errorf("%s: taken", open)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"2*t*b_e*F_u", "min(2.8*e_2/d_0 - 1.7, 2.5)", "when(a <= b, a, 0)", "pow(t, 1/3)*0.63*in", "a^2", "f(x)[1]", "func(){}()", "((((", "1e999", "-0", "0x1p4",
		"t.(int)", "<-c", "a...", "pow(0, -1)", "pow(pow(pow(mm, 60), 60), 60)",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		e, err := Parse(text)
		if err != nil {
			return
		}
		env := map[string]Value{}
		for _, s := range e.Symbols() {
			env[s] = Value{V: 2}
		}
		v, err := e.Eval(env)
		if err == nil && !finite(v.V) {
			t.Errorf("%q: got %v without an error", text, v.V)
		}
		if e.Text() != e.WithNumbers(func(string) (string, bool) { return "", false }) {
			t.Errorf("%q: text without numbers differs from text", text)
		}
	})
}

func FuzzParseUnit(f *testing.F) {
	for _, text := range []string{"N/mm^2", "kip*in", "1/mm", "mm^-1", "·", "in4"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if _, factor, err := ParseUnit(text); err == nil && (!finite(factor) || factor <= 0) {
			t.Errorf("%q: got the factor %v without an error", text, factor)
		}
	})
}
