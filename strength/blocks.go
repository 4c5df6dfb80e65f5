package strength

// Block shear: the pieces of a ply that a bolt group would tear out, towards each of four sides.
//
// Any rectangle of the grid of bolts that reaches to the foremost row can come out as a block: between two lines, with two planes in
// shear, or from one line to a side edge, with one. Each is held against what its own bolts push, so that bolts which push apart, as
// under torsion, do not hide behind a resultant of nothing. A block open to a side comes out that way as well: force towards both is
// judged together by the basis. A block between two lines would press on the ply beside it, and that way out is the open block's. Bolts
// of other groups in the same ply push blocks of their own.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// plyBlocks are the blocks of one ply at one bolt group.
type plyBlocks struct {
	group  int
	planes []shearPlane  // of the bolts on this ply: the group's own, then those listed as further groups
	either bool          // paths disagree which way the bolts push
	push   []shape.Point // of each bolt on the ply in the present case, in the group's axes
	blocks []block
}

// shearPlane is one plane of the bolts, with which they push a ply.
type shearPlane struct {
	group int
	sense float64 // see sense
	bolt  []int   // which of its bolts is each of ours
}

// block is one piece of a ply, ready for loads.
type block struct {
	slot        int
	label       string // which part of the group it holds; empty: all of it
	along, open shape.Point
	bolts       []int
	f           Block
}

const (
	blockShear = "block shear"
	blockNote  = "force on a block: the shears of its own bolts towards the edge added, those the other way left out"
	twinNote   = "all shear planes of the bolts push this ply"
)

// maxGrid bounds the blocks of one ply, which grow with the square of the bolts: two thousand or so.
const maxGrid = 100

// blockWork is how much the blocks weigh beside sections, which have ten times as many rules each.
func (r *run) blockWork() int {
	n := 0
	for i := range r.blockSet {
		n += len(r.blockSet[i].blocks)
	}
	return n / 10
}

// layBlocks finds the blocks of every group whose bolts stand on a grid, or says why there are none.
func (r *run) layBlocks() {
	r.blocks = make([]slots[Block], 0, 2*12*len(r.groups)) // on each of two plies twelve ways out at most
	for i := range r.groups {
		g := &r.groups[i]
		us, vs := levels(g.Points, func(p shape.Point) float64 { return p.X }), levels(g.Points, func(p shape.Point) float64 { return p.Y })
		switch {
		case idle(g.passes):
			r.skip(blockShear, g.ID, "no load path passes it")
			continue
		case len(us)*len(vs) != len(g.Points):
			r.skip(blockShear, g.ID, "the bolts do not stand on a grid")
			continue
		case len(g.Points) > maxGrid:
			r.skip(blockShear, g.ID, fmt.Sprintf("more than %d bolts", maxGrid))
			continue
		}
		for k := range g.Plies {
			if r.laidBefore(i, k) {
				continue
			}
			if t := r.thing(g.Plies[k].Thing); t != nil {
				r.spend(len(g.Points) * (perRule + t.plate.Corners()))
			}
			if f, why := r.faceOf(i, k); why == "" {
				r.addBlocks(i, k, f, us, vs)
			} else {
				r.skip(blockShear, g.Plies[k].Thing+" at "+g.ID, why)
			}
		}
	}
	for i := range r.blocks {
		r.places = append(r.places, &r.blocks[i])
	}
}

// laidBefore says whether the same bolts came up with the same ply already: its blocks are judged once, with all their planes.
func (r *run) laidBefore(group, ply int) bool {
	g := &r.groups[group]
	r.spend(group)
	return slices.ContainsFunc(r.groups[:group], func(h boltGroup) bool {
		return g.sameBolts(&h) && !idle(h.passes) && (h.Plies[0].Thing == g.Plies[ply].Thing || h.Plies[1].Thing == g.Plies[ply].Thing)
	})
}

