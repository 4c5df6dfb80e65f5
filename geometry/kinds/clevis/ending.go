package clevis

// What keeps the pin in: head and nut, head and a cross-drilled retaining bolt, or a keeper plate in a slot. All of it lies beyond the ears'
// outer faces, so that no shear plane of the pin passes through thread, hole or slot. What an end needs is common practice, no source, where
// nothing else is said.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

const (
	headAndNut  = "head and nut"
	headAndBolt = "head and retaining bolt"
	keeperEnd   = "keeper"
)

func endingParams() []geometry.Param {
	return []geometry.Param{
		fab.Thread("retainer_size", "M6", "head and retaining bolt: the bolt through the pin's end"),
		fab.Length("wire_hole", 0, 5, 1.5, "head and retaining bolt: hole through the bolt's head for lock wire, 0 for none"),
		fab.Length("slot_depth", 2, 30, 4.5, "keeper: depth of the slot milled across the pin's side"),
		fab.Length("keeper_thickness", 3, 30, 6, "keeper: thickness of the plate"),
		fab.Length("keeper_width", 10, 150, 25, "keeper: width of the plate, away from the pin"),
		fab.Length("keeper_length", 20, 300, 64, "keeper: length of the plate, across the pin"),
		fab.Named("keeper_material", "S355", "keeper: grade of the plate"),
		fab.Thread("keeper_screw", "M8", "keeper: size of its two screws, tapped into the ear"),
		fab.Length("keeper_pitch", 10, 280, 40, "keeper: distance between its screws"),
	}
}

// ending is one way to keep the pin in.
type ending interface {
	check(*fab.Needs)
	ends() [2]part.PinEnd // the inboard end first, as seats run outboard
	length() float64      // under the head, or over all where there is none; up to a whole mm
	card() string
	add(*part.Bracket)
	unchecked() string
}

func (d *design) ending() ending {
	switch d.v.Word("pin_ends") {
	case headAndBolt:
		return readRetainer(d)
	case keeperEnd:
		return readKeeper(d)
	}
	return nut{d}
}

func (d *design) checkEnding(n *fab.Needs) { d.ending().check(n) }

// head is outboard, so that the pin draws away from the rail.
func (d *design) head() part.PinEnd {
	return part.PinEnd{Kind: part.EndHead, BearsOn: d.outermost(0)}
}

// washer is the thickness of the washer at the end.
func (d *design) washer() float64 { return 0.15 * d.pin }

type nut struct{ d *design }

func (nut) check(*fab.Needs)  {}
func (nut) add(*part.Bracket) {}

func (e nut) ends() [2]part.PinEnd {
	return [2]part.PinEnd{{Kind: part.EndNut, BearsOn: e.d.outermost(1), PlayMM: e.d.v.MM("end_play")}, e.d.head()}
}

// length: washer, nut 0.8 d, thread showing 0.2 d.
func (e nut) length() float64 {
	return math.Ceil(e.d.stack() + e.d.v.MM("end_play") + e.d.washer() + e.d.pin)
}

func (e nut) card() string {
	return fab.NutEnd(e.length(), e.d.stack())
}

func (nut) unchecked() string { return "head, nut and thread of the pin, which pull the far ear along" }

// retainer is a bolt through the pin's inboard end, wired.
type retainer struct {
	d               *design
	dia, hole, wire float64
}

func readRetainer(d *design) retainer {
	r := retainer{d: d, wire: d.v.MM("wire_hole")}
	r.dia, r.hole = fab.Clearance(d.v.Word("retainer_size"), part.CloseFit)
	return r
}

func (r retainer) check(n *fab.Needs) {
	size := r.d.v.Word("retainer_size")
	if n.ThatHole(r.hole, "retainer_size", size) {
		n.That(r.hole <= r.d.pin/3, "retainer_size", fmt.Sprintf("%s in a hole of %s", size, fab.MM(r.hole)), "a hole of at most a third of the pin, %.4g mm", r.d.pin/3)
		n.That(r.dia >= r.d.pin/6, "retainer_size", size, "at least a sixth of the pin, %.4g mm", r.d.pin/6)
	}
	n.That(r.wire <= r.dia/4, "wire_hole", fab.MM(r.wire), "at most a quarter of the retaining bolt, %.4g mm; 0 for none", r.dia/4)
	n.That(r.wire == 0 || r.wire >= 1, "wire_hole", fab.MM(r.wire), "at least 1 mm, for a wire of 0.8 mm; 0 for none")
}

func (r retainer) ends() [2]part.PinEnd {
	return [2]part.PinEnd{{Kind: part.EndRetainer, BearsOn: r.d.outermost(1), PlayMM: r.d.v.MM("end_play"), Size: r.d.v.Word("retainer_size")}, r.d.head()}
}

// at is the middle of the cross hole from under the head: past the ears, the play and a washer.
func (r retainer) at() float64 {
	return r.d.stack() + r.d.v.MM("end_play") + r.d.washer() + r.hole/2
}

