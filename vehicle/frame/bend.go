package frame

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
)

// gravity is standard gravity, m/s2.
const gravity = 9.80665

// Reaction is the force of a support on a rail.
type Reaction struct {
	Name string
	XMM  float64
	UpN  float64
}

// Peak is the worst place of a diagram.
type Peak struct {
	XMM       float64
	MomentNMM float64
	StressMPa float64
}

// Diagram is shear and bending along one rail, where the mounts may share in several ways under the one with the worst stress.
type Diagram struct {
	Share       string // that way; empty: the loads as stated
	Stations    []Station
	Supports    []Reaction
	Worst       Peak
	GreatestN   float64 // greatest shear of every way, without sign
	OfYield     float64 // worst stress over the rail's yield, 0 where that is not known
	ResidualN   float64 // what is left of equilibrium at the rear end
	ResidualNMM float64
}

// CaseResult is one case on both rails.
type CaseResult struct {
	State, Case string
	Level       part.Level
	Left, Right Diagram
	Mean        Diagram  // both rails alike, each with half of everything
	Spread      *Diagram // the mean rail if the same load, with the same centre, lay along the body's stretch
	SpreadWhy   string   // why there is none
	OverSpread  float64  // worst stress of Mean over that of Spread, 0 where there is none
	Twists      []Twist
	Tubes       []TubeBending
}

// Governing is the worst place of a rail over all cases.
type Governing struct {
	Rail        string // left, right, mean, spread
	State, Case string
	Share       string // under which way of sharing; empty: the loads as stated
	Peak
}

// Result is everything about the frame's bending.
type Result struct {
	Rail      Section // bare
	Lined     []Stretch
	Cases     []CaseResult
	Governing []Governing // left, right, mean, spread
	Warnings  []Warning
	Unchecked []string
}

// Bend reckons every case. The error is part.FieldErrors.
func Bend(f Frame, cases []Case) (*Result, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	if err := f.checkCases("", cases); err != nil {
		return nil, err
	}
	return f.ready().bendAll(cases), nil
}

func (f *rails) bendAll(cases []Case) *Result {
	r := &Result{Rail: f.Rail.sum(nil), Lined: f.stretches(), Unchecked: f.unchecked()}
	for i := range cases {
		r.Cases = append(r.Cases, f.worst(&cases[i]))
	}
	r.Governing = governing(r.Cases)
	r.Warnings = f.warn(cases, r)
	return r
}

func (f *Frame) unchecked() []string {
	out := []string{
		"the maker's own bending limit and guide, which overrule these numbers",
		"buckling of the rail's web and flange under a bracket, holes, and the weld or bolts of liners; a liner counts in full between its ends",
		"fore-aft force along the rails, side bending of the ladder, and the turning that brakes and springs put into the hangers",
		"warping stress of twisted rails",
	}
	if f.YieldMPa == 0 {
		out = append(out, "stress against yield: the rail's yield is not stated (frame.yield_mpa)")
	}
	if f.CabBackMM == nil {
		out = append(out, "the zone behind the cab: its back is not stated (frame.cab_back_mm)")
	}
	if len(f.Own) == 0 {
		out = append(out, "the chassis-cab's own weight along the rails: no mass of the frame's own is stated")
	}
	return out
}

// worst is each rail, twist and tube of a case under the way of sharing that is worst for it.
func (f *rails) worst(c *Case) CaseResult {
	r := f.bend(c)
	one := *c
	for i := range c.Shares {
		s := &c.Shares[i]
		one.Loads = slices.Clone(c.Loads)
		for k := range one.Loads {
			one.Loads[k].Force = s.Forces[k]
		}
		r.take(f.bend(&one), s.Name)
	}
	return r
}

// take puts what is worse in another way of sharing in the place of what is there.
func (r *CaseResult) take(o CaseResult, share string) {
	worse := func(d, other *Diagram) bool {
		shear := max(d.GreatestN, other.GreatestN)
		d.GreatestN, other.GreatestN = shear, shear
		if !exceeds(other.Worst.StressMPa, d.Worst.StressMPa) {
			return false
		}
		other.Share = share
		*d = *other
		return true
	}
	worse(&r.Left, &o.Left)
	worse(&r.Right, &o.Right)
	if worse(&r.Mean, &o.Mean) {
		r.Spread, r.SpreadWhy, r.OverSpread = o.Spread, o.SpreadWhy, o.OverSpread
		if r.Spread != nil {
			r.Spread.Share = share
		}
	}
	for i := range r.Twists {
		if exceeds(o.Twists[i].MomentNMM, r.Twists[i].MomentNMM) {
			r.Twists[i], r.Twists[i].Share = o.Twists[i], share
		}
	}
	for i := range r.Tubes {
		t, other := &r.Tubes[i], &o.Tubes[i]
		if exceeds(t.AlongN, other.AlongN) {
			other.AlongN = t.AlongN
		} else {
			t.AlongN = other.AlongN
		}
		torque, held := max(t.TorqueNMM, other.TorqueNMM), max(t.HeldEndNMM, other.HeldEndNMM)
		if exceeds(other.StressMPa, t.StressMPa) {
			*t, t.Share = *other, share
		}
		t.TorqueNMM, t.HeldEndNMM = torque, held
	}
}

// exceeds says whether a is greater than b by more than rounding, without sign.
func exceeds(a, b float64) bool { return math.Abs(a) > math.Abs(b)*(1+1e-9) }

