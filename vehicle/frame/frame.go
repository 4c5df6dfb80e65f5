package frame

import (
	"fmt"

	"lugwright/part"
	"lugwright/vehicle/field"
)

// Frame is a ladder frame: two like rails, a mirror pair.
type Frame struct {
	Rail         Channel
	Liners       []Liner // in both rails
	YieldMPa     float64 // of the rail, 0 where it is not known
	WebYMM       float64 // middle plane of each web from the centreline
	FlangesOut   bool    // the channels open outward, not to each other
	TopZMM       float64 // upper face of the rails
	Axles        []Axle  // front, rear
	Own          []Spread
	BodyFromMM   float64 // the body's stretch, over which its load would lie if it were spread
	BodyToMM     float64
	CabBackMM    *float64 // back of the cab, where it is stated
	CrossMembers []CrossMember
	Tubes        []CrossTube
}

// Axle is a line of support across the vehicle. A rail is held at its two spring hangers where they are given, which share the axle's force by the lever
// of the spring; else at the axle itself.
type Axle struct {
	Name      string
	XMM       float64
	HangersMM []float64 // none, or front and rear
}

// CrossMember ties the rails at a station and is stiff enough to hold them upright there.
type CrossMember struct {
	Name string
	XMM  float64
}

// Rail says which rail a mount stands on.
type Rail string

const (
	Left  Rail = "left"
	Right Rail = "right"
	Both  Rail = "both" // between the rails, on a cross tube or cross member
)

// Load is a mount's force on the frame.
type Load struct {
	Mount string
	On    Rail
	At    part.Vec // mm
	Force part.Vec // N
	Tube  string   // cross tube that it sits on, may be empty
}

// Case is what acts together in one state of the vehicle.
type Case struct {
	State, Name string
	Level       part.Level
	VerticalG   float64 // apparent vertical acceleration, static -1; only the frame's own mass asks for it
	Loads       []Load
	Shares      []Share
}

// Share is another way in which the mounts may share what the loads carry together: the loads' forces in order.
type Share struct {
	Name   string
	Forces []part.Vec // N
}

// shearY is how far the left rail's shear centre lies from the centreline.
func (f *Frame) shearY(s Section) float64 {
	if f.FlangesOut {
		return f.WebYMM - s.ShearCentreMM
	}
	return f.WebYMM + s.ShearCentreMM
}

// midZ is the level of the rails' middle.
func (f *Frame) midZ() float64 { return f.TopZMM - f.Rail.DepthMM/2 }

// Check says what of the frame is refused, as Bend does. The error is part.FieldErrors.
func (f *Frame) Check() error {
	var bad field.Errors
	f.Rail.check(&bad, "frame.rail")
	if bad.Count("frame.liners", len(f.Liners), 0, 20) {
		for i := range f.Liners {
			f.Liners[i].check(&bad, fmt.Sprintf("frame.liners[%d]", i), f.Rail)
		}
	}
	bad.Between("frame.yield_mpa", f.YieldMPa, 0, 3000)
	if bad.Positive("frame.web_y_mm", f.WebYMM, 5000) && bad.Err() == nil && !(f.shearY(f.Rail.sum(nil)) > 0) {
		bad.Refuse("frame.web_y_mm", fmt.Sprintf("%g", f.WebYMM), "more than the distance from web to shear centre, so that the rails stand apart")
	}
	bad.Place("frame.top_z_mm", f.TopZMM)
	f.checkAxles(&bad)
	bad.Range("frame.body", f.BodyFromMM, f.BodyToMM)
	if f.CabBackMM != nil {
		bad.Place("frame.cab_back_mm", *f.CabBackMM)
	}
	if bad.Count("frame.own", len(f.Own), 0, 100) {
		for i := range f.Own {
			f.Own[i].check(&bad, fmt.Sprintf("frame.own[%d]", i))
		}
	}
	if bad.Count("frame.cross_members", len(f.CrossMembers), 0, 100) {
		bad.Unique("frame.cross_members", len(f.CrossMembers), func(i int) string { return f.CrossMembers[i].Name }, ".name")
		for i := range f.CrossMembers {
			bad.Place(fmt.Sprintf("frame.cross_members[%d].x_mm", i), f.CrossMembers[i].XMM)
		}
	}
	if bad.Count("frame.tubes", len(f.Tubes), 0, 100) {
		bad.Unique("frame.tubes", len(f.Tubes), func(i int) string { return f.Tubes[i].Name }, ".name")
		for i := range f.Tubes {
			f.Tubes[i].check(&bad, fmt.Sprintf("frame.tubes[%d]", i))
		}
	}
	return bad.Err()
}

