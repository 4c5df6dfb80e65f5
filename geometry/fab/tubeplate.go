package fab

// The plate at a tube's end, bolted down beside the tube.

import (
	"fmt"
	"math"

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
	LegMM                                     float64 // of the fillet round the tube
	v                                         geometry.Values
	prefix                                    string
}

// TubePlateParams declares the plate and its bolts. Names of the plate's own sizes begin with a prefix; thickness, length, height, radius, pitch and gauge
// are by default those of def.
func TubePlateParams(prefix, name string, def TubePlate) []geometry.Param {
	return []geometry.Param{
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
	}
}

// ReadTubePlate reads what TubePlateParams declares.
func ReadTubePlate(v geometry.Values, prefix, name string, tube Tube, legMM float64) TubePlate {
	p := TubePlate{
		Name: name, ThicknessMM: v.MM(prefix + "_thickness"), LengthMM: v.MM(prefix + "_length"), HeightMM: v.MM(prefix + "_height"),
		RadiusMM: v.MM(prefix + "_corner_radius"), PitchMM: v.MM("bolt_pitch"), GaugeMM: v.MM("bolt_gauge"),
		Along: Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), Up: Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
		Tube: tube, LegMM: legMM, v: v, prefix: prefix,
	}
	p.BoltMM, p.HoleMM = Clearance(v.Word("bolt_size"), part.Fit(v.Word("bolt_fit")))
	return p
}

// outline is drawn about the tube's middle.
func (p *TubePlate) outline() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -p.HeightMM / 2, Y: -p.LengthMM / 2}, shape.Point{X: p.HeightMM / 2, Y: p.LengthMM / 2}, p.RadiusMM)
}

func (p *TubePlate) points() []shape.Point { return Grid(p.Up, p.Along) }

// Check refuses a plate that does not fit the web, the tube or its bolts.
func (p *TubePlate) Check(n *Needs, webClearMM float64) {
	n.ThatHole(p.HoleMM, "bolt_size", p.v.Word("bolt_size"))
	height, length := p.prefix+"_height", p.prefix+"_length"
	n.That(p.HeightMM <= webClearMM, height, MM(p.HeightMM), "at most the web's clear height, %.4g mm", webClearMM)
	n.That(p.HeightMM >= p.Tube.HighMM+2*p.LegMM, height, MM(p.HeightMM), "at least the tube and its welds, %.4g mm", p.Tube.HighMM+2*p.LegMM)
	n.That(p.LengthMM >= p.Tube.WidthMM+2*p.LegMM, length, MM(p.LengthMM), "at least the tube and its welds, %.4g mm", p.Tube.WidthMM+2*p.LegMM)
	n.That(p.RadiusMM <= min(p.LengthMM, p.HeightMM)/2, p.prefix+"_corner_radius", MM(p.RadiusMM), "at most half the smaller side, %.4g mm", min(p.LengthMM, p.HeightMM)/2)
	if n.Err() == nil {
		p.checkBolts(n)
	}
}

func (p *TubePlate) checkBolts(n *Needs) {
	edge, least := BoltEdge(p.BoltMM), BoltPitch(p.BoltMM)
	n.That(p.PitchMM >= least, "bolt_pitch", MM(p.PitchMM), "at least 2 2/3 d = %.4g mm", least)
	n.That(len(p.Up) == 1 || p.GaugeMM >= least, "bolt_gauge", MM(p.GaugeMM), "at least 2 2/3 d = %.4g mm", least)
	outer, err := p.outline()
	if !n.That(err == nil, p.prefix+"_corner_radius", MM(p.RadiusMM), "a radius that the corners have room for") {
		return
	}
	room := SocketRoom(p.BoltMM, p.LegMM)
	for _, at := range p.points() {
		have := 0.0
		if outer.Contains(at) {
			have = outer.DistTo(at)
		}
		param := "bolt_pitch"
		if p.HeightMM/2-math.Abs(at.X) < p.LengthMM/2-math.Abs(at.Y) {
			param = "bolt_gauge"
		}
		if !n.That(have >= edge-shape.TouchMM, param, fmt.Sprintf("%s, which leaves %s from a bolt to the edge", MM(p.v.MM(param)), MM(have)), "1.25 d = %.4g mm to the edge", edge) {
			return
		}
		off := p.Tube.off(at)
		if !n.That(off >= room, "bolt_pitch", fmt.Sprintf("a bolt %s from the tube", MM(off)), "at least %.4g mm, so that a socket passes the weld", room) {
			return
		}
	}
}

// Plate is the plate with its holes; pose is its middle plane's. Check has found that it can be drawn.
func (p *TubePlate) Plate(id string, pose part.Pose) part.Plate {
	outer, _ := p.outline()
	return part.Plate{ID: id, Name: p.Name, ThicknessMM: p.ThicknessMM, Material: p.v.Word("material"), Outer: outer, Holes: BoltHoles(p.points(), p.HoleMM), Pose: pose}
}

