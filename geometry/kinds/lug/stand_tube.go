package lug

// The end of a tube that runs down from the lug: closed by a cap on which the lug stands, or slotted for the lug to pass through both its walls.

import (
	"fmt"
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type tube struct {
	fab.Tube     // its width along the lug
	length       float64
	slotLength   float64
	capT, margin float64
	capWeld      float64
}

func readTube(d *design) tube {
	v := d.v
	t := tube{
		Tube:   fab.Tube{WidthMM: v.MM("tube_width"), HighMM: v.MM("tube_depth"), WallMM: v.MM("tube_wall"), CornerMM: v.MM("tube_corner")},
		length: v.MM("tube_length"), slotLength: v.MM("slot_length"),
		capT: v.MM("cap_thickness"), margin: v.MM("cap_margin"), capWeld: v.MM("cap_weld"),
	}
	if v.Word("tube_form") == "round" {
		t.Round, t.HighMM, t.CornerMM = true, t.WidthMM, 0
	}
	return t
}

// flat is what of its size along the pin is flat for a fillet; the middle half of a round tube counts as flat (common practice, no source).
func (t tube) flat() float64 {
	if t.Round {
		return t.WidthMM / 2
	}
	return t.HighMM - 2*t.CornerMM
}

func (t tube) addTube(d *design, b *part.Bracket, top, from float64) {
	b.Members = append(b.Members, part.Member{
		ID: "tube", Name: "tube", Material: d.v.Word("tube_material"), Profile: t.Profile(), LengthMM: t.length,
		Pose: part.Pose{Origin: part.Vec{Z: top}, U: part.Vec{Z: -1}, V: part.Vec{X: 1}},
	})
	b.Sweeps = append(b.Sweeps, part.Sweep{ID: "tube", Things: []string{"tube"}, From: part.Vec{Z: from}, To: part.Vec{Z: top - t.length}, Name: "tube"})
	b.Supports = append(b.Supports, d.support())
}

const farEnd = "the tube's far end, and what holds it there"

// capped: a plate closes the tube; the lug reaches from wall to wall.
type capped struct{ tube }

func (capped) top() string                       { return "cap" }
func (capped) depth() float64                    { return 0 }
func (capped) runs(d *design) []part.WeldSegment { return d.across() }
func (capped) chain() []string                   { return []string{"cap", "w-cap", "tube", "support"} }
func (c capped) unchecked() []string {
	return []string{"bending of the cap between the lug and the tube's walls", farEnd}
}

func (c capped) check(d *design, n *fab.Needs) {
	c.Tube.Check(n)
	flat := min(c.WidthMM, c.HighMM) - 2*c.CornerMM
	n.That(c.Round || flat >= 4*c.capWeld, "cap_weld", fab.MM(c.capWeld), "at most a quarter of the tube's flat, %.4g mm", flat/4)
	n.That(c.margin >= c.capWeld, "cap_margin", fab.MM(c.margin), "at least cap_weld, %.4g mm", c.capWeld)
	least := c.WidthMM - 2*c.WallMM
	n.That(d.ear.Width >= least, "width", fab.MM(d.ear.Width), "at least %.4g mm, so that its ends stand over the tube's walls", least)
	outer, err := c.Outline(c.margin)
	if !n.That(err == nil, "tube_corner", fab.MM(c.CornerMM), "a radius that the cap's corners have room for") {
		return
	}
	on := func(x, y float64) bool { return outer.Contains(shape.Point{X: x - 1e-6, Y: y - 1e-6}) }
	n.That(on(d.ear.Width/2, d.t/2+d.weld), "cap_margin", fab.MM(c.margin), "more, so that the lug of %.4g x %.4g mm stands on the cap with its welds", d.ear.Width, d.t)
	if d.gussetH > 0 {
		n.That(on(d.gussetT/2+d.v.MM("gusset_weld"), d.reach()), "gusset_length", fab.MM(d.gussetL), "less, so that it stands on the cap; gusset_height 0 for none")
	}
}

func (c capped) add(d *design, b *part.Bracket) {
	outer, _ := c.Outline(c.margin) // check has drawn it
	level := part.Pose{Origin: part.Vec{Z: -c.capT / 2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	b.Plates = append(b.Plates, part.Plate{ID: "cap", Name: "cap", ThicknessMM: c.capT, Material: d.v.Word("material"), Outer: outer, Pose: level})
	c.addTube(d, b, -c.capT, -c.capT)
	// The weld's u runs along the tube's depth.
	b.Welds = append(b.Welds, c.Weld("w-cap", "tube", "cap", c.capWeld, d.v.Word("electrode"), part.Pose{Origin: part.Vec{Z: -c.capT}, U: level.V, V: level.U}))
	b.Notes = append(b.Notes, "vent the closed tube before hot-dip; drill the vent where water runs out")
}

// slotted lets the lug through both walls, with a fillet along each of the four edges.
type slotted struct{ tube }

func (slotted) top() string      { return "tube" }
func (s slotted) depth() float64 { return s.slotLength }
func (slotted) chain() []string  { return []string{"tube", "support"} }
func (slotted) unchecked() []string {
	return []string{"the tube's net section at the end of its slots, and shear lag there", farEnd}
}

func (s slotted) check(d *design, n *fab.Needs) {
	s.Tube.Check(n)
	n.That(!d.through, "weld_kind", through, "%s on a slotted tube", fillet)
	n.That(d.gussetH == 0, "gusset_height", fab.MM(d.gussetH), "0 on a slotted tube")
	n.That(d.t+2*d.weld <= s.flat(), "thickness", fab.MM(d.t), "at most %.4g mm, so that its fillets lie on the tube's flat", max(0, s.flat()-2*d.weld))
	// Longer than the tube is wide: AISC 360-16 Table D3.1, cases 5 and 6, from memory.
	n.That(s.slotLength >= s.WidthMM, "slot_length", fab.MM(s.slotLength), "at least the tube's size along the lug, %.4g mm", s.WidthMM)
	n.That(s.slotLength >= 4*d.weld, "slot_length", fab.MM(s.slotLength), "at least 4 weld legs, %.4g mm", 4*d.weld)
	n.That(s.length >= s.slotLength+20, "tube_length", fab.MM(s.length), "at least the slots and 20 mm, %.4g mm", s.slotLength+20)
	least := s.WidthMM + 2*d.weld
	n.That(2*d.halfWidth(0) >= least, "width", fab.MM(d.ear.Width)+", "+fab.MM(2*d.halfWidth(0))+" at the tube's end", "at least %.4g mm there, the tube and a weld leg on either side", least)
}

// outside is the x of the tube's outside where a face of the lug comes out.
func (s slotted) outside(y float64) float64 {
	if s.Round {
		return math.Sqrt(s.WidthMM*s.WidthMM/4 - y*y)
	}
	return s.WidthMM / 2
}

// runs lie on both faces of the lug, on both sides of the tube.
func (s slotted) runs(d *design) []part.WeldSegment {
	x, end := s.outside(d.t/2), part.Vec{Z: -s.slotLength}
	var out []part.WeldSegment
	for _, side := range [2]float64{1, -1} {
		top := part.Vec{X: side * x}
		out = append(out, fab.AtFaces(top, top.Add(end), part.Vec{Y: 1}, d.t)...)
	}
	return out
}

func (s slotted) add(d *design, b *part.Bracket) {
	s.addTube(d, b, 0, -s.slotLength)
	b.Notes = append(b.Notes, fmt.Sprintf("slot the tube's end on both sides, %s wide and %s long, a hole of that width drilled at the end of each", fab.MM(d.t+1), fab.MM(s.slotLength)))
}