func (f *Frame) checkAxles(bad *field.Errors) {
	if len(f.Axles) != 2 {
		bad.Refuse("frame.axles", fmt.Sprintf("%d entries", len(f.Axles)), "two: the front axle, then the rear axle or the middle of the rear bogie")
		return
	}
	for i, a := range f.Axles {
		at := fmt.Sprintf("frame.axles[%d]", i)
		bad.Name(at+".name", a.Name)
		if !bad.Place(at+".x_mm", a.XMM) || len(a.HangersMM) == 0 {
			continue
		}
		if len(a.HangersMM) != 2 {
			bad.Refuse(at+".hangers_mm", fmt.Sprintf("%d entries", len(a.HangersMM)), "none, or the front and the rear hanger")
			continue
		}
		h := a.HangersMM
		if ok := bad.Place(at+".hangers_mm[0]", h[0]); bad.Place(at+".hangers_mm[1]", h[1]) && ok && !(h[0] < a.XMM && a.XMM < h[1]) {
			bad.Refuse(at+".hangers_mm", fmt.Sprintf("%g and %g", h[0], h[1]), fmt.Sprintf("one ahead of the axle at %g and one behind it", a.XMM))
		}
	}
	if gap := f.Axles[1].XMM - f.Axles[0].XMM; !(gap >= 100) {
		bad.Refuse("frame.axles[1].x_mm", fmt.Sprintf("%g", f.Axles[1].XMM), "at least 100 mm behind the front axle")
	}
}

func (s Spread) check(bad *field.Errors, at string) {
	bad.Name(at+".name", s.Name)
	bad.Positive(at+".mass_kg", s.MassKG, field.MaxKG)
	if bad.Range(at, s.FromMM, s.ToMM) && !(s.CGMM > s.FromMM && s.CGMM < s.ToMM) {
		bad.Refuse(at+".cg_mm", fmt.Sprintf("%g", s.CGMM), fmt.Sprintf("between its ends %g and %g", s.FromMM, s.ToMM))
	}
}

// maxCases bounds what one call reckons.
const maxCases = 5000

func (f *Frame) checkCases(prefix string, cases []Case) error {
	var bad field.Errors
	if !bad.Count(prefix+"cases", len(cases), 1, maxCases) {
		return bad.Err()
	}
	for i := range cases {
		c, at := &cases[i], fmt.Sprintf("%scases[%d]", prefix, i)
		bad.Name(at+".name", c.Name)
		if c.Level != part.Service && c.Level != part.Factored {
			bad.Refuse(at+".level", fmt.Sprintf("%q", c.Level), fmt.Sprintf("%q or %q", part.Service, part.Factored))
		}
		bad.Between(at+".vertical_g", c.VerticalG, -field.MaxG, field.MaxG)
		if !bad.Count(at+".loads", len(c.Loads), 1, 200) {
			continue
		}
		for k := range c.Loads {
			f.checkLoad(&bad, fmt.Sprintf("%s.loads[%d]", at, k), &c.Loads[k])
		}
		for k := range c.Shares {
			s, at := &c.Shares[k], fmt.Sprintf("%s.shares[%d]", at, k)
			if bad.Count(at+".force_n", len(s.Forces), len(c.Loads), len(c.Loads)) {
				for n := range s.Forces {
					bad.Vec(fmt.Sprintf("%s.force_n[%d]", at, n), s.Forces[n], field.MaxN)
				}
			}
		}
	}
	return bad.Err()
}

func (f *Frame) checkLoad(bad *field.Errors, at string, l *Load) {
	bad.Name(at+".mount", l.Mount)
	bad.Vec(at+".at_mm", l.At, field.MaxMM)
	bad.Vec(at+".force_n", l.Force, field.MaxN)
	if l.On != Left && l.On != Right && l.On != Both {
		bad.Refuse(at+".on", fmt.Sprintf("%q", l.On), fmt.Sprintf("%q, %q or %q", Left, Right, Both))
	}
	if l.Tube == "" {
		return
	}
	t := f.tube(l.Tube)
	switch {
	case t == nil:
		var names []string
		for _, t := range f.Tubes {
			names = append(names, t.Name)
		}
		bad.Refuse(at+".tube", fmt.Sprintf("%q", l.Tube), "a tube of the frame"+part.Nearest(l.Tube, names))
	case l.On != Both:
		bad.Refuse(at+".tube", fmt.Sprintf("%q for a mount on one rail", l.Tube), `none, or "both" as the rail`)
	case !(l.At.Y < t.YMM && l.At.Y > -t.YMM):
		bad.Refuse(at+".at_mm.y", fmt.Sprintf("%g", l.At.Y), fmt.Sprintf("between the tube's ends at -%g and %g", t.YMM, t.YMM))
	}
}
