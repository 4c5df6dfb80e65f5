package drawings

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/units"
)

// Weld symbols beside the three views, as far as there is room: each beside a view that shows its weld. The drawing of welds has them all.

// weldTag is a weld in the view that shows the longest stretch of it, or the end of it.
type weldTag struct {
	number int
	tag    func() tag
	width  float64
	led    bool // its symbol does not stand beside its view, its leader goes round
}

const (
	symbolHalfMM = 4.6 // paper over and under a symbol's line
	laneMM       = 1.6 // from one leader that goes round to the next
	firstLaneMM  = 2.0 // from the view to the first of them
)

// shownWelds parts the welds between the views, front, plan and end, by where the longest stretch is seen, of those seen nowhere along by where their end is; hidden ones are in none.
func (v *three) shownWelds(b *part.Bracket, o *Options) (out [3][]weldTag) {
	for i := range b.Welds {
		w := &b.Welds[i]
		best, most, at := -1, 0.0, part.Vec{}
		for k, p := range v.pictures() {
			if q, long := p.bestOf(w); q != nil && long > most+1e-6 {
				best, most, at = k, long, *q
			}
		}
		for k := len(out) - 1; k >= 0 && best < 0; k-- {
			if q := v.pictures()[k].endOf(w); q != nil {
				best, at = k, *q
			}
		}
		if best < 0 {
			continue
		}
		p := v.pictures()[best]
		s := newSymbol(b, w, o, arrowSide(b, w, at, p.scene.Eye))
		out[best] = append(out[best], weldTag{i + 1, func() tag {
			return tag{id: w.ID, at: p.point(at), visible: true, width: s.width(), up: symbolHalfMM, arrow: true, write: s.draw}
		}, s.width(), false})
	}
	return out
}

// endOf is a place at the end of a run that lies along the line of sight, where that is seen; nil where none is.
func (p *picture) endOf(w *part.WeldGroup) *part.Vec {
	for _, s := range w.Segments {
		if p.scene.Project(s.A).Dist(p.scene.Project(s.B)) > 1 {
			continue
		}
		near, far := s.A, s.B
		if far.Sub(near).Dot(p.scene.Eye) > 0 {
			near, far = far, near
		}
		if at := near.AddScaled(1./24, far.Sub(near)); p.scene.Sees(at) {
			return &at
		}
	}
	return nil
}

// arrowSide is out of the face of the standing plate on which an arrow points at its weld; of a plate that is seen square, or none, towards the viewer.
func arrowSide(b *part.Bracket, w *part.WeldGroup, at, eye part.Vec) part.Vec {
	face := b.Face(w.Joins[0])
	if face == nil {
		return eye
	}
	if _, _, h := face.Pose.Local(at); h < -0.01 {
		return face.Pose.W().Scale(-1)
	} else if h > 0.01 {
		return face.Pose.W()
	}
	return eye
}

// Columns of symbols: beside each view, by its number, and under the end view.
const underEnd = 3

// layouts say of the welds of front, plan and end in which columns their symbols stand, one after the other as there is room. The best first: what the front view
// shows may stand beside the plan, where nothing else is, and what the end view shows under it.
var layouts = [...][3][]int{
	{{0}, {1}, {2, underEnd}}, {{1}, {1}, {2, underEnd}}, {{0}, {1}, {underEnd}}, {{1}, {1}, {underEnd}}, {{0}, {1}, nil}, {{1}, {1}, nil}, {nil, {1}, nil}, {},
}

// withWelds takes symbols into columns, each as many as have room there, and says how many that are. Spare is how much higher the drawing may become.
func (v *three) withWelds(all [3][]weldTag, layout [3][]int, spare float64) int {
	v.columns = [4][]weldTag{}
	n := 0
	for k, list := range all {
		for _, at := range layout[k] {
			room := min(max(int(v.columnHeight(at, spare)/(2*symbolHalfMM))-len(v.columns[at]), 0), len(list))
			for _, t := range list[:room] {
				t.led = at != k
				v.columns[at] = append(v.columns[at], t)
			}
			n, list = n+room, list[room:]
		}
	}
	return n
}

// columnHeight is the height in which the symbols of a column may stand. In first-angle projection what stands under the end view stands over what is beside the plan.
func (v *three) columnHeight(at int, spare float64) float64 {
	plan, taken := v.plan.on(), stackMM(len(v.columns[1]))
	switch {
	case at == 1 && v.first:
		return plan.Max.Y - v.lowest() + spare
	case at == 1:
		return plan.Height() + spare
	case at == underEnd && v.first:
		return v.underTop() - v.lowest() + spare - taken
	case at == underEnd:
		return v.underTop() - v.lowest() + spare - max(0, taken-plan.Height())
	}
	return v.pictures()[at].on().Height()
}

// underTop is where what stands under the end view begins.
func (v *three) underTop() float64 { return v.end.on().Min.Y - firstLaneMM }

// lowest is how far down the views and their dimensions reach.
func (v *three) lowest() float64 {
	lower := v.front
	if v.first {
		lower = v.plan
	}
	return lower.on().Min.Y - v.x.outer()
}

// column is how far symbols reach beside a view, 0 for none.
func (v *three) column(k int) float64 {
	most := 0.0
	for _, t := range v.columns[k] {
		most = max(most, t.width)
	}
	if most == 0 {
		return 0
	}
	return tagGapMM + most
}

// lanesMM is the width of so many lanes beside a view.
func lanesMM(n int) float64 {
	if n == 0 {
		return 0
	}
	return firstLaneMM + float64(n)*laneMM
}

