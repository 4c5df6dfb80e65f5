package foot

// Sizes, and what does not fit.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v         geometry.Values
	angle     fab.WebAngle
	rail      fab.Rail
	top       float64 // depth of the rail's upper face under the upper face of leg A
	seat      fab.OnLeg
	seatBolts fab.Bolting
	seatXs    []float64
	lapped    bool
}

func read(v geometry.Values) *design {
	d := &design{v: v, angle: fab.ReadWebAngle(v, fab.ReadBolts(v), v.Word("foot_material")), rail: fab.ReadRail(v), lapped: v.Word("lap") == "fitted"}
	d.angle.Stiff.Material = v.Word("gusset_material")
	d.angle.Over = v.Word("leg") == "over the subframe"
	if v.Word("form") == "bent plate" {
		d.angle.Bent, d.angle.Root, d.angle.K = true, v.MM("inside_radius"), v.Ratio("k_factor")
		d.angle.Stiff.Snipe = fab.Snipe(d.angle.Root, v.MM("snipe_clearance"))
	}
	d.top = -v.MM("heel_below")
	if d.angle.Over {
		d.top = d.angle.T + v.MM("subframe_height")
	}
	d.readTouch()
	d.readSeat()
	return d
}

// readTouch says where the foot lies on the web: from where both are flat, down to the leg's end or the lap's.
func (d *design) readTouch() {
	a := &d.angle
	flat, end := d.rail.FlatMM()
	if a.From = max(0, d.top+flat); a.Bent {
		a.From = max(a.From, a.T+a.Root) // the fold's round
	}
	if d.lapped {
		a.To, a.HalfMM = d.top+end, d.v.MM("lap_width")/2
	}
}

func (d *design) readSeat() {
	v, a := d.v, &d.angle
	d.seatBolts = a.Bolts
	d.seatBolts.Size = v.Word("seat_bolt_size")
	d.seatBolts.DiaMM, d.seatBolts.HoleMM = fab.Clearance(d.seatBolts.Size, part.Fit(v.Word("bolt_fit")))
	d.seat = fab.OnLeg{Word: "subframe", Mid: v.MM("seat_offset"), Wide: v.MM("seat_length")}
	if n := v.Count("seat_bolts"); n > 0 {
		d.seatXs = fab.Spread(n, v.MM("seat_pitch"))
		d.seat.Wide = 2 * (d.seatXs[n-1] + d.seatBolts.DiaMM) // a washer's width at each end
	}
	for i, x := range d.seatXs {
		d.angle.LegA = append(d.angle.LegA, fab.BoltHole(fmt.Sprintf("seat-%d", i+1), shape.Point{X: x, Y: d.seatOut()}, d.seatBolts.HoleMM, part.AsCut))
	}
}

