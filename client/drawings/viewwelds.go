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

// weldTag is a weld in the view that shows the longest stretch of it.
type weldTag struct {
	number int
	tag    func() tag
	width  float64
	led    bool // its symbol stands beside another view, its leader goes round
}

const (
	symbolHalfMM = 4.2 // paper over and under a symbol's line
	laneMM       = 1.6 // from one leader that goes round to the next
	firstLaneMM  = 2.0 // from the view to the first of them
)

// shownWelds parts the welds between the views, front, plan and end, by where the longest stretch is seen; hidden ones are in none.
func (v *three) shownWelds(b *part.Bracket, o *Options) (out [3][]weldTag) {
	for i := range b.Welds {
		w := &b.Welds[i]
		best, most, at := -1, 0.0, part.Vec{}
		for k, p := range v.pictures() {
			if q, long := p.bestOf(w); q != nil && long > most+1e-6 {
				best, most, at = k, long, *q
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

// layouts say beside which view, by its number, the symbols of the welds of front, plan and end stand; -1 for nowhere. The best first: what the front view
// shows may stand beside the plan, where nothing else is.
var layouts = [6][3]int{{0, 1, 2}, {1, 1, 2}, {0, 1, -1}, {1, 1, -1}, {-1, 1, -1}, {-1, -1, -1}}

// withWelds takes symbols into the columns beside the views, each as many as stand beside it, and says how many that are.
func (v *three) withWelds(all [3][]weldTag, layout [3]int) int {
	v.columns = [3][]weldTag{}
	n := 0
	for k, list := range all {
		if at := layout[k]; at >= 0 {
			led := at != k
			for i := range list {
				list[i].led = led
			}
			room := max(int(v.pictures()[at].on().Height()/(2*symbolHalfMM))-len(v.columns[at]), 0)
			v.columns[at] = append(v.columns[at], list[:min(room, len(list))]...)
			n += min(room, len(list))
		}
	}
	return n
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

func (v *three) drawWelds(g *page) {
	for k, p := range v.pictures() {
		var list, led []tag
		for _, t := range v.columns[k] {
			if t.led {
				led = append(led, t.tag())
			} else {
				list = append(list, t.tag())
			}
		}
		box := p.on()
		box.Max.X += v.led(led)
		list = append(list, led...)
		slices.SortStableFunc(list, func(a, b tag) int { return cmp.Compare(a.at.Y, b.at.Y) })
		setColumn(g, list, box, 1)
	}
}

// led leads what stands beside the plan from the front view, along its side in lanes that do not cross, and gives how far the lanes reach.
func (v *three) led(list []tag) float64 {
	if len(list) == 0 {
		return 0
	}
	slices.SortStableFunc(list, func(a, b tag) int { return cmp.Compare(a.at.Y, b.at.Y) })
	want := make([]float64, len(list))
	for i := range list {
		want[i] = list[i].at.Y
	}
	side := v.front.on()
	for i, y := range spread(want, laneMM, side.Min.Y, side.Max.Y) {
		// What comes from further away on its way to the plan takes the outer lane.
		lane := i
		if !v.first {
			lane = len(list) - 1 - i
		}
		x := side.Max.X + firstLaneMM
		list[i].by = []shape.Point{{X: x - 1, Y: y}, {X: x + float64(lane)*laneMM, Y: y}}
	}
	return max(side.Max.X-v.plan.on().Max.X, 0) + max(firstLaneMM+float64(len(list))*laneMM-tagGapMM, 0)
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
