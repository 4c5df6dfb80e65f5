package fab

// The plate at a tube's end, bolted down beside the tube.

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// TubePlate is a rectangular plate with a tube on its middle and bolts beside it: u up, v along the rail, its normal towards the tube.
type TubePlate struct {
	Name                                      string // trade word
	ThicknessMM, LengthMM, HeightMM, RadiusMM float64
	BoltMM, HoleMM, PitchMM, GaugeMM          float64
	Along, Up                                 []float64 // bolts
	Tube                                      Tube
	On                                        string  // what stands on it, in words: the tube, or what has its outline
	LegMM                                     float64 // of the fillets round that
	v                                         geometry.Values
	prefix                                    string
}

// TubePlateParams declares the plate and its bolts. Names of the plate's own sizes begin with a prefix; thickness, length, height, radius, pitch and gauge
// are by default those of def.
func TubePlateParams(prefix, name string, def TubePlate) []geometry.Param {
	return append([]geometry.Param{
		Length(prefix+"_thickness", 5, 60, def.ThicknessMM, "thickness of the "+name),
		Length(prefix+"_length", 60, 1000, def.LengthMM, name+" along the rail"),
		Length(prefix+"_height", 40, 600, def.HeightMM, "height of the "+name),
		Length(prefix+"_corner_radius", 0, 100, def.RadiusMM, "corner radius of the "+name+", 0 for sharp"),
		Named("material", "S355", "grade of the plates"),
		Thread("bolt_size", "M16", "bolt size"),
		Named("bolt_grade", "10.9", "bolt grade"),
		Choice("bolt_fit", "clearance of the holes", "close", "normal", "loose"),
		Choice("threads", "threads in or out of the shear plane", "in", "out"),
		Count("bolt_columns", 2, 8, 2, "columns of bolts along the rail"),
		Length("bolt_pitch", 20, 800, def.PitchMM, "distance between columns"),
		Count("bolt_rows", 1, 4, 2, "rows of bolts, one over the other"),
		Length("bolt_gauge", 20, 400, def.GaugeMM, "distance between rows"),
	}, TighteningParams()...)
}

// ReadTubePlate reads what TubePlateParams declares.
func ReadTubePlate(v geometry.Values, prefix, name string, tube Tube, legMM float64) TubePlate {
	p := TubePlate{
		Name: name, ThicknessMM: v.MM(prefix + "_thickness"), LengthMM: v.MM(prefix + "_length"), HeightMM: v.MM(prefix + "_height"),
		RadiusMM: v.MM(prefix + "_corner_radius"), PitchMM: v.MM("bolt_pitch"), GaugeMM: v.MM("bolt_gauge"),
		Along: Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), Up: Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
		Tube: tube, On: "tube", LegMM: legMM, v: v, prefix: prefix,
	}
	p.BoltMM, p.HoleMM = Clearance(v.Word("bolt_size"), part.Fit(v.Word("bolt_fit")))
	return p
}

// foot is the plate by itself.
func (p *TubePlate) foot() FootPlate {
	u, v := p.Tube.stiff()
	return FootPlate{
		ThicknessMM: p.ThicknessMM, LengthMM: p.HeightMM, WidthMM: p.LengthMM, RadiusMM: p.RadiusMM, Us: p.Up, Vs: p.Along, BlockU: u, BlockV: v,
	}
}

// Check refuses a plate that does not fit the web, the tube or its bolts.
func (p *TubePlate) Check(n *Needs, webClearMM float64) {
	n.ThatHole(p.HoleMM, "bolt_size", p.v.Word("bolt_size"))
	height, length := p.prefix+"_height", p.prefix+"_length"
	n.That(p.HeightMM <= webClearMM, height, MM(p.HeightMM), "at most the web's clear height, %.4g mm", webClearMM)
	n.That(p.HeightMM >= p.Tube.HighMM+2*p.LegMM, height, MM(p.HeightMM), "at least the %s and its welds, %.4g mm", p.On, p.Tube.HighMM+2*p.LegMM)
	n.That(p.LengthMM >= p.Tube.WidthMM+2*p.LegMM, length, MM(p.LengthMM), "at least the %s and its welds, %.4g mm", p.On, p.Tube.WidthMM+2*p.LegMM)
	if n.Err() == nil {
		p.checkBolts(n)
	}
}

func (p *TubePlate) checkBolts(n *Needs) {
	foot, room := p.foot(), SocketRoom(p.BoltMM, p.LegMM)
	foot.Check(n, FootNames{Size: [2]string{p.prefix + "_height", p.prefix + "_length"}, Pitch: [2]string{"bolt_gauge", "bolt_pitch"}, Radius: p.prefix + "_corner_radius"}, p.BoltMM)
	if n.Err() != nil {
		return
	}
	for _, at := range foot.Points() {
		off := p.Tube.off(at)
		if !n.That(off >= room, "bolt_pitch", fmt.Sprintf("a bolt %s from the %s", MM(off), p.On), "at least %.4g mm, so that a socket passes the weld", room) {
			return
		}
	}
}

// Plate is the plate with its holes; pose is its middle plane's. Check has found that it can be drawn.
func (p *TubePlate) Plate(id string, pose part.Pose) part.Plate {
	out := p.foot().Plate(id, p.v.Word("material"), p.HoleMM, pose)
	out.Name = p.Name
	return out
}

// Bolts hold a plate to a web; pose is the faying plane's, as the plate's own. The group's u runs along the rail, as a wall's length does.
func (p *TubePlate) Bolts(id, plate string, web part.Support, pose part.Pose) part.BoltGroup {
	foot := p.foot()
	outer, _ := foot.Outline() // Check has drawn it
	points := foot.Points()
	across := foot.Pry()
	pitch := LeastPitch(points)
	turned := make([]shape.Point, len(points))
	for i, at := range points {
		turned[i] = shape.Point{X: 0 - at.Y, Y: at.X}
	}
	return readTightening(p.v).tighten(part.BoltGroup{
		ID: id, Pose: part.Pose{Origin: pose.Origin, U: pose.V.Scale(-1), V: pose.U}, Points: turned, Size: p.v.Word("bolt_size"), DiaMM: p.BoltMM, Grade: p.v.Word("bolt_grade"), HoleMM: p.HoleMM,
		GripMM: p.ThicknessMM + web.ThicknessMM, ThreadsIn: p.v.Word("threads") == "in", Across: [2]part.Pry{across[1], across[0]},
		Patch: Bearing(shape.Rect(shape.Point{X: -p.LengthMM / 2, Y: -p.HeightMM / 2}, shape.Point{X: p.LengthMM / 2, Y: p.HeightMM / 2}), p.RadiusMM),
		Plies: [2]part.Ply{
			{Thing: plate, ThicknessMM: p.ThicknessMM, Material: p.v.Word("material"), EdgeMM: LeastEdge(outer, points), PitchMM: pitch},
			{Thing: web.ID, ThicknessMM: web.ThicknessMM, Material: web.Material, PitchMM: pitch},
		},
	})
}

// Sweeps cut a plate where it reaches past the tube, from each edge and each corner inwards: bolts and contact out there bend it.
func (p *TubePlate) Sweeps(plate, bolts string, pose part.Pose) []part.Sweep {
	rear, front := "rear", "front"
	if pose.V.X < 0 {
		rear, front = front, rear
	}
	return p.foot().Sweeps(plate, bolts, pose, p.Name+" past the "+p.On, [4]string{"under", "over", rear, front})
}
