package strength

// Folded trays on hanger rods: the bottom as a strip between its folds, the folded sides as beams between the rods.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// tray is a folded plate hung on rods, made ready.
type tray struct {
	t          *thing
	rods       int     // pattern that it hangs on
	span, wide float64 // of the bottom between the nearer folds, and the other way
	side       float64 // least height of the sides along those folds
	along      float64 // greatest distance between neighbouring rods along them
	inside     float64 // how far the rods stand inside those folds, at most
	passes     []bool
	up, dir    part.Vec // square to the bottom; along the nearer folds
}

func (m *model) compileTrays() {
	for i := range m.things {
		t := &m.things[i]
		if len(t.plate.Bends) < 2 {
			continue
		}
		for k := range m.rods {
			if m.hangsOn(t, &m.rods[k]) {
				m.addTray(t, k)
			}
		}
	}
}

// hangsOn says whether every rod goes through a hole of the plate.
func (m *model) hangsOn(t *thing, s *rodSet) bool {
	return !slices.ContainsFunc(s.Points, func(p shape.Point) bool { m.spend(4 * len(t.plate.Holes)); return holeOn(t.plate, s, p) == nil })
}

// holeOn is the plate's rod hole on a rod's line, nil when there is none.
func holeOn(p *part.Plate, s *rodSet, at shape.Point) *part.Hole {
	for i := range p.Holes {
		u, v, _ := s.Pose.Local(p.HoleAt(p.Holes[i]))
		if p.Holes[i].Purpose == part.ForRod && math.Hypot(u-at.X, v-at.Y) < 0.01 {
			return &p.Holes[i]
		}
	}
	return nil
}

func (m *model) addTray(t *thing, rods int) {
	s := &m.rods[rods]
	near, far := folds(t.plate)
	if near == nil || far == nil {
		m.skip("bottom of the tray", t.plate.ID, "its folds are not two pairs, each of two parallel ones")
		return
	}
	y := tray{t: t, rods: rods, span: near.apart, wide: far.apart, side: near.side, passes: m.passes(t.plate.ID), up: t.plate.Pose.W()}
	y.dir = t.plate.Pose.U.Scale(near.dir.X).AddScaled(near.dir.Y, t.plate.Pose.V)
	y.along = s.longest(near.dir, t.plate.Pose)
	for _, p := range s.Points {
		h := holeOn(t.plate, s, p).Center.Dot(near.dir.Perp())
		y.inside = max(y.inside, min(math.Abs(h-near.at[0]), math.Abs(h-near.at[1])))
	}
	m.trays = append(m.trays, y)
}

// foldPair is two parallel folds.
type foldPair struct {
	dir         shape.Point
	apart, side float64
	at          [2]float64 // along the normal of dir
}

// folds gives the nearer and the further pair of a plate's parallel folds.
func folds(p *part.Plate) (near, far *foldPair) {
	box := p.Outer.BBox()
	var pairs []foldPair
	for i, a := range p.Bends {
		for _, b := range p.Bends[:i] {
			dir := a.B.Sub(a.A).Unit()
			if math.Abs(dir.Cross(b.B.Sub(b.A).Unit())) > 1e-9 {
				continue
			}
			n := dir.Perp()
			da, db := a.A.Dot(n), b.A.Dot(n)
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, q := range [4]shape.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}} {
				lo, hi = min(lo, q.Dot(n)), max(hi, q.Dot(n))
			}
			pairs = append(pairs, foldPair{dir, math.Abs(da - db), min(min(da, db)-lo, hi-max(da, db)), [2]float64{da, db}})
		}
	}
	if len(pairs) != 2 || math.Abs(pairs[0].dir.Dot(pairs[1].dir)) > 1e-9 {
		return nil, nil
	}
	if pairs[0].apart <= pairs[1].apart {
		return &pairs[0], &pairs[1]
	}
	return &pairs[1], &pairs[0]
}

// longest is the greatest distance between neighbouring rods along a direction of a plate, or what the pattern spans where all stand side by side.
func (s *rodSet) longest(dir shape.Point, pose part.Pose) float64 {
	along := pose.U.Scale(dir.X).AddScaled(dir.Y, pose.V)
	at := make([]float64, len(s.Points))
	for i, p := range s.Points {
		at[i] = s.Pose.At(p.X, p.Y, 0).Dot(along)
	}
	slices.Sort(at)
	gap := 0.0
	for i := 1; i < len(at); i++ {
		gap = max(gap, at[i]-at[i-1])
	}
	return gap
}

