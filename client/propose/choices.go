package propose

// This file settles which parameters are sizes, and what each may be. It needs to know no kind: sweep.Roles finds out what changes with a parameter.

import (
	"context"
	"math"
	"slices"

	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// forms are the bracket as it is, and with each other word of a Form.
func (f *finder) forms(ctx context.Context, spec *job.Bracket) ([]*Form, error) {
	fixed := f.fixed(spec)
	base, err := sweep.Roles(ctx, f.b.Client, &fixed, f.kind)
	if err != nil {
		return nil, err
	}
	out := []*Form{{Sizes: f.sizes(&fixed, base)}}
	for _, word := range base.Forms {
		if f.given(word.Name) {
			continue
		}
		with := sweep.With(&fixed, []part.Param{word})
		other, err := sweep.Roles(ctx, f.b.Client, &with, f.kind)
		if err != nil {
			return nil, err
		}
		out = append(out, &Form{Words: []part.Param{word}, Sizes: f.sizes(&with, other)})
	}
	return out, nil
}

// fixed is the bracket with the parameters that are given one value.
func (f *finder) fixed(spec *job.Bracket) job.Bracket {
	var values []part.Param
	for _, a := range f.Vary {
		if len(a.Values) == 1 || !sweep.Ordered(a.Param) {
			values = append(values, a.Values[0])
		}
	}
	return sweep.With(spec, values)
}

// given says whether a parameter's values are said by the user.
func (f *finder) given(name string) bool {
	return slices.Contains(f.Keep, name) || slices.ContainsFunc(f.Vary, func(a sweep.Axis) bool { return a.Param.Name == name })
}

// sizes are the parameters to choose, in the order of their declaration.
func (f *finder) sizes(spec *job.Bracket, found *sweep.Sizes) []Size {
	var out []Size
	ofTray := f.b.Job.OfTray(spec)
	for _, d := range f.kind.Params {
		role := found.Roles[d.Name]
		if i := slices.IndexFunc(f.Vary, func(a sweep.Axis) bool { return a.Param.Name == d.Name }); i >= 0 {
			out = append(out, Size{f.Vary[i], role, "as typed"})
			continue
		}
		if role == "" || role == sweep.Form || slices.Contains(f.Keep, d.Name) || slices.Contains(ofTray, d.Name) {
			continue
		}
		if s, ok := f.size(spec, d, role); ok {
			out = append(out, s)
		}
	}
	return out
}

func (f *finder) size(spec *job.Bracket, d geometry.Param, role sweep.Role) (Size, bool) {
	now := sweep.Current(spec, &d)
	s := Size{Role: role}
	var values []part.Param
	switch role {
	case sweep.Outline:
		values, s.Source = outline(d, now, f.b.Job.Units), "lengths about the present one"
	case sweep.Many:
		values, s.Source = counts(d, now), "one or two more or fewer"
	default:
		values, s.Source = sweep.Stocked(f.b.Job, d, role, now, "")
		if now.Number == 0 && d.Min == 0 && d.Unit == geometry.MM {
			values = append(values, now) // none of it
		}
	}
	s.Axis = sweep.Of(d, values...)
	return s, len(s.Axis.Values) > 1 || len(s.Axis.Values) == 1 && s.Axis.Values[0] != now
}

// about are the parts of a present length that are tried beside it.
var about = []float64{0.8, 1.25, 1.6}

// outline are lengths about the present one, in steps of the shop's tape.
func outline(d geometry.Param, now part.Param, system units.System) []part.Param {
	out := []part.Param{now}
	for _, k := range about {
		step := 5.0
		switch {
		case system == units.Inch:
			step = 25.4 / 8
		case now.Number < 50:
			step = 1
		}
		v := now
		v.Number = math.Round(math.Round(now.Number*k/step)*step*1e9) / 1e9
		if v.Number >= d.Min && v.Number <= d.Max && v.Number > 0 {
			out = append(out, v)
		}
	}
	return out
}

func counts(d geometry.Param, now part.Param) []part.Param {
	var out []part.Param
	for n := max(d.Min, now.Number-2); n <= min(d.Max, now.Number+2); n++ {
		v := now
		v.Number = n
		out = append(out, v)
	}
	return out
}