// seatOut is how far the subframe's hold is from the back of the bolted leg.
func (d *design) seatOut() float64 {
	if d.angle.Over {
		return d.angle.T + d.seat.Mid
	}
	return d.seat.Mid
}

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	for _, step := range []func(*fab.Needs){d.checkForm, d.checkSeat, d.checkWeb, d.checkLap} {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

func (d *design) checkForm(n *fab.Needs) {
	a := &d.angle
	n.ThatHole(a.Bolts.HoleMM, "bolt_size", a.Bolts.Size)
	n.ThatHole(d.seatBolts.HoleMM, "seat_bolt_size", d.seatBolts.Size)
	a.CheckLegs(n)
	if !a.Over {
		return
	}
	n.That(len(a.Stiff.Xs) == 0, "stiffener_count", fmt.Sprint(len(a.Stiff.Xs)), "0 with a leg over the subframe, which fills the corner")
	corner := d.v.MM("subframe_corner")
	n.That(corner >= a.Root, "subframe_corner", fab.MM(corner), "at least the foot's inner radius, %.4g mm, so that the subframe lies in the corner", a.Root)
}

// checkSeat keeps the subframe's hold on its leg, out of the corner and clear of the stiffeners.
func (d *design) checkSeat(n *fab.Needs) {
	a, offset, out := &d.angle, fab.MM(d.seat.Mid), d.seatOut()
	if len(d.seatXs) == 0 {
		n.That(d.seat.Wide <= a.Length, "seat_length", fab.MM(d.seat.Wide), "at most angle_length, %.4g mm", a.Length)
		n.That(out > a.T+a.Root && out < a.Out, "seat_offset", offset, "between %.4g and %.4g mm, on the leg", d.seat.Mid-out+a.T+a.Root, d.seat.Mid-out+a.Out)
		return
	}
	dia := d.seatBolts.DiaMM
	edge, room := fab.BoltEdge(dia), a.HoleRoom(d.seatBolts)
	n.That(out >= room, "seat_offset", offset, "at least %.4g mm, so that washer and socket pass the corner", d.seat.Mid-out+room)
	n.That(out <= a.Out-edge, "seat_offset", offset, "at most %.4g mm: 1.25 d to the leg's tip", d.seat.Mid-out+a.Out-edge)
	last := d.seatXs[len(d.seatXs)-1]
	blame := "seat_bolt_size"
	if len(d.seatXs) > 1 {
		blame = "seat_pitch"
		n.ThatPitch(len(d.seatXs), d.v.MM(blame), dia, blame)
	}
	n.That(a.Length/2-last >= edge, blame, fmt.Sprintf("a bolt %s from the foot's end", fab.MM(a.Length/2-last)), "at least 1.25 d = %.4g mm", edge)
	least := fab.SocketRoom(dia, a.Stiff.Weld)
	for _, x := range d.seatXs {
		for _, s := range a.Stiff.Xs {
			if have := math.Abs(x-s) - a.Stiff.T/2; have < least && out < a.T+a.Stiff.Reach+least {
				n.That(false, "seat_pitch", fmt.Sprintf("a stiffener %s from the subframe's bolt at x = %s", fab.MM(max(have, 0)), fab.MM(x)), "at least %.4g mm from bolt centre to stiffener, for washer and socket", least)
				return
			}
		}
	}
}

// checkWeb keeps bolts and contact on the web, by the frame's rules.
func (d *design) checkWeb(n *fab.Needs) {
	a := &d.angle
	a.CheckBolts(n, d.seat)
	a.CheckStiffeners(n)
	depths := make([]float64, len(a.Rows))
	for i, row := range a.Rows {
		depths[i] = row - d.top
	}
	d.rail.CheckHoles(n, a.Bolts, depths, a.Xs)
	upper := "heel_below"
	if a.Over {
		upper = "leg" // which passes the rail's edge on its way up
	}
	d.rail.CheckTouch(n, max(0, -d.top), a.Down-d.top, upper, "angle_down")
	n.That(a.From < a.Rows[0], "bolt_first", fab.MM(a.Rows[0]), "below %.4g mm, where foot and web begin to lie flat on each other", a.From)
}

// leastPackerMM is the lower end of packer_height.
const leastPackerMM = 15

// checkLap: overlap and run as for any lap, at least 5 t of the thinner part, 25 mm and 4 legs: AISC 360-16 J2.2b, from memory.
func (d *design) checkLap(n *fab.Needs) {
	v, a := d.v, &d.angle
	if !d.lapped {
		return
	}
	t, over, weld, packer := v.MM("lap_thickness"), v.MM("lap_overlap"), v.MM("lap_weld"), v.MM("packer_height")
	n.That(!a.Bent, "lap", "fitted under a bent plate", "none: its own leg reaches down as far as wanted")
	least := max(5*min(t, a.T), 25, 4*weld)
	n.That(over >= least, "lap_overlap", fab.MM(over), "at least %.4g mm: 5 times the thinner part, 25 mm and a weld of 4 legs", least)
	room := a.Down - a.Last() - fab.SocketRoom(a.Bolts.DiaMM, weld)
	n.That(over <= room, "lap_overlap", fab.MM(over), "at most %.4g mm, so that washers and sockets pass: a longer leg, higher bolts, or no lap", max(0, room))
	if len(a.Stiff.Xs) > 0 {
		deep := a.Down - over - weld - a.T
		n.That(a.Stiff.Depth <= deep, "stiffener_depth", fab.MM(a.Stiff.Depth), "at most %.4g mm, clear of the lap's weld", max(0, deep))
	}
	if most := a.To - a.Down - fab.PaintGapMM; most < leastPackerMM {
		n.That(false, "lap", fmt.Sprintf("a leg whose end is %.4g mm above the end of the web's flat side, where no packer fits", a.To-a.Down),
			"none, a shorter angle_down or a deeper rail: the least packer_height, %d mm, and %d mm for paint", leastPackerMM, fab.PaintGapMM)
	} else {
		n.That(packer <= most, "packer_height", fab.MM(packer), "at most %.4g mm, between the leg's end and the end of the web's flat side: a deeper rail, a shorter leg, or no lap", most)
	}
	n.That(2*(a.HalfMM+weld) <= a.Length, "lap_width", fab.MM(2*a.HalfMM), "at most %.4g mm, so that its fillets lie on the leg", a.Length-2*weld)
	near := math.Abs(a.Xs[len(a.Xs)/2])
	n.That(near <= a.HalfMM, "lap_width", fab.MM(2*a.HalfMM), "at least %.4g mm, so that a bolt stands over the lap", 2*near)
}