// length leaves one and a half holes from the hole's middle to the end.
func (r retainer) length() float64 { return math.Ceil(r.at() + 1.5*r.hole) }

func (r retainer) card() string {
	text := fmt.Sprintf("%s under the head; cross hole %s, its middle %s from under the head, for a retaining bolt %s of grade 8.8 with washer and nut",
		fab.MM(r.length()), fab.MM(r.hole), fab.MM(r.at()), r.d.v.Word("retainer_size"))
	if r.wire > 0 {
		text += fmt.Sprintf("; drill %s through the bolt's head and wire it, the pull tightening", fab.MM(r.wire))
	}
	return text
}

func (retainer) add(*part.Bracket) {}

func (retainer) unchecked() string {
	return "head and retaining bolt of the pin, and the pin's net section at the cross hole: it lies beyond the ears and holds only what draws the pin"
}

// keeper is a plate that is screwed to the outboard ear over the pin and stands in a slot of it: it keeps the pin both ways, and from turning.
type keeper struct {
	d                    *design
	slot, t, width, long float64
	screw, hole, pitch   float64
	clear                float64 // from the keeper's edge to the slot's floor
}

func readKeeper(d *design) keeper {
	v := d.v
	k := keeper{d: d, slot: v.MM("slot_depth"), t: v.MM("keeper_thickness"), width: v.MM("keeper_width"), long: v.MM("keeper_length"), pitch: v.MM("keeper_pitch")}
	k.screw, k.hole = fab.Clearance(v.Word("keeper_screw"), part.NormalFit)
	k.clear = v.MM("pin_clearance") + 0.5 // the pin moves in its hole and does not load the screws
	return k
}

// edge is from the pin's centre up to the keeper's lower edge, row to its screws.
func (k keeper) edge() float64 { return k.d.pin/2 - k.slot + k.clear }
func (k keeper) row() float64  { return k.edge() + k.width/2 }

func (k keeper) check(n *fab.Needs) {
	d := k.d
	n.That(!d.cheek.Boss || d.cheek.ThicknessMM == 0, "pin_ends", "keeper with bosses", "cheek plates under a keeper, or another end: a boss has no room for its screws")
	n.That(k.slot <= d.pin/3, "slot_depth", fab.MM(k.slot), "at most a third of the pin, %.4g mm", d.pin/3)
	n.That(k.slot >= k.clear+2, "slot_depth", fab.MM(k.slot), "at least %.4g mm: 2 mm of hold, the pin's clearance and 0.5 mm", k.clear+2)
	n.That(k.long >= d.pin, "keeper_length", fab.MM(k.long), "at least the pin's diameter, %.4g mm", d.pin)
	if r := d.outside; r.thickness > 0 && r.height > d.height+k.edge() {
		have := math.Inf(1)
		for _, x := range r.at {
			have = min(have, math.Abs(x)-r.thickness/2-d.gussetWeld)
		}
		n.That(k.long/2 <= have, "keeper_length", fab.MM(k.long), "at most %.4g mm, between the outer gussets and their welds, or gussets no higher than the keeper's lower edge, %.4g mm",
			2*max(0, have), d.height+k.edge())
	}
	if n.ThatHole(k.hole, "keeper_screw", d.v.Word("keeper_screw")) {
		k.checkScrews(n)
	}
}

func (k keeper) checkScrews(n *fab.Needs) {
	d, edge := k.d, fab.BoltEdge(k.screw)
	_, err := part.TapDrillMM(d.v.Word("keeper_screw"))
	n.That(err == nil, "keeper_screw", d.v.Word("keeper_screw"), "a coarse thread with a tap drill")
	n.That(k.width >= 2*edge, "keeper_width", fab.MM(k.width), "at least %.4g mm, 1 1/4 screws on either side", 2*edge)
	n.That(k.pitch <= k.long-2*edge, "keeper_pitch", fab.MM(k.pitch), "at most %.4g mm, so that 1 1/4 screws are left to the keeper's ends", k.long-2*edge)
	least := 2 * math.Sqrt(max(0, (d.pin/2+k.screw)*(d.pin/2+k.screw)-k.row()*k.row()))
	least = max(least, fab.BoltPitch(k.screw), d.pin+k.screw)
	n.That(k.pitch >= least, "keeper_pitch", fab.MM(k.pitch), "at least %.4g mm, so that the screws' heads pass the pin's end and their holes lie beside what the pin tears", least)
	n.That(d.seatThickness() >= k.screw, "keeper_screw", d.v.Word("keeper_screw"), "at most the thickness that it is tapped through, %.4g mm", d.seatThickness())
	if n.Err() != nil {
		return
	}
	at := shape.Point{X: k.pitch / 2, Y: d.height + k.row()}
	outer, _ := d.earOutline() // checkEars has drawn it
	have := 0.0
	if outer.Contains(at) {
		have = outer.DistTo(at)
	}
	n.That(have >= edge, "keeper_pitch", fmt.Sprintf("%s, which puts a screw %s from the ear's edge", fab.MM(k.pitch), fab.MM(have)), "1 1/4 screws = %.4g mm of ear: a smaller pitch or keeper_width, or a larger ear", edge)
	if d.cheek.ThicknessMM > 0 {
		have = d.cheek.DiaMM/2 - math.Hypot(k.pitch/2, k.row())
		n.That(have >= edge, "cheek_diameter", fmt.Sprintf("%s, which leaves a screw %s to the cheek's edge", fab.MM(d.cheek.DiaMM), fab.MM(max(0, have))), "at least %.4g mm under this keeper", d.cheek.DiaMM+2*(edge-have))
	}
}

