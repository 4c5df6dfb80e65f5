package plots

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/paper"
	"lugwright/part"
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

// ways are the directions of a force on the body, in the order in which they are shown.
var ways = []struct {
	name, plus, less, words string
	of                      func(part.Vec) float64
}{
	{"z", "up", "down", "up on the body; below nought it holds the body down", func(v part.Vec) float64 { return v.Z }},
	{"y", "left", "right", "to the left on the body; below nought to the right", func(v part.Vec) float64 { return v.Y }},
	{"x", "rearward", "forward", "rearward on the body; below nought forward", func(v part.Vec) float64 { return v.X }},
}

// nothing is a force that no mount feels, N: what is left of rounding.
const nothing = 1e-3

// bears says whether a mount bears anything one way in any case, within its range.
func bears(r *vehicle.Result, mount, way string) bool {
	for i := range r.Cases {
		for _, q := range r.Cases[i].Reactions {
			for _, c := range q.Components {
				if q.Mount == mount && c.Direction == way && max(math.Abs(c.Value), math.Abs(c.Low), math.Abs(c.High)) > nothing {
					return true
				}
			}
		}
	}
	return false
}

// Reactions is a chart for each mount of a body: what it bears up, sideways and along, an area for each way in which it bears anything, case by case, a sign for
// each state with the range that equilibrium leaves. More states than there are signs share them.
func Reactions(r *vehicle.Result, s Scale) []*Chart {
	var names, states []string
	for i := range r.Cases {
		note(&names, r.Cases[i].Case)
		note(&states, r.Cases[i].State)
	}
	var out []*Chart
	for _, mount := range mountsOf(r) {
		var areas []*Chart
		for k := range ways {
			if bears(r, mount, ways[k].name) {
				areas = append(areas, reaction(r, s, mount, k, names, states))
			}
		}
		if areas == nil {
			continue
		}
		c := areas[0]
		c.Under = areas[1:]
		for _, a := range areas {
			a.HeightMM = []float64{usualMM, 34, 20}[len(areas)-1]
		}
		c.Name, c.Title = "reactions-"+slug(mount), "Mount "+mount+": forces on the body, by case and state"
		c.Desc = "Force of the mount on the body by stiffness, for each load case and state, with the range that equilibrium leaves where the mounts share it."
		for _, e := range extremes(r, s, mount) {
			c.Desc += fmt.Sprintf(" %s %s (%s, %s).", e.way, e.force, e.load, e.state)
		}
		out = append(out, c)
	}
	return out
}

func note(list *[]string, name string) {
	if !slices.Contains(*list, name) {
		*list = append(*list, name)
	}
}

// unbounded says whether equilibrium leaves any force without a bound.
func unbounded(r *vehicle.Result) bool {
	for i := range r.Cases {
		for _, q := range r.Cases[i].Reactions {
			if slices.ContainsFunc(q.Components, func(c vehicle.Component) bool { return c.LowOpen || c.HighOpen }) {
				return true
			}
		}
	}
	return false
}

func mountsOf(r *vehicle.Result) []string {
	var out []string
	for i := range r.Cases {
		for _, q := range r.Cases[i].Reactions {
			note(&out, q.Mount)
		}
	}
	return out
}

// reaction is the area of one way of one mount.
func reaction(r *vehicle.Result, s Scale, mount string, way int, names, states []string) *Chart {
	w := &ways[way]
	c := &Chart{X: Axis{Words: "load case", Names: names}, Y: Axis{Words: s.words("kN", "lbf") + " " + w.words, Zero: true}}
	for k, state := range states {
		m := Marks{Name: state, Sign: Sign(k) % Ring}
		// The states of a case stand beside one another.
		aside := 0.0
		if n := len(states); n > 1 {
			aside = 0.5 * (float64(k)/float64(n-1) - 0.5)
		}
		for i := range r.Cases {
			one := &r.Cases[i]
			for _, q := range one.Reactions {
				if one.State != state || q.Mount != mount {
					continue
				}
				x := float64(slices.Index(names, one.Case)) + aside
				m.Points = append(m.Points, Point{x, s.Force(w.of(q.Force))})
				for _, g := range q.Components {
					if g.Direction == w.name && g.High-g.Low > nothing {
						m.Ranges = append(m.Ranges, Range{x, s.Force(g.Low), s.Force(g.High)})
					}
				}
			}
		}
		c.Marks = append(c.Marks, m)
	}
	return c
}

// extreme is the greatest force of a mount on the body one way, by stiffness.
type extreme struct{ way, force, load, state string }

// extremes are those of one mount, both ways of each direction in which it bears anything.
func extremes(r *vehicle.Result, s Scale, mount string) []extreme {
	var out []extreme
	for _, w := range ways {
		for _, side := range []struct {
			name string
			sign float64
		}{{w.plus, 1}, {w.less, -1}} {
			best, most := extreme{way: side.name}, nothing
			for i := range r.Cases {
				for _, q := range r.Cases[i].Reactions {
					if v := side.sign * w.of(q.Force); q.Mount == mount && v > most {
						most, best.load, best.state = v, r.Cases[i].Case, r.Cases[i].State
					}
				}
			}
			if most > nothing {
				best.force = units.Format(most, units.Force, s.System)
				out = append(out, best)
			}
		}
	}
	return out
}

