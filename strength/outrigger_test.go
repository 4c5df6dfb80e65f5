package strength_test

// The outrigger: two plates under a head plate, or open with a pin, by statics. Sizes by default: base plate 20, plates 12 thick and 150 high at their roots,
// 132 middle to middle, upper edges 75 over the middle; head plate 16, its welds from 100 to 230; load 170 out and 40 over it.

import (
	"math"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

const (
	pairArm, pairSpacing, pairTop, pairUp = 150.0, 132.0, 75.0, 131.0
	pairE                                 = 29000 * 6.894757
)

func pairOf(t *testing.T, hold float64, more ...part.Param) *part.Bracket {
	t.Helper()
	return kindOf(t, "outrigger", with([]part.Param{mm("load_offset", 0), mm("hold_low", hold), mm("hold_high", hold)}, more...)...)
}

// 4 kN rearward with hinges under the head plate: two cantilevers, each bent by 2 kN x 150 and twisted by 2 kN x 75 at its root; 4 kN x 56 over the upper
// edges is held by push and pull of 4 x 56/132 kN, up and down, which bends each edgewise. At a root two fillets of 150 at 6 on either side have 562500 mm3
// about the middle of their length, 300 x 36 about the plate's, and both together against twist.
func TestOutriggerAlongTheRail(t *testing.T) {
	const F = 4000.0
	r := run(t, pairOf(t, 0), strength.Options{Method: strength.ASD}, service("rearward", part.Vec{X: F}))
	push := F * (pairUp - pairTop) / pairSpacing
	for _, p := range []string{"plate-front", "plate-rear"} {
		weak := weakAt(t, r, p)
		within(t, p+" bent flat", weak.Demand, F/2*pairArm, 1e-4)
		within(t, "capacity", weak.Capacity, 355*150*12*12/4/1.67, 1e-4)
		within(t, p+" on edge", place(t, r, "edgewise-bending", p+" (").Demand, push*pairArm, 1e-4)
		// The most of shear and twist is by the head plate, where a plate is 108.75 high.
		within(t, p+" sheared and twisted", place(t, r, "section-shear", p+" (").Demand, math.Hypot(F/2, push)/(108.75*12)+F/2*108.75/2/(108.75*12*12/(3+1.8*12/108.75)), 0.01)
		most := 0.0
		for _, at := range [4][2]float64{{6, 75}, {6, -75}, {-6, 75}, {-6, -75}} { // y and z of a fillet's end; the front plate is pulled up
			polar := 562500 + 300*36.0
			twist := F / 2 * pairTop
			q := part.Vec{
				X: F/2*pairArm*at[0]/(300*36) + push*pairArm*at[1]/562500,
				Y: F/2/300 + twist*at[1]/polar, Z: push/300 - twist*at[0]/polar,
			}
			most = max(most, q.Norm())
		}
		within(t, p+" weld", place(t, r, "fillet-strength", "weld w-"+p).Demand, most, 1e-6)
	}
}

// With its outer ends held, and roots that hold nothing, the front plate is pulled out by 4 kN x 150/132 and up by 4 kN x 131/132, the rear one pushed in and
// down; neither root is bent flat. Held by the head plate its welds bring all of that; held by the end tie they bring half of the push and what stands over
// the upper edges, and the tie's welds the rest.
func TestOutriggerFrame(t *testing.T) {
	const F = 4000.0
	pull, lift := F*pairArm/pairSpacing, F*pairUp/pairSpacing
	front := part.Vec{X: F / 2, Y: pull, Z: lift}
	b := pairOf(t, 1)
	got := carry(t, b, part.Vec{X: F}, false, "w-head-plate-front", "w-head-plate-rear", "w-plate-front")
	near(t, "front", got[0].Force.Sub(front).Norm(), 0)
	near(t, "rear", got[1].Force.Sub(part.Vec{X: F / 2, Y: -pull, Z: -lift}).Norm(), 0)
	near(t, "flat at the root", about(got[2], part.Vec{X: -pairSpacing / 2, Y: 20}).Z, 0)
	near(t, "twist at the root", about(got[2], part.Vec{X: -pairSpacing / 2, Y: 20}).Y, 0)
	r := run(t, b, strength.Options{Method: strength.ASD}, service("rearward", part.Vec{X: F}))
	// 12 under the upper edge: from 93.07 to the outer end 230 works, by 30 degrees from 130 about 165. It is bent by 2 kN x (75 - 12), and by the couple in plan,
	// 2 kN x 150 less 8.46 from the load to its middle, as forces along the edge: 6 T x 12/b.
	wide, middle := 230-165+65+12/math.Sqrt(3), (230+165-65-12/math.Sqrt(3))/2
	within(t, "edge under the head plate", weakAt(t, r, "plate-front under").Demand, F/2*(pairTop-12)+6*F/2*(pairArm-170+middle)*12/wide, 1e-3)
	// Its weld, 165 out: two runs of 130 at 6. In plan 2 kN x 145 about its middle, by 2 (130^3/12 + 130 x 36); at the edge 2 kN x 75, by 2 x 130 x 36; on edge
	// the push over the upper edges, which comes in 5 farther out, by 2 x 130^3/12.
	edge, flat := 2*130*130*130/12., 2*130*36.
	over, most := F*(pairUp-pairTop)/pairSpacing, 0.0
	for _, at := range [4][2]float64{{6, 65}, {6, -65}, {-6, 65}, {-6, -65}} { // x and y from its middle
		most = max(most, part.Vec{
			X: F/2/260 - F/2*145*at[1]/(edge+flat), Y: pull/260 + F/2*145*at[0]/(edge+flat), Z: lift/260 + F/2*pairTop*at[0]/flat + over*5*at[1]/edge,
		}.Norm())
	}
	within(t, "head plate's weld", place(t, r, "fillet-strength", "weld w-head-plate-front").Demand, most, 1e-6)

	tied := pairOf(t, 1, mm("end_thickness", 12))
	got = carry(t, tied, part.Vec{X: F}, false, "w-head-plate-front", "w-end-plate-front", "w-end-plate-rear", "w-plate-front", "w-plate-rear")
	near(t, "head plate's weld", got[0].Force.Sub(part.Vec{X: F / 2, Z: over}).Norm(), 0)
	near(t, "tie to the rear", got[1].Force.Sub(part.Vec{Y: -pull, Z: over - lift}).Norm(), 0)
	near(t, "as much at both ends", got[2].Force.Sub(got[1].Force).Norm(), 0)
	near(t, "front root", got[3].Force.Sub(front).Norm(), 0)
	near(t, "rear root, flat", about(got[4], part.Vec{X: pairSpacing / 2, Y: 20}).Z, 0)
}

// 10 kN down, 20 off the middle, is 0.5 + 20/132 of it on one plate, bent on edge by 150 times that. The plate buckles sideways as one of (150 + 90) 150/90 =
// 400 mm: AISC F11 with L d/t^2 = 416.7. In the middle of the head plate the load bends 90 mm of it by F/2 x 66.
func TestOutriggerDown(t *testing.T) {
	const F = 10000.0
	r := run(t, pairOf(t, 0, mm("load_offset", 20)), strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -F}))
	k := place(t, r, "edgewise-bending", "plate-rear (")
	within(t, "plate", k.Demand, F*(0.5+20/pairSpacing)*pairArm, 1e-4)
	within(t, "capacity", k.Capacity, (1.52-0.274*400*150/144*355/pairE)*355*12*150*150/6/1.67, 1e-4)
	r = run(t, pairOf(t, 0), strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -F}))
	head := weakAt(t, r, "head to plate-front")
	within(t, "head plate", head.Demand, F/2*pairSpacing/2, 1e-4)
	within(t, "capacity", head.Capacity, 355*90*16*16/4/1.67, 1e-4)
	within(t, "root weld", place(t, r, "fillet-strength", "weld w-plate-rear").Demand, math.Hypot(F/2/300, F/2*pairArm*75/562500), 1e-4)
}

