package access

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
)

const (
	torchFromMM = 8    // past the root, where the nozzle's tip is
	torchTaper  = 0.35 // half width of the nozzle over the distance from the root
	turns       = 48   // directions tried around a weld, one of them midway between two square faces
)

// places along a run that are looked at, as fractions of its length.
var places = [3]float64{0.1, 0.5, 0.9}

// tilts along the weld, in rad: upright, then pushed or dragged.
var tilts = []float64{0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75}

// weld names the runs of a group that no torch reaches, all of them or at some place. What stands on the part that it roots goes on after it, as a snipe
// at that part's foot says.
func (s *scene) weld(g *part.WeldGroup, r Room) []Finding {
	faces, later := s.faces(g), s.b.Above(s.b.Owner(g.Joins[0]))
	there := func(id string) bool { return s.welded[id] && !slices.Contains(later, id) }
	var runs, blocked []string
	var out part.Vec // from the root to where the torch begins
	if p := s.b.Face(g.Joins[0]); p != nil && g.Kind == part.Plug {
		_, _, off := p.Pose.Local(g.Segments[0].A)
		out = p.Pose.W().Scale(-math.Copysign(p.ThicknessMM, off)) // the hole's far end: the hole itself is wide enough, or no plug
	}
	for i, seg := range g.Segments {
		seg.A, seg.B = seg.A.Add(out), seg.B.Add(out)
		whole := seg.B.Sub(seg.A)
		here := 0
		for _, t := range places {
			by := s.torch(seg.A.AddScaled(t, whole), whole.Unit(), faces, there, r)
			for _, id := range by {
				if !slices.Contains(blocked, id) {
					blocked = append(blocked, id)
				}
			}
			if by != nil {
				here++
			}
		}
		switch here {
		case 0:
		case len(places):
			runs = append(runs, fmt.Sprint(i+1))
		default:
			runs = append(runs, fmt.Sprintf("%d in part", i+1))
		}
	}
	if runs == nil {
		return nil
	}
	slices.Sort(blocked)
	return []Finding{{"weld " + g.ID, fmt.Sprintf("no room for a torch of %g x %g mm at run %s of %d; in the way: %s",
		r.TorchWidthMM, r.TorchLengthMM, strings.Join(runs, ", "), len(g.Segments), strings.Join(blocked, ", "))}}
}

// faces are the normals of the plates that a group joins.
func (s *scene) faces(g *part.WeldGroup) []part.Vec {
	var out []part.Vec
	for _, id := range g.Joins {
		if p := s.b.Face(id); p != nil {
			out = append(out, p.Pose.W())
		}
	}
	return out
}

// torch names what stands in the way of the torch at a point of a weld, of what is there by then; nil when it gets there from some side.
func (s *scene) torch(at, run part.Vec, faces []part.Vec, there func(id string) bool, r Room) []string {
	var by []string
	for _, d := range directions(run, faces, math.Sin(r.TorchAngleRad)) {
		id := s.blockedBy(path{from: at, along: d, lo: torchFromMM, hi: r.TorchLengthMM, half: r.TorchWidthMM / 2, taper: torchTaper,
			ignoring: func(id string) bool { return !there(id) }})
		if id == "" {
			return nil
		}
		if !slices.Contains(by, id) {
			by = append(by, id)
		}
	}
	if by == nil {
		by = []string{"the faces themselves"}
	}
	return by
}

// directions are those that keep the torch's angle to both faces, the most open first.
func directions(run part.Vec, faces []part.Vec, sine float64) []part.Vec {
	e1, e2 := square(run)
	type open struct {
		d part.Vec
		o float64
	}
	var all []open
	for _, tilt := range tilts {
		for k := range turns {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / turns)
			d := e1.Scale(cos).AddScaled(sin, e2).Scale(math.Cos(tilt)).AddScaled(math.Sin(tilt), run)
			o := 1.0
			for _, n := range faces {
				o = min(o, math.Abs(d.Dot(n)))
			}
			if o >= sine-1e-9 {
				all = append(all, open{d, o})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b open) int { return cmp.Compare(b.o, a.o) })
	out := make([]part.Vec, len(all))
	for i, x := range all {
		out[i] = x.d
	}
	return out
}

// square gives two unit directions square to one and to each other.
func square(n part.Vec) (e1, e2 part.Vec) {
	e1 = n.Cross(part.Vec{Z: 1})
	if e1.Norm() < 0.5 {
		e1 = n.Cross(part.Vec{X: 1})
	}
	e1 = e1.Unit()
	return e1, n.Cross(e1)
}
