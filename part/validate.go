package part

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/shape"
)

// absurdMM and absurdCount bound what a bracket may hold; anything beyond is a slip of units or an attack.
const (
	absurdMM    = 1e5
	absurdCount = 1000
)

// Validate says whether the bracket is whole: sound outlines, finite numbers, unique names, references that resolve,
// paths that end at a support. It returns FieldErrors with paths such as "plates[2].thickness_mm".
func (b *Bracket) Validate() error {
	v := &validator{b: b}
	v.names()
	for i := range b.Plates {
		v.plate(i)
	}
	for i := range b.Members {
		v.member(i)
	}
	v.joints()
	v.loads()
	if len(v.bad) > 0 {
		return v.bad
	}
	return nil
}

type validator struct {
	b     *Bracket
	known map[string]bool // things a path or a joint may name
	bad   FieldErrors
}

func (v *validator) refuse(path, found, accept string) {
	if len(v.bad) < 50 {
		v.bad = append(v.bad, &FieldError{Field: path, Found: found, Accept: accept})
	}
}

// names gathers what can be referred to and refuses duplicates.
func (v *validator) names() {
	v.known = map[string]bool{}
	add := func(path, id string) {
		switch {
		case id == "" || len(id) > 100:
			v.refuse(path, fmt.Sprintf("%q", id), "a name of 1 to 100 letters")
		case v.known[id]:
			v.refuse(path, fmt.Sprintf("the name %q is used twice", id), "names unique within the bracket")
		}
		v.known[id] = true
	}
	b := v.b
	if n := len(b.Plates) + len(b.Members) + len(b.Welds) + len(b.Sweeps) + len(b.Paths); n > absurdCount {
		v.refuse("bracket", fmt.Sprintf("%d things", n), fmt.Sprintf("at most %d", absurdCount))
	}
	for i := range b.Plates {
		add(fmt.Sprintf("plates[%d].id", i), b.Plates[i].ID)
	}
	for i := range b.Members {
		add(fmt.Sprintf("members[%d].id", i), b.Members[i].ID)
		if b.Members[i].Profile.Kind == Angle {
			v.known[b.Members[i].ID+".a"], v.known[b.Members[i].ID+".b"] = true, true
		}
	}
	each(b.Pins, "pins", func(p *Pin) string { return p.ID }, add)
	each(b.Bolts, "bolts", func(p *BoltGroup) string { return p.ID }, add)
	each(b.Rods, "rods", func(p *Rods) string { return p.ID }, add)
	each(b.Welds, "welds", func(p *WeldGroup) string { return p.ID }, add)
	each(b.Contacts, "contacts", func(p *Contact) string { return p.ID }, add)
	each(b.Supports, "supports", func(p *Support) string { return p.ID }, add)
}

func each[T any](list []T, name string, id func(*T) string, add func(path, id string)) {
	for i := range list {
		add(fmt.Sprintf("%s[%d].id", name, i), id(&list[i]))
	}
}

func (v *validator) size(path string, mm, low float64) {
	if !(mm >= low && mm <= absurdMM) {
		v.refuse(path, fmt.Sprintf("%g mm", mm), fmt.Sprintf("%g to %g mm", low, absurdMM))
	}
}

func (v *validator) finite(path string, vs ...Vec) {
	for _, q := range vs {
		if s := q.X + q.Y + q.Z; math.IsNaN(s) || math.IsInf(s, 0) || q.Norm() > 10*absurdMM {
			v.refuse(path, fmt.Sprintf("(%g, %g, %g)", q.X, q.Y, q.Z), "finite coordinates in mm")
		}
	}
}

func (v *validator) pose(path string, p Pose) {
	v.finite(path+".origin", p.Origin)
	const close = 1e-9
	if math.Abs(p.U.Norm()-1) > close || math.Abs(p.V.Norm()-1) > close || math.Abs(p.U.Dot(p.V)) > close {
		v.refuse(path, "u and v are not unit vectors square to each other", "an orthonormal pose")
	}
}

func (v *validator) refers(path, id string) {
	if !v.known[id] {
		v.refuse(path, fmt.Sprintf("%q names nothing in the bracket", id), "the name of a plate, member, joint or support")
	}
}