// A couple of 1 kN m about the axis away from the web is no twist of a box: the plates hold it by 1000/132 kN up and down, each bent on edge.
func TestOutriggerTwisted(t *testing.T) {
	twist := service("twist", part.Vec{})
	twist.Moment = part.Vec{Y: 1e6}
	r := run(t, pairOf(t, 0), strength.Options{Method: strength.ASD}, twist)
	within(t, "plate", place(t, r, "edgewise-bending", "plate-front (").Demand, 1e6/pairSpacing*pairArm, 1e-4)
}

// Whatever holds the plates' ends, what comes to the web is the load.
func TestOutriggerBalances(t *testing.T) {
	for _, more := range [][]part.Param{{}, {mm("end_thickness", 12)}, {mm("load_offset", 30)}, {mm("end_thickness", 12), mm("load_offset", 30)}} {
		for _, hold := range []float64{0, 0.4, 1} {
			b := pairOf(t, hold, more...)
			c := service("all", part.Vec{X: 3000, Y: -2000, Z: 5000})
			c.Moment = part.Vec{X: 1e5, Y: -2e5, Z: 3e5}
			for _, high := range []bool{false, true} {
				got, err := strength.Carry(b, c, high, "support")
				if err != nil {
					t.Fatal(err)
				}
				at := part.Vec{Y: 170, Z: pairUp}
				moment := about(got[0], at)
				for _, p := range more { // all of the force is off the middle, to one side
					if p.Name == "load_offset" {
						side := -p.Number // front
						if !high {
							side = p.Number
						}
						moment = about(got[0], at.Add(part.Vec{X: side}))
					}
				}
				near(t, "force", got[0].Force.Sub(c.Force).Norm(), 0)
				near(t, "moment", moment.Sub(c.Moment).Norm(), 0)
			}
		}
	}
}

// Open plates, the pin 170 out: 3 kN along it is on one plate alone, bent by 3 kN x 150; a nut may pull the other along, and no more.
func TestOutriggerOnAPin(t *testing.T) {
	side := service("side", part.Vec{X: 3000})
	r := run(t, kindOf(t, "outrigger", word("mount", "pin"), word("pin_ends", "keeper")), strength.Options{Method: strength.ASD}, side)
	within(t, "rear plate", weakAt(t, r, "plate-rear").Demand, 3000*pairArm, 1e-4)
	near(t, "front plate", weakAt(t, r, "plate-front").Demand, 0)
	r = run(t, kindOf(t, "outrigger", word("mount", "pin")), strength.Options{Method: strength.ASD}, side)
	within(t, "rear plate, tied", weakAt(t, r, "plate-rear").Demand, 3000*pairArm, 1e-4)
	within(t, "front plate, tied", weakAt(t, r, "plate-front").Demand, 1500*pairArm, 1e-4)
}
