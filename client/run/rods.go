package run

// This file says what a bent rod sees at the root of its thread.

import (
	"math"

	"lugwright/strength/material"
)

// RodRootMPa is the bending stress at the root of a rod's thread: elementary bending of the core, d - 1.22687 p (ISO 68-1, from memory). False where the
// size is no thread that is known.
func RodRootMPa(size string, momentNMM float64) (float64, bool) {
	bolt, err := material.ParseBolt(size)
	if err != nil {
		return 0, false
	}
	root := bolt.DiaMM - 1.22687*bolt.PitchMM
	return 32 * momentNMM / (math.Pi * root * root * root), true
}
