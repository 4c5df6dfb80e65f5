package fab

// An angle beside a rail, rolled or bent of plate: one leg bolted to the web, the other carrying a load, with stiffeners in the corner between them.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// WebAngle is the angle "base". Its leg A has its upper face at z = 0 and reaches out from the web, or back over the rail; its leg B hangs down and lies
// on the web's face, y = 0, with its back or, under a leg A that reaches back, with its inner face. Its length runs along x, middled on 0.
type WebAngle struct {
	Out, Down, T, Root, Length float64 // the root radius of a rolled one is the inside radius of a bent one
	Bent                       bool
	K                          float64   // of a bent one, see Fold
	Over                       bool      // leg A reaches back over the rail
	Xs, Rows                   []float64 // bolts: x, and depth below the upper face
	From, To                   float64   // depths between which leg B, or a lap under it, touches the web
	HalfMM                     float64   // half the length over which it does, where a lap is shorter than Pulled; 0: no lap
	Bolts                      Bolting
	Material                   string
	Stiff                      Stiffeners
	LegA                       []part.Hole // at x and the distance from the back of leg B
	v                          geometry.Values
}

// Stiffeners are like plates in the angle's corner.
type Stiffeners struct {
	Xs                  []float64 // of their middle planes
	T, Reach, Depth     float64   // thickness, along leg A and down leg B from the inner corner
	Nose, Weld, Snipe   float64
	Material, Electrode string
}

// OnLeg is what stands on leg A and brings the load.
type OnLeg struct {
	Word string  // for messages
	Mid  float64 // web face to its middle
	Wide float64 // length of the leg over which its load enters
	Far  float64 // from its middle to where the last of the load enters, towards the web
}

// ReadWebAngle reads the parameters angle_*, stiffener_*, snipe_clearance, bolts_per_row, bolt_pitch, bolt_rows, bolt_first and bolt_row_pitch.
func ReadWebAngle(v geometry.Values, bolts Bolting, material string) WebAngle {
	a := WebAngle{
		Out: v.MM("angle_out"), Down: v.MM("angle_down"), T: v.MM("angle_thickness"), Root: v.MM("angle_root_radius"), Length: v.MM("angle_length"),
		Xs: Spread(v.Count("bolts_per_row"), v.MM("bolt_pitch")), Bolts: bolts, Material: material, To: v.MM("angle_down"), v: v,
	}
	for i := range v.Count("bolt_rows") {
		a.Rows = append(a.Rows, v.MM("bolt_first")+float64(i)*v.MM("bolt_row_pitch"))
	}
	a.Stiff = Stiffeners{
		Xs: Spread(v.Count("stiffener_count"), v.MM("stiffener_spacing")),
		T:  v.MM("stiffener_thickness"), Reach: v.MM("stiffener_reach"), Depth: v.MM("stiffener_depth"),
		Nose: v.MM("stiffener_nose"), Weld: v.MM("stiffener_weld"), Snipe: Snipe(a.Root, v.MM("snipe_clearance")), Electrode: v.Word("electrode"),
	}
	return a
}

// Carries and Bolted are the names of the legs: of a bent plate the plate itself and what its fold turns down.
func (a *WebAngle) Carries() string {
	if a.Bent {
		return "base"
	}
	return "base.a"
}

func (a *WebAngle) Bolted() string {
	if a.Bent {
		return "base.1"
	}
	return "base.b"
}

// Last is the depth of the lowest row.
func (a *WebAngle) Last() float64 { return a.Rows[len(a.Rows)-1] }

// End is from the last bolt of a row to the angle's end.
func (a *WebAngle) End() float64 { return a.Length/2 - a.Xs[len(a.Xs)-1] }

// out is how far what stands on leg A is from the back of leg B.
func (a *WebAngle) out(on OnLeg) float64 {
	if a.Over {
		return a.T + on.Mid
	}
	return on.Mid
}

// at is a point of the angle: along the rail, out from the back of leg B, down from the upper face of leg A.
func (a *WebAngle) at(x, out, down float64) part.Vec {
	if a.Over {
		return part.Vec{X: x, Y: a.T - out, Z: 0 - down}
	}
	return part.Vec{X: x, Y: out, Z: 0 - down}
}

// corner is from the back of a leg to where the other begins to be flat.
func (a *WebAngle) corner() float64 { return a.T + a.Root }

