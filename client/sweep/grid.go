package sweep

// This file counts through every combination of the axes of one bracket.

import (
	"fmt"
	"slices"

	"lugwright/client/job"
	"lugwright/part"
)

// Most is how many variants one sweep may have; a family takes more.
const Most = 100000

// Grid is one bracket and what is varied of it. The last axis turns fastest.
type Grid struct {
	Spec *job.Bracket
	Axes []Axis
}

// Count is the number of variants; more than Most reads as Most+1.
func (g *Grid) Count() int {
	n := 1
	for i := range g.Axes {
		if n *= len(g.Axes[i].Values); n > Most {
			return Most + 1
		}
	}
	return n
}

// Values are those of the axes in variant i.
func (g *Grid) Values(i int) []part.Param {
	out := make([]part.Param, len(g.Axes))
	for k := len(g.Axes) - 1; k >= 0; k-- {
		n := len(g.Axes[k].Values)
		out[k], i = g.Axes[k].Values[i%n], i/n
	}
	return out
}

// Below is the variant with the next smaller value of one axis, -1 at its end.
func (g *Grid) Below(i, axis int) int {
	stride := 1
	for k := axis + 1; k < len(g.Axes); k++ {
		stride *= len(g.Axes[k].Values)
	}
	if i/stride%len(g.Axes[axis].Values) == 0 {
		return -1
	}
	return i - stride
}

// With is a bracket with other values of some parameters.
func With(spec *job.Bracket, values []part.Param) job.Bracket {
	out := *spec
	out.Params = slices.Clone(spec.Params)
	for _, v := range values {
		if i := slices.IndexFunc(out.Params, func(p part.Param) bool { return p.Name == v.Name }); i >= 0 {
			out.Params[i] = v
		} else {
			out.Params = append(out.Params, v)
		}
	}
	return out
}

// Bounded refuses more variants than a sweep takes.
func Bounded(grids []Grid) error {
	n := 0
	for i := range grids {
		n += grids[i].Count()
	}
	if n > Most {
		return fmt.Errorf("more than %d variants; fewer values, larger steps or fewer parameters at once, or a family, which `lugwright batch` runs", Most)
	}
	return nil
}
