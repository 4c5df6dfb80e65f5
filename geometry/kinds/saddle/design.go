package saddle

// Sizes, and what does not fit.

import (
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// collarPlayMM is the bore of a collar over the tube, so that it slides on. Common practice, no source.
const collarPlayMM = 0.5

// linerPerPlay is how thick a liner is at least beside the play that it makes up.
const linerPerPlay = 4

type design struct {
	v                                      geometry.Values
	tube, wall, liner, allowance, gap      float64
	bore                                   float64 // radius
	t, height, foot, leg                   float64 // side plates
	ys                                     []float64
	offset                                 float64
	earT, earW, earLeg                     float64
	depth, corner                          float64 // cap plates
	capBolts                               fab.Bolting
	capXs                                  []float64 // from the middle of the ear
	capOut, capEdge                        float64
	collarT, collarD, collarGap, collarLeg float64
	baseT, baseL, baseW, baseR             float64
	bolts                                  fab.Bolting
	xs, rows                               []float64
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, tube: v.MM("tube_diameter"), wall: v.MM("tube_wall"), liner: v.MM("liner"), allowance: v.MM("bore_allowance"), gap: v.MM("clamp_gap"),
		t: v.MM("side_thickness"), height: v.MM("axis_height"), foot: v.MM("foot_width"), leg: v.MM("side_weld"),
		ys: fab.Spread(v.Count("side_plates"), v.MM("side_spacing")), offset: v.MM("load_offset"),
		earT: v.MM("ear_thickness"), earW: v.MM("ear_width"), earLeg: v.MM("ear_weld"), depth: v.MM("cap_depth"), corner: v.MM("cap_corner"),
		capXs: fab.Spread(v.Count("cap_bolts"), v.MM("cap_bolt_pitch")), capOut: v.MM("cap_bolt_out"), capEdge: v.MM("cap_bolt_edge"),
		collarT: v.MM("collar_thickness"), collarD: v.MM("collar_diameter"), collarGap: v.MM("collar_gap"), collarLeg: v.MM("collar_weld"),
		baseT: v.MM("base_thickness"), baseL: v.MM("base_length"), baseW: v.MM("base_width"), baseR: v.MM("base_corner_radius"),
		xs: fab.Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), rows: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
	}
	d.bore = d.tube/2 + d.liner + d.allowance
	d.bolts = fab.ReadBolts(v)
	d.capBolts = fab.Bolting{Size: v.Word("cap_bolt_size"), Grade: v.Word("cap_bolt_grade"), ThreadsIn: d.bolts.ThreadsIn}
	d.capBolts.DiaMM, d.capBolts.HoleMM = fab.Clearance(d.capBolts.Size, part.Fit(v.Word("bolt_fit")))
	return d
}

// half is half of the split: what the ear and half of the gap keep the arced plates off the tube's axis.
func (d *design) half() float64 { return d.gap/2 + d.earT }

// top is where the side plates end under their ears, low where the cap plates begin on theirs.
func (d *design) top() float64 { return d.height - d.half() }
func (d *design) low() float64 { return d.height + d.half() }

// lip is where the arc ends, from the tube's axis.
func (d *design) lip() float64 { return math.Sqrt(max(d.bore*d.bore-d.half()*d.half(), 0)) }

// wrap is the angle of the arc.
func (d *design) wrap() float64 { return 2 * math.Acos(min(d.half()/d.bore, 1)) }

// earIn is the ears' edge beside the tube, clear of the bore and of the collars; earMid their middle; earOut the outer edge, where the side plates end
// too.
func (d *design) earIn() float64 {
	if d.collarT > 0 {
		return max(d.bore, d.collarD/2+fab.PaintGapMM)
	}
	return d.bore
}
func (d *design) earMid() float64 { return d.earIn() + d.earW/2 }
func (d *design) earOut() float64 { return d.earIn() + d.earW }

// outer is the outer face of the side plates, boltY the cap bolts and earEnd the ears' ends, along the tube.
func (d *design) outer() float64  { return d.ys[len(d.ys)-1] + d.t/2 }
func (d *design) boltY() float64  { return d.outer() + d.capOut }
func (d *design) earEnd() float64 { return d.boltY() + d.capEdge }

