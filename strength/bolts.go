package strength

// Bolt groups in their faying plane: shear by the elastic method, tension with contact, what the plies and the support's
// wall see.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

// boltGroup is a group made ready, with the state of the present case.
type boltGroup struct {
	*part.BoltGroup
	pos      []statics.Vec2
	area     float64 // tensile stress area of one bolt
	patch    statics.Patch
	passes   []bool
	centroid statics.Vec2
	f        Bolt
	set      BoltSet
	way      statics.Vec2 // of the longest line between two bolts
	single   bool         // all bolts stand in that line
	plies    [2]BoltBearing
	pry      [2]Prying
	field    string
	lap      bool    // of one plate on one face of another that is no wall
	side     float64 // 1 where the load acts on the bracket's ply, -1 where it acts on the other and the bolts bring it

	shears   []statics.Vec2
	tensions []float64
	inPatch  []int          // bolts that a couple reaches; the others hold shear alone
	pull     []statics.Vec2 // where those are
	pulls    []float64      // and what they hold
	contact  statics.PlaneState
}

// wall is a support's wall behind a bolt group.
type wall struct {
	support *part.Support
	group   int
	f       Wall
}

func (m *model) compileBolts() {
	for i := range m.b.Bolts {
		g := boltGroup{BoltGroup: &m.b.Bolts[i], field: fmt.Sprintf("bolts[%d]", i)}
		for _, p := range g.Points {
			g.pos = append(g.pos, statics.Vec2{X: p.X, Y: p.Y})
		}
		m.spend(len(g.pos) * len(g.pos))
		g.centroid = statics.Centroid(g.pos)
		g.way, g.single = g.row()
		g.patch = statics.Patch{UMin: g.Patch.Min.X, UMax: g.Patch.Max.X, VMin: g.Patch.Min.Y, VMax: g.Patch.Max.Y}
		g.passes = m.passes(g.ID)
		g.shears, g.tensions = make([]statics.Vec2, len(g.pos)), make([]float64, len(g.pos))
		for k, p := range g.pos {
			if g.Patch.Contains(g.Points[k]) {
				g.inPatch, g.pull, g.pulls = append(g.inPatch, k), append(g.pull, p), append(g.pulls, 0)
			}
		}
		m.boltStrength(&g)
		m.spend(len(m.b.Bolts) + len(m.b.Supports))
		for k, ply := range g.Plies {
			_, fy, fu := m.ply(ply.Thing)
			g.plies[k] = BoltBearing{D: g.DiaMM, Dh: g.HoleMM, T: ply.ThicknessMM, Edge: ply.EdgeMM, Pitch: ply.PitchMM, Fy: fy, Fu: fu}
		}
		for k, a := range g.Across {
			g.pry[k] = Prying{
				B: a.BMM, A: a.AMM, P: a.PMM, D: g.DiaMM, Dh: g.HoleMM, Tply: g.Plies[0].ThicknessMM,
				Fy: g.plies[0].Fy, Fu: g.plies[0].Fu, Fub: g.f.Fub, ThreadsIn: g.ThreadsIn,
			}
		}
		s := m.b.Support(g.Plies[1].Thing)
		shared := g.SameAs != "" || slices.ContainsFunc(m.b.Bolts, func(h part.BoltGroup) bool { return h.SameAs == g.ID })
		g.lap = (s == nil || s.Couple == "") && !shared
		if g.side = 1; m.sense(&g, 0) > 0 {
			g.side = -1
		}
		m.groups = append(m.groups, g)
		m.addWalls(len(m.groups) - 1)
	}
}

func (m *model) boltStrength(g *boltGroup) {
	size, err := material.ParseBolt(g.Size)
	if err != nil {
		m.refuse(g.field+".size", err, "a size from the list of materials")
		return
	}
	grade, err := material.LookupBoltGrade(g.Grade)
	if err != nil {
		m.refuse(g.field+".grade", err, "a bolt grade from the list of materials")
		return
	}
	fy, fu, ok := m.gradeAt(grade, g.DiaMM, g.field, "bolt")
	if !ok {
		return
	}
	proof, _, _, _ := grade.Strength(g.DiaMM)
	g.area = size.StressArea()
	g.f = Bolt{
		D: g.DiaMM, Fub: fu, ThreadsIn: g.ThreadsIn, Grade: g.Grade,
		As: g.area, FuNominal: grade.NominalFuMPa, Dh: g.HoleMM, Flats: size.AcrossFlats,
		Preload: g.Preload, SlipC: g.SlipC,
	}
	g.set = BoltSet{N: float64(len(g.Points)), Fp: proof, Fy: fy, Fu: fu, Bolt: g.f}
}

