package strength

// Block shear: the pieces of a ply that a bolt group would tear out, in each of four directions.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// block is a piece of one ply towards one edge, ready for loads.
type block struct {
	group int
	along shape.Point // towards which the block is torn, in the group's plane
	sense float64     // see sense
	thing string      // the ply
	words string      // which piece of it
	f     Block
}

// layBlocks finds the blocks of every group whose bolts stand on a grid. Towards a side with no edge of the ply within reach there is
// none.
func (r *run) layBlocks() {
	for i := range r.groups {
		g := &r.groups[i]
		us, vs := levels(g.Points, func(p shape.Point) float64 { return p.X }), levels(g.Points, func(p shape.Point) float64 { return p.Y })
		if len(us)*len(vs) != len(g.Points) {
			r.skip("block shear", g.ID, "the bolts do not stand on a grid")
			continue
		}
		for k := range g.Plies {
			if t := r.thing(g.Plies[k].Thing); t != nil {
				r.addBlocks(i, r.sense(g, k), t, us, vs)
			} else {
				r.skip("block shear", g.Plies[k].Thing+" at "+g.ID, "it is not a plate of this bracket")
			}
		}
	}
	r.blocks = make([]slots[Block], len(r.blockSet))
	for i := range r.blockSet {
		b := &r.blockSet[i]
		g := &r.groups[b.group]
		r.blocks[i] = newSlots(r.basis.Rules.Block, b.thing+" at "+g.ID+", block "+b.words, b.thing, "block shear", g.Pose.Origin, nil)
		r.places = append(r.places, &r.blocks[i])
	}
}

// sense says which way the bolts push a ply: 1 along the load, where they bring it, as to a lap; -1 against it, where they hold the ply,
// as a base on its support; 0 when paths disagree, and then either way counts. A ply that no path names is taken by its place.
func (r *run) sense(g *boltGroup, ply int) float64 {
	brings, holds := false, false
	for _, br := range r.branches {
		bolts, plate := slices.Index(br.Through, g.ID), slices.Index(br.Through, g.Plies[ply].Thing)
		if bolts >= 0 && plate >= 0 {
			brings, holds = brings || plate > bolts, holds || plate < bolts
		}
	}
	switch {
	case brings && holds:
		return 0
	case brings || !holds && ply == 1:
		return 1
	}
	return -1
}

func compass(d shape.Point) string {
	switch {
	case d.X > 0:
		return "+u"
	case d.X < 0:
		return "-u"
	case d.Y > 0:
		return "+v"
	}
	return "-v"
}

// levels are the distinct values of one coordinate, rising.
func levels(points []shape.Point, of func(shape.Point) float64) []float64 {
	var out []float64
	for _, p := range points {
		out = append(out, of(p))
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
}

// addBlocks finds the blocks of one ply: towards each edge, the one between the outermost lines and the one open to either side. The
// heel of an angle counts as an edge, which is conservative.
func (r *run) addBlocks(group int, sense float64, t *thing, us, vs []float64) {
	g := &r.groups[group]
	for _, d := range [4]shape.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		along, across, side := us, vs, shape.Point{Y: 1}
		if d.X == 0 {
			along, across, side = vs, us, shape.Point{X: 1}
		}
		edge := r.edgeBeyond(group, t, d, foremost(along, d), across)
		if math.IsInf(edge, 1) {
			continue
		}
		rows, lines, wide := float64(len(along)), float64(len(across)), span(across)
		f := Block{
			Planes: 2, Lgv: span(along) + edge, HolesV: rows - 0.5, Lgt: wide, HolesT: lines - 1,
			Dh: g.HoleMM, T: t.plate.ThicknessMM, Fy: t.fy, Fu: t.fu,
		}
		b := block{group: group, along: d, sense: sense, thing: t.plate.ID, words: "towards " + compass(d), f: f}
		if lines > 1 {
			r.blockSet = append(r.blockSet, b)
		}
		for _, s := range [2]shape.Point{side, side.Scale(-1)} {
			beside := r.edgeBeyond(group, t, s, foremost(across, s), along)
			if math.IsInf(beside, 1) {
				continue
			}
			open := b
			open.words += ", open to " + compass(s)
			open.f.Planes, open.f.Lgt, open.f.HolesT = 1, wide+beside, lines-0.5
			r.blockSet = append(r.blockSet, open)
		}
	}
}

// foremost is the last of rising levels in the direction d.
func foremost(levels []float64, d shape.Point) float64 {
	if d.X+d.Y < 0 {
		return levels[0]
	}
	return levels[len(levels)-1]
}

func span(levels []float64) float64 { return levels[len(levels)-1] - levels[0] }

// edgeBeyond is the least distance from the foremost bolts to the ply's edge along d; infinite when there is none.
func (r *run) edgeBeyond(group int, t *thing, d shape.Point, foremost float64, across []float64) float64 {
	g := &r.groups[group]
	least := math.Inf(1)
	for _, c := range across {
		p := shape.Point{X: foremost, Y: c}
		if d.X == 0 {
			p = shape.Point{X: c, Y: foremost}
		}
		u, v, _ := t.plate.Pose.Local(g.Pose.At(p.X, p.Y, 0))
		away := g.Pose.U.Scale(d.X).Add(g.Pose.V.Scale(d.Y))
		dir := shape.Point{X: away.Dot(t.plate.Pose.U), Y: away.Dot(t.plate.Pose.V)}
		if dir.Norm() < 0.99 {
			return math.Inf(1) // the ply does not lie in the group's plane
		}
		if _, ahead := reach(shape.Outline{Outer: t.plate.Outer}, shape.Point{X: u, Y: v}, dir); ahead > 0 {
			least = min(least, ahead)
		}
	}
	return least
}

// atBlocks gives each block of a group the group's shear towards it.
func (r *run) atBlocks(group int) {
	for i := range r.blockSet {
		b := &r.blockSet[i]
		if b.group != group {
			continue
		}
		g := &r.groups[group]
		total, least, most := 0.0, math.Inf(1), math.Inf(-1)
		for _, s := range g.shears {
			v := s.X*b.along.X + s.Y*b.along.Y
			if b.sense != 0 {
				v *= b.sense
			}
			total += v
			least, most = min(least, v), max(most, v)
		}
		f := b.f
		f.V = max(total, 0)
		if b.sense == 0 {
			f.V = math.Abs(total)
		}
		f.Even = most-least <= 1e-6*max(math.Abs(most), math.Abs(least))
		r.blocks[i].consider(r, f, "")
	}
}
