// Package lift shares a body's dry mass among jacks or lifting points: by an even share, and by the worst that statics allows. It never judges a jack.
package lift

import (
	"fmt"
	"math"
	"slices"

	"lugwright/strength/statics"
	"lugwright/vehicle/field"
)

// Jack is one lifting point in plan.
type Jack struct {
	Name     string
	XMM, YMM float64
	RatedKG  float64 // 0 where it is not stated
}

// Body is what is lifted, with tanks dry.
type Body struct {
	MassKG   float64
	XMM, YMM float64 // mass centre in plan
}

// Share is one jack's part.
type Share struct {
	Name     string
	EvenKG   float64 // body rigid, jacks even; less than nought where the jack would have to hold the body down
	WorstKG  float64 // the most that equilibrium allows while every jack only pushes
	PlanKG   float64 // what to plan it for: the worst, and with four jacks or more at least half the body, as on a diagonal pair
	RatedKG  float64
	OverRate bool // PlanKG is more than the rating
}

// Plan is the lift plan card.
type Plan struct {
	Shares   []Share // in the order of the jacks
	Rule     string  // how the even share comes about
	MarginMM float64 // from the mass centre to the nearest side of the jacks' outline, less than nought outside
	Tips     string  // words where the body would tip, else empty
	Cautions []string
}

// cautions go with every plan.
var cautions = []string{
	"lift with all tanks dry and nothing loose aboard",
	"crib as it rises: timber under the body within a hand's width at all times; never go under a body on jacks alone",
	"raise the jacks a little at a time, in turn: a stiff body rocks on a diagonal pair, which then carries all of it",
	"jacks stand on firm, level ground and under places that bear it; chock the vehicle",
}

// New reckons the plan. A mass centre outside the jacks is a result, not an error; the error is part.FieldErrors.
func New(b Body, jacks []Jack) (*Plan, error) {
	if err := check(b, jacks); err != nil {
		return nil, err
	}
	p := &Plan{Cautions: slices.Clone(cautions)}
	even, rule := evenShares(b, jacks)
	worst := worstShares(b, jacks)
	p.Rule = rule
	p.MarginMM = margin(b, jacks)
	for i, j := range jacks {
		s := Share{Name: j.Name, EvenKG: even[i], WorstKG: worst[i], PlanKG: max(worst[i], even[i]), RatedKG: j.RatedKG}
		if len(jacks) >= 4 {
			s.PlanKG = max(s.PlanKG, b.MassKG/2)
		}
		s.OverRate = j.RatedKG > 0 && s.PlanKG > j.RatedKG
		p.Shares = append(p.Shares, s)
	}
	if p.MarginMM < 0 {
		p.Tips = fmt.Sprintf("the mass centre at x %.0f, y %.0f lies %.0f mm outside the jacks: the body tips", b.XMM, b.YMM, -p.MarginMM)
	}
	return p, nil
}

func check(b Body, jacks []Jack) error {
	var bad field.Errors
	bad.Positive("lift.mass_kg", b.MassKG, field.MaxKG)
	bad.Place("lift.x_mm", b.XMM)
	bad.Place("lift.y_mm", b.YMM)
	if bad.Count("lift.jacks", len(jacks), 3, 20) {
		bad.Unique("lift.jacks", len(jacks), func(i int) string { return jacks[i].Name }, ".name")
		for i, j := range jacks {
			at := fmt.Sprintf("lift.jacks[%d]", i)
			bad.Place(at+".x_mm", j.XMM)
			bad.Place(at+".y_mm", j.YMM)
			bad.Between(at+".rated_kg", j.RatedKG, 0, field.MaxKG)
		}
		if bad.Err() == nil && inLine(jacks) {
			bad.Refuse("lift.jacks", "all in one line", "three jacks at least that stand on a triangle with 50 mm height or more")
		}
	}
	return bad.Err()
}

// flatMM is the least height of a triangle of jacks that counts as one.
const flatMM = 50

func inLine(jacks []Jack) bool {
	for i := range jacks {
		for k := range i {
			for m := range k {
				if triangle(jacks[i], jacks[k], jacks[m]) {
					return false
				}
			}
		}
	}
	return true
}

// twice is twice the area of the triangle, positive where it turns from x to y.
func twice(a, b, c Jack) float64 {
	return float64((b.XMM-a.XMM)*(c.YMM-a.YMM)) - float64((b.YMM-a.YMM)*(c.XMM-a.XMM))
}

