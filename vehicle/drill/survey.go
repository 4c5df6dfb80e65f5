package drill

import (
	"fmt"

	"lugwright/vehicle/field"
)

// Side names a rail.
type Side string

const (
	Left  Side = "left"
	Right Side = "right"
)

// Rail is one rail with what a survey found on it and what shall be added.
type Rail struct {
	Side                                         Side
	TopZMM, DepthMM, ThicknessMM, InsideRadiusMM float64
	FromMM, ToMM                                 float64 // stretch that was surveyed
	Holes                                        []Hole
	Zones                                        []Zone
	Brackets                                     []Bracket
	New                                          []NewHole
}

// Hole is one that is there already, in the web.
type Hole struct {
	Name            string
	XMM, ZMM, DiaMM float64
}

// Kind says what a zone is.
type Kind string

const (
	CrossMember   Kind = "cross member"
	Reinforcement Kind = "reinforcement"
	ProfileChange Kind = "profile change" // bend, crank, taper or joint of the rail
	LoadPoint     Kind = "load point"     // spring hanger, bump stop
	KeepOut       Kind = "keep-out"       // tank, brake pipe, harness, exhaust: whatever is behind or in front of the web
)

// Kinds lists every kind of zone.
func Kinds() []Kind { return []Kind{CrossMember, Reinforcement, ProfileChange, LoadPoint, KeepOut} }

// Zone is a stretch of the rail that something takes; over its whole depth where BottomMM and TopMM are both 0.
type Zone struct {
	Name            string
	Kind            Kind
	FromMM, ToMM    float64
	BottomMM, TopMM float64
}

// Bracket is the outline of what shall be bolted to the web.
type Bracket struct {
	Name            string
	FromMM, ToMM    float64
	BottomMM, TopMM float64
}

// Face is where a hole is drilled.
type Face string

const (
	Web          Face = "web"
	TopFlange    Face = "top flange"
	BottomFlange Face = "bottom flange"
)

// NewHole is a hole that is wanted.
type NewHole struct {
	Name            string
	Face            Face
	XMM, ZMM, DiaMM float64
	BoltMM          float64 // diameter of its bolt, 0 where it is not stated
	Bracket         string  // that it belongs to, may be empty
}

func (r *Rail) bottom() float64 { return r.TopZMM - r.DepthMM }

func check(rails []Rail, list []Guide) error {
	var bad field.Errors
	if bad.Count("rails", len(rails), 1, 2) {
		if len(rails) == 2 && rails[0].Side == rails[1].Side {
			bad.Refuse("rails[1].side", fmt.Sprintf("%q again", rails[1].Side), "each rail once")
		}
		for i := range rails {
			rails[i].check(&bad, fmt.Sprintf("rails[%d]", i))
		}
	}
	if bad.Count("guides", len(list), 1, 20) {
		bad.Unique("guides", len(list), func(i int) string { return list[i].ID }, ".id")
		for i := range list {
			list[i].check(&bad, fmt.Sprintf("guides[%d]", i))
		}
	}
	return bad.Err()
}

func (g *Guide) check(bad *field.Errors, at string) {
	for _, x := range []struct {
		name  string
		value float64
	}{
		{"largest_mm", g.LargestMM}, {"flange_mm", g.FlangeMM}, {"edge_mm", g.EdgeMM}, {"edge_small_mm", g.EdgeSmallMM}, {"edge_times", g.EdgeTimes}, {"pitch_mm", g.PitchMM},
		{"in_line", float64(g.InLine)}, {"reinforcement_mm", g.ReinforcementMM}, {"cross_member_mm", g.CrossMemberMM}, {"corner_mm", g.CornerMM}, {"over_bolt_mm", g.OverBoltMM},
	} {
		bad.Between(at+"."+x.name, x.value, 0, 2000)
	}
	if g.Source == "" {
		bad.Refuse(at+".source", "empty", "where the rules are from")
	}
}

