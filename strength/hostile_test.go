package strength_test

// Brackets that no kind has made and that are meant to be costly: real ones with their plates, cuts, welds, bolts and paths many times over. Whatever comes, a check
// ends when its work is spent, and the work that is counted is the work that is done.

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// times repeats a list until it has n entries, each with a name of its own.
func times[T any](list []T, n int, rename func(e *T, id string)) []T {
	out := slices.Clone(list)
	for i := 0; len(list) > 0 && len(out) < n; i++ {
		e := list[i%len(list)]
		rename(&e, fmt.Sprint("x", i))
		out = append(out, e)
	}
	return out
}

// named are the names that times gives.
func named(n int) []string {
	out := make([]string, n)
	for i := range out {
		out[i] = fmt.Sprint("x", i)
	}
	return out
}

// longer has every branch pass some names more before its support.
func longer(b *part.Bracket, names []string) {
	for i := range b.Paths {
		b.Paths[i].Branches = slices.Clone(b.Paths[i].Branches)
		for k := range b.Paths[i].Branches {
			w := &b.Paths[i].Branches[k].Through
			last := len(*w) - 1
			*w = slices.Concat((*w)[:last], names, (*w)[last:])
		}
	}
}

// hostility makes something of a bracket n times as much, or about n of it.
type hostility struct {
	name string
	do   func(b *part.Bracket, n int)
}

