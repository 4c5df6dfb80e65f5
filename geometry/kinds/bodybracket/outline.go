package bodybracket

// The plates' outline: u along x from the middle between the tubes, v up from their lower faces.

import (
	"lugwright/geometry/shape"
)

// notchRadius rounds the corners of the notch between the tubes: 13 mm or what there is room for. 13 mm is a welding code's usual re-entrant radius, second
// hand.
func (d *design) notchRadius() float64 { return min(13, 0.8*min(d.relief, d.gap)) }

// half is half the plate's width at the tubes.
func (d *design) half() float64 {
	if d.under {
		return d.gap + d.width
	}
	return d.gap
}

// eye is the pin's centre.
func (d *design) eye() shape.Point { return shape.Point{Y: -d.below} }

// head is the middle of the lower end's arc.
func (d *design) head() shape.Point { return shape.Point{Y: d.headR - d.below - d.end} }

// outline runs from the lower end of the rear edge round the head, counter-clockwise. The error says that no side can touch the head's arc.
func (d *design) outline() (shape.Loop, error) {
	w := d.half()
	left, right, err := d.tangents()
	if err != nil {
		return nil, err
	}
	p := shape.NewPath(shape.Point{X: -w, Y: -d.shoulder}).Line(left).ArcCenter(right, d.head(), true).Line(shape.Point{X: w, Y: -d.shoulder})
	if !d.under {
		return p.Line(shape.Point{X: w, Y: d.rise}).Line(shape.Point{X: -w, Y: d.rise}).Close()
	}
	g := d.gap
	l, err := p.Line(shape.Point{X: w}).Line(shape.Point{X: g}).Line(shape.Point{X: g, Y: -d.relief}).Line(shape.Point{X: -g, Y: -d.relief}).Line(shape.Point{X: -g}).Line(shape.Point{X: -w}).Close()
	if err != nil {
		return nil, err
	}
	return shape.FilletAll(l, func(i int) float64 {
		if l[i].Y == -d.relief && (l[i].X == g || l[i].X == -g) {
			return d.notchRadius()
		}
		return 0
	})
}

// tangents are where the plate's sides touch the head's arc.
func (d *design) tangents() (left, right shape.Point, err error) {
	_, other, err := shape.TangentPoints(shape.Point{X: -d.half(), Y: -d.shoulder}, d.head(), d.headR)
	return other, shape.Point{X: -other.X, Y: other.Y}, err
}

// straight is how far below the tubes the plate reaches at a distance from its middle: down its shoulder and along its slanted side.
func (d *design) straight(u float64) float64 {
	_, touch, err := d.tangents()
	switch {
	case err != nil || u > d.half():
		return 0
	case touch.X >= d.half():
		return d.shoulder
	}
	return d.shoulder - (touch.Y+d.shoulder)*(d.half()-u)/(d.half()-touch.X)
}