// gradeAt gives the strengths of a bolt grade at a diameter, refuses one beyond its table, and notes a grade that the basis does not list.
func (m *model) gradeAt(grade *material.BoltGrade, diaMM float64, field, what string) (fy, fu float64, ok bool) {
	_, fy, fu, err := grade.Strength(diaMM)
	if err != nil {
		m.refuse(field+".grade", err, "a diameter that the grade's table reaches")
		return 0, 0, false
	}
	if !m.listed(grade.ListedIn) {
		m.note("%s grade %s: outside the listed materials of %s", what, grade.Name, m.listing)
	}
	return fy, fu, true
}

// addWalls finds the support wall behind a group.
func (m *model) addWalls(k int) {
	g := &m.groups[k]
	s := m.b.Support(g.Plies[1].Thing)
	if s == nil || !m.wallAlone(s) {
		return
	}
	if s.ClearMM == 0 {
		m.skip("bending of the "+string(s.Kind)+" out of its plane", s.ID, "the clear distance between its stiff edges is not stated")
		return
	}
	_, fy, _ := m.ply(s.ID)
	// What the bolts pull on, spread at 30 degrees over half the height, at most what is in contact.
	width := min(g.along(1, 0)+g.f.Flats+tan30*s.ClearMM, g.Patch.Max.X-g.Patch.Min.X)
	m.walls = append(m.walls, wall{s, k, Wall{T: s.ThicknessMM, Width: width, Clear: s.ClearMM, Fy: fy}})
}

// wallAlone lists what of a support's wall cannot be checked, and says whether the wall by itself takes the couple. A support that states no
// couple is no wall: a flat in the bracket's own plane, or what brings the load.
func (m *model) wallAlone(s *part.Support) bool {
	switch s.Couple {
	case "":
		if s.Kind != part.BodyFrame {
			m.skip("bending of the "+string(s.Kind)+" out of its plane", s.ID, "what takes the couple is not stated")
		}
		return false
	case part.CoupleByTurning:
		m.skip("bending of the "+string(s.Kind)+" by what it holds of the end, and its twist about the shear centre", s.ID,
			"the job lets the end turn where the wall gives way; the member is checked for ends that turn and for ends that are held")
		return true
	case part.CoupleByCrossMember:
		m.skip("bending of the "+string(s.Kind)+" out of its plane, and its twist about the shear centre", s.ID,
			"the job says that the "+string(s.Couple)+" takes the couple; the cross member and its joint are not checked")
		return false
	}
	m.skip("twist of the "+string(s.Kind)+" about its shear centre", s.ID, "no cross member is stated to take the couple")
	return true
}

// skipWelded lists the bending of a wall under a plate that is welded to it along a line.
func (m *model) skipWelded(w *part.WeldGroup) {
	if s := m.b.Support(w.Joins[1]); s != nil && m.wallAlone(s) {
		m.skip("bending of the "+string(s.Kind)+" out of its plane", s.ID,
			"the plate presses and pulls on it along weld "+w.ID+": no rule here; put a plate of some width or a stiff edge behind it")
	}
}

