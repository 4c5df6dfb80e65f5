// Package aisc360 is the design basis AISC 360-22, ASD and LRFD: the limit states of a body mount, each in one function
// that reads beside its clause. It never knows a bracket kind, and it never decides what a bracket's loads are.
//
//	card.go      the document, its methods, which limit state serves which feature
//	pin.go       pin shear, bending, the two together
//	pinplate.go  pin-connected plates: D5 and J7
//	section.go   bending, axial force and shear at a cut, and their interaction
//	weld.go      fillet welds
//	weldthrough.go groove welds of complete penetration, plugs
//	bolt.go      bolts, bearing, prying
//	rod.go       threaded rods that hang a tray
//	saddle.go    a tube pressed on its wall
//	twist.go     open sections twisted about their shear centre
//	combined.go  tubes and bars: torsion, and all forces together from utilisations
//	boltgroup.go eccentric bolt groups
//	boltslip.go  slip-critical joints
//	boltdetail.go long joints and fillers, pull-through, holes, edges
//	wall.go      free edges, and a support's wall
package aisc360

import (
	"slices"

	"lugwright/strength"
	"lugwright/strength/practice"
)

const (
	document = "AISC 360"
	edition  = "2022"

	inch = 25.4                                        // mm
	ksi  = 1000 * 0.45359237 * 9.80665 / (inch * inch) // MPa, exact
	// E is the code's 29,000 ksi in MPa.
	E = 29000 * ksi
)

func clause(section, words string) strength.Clause {
	return strength.Clause{Document: document, Edition: edition, Section: section, Words: words}
}

var basis = build()

// Basis gives the basis; it is shared and never changes.
func Basis() *strength.Basis { return basis }

func build() *strength.Basis {
	return &strength.Basis{
		Card: strength.Card{
			Name: "AISC 360-22", Document: document, Edition: edition,
			Methods: []strength.Method{strength.ASD, strength.LRFD},
			ServiceFactor: map[strength.Method]float64{
				strength.ASD: 1, strength.LRFD: 1.6,
			},
			FactorSource: "1.6, the live-load factor of ASCE 7, taken for the whole of a service load; from memory; set load_factor to change it",
			Listing:      "AISC 360-22",
		},
		Limits: slices.Concat(
			mountLimits,
			memberLimits,
			rodLimits,
			saddleLimits,
			combinedLimits,
			weldGroupLimits,
			boltGroupLimits,
			boltDetailLimits,
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
			Fatigue:     fatigueRules,
			RootFatigue: rootFatigueRules,
		},
	}
}

// mountLimits are what a mount's own features need: pins, plates, sections, welds, bolts, walls.
var mountLimits = []strength.Evaluator{
	pinShear, pinBending, pinCombined,
	pinBearing, pinPlateTension, pinPlateShear, pinPlateYield, pinPlateDimensions,
	weakAxis, edgewise, axial, sectionShear, interaction,
	filletStrength, filletBaseMetal, filletSize, filletEdge, filletLength, filletFlow,
	boltShear, boltTension, boltCombined, boltBearing, boltSpacing, blockShear, prying,
	freeEdge, wallBending,
}