var hostilities = []hostility{
	{"plates", func(b *part.Bracket, n int) {
		b.Plates = times(b.Plates, min(n, 100), func(p *part.Plate, id string) { p.ID = "p" + id })
	}},
	{"corners", func(b *part.Bracket, n int) {
		for i := range b.Plates {
			p := &b.Plates[i]
			each := n / (len(p.Outer) * len(b.Plates))
			var l shape.Loop
			for k, v := range p.Outer {
				l = append(l, v)
				for j := 1; v.Bulge == 0 && j < each; j++ {
					to := p.Outer[(k+1)%len(p.Outer)].Point
					l = append(l, shape.Vertex{Point: v.Point.Add(to.Sub(v.Point).Scale(float64(j) / float64(each)))})
				}
			}
			p.Outer = l
		}
	}},
	{"holes", func(b *part.Bracket, n int) {
		for i := range b.Plates {
			p := &b.Plates[i]
			box := p.Outer.BBox()
			for k := range n / len(b.Plates) / 2 {
				at := shape.Point{X: box.Min.X + box.Width()*float64(k%29+1)/30, Y: box.Min.Y + box.Height()*float64(k/29%29+1)/30}
				q := *p
				q.Holes = append(slices.Clone(p.Holes), part.Hole{Center: at, DiaMM: 0.2, Purpose: part.ForBolt, Finish: part.Drilled})
				if len(p.Holes) < 60 && q.Shape(false).Validate() == nil {
					p.Holes = q.Holes
				}
			}
		}
	}},
	{"sweeps", func(b *part.Bracket, n int) {
		b.Sweeps = times(b.Sweeps, min(n, 100), func(s *part.Sweep, id string) { s.ID = id })
	}},
	{"swept things", func(b *part.Bracket, n int) {
		var all []string
		for i := range b.Plates {
			all = append(all, b.Plates[i].ID)
		}
		for i := range b.Sweeps {
			s := &b.Sweeps[i].Things
			*s = append(slices.Clone(*s), slices.Repeat(all, 1+n/(1+len(all)*len(b.Sweeps)))...)
		}
	}},
	{"composites", func(b *part.Bracket, n int) {
		b.Composites = times(b.Composites, min(n, 500), func(c *part.Composite, id string) {
			c.ID = id
			c.To = c.To.AddScaled(float64(len(id))*1e-2, c.From.Sub(c.To).Unit())
		})
	}},
	{"composites' things", func(b *part.Bracket, n int) {
		for i := range b.Composites {
			c := &b.Composites[i]
			more := 1 + n/(len(c.Things)*len(b.Composites))
			c.Things, c.Welds = slices.Concat(c.Things, slices.Repeat(c.Things[1:], more)), slices.Repeat(c.Welds, more)
		}
	}},
	{"stretches", func(b *part.Bracket, n int) { // each composite ends elsewhere
		b.Composites = times(b.Composites, min(n, 300), func(c *part.Composite, id string) { c.ID = id })
		for i := range b.Composites {
			c := &b.Composites[i]
			c.From = c.From.AddScaled(0.9*float64(i)/float64(len(b.Composites)), c.To.Sub(c.From))
		}
	}},
	{"welds", func(b *part.Bracket, n int) {
		b.Welds = times(b.Welds, min(n, 400), func(w *part.WeldGroup, id string) { w.ID = "w" + id })
	}},
	{"runs", func(b *part.Bracket, n int) {
		for i := range b.Welds {
			w := &b.Welds[i]
			each := 1 + n/(len(w.Segments)*len(b.Welds))
			var out []part.WeldSegment
			for k := range each {
				for _, s := range w.Segments { // pieces of one run far apart in the list: the dearest order to find runs in
					along := s.B.Sub(s.A).Scale(1 / float64(each))
					out = append(out, part.WeldSegment{A: s.A.AddScaled(float64(k), along), B: s.A.AddScaled(float64(k+1), along)})
				}
			}
			w.Segments = out
		}
	}},
	{"standing plates", func(b *part.Bracket, n int) { // all tied together, each with a weld on the same foot that loads pass
		if len(b.Welds) == 0 || b.Plate(b.Welds[0].Joins[0]) == nil {
			return
		}
		n = min(n, 120)
		p, w := *b.Plate(b.Welds[0].Joins[0]), b.Welds[0]
		b.Plates = times(append(slices.Clone(b.Plates), p)[len(b.Plates):], n, func(q *part.Plate, id string) { q.ID = id })[1:]
		b.Plates = append(b.Plates, p)
		for _, id := range named(n - 1) {
			v := w
			v.ID, v.Joins[0] = "s"+id, id
			b.Welds = append(b.Welds, v)
		}
		if len(b.Composites) > 0 {
			b.Composites[0].Things = append(slices.Clone(b.Composites[0].Things), named(n-1)...)
		}
	}},
	{"ways", func(b *part.Bracket, n int) {
		branches := 0
		for _, p := range b.Paths {
			branches += len(p.Branches)
		}
		longer(b, slices.Repeat([]string{b.Supports[0].ID}, n/branches))
	}},
	{"load points", func(b *part.Bracket, n int) {
		paths := slices.Clone(b.Paths)
		first := b.LoadPoints[0].ID
		for i := range paths {
			b.Paths[i].LoadPoint, paths[i].LoadPoint = first, first
		}
		branches := 0
		for _, p := range paths {
			branches += len(p.Branches)
		}
		b.LoadPoints = times(b.LoadPoints, min(n, 900/branches), func(l *part.LoadPoint, id string) {
			l.ID = id
			for _, p := range paths {
				p.LoadPoint = id
				b.Paths = append(b.Paths, p)
			}
		})
	}},
	{"bolts", func(b *part.Bracket, n int) {
		b.Bolts = times(b.Bolts, min(n, 300), func(g *part.BoltGroup, id string) { g.ID = "b" + id; g.SameAs = "" })
	}},
	{"shear planes", func(b *part.Bracket, n int) {
		b.Bolts = times(b.Bolts, min(n, 100), func(g *part.BoltGroup, id string) {
			if g.SameAs == "" {
				g.SameAs = g.ID
			}
			g.ID = "t" + id
		})
	}},
	{"grids", func(b *part.Bracket, n int) {
		side := 1
		for side < 10 && 2*side*side*len(b.Bolts) < n {
			side++
		}
		for i := range b.Bolts {
			g := &b.Bolts[i]
			first, grid := g.Points[0], []shape.Point(nil)
			for k := range side * side {
				grid = append(grid, shape.Point{X: first.X + float64(k%side)/100, Y: first.Y + float64(k/side)/100})
			}
			g.Points = grid
		}
	}},
	{"one bolt many times", func(b *part.Bracket, n int) {
		for i := range b.Bolts {
			if g := &b.Bolts[i]; len(g.Points) < 1000 {
				g.Points = slices.Repeat(g.Points, 1+min(n, 1000-len(g.Points))/(len(b.Bolts)*len(g.Points)))
			}
		}
	}},
	{"pins", func(b *part.Bracket, n int) {
		b.Pins = times(b.Pins, min(n, 100), func(p *part.Pin, id string) { p.ID = "n" + id })
	}},
	{"passed pins and bolts", func(b *part.Bracket, n int) {
		var all []string
		for i := range b.Pins {
			all = append(all, b.Pins[i].ID)
		}
		for i := range b.Bolts {
			all = append(all, b.Bolts[i].ID)
		}
		longer(b, all[:min(len(all), n, 100)])
	}},
	{"rods", func(b *part.Bracket, n int) {
		b.Rods = times(b.Rods, min(n, 100), func(r *part.Rods, id string) { r.ID = "r" + id })
	}},
	{"contacts", func(b *part.Bracket, n int) {
		b.Contacts = times(b.Contacts, min(n, 400), func(c *part.Contact, id string) { c.ID = "c" + id })
	}},
	{"members", func(b *part.Bracket, n int) {
		b.Members = times(b.Members, min(n, 300), func(m *part.Member, id string) { m.ID = "m" + id })
	}},
	{"shares", func(b *part.Bracket, n int) {
		b.Shares = times(b.Shares, min(n, 300), func(s *part.Share, id string) { s.ID, s.Rule, s.Legs = "h"+id, part.Equal, 1 })
	}},
}

