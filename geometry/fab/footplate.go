package fab

// Plates bolted down under something that stands on their middle.

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// FootPlate is a plate with bolts in lines, its length along u and its width along v. What stands on it is taken as a block about the middle.
type FootPlate struct {
	ThicknessMM, LengthMM, WidthMM, RadiusMM float64
	Us, Vs                                   []float64 // bolts, middled, in rising order
	BlockU, BlockV                           float64   // half the block
}

// FootNames are the parameters that refusals name: sizes and bolt spacings along u and v, and the corner radius.
type FootNames struct {
	Size, Pitch [2]string
	Radius      string
}

// Block is a part that stands on a plate, seen from above.
type Block struct {
	Name               string
	U, V, HalfU, HalfV float64
	WeldMM             float64
}

// Outline is the plate's edge; the error says that its corners have no room.
func (f FootPlate) Outline() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -f.LengthMM / 2, Y: -f.WidthMM / 2}, shape.Point{X: f.LengthMM / 2, Y: f.WidthMM / 2}, f.RadiusMM)
}

// Points are the bolts' centres.
func (f FootPlate) Points() []shape.Point { return Grid(f.Us, f.Vs) }

// ends are from the outermost bolts to the edges.
func (f FootPlate) ends() (u, v float64) {
	return f.LengthMM/2 - f.Us[len(f.Us)-1], f.WidthMM/2 - f.Vs[len(f.Vs)-1]
}

// Check holds corners, pitches and edges of the bolts.
func (f FootPlate) Check(n *Needs, names FootNames, diaMM float64) {
	most := min(f.LengthMM, f.WidthMM) / 2
	if !n.That(f.RadiusMM <= most, names.Radius, MM(f.RadiusMM), "at most half the shorter side, %.4g mm", most) {
		return
	}
	edge, fits := BoltEdge(diaMM), true
	endU, endV := f.ends()
	for k, line := range [2][]float64{f.Us, f.Vs} {
		param, value, end := names.Size[k], [2]float64{f.LengthMM, f.WidthMM}[k], [2]float64{endU, endV}[k]
		if len(line) > 1 {
			param, value = names.Pitch[k], spacing(line)
			n.ThatPitch(len(line), value, diaMM, param)
		}
		fits = n.That(end >= edge, param, MM(value)+", which leaves "+MM(end)+" from a bolt to the plate's edge", "at least 1.25 d = %.4g mm to the edge", edge) && fits
	}
	if !fits {
		return
	}
	// Edges are straight but for the corners, so what is short now is short of a corner arc.
	if outer, err := f.Outline(); err == nil {
		inside := LeastEdge(outer, f.Points()) >= edge-shape.TouchMM
		if n.That(inside, names.Radius, MM(f.RadiusMM), "a radius that leaves the corner bolts 1.25 d = %.4g mm", edge) {
			n.ThatPresses(outer, f.Points(), f.RadiusMM, names.Radius)
		}
	}
}

// CheckSockets keeps bolts clear of what stands on the plate.
func (f FootPlate) CheckSockets(n *Needs, param string, diaMM float64, standing ...Block) {
	for _, at := range f.Points() {
		for _, s := range standing {
			have := math.Hypot(max(0, math.Abs(at.X-s.U)-s.HalfU), max(0, math.Abs(at.Y-s.V)-s.HalfV))
			room := SocketRoom(diaMM, s.WeldMM)
			if !n.That(have >= room, param, fmt.Sprintf("a bolt at (%.4g, %.4g) mm is %s from the %s", at.X, at.Y, MM(have), s.Name),
				"at least %.4g mm from bolt centre to what stands on the plate: other bolt spacings, or fewer bolts", room) {
				return
			}
		}
	}
}

// Pry is the plate bending between the block and the outermost bolts, along u and along v. A direction in which no bolt stands out has none.
func (f FootPlate) Pry() (across [2]part.Pry) {
	endU, endV := f.ends()
	if b := f.Us[len(f.Us)-1] - f.BlockU; b > 0 {
		across[0] = part.Pry{BMM: b, AMM: endU, PMM: TributaryMM(len(f.Vs), spacing(f.Vs), endV)}
	}
	if b := f.Vs[len(f.Vs)-1] - f.BlockV; b > 0 {
		across[1] = part.Pry{BMM: b, AMM: endV, PMM: TributaryMM(len(f.Us), spacing(f.Us), endU)}
	}
	return across
}

// spacing is the distance between lines of bolts; 0 for a single one.
func spacing(line []float64) float64 {
	if len(line) == 1 {
		return 0
	}
	return line[1] - line[0]
}

// Plate is the plate with its holes, middled on a pose.
func (f FootPlate) Plate(id, material string, holeMM float64, pose part.Pose) part.Plate {
	outer, _ := f.Outline() // Check has drawn it
	return part.Plate{ID: id, Name: "base plate", ThicknessMM: f.ThicknessMM, Material: material, Outer: outer, Holes: BoltHoles(f.Points(), holeMM), Pose: pose}
}

// Bearing is what of the plate presses all over.
func (f FootPlate) Bearing() shape.Box {
	return Bearing(shape.Rect(shape.Point{X: -f.LengthMM / 2, Y: -f.WidthMM / 2}, shape.Point{X: f.LengthMM / 2, Y: f.WidthMM / 2}), f.RadiusMM)
}

// Sweeps cut the plate where it reaches past the block, from each edge and each corner inwards: bolts and contact out there bend it. Words name the sides:
// -u, +u, +v, -v; the pose is that of the plate's middle.
func (f FootPlate) Sweeps(plate, bolts string, pose part.Pose, past string, words [4]string) []part.Sweep {
	u, v := f.LengthMM/2, f.WidthMM/2
	var out []part.Sweep
	add := func(side string, from, to shape.Point) {
		out = append(out, part.Sweep{
			ID: plate + ", " + side, Things: []string{plate}, Bolts: bolts, Name: past, From: pose.At(from.X, from.Y, 0), To: pose.At(to.X, to.Y, 0),
		})
	}
	add(words[0], shape.Point{X: -u}, shape.Point{X: -f.BlockU})
	add(words[1], shape.Point{X: u}, shape.Point{X: f.BlockU})
	add(words[2], shape.Point{Y: v}, shape.Point{Y: f.BlockV})
	add(words[3], shape.Point{Y: -v}, shape.Point{Y: -f.BlockV})
	far := (u - f.BlockU + v - f.BlockV) / 2 // across the corner at 45 degrees, to the plate's sharp corner
	for _, c := range []struct {
		side string
		u, v float64
	}{{words[0] + " " + words[2], -1, 1}, {words[1] + " " + words[2], 1, 1}, {words[0] + " " + words[3], -1, -1}, {words[1] + " " + words[3], 1, -1}} {
		add(c.side, shape.Point{X: c.u * (f.BlockU + far), Y: c.v * (f.BlockV + far)}, shape.Point{X: c.u * f.BlockU, Y: c.v * f.BlockV})
	}
	return out
}