func (k keeper) ends() [2]part.PinEnd {
	end := part.PinEnd{Kind: part.EndKeeper, BearsOn: k.d.outermost(0), PlayMM: k.d.v.MM("end_play")}
	return [2]part.PinEnd{end, end}
}

// proud is how far the pin's inboard end stands out of its ear; land what is left of the pin past the slot.
const proud = 2

func (k keeper) land() float64 { return max(5, k.d.pin/4) }

// slotFrom and slotTo are the slot's sides from the pin's inboard end; it begins at the ear's outer face.
func (k keeper) slotFrom() float64 { return proud + k.d.stack() }
func (k keeper) slotTo() float64   { return k.slotFrom() + k.t + k.d.v.MM("end_play") }

func (k keeper) length() float64 { return math.Ceil(k.slotTo() + k.land()) }

func (k keeper) card() string {
	return fmt.Sprintf("%s over all; one slot milled across its side, %s deep, from %s to %s of the inboard end, for the keeper plate; that end stands %s out of its ear",
		fab.MM(k.length()), fab.MM(k.slot), fab.MM(k.slotFrom()), fab.MM(k.slotTo()), fab.MM(proud))
}

func (keeper) unchecked() string {
	return "keeper plate and screws, which a keeper-plate by itself checks, the pin's net section at the slot, which lies beyond the ears and holds only what draws the pin, and the ear at the screws' holes"
}

// add lays the keeper on the outboard ear, over the pin: the body's weight presses the pin away from it.
func (k keeper) add(b *part.Bracket) {
	d := k.d
	face := d.face(ears[0], d.outer+d.cheek.ThicknessMM)
	pose := part.Pose{Origin: part.Vec{Y: face, Z: d.height}, U: part.Vec{X: -1}, V: part.Vec{Z: 1}} // w outboard
	points := []shape.Point{{X: -k.pitch / 2, Y: k.row()}, {X: k.pitch / 2, Y: k.row()}}
	outer := shape.Rect(shape.Point{X: -k.long / 2, Y: k.edge()}, shape.Point{X: k.long / 2, Y: k.edge() + k.width})
	plate := part.Plate{ID: "keeper", Name: "keeper plate", ThicknessMM: k.t, Material: d.v.Word("keeper_material"), Outer: outer, Pose: pose}
	plate.Pose.Origin = pose.At(0, 0, k.t/2)
	thread := d.v.Word("keeper_screw")
	tapped := []string{ears[0].id}
	if d.cheek.ThicknessMM > 0 {
		tapped = append(tapped, d.outermost(0))
	}
	for i, at := range points {
		plate.Holes = append(plate.Holes, fab.BoltHole(fmt.Sprintf("screw-%d", i+1), at, k.hole, part.AsCut))
		for _, id := range tapped {
			p := b.Plate(id)
			p.Holes = append(p.Holes, fab.TappedHole(fmt.Sprintf("keeper-%d", i+1), local(p, pose, points)[i], thread))
		}
	}
	b.Plates = append(b.Plates, plate)
	under := b.Plate(d.outermost(0))
	b.Bolts = append(b.Bolts, part.BoltGroup{
		ID: "keeper screws", Pose: pose, Points: points, Size: thread, DiaMM: k.screw, Grade: "8.8", HoleMM: k.hole, GripMM: k.t, ThreadsIn: true,
		Patch: outer.BBox(),
		Plies: [2]part.Ply{
			{Thing: "keeper", ThicknessMM: k.t, Material: plate.Material, EdgeMM: fab.LeastEdge(outer, points), PitchMM: k.pitch},
			{Thing: under.ID, ThicknessMM: under.ThicknessMM, Material: under.Material, EdgeMM: fab.LeastEdge(under.Outer, local(under, pose, points)), PitchMM: k.pitch},
		},
	})
	b.Notes = append(b.Notes, fmt.Sprintf("tap %s through the outboard ear for the keeper after welding; where the shop leaves its centres alone, mark off through the keeper, drill, then tap; washers that lock, or wire, under the screws", thread))
}

// local gives points of a pose in a plate's own plane.
func local(p *part.Plate, pose part.Pose, points []shape.Point) []shape.Point {
	out := make([]shape.Point, len(points))
	for i, q := range points {
		u, v, _ := p.Pose.Local(pose.At(q.X, q.Y, 0))
		out[i] = shape.Point{X: u, Y: v}
	}
	return out
}