func (r *Rail) check(bad *field.Errors, at string) {
	if r.Side != Left && r.Side != Right {
		bad.Refuse(at+".side", fmt.Sprintf("%q", r.Side), fmt.Sprintf("%q or %q", Left, Right))
	}
	bad.Place(at+".top_z_mm", r.TopZMM)
	if bad.Positive(at+".depth_mm", r.DepthMM, 1000) && bad.Positive(at+".thickness_mm", r.ThicknessMM, r.DepthMM/2) {
		bad.Between(at+".inside_radius_mm", r.InsideRadiusMM, 0, r.DepthMM/2-r.ThicknessMM)
	}
	bad.Range(at, r.FromMM, r.ToMM)
	total := len(r.Holes) + len(r.Zones) + len(r.Brackets) + len(r.New)
	if bad.Err() != nil || !bad.Count(at, total, 0, field.MaxCount) {
		return
	}
	r.checkNames(bad, at)
	for i, h := range r.Holes {
		r.checkHole(bad, fmt.Sprintf("%s.holes[%d]", at, i), h.XMM, h.ZMM, h.DiaMM)
	}
	for i, z := range r.Zones {
		p := fmt.Sprintf("%s.zones[%d]", at, i)
		known := false
		for _, k := range Kinds() {
			known = known || k == z.Kind
		}
		if !known {
			bad.Refuse(p+".kind", fmt.Sprintf("%q", z.Kind), fmt.Sprintf("one of %q", Kinds()))
		}
		bad.Range(p, z.FromMM, z.ToMM)
		if z.BottomMM != 0 || z.TopMM != 0 {
			heights(bad, p, z.BottomMM, z.TopMM)
		}
	}
	for i, b := range r.Brackets {
		p := fmt.Sprintf("%s.brackets[%d]", at, i)
		bad.Range(p, b.FromMM, b.ToMM)
		heights(bad, p, b.BottomMM, b.TopMM)
	}
	for i := range r.New {
		r.checkNew(bad, fmt.Sprintf("%s.new[%d]", at, i), &r.New[i])
	}
}

func (r *Rail) checkNames(bad *field.Errors, at string) {
	bad.Unique(at+".holes", len(r.Holes), func(i int) string { return r.Holes[i].Name }, ".name")
	bad.Unique(at+".zones", len(r.Zones), func(i int) string { return r.Zones[i].Name }, ".name")
	bad.Unique(at+".brackets", len(r.Brackets), func(i int) string { return r.Brackets[i].Name }, ".name")
	bad.Unique(at+".new", len(r.New), func(i int) string { return r.New[i].Name }, ".name")
}

func heights(bad *field.Errors, at string, bottom, top float64) {
	ok := bad.Place(at+".bottom_mm", bottom)
	if bad.Place(at+".top_mm", top) && ok && !(top > bottom) {
		bad.Refuse(at+".top_mm", fmt.Sprintf("%g", top), fmt.Sprintf("more than bottom_mm, which is %g", bottom))
	}
}

func (r *Rail) checkHole(bad *field.Errors, at string, x, z, dia float64) {
	bad.Place(at+".x_mm", x)
	bad.Between(at+".z_mm", z, r.bottom(), r.TopZMM)
	bad.Positive(at+".dia_mm", dia, r.DepthMM)
}

func (r *Rail) checkNew(bad *field.Errors, at string, h *NewHole) {
	switch h.Face {
	case Web:
		r.checkHole(bad, at, h.XMM, h.ZMM, h.DiaMM)
	case TopFlange, BottomFlange:
		bad.Place(at+".x_mm", h.XMM)
		bad.Positive(at+".dia_mm", h.DiaMM, r.DepthMM)
	default:
		bad.Refuse(at+".face", fmt.Sprintf("%q", h.Face), fmt.Sprintf("%q, %q or %q", Web, TopFlange, BottomFlange))
	}
	bad.Between(at+".bolt_mm", h.BoltMM, 0, h.DiaMM)
	if h.Bracket == "" {
		return
	}
	for _, b := range r.Brackets {
		if b.Name == h.Bracket {
			return
		}
	}
	bad.Refuse(at+".bracket", fmt.Sprintf("%q", h.Bracket), "a bracket of this rail, or none")
}
