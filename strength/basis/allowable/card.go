// Package allowable is allowable stress by chosen factors: one on yield, one on tensile strength, for rule sets that state factors and no
// code. Stresses are elastic. It never follows a design code, and it holds no rule for fatigue or for weld sizes: these are listed as not
// checked.
//
//	card.go     the factors, which limit state serves which feature
//	stress.go   allowable stresses
//	pin.go      pins and the holes they bear in
//	section.go  sections: normal stress, shear, both together, buckling
//	bolt.go     bolts, their holes, the plies they pull on
//	weld.go     fillet welds
//	weldthrough.go groove welds of complete penetration, plugs
//	rod.go      threaded rods that hang a tray
//	saddle.go   a tube's wall under a saddle and under a bolt's clamp; struts
//	twist.go    open sections twisted about their shear centre
//	plate.go    free edges, corner plates, a support's wall, block shear
package allowable

import (
	"slices"

	"lugwright/strength"
	"lugwright/strength/material"
	"lugwright/strength/practice"
)

const (
	// E is the modulus of carbon steel, MPa: that of rods.
	E       = 200000
	poisson = 0.3
)

// common is the clause of a rule without a source: elementary stress against a stress allowed by practice.
func common(words string) strength.Clause {
	if words != "" {
		words = "; " + words
	}
	return strength.Clause{Words: "common practice, no source" + words}
}

var basis = build()

// Basis gives the basis; it is shared and never changes.
func Basis() *strength.Basis { return basis }

func build() *strength.Basis {
	return &strength.Basis{
		Card: strength.Card{
			Name: "Allowable stress", Document: "allowable stress by chosen factors", Edition: "no edition",
			Methods:       []strength.Method{strength.Allowable},
			ServiceFactor: map[strength.Method]float64{strength.Allowable: 1},
			FactorSource:  "service loads as they are; the factors are in the stresses",
			Listing:       "allowable stress by chosen factors",
			Factors:       factors,
		},
		Metals: []material.Family{material.Aluminium},
		Limits: slices.Concat(pinLimits, sectionLimits, boltLimits, weldLimits, plateLimits, rodLimits, []strength.Evaluator{saddleRing, contactBearing, tubeClamp, strut, openTwist}, practice.Limits),
		Rules: strength.Rules{
			PinPlane:    pinPlaneRules,
			PinSpan:     pinSpanRules,
			Bore:        boreRules,
			Eye:         eyeRules,
			Cut:         cutRules,
			WeldLine:    weldRules,
			WeldFlow:    flowRules,
			CJPLine:     cjpRules,
			CJPFlow:     cjpFlowRules,
			PlugLine:    plugRules,
			Bolt:        boltRules,
			BoltSet:     practice.BoltSetRules(boltRules[1]),
			Preloaded:   practice.PreloadRules,
			Thread:      practice.ThreadRules,
			BoltBearing: bearingRules,
			Prying:      pryingRules,
			Block:       blockRules,
			Outstand:    outstandRules,
			CornerPlate: cornerPlateRules,
			Wall:        wallRules,
			Rod:         rodRules,
			Seat:        seatRules,
			Bush:        practice.BushRules,
		},
	}
}

// factors: a load set that states its own factors is chosen with its set. The factor on tensile strength is for the load at which a part
// gives way, so it stands against buckling too.
var factors = []strength.Factor{
	{
		Symbol: "n_u", Default: 4, Min: 1, Max: 20,
		Words: "factor on tensile strength and on buckling: 4 of 49 CFR 178.338-13(a), tank supports, and of WAC 296-826-60005, tank attachments",
		Sets: []strength.FactorSet{
			{Name: "49 CFR 178.338-13 tank supports", Value: 4},
			{Name: "WAC 296-826-60005 tank attachments", Value: 4},
		},
	},
	{Symbol: "n_y", Default: 1.5, Min: 1, Max: 20, Words: "factor on yield strength: 1.5, common practice, no source"},
	{Symbol: "k_p", Default: 1, Min: 0.5, Max: 2.5, Words: "bearing stress allowed, over the tensile stress allowed: 1, common practice, no source"},
}
