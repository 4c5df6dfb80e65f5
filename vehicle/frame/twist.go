package frame

import (
	"fmt"
	"math"
)

// crossReach is within how many rail depths a cross member counts as near a mount: our choice.
const crossReach = 2

// Twist is how a mount beside a rail's shear centre twists that rail, and what takes it.
type Twist struct {
	Mount       string
	Rail        Rail
	XMM         float64
	SideMM      float64 // from shear centre to mount, outward positive
	HeightMM    float64 // from the rail's middle up to the mount
	MomentNMM   float64 // about the rail, tipping it outward positive
	CrossMember string  // that takes it as a couple; empty where none is stated near
	FarMM       float64 // how far along the rail that is
	CoupleN     float64 // the pair of vertical forces with which it passes the moment to the two rails: up on the mount's rail, down on the other
	RailMPa     float64 // shear stress if the bare rail alone carried the whole moment to one side (St Venant)
	Words       string
	Share       string // way of sharing under which it is worst; empty: the loads as stated
}

// twist of a load on one rail.
func (f *rails) twist(l *Load) Twist {
	s := *f.section(l.At.X, true)
	out := 1.0
	if l.On == Right {
		out = -1
	}
	t := Twist{Mount: l.Mount, Rail: l.On, XMM: l.At.X, SideMM: l.At.Y*out - f.shearY(s), HeightMM: l.At.Z - f.midZ()}
	// About the rail's axis: an upward force outside of it tips the rail inward, as does an outward force below it.
	t.MomentNMM = t.HeightMM*l.Force.Y*out - t.SideMM*l.Force.Z
	t.RailMPa = math.Abs(t.MomentNMM) * s.ThickestMM / s.JMM4
	best := math.Inf(1)
	for _, m := range f.CrossMembers {
		if d := math.Abs(m.XMM - l.At.X); d <= crossReach*f.Rail.DepthMM && d < best {
			best, t.CrossMember, t.FarMM = d, m.Name, d
		}
	}
	if t.CrossMember == "" {
		t.Words = fmt.Sprintf("not checked: no cross member stated near station %.0f mm (within %.0f mm)", l.At.X, crossReach*f.Rail.DepthMM)
		return t
	}
	t.CoupleN = -t.MomentNMM / (2 * f.shearY(s))
	t.Words = fmt.Sprintf("cross member %s takes it in bending, as a couple between the rails; its joints to the rails and the rail's way there are not checked", t.CrossMember)
	return t
}