func (r *run) layBolts() {
	rules, notes := &r.basis.Rules, []string{"bolts by the elastic method; tension with contact at the compression edge, plane rigid"}
	r.bolts = make([]slots[Bolt], len(r.groups))
	r.bearings = make([][2]slots[BoltBearing], len(r.groups))
	r.pryings = make([][2]slots[Prying], len(r.groups))
	for i := range r.groups {
		g := &r.groups[i]
		r.bolts[i] = newSlots(rules.Bolt, g.ID, g.ID, "bolt", g.Pose.Origin, notes)
		r.bolts[i].explain, r.bolts[i].idle = (*run).explainBolts, idle(g.passes)
		r.places = append(r.places, &r.bolts[i])
		for k := range g.plies {
			if g.plies[k].Fu == 0 {
				r.skip("bearing and tear-out at the bolts", g.Plies[k].Thing, "its material is not known")
				continue
			}
			r.bearings[i][k] = newSlots(rules.BoltBearing, g.Plies[k].Thing+" at "+g.ID, g.Plies[k].Thing, "bolt hole", g.Pose.Origin, nil)
			r.places = append(r.places, &r.bearings[i][k])
		}
		for k, way := range [2]string{"along U", "along V"} {
			if g.pry[k].B <= 0 || g.pry[k].P <= 0 {
				continue
			}
			r.pryings[i][k] = newSlots(rules.Prying, g.Plies[0].Thing+" at "+g.ID+", prying "+way, g.Plies[0].Thing, "prying", g.Pose.Origin, nil)
			r.places = append(r.places, &r.pryings[i][k])
		}
	}
	r.layTightening()
	r.layBlocks()
	r.wallSlots = make([]slots[Wall], len(r.walls))
	for i := range r.walls {
		s := r.walls[i].support
		place := string(s.Kind)
		if len(r.walls) > 1 {
			place = s.ID + " (" + place + ")"
		}
		r.wallSlots[i] = newSlots(rules.Wall, place, s.ID, "wall bending", part.Vec{}, nil)
		r.wallSlots[i].idle = idle(r.groups[r.walls[i].group].passes)
		r.places = append(r.places, &r.wallSlots[i])
	}
}

// atBolts solves every group for the case and evaluates each bolt.
func (r *run) atBolts() error {
	for i := range r.groups {
		r.spend(len(r.forces) + perSolved*len(r.groups[i].pos))
		if err := r.groups[i].solve(r.forces); err != nil {
			return &part.FieldError{Field: r.groups[i].field, Found: err.Error(), Accept: "bolts that hold every component of the load"}
		}
	}
	for i := range r.groups {
		r.inPlace = i
		g := &r.groups[i]
		for b := range g.pos {
			r.atBolt(i, b)
		}
		r.atTightening(i)
		r.atBlocks(i)
	}
	r.atThreads()
	r.atWalls()
	return nil
}

func (g *boltGroup) solve(forces []force) error {
	w := sum(forces, g.passes, g.Pose.Origin)
	n := g.Pose.W()
	load := statics.GroupLoad{
		Vu: w.f.Dot(g.Pose.U), Vv: w.f.Dot(g.Pose.V), N: g.side * w.f.Dot(n),
		Mu: g.side * w.m.Dot(g.Pose.U), Mv: g.side * w.m.Dot(g.Pose.V), Torsion: w.m.Dot(n),
	}
	about := load.MovedTo(g.centroid)
	if err := statics.Shears(g.shears, g.pos, load.Vu, load.Vv, about.Torsion); err != nil {
		return err
	}
	g.alongForce(load.Vu, load.Vv)
	clear(g.tensions)
	var err error
	g.contact, err = statics.Tensions(g.pulls, g.pull, g.area, g.patch, load.N, load.Mu, load.Mv)
	for i, k := range g.inPatch {
		g.tensions[k] = g.pulls[i]
	}
	return err
}

// alongForce measures the group along the force in its plane: how long it is, and whether a lap has a single row across it. A row is single for any
// bolt's force that has a part across it, be it of a skew load or of torsion.
func (g *boltGroup) alongForce(u, v float64) {
	const noise = 1e-6
	worst, across := 0.0, 0.0
	for _, s := range g.shears {
		worst = max(worst, s.Norm())
		across = max(across, math.Abs(s.X*g.way.Y-s.Y*g.way.X))
	}
	g.f.OneRow = g.lap && g.single && (g.way == statics.Vec2{} || across > noise*worst)
	g.f.Joint = 0
	if force := math.Hypot(u, v); force > noise*worst {
		g.f.Joint = g.along(u/force, v/force)
	}
}

// row says whether all bolts stand within a diameter of one line, and which way it runs; no way for a lone bolt.
func (g *boltGroup) row() (way statics.Vec2, single bool) {
	for i, p := range g.pos {
		for _, q := range g.pos[:i] {
			if d := (statics.Vec2{X: p.X - q.X, Y: p.Y - q.Y}); d.Norm() > way.Norm() {
				way = d
			}
		}
	}
	reach := way.Norm()
	if reach == 0 {
		return way, true
	}
	way = statics.Vec2{X: way.X / reach, Y: way.Y / reach}
	return way, g.along(-way.Y, way.X) < g.DiaMM
}

// along is how far the bolts reach along a unit direction of their plane.
func (g *boltGroup) along(u, v float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range g.pos {
		at := p.X*u + p.Y*v
		lo, hi = min(lo, at), max(hi, at)
	}
	return hi - lo
}

