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
	maxVertices = 2000 // of one plate's loops, holes counted
	// Of all plates of a bracket, each of which is drawn against each other, and of a sheet.
	maxBracketVertices, maxSheetVertices = 10_000, 100_000
	maxSweeps                            = 100
)

// Validate says whether the bracket is whole: sound outlines, finite numbers, unique names, references that resolve,
// paths that end at a support. It returns FieldErrors with paths such as "plates[2].thickness_mm".
func (b *Bracket) Validate() error {
	v := &validator{b: b}
	if v.tooFine(maxBracketVertices) {
		return v.bad
	}
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

// ValidatePlates checks plates that belong to no one bracket, so that two may bear one name. It returns FieldErrors with paths such as
// "plates[2].thickness_mm".
func ValidatePlates(plates []Plate) error {
	v := &validator{b: &Bracket{Plates: plates}}
	if v.tooFine(maxSheetVertices) {
		return v.bad
	}
	for i := range plates {
		v.plate(i)
	}
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
		for _, id := range b.Plates[i].Flanges() {
			v.known[id] = true
		}
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
	v.unique()
}

// unique refuses names used twice among what paths do not pass through: load points, shares, sweeps, composites, splices.
func (v *validator) unique() {
	b := v.b
	for _, list := range []struct {
		name string
		n    int
		id   func(i int) string
	}{
		{"load_points", len(b.LoadPoints), func(i int) string { return b.LoadPoints[i].ID }},
		{"shares", len(b.Shares), func(i int) string { return b.Shares[i].ID }},
		{"sweeps", len(b.Sweeps), func(i int) string { return b.Sweeps[i].ID }},
		{"composites", len(b.Composites), func(i int) string { return b.Composites[i].ID }},
		{"splices", len(b.Splices), func(i int) string { return b.Splices[i].ID }},
	} {
		seen := map[string]bool{}
		for i := range list.n {
			if id := list.id(i); id == "" || len(id) > 100 || seen[id] {
				v.refuse(fmt.Sprintf("%s[%d].id", list.name, i), fmt.Sprintf("%q", id), "a name of 1 to 100 letters, used once")
			}
			seen[list.id(i)] = true
		}
	}
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
	if !(math.Abs(p.U.Norm()-1) <= close && math.Abs(p.V.Norm()-1) <= close && math.Abs(p.U.Dot(p.V)) <= close) {
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
	if n := p.vertices(); n > maxVertices {
		v.refuse(at+".outer", fmt.Sprintf("%d vertices and holes", n), fmt.Sprintf("at most %d", maxVertices))
		return
	}
	v.marks(at, p)
	// As cut, holes are the same or smaller: what is sound when finished is sound on the table.
	for _, bad := range p.Shape(false).Validate() {
		v.refuse(at+".outer", fmt.Sprintf("%s: %s", p.ID, bad), "a closed outline with its holes inside")
	}
	for k, h := range p.Holes {
		v.size(fmt.Sprintf("%s.holes[%d].diameter_mm", at, k), h.DiaMM, 0.1)
		if _, err := TapDrillMM(h.Thread); (h.Thread != "") != (h.Finish == Tapped) || h.Thread != "" && err != nil {
			v.refuse(fmt.Sprintf("%s.holes[%d].thread", at, k), fmt.Sprintf("%q, finish %s", h.Thread, h.Finish), "a coarse thread such as M8 with a tapped hole, none with another")
		}
		if !(h.CutMM == 0 || h.CutMM >= 0.1 && h.CutMM <= h.DiaMM) {
			v.refuse(fmt.Sprintf("%s.holes[%d].cut_mm", at, k), fmt.Sprintf("%g mm", h.CutMM), "0 for none, or 0.1 mm to the finished diameter")
		}
	}
}

// tooFine refuses plates that are costly to look at together, before any is looked at.
func (v *validator) tooFine(most int) bool {
	n := 0
	for i := range v.b.Plates {
		n += v.b.Plates[i].vertices()
	}
	if n > most {
		v.refuse("plates", fmt.Sprintf("%d corners and holes in all", n), fmt.Sprintf("at most %d", most))
	}
	return n > most
}

// vertices counts what makes a plate costly to look at.
func (p *Plate) vertices() int {
	n := len(p.Outer) + len(p.Holes)
	for _, l := range p.Cutouts {
		n += len(l)
	}
	return n
}

// marks checks etch marks, bends and rolling.
func (v *validator) marks(at string, p *Plate) {
	for k, e := range p.Etch {
		path := fmt.Sprintf("%s.etch[%d]", at, k)
		v.size(path+".height_mm", e.HeightMM, 0.5)
		v.finite(path+".at_mm", Vec{e.At.X, e.At.Y, 0})
		v.between(path+".angle_rad", e.AngleRad, -2*math.Pi, 2*math.Pi)
	}
	for k, b := range p.Bends {
		path := fmt.Sprintf("%s.bends[%d]", at, k)
		v.finite(path, Vec{b.A.X, b.A.Y, 0}, Vec{b.B.X, b.B.Y, 0})
		v.between(path+".angle_rad", b.AngleRad, -math.Pi, math.Pi)
		v.between(path+".radius_mm", b.RadiusMM, 0, absurdMM)
		// The neutral line of a bend lies within the sheet.
		if least := math.Abs(b.AngleRad) * b.RadiusMM; b.AllowanceMM != 0 {
			v.between(path+".allowance_mm", b.AllowanceMM, least, least+math.Abs(b.AngleRad)*p.ThicknessMM)
		}
	}
	v.between(at+".rolled_mm", p.RolledMM, 0, absurdMM)
}

// between refuses what is out of range, NaN included.
func (v *validator) between(path string, x, low, high float64) {
	if !(x >= low && x <= high) {
		v.refuse(path, fmt.Sprintf("%g", x), fmt.Sprintf("%g to %g", low, high))
	}
}

func (v *validator) member(i int) {
	m, at := &v.b.Members[i], fmt.Sprintf("members[%d]", i)
	v.size(at+".length_mm", m.LengthMM, 1)
	v.size(at+".profile.a_mm", m.Profile.AMM, 1)
	v.between(at+".profile.b_mm", m.Profile.BMM, 0, absurdMM)
	v.between(at+".profile.root_mm", m.Profile.RootMM, 0, absurdMM)
	for k, h := range m.Holes {
		v.size(fmt.Sprintf("%s.holes[%d].diameter_mm", at, k), h.DiaMM, 0.1)
		v.between(fmt.Sprintf("%s.holes[%d].cut_mm", at, k), h.CutMM, 0, h.DiaMM)
	}
	v.pose(at+".pose", m.Pose)
	if !slices.Contains(ProfileKinds(), m.Profile.Kind) {
		v.refuse(at+".profile.kind", string(m.Profile.Kind), "a known profile")
		return
	}
	if m.Profile.Kind != RoundBar {
		v.size(at+".profile.t_mm", m.Profile.TMM, 0.1)
	}
	if m.Profile.Kind == FlatBar && m.Profile.TMM > m.Profile.AMM {
		v.refuse(at+".profile.t_mm", fmt.Sprintf("%g mm", m.Profile.TMM), fmt.Sprintf("a flat bar's thickness, at most its width of %g mm", m.Profile.AMM))
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
		v.size(at+".diameter_mm", g.DiaMM, 1)
		if d, err := NominalDiaMM(g.Size); err != nil || math.Abs(d-g.DiaMM) > 1e-6 {
			v.refuse(at+".diameter_mm", fmt.Sprintf("%g mm for size %q", g.DiaMM, g.Size), "the nominal diameter of the size")
		}
		v.size(at+".hole_mm", g.HoleMM, g.DiaMM)
		v.size(at+".grip_mm", g.GripMM, 0.1)
		v.between(at+".preload_ratio", g.Preload, 0, MaxPreload)
		v.between(at+".slip_coefficient", g.SlipC, 0, MaxSlipC)
		for k, a := range g.Across {
			path := fmt.Sprintf("%s.across[%d]", at, k)
			v.between(path+".b_mm", a.BMM, 0, absurdMM)
			v.between(path+".a_mm", a.AMM, 0, absurdMM)
			v.between(path+".p_mm", a.PMM, 0, absurdMM)
		}
		v.pose(at+".pose", g.Pose)
		v.points(at+".points_mm", g.Points)
		v.box(at+".patch", g.Patch)
		if other := b.BoltGroup(g.SameAs); g.SameAs != "" && (other == nil || other.SameAs != "" || len(other.Points) != len(g.Points)) {
			v.refuse(at+".same_as", g.SameAs, "a bolt group of as many bolts that are its own")
		}
		for k, ply := range g.Plies {
			v.refers(fmt.Sprintf("%s.plies[%d].thing", at, k), ply.Thing)
			path := fmt.Sprintf("%s.plies[%d]", at, k)
			v.size(path+".thickness_mm", ply.ThicknessMM, 0.1)
			if t, known := b.thickness(ply.Thing); known && math.Abs(t-ply.ThicknessMM) > 1e-6 {
				v.refuse(path+".thickness_mm", fmt.Sprintf("%g mm", ply.ThicknessMM), fmt.Sprintf("the thickness of %s, %g mm", ply.Thing, t))
			}
			v.between(path+".edge_mm", ply.EdgeMM, 0, absurdMM)
			v.between(path+".pitch_mm", ply.PitchMM, 0, absurdMM)
		}
	}
	for i, r := range b.Rods {
		at := fmt.Sprintf("rods[%d]", i)
		v.size(at+".diameter_mm", r.DiaMM, 1)
		v.between(at+".free_mm", r.FreeMM, 0, absurdMM)
		v.between(at+".engagement_mm", r.EngagementMM, 0, absurdMM)
		v.between(at+".stop_mm", r.StopMM, -absurdMM, absurdMM)
		if dia, err := NominalDiaMM(r.Size); err != nil || dia != r.DiaMM {
			v.refuse(at+".size", fmt.Sprintf("%q for a diameter of %g mm", r.Size, r.DiaMM), "the size of the diameter, such as M12")
		}
		if len(r.Points) == 0 {
			v.refuse(at+".points_mm", "none", "at least one rod")
		}
		v.pose(at+".pose", r.Pose)
		v.points(at+".points_mm", r.Points)
	}
	for i := range b.Welds {
		v.weld(i)
	}
	for i, c := range b.Contacts {
		v.pose(fmt.Sprintf("contacts[%d].pose", i), c.Pose)
		v.box(fmt.Sprintf("contacts[%d].patch", i), c.Patch)
		v.between(fmt.Sprintf("contacts[%d].gap_mm", i), c.GapMM, 0, absurdMM)
		v.between(fmt.Sprintf("contacts[%d].preload_n", i), c.PreloadN, 0, 1e8)
		v.between(fmt.Sprintf("contacts[%d].wrap_rad", i), c.WrapRad, 0, 2*math.Pi)
		v.between(fmt.Sprintf("contacts[%d].friction", i), c.FrictionC, 0, 2)
		for k, id := range c.Things {
			v.refers(fmt.Sprintf("contacts[%d].things[%d]", i, k), id)
		}
	}
	for i, c := range b.Composites {
		at := fmt.Sprintf("composites[%d]", i)
		v.finite(at, c.From, c.To)
		v.size(at+".span_mm", c.SpanMM, 0.1)
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
		v.between(fmt.Sprintf("supports[%d].clear_mm", i), s.ClearMM, 0, absurdMM)
	}
}

func (v *validator) weld(i int) {
	w, at := &v.b.Welds[i], fmt.Sprintf("welds[%d]", i)
	v.size(at+".leg_mm", w.LegMM, 0.1)
	for k, id := range w.Joins {
		v.refers(fmt.Sprintf("%s.joins[%d]", at, k), id)
	}
	if w.Joins[0] == w.Joins[1] {
		v.refuse(at+".joins", w.Joins[0]+" with itself", "two things")
	}
	if len(w.Segments) == 0 {
		v.refuse(at+".segments", "none", "at least one run")
	}
	least := 0.1
	if w.Kind == Plug {
		v.size(at+".width_mm", w.WidthMM, 1)
		least = max(least, w.WidthMM-closeMM)
	} else if w.WidthMM != 0 {
		v.refuse(at+".width_mm", fmt.Sprintf("%g mm of a %s weld", w.WidthMM, w.Kind), "0: only plugs and slots have a width")
	}
	for k, s := range w.Segments {
		v.finite(fmt.Sprintf("%s.segments[%d]", at, k), s.A, s.B)
		v.size(fmt.Sprintf("%s.segments[%d].length", at, k), s.B.Sub(s.A).Norm(), least)
	}
	for k, s := range w.Segments {
		if length, first := s.B.Sub(s.A).Norm(), w.Segments[0].B.Sub(w.Segments[0].A).Norm(); w.Kind == Plug && math.Abs(length-first) > closeMM {
			v.refuse(fmt.Sprintf("%s.segments[%d].length", at, k), fmt.Sprintf("%g mm", length), fmt.Sprintf("%g mm as the first: plugs of one group are alike", first))
		}
	}
	v.weldDepth(w, at+".leg_mm")
}

// closeMM is how far two sizes that are to be the same may differ.
const closeMM = 1e-6

// weldDepth holds a weld within the plate to its thickness: complete penetration goes through the thinner of what it joins, and no plug stands out of its hole.
func (v *validator) weldDepth(w *WeldGroup, at string) {
	p, on := v.b.Face(w.Joins[0]), v.b.Face(w.Joins[1])
	if p == nil || w.Kind != CJP && w.Kind != Plug {
		return
	}
	if w.LegMM > p.ThicknessMM+closeMM {
		v.refuse(at, fmt.Sprintf("%g mm", w.LegMM), fmt.Sprintf("at most the thickness of %s, %g mm", p.ID, p.ThicknessMM))
	}
	least := p.ThicknessMM
	if on != nil {
		least = min(least, on.ThicknessMM)
	}
	if w.Kind == CJP && w.LegMM < least-closeMM {
		v.refuse(at, fmt.Sprintf("%g mm", w.LegMM), fmt.Sprintf("the thickness, %g mm: what goes less deep is of partial penetration", least))
	}
}

func (v *validator) pin(i int) {
	p, at := &v.b.Pins[i], fmt.Sprintf("pins[%d]", i)
	v.size(at+".diameter_mm", p.DiaMM, 1)
	v.size(at+".length_mm", p.LengthMM, 1)
	for k, e := range p.Ends {
		v.between(fmt.Sprintf("%s.ends[%d].play_mm", at, k), e.PlayMM, 0, absurdMM)
		if _, err := NominalDiaMM(e.Size); e.Size != "" && err != nil {
			v.refuse(fmt.Sprintf("%s.ends[%d].size", at, k), fmt.Sprintf("%q", e.Size), "a thread size such as M6, or none")
		}
		if e.BearsOn != "" {
			v.refers(fmt.Sprintf("%s.ends[%d].bears_on", at, k), e.BearsOn)
		}
	}
	v.finite(at, p.Center, p.Axis)
	if !(math.Abs(p.Axis.Norm()-1) <= 1e-9) {
		v.refuse(at+".axis", "not a unit vector", "a unit vector")
	}
	loads, last := 0, math.Inf(-1)
	for k, s := range p.Seats {
		seat := fmt.Sprintf("%s.seats[%d]", at, k)
		v.size(seat+".thickness_mm", s.ThicknessMM, 0.1)
		v.between(seat+".at_mm", s.AtMM, -absurdMM, absurdMM)
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
	v.span(at, p)
}

// span checks what statics of the pin stands on: the load between its supports wherever it may travel, seats that are as thick as the
// plates that make them.
func (v *validator) span(at string, p *Pin) {
	v.between(at+".travel_mm", p.TravelMM, 0, absurdMM)
	supports, load := 0, -1
	for k, s := range p.Seats {
		v.between(fmt.Sprintf("%s.seats[%d].hole_mm", at, k), s.HoleMM, 0, absurdMM)
		v.between(fmt.Sprintf("%s.seats[%d].bush_mm", at, k), s.BushMM, 0, absurdMM)
		if s.Loads {
			load = k
			continue
		}
		supports++
		if t := v.b.seated(p, s); t > 0 && s.ThicknessMM > t+1e-6 {
			v.refuse(fmt.Sprintf("%s.seats[%d].thickness_mm", at, k), fmt.Sprintf("%g mm", s.ThicknessMM), fmt.Sprintf("at most %g mm, the plates with a hole there", t))
		}
	}
	switch {
	case load < 0: // said already
	case supports < 1 || supports > 2:
		v.refuse(at+".seats", fmt.Sprintf("%d supporting seats", supports), "one or two")
	case supports == 2 && (load == 0 || load == len(p.Seats)-1):
		v.refuse(at+".seats", "the load stands outside its two supports", "the load between them")
	default:
		for _, k := range [2]int{load - 1, load + 1} {
			if k < 0 || k >= len(p.Seats) {
				continue
			}
			s, l := p.Seats[k], p.Seats[load]
			if room := math.Abs(s.AtMM-l.AtMM) - (s.ThicknessMM+l.ThicknessMM)/2; p.TravelMM > room+1e-6 {
				v.refuse(at+".travel_mm", fmt.Sprintf("%g mm", p.TravelMM), fmt.Sprintf("at most %g mm, the gap to %s", room, s.Thing))
			}
		}
	}
}

// seated is the steel that a seat bears in: every plate with a hole on the pin's axis within the seat; 0 when none is found.
func (b *Bracket) seated(p *Pin, s Seat) float64 {
	sum := 0.0
	around := b.Plates
	for i := range b.Members {
		if m := &b.Members[i]; m.OnPin(p) {
			around = append(slices.Clip(around), m.Ring())
		}
	}
	for i := range around {
		q := &around[i]
		for _, h := range q.Holes {
			off := q.HoleAt(h).Sub(p.Center)
			along := off.Dot(p.Axis)
			if off.AddScaled(-along, p.Axis).Norm() < 0.01 && math.Abs(along-s.AtMM) <= s.ThicknessMM/2 {
				sum += q.ThicknessMM
			}
		}
	}
	return sum
}

// thickness is that of a plate, of what is turned up of it, or of an angle's leg.
func (b *Bracket) thickness(id string) (float64, bool) {
	for i := range b.Plates {
		p := &b.Plates[i]
		if id == p.ID || slices.Contains(p.Flanges(), id) {
			return p.ThicknessMM, true
		}
	}
	for i := range b.Members {
		if m := &b.Members[i]; m.Profile.Kind == Angle && (id == m.ID+".a" || id == m.ID+".b") {
			return m.Profile.TMM, true
		}
	}
	return 0, false
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
		v.finite(fmt.Sprintf("load_points[%d].at_mm", i), l.At)
		if n := l.Axis.Norm(); l.Axis != (Vec{}) && !(math.Abs(n-1) <= 1e-9) {
			v.refuse(fmt.Sprintf("load_points[%d].axis", i), "not a unit vector", "a unit vector, or nought")
		}
		if l.Patch != nil {
			v.pose(fmt.Sprintf("load_points[%d].patch.pose", i), l.Patch.Pose)
			v.box(fmt.Sprintf("load_points[%d].patch.box", i), l.Patch.Box)
		}
	}
	for i, s := range b.Shares {
		v.share(fmt.Sprintf("shares[%d]", i), s)
	}
	for i, p := range b.Paths {
		at := fmt.Sprintf("paths[%d]", i)
		if b.LoadPoint(p.LoadPoint) == nil {
			v.refuse(at+".load_point", fmt.Sprintf("%q", p.LoadPoint), "a load point of the bracket")
		}
		if slices.ContainsFunc(b.Paths[:i], func(q Path) bool {
			return b.LoadPoint(q.LoadPoint) == b.LoadPoint(p.LoadPoint) && q.Component == p.Component
		}) {
			v.refuse(at+".component", "a second path for "+p.Component.String(), "one path for each signed component")
		}
		v.branches(at, p)
	}
	if len(b.Sweeps) > maxSweeps {
		v.refuse("sweeps", fmt.Sprint(len(b.Sweeps)), fmt.Sprintf("at most %d", maxSweeps))
	}
	for i, s := range b.Sweeps {
		at := fmt.Sprintf("sweeps[%d]", i)
		v.finite(at, s.From, s.To)
		v.size(at+".to_mm", s.To.Sub(s.From).Norm(), 1e-3)
		if len(s.Things) == 0 {
			v.refuse(at+".things", "none", "at least one plate or leg")
		}
		for k, id := range s.Things {
			v.refers(fmt.Sprintf("%s.things[%d]", at, k), id)
		}
		if !(s.HeightMM >= 0 && s.HeightMM <= absurdMM && s.ReachMM >= 0 && s.ReachMM <= absurdMM && (s.HeightMM > 0) == (s.ReachMM > 0)) {
			v.refuse(at+".height_mm", fmt.Sprintf("%g mm high, reaching %g mm", s.HeightMM, s.ReachMM), "both 0, or both more")
		}
		if !(s.EntryMM >= 0 && s.EntryMM <= absurdMM) {
			v.refuse(at+".entry_mm", fmt.Sprintf("%g mm", s.EntryMM), "0 or more")
		}
		if !(s.EntryToMM >= 0 && s.EntryToMM <= absurdMM) {
			v.refuse(at+".entry_to_mm", fmt.Sprintf("%g mm", s.EntryToMM), "0 or more")
		}
		if s.Bolts != "" && b.BoltGroup(s.Bolts) == nil {
			v.refuse(at+".bolts", s.Bolts, "a bolt group of the bracket")
		}
		if s.Via != "" {
			v.refers(at+".via", s.Via)
		}
		v.between(at+".free_mm", s.FreeMM, 0, absurdMM)
	}
}

func (v *validator) share(at string, s Share) {
	v.between(at+".lo", s.Lo, 0, 1)
	v.between(at+".hi", s.Hi, 0, 1)
	v.finite(at+".ends_mm", s.Ends[0], s.Ends[1])
	switch {
	case s.Legs < 1 || s.Legs > 20:
		v.refuse(at+".legs", fmt.Sprint(s.Legs), "1 to 20")
	case s.Rule == Between && !(s.Legs%2 == 0 && s.Lo >= 0 && s.Hi <= 1 && s.Lo <= s.Hi):
		v.refuse(at, fmt.Sprintf("%g to %g over %d legs", s.Lo, s.Hi, s.Legs), "an even number of legs and 0 <= lo <= hi <= 1")
	case s.Rule == ByPinSpan && v.b.Pin(s.Pin) == nil:
		v.refuse(at+".pin", s.Pin, "a pin of the bracket")
	case s.Rule == ByPinSpan && s.Legs != v.b.Pin(s.Pin).supports():
		v.refuse(at+".legs", fmt.Sprint(s.Legs), fmt.Sprintf("the pin's supporting seats, %d", v.b.Pin(s.Pin).supports()))
	case s.Rule == ByBeamSpan:
		v.beam(at, &s)
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
	all := make([]*Branch, len(p.Branches))
	for k := range p.Branches {
		br, path := &p.Branches[k], fmt.Sprintf("%s.branches[%d]", at, k)
		v.finite(path+".at", br.At)
		v.finite(path+".thrust", br.Thrust, br.Couple)
		for _, id := range br.Through {
			v.refers(path+".through", id)
		}
		if n := len(br.Through); n == 0 || v.b.Support(br.Through[n-1]) == nil {
			v.refuse(path+".through", strings.Join(br.Through, " > "), "a chain that ends at a support")
			continue
		}
		all[k] = br
		v.spanned(path, *br)
		if s := v.b.Share(br.Share); s != nil && s.Rule == ByBeamSpan && br.At != p.Branches[0].At {
			v.refuse(path+".at", "another place than the first branch's", "one place of the load for both ends of a member")
		}
	}
	v.forked(at+".branches", all, nil)
}

// forked checks branches that have come the same way so far: one that ends there, or every leg of one share more.
func (v *validator) forked(at string, branches []*Branch, way []Fork) {
	depth := len(way)
	first := branches[0].Forks()
	if len(first) == depth {
		if len(branches) > 1 {
			v.refuse(at, fmt.Sprintf("%d branches at the end of one way", len(branches)), "one branch for each of the legs")
		}
		if b := branches[0]; depth == 0 && (b.Thrust != (Vec{}) || b.Couple != (Vec{})) {
			v.refuse(at, "thrust or couple on a branch alone", "legs of an equal share that balance each other")
		}
		return
	}
	id := first[depth].Share
	s := v.b.Share(id)
	switch {
	case s == nil:
		v.refuse(at, fmt.Sprintf("share %q", id), "a share of the bracket")
		return
	case s.Legs > absurdCount || slices.ContainsFunc(way, func(f Fork) bool { return f.Share == id }):
		v.refuse(at, fmt.Sprintf("share %q twice on one way", id), "each share once on a way")
		return
	case s.Rule == ByBeamSpan && (depth > 0 || len(first) > 1):
		v.refuse(at, fmt.Sprintf("share %q beside another on one way", id), "the two ends of a member as a path's only fork")
		return
	}
	legs := map[int][]*Branch{}
	for _, b := range branches {
		f := b.Forks()
		if len(f) <= depth || f[depth].Share != id {
			v.refuse(at, fmt.Sprintf("a branch that does not fork at share %q as those beside it do", id), "one share for all branches that come the same way")
			return
		}
		legs[f[depth].Leg] = append(legs[f[depth].Leg], b)
	}
	if len(legs) != s.Legs {
		v.refuse(at, fmt.Sprintf("%d legs of share %q", len(legs), id), fmt.Sprintf("one branch for each of %d legs", s.Legs))
	}
	for leg := range s.Legs {
		if legs[leg] == nil {
			v.refuse(at, fmt.Sprintf("leg %d of share %q is missing", leg, id), "legs numbered from 0")
			continue
		}
		v.forked(at, legs[leg], append(slices.Clone(way), Fork{id, leg}))
	}
	v.balanced(at, branches, s, depth+1)
}

// balanced checks that what legs of a frame do to each other cancels over the legs that end at this share.
func (v *validator) balanced(at string, branches []*Branch, s *Share, depth int) {
	var force, moment Vec
	most, some, ends := 0.0, false, 0
	for _, b := range branches {
		if len(b.Forks()) != depth {
			continue
		}
		ends++
		some = some || b.Thrust != (Vec{}) || b.Couple != (Vec{})
		turn := b.Couple.Add(b.At.Cross(b.Thrust))
		force, moment = force.Add(b.Thrust), moment.Add(turn)
		most = max(most, b.Thrust.Norm(), turn.Norm())
	}
	const rounding = 1e-9
	switch {
	case !some:
	case s.Rule != Equal || ends != s.Legs:
		v.refuse(at, fmt.Sprintf("thrust or couple on legs of share %q", s.ID), "an equal share whose legs all end there")
	case force.Norm() > rounding*(1+most) || moment.Norm() > rounding*(1+most):
		v.refuse(at, fmt.Sprintf("thrusts of share %q add up to %.3g and %.3g mm", s.ID, force.Norm(), moment.Norm()), "legs that balance each other")
	}
}

// supports counts the seats that hold the pin.
func (p *Pin) supports() int {
	n := 0
	for _, s := range p.Seats {
		if !s.Loads {
			n++
		}
	}
	return n
}