// fold is the corner of a bent one.
func (a *WebAngle) fold() Fold { return Fold{ThicknessMM: a.T, RadiusMM: a.Root, K: a.K} }

// FoldNote tells how a bent one is folded.
func (a *WebAngle) FoldNote() string { return a.fold().Note(1, "bolted leg") }

// HoleRoom is how far a hole in one leg is from the back of the other, so that its bolt's washer and socket pass the corner.
func (a *WebAngle) HoleRoom(o Bolting) float64 {
	room := a.corner() + SocketRoom(o.DiaMM, 0)
	if a.Bent {
		room = max(room, a.corner()+a.fold().HoleRoom(o.HoleMM))
	}
	return room
}

// CheckLegs keeps both legs longer than the corner between them.
func (a *WebAngle) CheckLegs(n *Needs) {
	if a.Bent {
		a.fold().CheckRadius(n)
		a.fold().CheckFlange(n, "angle_out", a.Out)
		a.fold().CheckFlange(n, "angle_down", a.Down)
	}
	least := a.corner() + 5
	n.That(a.Out >= least, "angle_out", MM(a.Out), "at least %.4g mm with this thickness and root radius", least)
	n.That(a.Down >= least, "angle_down", MM(a.Down), "at least %.4g mm with this thickness and root radius", least)
}

// CheckBolts keeps the bolts on leg B, within the web, and one of them near what is on leg A.
func (a *WebAngle) CheckBolts(n *Needs, on OnLeg) {
	v, dia := a.v, a.Bolts.DiaMM
	edge := BoltEdge(dia)
	first, room := a.HoleRoom(a.Bolts), "leg, root radius and room for a washer"
	if a.Over {
		first, room = a.From+edge, "down to where the web is flat, and 1.25 d"
	}
	n.That(a.Rows[0] >= first, "bolt_first", MM(a.Rows[0]), "at least %.4g mm: "+room, first)
	n.ThatPitch(len(a.Rows), v.MM("bolt_row_pitch"), dia, "bolt_row_pitch")
	n.ThatPitch(len(a.Xs), v.MM("bolt_pitch"), dia, "bolt_pitch")
	near := math.Abs(a.Xs[len(a.Xs)/2])
	n.That(near <= a.Pulled(on), "bolt_pitch", MM(v.MM("bolt_pitch"))+", which leaves no bolt nearer than "+MM(near)+" to the "+on.Word+"'s middle",
		"one within %.4g mm, as far as the "+on.Word+"'s couple reaches", a.Pulled(on))
	blame := "bolt_first"
	if len(a.Rows) > 1 {
		blame = "bolt_row_pitch"
	}
	n.That(a.Down-a.Last() >= edge, blame, MM(v.MM(blame))+", which puts the last row "+MM(a.Down-a.Last())+" from the leg's edge",
		"at least 1.25 d = %.4g mm to the edge", edge)
	blame = "angle_length"
	if len(a.Xs) > 1 {
		blame = "bolt_pitch"
	}
	n.That(a.End() >= edge, blame, MM(v.MM(blame))+", which puts the last bolt "+MM(a.End())+" from the angle's end",
		"at least 1.25 d = %.4g mm to the end", edge)
	tall := a.Last() - a.Rows[0] + 2*edge
	n.That(tall <= v.MM("web_clear_height"), "web_clear_height", MM(v.MM("web_clear_height")), "at least %.4g mm for these rows", tall)
}