// Bolts hold a plate to a web; pose is the faying plane's, as the plate's own. The group's u runs along the rail, as a wall's length does.
func (p *TubePlate) Bolts(id, plate string, web part.Support, pose part.Pose) part.BoltGroup {
	outer, _ := p.outline()
	points := p.points()
	pitch := LeastPitch(points)
	turned := make([]shape.Point, len(points))
	for i, at := range points {
		turned[i] = shape.Point{X: 0 - at.Y, Y: at.X}
	}
	return part.BoltGroup{
		ID: id, Pose: part.Pose{Origin: pose.Origin, U: pose.V.Scale(-1), V: pose.U}, Points: turned, Size: p.v.Word("bolt_size"), DiaMM: p.BoltMM, Grade: p.v.Word("bolt_grade"), HoleMM: p.HoleMM,
		GripMM: p.ThicknessMM + web.ThicknessMM, ThreadsIn: p.v.Word("threads") == "in", Across: p.pry(),
		Patch: Bearing(shape.Rect(shape.Point{X: -p.LengthMM / 2, Y: -p.HeightMM / 2}, shape.Point{X: p.LengthMM / 2, Y: p.HeightMM / 2}), p.RadiusMM),
		Plies: [2]part.Ply{
			{Thing: plate, ThicknessMM: p.ThicknessMM, Material: p.v.Word("material"), EdgeMM: LeastEdge(outer, points), PitchMM: pitch},
			{Thing: web.ID, ThicknessMM: web.ThicknessMM, Material: web.Material, PitchMM: pitch},
		},
	}
}

// pry is the plate bending between the tube and the outermost bolts, along the rail and up; none where no bolt stands out.
func (p *TubePlate) pry() (across [2]part.Pry) {
	u, v := p.Up[len(p.Up)-1], p.Along[len(p.Along)-1]
	endU, endV := p.HeightMM/2-u, p.LengthMM/2-v
	stiffU, stiffV := p.Tube.stiff()
	if b := u - stiffU; b > 0 {
		across[1] = part.Pry{BMM: b, AMM: endU, PMM: tributary(len(p.Along), p.PitchMM, endV)}
	}
	if b := v - stiffV; b > 0 {
		across[0] = part.Pry{BMM: b, AMM: endV, PMM: tributary(len(p.Up), p.GaugeMM, endU)}
	}
	return across
}

// tributary is the least length of plate that serves one bolt of a line: half a pitch and the rest to the end, or a pitch.
func tributary(count int, pitch, end float64) float64 {
	if count == 1 {
		return 2 * end
	}
	return min(pitch, pitch/2+end)
}

// Sweeps cut a plate where it reaches past the tube, from each edge and each corner inwards: bolts and contact out there bend it.
func (p *TubePlate) Sweeps(plate, bolts string, pose part.Pose) []part.Sweep {
	u, v := p.Tube.stiff()
	edge := shape.Point{X: u, Y: v}
	rear, front := "rear", "front"
	if pose.V.X < 0 {
		rear, front = front, rear
	}
	far := (p.HeightMM/2 - edge.X + p.LengthMM/2 - edge.Y) / 2 // across a corner at 45 degrees
	var out []part.Sweep
	for _, s := range []struct {
		id       string
		from, to shape.Point
	}{
		{"over", shape.Point{X: p.HeightMM / 2}, shape.Point{X: edge.X}}, {"under", shape.Point{X: -p.HeightMM / 2}, shape.Point{X: -edge.X}},
		{rear, shape.Point{Y: p.LengthMM / 2}, shape.Point{Y: edge.Y}}, {front, shape.Point{Y: -p.LengthMM / 2}, shape.Point{Y: -edge.Y}},
		{rear + " over", shape.Point{X: edge.X + far, Y: edge.Y + far}, edge}, {front + " over", shape.Point{X: edge.X + far, Y: -edge.Y - far}, shape.Point{X: edge.X, Y: -edge.Y}},
		{rear + " under", shape.Point{X: -edge.X - far, Y: edge.Y + far}, shape.Point{X: -edge.X, Y: edge.Y}},
		{front + " under", shape.Point{X: -edge.X - far, Y: -edge.Y - far}, shape.Point{X: -edge.X, Y: -edge.Y}},
	} {
		out = append(out, part.Sweep{
			ID: plate + ", " + s.id, Things: []string{plate}, Bolts: bolts, Name: p.Name + " past the tube", From: pose.At(s.from.X, s.from.Y, 0), To: pose.At(s.to.X, s.to.Y, 0),
		})
	}
	return out
}