// sense says which way the bolts push a ply: 1 along the load, where they bring it, as to a lap; -1 against it, where they hold the ply,
// as a base on its support; 0 when paths disagree, and then either way counts. A ply that no path names is taken by its place.
func (m *model) sense(g *boltGroup, ply int) float64 {
	brings, holds := false, false
	for _, br := range m.branches {
		m.spend(2 * len(br.Through))
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

// shearPlanes finds every plane with which the bolts of a group push one of its plies: a ply in the middle has two. Where paths disagree
// which way one of them pushes, it is taken to push as the others do.
func (r *run) shearPlanes(group, ply int) (planes []shearPlane, either bool) {
	g, known := &r.groups[group], 0.0
	for i := range r.groups {
		r.spend(1)
		h := &r.groups[i]
		if i != group && !g.sameBolts(h) {
			continue
		}
		for k := range h.Plies {
			if h.Plies[k].Thing == g.Plies[ply].Thing {
				r.spend(perRule * len(g.Points) * len(h.Points))
				p := shearPlane{group: i, sense: r.sense(h, k), bolt: g.boltsIn(h)}
				if known == 0 {
					known = p.sense
				}
				either = either || p.sense == 0
				planes = append(planes, p)
			}
		}
	}
	for i := range planes {
		switch {
		case planes[i].sense != 0:
		case known != 0:
			planes[i].sense = known
		default:
			planes[i].sense = 1
		}
	}
	return planes, either
}

// boltsIn finds each bolt of a group among those of another that lists the same bolts: the nearest, seen along them.
func (g *boltGroup) boltsIn(h *boltGroup) []int {
	out := make([]int, len(g.Points))
	for i, p := range g.Points {
		least := math.Inf(1)
		for k, q := range h.Points {
			u, v, _ := g.Pose.Local(h.Pose.At(q.X, q.Y, 0))
			if away := p.Dist(shape.Point{X: u, Y: v}); away < least {
				out[i], least = k, away
			}
		}
	}
	return out
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

// addBlocks finds the blocks of one ply. The heel of an angle counts as an edge, which is conservative.
func (r *run) addBlocks(group, ply int, f face, us, vs []float64) {
	g := &r.groups[group]
	pb := plyBlocks{group: group, push: make([]shape.Point, len(g.Points))}
	pb.planes, pb.either = r.shearPlanes(group, ply)
	notes := []string{blockNote}
	if len(pb.planes) > 1 {
		notes = append(notes, twinNote)
	}
	for _, d := range [4]shape.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		rows, lines, side := slices.Clone(us), vs, shape.Point{Y: 1}
		if d.X == 0 {
			rows, lines, side = slices.Clone(vs), us, shape.Point{X: 1}
		}
		if d.X+d.Y > 0 {
			slices.Reverse(rows)
		}
		for _, open := range [3]shape.Point{{}, side, side.Scale(-1)} {
			words := "towards " + compass(d)
			if open != (shape.Point{}) {
				words += ", open to " + compass(open)
			} else if len(lines) == 1 {
				continue
			}
			r.blocks = append(r.blocks, newSlots(r.basis.Rules.Block, f.t.plate.ID+" at "+g.ID+", block "+words, f.t.plate.ID, blockShear, g.Pose.Origin, notes))
			for n := len(rows); n > 0; n-- {
				for _, part := range stretches(len(lines), open) {
					r.spend(perBlock + len(g.Points) + len(lines)*f.t.plate.Corners())
					b := f.block(d, open, rows[:n], lines[part[0]:part[1]+1])
					b.slot, b.label = len(r.blocks)-1, partOf(n, len(rows), part, len(lines), compass(side.Scale(-1)))
					pb.blocks = append(pb.blocks, b)
				}
			}
		}
	}
	r.blockSet = append(r.blockSet, pb)
}

// stretches are the first and last of the lines that a block can hold, all of them first: any two for a block between lines, all from
// one to the side for an open one.
func stretches(lines int, open shape.Point) [][2]int {
	var out [][2]int
	for i := range lines {
		for j := lines - 1; j >= i; j-- {
			to := open.X + open.Y
			if to == 0 && i < j || to > 0 && j == lines-1 || to < 0 && i == 0 {
				out = append(out, [2]int{i, j})
			}
		}
	}
	return out
}

// partOf says which part of the group a block holds, empty for all of it. Lines are counted from a side.
func partOf(front, rows int, part [2]int, lines int, from string) string {
	words := ""
	switch {
	case part[0] == part[1] && lines > 1:
		words = fmt.Sprintf("line %d of %d from %s", part[0]+1, lines, from)
	case part[1]-part[0] < lines-1:
		words = fmt.Sprintf("lines %d to %d of %d from %s", part[0]+1, part[1]+1, lines, from)
	}
	switch {
	case front < rows && front == 1:
		words = joinWords(words, fmt.Sprintf("foremost row of %d", rows))
	case front < rows:
		words = joinWords(words, fmt.Sprintf("foremost %d rows of %d", front, rows))
	}
	return words
}

// block measures the piece with the given rows, the foremost first, and lines.
func (f *face) block(d, open shape.Point, rows, lines []float64) block {
	at := func(row, line float64) shape.Point {
		if d.X == 0 {
			return shape.Point{X: line, Y: row}
		}
		return shape.Point{X: row, Y: line}
	}
	back, last := rows[len(rows)-1], len(lines)-1
	var room [2][8]shape.Point
	front, flank := room[0][:0], room[1][:0]
	for _, line := range lines {
		front = append(front, at(rows[0], line))
	}
	b := block{along: d, open: open, f: Block{
		Planes: 2, Lgv: math.Abs(rows[0]-back) + f.end(d, front), HolesV: float64(len(rows)) - 0.5,
		Lgt: lines[last] - lines[0], HolesT: float64(last),
		Dh: f.hole, T: f.t.plate.ThicknessMM, Fy: f.t.fy, Fu: f.t.fu,
	}}
	sheared, across := []float64{lines[0], lines[last]}, shape.Point{X: math.Abs(d.Y), Y: math.Abs(d.X)}
	if open != (shape.Point{}) {
		inner, outer := lines[0], lines[last]
		if open.X+open.Y < 0 {
			inner, outer = outer, inner
		}
		for _, row := range rows {
			flank = append(flank, at(row, outer))
		}
		sheared, across = []float64{inner}, open
		b.f.Planes, b.f.HolesT = 1, float64(last)+0.5
		b.f.Lgt += f.edge(open, flank)
	}
	for _, line := range sheared {
		b.f.LostV += f.lost(at(back, line), d, b.f.Lgv)
	}
	b.f.LostT = f.lost(at(back, sheared[0]), across, b.f.Lgt)
	b.bolts = make([]int, 0, len(f.g.Points))
	for i, p := range f.g.Points {
		row, line := p.X, p.Y
		if d.X == 0 {
			row, line = p.Y, p.X
		}
		if (row-back)*(d.X+d.Y) > -1e-6 && line > lines[0]-1e-6 && line < lines[last]+1e-6 {
			b.bolts = append(b.bolts, i)
		}
	}
	return b
}

// atBlocks gives each block the shears of its bolts that go towards its edge, and towards the side that it is open to.
func (r *run) atBlocks(group int) {
	for i := range r.blockSet {
		pb := &r.blockSet[i]
		if pb.group != group {
			continue
		}
		for _, p := range pb.planes {
			r.spend(perRule * len(p.bolt))
		}
		r.pushes(pb)
		for k := range pb.blocks {
			r.atBlock(pb, &pb.blocks[k], 1)
			if pb.either {
				r.atBlock(pb, &pb.blocks[k], -1)
			}
		}
	}
}

// pushes adds what every shear plane of the bolts does to the ply.
func (r *run) pushes(pb *plyBlocks) {
	g := &r.groups[pb.group]
	clear(pb.push)
	for _, p := range pb.planes {
		h := &r.groups[p.group]
		for i, k := range p.bolt {
			f := h.Pose.U.Scale(p.sense*h.shears[k].X).AddScaled(p.sense*h.shears[k].Y, h.Pose.V)
			pb.push[i] = pb.push[i].Add(shape.Point{X: f.Dot(g.Pose.U), Y: f.Dot(g.Pose.V)})
		}
	}
}

// atBlock judges one block; way is -1 for the bolts pushing against what the paths say.
func (r *run) atBlock(pb *plyBlocks, b *block, way float64) {
	r.spend(len(pb.push) + len(b.bolts))
	peak, least, most := 0.0, math.Inf(1), math.Inf(-1)
	for _, p := range pb.push {
		v := way * p.Dot(b.along)
		peak, least, most = max(peak, p.Norm()), min(least, v), max(most, v)
	}
	f := b.f
	f.Even = most-least <= 1e-6*max(math.Abs(most), math.Abs(least))
	for _, i := range b.bolts {
		// What rounding leaves of a force square to the edge is no force.
		if v := way * pb.push[i].Dot(b.along); v > 1e-9*peak {
			f.V += v
		}
		if v := way * pb.push[i].Dot(b.open); v > 1e-9*peak {
			f.Across += v
		}
	}
	if f.V == 0 {
		// The same piece pushed to its open side alone is a block towards that side.
		f.Across = 0
		if b.label != "" || f.LostV+f.LostT > 0 {
			return
		}
	}
	r.blocks[b.slot].consider(r, f, b.label)
}
