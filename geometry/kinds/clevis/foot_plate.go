package clevis

// Base plate foot: a flat plate under the fork, bolted down through its own plane. Its length runs along the ears, its width
// along the pin.

import (
	"fmt"
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type plateFoot struct{}

// base is the plate and its bolts: xs along the ears, ys along the pin.
type base struct {
	t, length, width, radius float64
	xs, ys                   []float64
}

func (plateFoot) top() string     { return "base" }
func (plateFoot) chain() []string { return []string{"base", "bolts", "support"} }

func readBase(d *design) base {
	v := d.v
	return base{
		t: v.MM("plate_thickness"), length: v.MM("plate_length"), width: v.MM("plate_width"), radius: v.MM("plate_corner_radius"),
		xs: fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_pitch")), ys: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
	}
}

func (p base) outline() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -p.length / 2, Y: -p.width / 2}, shape.Point{X: p.length / 2, Y: p.width / 2}, p.radius)
}

func (f plateFoot) check(d *design, n *fab.Needs) {
	p := readBase(d)
	most := min(p.length, p.width) / 2
	if !n.That(p.radius <= most, "plate_corner_radius", fab.MM(p.radius), "at most half the shorter side, %.4g mm", most) {
		return
	}
	long := d.earW + 2*d.earWeld
	n.That(p.length >= long, "plate_length", fab.MM(p.length), "at least %.4g mm, the ears with their weld ends", long)
	wide := 2 * (d.outerReach() + d.earWeld)
	n.That(p.width >= wide, "plate_width", fab.MM(p.width), "at least %.4g mm, the fork with its gussets and welds", wide)
	n.That(p.width <= d.v.MM("web_clear_height"), "plate_width", fab.MM(p.width), "at most web_clear_height, %.4g mm", d.v.MM("web_clear_height"))
	if d.checkBoltHole(n) {
		p.checkBolts(d, n)
	}
}

func (p base) checkBolts(d *design, n *fab.Needs) {
	d.checkPitch(n, len(p.xs), "bolt_pitch")
	d.checkPitch(n, len(p.ys), "bolt_gauge")
	edge := fab.BoltEdge(d.bolt)
	endX, endY := p.length/2-p.xs[len(p.xs)-1], p.width/2-p.ys[len(p.ys)-1]
	okX := n.That(endX >= edge, "bolt_pitch", fab.MM(d.v.MM("bolt_pitch"))+", which leaves "+fab.MM(endX)+" to the plate's end", "at least 1.25 d = %.4g mm to the edge", edge)
	okY := n.That(endY >= edge, "bolt_gauge", fab.MM(d.v.MM("bolt_gauge"))+", which leaves "+fab.MM(endY)+" to the plate's side", "at least 1.25 d = %.4g mm to the edge", edge)
	if !okX || !okY {
		return
	}
	// Edges are straight but for the corners, so what is short now is short of a corner arc.
	if outer, err := p.outline(); err == nil {
		points := fab.Grid(p.xs, p.ys)
		inside := outer.Contains(points[0]) && fab.LeastEdge(outer, points) >= edge-shape.TouchMM
		n.That(inside, "plate_corner_radius", fab.MM(p.radius), "a radius that leaves the corner bolts 1.25 d = %.4g mm", edge)
	}
	p.checkSockets(d, n)
}

// checkSockets keeps bolts clear of what stands on the plate.
func (p base) checkSockets(d *design, n *fab.Needs) {
	for _, at := range fab.Grid(p.xs, p.ys) {
		name, have, weld := d.nearestStanding(at)
		room := fab.SocketRoom(d.bolt, weld)
		if have < room {
			n.That(false, "bolt_gauge", fmt.Sprintf("a bolt at (%.4g, %.4g) mm is %s from the %s", at.X, at.Y, fab.MM(have), name),
				"at least %.4g mm from bolt centre to what stands on the plate: another bolt_gauge, bolt_pitch or bolts_per_row", room)
			return
		}
	}
}

// nearestStanding is the part on the plate nearest to a point, its distance and its weld's leg. The fork counts as one block:
// no tool reaches a bolt between the ears.
func (d *design) nearestStanding(at shape.Point) (name string, dist, weld float64) {
	name, dist, weld = "fork", boxDistance(at, d.earW/2, d.outer), d.earWeld
	for _, x := range d.outside.at {
		if g := boxDistance(shape.Point{X: at.X - x, Y: at.Y}, d.outside.thickness/2, d.outerReach()); g < dist {
			name, dist, weld = "gusset", g, d.gussetWeld
		}
	}
	return name, dist, weld
}

