// Package wholetest is a whole vehicle for tests: the field lab, an invented demo whose numbers were solved outside of this program. It checks nothing.
package wholetest

import (
	"math"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
	"lugwright/vehicle/whole"
)

func at(x, y, z float64) part.Vec { return part.Vec{X: x, Y: y, Z: z} }

func mm(x float64) *float64 { return &x }

// FieldLab asks for everything about a field lab box on a light four-wheel-drive: a single in front over a cross tube, a pair behind on the rails'
// outside. Fore and aft is shared equally by the pair and its side load is all at the left, as the printed numbers assume.
func FieldLab() *whole.Request {
	q := &whole.Request{
		Vehicle: &vehicle.Vehicle{
			Name: "field lab", WheelbaseMM: 3800, RearTrackMM: 1650, Ratings: vehicle.Ratings{GrossKG: 7500, FrontKG: 3100, RearKG: 5200},
			Cab: vehicle.ChassisCab{FrontKG: 1900, RearKG: 1150, CGZMM: 820, Doubt: vehicle.Doubt{Confidence: vehicle.Weighed}},
			Items: []vehicle.Item{
				{Name: "subframe", MassKG: 240, At: at(2750, 0, 1080), Doubt: vehicle.Doubt{Confidence: vehicle.Data}},
				{Name: "box shell", MassKG: 780, At: at(2850, 0, 1950), Doubt: vehicle.Doubt{Confidence: vehicle.Guess}},
				{Name: "bench, cold box", MassKG: 260, At: at(2300, 700, 1650)},
				{Name: "sample freezer", MassKG: 140, At: at(4400, -750, 1500), Doubt: vehicle.Doubt{Confidence: vehicle.Data, PlusMinusKG: 3}},
				{Name: "battery, solar", MassKG: 190, At: at(1500, 0, 1250)},
				{Name: "generator", MassKG: 95, At: at(4700, 600, 1300)},
				{Name: "people, kit", MassKG: 150, At: at(2600, 0, 1600)},
			},
			Tanks: []vehicle.Tank{
				{Name: "clean water", CapacityL: 300, Fluid: vehicle.Fluid{Name: "water", DensityKGPerL: 1}, EmptyKG: 25, At: at(3000, -650, 1250)},
				{Name: "waste water", CapacityL: 200, Fluid: vehicle.Fluid{Name: "water", DensityKGPerL: 1}, EmptyKG: 20, At: at(2400, -650, 1250)},
			},
		},
		Bodies: []vehicle.Body{{
			Mounts: append([]vehicle.Mount{vehicle.SinglePivot("single", at(1250, 0, 1010))}, vehicle.ClevisPair("left", "right", at(3650, 0, 1010), 468)...),
			Shares: []vehicle.Share{{Direction: "x", Mounts: []string{"left", "right"}, Fractions: []float64{0.5, 0.5}},
				{Direction: "y", Mounts: []string{"left", "right"}, Fractions: []float64{1, 0}}},
		}},
	}
	v := q.Vehicle
	q.States = []vehicle.State{v.Empty(), v.Full()}
	set, err := vehicle.ShippedSet(vehicle.OffRoad)
	if err != nil {
		panic(err) // a set that is always there
	}
	q.Cases = set.Cases()
	q.Moves = []vehicle.Move{{Name: "generator", By: at(-500, 0, 0)}}
	q.Reading = &whole.Reading{State: "full", Reading: vehicle.Reading{FrontKG: 2540, RearKG: 2930, PlusMinusKG: 10}}
	frameOf(q)
	checksOf(q)
	return q
}

func frameOf(q *whole.Request) {
	q.Frame = &frame.Frame{
		Rail: frame.Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}, YieldMPa: 355, WebYMM: 422, TopZMM: 960,
		Axles:      []frame.Axle{{Name: "front axle"}, {Name: "rear axle", XMM: 3800}},
		BodyFromMM: 900, BodyToMM: 5000, CabBackMM: mm(820),
		Tubes: []frame.CrossTube{{Name: "cross tube", XMM: 1250, ZMM: 905, YMM: 419, DiaMM: 88.9, WallMM: 8}},
	}
	q.Stands = []whole.Stand{{Mount: "single", Rail: frame.Both, Tube: "cross tube"}}
	q.Sweep = &whole.Sweep{Mount: "single", XMM: []float64{1250, 1800, 2250}}
}

func checksOf(q *whole.Request) {
	rail := drill.Rail{
		TopZMM: 960, DepthMM: 200, ThicknessMM: 6, FromMM: 900, ToMM: 4800, Holes: []drill.Hole{{Name: "h1", XMM: 3500, ZMM: 860, DiaMM: 17}},
		Zones:    []drill.Zone{{Name: "rear spring hanger", Kind: drill.LoadPoint, FromMM: 3200, ToMM: 3300}},
		Brackets: []drill.Bracket{{Name: "clevis", FromMM: 3560, ToMM: 3740, BottomMM: 800, TopMM: 920}},
		New: []drill.NewHole{{Name: "b1", Face: drill.Web, XMM: 3600, ZMM: 880, DiaMM: 17, BoltMM: 16, Bracket: "clevis"},
			{Name: "b2", Face: drill.Web, XMM: 3700, ZMM: 880, DiaMM: 17, BoltMM: 16, Bracket: "clevis"}},
	}
	right := rail
	rail.Side, right.Side = drill.Left, drill.Right
	q.Drilling = &whole.Drilling{Rails: []drill.Rail{rail, right}, Guides: []string{"c"}, SubframeFlangeMM: 50,
		OwnGuides: []drill.Guide{{ID: "own", Name: "own rule", Source: "the builder's own", EdgeMM: 40, WebOnly: true}}}
	q.Twist = &clearance.Twist{AngleRad: 10 * math.Pi / 180, TrackMM: 1650}
	q.Points = []clearance.Point{
		{Name: "rail under subframe", Way: clearance.UpDown, ArmMM: 425, HadMM: mm(70)},
		{Name: "box to cab", Way: clearance.Sideways, ArmMM: 1400, HadMM: mm(300)},
		{Name: "grease gun at the single", Way: clearance.Free, ExtraMM: 90},
	}
	q.Lift = &whole.Lift{Jacks: []lift.Jack{{Name: "front left", XMM: 1100, YMM: 1000, RatedKG: 2000}, {Name: "front right", XMM: 1100, YMM: -1000, RatedKG: 900},
		{Name: "rear left", XMM: 4800, YMM: 1000}, {Name: "rear right", XMM: 4800, YMM: -1000}}}
	q.Trays = []whole.Tray{{Carries: []string{"clean water"}, Tray: hung.Tray{Name: "clean water tray", MassKG: 16, At: at(3000, -650, 1080), BeamZMM: 1240, FreeMM: 140, Ends: hung.BothHeld,
		Rods: []hung.Rod{{Name: "a", XMM: 2700, YMM: -380}, {Name: "b", XMM: 2700, YMM: -920}, {Name: "c", XMM: 3300, YMM: -380}, {Name: "d", XMM: 3300, YMM: -920}}}}}
	q.Washers = []hung.Washer{{Name: "spreader", RodMM: 12, SideMM: 60, ThicknessMM: 6, ThinWall: true}}
	q.PlasticTanks = []hung.Tank{{Name: "clean water", HeightMM: 600, UnsupportedMM2: 50000, HeldDown: true}}
}
