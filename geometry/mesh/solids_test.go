package mesh

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
)

const facetMM = 0.01

// want is a part's true volume, and how far a solid may be off: 2/3 of the facet error times the arcs' area, as the package comment has it. A folded solid's
// middle plane is longer than the flat pattern by what a bend's own middle plane is longer than its allowance.
type want struct{ volume, bound float64 }

func (w *want) section(o shape.Outline, height float64) {
	w.volume += o.Area() * height
	for _, l := range append(o.Holes, o.Outer) {
		for _, e := range l.Edges() {
			if e.IsArc() {
				w.bound += 2. / 3 * facetMM * e.Length() * height
			}
		}
	}
}

func wantOf(b *part.Bracket, id string) (w want) {
	for i := range b.Plates {
		if p := &b.Plates[i]; p.ID == id {
			w.section(p.Shape(false), p.ThicknessMM)
			for _, bend := range p.Bends {
				turn, r, t := math.Abs(bend.AngleRad), bend.RadiusMM, p.ThicknessMM
				length := bend.A.Dist(bend.B)
				if bend.AllowanceMM > 0 {
					w.volume += (turn*(r+t/2) - bend.AllowanceMM) * length * t
				}
				w.bound += 2. / 3 * facetMM * turn * (2*r + t) * length
			}
			return w
		}
	}
	for i := range b.Members {
		if m := &b.Members[i]; m.ID == id {
			w.section(m.Profile.Section(), m.LengthMM)
			for _, h := range m.Holes {
				w.volume -= math.Pi / 4 * h.DiaMM * h.DiaMM * m.Profile.TMM
				w.bound += 2. / 3 * facetMM * math.Pi * h.DiaMM * m.Profile.TMM
			}
			return w
		}
	}
	p := b.Pin(id)
	w.section(shape.Outline{Outer: shape.Circle(shape.Point{}, p.DiaMM)}, p.LengthMM)
	return w
}

// check wants every shell closed, as each already is when Of gives it, and every volume within its bound.
func check(t *testing.T, b *part.Bracket) {
	t.Helper()
	solids, err := Of(b, facetMM)
	if err != nil {
		t.Error(err)
		return
	}
	if len(solids) != len(b.Plates)+len(b.Members)+len(b.Pins) {
		t.Errorf("%d solids", len(solids))
	}
	for i := range solids {
		s := &solids[i]
		shell(t, s)
		w := wantOf(b, s.ID)
		if s.Remark != "" {
			t.Errorf("%s %s", s.ID, s.Remark)
		}
		if got := s.Mesh.Volume(); !(math.Abs(got-w.volume) <= w.bound+1e-9*w.volume) {
			t.Errorf("%s: %.4f mm3, want %.4f within %.4f", s.ID, got, w.volume, w.bound)
		}
	}
}

// shell counts for itself: every edge once each way, every corner used, and the number of holes through a plate by Euler: corners - edges + triangles = 2 - 2 holes.
func shell(t *testing.T, s *Solid) {
	t.Helper()
	count := map[[2]int]int{}
	used := map[int]bool{}
	for _, f := range s.Mesh.Triangles {
		for i := range f {
			count[[2]int{f[i], f[(i+1)%3]}]++
			used[f[i]] = true
		}
	}
	for e, n := range count {
		if n != 1 || count[[2]int{e[1], e[0]}] != 1 {
			t.Fatalf("%s: edge %v is used %d times, and %d times back", s.ID, e, n, count[[2]int{e[1], e[0]}])
		}
	}
	if len(used) != len(s.Mesh.Points) {
		t.Errorf("%s: %d of %d corners are used", s.ID, len(used), len(s.Mesh.Points))
	}
	if euler := len(used) - len(count)/2 + len(s.Mesh.Triangles); euler > 2 || euler%2 != 0 {
		t.Errorf("%s: corners - edges + triangles = %d", s.ID, euler)
	}
}

