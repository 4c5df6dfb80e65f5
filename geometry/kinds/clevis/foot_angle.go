package clevis

// Angle foot: its horizontal leg (A) reaches out from the web and carries the ears, its other leg (B) hangs down and is bolted
// to the web; stiffeners stand in the corner under leg A.

import (
	"fmt"
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type angleFoot struct{}

// angle is the section and what stands under it.
type angle struct {
	out, down, t, root, length float64
	stiffT, reach, depth       float64
	nose, weld, snipe          float64
	stiff                      []float64 // x of the stiffeners
	xs, rows                   []float64 // bolts: x, and depth below the upper face
}

func (angleFoot) top() string     { return "base.a" }
func (angleFoot) chain() []string { return []string{"base.a", "base.b", "bolts", "support"} }

func readAngle(d *design) angle {
	v := d.v
	a := angle{
		out: v.MM("angle_out"), down: v.MM("angle_down"), t: v.MM("angle_thickness"), root: v.MM("angle_root_radius"), length: v.MM("angle_length"),
		stiffT: v.MM("stiffener_thickness"), reach: v.MM("stiffener_reach"), depth: v.MM("stiffener_depth"),
		nose: v.MM("stiffener_nose"), weld: v.MM("stiffener_weld"),
		stiff: fab.Spread(v.Count("stiffener_count"), v.MM("stiffener_spacing")),
		xs:    fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_pitch")),
	}
	a.snipe = fab.Snipe(a.root, v.MM("snipe_clearance"))
	for i := range v.Count("bolt_rows") {
		a.rows = append(a.rows, v.MM("bolt_first")+float64(i)*v.MM("bolt_row_pitch"))
	}
	return a
}

func (a angle) last() float64 { return a.rows[len(a.rows)-1] }
func (a angle) end() float64  { return a.length/2 - a.xs[len(a.xs)-1] } // last bolt of a row to the angle's end

func (f angleFoot) check(d *design, n *fab.Needs) {
	a := readAngle(d)
	least := a.t + a.root + 5
	n.That(a.out >= least, "angle_out", fab.MM(a.out), "at least %.4g mm with this thickness and root radius", least)
	n.That(a.down >= least, "angle_down", fab.MM(a.down), "at least %.4g mm with this thickness and root radius", least)
	a.checkFork(d, n)
	if d.checkBoltHole(n) {
		a.checkBolts(d, n)
	}
	if len(a.stiff) > 0 {
		a.checkStiffeners(d, n)
	}
}

// checkFork keeps ears and gussets on the leg, out of the root and off the web.
func (a angle) checkFork(d *design, n *fab.Needs) {
	offset := fab.MM(d.middle)
	n.That(d.middle > a.t+a.root, "clevis_offset", offset, "more than %.4g mm, beyond the root radius", a.t+a.root)
	n.That(d.middle+d.outer+d.earWeld <= a.out, "clevis_offset", offset, "at most %.4g mm, so that the outboard ear's weld stays on the leg", a.out-d.outer-d.earWeld)
	n.That(d.middle-d.outer-d.earWeld >= 0, "clevis_offset", offset, "at least %.4g mm, so that the inboard ear's weld stays off the web", d.outer+d.earWeld)
	if d.outside.thickness > 0 {
		long, room := d.v.MM("outer_gusset_length"), min(a.out-d.middle, d.middle-fab.PaintGapMM)-d.outer
		n.That(long <= room, "outer_gusset_length", fab.MM(long), "at most %.4g mm, within the leg's tip and %d mm off the web", max(0, room), fab.PaintGapMM)
	}
	n.That(d.earW+2*d.earWeld <= a.length, "angle_length", fab.MM(a.length), "at least %.4g mm, the ears with their weld ends", d.earW+2*d.earWeld)
}

func (a angle) checkBolts(d *design, n *fab.Needs) {
	v, dia := d.v, d.bolting.DiaMM
	edge := fab.BoltEdge(dia)
	first := a.t + a.root + fab.SocketRoom(dia, 0)
	n.That(a.rows[0] >= first, "bolt_first", fab.MM(a.rows[0]), "at least %.4g mm: leg, root radius and room for a washer", first)
	d.checkPitch(n, len(a.rows), "bolt_row_pitch")
	d.checkPitch(n, len(a.xs), "bolt_pitch")
	near := math.Abs(a.xs[len(a.xs)/2])
	n.That(near <= a.pulled(d), "bolt_pitch", fab.MM(v.MM("bolt_pitch"))+", which leaves no bolt nearer than "+fab.MM(near)+" to the fork's middle",
		"one within %.4g mm, as far as the fork's couple reaches", a.pulled(d))
	blame := "bolt_first"
	if len(a.rows) > 1 {
		blame = "bolt_row_pitch"
	}
	n.That(a.down-a.last() >= edge, blame, fab.MM(v.MM(blame))+", which puts the last row "+fab.MM(a.down-a.last())+" from the leg's edge",
		"at least 1.25 d = %.4g mm to the edge", edge)
	blame = "angle_length"
	if len(a.xs) > 1 {
		blame = "bolt_pitch"
	}
	n.That(a.end() >= edge, blame, fab.MM(v.MM(blame))+", which puts the last bolt "+fab.MM(a.end())+" from the angle's end",
		"at least 1.25 d = %.4g mm to the end", edge)
	tall := a.last() - a.rows[0] + 2*edge
	n.That(tall <= v.MM("web_clear_height"), "web_clear_height", fab.MM(v.MM("web_clear_height")), "at least %.4g mm for these rows", tall)
}

func (a angle) checkStiffeners(d *design, n *fab.Needs) {
	v := d.v
	least := a.snipe + a.weld
	n.That(a.reach >= least, "stiffener_reach", fab.MM(a.reach), "at least %.4g mm: snipe and a run of its own weld leg", least)
	n.That(a.depth >= least, "stiffener_depth", fab.MM(a.depth), "at least %.4g mm: snipe and a run of its own weld leg", least)
	n.That(a.t+a.reach <= a.out, "stiffener_reach", fab.MM(a.reach), "at most %.4g mm, within the leg's tip", a.out-a.t)
	n.That(a.t+a.depth <= a.down, "stiffener_depth", fab.MM(a.depth), "at most %.4g mm, within the bolted leg", a.down-a.t)
	n.That(a.nose <= min(a.reach, a.depth), "stiffener_nose", fab.MM(a.nose), "at most the shorter leg, %.4g mm", min(a.reach, a.depth))
	last := a.stiff[len(a.stiff)-1] + a.stiffT/2 + a.weld
	blame := "stiffener_thickness"
	if len(a.stiff) > 1 {
		blame = "stiffener_spacing"
		clear := a.stiffT + 2*a.weld + fab.TorchGapMM
		n.That(v.MM(blame) >= clear, blame, fab.MM(v.MM(blame)), "at least %.4g mm, so that a torch reaches between", clear)
	}
	n.That(last <= a.length/2, blame, fab.MM(v.MM(blame))+", which needs an angle "+fab.MM(2*last)+" long", "stiffeners within the angle's length, %.4g mm", a.length)
	a.checkSockets(d, n)
}

// checkSockets keeps bolts clear of the stiffeners they stand beside.
func (a angle) checkSockets(d *design, n *fab.Needs) {
	room := fab.SocketRoom(d.bolting.DiaMM, a.weld)
	if a.rows[0] >= a.t+a.depth+room {
		return // all rows are below the stiffeners
	}
	for _, x := range a.xs {
		if have := a.toStiffener(x); have < room {
			n.That(false, "stiffener_spacing", fmt.Sprintf("%s, a stiffener %s from the bolts at x = %s", fab.MM(d.v.MM("stiffener_spacing")), fab.MM(have), fab.MM(x)),
				"at least %.4g mm from bolt centre to stiffener, for washer and socket", room)
			return
		}
	}
}

// toStiffener is the distance from a bolt at x to the nearest stiffener's face.
func (a angle) toStiffener(x float64) float64 {
	least := math.Inf(1)
	for _, s := range a.stiff {
		least = min(least, max(0, math.Abs(x-s)-a.stiffT/2))
	}
	return least
}

func (f angleFoot) add(d *design, b *part.Bracket) {
	a := readAngle(d)
	member := part.Member{
		ID: "base", Name: "angle", Material: d.v.Word("foot_material"), LengthMM: a.length,
		Profile: part.Profile{Kind: part.Angle, AMM: a.out, BMM: a.down, TMM: a.t, RootMM: a.root},
		Pose:    part.Pose{Origin: part.Vec{X: a.length / 2}, U: part.Vec{X: -1}, V: part.Vec{Y: 1}},
	}
	for i, p := range fab.Grid(a.xs, a.rows) {
		at := shape.Point{X: a.length/2 - p.X, Y: p.Y}
		member.Holes = append(member.Holes, part.FaceHole{Face: part.LegB, Hole: fab.BoltHole(boltID(i), at, d.bolting.HoleMM, part.Drilled)})
	}
	b.Members = append(b.Members, member)
	a.addStiffeners(d, b)
	a.addBolts(d, b)
	a.addSweeps(d, b)
	b.Supports = append(b.Supports, d.support(part.RailWeb))
}

// addBolts lays the faying plane on the web: u forward, v up, w outboard.
func (a angle) addBolts(d *design, b *part.Bracket) {
	points := fab.Grid(a.xs, a.rows)
	for i, p := range points {
		points[i] = shape.Point{X: 0 - p.X, Y: -p.Y}
	}
	pose := part.Pose{U: part.Vec{X: -1}, V: part.Vec{Z: 1}}
	g := d.bolts(pose, points, d.plies("base.b", a.t, min(a.end(), a.down-a.last())))
	half := a.pulled(d)
	g.Patch = shape.Box{Min: shape.Point{X: -half, Y: -a.down}, Max: shape.Point{X: half}}
	g.Across = [2]part.Pry{a.pryAlong(), a.pryDown(d)}
	b.Bolts = append(b.Bolts, g)
}

// pulled is half the length of angle that a couple of the fork reaches: from the ears' root, or the outermost stiffener that stands there,
// at 30 degrees along leg A and down to the first row. Beyond it the angle twists away, and bolts there hold no couple.
func (a angle) pulled(d *design) float64 {
	half := d.rootWidth() / 2
	for _, x := range a.stiff {
		if x-a.stiffT/2 <= d.rootWidth()/2 {
			half = max(half, x+a.stiffT/2)
		}
	}
	return min(half+math.Tan(math.Pi/6)*(d.middle+a.rows[0]), a.length/2)
}

// pryDown is the bolted leg bending between leg A and the first row. An angle's leg is reckoned from its middle plane (AISC Manual Part 9,
// prying action of angles, from memory).
func (a angle) pryDown(d *design) part.Pry {
	return part.Pry{BMM: a.rows[0] - a.t/2, AMM: a.down - a.rows[0], PMM: fab.Tributary(len(a.xs), d.v.MM("bolt_pitch"), a.end())}
}

// pryAlong is the bolted leg bending between a stiffener and the bolt of the first row that is farthest from one.
func (a angle) pryAlong() part.Pry {
	if len(a.stiff) == 0 {
		return part.Pry{}
	}
	p := part.Pry{AMM: a.end(), PMM: a.down - a.t}
	for _, x := range a.xs {
		p.BMM = max(p.BMM, a.toStiffener(x))
	}
	if len(a.rows) > 1 {
		p.PMM = a.rows[0] - a.t + (a.rows[1]-a.rows[0])/2
	}
	return p
}

func (a angle) corner() fab.Corner {
	return fab.Corner{AlongU: a.reach, AlongV: a.depth, Snipe: a.snipe, NoseU: a.nose, NoseV: a.nose}
}

// addStiffeners stands plates in the inner corner: u outboard, v down the bolted leg.
func (a angle) addStiffeners(d *design, b *part.Bracket) {
	c := a.corner()
	var ids, legA, legB []string
	for i, x := range a.stiff {
		id := fmt.Sprintf("stiffener-%d", i+1)
		pose := part.Pose{Origin: part.Vec{X: x, Y: a.t, Z: -a.t}, U: part.Vec{Y: 1}, V: part.Vec{Z: -1}}
		b.Plates = append(b.Plates, part.Plate{
			ID: id, Name: "stiffener", ThicknessMM: a.stiffT, Material: d.v.Word("gusset_material"), Outer: c.Outline(), Pose: pose,
		})
		b.Welds = append(b.Welds,
			d.weld("w-"+id+"-a", id, "base.a", a.weld, fab.AtFaces(pose.At(c.Snipe, 0, 0), pose.At(c.AlongU, 0, 0), pose.W(), a.stiffT)...),
			d.weld("w-"+id+"-b", id, "base.b", a.weld, fab.AtFaces(pose.At(0, c.Snipe, 0), pose.At(0, c.AlongV, 0), pose.W(), a.stiffT)...),
		)
		ids, legA, legB = append(ids, id), append(legA, "w-"+id+"-a"), append(legB, "w-"+id+"-b")
	}
	if ids == nil {
		return
	}
	b.Composites = append(b.Composites,
		part.Composite{
			ID: "c-leg", Things: append([]string{"base.a"}, ids...), Welds: legA, Rule: part.LagCantilever, SpanMM: d.middle,
			From: part.Vec{Z: -a.t / 2}, To: part.Vec{Y: a.t + a.reach, Z: -a.t / 2},
		},
		part.Composite{
			ID: "c-down-leg", Things: append([]string{"base.b"}, ids...), Welds: legB, Rule: part.LagCantilever, SpanMM: a.depth,
			From: part.Vec{Y: a.t / 2}, To: part.Vec{Y: a.t / 2, Z: -a.t - a.depth},
		},
	)
}

// addSweeps cuts leg A from the fork to the root, and leg B from the inner corner to the last bolts.
func (a angle) addSweeps(d *design, b *part.Bracket) {
	ribbed := len(a.stiff) > 0
	inboard := d.inner + d.earT/2                                          // from the fork's middle to the second ear
	spread := d.rootWidth() + 2*math.Tan(math.Pi/6)*(d.middle-inboard-a.t) // what leg A's working width has grown to at the corner
	b.Sweeps = append(b.Sweeps,
		part.Sweep{
			ID: "leg", Things: []string{"base.a"}, Name: "angle leg", Ribs: ribbed, EntryMM: d.rootWidth(), EntryToMM: inboard,
			From: part.Vec{Y: d.middle, Z: -a.t / 2}, To: part.Vec{Y: a.t + a.root, Z: -a.t / 2},
		},
		part.Sweep{
			ID: "down leg", Things: []string{"base.b"}, Name: "bolted leg", Ribs: ribbed, EntryMM: min(spread, a.length), Bolts: "bolts",
			From: part.Vec{Y: a.t / 2, Z: -a.t}, To: part.Vec{Y: a.t / 2, Z: -a.last()},
		},
	)
}