// CheckStiffeners keeps them in the corner, apart from each other and clear of the bolts' sockets. It holds for no stiffeners too.
func (a *WebAngle) CheckStiffeners(n *Needs) {
	v, s := a.v, &a.Stiff
	if len(s.Xs) == 0 {
		return
	}
	least := s.Snipe + s.Weld
	n.That(s.Reach >= least, "stiffener_reach", MM(s.Reach), "at least %.4g mm: snipe and a run of its own weld leg", least)
	n.That(s.Depth >= least, "stiffener_depth", MM(s.Depth), "at least %.4g mm: snipe and a run of its own weld leg", least)
	n.That(a.T+s.Reach <= a.Out, "stiffener_reach", MM(s.Reach), "at most %.4g mm, within the leg's tip", a.Out-a.T)
	n.That(a.T+s.Depth <= a.Down, "stiffener_depth", MM(s.Depth), "at most %.4g mm, within the bolted leg", a.Down-a.T)
	n.That(s.Nose <= min(s.Reach, s.Depth), "stiffener_nose", MM(s.Nose), "at most the shorter leg, %.4g mm", min(s.Reach, s.Depth))
	last := s.Xs[len(s.Xs)-1] + s.T/2 + s.Weld
	blame := "stiffener_thickness"
	if len(s.Xs) > 1 {
		blame = "stiffener_spacing"
		clear := s.T + 2*s.Weld + TorchGapMM
		n.That(v.MM(blame) >= clear, blame, MM(v.MM(blame)), "at least %.4g mm, so that a torch reaches between", clear)
	}
	n.That(last <= a.Length/2, blame, MM(v.MM(blame))+", which needs an angle "+MM(2*last)+" long", "stiffeners within the angle's length, %.4g mm", a.Length)
	a.checkSockets(n)
}

// checkSockets keeps bolts clear of the stiffeners they stand beside.
func (a *WebAngle) checkSockets(n *Needs) {
	s := &a.Stiff
	room := SocketRoom(a.Bolts.DiaMM, s.Weld)
	if a.Rows[0] >= a.T+s.Depth+room {
		return // all rows are below the stiffeners
	}
	for _, x := range a.Xs {
		if have := a.toStiffener(x); have < room {
			n.That(false, "stiffener_spacing", fmt.Sprintf("%s, a stiffener %s from the bolts at x = %s", MM(a.v.MM("stiffener_spacing")), MM(have), MM(x)),
				"at least %.4g mm from bolt centre to stiffener, for washer and socket", room)
			return
		}
	}
}

// toStiffener is the distance from a bolt at x to the nearest stiffener's face.
func (a *WebAngle) toStiffener(x float64) float64 {
	least := math.Inf(1)
	for _, s := range a.Stiff.Xs {
		least = min(least, max(0, math.Abs(x-s)-a.Stiff.T/2))
	}
	return least
}

// FromStiffeners is the greatest distance of bolts at some x from the nearest stiffener's face.
func (a *WebAngle) FromStiffeners(xs []float64) float64 {
	most := 0.0
	for _, x := range xs {
		most = max(most, a.toStiffener(x))
	}
	return most
}

// Pulled is half the length of angle that a couple on leg A reaches: from where it enters, or the outermost stiffener that stands there,
// at 30 degrees along leg A and down to the first row. Beyond it the angle twists away, and bolts there hold no couple.
func (a *WebAngle) Pulled(on OnLeg) float64 {
	half := on.Wide / 2
	for _, x := range a.Stiff.Xs {
		if x-a.Stiff.T/2 <= on.Wide/2 {
			half = max(half, x+a.Stiff.T/2)
		}
	}
	return min(half+math.Tan(math.Pi/6)*(a.out(on)+a.Rows[0]), a.Length/2)
}

// Add puts the angle on the web "support", with its stiffeners, bolts and sweeps.
func (a *WebAngle) Add(b *part.Bracket, on OnLeg) {
	if a.Bent {
		b.Plates = append(b.Plates, a.plate())
	} else {
		b.Members = append(b.Members, a.member())
	}
	a.addStiffeners(b, on)
	a.addBolts(b, on)
	a.addSweeps(b, on)
	b.Supports = append(b.Supports, part.Support{
		ID: "support", Kind: part.RailWeb, ThicknessMM: a.v.MM("support_thickness"), Material: a.v.Word("support_material"),
		ClearMM: a.v.MM("web_clear_height"), Couple: part.CouplePath(a.v.Word("couple")),
	})
}

// start is the end of the angle from which its length is measured, and the way along it: so that leg B lies on the right side of leg A.
func (a *WebAngle) start() (x float64, along, out part.Vec) {
	if a.Over {
		return -a.Length / 2, part.Vec{X: 1}, part.Vec{Y: -1}
	}
	return a.Length / 2, part.Vec{X: -1}, part.Vec{Y: 1}
}

// from is the distance of an x from the start.
func (a *WebAngle) from(x float64) float64 {
	start, _, _ := a.start()
	return math.Abs(start - x)
}

