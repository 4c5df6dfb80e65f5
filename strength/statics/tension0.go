package statics

// Bolt tension with the neutral axis at the centroid of the bolts: no contact patch is needed.

import "math"

// TensionsAtCentroid writes tensions (N) into dst by T = N/n + M y/sum(y^2) about the centroid of the bolts, for both axes
// and any layout (products of inertia included). Loads act at the reference point, signs as in GroupLoad. A bolt on the
// compression side gets 0: there the contact, not the bolt, takes the force. Bolts are of one size.
// Source: elementary statics; the axis at the centroid is AISC Manual Part 7, out-of-plane eccentricity, case II.
// A moment across a single row has no arm and is a *NoPathError: use Tensions with a contact patch.
func TensionsAtCentroid(dst []float64, pos []Vec2, N, Mu, Mv float64) error {
	if err := PullsAtCentroid(dst, pos, N, Mu, Mv); err != nil {
		return err
	}
	for i := range dst {
		dst[i] = math.Max(0, dst[i])
	}
	return nil
}

// PullsAtCentroid writes the same forces (N) into dst where no contact takes the compression: what is negative pushes.
func PullsAtCentroid(dst []float64, pos []Vec2, N, Mu, Mv float64) error {
	if err := checkBolts(len(dst), pos); err != nil {
		return err
	}
	if err := checkLoads(N, Mu, Mv); err != nil {
		return err
	}
	c := Centroid(pos)
	l := GroupLoad{N: N, Mu: Mu, Mv: Mv}.MovedTo(c)
	slope, err := slopes(pos, c, Vec2{-l.Mv, l.Mu})
	if err != nil {
		return err
	}
	for i, p := range pos {
		dst[i] = N/float64(len(pos)) + slope.X*(p.X-c.X) + slope.Y*(p.Y-c.Y)
	}
	return nil
}

// slopes solves sum(r r^T) k = g for the two slopes k of the linear distribution; g is sum(T r).
func slopes(pos []Vec2, c, g Vec2) (Vec2, error) {
	var xx, yy, xy float64
	for _, p := range pos {
		x, y := p.X-c.X, p.Y-c.Y
		xx, yy, xy = xx+x*x, yy+y*y, xy+x*y
	}
	total := xx + yy
	if det := xx*yy - xy*xy; det > 1e-12*total*total {
		return Vec2{(yy*g.X - xy*g.Y) / det, (xx*g.Y - xy*g.X) / det}, nil
	}
	// One row: only the part of g along the row has an arm.
	var d Vec2
	if total > tiny*tiny {
		a := math.Atan2(2*xy, xx-yy) / 2
		d = Vec2{math.Cos(a), math.Sin(a)}
	}
	along := g.X*d.X + g.Y*d.Y
	if across := math.Hypot(g.X-along*d.X, g.Y-along*d.Y); across > 1e-9*g.Norm() {
		return Vec2{}, &NoPathError{"moment on the bolts", "a single row or bolt has no arm about its own centroid"}
	}
	if along == 0 {
		return Vec2{}, nil
	}
	return Vec2{along * d.X / total, along * d.Y / total}, nil
}

// TensionCaseII gives the tension per bolt P e/(n' d_m) of AISC Manual Part 7, case II (Eq. 7-14): all bolts above the
// centroid share one tension, those below one compression, M = P e in N*mm. y are positions across the axis (mm).
// nAbove is n', dm the distance between the means of the two halves; a bolt on the axis counts in neither.
func TensionCaseII(y []float64, M float64) (perBolt, nAbove, dm float64, err error) {
	if err := checkWithin("moment", M, maxMoment); err != nil {
		return 0, 0, 0, err
	}
	mean := 0.0
	for _, v := range y {
		if err := checkWithin("bolt position", v, maxLength); err != nil {
			return 0, 0, 0, err
		}
		mean += v / float64(len(y))
	}
	var sumAbove, sumBelow, below float64
	for _, v := range y {
		if d := v - mean; d > tiny {
			nAbove, sumAbove = nAbove+1, sumAbove+d
		} else if d < -tiny {
			below, sumBelow = below+1, sumBelow+d
		}
	}
	if nAbove == 0 {
		return 0, 0, 0, &NoPathError{"moment on the bolts", "no bolt stands above the centroid"}
	}
	dm = sumAbove/nAbove - sumBelow/below
	return math.Abs(M) / (nAbove * dm), nAbove, dm, nil
}
