package arch

// Sizes read into names, and what does not fit.

import (
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                             geometry.Values
	lug                           fab.BodyLug
	crossW, crossZ, clear         float64 // cross member's width and top, and what keeps clear of it
	half, openZ, archR            float64 // opening: half its width, its height, its corners
	leg, outer                    float64 // a leg's width, and half the width over both
	shoulder, shoulderR           float64
	pinZ, end, headR              float64
	t, footWeld                   float64
	round                         bool
	barW, barH, barPast, notchGap float64
	barWeld                       float64
	middle                        float64 // y between the plates
	angle                         fab.WebAngle
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, lug: fab.ReadBodyLug(v), crossW: v.MM("cross_width"), crossZ: v.MM("cross_height"), clear: v.MM("clearance"),
		half: v.MM("opening_width") / 2, openZ: v.MM("opening_height"), archR: v.MM("arch_radius"), leg: v.MM("leg_width"),
		shoulder: v.MM("shoulder_height"), shoulderR: v.MM("shoulder_radius"), pinZ: v.MM("pin_height"), end: v.MM("end_distance"), headR: v.MM("head_radius"),
		t: v.MM("plate_thickness"), footWeld: v.MM("foot_weld"), round: v.Word("bar_shape") == "round",
		barW: v.MM("bar_width"), barH: v.MM("bar_height"), barPast: v.MM("bar_past"), notchGap: v.MM("notch_clearance"), barWeld: v.MM("bar_weld"),
		middle: v.MM("foot_offset"),
	}
	d.outer = d.half + d.leg
	if d.round {
		d.barH = d.barW
	}
	d.angle = fab.ReadWebAngle(v, fab.ReadBolts(v), v.Word("foot_material"))
	d.angle.Stiff.Material = v.Word("foot_material")
	return d
}

