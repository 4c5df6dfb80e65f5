package strength

// Block shear: the piece of a ply that a bolt group would tear out, in each of four directions.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// block is a piece of one ply towards one edge, ready for loads.
type block struct {
	group int
	along shape.Point // towards which the block is torn, in the group's plane
	sense float64     // -1 for the bracket's ply, whose bolts push against the load on it, +1 for the support's
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
				r.addBlocks(i, 2*float64(k)-1, t, us, vs)
			}
		}
	}
	r.blocks = make([]slots[Block], len(r.blockSet))
	for i := range r.blockSet {
		b := &r.blockSet[i]
		g := &r.groups[b.group]
		thing := r.blockThing[i]
		r.blocks[i] = newSlots(r.basis.Rules.Block, thing+" at "+g.ID+", block towards "+compass(b.along), thing, "block shear", g.Pose.Origin, nil)
		r.places = append(r.places, &r.blocks[i])
	}
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

func (r *run) addBlocks(group int, sense float64, t *thing, us, vs []float64) {
	for _, d := range [4]shape.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		along, across := us, vs
		if d.X == 0 {
			along, across = vs, us
		}
		sign := d.X + d.Y
		if sign < 0 {
			along = slices.Clone(along)
			slices.Reverse(along)
		}
		edge := r.edgeBeyond(group, t, d, along[len(along)-1], across)
		if math.IsInf(edge, 1) {
			continue
		}
		far := math.Abs(along[len(along)-1] - along[0])
		g := &r.groups[group]
		r.blockSet = append(r.blockSet, block{group: group, along: d, sense: sense, f: Block{
			Lgv: far + edge, Rows: float64(len(along)), Lgt: across[len(across)-1] - across[0], Across: float64(len(across)),
			Dh: g.HoleMM, T: t.plate.ThicknessMM, Fy: t.fy, Fu: t.fu,
		}})
		r.blockThing = append(r.blockThing, t.plate.ID)
	}
}

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
		v := 0.0
		for _, s := range g.shears {
			v += b.sense * (s.X*b.along.X + s.Y*b.along.Y)
		}
		f := b.f
		f.V = max(v, 0)
		r.blocks[i].consider(r, f, "")
	}
}
