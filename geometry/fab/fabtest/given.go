package fabtest

// Requests from a few parameters, and tables of refusals.

import (
	"slices"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
)

// Given is parameters by name: a word, a number or a count.
type Given map[string]any

// Request asks a kind for a left-hand bracket with these parameters, in the order of the kind's declaration.
func (g Given) Request(k geometry.Kind) geometry.Request {
	r := geometry.Request{Kind: k.Name, Name: "pair", Hand: part.LeftHand}
	for _, p := range k.Params {
		switch v := g[p.Name].(type) {
		case string:
			r.Params = append(r.Params, part.Param{Name: p.Name, Text: v})
		case float64:
			r.Params = append(r.Params, part.Param{Name: p.Name, Number: v})
		case int:
			r.Params = append(r.Params, part.Param{Name: p.Name, Number: float64(v)})
		}
	}
	return r
}

// Sized is a kind with other defaults: those by which a test's hand calculation was made, so that a better default does not touch it.
func Sized(k geometry.Kind, g Given) geometry.Kind {
	k.Params = slices.Clone(k.Params)
	for i := range k.Params {
		p := &k.Params[i]
		switch v := g[p.Name].(type) {
		case string:
			p.Text = v
		case float64:
			p.Default = v
		case int:
			p.Default = float64(v)
		}
	}
	return k
}

// Made builds a kind's bracket with these parameters; it must build and be sound.
func Made(t testing.TB, k geometry.Kind, g Given) *part.Bracket {
	t.Helper()
	b, err := geometry.Build([]geometry.Kind{k}, g.Request(k))
	if err != nil {
		t.Fatal(err)
	}
	if bad := Faults(b); bad != nil {
		t.Fatalf("unsound:\n%s", strings.Join(bad, "\n"))
	}
	return b
}

// Refusal is a row of a kind's table of rules: what is asked, the parameter that must be named, and words of the bound. An empty
// parameter means that the bracket must build.
type Refusal struct {
	Given Given
	Param string
	Bound string
}

// Broken says how the kind answers a row otherwise than it should; empty when it does as it should.
func (r Refusal) Broken(k geometry.Kind) string {
	_, err := geometry.Build([]geometry.Kind{k}, r.Given.Request(k))
	if r.Param == "" {
		if err != nil {
			return "refused: " + err.Error()
		}
		return ""
	}
	named := slices.ContainsFunc(part.Fields(err), func(f *part.FieldError) bool {
		return f.Field == "parameters."+r.Param && strings.Contains(f.Error(), r.Bound)
	})
	switch {
	case named:
		return ""
	case err == nil:
		return "built; want " + r.Param + " refused with " + r.Bound
	}
	return err.Error() + "\n\twant " + r.Param + " refused with " + r.Bound
}