func (v *validator) plate(i int) {
	p, at := &v.b.Plates[i], fmt.Sprintf("plates[%d]", i)
	v.size(at+".thickness_mm", p.ThicknessMM, 0.1)
	v.pose(at+".pose", p.Pose)
	if p.Material == "" {
		v.refuse(at+".material", "empty", "a grade name such as S355")
	}
	// As cut, holes are the same or smaller: what is sound when finished is sound on the table.
	for _, bad := range p.Shape(false).Validate() {
		v.refuse(at+".outline", fmt.Sprintf("%s: %s", p.ID, bad), "a closed outline with its holes inside")
	}
	for k, h := range p.Holes {
		v.size(fmt.Sprintf("%s.holes[%d].dia_mm", at, k), h.DiaMM, 0.1)
		if !(h.CutMM == 0 || h.CutMM >= 0.1 && h.CutMM <= h.DiaMM) {
			v.refuse(fmt.Sprintf("%s.holes[%d].cut_mm", at, k), fmt.Sprintf("%g mm", h.CutMM), "0 for none, or 0.1 mm to the finished diameter")
		}
	}
}

func (v *validator) member(i int) {
	m, at := &v.b.Members[i], fmt.Sprintf("members[%d]", i)
	v.size(at+".length_mm", m.LengthMM, 1)
	v.size(at+".profile.a_mm", m.Profile.AMM, 1)
	v.pose(at+".pose", m.Pose)
	if !slices.Contains(ProfileKinds(), m.Profile.Kind) {
		v.refuse(at+".profile.kind", string(m.Profile.Kind), "a known profile")
		return
	}
	if m.Profile.Kind != RoundBar {
		v.size(at+".profile.t_mm", m.Profile.TMM, 0.1)
	}
	if m.Profile.Kind == Angle {
		v.size(at+".profile.b_mm", m.Profile.BMM, 1)
		a, b := m.Legs()
		for _, leg := range []Plate{a, b} {
			o := leg.Shape(false)
			for _, bad := range o.Validate() {
				v.refuse(at+".holes", fmt.Sprintf("%s: %s", leg.ID, bad), "holes inside the leg")
			}
		}
	}
	if m.Material == "" {
		v.refuse(at+".material", "empty", "a grade name such as S355")
	}
}

func (v *validator) joints() {
	b := v.b
	for i := range b.Pins {
		v.pin(i)
	}
	for i, g := range b.Bolts {
		at := fmt.Sprintf("bolts[%d]", i)
		v.size(at+".dia_mm", g.DiaMM, 1)
		v.size(at+".hole_mm", g.HoleMM, g.DiaMM)
		v.pose(at+".pose", g.Pose)
		v.points(at+".points", g.Points)
		v.box(at+".patch", g.Patch)
		if other := b.BoltGroup(g.SameAs); g.SameAs != "" && (other == nil || other.SameAs != "" || len(other.Points) != len(g.Points)) {
			v.refuse(at+".same_as", g.SameAs, "a bolt group of as many bolts that are its own")
		}
		for k, ply := range g.Plies {
			v.refers(fmt.Sprintf("%s.plies[%d].thing", at, k), ply.Thing)
			v.size(fmt.Sprintf("%s.plies[%d].thickness_mm", at, k), ply.ThicknessMM, 0.1)
		}
	}
	for i, r := range b.Rods {
		at := fmt.Sprintf("rods[%d]", i)
		v.size(at+".dia_mm", r.DiaMM, 1)
		v.pose(at+".pose", r.Pose)
		v.points(at+".points", r.Points)
	}
	for i, w := range b.Welds {
		at := fmt.Sprintf("welds[%d]", i)
		v.size(at+".leg_mm", w.LegMM, 0.1)
		for k, id := range w.Joins {
			v.refers(fmt.Sprintf("%s.joins[%d]", at, k), id)
		}
		if len(w.Segments) == 0 {
			v.refuse(at+".segments", "none", "at least one run")
		}
		for k, s := range w.Segments {
			v.finite(fmt.Sprintf("%s.segments[%d]", at, k), s.A, s.B)
			v.size(fmt.Sprintf("%s.segments[%d].length", at, k), s.B.Sub(s.A).Norm(), 0.1)
		}
	}
	for i, c := range b.Contacts {
		v.pose(fmt.Sprintf("contacts[%d].pose", i), c.Pose)
		v.box(fmt.Sprintf("contacts[%d].patch", i), c.Patch)
		for k, id := range c.Things {
			v.refers(fmt.Sprintf("contacts[%d].things[%d]", i, k), id)
		}
	}
	for i, c := range b.Composites {
		at := fmt.Sprintf("composites[%d]", i)
		v.finite(at, c.From, c.To)
		if len(c.Things) < 2 {
			v.refuse(at+".things", fmt.Sprintf("%d things", len(c.Things)), "a flange and at least one web")
		}
		for k, id := range slices.Concat(c.Things, c.Welds) {
			v.refers(fmt.Sprintf("%s[%d]", at, k), id)
		}
	}
	for i, s := range b.Splices {
		v.refers(fmt.Sprintf("splices[%d].thing", i), s.Thing)
		for k, id := range slices.Concat(s.Laps, s.LapWelds) {
			v.refers(fmt.Sprintf("splices[%d].laps[%d]", i, k), id)
		}
	}
	for i, s := range b.Supports {
		v.size(fmt.Sprintf("supports[%d].thickness_mm", i), s.ThicknessMM, 0.1)
	}
}