func (a *WebAngle) member() part.Member {
	start, along, out := a.start()
	grid := Grid(a.Xs, a.Rows)
	m := part.Member{
		ID: "base", Name: "angle", Holes: make([]part.FaceHole, 0, len(grid)+len(a.LegA)), Material: a.Material, LengthMM: a.Length,
		Profile: part.Profile{Kind: part.Angle, AMM: a.Out, BMM: a.Down, TMM: a.T, RootMM: a.Root},
		Pose:    part.Pose{Origin: a.at(start, 0, 0), U: along, V: out},
	}
	for i, p := range grid {
		at := shape.Point{X: a.from(p.X), Y: p.Y}
		m.Holes = append(m.Holes, part.FaceHole{Face: part.LegB, Hole: BoltHole(fmt.Sprintf("bolt-%d", i+1), at, a.Bolts.HoleMM, part.Drilled)})
	}
	for _, h := range a.LegA {
		h.Center.X, h.Finish = a.from(h.Center.X), part.Drilled
		m.Holes = append(m.Holes, part.FaceHole{Face: part.LegA, Hole: h})
	}
	return m
}

// plate is the flat pattern in the plane of leg A: v from the line where the legs' middle planes meet, leg B turned down.
func (a *WebAngle) plate() part.Plate {
	start, along, out := a.start()
	// The fold's line is this far from there on leg A's side, and its flat as far again on leg B's.
	line := a.Root + a.T/2 - a.fold().Allowance()/2
	down := func(depth float64) float64 { return 2*line + a.T/2 - depth }
	p := part.Plate{
		ID: "base", Name: "bent plate", ThicknessMM: a.T, Material: a.Material,
		Outer: shape.Rect(shape.Point{Y: down(a.Down)}, shape.Point{X: a.Length, Y: a.Out - a.T/2}),
		Bends: []part.Bend{{A: shape.Point{X: a.Length, Y: line}, B: shape.Point{Y: line}, AngleRad: math.Pi / 2, RadiusMM: a.Root, AllowanceMM: a.fold().Allowance()}},
		Pose:  part.Pose{Origin: a.at(start, a.T/2, a.T/2), U: along, V: out},
	}
	for i, q := range Grid(a.Xs, a.Rows) {
		p.Holes = append(p.Holes, BoltHole(fmt.Sprintf("bolt-%d", i+1), shape.Point{X: a.from(q.X), Y: down(q.Y)}, a.Bolts.HoleMM, part.AsCut))
	}
	for _, h := range a.LegA {
		h.Center = shape.Point{X: a.from(h.Center.X), Y: h.Center.Y - a.T/2}
		p.Holes = append(p.Holes, h)
	}
	return p
}

// addBolts lays the faying plane on the web: u forward, v up, w outboard.
func (a *WebAngle) addBolts(b *part.Bracket, on OnLeg) {
	points := Grid(a.Xs, a.Rows)
	for i, p := range points {
		points[i] = shape.Point{X: 0 - p.X, Y: -p.Y}
	}
	half := a.touches(on)
	web := a.v.MM("support_thickness")
	g := a.Bolts.Group("bolts", part.Pose{U: part.Vec{X: -1}, V: part.Vec{Z: 1}}, points, a.T+web,
		shape.Box{Min: shape.Point{X: -half, Y: -a.To}, Max: shape.Point{X: half, Y: 0 - a.From}}, [2]part.Ply{
			{Thing: a.Bolted(), ThicknessMM: a.T, Material: a.Material, EdgeMM: min(a.End(), a.Down-a.Last())},
			{Thing: "support", ThicknessMM: web, Material: a.v.Word("support_material")},
		})
	g.Across = [2]part.Pry{a.pryAlong(), a.pryDown()}
	b.Bolts = append(b.Bolts, g)
}

// touches is half the length over which the angle presses on the web.
func (a *WebAngle) touches(on OnLeg) float64 {
	if a.HalfMM > 0 {
		return min(a.HalfMM, a.Pulled(on))
	}
	return a.Pulled(on)
}

// pryDown is the bolted leg bending between leg A and the first row. An angle's leg is reckoned from its middle plane (AISC Manual Part 9,
// prying action of angles, from memory).
func (a *WebAngle) pryDown() part.Pry {
	return part.Pry{BMM: a.Rows[0] - a.T/2, AMM: a.Down - a.Rows[0], PMM: TributaryMM(len(a.Xs), a.v.MM("bolt_pitch"), a.End())}
}

