package frame

import (
	"fmt"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/strength/statics"
	"lugwright/vehicle/field"
)

// Channel is a pressed channel as a tape measures it, outside sizes.
type Channel struct {
	DepthMM        float64
	FlangeMM       float64 // width, over the web's thickness
	ThicknessMM    float64 // of web and flanges alike
	InsideRadiusMM float64 // of the two bends, 0 for square corners
}

// LinerShape says what lies inside the rail.
type LinerShape string

const (
	LinerChannel     LinerShape = "channel"
	LinerAngleTop    LinerShape = "angle at the top"    // one leg on the web, the other under the top flange
	LinerAngleBottom LinerShape = "angle at the bottom" // one leg on the web, the other on the bottom flange
)

// LinerShapes lists every shape.
func LinerShapes() []LinerShape { return []LinerShape{LinerChannel, LinerAngleTop, LinerAngleBottom} }

// Liner is a reinforcement inside the rail's channel, against its web. A channel stands midway between the flanges.
type Liner struct {
	Name           string
	Shape          LinerShape
	DepthMM        float64 // along the web
	FlangeMM       float64
	ThicknessMM    float64
	InsideRadiusMM float64
	FromMM, ToMM   float64 // stations along the vehicle
}

// Section is what a rail amounts to. Bending is held to the vertical plane by the cross members.
type Section struct {
	AreaMM2       float64
	IMM4          float64 // about the horizontal axis through the centroid
	NeutralMM     float64 // that axis above the rail's lower face
	TopMM3        float64 // I over the distance to the upper face
	BottomMM3     float64 // and to the lower face
	SMM3          float64 // the lesser of the two
	ShearCentreMM float64 // from the middle plane of the rail's web, away from the flanges
	JMM4          float64 // St Venant constant, the sum of the parts'
	ThickestMM    float64 // thickest part, for the shear stress of twist
}

// Section is the section of the bare rail; the error is part.FieldErrors.
func (c Channel) Section() (Section, error) { return c.Lined() }

// Lined is the section of the rail where all the liners act with it as one.
//
// The shear centre is the mean of the parts' own, weighted by their inertia about the common axis: exact for channels in thin-wall
// theory, near enough for an angle, whose own centre is its heel.
func (c Channel) Lined(liners ...Liner) (Section, error) {
	var bad field.Errors
	c.check(&bad, "rail")
	for i := range liners {
		liners[i].check(&bad, fmt.Sprintf("liners[%d]", i), c)
	}
	if err := bad.Err(); err != nil {
		return Section{}, err
	}
	return c.sum(liners), nil
}

// pieceOf is one part of a section: its properties, where its web's middle lies inside of the rail's, and its own shear centre.
type pieceOf struct {
	p               shape.Properties
	t, inside, away float64
}

func (c Channel) sum(liners []Liner) Section {
	parts := []pieceOf{c.piece(0, 0)}
	for _, l := range liners {
		parts = append(parts, l.piece(c))
	}
	var s Section
	for _, q := range parts {
		s.AreaMM2 += q.p.AreaMM2
		s.NeutralMM += q.p.AreaMM2 * q.p.Centroid.Y
		s.JMM4 += q.p.AreaMM2 * q.t * q.t / 3
		s.ThickestMM = max(s.ThickestMM, q.t)
	}
	s.NeutralMM /= s.AreaMM2
	for _, q := range parts {
		off := q.p.Centroid.Y - s.NeutralMM
		i := q.p.IxxMM4 + q.p.AreaMM2*off*off
		s.IMM4 += i
		s.ShearCentreMM += i * (q.away - q.inside)
	}
	s.ShearCentreMM /= s.IMM4
	s.TopMM3, s.BottomMM3 = s.IMM4/(c.DepthMM-s.NeutralMM), s.IMM4/s.NeutralMM
	s.SMM3 = min(s.TopMM3, s.BottomMM3)
	return s
}

// piece is a channel whose lower outer corner stands at (y inside of the rail's outer face, z above its lower face).
func (c Channel) piece(y, z float64) pieceOf {
	b, d, t := c.FlangeMM, c.DepthMM, c.ThicknessMM
	outline := shape.Polyline(shape.Point{}, shape.Point{X: b}, shape.Point{X: b, Y: t}, shape.Point{X: t, Y: t}, shape.Point{X: t, Y: d - t},
		shape.Point{X: b, Y: d - t}, shape.Point{X: b, Y: d}, shape.Point{Y: d})
	if r := c.InsideRadiusMM; r > 0 {
		radius := map[int]float64{0: r + t, 3: r, 4: r, 7: r + t}
		if round, err := shape.FilletAll(outline, func(i int) float64 { return radius[i] }); err == nil {
			outline = round
		}
	}
	away, _ := statics.ChannelShearCentre(b-t/2, d-t, t, t)
	return pieceOf{p: shape.Outline{Outer: outline.Translate(shape.Point{X: y, Y: z})}.Properties(), t: t, away: away}
}

