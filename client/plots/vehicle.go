package plots

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/units"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/whole"
)

// Scale brings numbers to the units of a system, as the axes have them.
type Scale struct{ System units.System }

const (
	lbf  = 4.4482216152605 // N
	inch = 25.4            // mm
)

// Force is in kN or lbf.
func (s Scale) Force(n float64) float64 {
	if s.System == units.Inch {
		return n / lbf
	}
	return n / 1000
}

// Moment is in kN m or lbf ft.
func (s Scale) Moment(nmm float64) float64 {
	if s.System == units.Inch {
		return nmm / (lbf * inch * 12)
	}
	return nmm / 1e6
}

// Length is in mm or in.
func (s Scale) Length(mm float64) float64 {
	if s.System == units.Inch {
		return mm / inch
	}
	return mm
}

func (s Scale) words(metric, inch string) string {
	if s.System == units.Inch {
		return inch
	}
	return metric
}

// Reactions is a chart for each mount of a body: what it bears up, case by case, a sign for each state. More states than there are signs share them.
func Reactions(r *vehicle.Result, s Scale) []*Chart {
	var names, states []string
	for i := range r.Cases {
		c := &r.Cases[i]
		if !slices.Contains(names, c.Case) {
			names = append(names, c.Case)
		}
		if !slices.Contains(states, c.State) {
			states = append(states, c.State)
		}
	}
	var out []*Chart
	var mounts []string
	for i := range r.Cases {
		for _, q := range r.Cases[i].Reactions {
			if !slices.Contains(mounts, q.Mount) {
				mounts = append(mounts, q.Mount)
			}
		}
	}
	for _, mount := range mounts {
		c := &Chart{
			Name: "reactions-" + slug(mount), Title: "Mount " + mount + ": what it bears up, by case and state",
			Desc: "Vertical force of the mount on the body by stiffness, for each load case and tank state; below nought the mount pulls the body down.",
			X:    Axis{Words: "load case", Names: names},
			Y:    Axis{Words: "force up on the body, " + s.words("kN", "lbf") + "; below nought it holds the body down", Zero: true},
		}
		for k, state := range states {
			m := Marks{Name: state, Sign: Sign(k) % Ring}
			for i := range r.Cases {
				one := &r.Cases[i]
				for _, q := range one.Reactions {
					if one.State == state && q.Mount == mount {
						m.Points = append(m.Points, Point{float64(slices.Index(names, one.Case)), s.Force(q.Force.Z)})
					}
				}
			}
			c.Marks = append(c.Marks, m)
		}
		out = append(out, c)
	}
	return out
}

// slug is a name for a drawing: letters, digits and '-'.
func slug(name string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, name)
}

// Rails is moment and shear along the frame: each rail in the case that governs it, both alike, and the body's load spread, with mounts, axles and cross
// members. Nil where no case has them.
func Rails(a *whole.Answer, q *whole.Request, s Scale) []*Chart {
	if a.Frame == nil || q.Frame == nil {
		return nil
	}
	x := Axis{Words: "behind the front axle, " + s.words("mm", "in")}
	moment := &Chart{
		Name: "rail-moment", Title: "Bending moment along the rails, each in the case that governs it", X: x,
		Y:    Axis{Words: "moment, " + s.words("kN m", "lbf ft") + "; above nought the lower flange is pulled", Zero: true},
		Desc: "Moment over the place along the vehicle, of the left and the right rail, of both alike and of the same load spread over the body.",
	}
	shear := &Chart{
		Name: "rail-shear", Title: "Shear along the rails, each in the case that governs it", X: x, Y: Axis{Words: "shear, " + s.words("kN", "lbf") + "; of what acts ahead, up", Zero: true},
		Desc: "Shear over the place along the vehicle, of the left and the right rail, of both alike and of the same load spread over the body.",
	}
	for _, g := range a.Frame.Governing {
		d := diagramOf(a.Frame, &g)
		if d == nil || len(d.Stations) == 0 {
			continue
		}
		words, dash := railWords(g.Rail)
		name := words + ": " + g.Case + ", " + g.State
		if g.Share != "" {
			name += ", " + g.Share
		}
		m, v := Line{Name: name, Dash: dash}, Line{Name: name, Dash: dash}
		for _, t := range d.Stations {
			m.Points = append(m.Points, Point{s.Length(t.XMM), s.Moment(t.MomentNMM)})
			v.Points = append(v.Points, Point{s.Length(t.XMM), s.Force(t.ShearN)})
		}
		moment.Lines, shear.Lines = append(moment.Lines, m), append(shear.Lines, v)
	}
	if moment.Lines == nil {
		return nil
	}
	moment.Uprights = places(q, s)
	shear.Uprights = moment.Uprights
	return []*Chart{moment, shear}
}

