package part

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/shape"
)

// absurdMM, absurdNumber and absurdCount bound what a bracket may hold; anything beyond is a slip of units or an attack.
const (
	absurdMM     = 1e5
	absurdNumber = 1e6 // of a parameter
	absurdCount  = 1000
	maxVertices  = 2000 // of one plate's loops, holes counted
	// Of all plates of a bracket, each of which is drawn against each other, and of a sheet.
	maxBracketVertices, maxSheetVertices = 10_000, 100_000
	// And their etched letters, each of which is a dozen strokes in a cut file.
	maxLetters, maxSheetLetters    = 4000, 10_000
	maxSweeps, maxPins, maxMembers = 100, 100, 100
	maxBends                       = 200 // of a bracket's or a sheet's plates
	maxBranches                    = 50  // of one path
)

// Of all lists of one sort in a bracket together: what is joined is looked at piece against piece. Kinds make a hundredth of it.
const (
	maxRuns     = 4000 // of welds
	maxPoints   = 4000 // of bolts, and of rods
	maxWays     = 1000 // branches of paths
	maxNames    = 20_000
	maxOnMember = 2000 // holes
)

// Validate says whether the bracket is whole: sound outlines, finite numbers, unique names, references that resolve,
// paths that end at a support. It returns FieldErrors with paths such as "plates[2].thickness_mm".
func (b *Bracket) Validate() error {
	v := &validator{b: b}
	if v.tooFine(maxBracketVertices, maxLetters) || v.tooMany() {
		return v.bad
	}
	v.names()
	for i, p := range b.Params {
		v.between(in("parameters", i).dot(".number"), p.Number, -absurdNumber, absurdNumber)
	}
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
	if v.tooFine(maxSheetVertices, maxSheetLetters) {
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
	sound []*Plate        // whose outlines have been looked at
	bad   FieldErrors
}

func (v *validator) refuse(path place, found, accept string) {
	if len(v.bad) < 50 {
		v.bad = append(v.bad, &FieldError{Field: path.String(), Found: found, Accept: accept})
	}
}

// names gathers what can be referred to and refuses duplicates.
func (v *validator) names() {
	b := v.b
	v.known = make(map[string]bool, 2*(len(b.Plates)+len(b.Members)+len(b.Welds)))
	add := func(path place, id string) {
		switch {
		case id == "" || len(id) > 100:
			v.refuse(path, fmt.Sprintf("%q", id), "a name of 1 to 100 letters")
		case v.known[id]:
			v.refuse(path, fmt.Sprintf("the name %q is used twice", id), "names unique within the bracket")
		}
		v.known[id] = true
	}
	for i := range b.Plates {
		add(in("plates", i).dot(".id"), b.Plates[i].ID)
		for _, id := range b.Plates[i].Flanges() {
			v.known[id] = true
		}
	}
	for i := range b.Members {
		add(in("members", i).dot(".id"), b.Members[i].ID)
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
	seen := map[string]bool{}
	for _, list := range [...]struct {
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
		clear(seen)
		for i := range list.n {
			id := list.id(i)
			if id == "" || len(id) > 100 || seen[id] {
				v.refuse(in(list.name, i).dot(".id"), fmt.Sprintf("%q", id), "a name of 1 to 100 letters, used once")
			}
			seen[id] = true
		}
	}
}

func each[T any](list []T, name string, id func(*T) string, add func(path place, id string)) {
	for i := range list {
		add(in(name, i).dot(".id"), id(&list[i]))
	}
}

func (v *validator) size(path place, mm, low float64) {
	if !(mm >= low && mm <= absurdMM) {
		v.refuse(path, fmt.Sprintf("%g mm", mm), fmt.Sprintf("%g to %g mm", low, absurdMM))
	}
}

func (v *validator) finite(path place, vs ...Vec) {
	for _, q := range vs {
		if !q.finite() {
			v.refuse(path, fmt.Sprintf("(%g, %g, %g)", q.X, q.Y, q.Z), "finite coordinates in mm")
		}
	}
}

func (a Vec) finite() bool {
	s := a.X + a.Y + a.Z
	return !(math.IsNaN(s) || math.IsInf(s, 0) || a.Norm() > 10*absurdMM)
}

func (v *validator) pose(path place, p Pose) {
	if !p.Origin.finite() {
		v.finite(path.dot(".origin_mm"), p.Origin)
	}
	const close = 1e-9
	if !(math.Abs(p.U.Norm()-1) <= close && math.Abs(p.V.Norm()-1) <= close && math.Abs(p.U.Dot(p.V)) <= close) {
		v.refuse(path, "u and v are not unit vectors square to each other", "an orthonormal pose")
	}
}

func (v *validator) refers(path place, id string) {
	if !v.known[id] {
		v.refuse(path, fmt.Sprintf("%q names nothing in the bracket", id), "the name of a plate, member, joint or support")
	}
}

func (v *validator) plate(i int) {
	p, at := &v.b.Plates[i], in("plates", i)
	v.size(at.dot(".thickness_mm"), p.ThicknessMM, 0.1)
	v.pose(at.dot(".pose"), p.Pose)
	if p.Material == "" {
		v.refuse(at.dot(".material"), "empty", "a grade name such as S355")
	}
	if n := p.Corners(); n > maxVertices {
		v.refuse(at.dot(".outer"), fmt.Sprintf("%d vertices and holes", n), fmt.Sprintf("at most %d", maxVertices))
		return
	}
	v.marks(at, p)
	v.outline(at, p)
	for k := range p.Holes {
		h := &p.Holes[k]
		v.size(at.of(".holes", k).dot(".diameter_mm"), h.DiaMM, 0.1)
		if (h.Thread != "") != (h.Finish == Tapped) || h.Thread != "" && !taps(h.Thread) {
			v.refuse(at.of(".holes", k).dot(".thread"), fmt.Sprintf("%q, finish %s", h.Thread, h.Finish), "a coarse thread such as M8 with a tapped hole, none with another")
		}
		if !(h.CutMM == 0 || h.CutMM >= 0.1 && h.CutMM <= h.DiaMM) {
			v.refuse(at.of(".holes", k).dot(".cut_diameter_mm"), fmt.Sprintf("%g mm", h.CutMM), "0 for none, or 0.1 mm to the finished diameter")
		}
	}
}

// leastBulge is that of the flattest arc: over a metre it stands half a micrometre off its chord.
const leastBulge = 1e-6

// outline checks what is cut, once for plates alike. As cut, holes are the same or smaller: what is sound when finished is sound on the table.
func (v *validator) outline(at place, p *Plate) {
	if slices.ContainsFunc(v.sound, func(q *Plate) bool { return q.sameOutline(p) }) {
		return
	}
	if i := slices.IndexFunc(p.Outer, func(w shape.Vertex) bool { return w.Bulge != 0 && math.Abs(w.Bulge) < leastBulge }); i >= 0 {
		v.refuse(at.dot(".outer"), fmt.Sprintf("%s: an arc of bulge %g at corner %d", p.ID, p.Outer[i].Bulge, i), fmt.Sprintf("0 for a straight edge, or at least %g either way", leastBulge))
		return
	}
	found := p.Shape(false).Validate()
	for _, bad := range found {
		v.refuse(p.loop(at, bad.Hole), fmt.Sprintf("%s: %s", p.ID, bad), "a closed outline with its holes inside")
	}
	if found == nil {
		v.sound = append(v.sound, p)
	}
}

// loop is the place of a loop of Shape's: of the outline, a hole or a cutout.
func (p *Plate) loop(at place, n int) place {
	if n < 0 {
		return at.dot(".outer")
	}
	for k := range p.Holes {
		if p.Holes[k].DiaMM <= 0 {
			continue // leaves no loop
		}
		if n == 0 {
			return at.of(".holes", k)
		}
		n--
	}
	return at.of(".cutouts", n)
}

// sameOutline says whether two plates have one outline when they are finished.
func (p *Plate) sameOutline(q *Plate) bool {
	return slices.Equal(p.Outer, q.Outer) && slices.EqualFunc(p.Cutouts, q.Cutouts, slices.Equal[shape.Loop]) &&
		slices.EqualFunc(p.Holes, q.Holes, func(a, b Hole) bool { return a.Center == b.Center && a.DiaMM == b.DiaMM })
}

func taps(thread string) bool {
	_, err := TapDrillMM(thread)
	return err == nil
}

// tooFine refuses plates that are costly to look at together, before any is looked at.
func (v *validator) tooFine(corners, letters int) bool {
	var n, etched, bends int
	for i := range v.b.Plates {
		p := &v.b.Plates[i]
		n, bends = n+p.Corners(), bends+len(p.Bends)
		for _, e := range p.Etch {
			etched += 1 + len(e.Text)
		}
	}
	v.hold("plates", "corners and holes in all", n, corners)
	v.hold("plates", "letters and marks etched in all", etched, letters)
	v.hold("plates", "bends in all", bends, maxBends)
	return v.bad != nil
}

// hold refuses a list with more of something than may be.
func (v *validator) hold(list, what string, n, most int) {
	if n > most {
		v.refuse(in(list, -1), fmt.Sprintf("%d %s", n, what), fmt.Sprintf("at most %d", most))
	}
}

// tooMany refuses brackets with so much in their lists that to look at it takes long, before any is looked at.
func (v *validator) tooMany() bool {
	b := v.b
	things := len(b.Plates) + len(b.Members) + len(b.Bolts) + len(b.Rods) + len(b.Welds) + len(b.Contacts) + len(b.Composites) + len(b.Splices) +
		len(b.Supports) + len(b.LoadPoints) + len(b.Shares) + len(b.Paths)
	var holes, bolts, rods, runs, ways, through, together, laps, swept int
	for i := range b.Members {
		holes += len(b.Members[i].Holes)
	}
	for i := range b.Bolts {
		bolts += len(b.Bolts[i].Points)
	}
	for i := range b.Rods {
		rods += len(b.Rods[i].Points)
	}
	for i := range b.Welds {
		runs += len(b.Welds[i].Segments)
	}
	for i := range b.Paths {
		ways += len(b.Paths[i].Branches)
		for k := range b.Paths[i].Branches {
			through += len(b.Paths[i].Branches[k].Through) + len(b.Paths[i].Branches[k].Then)
		}
	}
	for i := range b.Composites {
		together += len(b.Composites[i].Things) + len(b.Composites[i].Welds)
	}
	for i := range b.Splices {
		laps += len(b.Splices[i].Laps) + len(b.Splices[i].LapWelds)
	}
	for i := range b.Sweeps {
		swept += len(b.Sweeps[i].Things)
	}
	for _, c := range [...]struct {
		list, what string
		n, most    int
	}{
		{"bracket", "things", things, absurdCount},
		{"pins", "pins", len(b.Pins), maxPins},
		{"sweeps", "sweeps", len(b.Sweeps), maxSweeps},
		{"members", "members", len(b.Members), maxMembers},
		{"members", "holes in all", holes, maxOnMember},
		{"bolts", "bolts in all", bolts, maxPoints},
		{"rods", "rods in all", rods, maxPoints},
		{"welds", "runs in all", runs, maxRuns},
		{"paths", "branches in all", ways, maxWays},
		{"paths", "names and forks on the ways of all branches", through, maxNames},
		{"composites", "things and welds in all", together, maxNames},
		{"splices", "laps and their welds in all", laps, maxNames},
		{"sweeps", "things in all", swept, maxNames},
	} {
		v.hold(c.list, c.what, c.n, c.most)
	}
	return v.bad != nil
}

// Corners counts what makes a plate costly to look at: its corners and holes.
func (p *Plate) Corners() int {
	n := len(p.Outer) + len(p.Holes)
	for _, l := range p.Cutouts {
		n += len(l)
	}
	return n
}

// marks checks etch marks, bends and rolling.
func (v *validator) marks(at place, p *Plate) {
	for k, e := range p.Etch {
		path := at.of(".etch", k)
		v.size(path.dot(".height_mm"), e.HeightMM, 0.5)
		v.finite(path.dot(".at_mm"), Vec{e.At.X, e.At.Y, 0})
		v.between(path.dot(".angle_rad"), e.AngleRad, -2*math.Pi, 2*math.Pi)
	}
	for k, b := range p.Bends {
		path := at.of(".bends", k)
		v.finite(path, Vec{b.A.X, b.A.Y, 0}, Vec{b.B.X, b.B.Y, 0})
		v.between(path.dot(".angle_rad"), b.AngleRad, -math.Pi, math.Pi)
		v.between(path.dot(".radius_mm"), b.RadiusMM, 0, absurdMM)
		// The neutral line of a bend lies within the sheet.
		if least := math.Abs(b.AngleRad) * b.RadiusMM; b.AllowanceMM != 0 {
			v.between(path.dot(".allowance_mm"), b.AllowanceMM, least, least+math.Abs(b.AngleRad)*p.ThicknessMM)
		}
	}
	v.between(at.dot(".rolled_mm"), p.RolledMM, 0, absurdMM)
}

// between refuses what is out of range, NaN included.
func (v *validator) between(path place, x, low, high float64) {
	if !(x >= low && x <= high) {
		v.refuse(path, fmt.Sprintf("%g", x), fmt.Sprintf("%g to %g", low, high))
	}
}

func (v *validator) member(i int) {
	m, at := &v.b.Members[i], in("members", i)
	v.size(at.dot(".length_mm"), m.LengthMM, 1)
	v.size(at.dot(".profile.a_mm"), m.Profile.AMM, 1)
	v.between(at.dot(".profile.b_mm"), m.Profile.BMM, 0, absurdMM)
	v.between(at.dot(".profile.root_mm"), m.Profile.RootMM, 0, absurdMM)
	for k, h := range m.Holes {
		v.size(at.of(".holes", k).dot(".hole.diameter_mm"), h.DiaMM, 0.1)
		v.between(at.of(".holes", k).dot(".hole.cut_diameter_mm"), h.CutMM, 0, h.DiaMM)
	}
	v.pose(at.dot(".pose"), m.Pose)
	if !slices.Contains(ProfileKinds(), m.Profile.Kind) {
		v.refuse(at.dot(".profile.kind"), string(m.Profile.Kind), "a known profile")
		return
	}
	if m.Profile.Kind != RoundBar {
		v.size(at.dot(".profile.t_mm"), m.Profile.TMM, 0.1)
	}
	if m.Profile.Kind == FlatBar && m.Profile.TMM > m.Profile.AMM {
		v.refuse(at.dot(".profile.t_mm"), fmt.Sprintf("%g mm", m.Profile.TMM), fmt.Sprintf("a flat bar's thickness, at most its width of %g mm", m.Profile.AMM))
	}
	v.wall(at.dot(".profile.t_mm"), &m.Profile)
	if m.Profile.Kind == RectTube {
		v.size(at.dot(".profile.b_mm"), m.Profile.BMM, 1)
	}
	if m.Profile.Kind == Angle {
		v.size(at.dot(".profile.b_mm"), m.Profile.BMM, 1)
		a, b := m.Legs()
		for _, leg := range []Plate{a, b} {
			o := leg.Shape(false)
			for _, bad := range o.Validate() {
				v.refuse(at.dot(".holes"), fmt.Sprintf("%s: %s", leg.ID, bad), "holes inside the leg")
			}
		}
	}
	if m.Material == "" {
		v.refuse(at.dot(".material"), "empty", "a grade name such as S355")
	}
}

// wall refuses walls that leave nothing hollow, and legs thicker than they are long.
func (v *validator) wall(at place, p *Profile) {
	most := math.Inf(1)
	switch p.Kind {
	case RoundTube:
		most = p.AMM / 2
	case RectTube:
		most = min(p.AMM, p.BMM) / 2
	case Angle:
		most = min(p.AMM, p.BMM)
	}
	if p.TMM >= most {
		v.refuse(at, fmt.Sprintf("%g mm", p.TMM), fmt.Sprintf("less than %g mm, for the outside of the %s", most, p.Kind))
	}
}

func (v *validator) joints() {
	b := v.b
	for i := range b.Pins {
		v.pin(i)
	}
	for i := range b.Bolts {
		g := &b.Bolts[i]
		at := in("bolts", i)
		v.size(at.dot(".diameter_mm"), g.DiaMM, 1)
		if d, err := NominalDiaMM(g.Size); err != nil {
			v.refuse(at.dot(".size"), fmt.Sprintf("%q", g.Size), "a thread size such as M12")
		} else if math.Abs(d-g.DiaMM) > 1e-6 {
			v.refuse(at.dot(".diameter_mm"), fmt.Sprintf("%g mm for size %q", g.DiaMM, g.Size), "the nominal diameter of the size")
		}
		v.size(at.dot(".hole_mm"), g.HoleMM, g.DiaMM)
		v.size(at.dot(".grip_mm"), g.GripMM, 0.1)
		v.between(at.dot(".preload_ratio"), g.Preload, 0, MaxPreload)
		v.between(at.dot(".slip_coefficient"), g.SlipC, 0, MaxSlipC)
		for k, a := range g.Across {
			path := at.of(".across", k)
			v.between(path.dot(".b_mm"), a.BMM, 0, absurdMM)
			v.between(path.dot(".a_mm"), a.AMM, 0, absurdMM)
			v.between(path.dot(".p_mm"), a.PMM, 0, absurdMM)
		}
		v.pose(at.dot(".pose"), g.Pose)
		v.points(at.dot(".points_mm"), g.Points)
		v.box(at.dot(".patch"), g.Patch)
		if other := b.BoltGroup(g.SameAs); g.SameAs != "" && (other == nil || other.SameAs != "" || len(other.Points) != len(g.Points)) {
			v.refuse(at.dot(".same_as"), g.SameAs, "a bolt group of as many bolts that are its own")
		}
		for k, ply := range g.Plies {
			v.refers(at.of(".plies", k).dot(".thing"), ply.Thing)
			path := at.of(".plies", k)
			v.size(path.dot(".thickness_mm"), ply.ThicknessMM, 0.1)
			if t, known := b.thickness(ply.Thing); known && math.Abs(t-ply.ThicknessMM) > 1e-6 {
				v.refuse(path.dot(".thickness_mm"), fmt.Sprintf("%g mm", ply.ThicknessMM), fmt.Sprintf("the thickness of %s, %g mm", ply.Thing, t))
			}
			v.between(path.dot(".edge_mm"), ply.EdgeMM, 0, absurdMM)
			v.between(path.dot(".pitch_mm"), ply.PitchMM, 0, absurdMM)
		}
	}
	for i := range b.Rods {
		r := &b.Rods[i]
		at := in("rods", i)
		v.size(at.dot(".diameter_mm"), r.DiaMM, 1)
		v.between(at.dot(".free_mm"), r.FreeMM, 0, absurdMM)
		v.between(at.dot(".engagement_mm"), r.EngagementMM, 0, absurdMM)
		v.between(at.dot(".stop_mm"), r.StopMM, -absurdMM, absurdMM)
		if dia, err := NominalDiaMM(r.Size); err != nil || dia != r.DiaMM {
			v.refuse(at.dot(".size"), fmt.Sprintf("%q for a diameter of %g mm", r.Size, r.DiaMM), "the size of the diameter, such as M12")
		}
		if len(r.Points) == 0 {
			v.refuse(at.dot(".points_mm"), "none", "at least one rod")
		}
		v.pose(at.dot(".pose"), r.Pose)
		v.points(at.dot(".points_mm"), r.Points)
	}
	for i := range b.Welds {
		v.weld(i)
	}
	for i := range b.Contacts {
		c := &b.Contacts[i]
		v.pose(in("contacts", i).dot(".pose"), c.Pose)
		v.box(in("contacts", i).dot(".patch"), c.Patch)
		v.between(in("contacts", i).dot(".gap_mm"), c.GapMM, 0, absurdMM)
		v.between(in("contacts", i).dot(".preload_n"), c.PreloadN, 0, 1e8)
		v.between(in("contacts", i).dot(".wrap_rad"), c.WrapRad, 0, 2*math.Pi)
		v.between(in("contacts", i).dot(".friction_coefficient"), c.FrictionC, 0, 2)
		for k, id := range c.Things {
			v.refers(in("contacts", i).of(".things", k), id)
		}
	}
	for i := range b.Composites {
		c := &b.Composites[i]
		at := in("composites", i)
		v.finite(at, c.From, c.To)
		v.size(at.dot(".span_mm"), c.SpanMM, 0.1)
		if len(c.Things) < 2 {
			v.refuse(at.dot(".things"), fmt.Sprintf("%d things", len(c.Things)), "a flange and at least one web")
		}
		for k, id := range c.Things {
			v.refers(at.of(".things", k), id)
		}
		for k, id := range c.Welds {
			v.refers(at.of(".welds", k), id)
		}
	}
	for i := range b.Splices {
		s := &b.Splices[i]
		v.refers(in("splices", i).dot(".thing"), s.Thing)
		for k, id := range s.Laps {
			v.refers(in("splices", i).of(".laps", k), id)
		}
		for k, id := range s.LapWelds {
			v.refers(in("splices", i).of(".lap_welds", k), id)
		}
	}
	for i := range b.Supports {
		s := &b.Supports[i]
		v.size(in("supports", i).dot(".thickness_mm"), s.ThicknessMM, 0.1)
		v.between(in("supports", i).dot(".clear_mm"), s.ClearMM, 0, absurdMM)
	}
}

func (v *validator) weld(i int) {
	w, at := &v.b.Welds[i], in("welds", i)
	v.size(at.dot(".leg_mm"), w.LegMM, 0.1)
	for k, id := range w.Joins {
		v.refers(at.of(".joins", k), id)
	}
	if w.Joins[0] == w.Joins[1] {
		v.refuse(at.dot(".joins"), w.Joins[0]+" with itself", "two things")
	}
	if len(w.Segments) == 0 {
		v.refuse(at.dot(".segments"), "none", "at least one run")
	}
	least := 0.1
	if w.Kind == Plug {
		v.size(at.dot(".width_mm"), w.WidthMM, 1)
		least = max(least, w.WidthMM-closeMM)
	} else if w.WidthMM != 0 {
		v.refuse(at.dot(".width_mm"), fmt.Sprintf("%g mm of a %s weld", w.WidthMM, w.Kind), "0: only plugs and slots have a width")
	}
	for k, s := range w.Segments {
		v.finite(at.of(".segments", k), s.A, s.B)
		v.size(at.of(".segments", k), s.B.Sub(s.A).Norm(), least)
	}
	for k, s := range w.Segments {
		if length, first := s.B.Sub(s.A).Norm(), w.Segments[0].B.Sub(w.Segments[0].A).Norm(); w.Kind == Plug && math.Abs(length-first) > closeMM {
			v.refuse(at.of(".segments", k), fmt.Sprintf("%g mm", length), fmt.Sprintf("%g mm as the first: plugs of one group are alike", first))
		}
	}
	v.weldDepth(w, at.dot(".leg_mm"))
}

// closeMM is how far two sizes that are to be the same may differ.
const closeMM = 1e-6

// weldDepth holds a weld within the plate to its thickness: complete penetration goes through the thinner of what it joins, and no plug stands out of its hole.
func (v *validator) weldDepth(w *WeldGroup, at place) {
	if w.Kind != CJP && w.Kind != Plug {
		return
	}
	p, on := v.b.Face(w.Joins[0]), v.b.Face(w.Joins[1])
	if p == nil {
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
	p, at := &v.b.Pins[i], in("pins", i)
	v.size(at.dot(".diameter_mm"), p.DiaMM, 1)
	v.size(at.dot(".length_mm"), p.LengthMM, 1)
	for k, e := range p.Ends {
		v.between(at.of(".ends", k).dot(".play_mm"), e.PlayMM, 0, absurdMM)
		if e.Size != "" {
			if _, err := NominalDiaMM(e.Size); err != nil {
				v.refuse(at.of(".ends", k).dot(".size"), fmt.Sprintf("%q", e.Size), "a thread size such as M6, or none")
			}
		}
		if e.BearsOn != "" {
			v.refers(at.of(".ends", k).dot(".bears_on"), e.BearsOn)
		}
	}
	v.finite(at, p.Center, p.Axis)
	if !(math.Abs(p.Axis.Norm()-1) <= 1e-9) {
		v.refuse(at.dot(".axis"), "not a unit vector", "a unit vector")
	}
	loads, last := 0, math.Inf(-1)
	for k := range p.Seats {
		s, seat := &p.Seats[k], at.of(".seats", k)
		v.size(seat.dot(".thickness_mm"), s.ThicknessMM, 0.1)
		v.between(seat.dot(".at_mm"), s.AtMM, -absurdMM, absurdMM)
		if s.Loads {
			loads++
		} else {
			v.refers(seat.dot(".thing"), s.Thing)
		}
		if !(s.AtMM-s.ThicknessMM/2 >= last-1e-9) {
			v.refuse(seat.dot(".at_mm"), fmt.Sprintf("%g mm overlaps the seat before", s.AtMM), "seats in order along the axis, not overlapping")
		}
		last = s.AtMM + s.ThicknessMM/2
	}
	if loads != 1 || len(p.Seats) < 2 || len(p.Seats) > 20 {
		v.refuse(at.dot(".seats"), fmt.Sprintf("%d seats, %d of them bring load", len(p.Seats), loads), "2 to 20 seats, one of which brings the load")
	}
	v.span(at, p)
}

// span checks what statics of the pin stands on: the load between its supports wherever it may travel, seats that are as thick as the
// plates that make them.
func (v *validator) span(at place, p *Pin) {
	v.between(at.dot(".travel_mm"), p.TravelMM, 0, absurdMM)
	supports, load := 0, -1
	for k := range p.Seats {
		s := &p.Seats[k]
		v.between(at.of(".seats", k).dot(".hole_mm"), s.HoleMM, 0, absurdMM)
		v.between(at.of(".seats", k).dot(".bush_mm"), s.BushMM, 0, absurdMM)
		if s.Loads {
			load = k
			continue
		}
		supports++
		if t := v.b.seated(p, s); t > 0 && s.ThicknessMM > t+1e-6 {
			v.refuse(at.of(".seats", k).dot(".thickness_mm"), fmt.Sprintf("%g mm", s.ThicknessMM), fmt.Sprintf("at most %g mm, the plates with a hole there", t))
		}
	}
	switch {
	case load < 0: // said already
	case supports < 1 || supports > 2:
		v.refuse(at.dot(".seats"), fmt.Sprintf("%d supporting seats", supports), "one or two")
	case supports == 2 && (load == 0 || load == len(p.Seats)-1):
		v.refuse(at.dot(".seats"), "the load stands outside its two supports", "the load between them")
	default:
		for _, k := range [2]int{load - 1, load + 1} {
			if k < 0 || k >= len(p.Seats) {
				continue
			}
			s, l := &p.Seats[k], &p.Seats[load]
			if room := math.Abs(s.AtMM-l.AtMM) - (s.ThicknessMM+l.ThicknessMM)/2; p.TravelMM > room+1e-6 {
				v.refuse(at.dot(".travel_mm"), fmt.Sprintf("%g mm", p.TravelMM), fmt.Sprintf("at most %g mm, the gap to %s", room, s.Thing))
			}
		}
	}
}

// seated is the steel that a seat bears in: every plate with a hole on the pin's axis within the seat; 0 when none is found.
func (b *Bracket) seated(p *Pin, s *Seat) float64 {
	sum := 0.0
	for i := range b.Plates {
		sum += b.Plates[i].bears(p, s)
	}
	for i := range b.Members {
		if m := &b.Members[i]; m.OnPin(p) {
			ring := m.Ring()
			sum += ring.bears(p, s)
		}
	}
	return sum
}

func (q *Plate) bears(p *Pin, s *Seat) float64 {
	sum := 0.0
	for i := range q.Holes {
		at := q.Holes[i].Center
		off := q.Pose.At(at.X, at.Y, 0).Sub(p.Center)
		along := off.Dot(p.Axis)
		if off.AddScaled(-along, p.Axis).Norm() < 0.01 && math.Abs(along-s.AtMM) <= s.ThicknessMM/2 {
			sum += q.ThicknessMM
		}
	}
	return sum
}

// thickness is that of a plate, of what is turned up of it, or of an angle's leg.
func (b *Bracket) thickness(id string) (float64, bool) {
	for i := range b.Plates {
		p := &b.Plates[i]
		if id == p.ID || len(p.Bends) > 0 && slices.Contains(p.Flanges(), id) {
			return p.ThicknessMM, true
		}
	}
	for i := range b.Members {
		if m := &b.Members[i]; m.Profile.Kind == Angle && m.isLeg(id) {
			return m.Profile.TMM, true
		}
	}
	return 0, false
}

func (m *Member) isLeg(id string) bool {
	leg, ok := strings.CutPrefix(id, m.ID)
	return ok && (leg == ".a" || leg == ".b")
}

func (v *validator) points(path place, pts []shape.Point) {
	if len(pts) == 0 || len(pts) > absurdCount {
		v.refuse(path, fmt.Sprintf("%d points", len(pts)), fmt.Sprintf("1 to %d", absurdCount))
	}
	for k, p := range pts {
		v.finite(path.of("", k), Vec{p.X, p.Y, 0})
	}
}

func (v *validator) box(path place, b shape.Box) {
	v.finite(path, Vec{b.Min.X, b.Min.Y, 0}, Vec{b.Max.X, b.Max.Y, 0})
	if !(b.Max.X > b.Min.X && b.Max.Y > b.Min.Y) {
		v.refuse(path, "an empty rectangle", "a rectangle with width and height")
	}
}

func (v *validator) loads() {
	b := v.b
	if len(b.LoadPoints) == 0 {
		v.refuse(in("load_points", -1), "none", "at least one load point")
	}
	for i := range b.LoadPoints {
		l := &b.LoadPoints[i]
		v.finite(in("load_points", i).dot(".at_mm"), l.At)
		if n := l.Axis.Norm(); l.Axis != (Vec{}) && !(math.Abs(n-1) <= 1e-9) {
			v.refuse(in("load_points", i).dot(".axis"), "not a unit vector", "a unit vector, or nought")
		}
		if l.Patch != nil {
			v.pose(in("load_points", i).dot(".patch.pose"), l.Patch.Pose)
			v.box(in("load_points", i).dot(".patch.box"), l.Patch.Box)
		}
	}
	for i := range b.Shares {
		v.share(in("shares", i), &b.Shares[i])
	}
	for i := range b.Paths {
		p, at := &b.Paths[i], in("paths", i)
		if b.LoadPoint(p.LoadPoint) == nil {
			v.refuse(at.dot(".load_point"), fmt.Sprintf("%q", p.LoadPoint), "a load point of the bracket")
		}
		if slices.ContainsFunc(b.Paths[:i], func(q Path) bool {
			return q.Component == p.Component && b.LoadPoint(q.LoadPoint) == b.LoadPoint(p.LoadPoint)
		}) {
			v.refuse(at.dot(".component"), "a second path for "+p.Component.String(), "one path for each signed component")
		}
		v.branches(at, p)
	}
	for i := range b.Sweeps {
		s, at := &b.Sweeps[i], in("sweeps", i)
		v.finite(at, s.From, s.To)
		v.size(at.dot(".to_mm"), s.To.Sub(s.From).Norm(), 1e-3)
		if len(s.Things) == 0 {
			v.refuse(at.dot(".things"), "none", "at least one plate or leg")
		}
		for k, id := range s.Things {
			v.refers(at.of(".things", k), id)
		}
		v.between(at.dot(".height_mm"), s.HeightMM, 0, absurdMM)
		v.between(at.dot(".reach_mm"), s.ReachMM, 0, absurdMM)
		if (s.HeightMM > 0) != (s.ReachMM > 0) {
			v.refuse(at.dot(".height_mm"), fmt.Sprintf("%g mm high, reaching %g mm", s.HeightMM, s.ReachMM), "both 0, or both more")
		}
		v.between(at.dot(".entry_mm"), s.EntryMM, 0, absurdMM)
		v.between(at.dot(".entry_to_mm"), s.EntryToMM, 0, absurdMM)
		if s.Bolts != "" && b.BoltGroup(s.Bolts) == nil {
			v.refuse(at.dot(".bolts"), s.Bolts, "a bolt group of the bracket")
		}
		if s.Via != "" {
			v.refers(at.dot(".via"), s.Via)
		}
		v.between(at.dot(".free_mm"), s.FreeMM, 0, absurdMM)
	}
}

func (v *validator) share(at place, s *Share) {
	v.between(at.dot(".low"), s.Lo, 0, 1)
	v.between(at.dot(".high"), s.Hi, 0, 1)
	v.finite(at.dot(".ends_mm"), s.Ends[0], s.Ends[1])
	switch {
	case s.Legs < 1 || s.Legs > 20:
		v.refuse(at.dot(".legs"), fmt.Sprint(s.Legs), "1 to 20")
	case s.Rule == Between && !(s.Legs%2 == 0 && s.Lo >= 0 && s.Hi <= 1 && s.Lo <= s.Hi):
		v.refuse(at, fmt.Sprintf("%g to %g over %d legs", s.Lo, s.Hi, s.Legs), "an even number of legs and 0 <= lo <= hi <= 1")
	case s.Rule == ByPinSpan && v.b.Pin(s.Pin) == nil:
		v.refuse(at.dot(".pin"), s.Pin, "a pin of the bracket")
	case s.Rule == ByPinSpan && s.Legs != v.b.Pin(s.Pin).supports():
		v.refuse(at.dot(".legs"), fmt.Sprint(s.Legs), fmt.Sprintf("the pin's supporting seats, %d", v.b.Pin(s.Pin).supports()))
	case s.Rule == ByBeamSpan:
		v.beam(at, s)
	case !slices.Contains(ShareRules(), s.Rule):
		v.refuse(at.dot(".rule"), string(s.Rule), "a known rule")
	}
}

// branches checks that each branch is whole and that the legs of each share are all there, so that nothing of the load
// is lost or carried twice.
func (v *validator) branches(at place, p *Path) {
	if len(p.Branches) == 0 || len(p.Branches) > maxBranches {
		v.refuse(at.dot(".branches"), fmt.Sprint(len(p.Branches)), fmt.Sprintf("1 to %d branches", maxBranches))
		return
	}
	all := make([]*Branch, len(p.Branches))
	for k := range p.Branches {
		br, path := &p.Branches[k], at.of(".branches", k)
		all[k] = br
		v.finite(path.dot(".at_mm"), br.At)
		v.finite(path.dot(".thrust"), br.Thrust)
		v.finite(path.dot(".couple"), br.Couple)
		for _, id := range br.Through {
			v.refers(path.dot(".through"), id)
		}
		if n := len(br.Through); n == 0 || v.b.Support(br.Through[n-1]) == nil {
			v.refuse(path.dot(".through"), strings.Join(br.Through, " > "), "a chain that ends at a support")
			continue
		}
		v.spanned(path, br)
		if s := v.b.Share(br.Share); s != nil && s.Rule == ByBeamSpan && br.At != p.Branches[0].At {
			v.refuse(path.dot(".at_mm"), "another place than the first branch's", "one place of the load for both ends of a member")
		}
	}
	v.forked(at.dot(".branches"), all, nil)
}

// forked checks branches that have come the same way so far: one that ends there, or every leg of one share more.
func (v *validator) forked(at place, branches []*Branch, way []Fork) {
	depth, first := len(way), branches[0]
	if first.forks() == depth {
		if len(branches) > 1 {
			v.refuse(at, fmt.Sprintf("%d branches at the end of one way", len(branches)), "one branch for each of the legs")
		}
		if depth == 0 && (first.Thrust != (Vec{}) || first.Couple != (Vec{})) {
			v.refuse(at, "thrust or couple on a branch alone", "legs of an equal share that balance each other")
		}
		return
	}
	id := first.fork(depth).Share
	s := v.b.Share(id)
	switch {
	case s == nil:
		v.refuse(at, fmt.Sprintf("share %q", id), "a share of the bracket")
		return
	case s.Legs > absurdCount || slices.ContainsFunc(way, func(f Fork) bool { return f.Share == id }):
		v.refuse(at, fmt.Sprintf("share %q twice on one way", id), "each share once on a way")
		return
	case s.Rule == ByBeamSpan && (depth > 0 || first.forks() > 1):
		v.refuse(at, fmt.Sprintf("share %q beside another on one way", id), "the two ends of a member as a path's only fork")
		return
	}
	legs := 0
	for i, b := range branches {
		if b.forks() <= depth || b.fork(depth).Share != id {
			v.refuse(at, fmt.Sprintf("a branch that does not fork at share %q as those beside it do", id), "one share for all branches that come the same way")
			return
		}
		if !slices.ContainsFunc(branches[:i], func(a *Branch) bool { return a.fork(depth).Leg == b.fork(depth).Leg }) {
			legs++
		}
	}
	if legs != s.Legs {
		v.refuse(at, fmt.Sprintf("%d legs of share %q", legs, id), fmt.Sprintf("one branch for each of %d legs", s.Legs))
	}
	on := make([]*Branch, 0, len(branches))
	for leg := range s.Legs {
		on = on[:0]
		for _, b := range branches {
			if b.fork(depth).Leg == leg {
				on = append(on, b)
			}
		}
		if len(on) == 0 {
			v.refuse(at, fmt.Sprintf("leg %d of share %q is missing", leg, id), "legs numbered from 0")
			continue
		}
		v.forked(at, on, append(way[:depth:depth], Fork{id, leg}))
	}
	v.balanced(at, branches, s, depth+1)
}

// balanced checks that what legs of a frame do to each other cancels over the legs that end at this share.
func (v *validator) balanced(at place, branches []*Branch, s *Share, depth int) {
	var force, moment Vec
	most, some, ends := 0.0, false, 0
	for _, b := range branches {
		if b.forks() != depth {
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