// boxDistance is the distance from a point to a rectangle about the origin; 0 inside.
func boxDistance(p shape.Point, halfX, halfY float64) float64 {
	return math.Hypot(max(0, math.Abs(p.X)-halfX), max(0, math.Abs(p.Y)-halfY))
}

func (f plateFoot) add(d *design, b *part.Bracket) {
	p := readBase(d)
	outer, _ := p.outline() // check has drawn it
	points := fab.Grid(p.xs, p.ys)
	plate := part.Plate{
		ID: "base", Name: "base plate", ThicknessMM: p.t, Material: d.v.Word("foot_material"), Outer: outer,
		Pose: part.Pose{Origin: part.Vec{Z: -p.t / 2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	}
	for i, at := range points {
		plate.Holes = append(plate.Holes, fab.BoltHole(boltID(i), at, d.boltHole, part.AsCut))
	}
	b.Plates = append(b.Plates, plate)
	g := d.bolts(part.Pose{Origin: part.Vec{Z: -p.t}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, points,
		d.plies("base", p.t, fab.LeastEdge(outer, points), points))
	g.Patch = outer.BBox()
	g.Across = p.pry(d)
	b.Bolts = append(b.Bolts, g)
	b.Supports = append(b.Supports, d.support(part.CrossMember))
	p.addSweeps(d, b)
}

// addSweeps cuts the plate where it reaches past the fork, from each edge and each corner inwards: bolts and contact out there bend it.
// Between bare ears it is cut as wide as they are.
func (p base) addSweeps(d *design, b *part.Bracket) {
	x, y, z := p.length/2, p.width/2, -p.t/2
	edge := shape.Point{X: d.earW / 2, Y: d.outer} // the fork's corner
	add := func(s part.Sweep) {
		s.Things, s.Bolts = []string{"base"}, "bolts"
		b.Sweeps = append(b.Sweeps, s)
	}
	for _, s := range []part.Sweep{
		{ID: "base, front", From: part.Vec{X: -x, Z: z}, To: part.Vec{X: -edge.X, Z: z}},
		{ID: "base, rear", From: part.Vec{X: x, Z: z}, To: part.Vec{X: edge.X, Z: z}},
		{ID: "base, outboard", From: part.Vec{Y: y, Z: z}, To: part.Vec{Y: edge.Y, Z: z}},
		{ID: "base, inboard", From: part.Vec{Y: -y, Z: z}, To: part.Vec{Y: -edge.Y, Z: z}},
	} {
		s.Name = "base plate past the fork"
		add(s)
	}
	for _, c := range []struct {
		id   string
		u, v float64
	}{{"front outboard", -1, 1}, {"rear outboard", 1, 1}, {"front inboard", -1, -1}, {"rear inboard", 1, -1}} {
		far := (x - edge.X + y - edge.Y) / 2 // across the corner at 45 degrees, to the plate's sharp corner
		add(part.Sweep{
			ID: "base, " + c.id, Name: "base plate's corner",
			From: part.Vec{X: c.u * (edge.X + far), Y: c.v * (edge.Y + far), Z: z}, To: part.Vec{X: c.u * edge.X, Y: c.v * edge.Y, Z: z},
		})
	}
	if d.between.thickness == 0 {
		add(part.Sweep{
			ID: "base, between", Name: "base plate between the ears", EntryMM: d.rootWidth(), EntryToMM: 2 * d.inner,
			From: part.Vec{Y: d.inner, Z: z}, To: part.Vec{Y: -d.inner, Z: z},
		})
	}
}

// pry is the plate bending between the fork and the outermost bolts: along the ears past the ears' ends, and along the pin
// past the ears' outer faces. A direction in which no bolt stands out has none.
func (p base) pry(d *design) (across [2]part.Pry) {
	lastX, lastY := p.xs[len(p.xs)-1], p.ys[len(p.ys)-1]
	endX, endY := p.length/2-lastX, p.width/2-lastY
	if b := lastX - d.earW/2; b > 0 {
		across[0] = part.Pry{BMM: b, AMM: endX, PMM: tributary(len(p.ys), d.v.MM("bolt_gauge"), endY)}
	}
	if b := lastY - d.outer; b > 0 {
		across[1] = part.Pry{BMM: b, AMM: endY, PMM: tributary(len(p.xs), d.v.MM("bolt_pitch"), endX)}
	}
	return across
}
