package outrigger

// Sizes, and what does not fit.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

// leastPlateMM is the shortest plate that stands out of the base plate. Common practice, no source.
const leastPlateMM = 20

type design struct {
	v                           geometry.Values
	pinned                      bool
	base                        fab.TubePlate
	t, root, weld               float64 // of each plate, and its weld on the base plate
	tip, gap                    float64
	out, up, off                float64 // of the load: from the web, over the origin, off the middle
	reach                       float64
	headT, headL, headW, topLeg float64
	endT                        float64
	mountL, mountW              float64
	lug                         fab.BodyLug
	ear                         fab.Ear
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, pinned: v.Word("mount") == onPin, t: v.MM("plate_thickness"), root: v.MM("root_height"), weld: v.MM("plate_weld"), tip: v.MM("tip_height"),
		gap: v.MM("plate_gap"), out: v.MM("load_out"), off: v.MM("load_offset"), reach: v.MM("reach"), headT: v.MM("head_thickness"), headL: v.MM("head_length"),
		headW: v.MM("head_width"), topLeg: v.MM("head_weld"), endT: v.MM("end_thickness"), mountL: v.MM("mount_length"), mountW: v.MM("mount_width"), lug: fab.ReadBodyLug(v),
	}
	if d.pinned {
		d.gap = 2 * d.lug.Inner()
	}
	d.base = fab.ReadTubePlate(v, "base", "base plate", fab.Tube{WidthMM: d.gap + 2*d.t, HighMM: d.root}, d.weld)
	d.base.On = "pair of plates"
	d.up = d.top() + d.headT + v.MM("load_height")
	d.ear = fab.Ear{Width: d.root, Pin: d.out - d.foot(), End: v.MM("end_distance"), HeadRadius: v.MM("head_radius")}
	return d
}

// spacing is from one plate's middle to the other's.
func (d *design) spacing() float64 { return d.gap + d.t }

// foot is the plates' root, on the base plate's outer face.
func (d *design) foot() float64 { return d.base.ThicknessMM }

// top is the level of the upper edges under a head plate.
func (d *design) top() float64 { return d.root / 2 }