func diagramOf(f *whole.Frame, g *frame.Governing) *frame.Diagram {
	i := slices.IndexFunc(f.Cases, func(c frame.CaseResult) bool { return c.State == g.State && c.Case == g.Case })
	if i < 0 {
		return nil
	}
	c := &f.Cases[i]
	switch g.Rail {
	case "left":
		return &c.Left
	case "right":
		return &c.Right
	case "mean":
		return &c.Mean
	case "spread":
		return c.Spread
	}
	return nil
}

func railWords(rail string) (string, Dash) {
	switch rail {
	case "left":
		return "left rail", Solid
	case "right":
		return "right rail", Long
	case "mean":
		return "both alike", Dotted
	}
	return "load spread over the body", Faint
}

// places are axles, cross members and mounts along the vehicle, one upright for what is at one place.
func places(q *whole.Request, s Scale) []Upright {
	type place struct {
		x     float64
		words []string
	}
	var all []place
	put := func(x float64, words string) {
		i := slices.IndexFunc(all, func(p place) bool { return math.Abs(p.x-x) < 1 })
		if i < 0 {
			all, i = append(all, place{x: x}), len(all)
		}
		if !slices.Contains(all[i].words, words) {
			all[i].words = append(all[i].words, words)
		}
	}
	for _, a := range q.Frame.Axles {
		put(a.XMM, a.Name)
	}
	for _, m := range q.Frame.CrossMembers {
		words := m.Name
		if !strings.Contains(words, "cross member") {
			words += " cross member"
		}
		put(m.XMM, words)
	}
	for i := range q.Bodies {
		for _, m := range q.Bodies[i].Mounts {
			put(m.At.X, m.Name)
		}
	}
	slices.SortFunc(all, func(a, b place) int { return cmp.Compare(a.x, b.x) })
	var out []Upright
	for _, p := range all {
		out = append(out, Upright{s.Length(p.x), strings.Join(p.words, ", ")})
	}
	return out
}

// Twist is what is left of each measured gap as the frame turns. Nil where nothing that twist moves is measured.
func Twist(r *clearance.Report, points []clearance.Point, s Scale) *Chart {
	c := &Chart{
		Name: "twist-gaps", Title: "Room left as the frame twists", X: Axis{Words: "twist, degrees", Zero: true}, Y: Axis{Words: "gap left, " + s.words("mm", "in") + "; below nought it touches", Zero: true},
		Desc: "Gap left at each place over the angle by which the frame is twisted, with the angle that is allowed for.",
	}
	const degree = math.Pi / 180
	most := r.Allowance.AngleRad * 1.25
	for i := range points {
		p := &points[i]
		if p.HadMM == nil || p.Way == clearance.Free {
			continue
		}
		l := Line{Name: fmt.Sprintf("%s, %s", p.Name, p.Way), Dash: Dash(len(c.Lines)) % Faint}
		const steps = 25
		for k := range steps + 1 {
			angle := most * float64(k) / steps
			l.Points = append(l.Points, Point{angle / degree, s.Length(*p.HadMM - p.NeedMM(angle))})
		}
		c.Lines = append(c.Lines, l)
	}
	if c.Lines == nil {
		return nil
	}
	c.Uprights = []Upright{{r.Allowance.AngleRad / degree, "allowed for"}}
	return c
}