// Group is charts of one thing, with what is to be known of them.
type Group struct {
	Head   string
	Charts []*Chart
	Table  *paper.Table // of their numbers; nil: none
	Note   string
}

// Blocks are the group for a paper, its heading of a level.
func (g *Group) Blocks(level int) []paper.Block {
	out := []paper.Block{&paper.Heading{Level: level, Text: g.Head}}
	for _, c := range g.Charts {
		out = append(out, &paper.Figure{Drawing: c.Drawing()})
	}
	if g.Table != nil {
		out = append(out, g.Table)
	}
	return append(out, &paper.List{Items: []string{g.Note}})
}

// OfVehicle is every chart of a vehicle: rails, twist, the mounts of each body.
func OfVehicle(a *whole.Answer, q *whole.Request, s Scale) []Group {
	var out []Group
	if c := Rails(a, q, s); c != nil {
		out = append(out, Group{Head: "Rails", Charts: []*Chart{c}, Note: "service loads as the cases have them, no load factor inside; each rail under the way of sharing that is worst for it"})
	}
	if a.Clearance != nil {
		if c := Twist(a.Clearance, q.Points, s); c != nil {
			out = append(out, Group{Head: "Twist", Charts: []*Chart{c},
				Note: "by geometry, half-width x tan or height x sin of the angle, what is needed beside twist taken off; read the gaps in the twist test"})
		}
	}
	for i := range a.Report.Bodies {
		r := &a.Report.Bodies[i]
		charts := Reactions(r, s)
		if charts == nil {
			continue
		}
		g := Group{Head: "Mounts", Charts: charts,
			Note: "signs by the stiffness of the mounts, grey lines what equilibrium leaves open where they share a force; what a bracket is designed for holds that and the masses' doubt: its loads on the calc sheet"}
		if unbounded(r) {
			g.Note += "; a line ends at its sign where equilibrium sets no bound on that side"
		}
		if len(a.Report.Bodies) > 1 && i < len(q.Bodies) {
			g.Head += " of " + q.Bodies[i].Name
		}
		g.Table = &paper.Table{Caption: "The greatest of each mount on the body, by stiffness", Heads: []paper.Head{{Text: "mount"}, {Text: "way"}, {Text: "force", Numbers: true}, {Text: "case"}, {Text: "state"}}}
		for _, m := range mountsOf(r) {
			for _, e := range extremes(r, s, m) {
				g.Table.Rows = append(g.Table.Rows, paper.Row{Cells: []string{m, e.way, e.force, e.load, e.state}})
			}
		}
		out = append(out, g)
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

// Rails is moment and, under it, shear along the frame: each rail in the case that governs it, both alike, and the body's load spread, with mounts, axles and
// cross members. Nil where no case has them.
func Rails(a *whole.Answer, q *whole.Request, s Scale) *Chart {
	if a.Frame == nil || q.Frame == nil {
		return nil
	}
	x := Axis{Words: "behind the front axle, " + s.words("mm", "in")}
	moment := &Chart{
		Name: "rails", Title: "Bending moment and shear along the rails, each in the case that governs it", X: x,
		Y:    Axis{Words: "moment, " + s.words("kN m", "lbf ft") + "; above nought the lower flange is pulled", Zero: true},
		Desc: "Moment and shear over the place along the vehicle, of the left and the right rail, of both alike and of the same load spread over the body.",
	}
	shear := &Chart{X: x, Y: Axis{Words: "shear, " + s.words("kN", "lbf") + "; of what acts ahead, up", Zero: true}}
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
		moment.Desc += " " + s.greatest(&m, words, "moment", s.words("kN m", "lbf ft")) + " " + s.greatest(&v, words, "shear", s.words("kN", "lbf"))
	}
	if moment.Lines == nil {
		return nil
	}
	moment.Uprights = places(q, s)
	for _, u := range moment.Uprights {
		shear.Uprights = append(shear.Uprights, Upright{At: u.At})
	}
	moment.HeightMM, shear.HeightMM = 46, 46
	moment.Under = []*Chart{shear}
	return moment
}

// greatest says where a line is furthest from nought.
func (s Scale) greatest(l *Line, words, what, unit string) string {
	most := l.Points[0]
	for _, q := range l.Points {
		if math.Abs(q.Y) > math.Abs(most.Y) {
			most = q
		}
	}
	return fmt.Sprintf("%s: greatest %s %s %s at %s %s.", words, what, units.FormatPlain(most.Y, 2), unit, units.FormatPlain(most.X, 0), s.words("mm", "in"))
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
		c.Desc += fmt.Sprintf(" %s: %s left there.", l.Name, units.ShopLength(*p.HadMM-p.NeedMM(r.Allowance.AngleRad), s.System))
	}
	if c.Lines == nil {
		return nil
	}
	c.Uprights = []Upright{{r.Allowance.AngleRad / degree, "allowed for"}}
	return c
}