func TestParts(t *testing.T) {
	b := parttest.Bracket()
	b.Plates = append(b.Plates, parttest.Washer())
	pose := part.Pose{Origin: part.Vec{Y: 500}, U: part.Vec{Z: 1}, V: part.Vec{Y: 1}}
	add := func(id string, p part.Profile, holes ...part.FaceHole) {
		b.Members = append(b.Members, part.Member{ID: id, Name: id, Profile: p, LengthMM: 80, Pose: pose, Holes: holes})
	}
	hole := func(f part.Face, x, y float64) part.FaceHole {
		return part.FaceHole{Face: f, Hole: part.Hole{Center: shape.Point{X: x, Y: y}, DiaMM: 9}}
	}
	add("tube", part.Profile{Kind: part.RoundTube, AMM: 60, TMM: 5})
	add("box", part.Profile{Kind: part.RectTube, AMM: 60, BMM: 40, TMM: 4, RootMM: 8})
	add("rod", part.Profile{Kind: part.RoundBar, AMM: 20})
	add("flat", part.Profile{Kind: part.FlatBar, AMM: 50, TMM: 8}, hole(part.LegA, 20, -10), hole(part.LegA, 60, 10))
	add("both legs", part.Profile{Kind: part.Angle, AMM: 60, BMM: 40, TMM: 5, RootMM: 6}, hole(part.LegA, 20, 40), hole(part.LegA, 60, 25), hole(part.LegB, 20, 25))
	add("no root", part.Profile{Kind: part.Angle, AMM: 60, BMM: 40, TMM: 5}, hole(part.LegB, 30, 20))
	check(t, b)
}

// A hole in the root of an angle or in a tube's wall is left out, and said.
func TestHolesLeftOut(t *testing.T) {
	b := parttest.Bracket()
	m := b.Members[0]
	m.Holes[0].Center.Y = 25
	tube := m
	tube.ID, tube.Profile = "tube", part.Profile{Kind: part.RoundTube, AMM: 60, TMM: 5}
	b = &part.Bracket{Members: []part.Member{m, tube}}
	solids, err := Of(b, facetMM)
	if err != nil {
		t.Fatal(err)
	}
	for i, says := range []string{"1 of its holes are left out", "2 of its holes are left out"} {
		shell(t, &solids[i])
		if !strings.Contains(solids[i].Remark, says) {
			t.Errorf("%s: %q", solids[i].ID, solids[i].Remark)
		}
	}
}

// A bend whose allowance is larger than its flange stands flat, and it is said.
func TestStandsFlat(t *testing.T) {
	p := parttest.Backing()
	p.Bends[0].A.Y, p.Bends[0].B.Y = 29, 29
	solids, err := Of(&part.Bracket{Plates: []part.Plate{p}}, facetMM)
	if err != nil {
		t.Fatal(err)
	}
	shell(t, &solids[0])
	if !strings.Contains(solids[0].Remark, "stands flat: bend 1") {
		t.Errorf("%q", solids[0].Remark)
	}
}

// A web of a tenth of the facet error between two holes: finer facets there.
func TestNarrowWeb(t *testing.T) {
	p := parttest.Washer()
	p.Holes[0].DiaMM = 40 - 0.002
	check(t, &part.Bracket{Plates: []part.Plate{p}})
}

func TestRefused(t *testing.T) {
	for _, e := range []float64{0, 1e-4, 11, math.NaN()} {
		if _, err := Of(parttest.Bracket(), e); err == nil {
			t.Errorf("a facet error of %g mm is accepted", e)
		}
	}
}

// Every kind with random parameters.
func TestEveryKind(t *testing.T) {
	for _, kind := range kinds.All() {
		t.Run(kind.Name, func(t *testing.T) {
			for seed := range uint64(40) {
				b, err := geometry.Build([]geometry.Kind{kind}, fabtest.Draw(kind, seed))
				if err == nil && !t.Failed() {
					check(t, b)
				}
			}
		})
	}
}

// The tray's outside, by its parameters: 700 x 600, 60 high from the underside of a 4 mm bottom whose middle plane lies in z = 0.
func TestTrayIsFoldedToSize(t *testing.T) {
	k, err := geometry.Find(kinds.All(), "tray")
	if err != nil {
		t.Fatal(err)
	}
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: k.Name, Name: "t", Hand: part.LeftHand, Params: []part.Param{{Name: "thickness", Number: 4, Unit: "mm"}}})
	if err != nil {
		t.Fatal(err)
	}
	solids, err := Of(b, facetMM)
	if err != nil {
		t.Fatal(err)
	}
	lo, hi := solids[0].Mesh.Points[0], solids[0].Mesh.Points[0]
	for _, p := range solids[0].Mesh.Points {
		lo = part.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: min(lo.Z, p.Z)}
		hi = part.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: max(hi.Z, p.Z)}
	}
	if size, want := hi.Sub(lo), (part.Vec{X: 700, Y: 600, Z: 60}); size.Sub(want).Norm() > 1e-6 || math.Abs(lo.Z+2) > 1e-9 {
		t.Errorf("%v from %v, want %v", size, lo, want)
	}
}

// BenchmarkEar makes one plate's shell.
func BenchmarkEar(b *testing.B) {
	bracket := &part.Bracket{Plates: []part.Plate{parttest.Ear()}}
	for b.Loop() {
		if _, err := Of(bracket, facetMM); err != nil {
			b.Fatal(err)
		}
	}
}
