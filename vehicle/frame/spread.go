package frame

import "fmt"

// Spread is mass that both rails carry evenly, along a stretch: the chassis-cab's own weight, or a part of it.
type Spread struct {
	Name         string
	MassKG       float64
	FromMM, ToMM float64
	CGMM         float64 // station of its mass centre
}

// straight is a load of the given total (up) and centre along a stretch, in a straight line: the one linear load with both. Where that
// would push and pull, the load lies on a shorter stretch as a triangle, whose centre is at its third point. Elementary statics.
func straight(total, centre, from, to float64) (line, error) {
	length := to - from
	off := centre - (from+to)/2
	switch {
	case !(centre > from && centre < to):
		return line{}, fmt.Errorf("the load's centre at %.0f mm lies outside %.0f to %.0f mm", centre, from, to)
	case off > length/6:
		short := 3 * (to - centre)
		return line{to - short, to, 0, 2 * total / short}, nil
	case off < -length/6:
		short := 3 * (centre - from)
		return line{from, from + short, 2 * total / short, 0}, nil
	}
	mean, lean := total/length, 6*total*off/(length*length)
	return line{from, to, mean - lean, mean + lean}, nil
}
