package nest

// place is where one part lies: which raster of it, on which sheet, at which cell.
type place struct{ shape, turn, sheet, x, y int }

// ground is a sheet being filled.
type ground struct {
	width, rows int
	columns     []column
	used        int // columns that something lies in
}

// bench is what a layout works on: the sheets, and for every turned part on every sheet the first column that may still take it. Sheets only fill
// up, so that this never goes back.
type bench struct {
	*job
	grounds []ground
	first   [][]int // by sheet, then raster
}

func (j *job) newBench() *bench {
	b := &bench{job: j, grounds: make([]ground, len(j.sheets)), first: make([][]int, len(j.sheets))}
	for i, s := range j.sheets {
		b.grounds[i] = ground{width: s.columns, rows: s.rows, columns: make([]column, s.columns)}
		b.first[i] = make([]int, j.rasters)
	}
	return b
}

func (b *bench) clear() {
	for i := range b.grounds {
		g := &b.grounds[i]
		clear(g.columns[:g.used])
		g.used = 0
		clear(b.first[i])
	}
}

// lay puts the parts in an order on the sheets, from the first sheet on, each in the turn that reaches least far. It gives what was placed, and how good that is:
// parts left over, sheets begun, columns used of the last one; less is better.
func (b *bench) lay(order []int) ([]place, score) {
	b.clear()
	var out []place
	var s score
	for _, part := range order {
		p, ok := b.best(part)
		if !ok {
			s.left++
			continue
		}
		b.put(p)
		out = append(out, p)
	}
	for i := range b.grounds {
		if used := b.grounds[i].used; used > 0 {
			s.sheets++
			s.columns = used
			s.spread += used
		}
	}
	return out, s
}

// best looks through the sheets and turns for a part.
func (b *bench) best(shape int) (place, bool) {
	for sheet := range b.grounds {
		found, reach := place{}, 0
		for turn := range b.shapes[shape].rasters {
			if x, y, ok := b.find(sheet, shape, turn); ok {
				if to := x + len(b.shapes[shape].rasters[turn].columns); reach == 0 || to < reach {
					found, reach = place{shape, turn, sheet, x, y}, to
				}
			}
		}
		if reach > 0 {
			return found, true
		}
	}
	return place{}, false
}

// find looks for the leftmost, then lowest place of a turned part.
func (b *bench) find(sheet, shape, turn int) (x, y int, ok bool) {
	g := &b.grounds[sheet]
	r := &b.shapes[shape].rasters[turn]
	first := &b.first[sheet][b.shapes[shape].index+turn]
	last := g.width - len(r.columns)
	if r.rows > g.rows {
		return 0, 0, false
	}
	for x = *first; x <= last; x++ {
		if y = g.lowestFor(r, x); y >= 0 {
			*first = x
			return x, y, true
		}
	}
	*first = last + 1
	return 0, 0, false
}

// lowestFor is the lowest row at which a raster lies free with its first column at x, -1 when there is none.
func (g *ground) lowestFor(r *raster, x int) int {
	free := upTo(g.rows - r.rows + 1)
	for _, i := range r.order {
		if x+i >= g.used {
			continue
		}
		col := &g.columns[x+i]
		for _, run := range r.columns[i] {
			taken := col.smeared(run.hi - run.lo)
			taken = taken.down(run.lo)
			if !free.without(&taken) {
				return -1
			}
		}
	}
	return free.lowest()
}

func (b *bench) put(p place) {
	g := &b.grounds[p.sheet]
	r := &b.shapes[p.shape].rasters[p.turn]
	for i, runs := range r.columns {
		for _, run := range runs {
			g.columns[p.x+i].set(p.y+run.lo, p.y+run.hi)
		}
	}
	g.used = max(g.used, p.x+len(r.columns))
}