func triangle(a, b, c Jack) bool {
	longest := max(apart(a, b), apart(b, c), apart(c, a))
	return math.Abs(twice(a, b, c)) >= flatMM*longest && longest > 0
}

func apart(a, b Jack) float64 { return math.Hypot(a.XMM-b.XMM, a.YMM-b.YMM) }

// evenShares: three jacks by statics; four in two pairs by two levers, between the pairs and within each; else as under a plane that stays flat.
func evenShares(b Body, jacks []Jack) ([]float64, string) {
	if len(jacks) == 4 {
		if s := levers(b, jacks); s != nil {
			return s, "two levers: between the front and the rear pair, then between left and right of each"
		}
	}
	at := make([]statics.Vec2, len(jacks))
	for i, j := range jacks {
		at[i] = statics.Vec2{X: j.XMM, Y: j.YMM}
	}
	c := statics.Centroid(at)
	for i := range at {
		at[i] = statics.Vec2{X: at[i].X - c.X, Y: at[i].Y - c.Y}
	}
	out := make([]float64, len(jacks))
	// A push up at (x, y) has moments y and -x; the jacks' are the body's.
	if err := statics.PullsAtCentroid(out, at, b.MassKG, (b.YMM-c.Y)*b.MassKG, -(b.XMM-c.X)*b.MassKG); err != nil {
		return out, err.Error()
	}
	if len(jacks) == 3 {
		return out, "statics of three points"
	}
	return out, "a stiff body on jacks that give alike"
}

// levers wants two jacks ahead and two behind, one of each on either side.
func levers(b Body, jacks []Jack) []float64 {
	order := []int{0, 1, 2, 3}
	slices.SortStableFunc(order, func(i, k int) int {
		switch {
		case jacks[i].XMM < jacks[k].XMM:
			return -1
		case jacks[i].XMM > jacks[k].XMM:
			return 1
		}
		return 0
	})
	// along gives where the line of a pair crosses the mass centre's y, and the share of its first jack there.
	along := func(i, k int) (x, first float64, ok bool) {
		p, q := jacks[i], jacks[k]
		if math.Abs(p.YMM-q.YMM) < flatMM {
			return 0, 0, false
		}
		first = (b.YMM - q.YMM) / (p.YMM - q.YMM)
		return q.XMM + first*(p.XMM-q.XMM), first, true
	}
	xf, f, ok := along(order[0], order[1])
	xr, r, ok2 := along(order[2], order[3])
	if !ok || !ok2 || xr-xf < flatMM || jacks[order[2]].XMM-jacks[order[1]].XMM < flatMM {
		return nil
	}
	front := b.MassKG * (xr - b.XMM) / (xr - xf)
	rear := b.MassKG - front
	out := make([]float64, 4)
	out[order[0]], out[order[1]] = front*f, front*(1-f)
	out[order[2]], out[order[3]] = rear*r, rear*(1-r)
	return out
}

// worstShares: the greatest push of a jack under equilibrium with none that pulls is reached where three jacks at most carry, so every three are
// tried (and pairs and single jacks among them).
func worstShares(b Body, jacks []Jack) []float64 {
	g := Jack{XMM: b.XMM, YMM: b.YMM}
	out := make([]float64, len(jacks))
	for i := range jacks {
		for k := range i {
			for m := range k {
				whole := twice(jacks[i], jacks[k], jacks[m])
				if math.Abs(whole) < 1 { // mm2: in one line
					continue
				}
				s := [3]float64{twice(g, jacks[k], jacks[m]) / whole, twice(jacks[i], g, jacks[m]) / whole, twice(jacks[i], jacks[k], g) / whole}
				if min(s[0], s[1], s[2]) < -1e-12 {
					continue
				}
				for n, which := range [3]int{i, k, m} {
					out[which] = max(out[which], b.MassKG*s[n])
				}
			}
		}
	}
	return out
}

// margin is the least distance of the mass centre from the sides of the jacks' convex outline: a side has all jacks on one hand.
func margin(b Body, jacks []Jack) float64 {
	g := Jack{XMM: b.XMM, YMM: b.YMM}
	least := math.Inf(1)
	for i := range jacks {
		for k := range jacks {
			if i == k || apart(jacks[i], jacks[k]) == 0 || slices.ContainsFunc(jacks, func(j Jack) bool { return twice(jacks[i], jacks[k], j) < -1e-6 }) {
				continue
			}
			least = min(least, twice(jacks[i], jacks[k], g)/apart(jacks[i], jacks[k]))
		}
	}
	return least
}