// many are n load cases of forces that a bracket has paths for.
func many(b *part.Bracket, n int) []part.Case {
	out := make([]part.Case, n)
	for i := range out {
		force := randomLoad(b, uint64(i))
		out[i] = service(fmt.Sprint("c", i), force)
		if len(b.LoadPoints) > 1 {
			out[i].LoadPoint = b.LoadPoints[i%len(b.LoadPoints)].ID
		}
	}
	return out
}

// processor is what this process has used.
func processor(t testing.TB) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// hostile is a bracket of a kind to which one to four things were done, with its cases.
func hostile(t testing.TB, seed uint64) (words string, b *part.Bracket, cases []part.Case, o strength.Options) {
	t.Helper()
	draw := rand.New(rand.NewPCG(seed, 8))
	all := kinds.All()
	kind := all[draw.IntN(len(all))].Name
	b, err := geometry.Build(all, geometry.Request{Kind: kind, Name: "x", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	words = kind
	size := func(most int) int { return 1 << draw.IntN(most+1) }
	for range 1 + draw.IntN(4) {
		h, n := hostilities[draw.IntN(len(hostilities))], size(12)
		h.do(b, n)
		words += fmt.Sprintf(", %d %s", n, h.name)
	}
	cases = many(b, size(12))
	if len(cases) > 1 && draw.IntN(3) == 0 {
		for i := range min(len(cases), 100) {
			o.Spectrum = append(o.Spectrum, strength.StressCycle{From: cases[i].Name, To: cases[0].Name, Cycles: 1e5})
		}
	}
	o.Trace = draw.IntN(2) == 0
	return fmt.Sprintf("%s, %d cases", words, len(cases)), b, cases, o
}

// However a bracket is made up, a check does no more work than it may, keeps no more memory for it, and answers or names a field.
// The processor time of a unit of the work is held against that of plain brackets, so that no loop goes uncounted.
func TestHostileBrackets(t *testing.T) {
	const (
		allowed = 20_000_000 // a part of what a service allows: what holds for it holds for more
		dearest = 25         // a unit of work in those of a plain check
		memory  = 300 << 20  // handed out in all, for so much work
	)
	on := basis.All()[0]
	plain := plainUnit(t, on)
	refused, spentOut, whole := 0, 0, 0
	for seed := range uint64(150) {
		words, b, cases, o := hostile(t, seed)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		began := processor(t)
		spent, err := strength.Spent(allowed, on, b, cases, o)
		took := processor(t) - began
		runtime.ReadMemStats(&after)
		switch {
		case err == nil:
			whole++
		case part.Fields(err) == nil:
			t.Errorf("seed %d, %s: %v", seed, words, err)
		case spent > allowed:
			spentOut++
		default:
			refused++
		}
		unit := float64(took-30*time.Millisecond) / float64(1+spent) / plain
		if took > 100*time.Millisecond {
			t.Logf("seed %d, %s: %d, %s, %.1f, %d MB, %.90v", seed, words, spent, took, unit, (after.TotalAlloc-before.TotalAlloc)>>20, err)
		}
		if took > 300*time.Millisecond && unit > dearest {
			t.Errorf("seed %d, %s: %s for %d units of work, %.0f times a plain check's", seed, words, took, spent, unit)
		}
		if n := after.TotalAlloc - before.TotalAlloc; n > memory {
			t.Errorf("seed %d, %s: %d MB", seed, words, n>>20)
		}
	}
	t.Logf("%d checked to the end, %d stopped when their work was spent, %d refused", whole, spentOut, refused)
	if whole < 30 || spentOut < 10 {
		t.Error("too few of them try the bound")
	}
}

// plainUnit is the processor time of a unit of work in checks of plain brackets, ns.
func plainUnit(t *testing.T, on *strength.Basis) float64 {
	spent, began := 0, processor(t)
	for _, k := range kinds.All() {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: k.Name, Name: "x", Hand: part.LeftHand})
		if err != nil {
			t.Fatal(err)
		}
		n, _ := strength.Spent(1<<40, on, b, many(b, 300), strength.Options{})
		spent += n
	}
	return float64(processor(t)-began) / float64(spent)
}

// A check ends when nobody waits for it any more, in the middle of its work.
func TestCheckEndsWithItsContext(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "x", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	cases := many(b, 4000)
	if _, err := strength.RunContext(ctx, basis.All()[0], b, cases, strength.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}