// over is the distance from the middle between the plates to an outer face.
func (d *design) over() float64 { return d.lug.Inner() + d.t }

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	for _, step := range []func(*fab.Needs){d.checkOpening, d.checkHead, d.checkBar, d.checkShares, d.checkFeet} {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

// checkOpening keeps the opening off the cross member, its arcs above the feet's welds, and the notch in the crown.
func (d *design) checkOpening(n *fab.Needs) {
	least := d.crossW + 2*d.clear
	n.That(2*d.half >= least, "opening_width", fab.MM(2*d.half), "at least %.4g mm, the cross member and its clearance", least)
	n.That(d.openZ >= d.crossZ+d.clear, "opening_height", fab.MM(d.openZ), "at least %.4g mm, the cross member and its clearance", d.crossZ+d.clear)
	n.That(d.archR <= d.half, "arch_radius", fab.MM(d.archR), "at most half the opening's width, %.4g mm", d.half)
	most := d.openZ - d.footWeld - 1
	n.That(d.archR <= most, "arch_radius", fab.MM(d.archR), "at most %.4g mm, so that the arcs begin above the feet's welds", most)
	n.That(d.leg >= 4*d.footWeld, "leg_width", fab.MM(d.leg), "at least 4 weld legs, %.4g mm", 4*d.footWeld)
	if n.Err() != nil {
		return
	}
	// The cross member's upper corner against the arc of the opening's.
	across, up := max(d.crossW/2-(d.half-d.archR), 0), max(d.crossZ-(d.openZ-d.archR), 0)
	have := d.archR - math.Hypot(across, up)
	n.That(have >= d.clear-shape.TouchMM || across == 0 || up == 0, "arch_radius", fab.MM(d.archR)+", which leaves "+fab.MM(max(0, have))+" at the cross member's corner",
		"smaller, or a larger opening, so that %.4g mm is left", d.clear)
	notch := d.notchHalf()
	n.That(notch <= d.half-1, "bar_width", fab.MM(d.barW), "at most %.4g mm, so that its notch stays in the opening", 2*(d.half-1-d.notchGap))
	if flat := d.half - d.archR - notch; flat > 0 && flat < 1 {
		n.That(false, "arch_radius", fab.MM(d.archR)+", which leaves "+fab.MM(flat)+" of flat crown beside the notch", "at most %.4g mm, or at least %.4g mm", d.half-notch-1, d.half-notch)
	}
	side := d.notchSide() - d.crownAt(notch)
	if d.round {
		n.That(side >= 1, "bar_width", fab.MM(d.barW), "at least %.4g mm, so that half of the round bar is in its notch", 2*(d.crownAt(notch)+1-d.crossZ))
		return
	}
	n.That(side >= 4*d.barWeld, "bar_height", fab.MM(d.barH), "at least %.4g mm, so that the notch is 4 weld legs deep", d.crownAt(notch)+4*d.barWeld-d.crossZ-d.notchGap)
}

// checkHead keeps steel over the opening and round the pin, and room for the body's lug over the bar.
func (d *design) checkHead(n *fab.Needs) {
	d.lug.Check(n)
	low := d.crossZ + d.barH + d.lug.RadiusMM + fab.PaintGapMM
	n.That(d.pinZ >= low, "pin_height", fab.MM(d.pinZ), "at least %.4g mm, so that the lug swings clear of the bar", low)
	low = d.notchTop() + d.barWeld + fab.Ligament(d.lug.PinMM) + d.lug.HoleMM/2
	n.That(d.pinZ >= low, "pin_height", fab.MM(d.pinZ), "at least %.4g mm, so that steel is left between hole and the bar's weld", low)
	n.That(d.headR <= d.outer, "head_radius", fab.MM(d.headR), "at most half the width over the legs, %.4g mm", d.outer)
	spring := d.openZ - d.archR
	n.That(d.shoulder >= spring, "shoulder_height", fab.MM(d.shoulder), "at least %.4g mm, where the opening's arcs begin", spring)
	high := d.top() - d.headR - 1
	n.That(d.shoulder <= high, "shoulder_height", fab.MM(d.shoulder), "at most %.4g mm, so that the sides rise to the head", high)
	n.That(d.shoulderR <= d.shoulder-1, "shoulder_radius", fab.MM(d.shoulderR), "at most %.4g mm, so that the legs' sides begin straight", d.shoulder-1)
	if n.Err() != nil {
		return
	}
	if _, err := d.head().Outline(); !n.That(err == nil, "head_radius", fab.MM(d.headR), "a radius to which the sides can run tangent") {
		return
	}
	loop, err := d.outline()
	if !n.That(err == nil, "shoulder_radius", fab.MM(d.shoulderR), "a smaller radius, for which the sides have room; 0 for sharp") {
		return
	}
	least := d.lug.HoleMM/2 + fab.Ligament(d.lug.PinMM)
	have := 0.0
	if at := (shape.Point{Y: d.pinZ}); loop.Contains(at) {
		have = loop.DistTo(at)
	}
	n.That(have >= least-shape.TouchMM, "end_distance", fab.MM(d.end)+" and this head leave "+fab.MM(max(0, have-d.lug.HoleMM/2))+" beside the pin hole", "more, so that %.4g mm is left", fab.Ligament(d.lug.PinMM))
	thin := d.thinnest(loop)
	n.That(thin >= d.leg-shape.TouchMM, "shoulder_height", fab.MM(d.shoulder)+", where the steel over the opening is "+fab.MM(thin),
		"higher, or a wider or higher head, so that it is nowhere thinner than a leg, %.4g mm", d.leg)
}

func (d *design) checkBar(n *fab.Needs) {
	n.That(d.barPast >= d.barWeld, "bar_past", fab.MM(d.barPast), "at least the fillet that stands there, %.4g mm", d.barWeld)
	gap := fab.TorchGapMM + 2*d.footWeld
	n.That(2*d.lug.Inner() >= gap, "lug_thickness", fab.MM(2*d.lug.Inner())+" between the plates", "at least %.4g mm between them (lug_thickness + 2 gap), so that a torch reaches the inner fillets", gap)
}

func (d *design) checkShares(n *fab.Needs) {
	low, high := d.v.Ratio("stiffness_ratio_low"), d.v.Ratio("stiffness_ratio_high")
	n.That(low <= high, "stiffness_ratio_low", format(low), "at most stiffness_ratio_high, %.4g", high)
	low, high = d.v.Ratio("feet_hold_low"), d.v.Ratio("feet_hold_high")
	n.That(low <= high, "feet_hold_low", format(low), "at most feet_hold_high, %.4g", high)
}