// between is how far the end view stands from the front view, or from the symbols beside that.
func (v *three) between() float64 {
	n := 0
	if v.laned(1) {
		n = len(v.columns[1])
	}
	return max(viewGapMM, lanesMM(n)+lanesMM(len(v.columns[underEnd]))+laneMM)
}

func (v *three) drawWelds(g *page) {
	for k, p := range v.pictures() {
		var list []tag
		for _, t := range v.columns[k] {
			list = append(list, t.tag())
		}
		slices.SortStableFunc(list, func(a, b tag) int { return cmp.Compare(a.at.Y, b.at.Y) })
		box := p.on()
		if v.laned(k) {
			box.Max.X += v.lead(list)
		}
		// What the plan is too low for stands away from the other views.
		switch stack := stackMM(len(list)); {
		case k != 1:
		case v.first:
			box.Max.Y = min(box.Max.Y, v.underTop()-stackMM(len(v.columns[underEnd])))
			box.Min.Y = min(box.Min.Y, box.Max.Y-stack)
		default:
			box.Max.Y = max(box.Max.Y, box.Min.Y+stack)
		}
		setColumn(g, list, box, 1)
	}
	v.drawUnder(g)
}

// stackMM is how high so many symbols stand.
func stackMM(n int) float64 { return 2 * symbolHalfMM * float64(n) }

// laned says whether the leaders of a view's column go along lanes: all of those beside the plan do where one comes from the front view, or where not all stand at the plan's height.
func (v *three) laned(k int) bool {
	led := slices.ContainsFunc(v.columns[k], func(t weldTag) bool { return t.led })
	return led || k == 1 && len(v.columns[1]) > 0 && (len(v.columns[underEnd]) > 0 && v.first || stackMM(len(v.columns[1])) > v.plan.on().Height())
}

// drawUnder leads what stands under the end view down its near side, what comes from higher up in an outer lane to a lower place, so that none crosses another.
func (v *three) drawUnder(g *page) {
	n := len(v.columns[underEnd])
	if n == 0 {
		return
	}
	list := make([]tag, n)
	for i, t := range v.columns[underEnd] {
		list[i] = t.tag()
	}
	slices.SortStableFunc(list, func(a, b tag) int { return -cmp.Compare(a.at.Y, b.at.Y) })
	want := make([]float64, n)
	for i := range list {
		want[n-1-i] = list[i].at.Y
	}
	side := v.end.on()
	for i, y := range spread(want, laneMM, side.Min.Y, side.Max.Y) {
		x := side.Min.X - firstLaneMM
		list[n-1-i].by = []shape.Point{{X: x + 1, Y: y}, {X: x - float64(i)*laneMM, Y: y}}
	}
	high := v.underTop()
	setColumn(g, list, shape.Box{Min: shape.Point{X: side.Min.X, Y: high - stackMM(n)}, Max: shape.Point{X: side.Min.X - tagGapMM, Y: high}}, 1)
}

// lead leads what stands beside the plan, from below upwards, along the side of front view and plan in lanes that do not cross, and gives how far the lanes reach.
func (v *three) lead(list []tag) float64 {
	front, plan := v.front.on(), v.plan.on()
	side := max(front.Max.X, plan.Max.X) + firstLaneMM
	level := make([]float64, 0, len(list))
	low, high := front, plan
	if v.first {
		low, high = plan, front
	}
	for _, box := range [2]shape.Box{low, high} { // as the list comes
		var want []float64
		for _, t := range list {
			if t.at.Y >= box.Min.Y-1 && t.at.Y <= box.Max.Y+1 {
				want = append(want, t.at.Y)
			}
		}
		level = append(level, spread(want, laneMM, box.Min.Y, box.Max.Y)...)
	}
	for i, y := range level {
		// What comes from further away on its way to the plan takes the outer lane.
		lane := i
		if !v.first {
			lane = len(list) - 1 - i
		}
		list[i].by = []shape.Point{{X: side - 1, Y: y}, {X: side + float64(lane)*laneMM, Y: y}}
	}
	return side - firstLaneMM - plan.Max.X + max(lanesMM(len(list))-tagGapMM, 0)
}

// weldWords say by what standard the symbols are, and which welds have none here.
func (v *three) weldWords(b *part.Bracket, o *Options) string {
	if len(b.Welds) == 0 {
		return ""
	}
	here := map[int]bool{}
	for _, list := range v.columns {
		for _, t := range list {
			here[t.number] = true
		}
	}
	var others []string
	for i := range b.Welds {
		if !here[i+1] {
			others = append(others, number(i+1))
		}
	}
	standard := "ISO 2553, system A"
	if o.Units == units.Inch {
		standard = "AWS A2.4"
	}
	switch {
	case len(here) == 0:
		return "Welds: on the drawing of welds."
	case others == nil:
		return fmt.Sprintf("Weld symbols after %s, the weld's number in the tail.", standard)
	}
	return fmt.Sprintf("Weld symbols after %s, the weld's number in the tail; on the drawing of welds alone: %s.", standard, strings.Join(others, ", "))
}

// bestOf is the middle of the longest stretch of a weld in sight and how long that is in the picture; nil where there is none.
func (p *picture) bestOf(w *part.WeldGroup) (*part.Vec, float64) {
	at := p.best(w)
	if at == nil {
		return nil, 0
	}
	most := 0.0
	for _, s := range w.Segments {
		p.stretches(s, func(a, b part.Vec, seen bool) {
			if l := p.scene.Project(a).Dist(p.scene.Project(b)); seen {
				most = max(most, l)
			}
		})
	}
	return at, most
}

func (v *three) pictures() [3]*picture { return [3]*picture{v.front, v.plan, v.end} }
