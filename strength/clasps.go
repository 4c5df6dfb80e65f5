package strength

// A tube held in a curved seat by a cap: a force across it climbs the seat's lip, and the cap holds it down.

import (
	"math"
	"slices"

	"lugwright/part"
)

// lipRad is half of the angle over which a force across the tube bears when it points nearest to the lip. The choice is free: any balance of
// forces that all parts can bear is on the safe side (elementary statics, no clause; the angle is common practice, no source).
const lipRad = math.Pi / 12

// clasp is a seat and the cap opposite it at one load point.
type clasp struct {
	loadPoint   int
	across      [2]part.Component // either way
	press, lift part.Component
	slope       float64 // press for each newton across, where the force points lipRad short of the lip
}

// layClasps finds curved seats on a tube through which a press and a force across pass, and whose lift something else holds.
func (m *model) layClasps() {
	for i := range m.b.Contacts {
		c := &m.b.Contacts[i]
		tube := slices.IndexFunc(c.Things[:], func(id string) bool {
			t := m.b.Support(id)
			return t != nil && t.Kind == part.TubeWall
		})
		steepest := c.WrapRad/2 - lipRad
		if tube < 0 || steepest <= 0 || steepest >= math.Pi/2 {
			continue
		}
		press, down := componentAlong(c.Pose.W().Scale(-1))
		lift, up := componentAlong(c.Pose.W())
		one, side := componentAlong(c.Pose.V)
		other, _ := componentAlong(c.Pose.V.Scale(-1))
		if !down || !up || !side {
			continue
		}
		for lp := range m.b.LoadPoints {
			if m.pathPasses(lp, press, c.ID) && !m.pathPasses(lp, lift, c.ID) && m.hasPath(lp, lift) &&
				(m.pathPasses(lp, one, c.ID) || m.pathPasses(lp, other, c.ID)) {
				m.addClasp(clasp{lp, [2]part.Component{one, other}, press, lift, 1 / math.Tan(steepest)})
			}
		}
	}
}

// addClasp keeps the steepest of the seats of one load point.
func (m *model) addClasp(c clasp) {
	m.note("a force across the tube bears up to %.0f degrees from its seat's lip; beyond that the cap holds the tube down (statics, no friction)", lipRad*180/math.Pi)
	for i := range m.clasps {
		if o := &m.clasps[i]; o.loadPoint == c.loadPoint && o.press == c.press {
			o.slope = max(o.slope, c.slope)
			return
		}
	}
	m.clasps = append(m.clasps, c)
}

// componentAlong is the force component in a direction; false for one that lies askew to the axes.
func componentAlong(dir part.Vec) (part.Component, bool) {
	for k := part.FxPlus; k <= part.FzMinus; k++ {
		if f, _ := k.Unit(); f.Dot(dir) > 1-1e-9 {
			return k, true
		}
	}
	return 0, false
}

func (m *model) pathOf(lp int, k part.Component) []int {
	return m.paths[lp*len(part.Components())+int(k)]
}

func (m *model) hasPath(lp int, k part.Component) bool { return m.pathOf(lp, k) != nil }

func (m *model) pathPasses(lp int, k part.Component, id string) bool {
	passes := m.passes(id)
	return slices.ContainsFunc(m.pathOf(lp, k), func(branch int) bool { return passes[branch] })
}

// clasped is what the seat presses and the cap holds, each, beside the case's own force in a component: a pair that balances itself.
func (m *model) clasped(lp int, k part.Component, f part.Vec) float64 {
	more := 0.0
	for i := range m.clasps {
		c := &m.clasps[i]
		if c.loadPoint != lp || k != c.press && k != c.lift {
			continue
		}
		across := max(c.across[0].Size(f, part.Vec{}), c.across[1].Size(f, part.Vec{}))
		more = max(more, c.slope*across-c.press.Size(f, part.Vec{}))
	}
	return more
}
