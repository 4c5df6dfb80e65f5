package vehicle

import (
	"fmt"
	"strings"

	"lugwright/part"
)

// Fill is how full a tank is, 0 to 1.
type Fill struct {
	Tank  string
	Level float64
}

// State is one set of fills and present items. Tanks it does not name are empty, optional items it does not name are absent.
type State struct {
	Name    string
	Fills   []Fill
	Present []string
}

func (s *State) has(item string) bool {
	for _, n := range s.Present {
		if n == item {
			return true
		}
	}
	return false
}

func (s *State) level(tank string) float64 {
	for _, f := range s.Fills {
		if f.Tank == tank {
			return f.Level
		}
	}
	return 0
}

// Empty is the state with no contents and no optional item.
func (v *Vehicle) Empty() State { return State{Name: "empty"} }

// Full is the state with every tank full and every optional item on board.
func (v *Vehicle) Full() State {
	s := State{Name: "full"}
	for i := range v.Tanks {
		s.Fills = append(s.Fills, Fill{v.Tanks[i].Name, 1})
	}
	for i := range v.Items {
		if v.Items[i].Optional {
			s.Present = append(s.Present, v.Items[i].Name)
		}
	}
	return s
}

// MaxStates is how many states one request may have.
const MaxStates = 256

// Combinations gives every mix of tanks full or empty and optional items present or absent, empty first and full last. More than MaxStates are a
// *part.FieldError.
func (v *Vehicle) Combinations() ([]State, error) {
	full := v.Full()
	n := len(full.Fills) + len(full.Present)
	if n > 8 {
		return nil, &part.FieldError{Field: "states", Found: fmt.Sprintf("%d tanks and optional items have 2^%d combinations", n, n),
			Accept: fmt.Sprintf("at most %d: name the states that matter", MaxStates)}
	}
	var out []State
	for set := range 1 << n {
		var s State
		var names []string
		for i, f := range full.Fills {
			if set>>i&1 == 1 {
				s.Fills, names = append(s.Fills, f), append(names, f.Tank)
			}
		}
		for i, item := range full.Present {
			if set>>(len(full.Fills)+i)&1 == 1 {
				s.Present, names = append(s.Present, item), append(names, item)
			}
		}
		switch {
		case set == 0:
			s.Name = "empty"
		case set == 1<<n-1:
			s.Name = "full"
		default:
			if s.Name = "with " + strings.Join(names, ", "); len(s.Name) > maxName {
				s.Name = fmt.Sprintf("mix %d of %d", set, 1<<n)
			}
		}
		out = append(out, s)
	}
	return out, nil
}

// Move shifts an item or a tank by a vector.
type Move struct {
	Name string
	By   part.Vec
}

// With is the vehicle with things moved: what if.
func (v *Vehicle) With(moves ...Move) (*Vehicle, error) {
	w := *v
	w.Items, w.Tanks = append([]Item{}, v.Items...), append([]Tank{}, v.Tanks...)
	c := &checker{}
	for i, m := range moves {
		found := false
		for k := range w.Items {
			if w.Items[k].Name == m.Name {
				w.Items[k].At, found = w.Items[k].At.Add(m.By), true
			}
		}
		for k := range w.Tanks {
			if w.Tanks[k].Name == m.Name {
				w.Tanks[k].At, found = w.Tanks[k].At.Add(m.By), true
			}
		}
		if !found {
			c.Refuse(fmt.Sprintf("moves[%d].name", i), fmt.Sprintf("no item or tank %q", m.Name), "the name of an item or a tank")
		}
		c.place(fmt.Sprintf("moves[%d].by_mm", i), m.By)
	}
	return &w, c.Err()
}