// TributaryMM is the least length of ply that serves one bolt of a line: half a pitch and the rest to the end, or a pitch.
func TributaryMM(count int, pitchMM, endMM float64) float64 {
	if count == 1 {
		return 2 * endMM
	}
	return min(pitchMM, pitchMM/2+endMM)
}

// pryAlong is the bolted leg bending between a stiffener and the bolt of the first row that is farthest from one.
func (a *WebAngle) pryAlong() part.Pry {
	if len(a.Stiff.Xs) == 0 {
		return part.Pry{}
	}
	p := part.Pry{BMM: a.FromStiffeners(a.Xs), AMM: a.End(), PMM: a.Down - a.T}
	if len(a.Rows) > 1 {
		p.PMM = a.Rows[0] - a.T + (a.Rows[1]-a.Rows[0])/2
	}
	return p
}

// addStiffeners stands plates in the inner corner: u outboard, v down the bolted leg.
func (a *WebAngle) addStiffeners(b *part.Bracket, on OnLeg) {
	s := &a.Stiff
	c := Corner{AlongU: s.Reach, AlongV: s.Depth, Snipe: s.Snipe, NoseU: s.Nose, NoseV: s.Nose}
	var ids, legA, legB []string
	for i, x := range s.Xs {
		id := fmt.Sprintf("stiffener-%d", i+1)
		pose := part.Pose{Origin: part.Vec{X: x, Y: a.T, Z: -a.T}, U: part.Vec{Y: 1}, V: part.Vec{Z: -1}}
		b.Plates = append(b.Plates, part.Plate{ID: id, Name: "stiffener", ThicknessMM: s.T, Material: s.Material, Outer: c.Outline(), Pose: pose})
		b.Welds = append(b.Welds,
			Weld("w-"+id+"-a", id, a.Carries(), s.Weld, s.Electrode, AtFaces(pose.At(c.Snipe, 0, 0), pose.At(c.AlongU, 0, 0), pose.W(), s.T)...),
			Weld("w-"+id+"-b", id, a.Bolted(), s.Weld, s.Electrode, AtFaces(pose.At(0, c.Snipe, 0), pose.At(0, c.AlongV, 0), pose.W(), s.T)...),
		)
		ids, legA, legB = append(ids, id), append(legA, "w-"+id+"-a"), append(legB, "w-"+id+"-b")
	}
	if ids == nil {
		return
	}
	b.Composites = append(b.Composites,
		part.Composite{
			ID: "c-leg", Things: append([]string{a.Carries()}, ids...), Welds: legA, Rule: part.LagCantilever, SpanMM: on.Mid,
			From: part.Vec{Z: -a.T / 2}, To: part.Vec{Y: a.T + s.Reach, Z: -a.T / 2},
		},
		part.Composite{
			ID: "c-down-leg", Things: append([]string{a.Bolted()}, ids...), Welds: legB, Rule: part.LagCantilever, SpanMM: s.Depth,
			From: part.Vec{Y: a.T / 2}, To: part.Vec{Y: a.T / 2, Z: -a.T - s.Depth},
		},
	)
}

// addSweeps cuts leg A from the load to the root, and leg B from the inner corner to the last bolts.
func (a *WebAngle) addSweeps(b *part.Bracket, on OnLeg) {
	ribbed := len(a.Stiff.Xs) > 0
	spread := on.Wide + 2*math.Tan(math.Pi/6)*(a.out(on)-on.Far-a.T) // what leg A's working width has grown to at the corner
	top := a.T
	if a.Bent {
		top = a.T / 2 // from where the middle planes meet; its own begins at the fold's line
	}
	b.Sweeps = append(b.Sweeps,
		part.Sweep{
			ID: "leg", Things: []string{a.Carries()}, Name: "angle leg", Ribs: ribbed, EntryMM: on.Wide, EntryToMM: on.Far,
			From: a.at(0, a.out(on), a.T/2), To: a.at(0, a.corner(), a.T/2),
		},
		part.Sweep{
			ID: "down leg", Things: []string{a.Bolted()}, Name: "bolted leg", Ribs: ribbed, EntryMM: min(spread, a.Length), Bolts: "bolts",
			From: a.at(0, a.T/2, top), To: a.at(0, a.T/2, a.Last()),
		},
	)
}
