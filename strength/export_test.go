package strength

import (
	"context"

	"lugwright/part"
)

// KeepNothing makes limit states work out everything anew for every load, until it is called with false.
func KeepNothing(on bool) { keepNothing = on }

// Spent checks a bracket with so much work allowed, and says how much was counted.
func Spent(most int, basis *Basis, b *part.Bracket, cases []part.Case, o Options) (int, error) {
	work := newMeter(context.Background(), most)
	_, err := checked(work, basis, b, cases, o)
	return most - work.left, err
}