func (v *validator) pin(i int) {
	p, at := &v.b.Pins[i], fmt.Sprintf("pins[%d]", i)
	v.size(at+".dia_mm", p.DiaMM, 1)
	v.finite(at, p.Center, p.Axis)
	if math.Abs(p.Axis.Norm()-1) > 1e-9 {
		v.refuse(at+".axis", "not a unit vector", "a unit vector")
	}
	loads, last := 0, math.Inf(-1)
	for k, s := range p.Seats {
		seat := fmt.Sprintf("%s.seats[%d]", at, k)
		v.size(seat+".thickness_mm", s.ThicknessMM, 0.1)
		if s.Loads {
			loads++
		} else {
			v.refers(seat+".thing", s.Thing)
		}
		if !(s.AtMM-s.ThicknessMM/2 >= last-1e-9) {
			v.refuse(seat+".at_mm", fmt.Sprintf("%g mm overlaps the seat before", s.AtMM), "seats in order along the axis, not overlapping")
		}
		last = s.AtMM + s.ThicknessMM/2
	}
	if loads != 1 || len(p.Seats) < 2 || len(p.Seats) > 20 {
		v.refuse(at+".seats", fmt.Sprintf("%d seats, %d of them bring load", len(p.Seats), loads), "2 to 20 seats, one of which brings the load")
	}
	if !(p.TravelMM >= 0 && p.TravelMM <= absurdMM) {
		v.refuse(at+".travel_mm", fmt.Sprintf("%g mm", p.TravelMM), "0 or more")
	}
}

func (v *validator) points(path string, pts []shape.Point) {
	if len(pts) == 0 || len(pts) > absurdCount {
		v.refuse(path, fmt.Sprintf("%d points", len(pts)), fmt.Sprintf("1 to %d", absurdCount))
	}
	for k, p := range pts {
		v.finite(fmt.Sprintf("%s[%d]", path, k), Vec{p.X, p.Y, 0})
	}
}

func (v *validator) box(path string, b shape.Box) {
	v.finite(path, Vec{b.Min.X, b.Min.Y, 0}, Vec{b.Max.X, b.Max.Y, 0})
	if !(b.Max.X > b.Min.X && b.Max.Y > b.Min.Y) {
		v.refuse(path, "an empty rectangle", "a rectangle with width and height")
	}
}

