// Package en1993 is the design basis EN 1993-1-8:2005 with EN 1993-1-1:2005, partial factors: the limit states of a body mount, each
// in one function that reads beside its clause. It never knows a bracket kind, and it never decides what a bracket's loads are.
//
//	card.go      the document, its partial factors, which limit state serves which feature
//	pin.go       pins and the plates that they bear in: 3.13
//	bolt.go      bolts in shear, tension and both; punching; slip: 3.6 and 3.9
//	bearing.go   bearing of bolts, groups, edge distances: 3.5 to 3.7
//	tear.go      block tearing, net section, shear of a plate: 3.10.2; EN 1993-1-1, 6.2.3 and 6.2.6
//	tstub.go     bolts in tension with prying: 6.2.4
//	weld.go      fillet welds: 4.5 to 4.11
//	weldthrough.go full-penetration butt welds, plugs: 4.3.5, 4.7.1, 4.8
//	group.go     bolt and weld groups by elastic theory, partial penetration: 3.12, 4.7, 4.9
//	section.go   bending, axial force and shear at a cut: EN 1993-1-1, 6.2 and 6.3
//	rod.go       threaded rods that hang a tray
//	saddle.go    a tube's wall under a saddle and under a bolt's clamp
//	twist.go     open sections twisted about their shear centre
//	combined.go  bending about both axes with axial force and shear, from utilisations
//	plate.go     free edges, corner plates, a support's wall, plates on a bed
//
// The tensile strength f_u is the product standard's (EN 10025-2: S275 410 MPa, S355 470 MPa), which the grade gives; Table 3.1 of
// EN 1993-1-1 prints 430 and 490 or 510.
package en1993

import (
	"slices"

	"lugwright/strength"
	"lugwright/strength/practice"
)

const (
	joints  = "EN 1993-1-8"
	members = "EN 1993-1-1"
	edition = "2005"

	e210 = 210000 // MPa, EN 1993-1-1, 3.2.6
	g81  = 81000  // MPa, the same
)

// joint is a clause of EN 1993-1-8, member one of EN 1993-1-1.
func joint(section, words string) strength.Clause {
	return strength.Clause{Document: joints, Edition: edition, Section: section, Words: words}
}

func member(section, words string) strength.Clause {
	return strength.Clause{Document: members, Edition: edition, Section: section, Words: words}
}

var basis = build()

// Basis gives the basis; it is shared and never changes.
func Basis() *strength.Basis { return basis }

func build() *strength.Basis {
	return &strength.Basis{
		Card: strength.Card{
			Name: "EN 1993-1-8:2005", Document: joints + " with " + members, Edition: edition,
			Methods:       []strength.Method{strength.PartialFactors},
			ServiceFactor: map[strength.Method]float64{strength.PartialFactors: 1.5},
			FactorSource:  "1.5, the factor of EN 1990 for a variable action, taken for the whole of a service load; from memory; set load_factor to change it",
			Factors:       factors,
			Listing:       "EN 1993-1",
		},
		Limits: slices.Concat(
			pinLimits, boltLimits, bearingLimits, tearLimits, tstubLimits, weldLimits, throughLimits, groupLimits, sectionLimits, plateLimits,
			rodLimits, []strength.Evaluator{saddleRing, contactBearing, tubeClamp, openTwist, memberInteraction},
			practice.Limits,
		),
		Rules: strength.Rules{
			PinPlane:    pinPlaneRules,
			PinSpan:     pinSpanRules,
			Bore:        boreRules,
			Eye:         eyeRules,
			Cut:         cutRules,
			WeldLine:    weldRules,
			WeldSize:    weldSizeRules,
			WeldFlow:    flowRules,
			CJPLine:     cjpRules,
			CJPFlow:     cjpFlowRules,
			PlugLine:    plugRules,
			Bolt:        boltRules,
			BoltSet:     practice.BoltSetRules(boltRules[1]),
			Preloaded:   practice.PreloadRules,
			Slip:        slipRules,
			Thread:      practice.ThreadRules,
			BoltBearing: bearingRules,
			Block:       blockRules,
			Prying:      pryingRules,
			Outstand:    outstandRules,
			CornerPlate: cornerPlateRules,
			Wall:        wallRules,
			Rod:         rodRules,
			Seat:        seatRules,
			PullThrough: pullThroughRules,
			Bush:        practice.BushRules,
			WeldRun:     weldRun,
		},
	}
}

// factors are the recommended values; the national sets are from memory.
var factors = []strength.Factor{
	factor("gamma_M0", "partial factor of sections and plates in yielding, EN 1993-1-1, 6.1", 1.00, 1.00, 1.00),
	factor("gamma_M1", "partial factor of members in buckling, EN 1993-1-1, 6.1", 1.00, 1.00, 1.10),
	factor("gamma_M2_net", "partial factor of net sections in tension, EN 1993-1-1, 6.1", 1.25, 1.10, 1.25),
	factor("gamma_M2", "partial factor of bolts, pins, welds and plates in bearing, EN 1993-1-8, 2.2", 1.25, 1.25, 1.25),
	factor("gamma_M3", "partial factor of slip, ultimate, EN 1993-1-8, 2.2", 1.25, 1.25, 1.25),
	factor("gamma_M3_ser", "partial factor of slip, serviceability, EN 1993-1-8, 2.2", 1.10, 1.10, 1.10),
	factor("gamma_M6_ser", "partial factor of replaceable pins, serviceability, EN 1993-1-8, 2.2", 1.00, 1.00, 1.00),
}

func factor(symbol, words string, recommended, uk, de float64) strength.Factor {
	return strength.Factor{
		Symbol: symbol, Words: words, Default: recommended, Min: 1, Max: 2,
		Sets: []strength.FactorSet{{Name: "UK", Value: uk}, {Name: "Germany", Value: de}},
	}
}
