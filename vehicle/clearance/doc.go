// Package clearance holds the room that a twisting frame, a pin on its way out and a grease gun need against the room that was measured. It never
// finds a part's place: it takes plain lengths.
package clearance