func (v *validator) loads() {
	b := v.b
	if len(b.LoadPoints) == 0 {
		v.refuse("load_points", "none", "at least one load point")
	}
	for i, l := range b.LoadPoints {
		v.finite(fmt.Sprintf("load_points[%d].at", i), l.At)
	}
	for i, s := range b.Shares {
		v.share(fmt.Sprintf("shares[%d]", i), s)
	}
	for i, p := range b.Paths {
		at := fmt.Sprintf("paths[%d]", i)
		if b.LoadPoint(p.LoadPoint) == nil {
			v.refuse(at+".load_point", fmt.Sprintf("%q", p.LoadPoint), "a load point of the bracket")
		}
		if slices.ContainsFunc(b.Paths[:i], func(q Path) bool { return q.LoadPoint == p.LoadPoint && q.Component == p.Component }) {
			v.refuse(at+".component", "a second path for "+p.Component.String(), "one path for each signed component")
		}
		v.branches(at, p)
	}
	for i, s := range b.Sweeps {
		at := fmt.Sprintf("sweeps[%d]", i)
		v.finite(at, s.From, s.To)
		v.size(at+".length", s.To.Sub(s.From).Norm(), 1e-3)
		for k, id := range s.Things {
			v.refers(fmt.Sprintf("%s.things[%d]", at, k), id)
		}
		if !(s.HeightMM >= 0 && s.HeightMM <= absurdMM && s.ReachMM >= 0 && s.ReachMM <= absurdMM && (s.HeightMM > 0) == (s.ReachMM > 0)) {
			v.refuse(at+".height_mm", fmt.Sprintf("%g mm high, reaching %g mm", s.HeightMM, s.ReachMM), "both 0, or both more")
		}
		if !(s.EntryMM >= 0 && s.EntryMM <= absurdMM) {
			v.refuse(at+".entry_mm", fmt.Sprintf("%g mm", s.EntryMM), "0 or more")
		}
		if s.Bolts != "" && b.BoltGroup(s.Bolts) == nil {
			v.refuse(at+".bolts", s.Bolts, "a bolt group of the bracket")
		}
	}
}

func (v *validator) share(at string, s Share) {
	switch {
	case s.Legs < 1 || s.Legs > 20:
		v.refuse(at+".legs", fmt.Sprint(s.Legs), "1 to 20")
	case s.Rule == Between && !(s.Legs == 2 && s.Lo >= 0 && s.Hi <= 1 && s.Lo <= s.Hi):
		v.refuse(at, fmt.Sprintf("%g to %g over %d legs", s.Lo, s.Hi, s.Legs), "two legs and 0 <= lo <= hi <= 1")
	case s.Rule == ByPinSpan && v.b.Pin(s.Pin) == nil:
		v.refuse(at+".pin", s.Pin, "a pin of the bracket")
	case !slices.Contains(ShareRules(), s.Rule):
		v.refuse(at+".rule", string(s.Rule), "a known rule")
	}
}

// branches checks that each branch is whole and that the legs of each share are all there, so that nothing of the load
// is lost or carried twice.
func (v *validator) branches(at string, p Path) {
	if len(p.Branches) == 0 || len(p.Branches) > 50 {
		v.refuse(at+".branches", fmt.Sprint(len(p.Branches)), "1 to 50 branches")
		return
	}
	share := p.Branches[0].Share
	legs := map[int]bool{}
	for k, br := range p.Branches {
		path := fmt.Sprintf("%s.branches[%d]", at, k)
		v.finite(path+".at", br.At)
		if br.Share != share {
			v.refuse(path+".share", br.Share, "one share for all branches of a path")
		}
		legs[br.Leg] = true
		for _, id := range br.Through {
			v.refers(path+".through", id)
		}
		if n := len(br.Through); n == 0 || v.b.Support(br.Through[n-1]) == nil {
			v.refuse(path+".through", strings.Join(br.Through, " > "), "a chain that ends at a support")
		}
	}
	want := 1
	if share != "" {
		s := v.b.Share(share)
		if s == nil {
			v.refuse(at+".share", share, "a share of the bracket")
			return
		}
		want = s.Legs
	}
	if len(legs) != want || len(p.Branches) != want {
		v.refuse(at+".branches", fmt.Sprintf("%d branches on %d legs", len(p.Branches), len(legs)), fmt.Sprintf("one branch for each of %d legs", want))
	}
	for leg := range want {
		if !legs[leg] {
			v.refuse(at+".branches", fmt.Sprintf("leg %d is missing", leg), "legs numbered from 0")
		}
	}
}