// end is the outer end of the plates under a head plate, headIn the inner edge of that, headMid the middle of its welds.
func (d *design) end() float64     { return d.reach - d.endT }
func (d *design) headIn() float64  { return d.reach - d.headL }
func (d *design) headMid() float64 { return (d.headIn() + d.end()) / 2 }

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	steps := []func(*fab.Needs){d.checkPlates, d.checkHead, d.checkMount, d.checkBase}
	if d.pinned {
		steps = []func(*fab.Needs){d.checkPlates, d.checkPin, d.checkBase}
	}
	for _, step := range steps {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

func (d *design) checkPlates(n *fab.Needs) {
	n.That(d.root >= 4*d.weld, "root_height", fab.MM(d.root), "at least 4 weld legs, %.4g mm", 4*d.weld)
	if d.pinned {
		least := fab.TorchGapMM + 2*d.weld
		n.That(d.gap >= least, "gap", fab.MM(d.gap)+" between the plates", "at least %.4g mm between them (lug_thickness + 2 gap), so that a torch reaches the inner fillets", least)
		return
	}
	least := fab.TorchGapMM + 2*max(d.weld, d.topLeg)
	n.That(d.gap >= least, "plate_gap", fab.MM(d.gap), "at least %.4g mm, so that a torch reaches the inner fillets", least)
	n.That(d.tip <= d.root, "tip_height", fab.MM(d.tip), "at most root_height, %.4g mm", d.root)
	n.That(d.endT == 0 || d.endT >= 4, "end_thickness", fab.MM(d.endT), "at least 4 mm; 0 for none")
	n.That(d.endT == 0 || d.tip >= 4*d.topLeg, "tip_height", fab.MM(d.tip), "at least 4 legs of head_weld, %.4g mm, on the end tie", 4*d.topLeg)
	low, high := d.v.Ratio("hold_low"), d.v.Ratio("hold_high")
	n.That(low <= high, "hold_low", fmt.Sprintf("%.4g", low), "at most hold_high, %.4g", high)
}

// checkHead keeps the head plate on both plates, its welds long enough, and room before the base plate.
func (d *design) checkHead(n *fab.Needs) {
	room := d.foot() + d.weld + max(fab.TorchGapMM, leastPlateMM)
	n.That(d.headIn() >= room, "reach", fab.MM(d.reach), "at least %.4g mm: base plate, its weld and room for a torch before the head plate", room+d.headL)
	least := d.endT + 4*d.topLeg
	n.That(d.headL >= least, "head_length", fab.MM(d.headL), "at least %.4g mm: 4 weld legs, and the end tie", least)
	wide := d.spacing() + d.t + 2*d.topLeg
	n.That(d.headW >= wide, "head_width", fab.MM(d.headW), "at least the plates and their welds, %.4g mm", wide)
}

// checkMount keeps what the mount stands on within the head plate, and its load between the plates.
func (d *design) checkMount(n *fab.Needs) {
	lo, hi := d.headIn()+d.mountL/2, d.reach-d.mountL/2
	n.That(d.mountL <= d.headL, "mount_length", fab.MM(d.mountL), "at most head_length, %.4g mm", d.headL)
	n.That(d.mountL > d.headL || d.out >= lo && d.out <= hi, "load_out", fab.MM(d.out), "between %.4g and %.4g mm, so that the mount stands on the head plate", lo, hi)
	n.That(d.out <= d.end(), "load_out", fab.MM(d.out), "at most %.4g mm, over the plates", d.end())
	n.That(d.mountW <= d.headW, "mount_width", fab.MM(d.mountW), "at most head_width, %.4g mm", d.headW)
	n.That(d.off <= d.spacing()/2, "load_offset", fab.MM(d.off), "at most half of what is between the plates' middles, %.4g mm", d.spacing()/2)
}

// checkPin keeps steel round the pin's hole, and the body's lug off the base plate.
func (d *design) checkPin(n *fab.Needs) {
	d.lug.Check(n)
	r, need := d.ear.HeadRadius, d.lug.HoleMM/2+fab.Ligament(d.lug.PinMM)
	low := d.foot() + max(d.lug.RadiusMM+fab.PaintGapMM, need+d.weld)
	n.That(d.out >= low, "load_out", fab.MM(d.out), "at least %.4g mm, so that the lug swings clear of the base plate", low)
	n.That(r <= d.root/2, "head_radius", fab.MM(r), "at most half of root_height, %.4g mm", d.root/2)
	most := d.ear.Pin + d.ear.End - d.weld - 1
	n.That(r <= most, "head_radius", fab.MM(r), "at most %.4g mm, so that the arc begins beyond the weld", most)
	if n.Err() != nil {
		return
	}
	outer, err := d.ear.Outline()
	if !n.That(err == nil, "head_radius", fab.MM(r), "a radius to which the plates' edges can run tangent") {
		return
	}
	room := 0.0
	if eye := (shape.Point{Y: d.ear.Pin}); outer.Contains(eye) {
		room = outer.DistTo(eye)
	}
	n.That(room >= need, "end_distance", fab.MM(d.ear.End)+" and this end leave "+fab.MM(max(0, room-d.lug.HoleMM/2))+" beside the pin hole", "more, so that %.4g mm is left", fab.Ligament(d.lug.PinMM))
}

// checkBase keeps every bolt beside the pair: between the plates nothing holds the base plate flat.
func (d *design) checkBase(n *fab.Needs) {
	d.base.Check(n, d.v.MM("web_clear_height"))
	room := d.spacing()/2 + d.t/2 + fab.SocketRoom(d.base.BoltMM, d.weld)
	for _, along := range d.base.Along {
		if !n.That(math.Abs(along) >= room-shape.TouchMM, "bolt_columns", fmt.Sprintf("a column %s from the middle", fab.MM(math.Abs(along))), "columns at least %.4g mm from the middle, beside the plates", room) {
			return
		}
	}
}
