package sweep

// This file holds several brackets to common thicknesses of plate.

import (
	"errors"
	"slices"
)

// Candidate is one bracket's rows, and how many of it are made.
type Candidate struct {
	Rows     []Row
	Quantity int
}

// Common is a choice of one passing row for each bracket.
type Common struct {
	Stock []Stock // every thickness and material that they are cut from
	Rows  []*Row
	KG    float64 // of all brackets, with their quantities
}

// mostUnions is how many sets of thicknesses are followed at once.
const mostUnions = 100000

// ErrTooMany is given where the sets of thicknesses are too many to try all.
var ErrTooMany = errors.New("too many thicknesses to try every set of them; vary over the rack, or over fewer values")

// Together gives, for each number of thicknesses from the fewest on, the lightest choice that needs no more: the last is every bracket at its own lightest.
// Every set is tried. None when a bracket has no row that passes.
func Together(brackets []Candidate) ([]Common, error) {
	states := []Common{{}}
	for i := range brackets {
		options := perStock(LightestFirst(brackets[i].Rows))
		var next []Common
		seen := map[string]int{}
		for _, s := range states {
			for _, r := range options {
				one := Common{Stock: union(s.Stock, r.Takes.Stock), Rows: append(slices.Clone(s.Rows), r), KG: s.KG + float64(brackets[i].Quantity)*r.Takes.KG}
				key := StockKey(one.Stock)
				switch k, known := seen[key]; {
				case !known:
					seen[key], next = len(next), append(next, one)
				case one.KG < next[k].KG:
					next[k] = one
				}
			}
			if len(next) > mostUnions {
				return nil, ErrTooMany
			}
		}
		states = next
	}
	slices.SortStableFunc(states, func(a, b Common) int {
		if len(a.Stock) != len(b.Stock) {
			return len(a.Stock) - len(b.Stock)
		}
		switch {
		case a.KG < b.KG:
			return -1
		case a.KG > b.KG:
			return 1
		}
		return 0
	})
	var out []Common
	for _, s := range states {
		if len(out) == 0 || s.KG < out[len(out)-1].KG {
			out = append(out, s)
		}
	}
	// One more thickness that saves nothing was dropped above; of one number of thicknesses the lightest came first.
	return out, nil
}

// perStock leaves the lightest row of each set of thicknesses.
func perStock(rows []*Row) []*Row {
	var out []*Row
	seen := map[string]bool{}
	for _, r := range rows {
		if key := StockKey(r.Takes.Stock); !seen[key] {
			seen[key], out = true, append(out, r)
		}
	}
	return out
}

func union(a, b []Stock) []Stock {
	t := Takes{Stock: slices.Clone(a)}
	for _, s := range b {
		t.add(s)
	}
	return t.Stock
}