// layTrays makes places for each tray.
func (r *run) layTrays() {
	rules := &r.basis.Rules
	r.bottoms, r.sides, r.rims = make([]slots[Cut], len(r.trays)), make([]slots[Cut], len(r.trays)), make([]slots[Cut], len(r.trays))
	for i := range r.trays {
		y := &r.trays[i]
		id, at := y.t.plate.ID, y.t.plate.Pose.Origin
		even := "the load lies evenly on the bottom, its couple as pressure that grows evenly across it; no membrane force is counted (beams of textbooks, from memory)"
		r.bottoms[i] = newSlots(rules.Cut, id+", bottom between its folds", id, "section", at, []string{even})
		r.sides[i] = newSlots(rules.Cut, id+", folded side between rods", id, "section", at, []string{even, "each of two sides carries half and its part of the couple, alone and on two supports"})
		r.rims[i] = newSlots(rules.Cut, id+", sheet between rods and folds", id, "section", at, []string{
			"a rod's pull comes from the folded side over a strip that widens from the washer at 45 degrees (elementary statics; the spread is common practice, no source)"})
		for _, s := range [...]*slots[Cut]{&r.bottoms[i], &r.sides[i], &r.rims[i]} {
			s.idle = idle(y.passes)
			r.places = append(r.places, s)
		}
	}
}

// atTrays finds what bends the trays in the case at hand.
func (r *run) atTrays() {
	for i := range r.trays {
		y := &r.trays[i]
		middle := r.rods[y.rods].middle
		middle = middle.AddScaled(y.t.plate.Pose.Origin.Sub(middle).Dot(y.up), y.up)
		w := sum(r.forces, y.passes, middle)
		force, over, beside := math.Abs(w.f.Dot(y.up)), math.Abs(w.m.Dot(y.dir)), math.Abs(w.m.Dot(y.up.Cross(y.dir)))
		t := y.t.plate.ThicknessMM
		// Pressure from p to -p along a beam on two supports: M = p L^2/(36 sqrt(3)), V = p L/6; its couple is p L^2/6.
		sqrt3 := math.Sqrt(3)
		peak := force + 6*beside/y.wide // the strip at the end, where the pressure is greatest
		r.bottoms[i].consider(r, strip(y.t, y.wide, t, peak*y.span/8+over/(6*sqrt3), peak/2+over/y.span, 0), "")
		side := force/2 + over/y.span
		bend, shear := side*y.along/8, side/2
		if len(r.rods[y.rods].at) > 4 {
			bend, shear = bend+3*beside/y.wide*y.along/8, shear+1.5*beside/y.wide // the gap under the greatest pressure
		} else {
			bend, shear = bend+beside/(12*sqrt3), shear+beside/(2*y.along)
		}
		beam := strip(y.t, t, y.side, bend, shear, y.along)
		r.sides[i].consider(r, onEdge(beam), "")
		worst := r.worstPull(y.rods)
		r.rims[i].consider(r, strip(y.t, min(r.underNut(y.rods)+2*y.inside, y.along), t, worst*y.inside, worst, 0), "")
	}
}

// strip is a rectangle of a plate bent flatwise by a moment with a shear.
func strip(t *thing, wide, deep, moment, shear, free float64) Cut {
	return Cut{
		Ma: moment, Va: shear, Area: wide * deep, AreaVa: wide * deep, AreaVb: wide * deep, Za: wide * deep * deep / 4, Sa: wide * deep * deep / 6,
		Zb: deep * wide * wide / 4, Sb: deep * wide * wide / 6, J: min(wide, deep) * min(wide, deep) * min(wide, deep) * max(wide, deep) / 3,
		TMax: min(wide, deep), Depth: max(wide, deep), R: min(wide, deep) / math.Sqrt(12), Rect: true, FreeLength: free, Fy: t.fy, Fu: t.fu, E: t.e,
	}
}

// onEdge turns a section so that its depth takes the moment edgewise.
func onEdge(f Cut) Cut {
	f.Ma, f.Mb, f.Va, f.Vb = 0, f.Ma, 0, f.Va
	f.Za, f.Zb, f.Sa, f.Sb = f.Zb, f.Za, f.Sb, f.Sa
	return f
}