// collarY is the middle of the collar beyond the outer face.
func (d *design) collarY() float64 { return d.outer() + d.collarGap + d.collarT/2 }

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	for _, step := range []func(*fab.Needs){d.checkBore, d.checkSides, d.checkCap, d.checkCollars, d.checkBase} {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

func (d *design) checkBore(n *fab.Needs) {
	n.That(d.wall <= d.tube/4, "tube_wall", fab.MM(d.wall), "at most a quarter of the diameter, %.4g mm", d.tube/4)
	// Over a quarter of the liner (common practice, no source) or without one a wider bore leaves the tube a line of contact, not the arc that is checked.
	fit := d.liner / linerPerPlay
	n.That(d.allowance <= fit+shape.TouchMM, "bore_allowance", fab.MM(d.allowance), "at most a quarter of liner, %.4g mm (0 without one, a fitted bore), so that the tube bears on the arc", fit)
	// Where the paint is crushed or missing the cap comes nearer by the allowance of both halves.
	n.That(d.gap > 2*d.allowance, "clamp_gap", fab.MM(d.gap), "over %.4g mm, twice bore_allowance, so that it is still open when the bore bears", 2*d.allowance)
	most := d.bore/math.Sqrt2 - d.gap/2
	n.That(d.earT <= most, "ear_thickness", fab.MM(d.earT), "at most %.4g mm, so that the bore reaches round a quarter of the tube", most)
}

func (d *design) checkSides(n *fab.Needs) {
	v, two := d.v, len(d.ys) == 2
	spacing := v.MM("side_spacing")
	room := d.t + fab.TorchGapMM + 2*max(d.leg, d.earLeg)
	n.That(!two || spacing >= room, "side_spacing", fab.MM(spacing), "at least %.4g mm, so that a torch passes between the side plates", room)
	n.That(two || d.offset <= d.t/2, "load_offset", fab.MM(d.offset), "at most half of side_thickness, %.4g mm, with one side plate, which holds no couple along the tube", d.t/2)
	n.That(!two || d.offset <= spacing/2, "load_offset", fab.MM(d.offset), "at most half of side_spacing, %.4g mm", spacing/2)
	low := d.baseT + d.bore + max(15, 2*d.leg)
	n.That(d.height >= low, "axis_height", fab.MM(d.height), "at least %.4g mm: base plate, some plate under the bore and the bore", low)
	n.That(d.foot >= 4*d.leg, "foot_width", fab.MM(d.foot), "at least 4 legs of side_weld, %.4g mm", 4*d.leg)
	if n.Err() != nil {
		return
	}
	// The slanting edge from the foot to the ear leaves steel beside the bore.
	a, b := shape.Point{X: d.foot / 2, Y: d.baseT}, shape.Point{X: d.earOut(), Y: d.top()}
	beside := shape.Edge{A: a, B: b}.DistTo(shape.Point{Y: d.height}) - d.bore
	n.That(beside >= d.earW/2, "foot_width", fab.MM(d.foot)+", which leaves "+fab.MM(beside)+" beside the bore", "more, so that half of ear_width, %.4g mm, is left", d.earW/2)
}

func (d *design) checkCap(n *fab.Needs) {
	dia := d.capBolts.DiaMM
	n.ThatHole(d.capBolts.HoleMM, "cap_bolt_size", d.capBolts.Size)
	edge, last := fab.BoltEdge(dia), d.capXs[len(d.capXs)-1]
	n.ThatPitch(len(d.capXs), d.v.MM("cap_bolt_pitch"), dia, "cap_bolt_pitch")
	n.That(d.earW/2-last >= edge, "ear_width", fab.MM(d.earW), "at least %.4g mm: the cap bolts and 1.25 d to either edge", 2*(last+edge))
	n.That(d.earW >= 4*d.earLeg, "ear_weld", fab.MM(d.earLeg), "at most a quarter of ear_width, %.4g mm", d.earW/4)
	n.That(d.capEdge >= edge, "cap_bolt_edge", fab.MM(d.capEdge), "at least 1.25 d = %.4g mm", edge)
	room := fab.SocketRoom(dia, d.earLeg)
	n.That(d.capOut >= room, "cap_bolt_out", fab.MM(d.capOut), "at least %.4g mm, so that a socket passes the weld", room)
	under := d.baseT + nutRoomPerDia*dia
	n.That(d.top() >= under, "axis_height", fab.MM(d.height), "at least %.4g mm, so that nuts go on under the ears", under+d.half())
	high := d.bore + d.depth - d.half()
	n.That(d.corner == 0 || d.corner >= 1, "cap_corner", fab.MM(d.corner), "0, or at least 1 mm")
	// At 45 degrees the cap plate is as deep as over the tube, and some of its sides stays.
	most := min(d.earOut()+d.bore+d.depth-math.Sqrt2*(d.bore+d.depth), high-max(5, 2*d.earLeg), d.earOut()-5)
	n.That(d.corner == 0 || d.corner <= most, "cap_corner", fab.MM(d.corner), "at most %.4g mm, so that the cap is nowhere thinner than cap_depth; 0 for none", max(most, 0))
}

// nutRoomPerDia is the clear height under an ear for a nut, the bolt's end and a spanner, as a multiple of the bolt. Common practice, no source.
const nutRoomPerDia = 2.5

func (d *design) checkCollars(n *fab.Needs) {
	if d.collarT == 0 {
		return
	}
	n.That(d.collarT >= 3, "collar_thickness", fab.MM(d.collarT), "at least 3 mm; 0 for none")
	least := 2*d.bore + 10
	n.That(d.collarD >= least, "collar_diameter", fab.MM(d.collarD), "at least %.4g mm, so that the side plate bears on it past the bore", least)
	most := 2 * (d.height - d.baseT - fab.PaintGapMM)
	n.That(d.collarD <= most, "collar_diameter", fab.MM(d.collarD), "at most %.4g mm, clear of the base plate", most)
	leg := (d.collarD-d.tube-collarPlayMM)/2 - 1
	n.That(d.collarLeg <= leg, "collar_weld", fab.MM(d.collarLeg), "at most %.4g mm, so that the fillet stays on the collar", leg)
}
