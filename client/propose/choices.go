package propose

// This file settles which parameters are sizes, and what each may be. It needs to know no kind: sweep.Roles finds out what changes with a parameter.

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

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
	sizes, err := f.sizes(&fixed, base)
	if err != nil {
		return nil, err
	}
	out := []*Form{{Sizes: sizes}}
	for _, word := range base.Forms {
		if f.given(word.Name) {
			continue
		}
		with := sweep.With(&fixed, []part.Param{word})
		other, err := sweep.Roles(ctx, f.b.Client, &with, f.kind)
		if err != nil {
			return nil, err
		}
		sizes, err := f.sizes(&with, other)
		if err != nil {
			return nil, err
		}
		out = append(out, &Form{Words: []part.Param{word}, Sizes: sizes})
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
func (f *finder) sizes(spec *job.Bracket, found *sweep.Sizes) ([]Size, error) {
	var out []Size
	ofTray := f.b.Job.OfTray(spec)
	for _, d := range f.kind.Params {
		role := found.Roles[d.Name]
		if i := slices.IndexFunc(f.Vary, func(a sweep.Axis) bool { return a.Param.Name == d.Name }); i >= 0 {
			s := Size{Axis: f.Vary[i], Role: role, Source: "as typed"}
			if role == sweep.Bolt {
				f.grade(spec, &s)
			}
			out = append(out, s)
			continue
		}
		if role == "" || role == sweep.Form || slices.Contains(f.Keep, d.Name) || slices.Contains(ofTray, d.Name) {
			continue
		}
		s, err := f.size(spec, d, role)
		if err != nil {
			return nil, err
		}
		if now := sweep.Current(spec, &d); len(s.Axis.Values) > 1 || len(s.Axis.Values) == 1 && s.Axis.Values[0] != now {
			out = append(out, s)
		}
	}
	return out, nil
}

func (f *finder) size(spec *job.Bracket, d geometry.Param, role sweep.Role) (Size, error) {
	now := sweep.Current(spec, &d)
	s := Size{Role: role}
	var values []part.Param
	switch role {
	case sweep.Outline:
		values, s.Source = outline(d, now, f.b.Job.Units), "lengths about the present one"
	case sweep.Many:
		values, s.Source = counts(d, now), "one or two more or fewer"
	default:
		values, s.Source = sweep.Stocked(f.b.Job, spec, d, role)
		if now.Number == 0 && d.Min == 0 && d.Unit == geometry.MM {
			values = append(values, now) // none of it
		}
	}
	s.Axis = sweep.Of(d, values...)
	if role != sweep.Bolt {
		return s, nil
	}
	grade, stated := f.grade(spec, &s)
	if stated == nil {
		return s, nil
	}
	// A grade that somebody chose stays, and with it the threads that it comes with.
	s.Axis.Values = slices.DeleteFunc(s.Axis.Values, func(v part.Param) bool { return sweep.GradeFor(stated.Text, v.Text) != stated.Text })
	if len(s.Axis.Values) == 0 && len(values) > 0 {
		return s, fmt.Errorf("%s: %s of %s does not come with the threads of %s; --vary %s=GRADE with one that does, or --keep %s", spec.Name, grade, stated.Text, s.Source, grade, d.Name)
	}
	return s, nil
}

// grade settles which grade goes with each size of bolts. Where the bracket or the user states one it is given instead.
func (f *finder) grade(spec *job.Bracket, s *Size) (name string, stated *part.Param) {
	name = strings.TrimSuffix(s.Axis.Param.Name, "size") + "grade"
	i := slices.IndexFunc(f.kind.Params, func(d geometry.Param) bool { return d.Name == name })
	if i < 0 {
		return name, nil
	}
	if now := sweep.Current(spec, &f.kind.Params[i]); f.given(name) || slices.ContainsFunc(spec.Params, func(p part.Param) bool { return p.Name == name }) {
		return name, &now
	}
	usual := f.kind.Params[i].Text
	var taken string
	for _, v := range s.Axis.Values {
		with := part.Param{}
		if grade := sweep.GradeFor(usual, v.Text); grade != "" && grade != usual {
			with, taken = part.Param{Name: name, Unit: string(f.kind.Params[i].Unit), Text: grade}, grade
		}
		s.With = append(s.With, with)
	}
	if taken != "" {
		s.Source += ", of " + taken + ", since the usual " + usual + " does not come with such threads"
	}
	return name, nil
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

// counts are those about the present one. None of a thing is another form of the bracket, such as one that is welded where it was bolted.
func counts(d geometry.Param, now part.Param) []part.Param {
	if now.Number == 0 {
		return []part.Param{now}
	}
	var out []part.Param
	for n := max(d.Min, 1, now.Number-2); n <= min(d.Max, now.Number+2); n++ {
		v := now
		v.Number = n
		out = append(out, v)
	}
	return out
}