func (r *run) atBolt(i, b int) {
	g := &r.groups[i]
	v, t := g.shears[b].Norm(), g.tensions[b]
	f := g.f
	f.V, f.T = v, t
	r.bolts[i].consider(r, f, "")
	for k := range g.plies {
		if g.plies[k].Fu > 0 {
			p := g.plies[k]
			p.V, p.Bolt = v, f
			p.V += r.twinShear(g, g.Plies[k].Thing)
			r.bearings[i][k].consider(r, p, "")
		}
	}
	for k := range g.pry {
		if g.pry[k].B > 0 && g.pry[k].P > 0 {
			p := g.pry[k]
			p.T, p.V, p.Bolt = t, v, f
			r.pryings[i][k].consider(r, p, "")
		}
	}
}

// twinShear is what the same bolts bring to a ply through their other shear planes: the greatest of each group, added whichever way it points.
func (r *run) twinShear(g *boltGroup, ply string) float64 {
	v := 0.0
	r.spend(len(r.groups))
	for i := range r.groups {
		h := &r.groups[i]
		if h.Plies[0].Thing != ply && h.Plies[1].Thing != ply || !g.sameBolts(h) {
			continue
		}
		worst := 0.0
		r.spend(len(h.shears))
		for _, s := range h.shears {
			worst = max(worst, s.Norm())
		}
		v += worst
	}
	return v
}

// sameBolts says whether another group lists the same bolts for a further shear plane.
func (g *boltGroup) sameBolts(h *boltGroup) bool {
	return h.SameAs == g.ID || g.SameAs == h.ID || g.SameAs != "" && g.SameAs == h.SameAs && g.ID != h.ID
}

// react adds what the bolts and the contact beyond a cut do to the swept thing.
func (g *boltGroup) react(w *wrench, c *cut, about part.Vec) {
	n := g.Pose.W()
	beyond := func(at part.Vec) bool { return at.Sub(c.at).Dot(c.normal) <= 1e-6 }
	for b, p := range g.Points {
		at := g.Pose.At(p.X, p.Y, 0)
		if beyond(at) {
			f := n.Scale(-g.tensions[b]).AddScaled(-g.shears[b].X, g.Pose.U).AddScaled(-g.shears[b].Y, g.Pose.V)
			w.plus(f, part.Vec{}, at, about)
		}
	}
	u, v, _ := g.Pose.Local(c.at)
	away := statics.Vec2{X: -c.normal.Dot(g.Pose.U), Y: -c.normal.Dot(g.Pose.V)}
	if push, at := g.contact.ContactBeyond(statics.Vec2{X: u, Y: v}, away); push > 0 {
		w.plus(n.Scale(push), part.Vec{}, g.Pose.At(at.X, at.Y, 0), about)
	}
}

// oneLevel is the least distance that the rules for walls take, mm.
const oneLevel = 0.1

// lever is the distance along V from the pull of the bolts to the push of the contact. Where one of the two is missing the couple enters
// at one level, which bends a wall most.
func (g *boltGroup) lever() float64 {
	pull, at := 0.0, 0.0
	for i, t := range g.tensions {
		pull += t
		at += t * g.pos[i].Y
	}
	if pull == 0 || g.contact.Open {
		return oneLevel
	}
	return max(math.Abs(at/pull-g.contact.ContactAt.Y), oneLevel)
}

// atWalls gives a wall the couple of its bolt group: pull of the bolts and push of the contact; where the end is free to turn, the pull alone at the
// worst height.
func (r *run) atWalls() {
	for i := range r.walls {
		g := &r.groups[r.walls[i].group]
		r.spend(len(r.forces) + len(g.pos))
		w := sum(r.forces, g.passes, g.Pose.At(g.centroid.X, g.centroid.Y, 0))
		f := r.walls[i].f
		f.M, f.Mv = math.Abs(w.m.Dot(g.Pose.U)), math.Abs(w.m.Dot(g.Pose.V))
		f.N = math.Abs(w.f.Dot(g.Pose.W()))
		f.Arm = g.lever()
		if r.walls[i].support.Couple == part.CoupleByTurning {
			f.M, f.Mv, f.Arm = 0, 0, oneLevel
		}
		r.wallSlots[i].consider(r, f, "")
	}
}