// bend is a case as its loads are stated.
func (f *rails) bend(c *Case) CaseResult {
	r := CaseResult{State: c.State, Case: c.Name, Level: c.Level}
	var left, right, mean beam
	for i := range c.Loads {
		l := &c.Loads[i]
		var p, q point
		if l.On == Both {
			p, q = f.between(l)
			if l.Tube != "" {
				r.Tubes = append(r.Tubes, f.tube(l.Tube).bend(l))
			}
		} else {
			t := f.twist(l)
			p, q = f.onOne(l, t.CoupleN)
			r.Twists = append(r.Twists, t)
		}
		left.points, right.points = append(left.points, p), append(right.points, q)
		mean.points = append(mean.points, point{l.At.X, (p.up + q.up) / 2, (p.turn + q.turn) / 2})
	}
	own := f.own(c.VerticalG)
	left.lines, right.lines, mean.lines = own, own, own
	r.Left, r.Right, r.Mean = f.diagram(left), f.diagram(right), f.diagram(mean)
	f.compare(&r, own, mean.points)
	return r
}

// turn is the couple of a fore-aft force about the rails' middle: rearward, high up, it sags what lies behind.
func (f *rails) turn(l *Load) float64 { return (l.At.Z - f.midZ()) * l.Force.X }

// onOne is what a mount on one rail does to the left and the right one, with the couple by which a cross member passes its twist on.
func (f *rails) onOne(l *Load, couple float64) (left, right point) {
	own, other := point{l.At.X, l.Force.Z + couple, f.turn(l)}, point{l.At.X, -couple, 0}
	if l.On == Right {
		return other, own
	}
	return own, other
}

// between is what a mount between the rails does to each: the lever of its place, and of its side force about the rails' middle, between the two
// shear centres. The fore-aft couple goes by the lever of its place alone.
func (f *rails) between(l *Load) (left, right point) {
	y := f.shearY(*f.section(l.At.X, true))
	roll := l.At.Y*l.Force.Z - (l.At.Z-f.midZ())*l.Force.Y
	up, lever := l.Force.Z/2+roll/(2*y), (1+l.At.Y/y)/2
	return point{l.At.X, up, f.turn(l) * lever}, point{l.At.X, l.Force.Z - up, f.turn(l) * (1 - lever)}
}

// compare bends the mean rail under the same load spread along the body.
func (f *rails) compare(r *CaseResult, own []line, points []point) {
	spread, why := f.spread(points)
	if why != "" {
		r.SpreadWhy = why
		return
	}
	d := f.diagram(beam{lines: append(slices.Clone(own), spread)})
	r.Spread = &d
	if s := math.Abs(d.Worst.StressMPa); s > 0 {
		r.OverSpread = math.Abs(r.Mean.Worst.StressMPa) / s
	}
}

// own is the frame's own weight on one rail, as lines.
func (f *Frame) own(verticalG float64) []line {
	var out []line
	for _, s := range f.Own {
		if l, err := straight(s.MassKG*gravity*verticalG/2, s.CGMM, s.FromMM, s.ToMM); err == nil && verticalG != 0 {
			out = append(out, l)
		}
	}
	return out
}

// spread is the mounts' load laid along the body, with the same sum and the same moment.
func (f *Frame) spread(points []point) (line, string) {
	sum, first, turn := 0.0, 0.0, 0.0
	for _, p := range points {
		sum += p.up
		first += p.up * p.x
		turn += p.turn
	}
	if math.Abs(sum) < 1 {
		return line{}, "no vertical load to spread"
	}
	l, err := straight(sum, (first-turn)/sum, f.BodyFromMM, f.BodyToMM)
	if err != nil {
		return line{}, "no spread body has this load: " + err.Error()
	}
	return l, ""
}

// diagram stands the rail on its axles and walks along it.
func (f *rails) diagram(b beam) Diagram {
	var d Diagram
	b.points = slices.Clone(b.points)
	up := [2]float64{}
	up[0], up[1] = b.stand(f.Axles[0].XMM, f.Axles[1].XMM)
	for i, a := range f.Axles {
		if len(a.HangersMM) != 2 {
			d.Supports = append(d.Supports, Reaction{a.Name, a.XMM, up[i]})
			continue
		}
		h := a.HangersMM
		front := up[i] * (h[1] - a.XMM) / (h[1] - h[0])
		d.Supports = append(d.Supports, Reaction{a.Name + ", front hanger", h[0], front}, Reaction{a.Name + ", rear hanger", h[1], up[i] - front})
	}
	for _, s := range d.Supports {
		b.points = append(b.points, point{s.XMM, s.UpN, 0})
	}
	d.Stations = b.stations(f.ends, func(x float64, after bool) float64 { return f.section(x, after).SMM3 })
	for _, s := range d.Stations {
		d.GreatestN = max(d.GreatestN, math.Abs(s.ShearN))
		if math.Abs(s.StressMPa) > math.Abs(d.Worst.StressMPa) {
			d.Worst = Peak{s.XMM, s.MomentNMM, s.StressMPa}
		}
	}
	last := d.Stations[len(d.Stations)-1]
	d.ResidualN, d.ResidualNMM = last.ShearN, last.MomentNMM
	if f.YieldMPa > 0 {
		d.OfYield = math.Abs(d.Worst.StressMPa) / f.YieldMPa
	}
	return d
}

func governing(cases []CaseResult) []Governing {
	out := []Governing{{Rail: "left"}, {Rail: "right"}, {Rail: "mean"}, {Rail: "spread"}}
	for i := range cases {
		c := &cases[i]
		for k, d := range []*Diagram{&c.Left, &c.Right, &c.Mean, c.Spread} {
			if d != nil && (out[k].Case == "" || math.Abs(d.Worst.StressMPa) > math.Abs(out[k].StressMPa)) {
				out[k] = Governing{out[k].Rail, c.State, c.Case, d.Share, d.Worst}
			}
		}
	}
	return out
}

func number(x float64) string { return fmt.Sprintf("%g", x) }
