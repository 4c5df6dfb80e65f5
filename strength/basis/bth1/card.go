// Package bth1 is the pin-connected plate of ASME BTH-1, for lugs and ears that a user wants checked on a lifting standard: tension
// beside the hole, fracture and shear beyond it, bearing. It never speaks for any other joint of a bracket.
//
//	card.go   the document, its design factor, which limit state serves the pin hole
//	plate.go  the limit states
package bth1

import (
	"lugwright/strength"
	"lugwright/strength/practice"
)

const (
	document = "ASME BTH-1"
	edition  = "2014"
)

// clause names a place of the document. The equations were read in published calculation sheets of the editions 2005 to 2014, which agree;
// paragraphs and equation numbers are from memory.
func clause(section, words string) strength.Clause {
	if words != "" {
		words = "; " + words
	}
	return strength.Clause{Document: document, Edition: edition, Section: section, Words: "numbering from memory" + words}
}

var basis = &strength.Basis{
	Card: strength.Card{
		Name: "ASME BTH-1", Document: document, Edition: edition,
		Methods:       []strength.Method{strength.Allowable},
		ServiceFactor: map[strength.Method]float64{strength.Allowable: 1},
		FactorSource:  "service loads as they are; the design factor N_d is in the strengths",
		Listing:       document,
		PinHolesOnly:  true,
		Factors: []strength.Factor{{
			Symbol: "N_d", Words: "design factor: 2.00 category A, 3.00 category B (ASME BTH-1 3-1.3, from memory)", Default: 3, Min: 1.5, Max: 10,
			Sets: []strength.FactorSet{{Name: "category A", Value: 2}, {Name: "category B", Value: 3}},
		}},
	},
	Limits: []strength.Evaluator{pinPlateTension, pinPlateFracture, pinPlateShear, pinBearing, pinPlateWeakest, practice.PinContact},
	Rules:  strength.Rules{Bore: boreRules, Eye: eyeRules},
}

// Basis gives the basis; it is shared and never changes.
func Basis() *strength.Basis { return basis }