func (l Liner) piece(rail Channel) pieceOf {
	inside := (rail.ThicknessMM + l.ThicknessMM) / 2
	if l.Shape == LinerChannel {
		c := Channel{l.DepthMM, l.FlangeMM, l.ThicknessMM, l.InsideRadiusMM}
		q := c.piece(rail.ThicknessMM, (rail.DepthMM-l.DepthMM)/2)
		q.inside = inside
		return q
	}
	a, b, t := l.FlangeMM, l.DepthMM, l.ThicknessMM
	outline := shape.Polyline(shape.Point{}, shape.Point{X: a}, shape.Point{X: a, Y: t}, shape.Point{X: t, Y: t}, shape.Point{X: t, Y: b}, shape.Point{Y: b})
	if r := l.InsideRadiusMM; r > 0 {
		radius := map[int]float64{0: r + t, 3: r}
		if round, err := shape.FilletAll(outline, func(i int) float64 { return radius[i] }); err == nil {
			outline = round
		}
	}
	at := shape.Point{X: rail.ThicknessMM, Y: rail.ThicknessMM}
	if l.Shape == LinerAngleTop {
		outline = outline.MirrorY()
		at.Y = rail.DepthMM - rail.ThicknessMM
	}
	return pieceOf{p: shape.Outline{Outer: outline.Translate(at)}.Properties(), t: t, inside: inside}
}

// Stretch is a part of the rails that liners reinforce.
type Stretch struct {
	FromMM, ToMM float64
	Liners       []string
	Section      Section
}

// rails is a frame whose sections are made: sections[i] holds up to ends[i], and the last behind them all.
type rails struct {
	*Frame
	ends     []float64
	sections []Section
}

func (f *Frame) ready() *rails {
	r := &rails{Frame: f}
	for _, l := range f.Liners {
		r.ends = append(r.ends, l.FromMM, l.ToMM)
	}
	slices.Sort(r.ends)
	r.ends = slices.Compact(r.ends)
	for i := range len(r.ends) + 1 {
		r.sections = append(r.sections, f.Rail.sum(r.within(i)))
	}
	return r
}

// within are the liners that reach from one end to the next.
func (r *rails) within(i int) []Liner {
	if i == 0 || i == len(r.ends) {
		return nil
	}
	var in []Liner
	for _, l := range r.Liners {
		if l.FromMM <= r.ends[i-1] && l.ToMM >= r.ends[i] {
			in = append(in, l)
		}
	}
	return in
}

// section holds just before or just after a station.
func (r *rails) section(x float64, after bool) *Section {
	i, found := slices.BinarySearch(r.ends, x)
	if found && after {
		i++
	}
	return &r.sections[i]
}

func (r *rails) stretches() []Stretch {
	var out []Stretch
	for i := 1; i < len(r.ends); i++ {
		s := Stretch{FromMM: r.ends[i-1], ToMM: r.ends[i], Section: r.sections[i]}
		for _, l := range r.within(i) {
			s.Liners = append(s.Liners, l.Name)
		}
		if len(s.Liners) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// maxSection bounds a rail's sizes, mm.
const maxSection = 1000

func (c Channel) check(bad *field.Errors, at string) {
	d := bad.Positive(at+".depth_mm", c.DepthMM, maxSection)
	b := bad.Positive(at+".flange_mm", c.FlangeMM, maxSection)
	t := bad.Positive(at+".thickness_mm", c.ThicknessMM, 100)
	if !d || !b || !t {
		return
	}
	if most := min(c.DepthMM/2, c.FlangeMM); !(c.ThicknessMM < most) {
		bad.Refuse(at+".thickness_mm", fmt.Sprintf("%g", c.ThicknessMM), fmt.Sprintf("less than half the depth and less than the flange: %g", most))
		return
	}
	if most := min(c.DepthMM/2, c.FlangeMM) - c.ThicknessMM; !(c.InsideRadiusMM >= 0 && c.InsideRadiusMM < most) {
		bad.Refuse(at+".inside_radius_mm", fmt.Sprintf("%g", c.InsideRadiusMM), fmt.Sprintf("0 to less than %g, so that flat web and flange remain", most))
	}
}

func (l Liner) check(bad *field.Errors, at string, rail Channel) {
	bad.Range(at, l.FromMM, l.ToMM)
	d := bad.Positive(at+".depth_mm", l.DepthMM, maxSection)
	b := bad.Positive(at+".flange_mm", l.FlangeMM, maxSection)
	t := bad.Positive(at+".thickness_mm", l.ThicknessMM, 100)
	if !d || !b || !t {
		return
	}
	if room := rail.DepthMM - 2*rail.ThicknessMM; l.DepthMM > room+1e-9 {
		bad.Refuse(at+".depth_mm", fmt.Sprintf("%g", l.DepthMM), fmt.Sprintf("at most the room between the rail's flanges, %g", room))
	}
	switch l.Shape {
	case LinerChannel:
		Channel{l.DepthMM, l.FlangeMM, l.ThicknessMM, l.InsideRadiusMM}.check(bad, at)
	case LinerAngleTop, LinerAngleBottom:
		if most := min(l.DepthMM, l.FlangeMM); !(l.ThicknessMM < most) {
			bad.Refuse(at+".thickness_mm", fmt.Sprintf("%g", l.ThicknessMM), fmt.Sprintf("less than either leg: %g", most))
		} else if !(l.InsideRadiusMM >= 0 && l.InsideRadiusMM < most-l.ThicknessMM) {
			bad.Refuse(at+".inside_radius_mm", fmt.Sprintf("%g", l.InsideRadiusMM), fmt.Sprintf("0 to less than %g, so that flat legs remain", most-l.ThicknessMM))
		}
	default:
		bad.Refuse(at+".shape", fmt.Sprintf("%q", l.Shape), fmt.Sprintf("one of %q", LinerShapes()))
	}
}
