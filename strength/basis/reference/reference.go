// Package reference holds cards of older editions and textbook methods, so that published cases that follow them can be evaluated
// and verified. It never serves the check of a bracket.
package reference

import "lugwright/strength"

// All lists the cards in the order in which they are shown.
func All() []*strength.Basis {
	return []*strength.Basis{
		olderWelds,
		lrfd2,
		machineDesign,
		stressConcentration,
		aerospaceLug,
		boltSets,
		hungTrays,
		loadShares,
		preload,
		vdi2230,
		threadStripping,
		enGuide,
	}
}
