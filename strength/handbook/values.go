package handbook

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// values gives a run's givens in the order of the limit state.
func (e *Example) values(info strength.Info, r *Run) ([][]float64, error) {
	out := make([][]float64, len(info.Givens))
	var slips part.FieldErrors
	left := map[string]string{}
	for name := range r.Givens {
		left[name] = name
	}
	for i, g := range info.Givens {
		texts, own := r.Givens[g.Symbol]
		if !own {
			texts, own = e.Givens[g.Symbol]
		}
		delete(left, g.Symbol)
		switch {
		case own:
			values, err := Numbers(g, texts)
			slips = append(slips, part.Fields(within("givens."+g.Symbol, err))...)
			out[i] = values
		case g.Optional:
			out[i] = []float64{g.Default}
		case isLoad(g), g.Symbol == info.Demand && g.Min == 0:
			out[i] = []float64{0}
		default:
			slips = append(slips, &part.FieldError{Field: "givens." + g.Symbol, Found: "missing", Accept: g.Words})
		}
	}
	slips = append(slips, part.Fields(strangers("givens.", left, info.ID+" has no such given", "one of "+givenSymbols(info)))...)
	if slips != nil {
		return nil, slips
	}
	return out, nil
}

func givenSymbols(info strength.Info) string {
	names := make([]string, len(info.Givens))
	for i, g := range info.Givens {
		names[i] = g.Symbol
	}
	return strings.Join(names, ", ")
}

func isLoad(g strength.Given) bool { return g.Unit == "N" || g.Unit == "N*mm" || g.Unit == "N/mm" }

// Numbers reads the texts of one given: quantities that measure what its unit does, several for a list (also one text with commas
// between), or the name of a choice.
func Numbers(g strength.Given, texts Values) ([]float64, error) {
	if g.List && len(texts) == 1 {
		texts = strings.Split(texts[0], ",")
	}
	if !g.List && len(texts) != 1 {
		return nil, refuse("", "a list", "one value ("+g.Words+")")
	}
	out := make([]float64, len(texts))
	for i, text := range texts {
		v, err := one(g, strings.TrimSpace(text))
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

// notRead says in which way a text is not the quantity that is wanted.
func notRead(text string, err error, words string) error {
	var wrong *units.Error
	if errors.As(err, &wrong) {
		return refuse("", strings.TrimSuffix(wrong.Error(), "; "+wrong.Accept), wrong.Accept+" ("+words+")")
	}
	return refuse("", quoted(text), err.Error()+" ("+words+")")
}

func one(g strength.Given, text string) (float64, error) {
	if g.Choices != nil {
		i := slices.Index(g.Choices, text)
		if i < 0 {
			return 0, refuse("", quoted(text), "one of: "+strings.Join(g.Choices, ", ")+" ("+g.Words+")")
		}
		return float64(i), nil
	}
	v, err := quantity(text, g.Unit)
	if err != nil {
		return 0, notRead(text, err, g.Words)
	}
	return v, nil
}

// factors gives the set and the example's own factors, the run's over the example's.
func (e *Example) factors(c *strength.Card, r *Run) (set string, own map[string]float64, err error) {
	set = e.FactorSet
	if r.FactorSet != "" {
		set = r.FactorSet
	}
	own, texts := map[string]float64{}, map[string]string{}
	maps.Copy(texts, e.Factors)
	maps.Copy(texts, r.Factors)
	for _, symbol := range slices.Sorted(maps.Keys(texts)) {
		v, err := Factor(c, symbol, texts[symbol])
		if err != nil {
			return "", nil, refuse("factors."+symbol, quoted(texts[symbol]), err.Error())
		}
		own[symbol] = v
	}
	return set, own, nil
}

// Factor reads the text of a settable factor; one that the card does not have is read as a bare number, for the bench to refuse.
func Factor(c *strength.Card, symbol, text string) (float64, error) {
	i := slices.IndexFunc(c.Factors, func(f strength.Factor) bool { return f.Symbol == symbol })
	if i < 0 {
		return quantity(text, "")
	}
	return quantity(text, c.Factors[i].Unit)
}
