package backingplate

// Plate, bolts, supports, load path, sections.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// level is a plane at a height over the foot.
func level(z float64) part.Pose {
	return part.Pose{Origin: part.Vec{Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
}

func (d *design) addPlate(b *part.Bracket) {
	outer, _ := d.outline() // check has drawn it
	v, points := d.v, d.points()
	along, across, bears := v.MM("foot_length"), v.MM("foot_width"), fab.Bearing(outer, d.radius)
	b.Plates = []part.Plate{{
		ID: "plate", Name: "backing plate", ThicknessMM: d.t, Material: v.Word("material"), Outer: outer, Holes: fab.BoltHoles(points, d.bolts.HoleMM),
		Pose: level(d.wall + d.t/2),
	}}
	// The wall bears on the bolts' shanks itself; all of the shear is held against the plate and against the wall. It turns about the foot's edge, or the
	// plate's where that is nearer.
	b.Bolts = []part.BoltGroup{d.bolts.Group("bolts", level(d.wall), points, d.t+d.wall+v.MM("foot_thickness"), middled(min(bears.Width(), along), min(bears.Height(), across)), [2]part.Ply{
		{Thing: "plate", ThicknessMM: d.t, Material: v.Word("material"), EdgeMM: fab.LeastEdge(outer, points)},
		{Thing: "wall", ThicknessMM: d.wall, Material: v.Word("wall_material")},
	})}
	b.Contacts = []part.Contact{{ID: "face", Things: [2]string{"wall", "foot"}, Pose: level(0), Patch: middled(along, across)}}
	b.Supports = []part.Support{
		{ID: "foot", Kind: part.BodyFrame, ThicknessMM: v.MM("foot_thickness"), Material: v.Word("foot_material")},
		// The wall brings the load; it is a support only in that it is not part of this bracket.
		{ID: "wall", Kind: part.BodyFrame, ThicknessMM: d.wall, Material: v.Word("wall_material")},
	}
}

// addPaths: pushed down, the wall bears on the foot and the plate has nothing to do; everything else goes through plate and bolts. The wall is taken to
// lift the plate at its four corners, which bends it most along and across; a couple lifts both edges, as much as the bolts pull.
func (d *design) addPaths(b *part.Bracket) {
	at := part.Vec{Z: d.wall}
	b.LoadPoints = []part.LoadPoint{{ID: "wall", At: at}}
	b.Shares = []part.Share{
		{ID: "corners", Rule: part.Equal, Legs: 4, Source: "the wall lifts the plate at its corners, the unfavourable place"},
		{ID: "couple", Rule: part.Equal, Legs: coupleLegs, Source: "the wall lifts the plate at its corners by the bolts' pulls at the least lever and presses on the foot, by statics"},
	}
	corners := fab.Grid([]float64{-d.length / 2, d.length / 2}, []float64{-d.width / 2, d.width / 2})
	for _, c := range part.Components() {
		if c == part.FzMinus {
			fab.Through(b, "wall", at, []part.Component{c}, "face", "foot")
			continue
		}
		if _, m := c.Unit(); m.X != 0 || m.Y != 0 {
			b.Paths = append(b.Paths, d.couple(c, corners, b.BoltGroup("bolts").Patch))
			continue
		}
		path := part.Path{LoadPoint: "wall", Component: c}
		for i, p := range corners {
			path.Branches = append(path.Branches, part.Branch{Share: "corners", Leg: i, At: part.Vec{X: p.X, Y: p.Y, Z: d.wall}, Through: []string{"plate", "bolts", "foot"}})
		}
		b.Paths = append(b.Paths, path)
	}
}

// coupleLegs are the four corners and the press of the wall on the foot.
const coupleLegs = 5

// couple lifts the plate at both edges that a couple turns, by forces alone. The pulls of the bolts, S in all and s off the middle, are balanced by the press on
// the foot, p off the middle: S = M/(s + p). By elastic statics with pressure under one half at most, p is at least 2/3 of the half that bears, and s at least
// what it is with the pulls growing from that half's end. Edges H off the middle hold S (1 + s/H)/2 and S (1 - s/H)/2, most at the least s and p.
func (d *design) couple(c part.Component, corners []shape.Point, bears shape.Box) part.Path {
	_, m := c.Unit()
	rows, half, edge := d.xs, bears.Width()/2, d.length/2
	up := part.Vec{X: -m.Y} // towards the edge that is lifted most
	if m.X != 0 {
		rows, half, edge, up = d.ys, bears.Height()/2, d.width/2, part.Vec{Y: m.X}
	}
	sum, first := 0.0, 0.0
	for _, x := range rows {
		pull := max(x+half, 0)
		sum, first = sum+pull, first+pull*x
	}
	s, p := first/sum, 2.0/3*half
	pulls := coupleLegs / (s + p) // of the whole couple, in a leg's part of it
	path := part.Path{LoadPoint: "wall", Component: c}
	add := func(at part.Vec, lift float64) {
		path.Branches = append(path.Branches, part.Branch{
			Share: "couple", Leg: len(path.Branches), At: at.Add(part.Vec{Z: d.wall}), Through: []string{"plate", "bolts", "foot"},
			Thrust: part.Vec{Z: lift}, Couple: m.Scale(-1),
		})
	}
	for _, q := range corners {
		at := part.Vec{X: q.X, Y: q.Y}
		add(at, pulls*(1+math.Copysign(s/edge, at.Dot(up)))/4)
	}
	add(up.Scale(-p), -pulls)
	return path
}

// addSweeps cuts the plate from each edge to its middle: past the bolts and between them.
func (d *design) addSweeps(b *part.Bracket) {
	pose := b.Plates[0].Pose
	for _, s := range []struct {
		id   string
		from shape.Point
	}{
		{"plate, +x", shape.Point{X: d.length / 2}}, {"plate, -x", shape.Point{X: -d.length / 2}},
		{"plate, +y", shape.Point{Y: d.width / 2}}, {"plate, -y", shape.Point{Y: -d.width / 2}},
	} {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: s.id, Things: []string{"plate"}, Bolts: "bolts", Name: "from its edge inwards", From: pose.At(s.from.X, s.from.Y, 0), To: pose.At(0, 0, 0),
		})
	}
}
