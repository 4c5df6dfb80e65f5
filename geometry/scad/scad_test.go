package scad

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/part/parttest"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func written(t testing.TB, b *part.Bracket, o Options) string {
	t.Helper()
	var buf bytes.Buffer
	if err := Write(&buf, b, o); err != nil {
		t.Fatal(err)
	}
	return buf.String()
}

func TestGolden(t *testing.T) {
	got := written(t, parttest.Bracket(), Options{})
	path := filepath.Join("testdata", "bracket.scad")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("differs from %s; run with -update and read the diff", path)
	}
}

func TestPartNames(t *testing.T) {
	got := PartNames(parttest.Bracket())
	if want := []string{"ear-1", "gusset-1", "backing", "base", "pin", "backing-folded"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestNamesNeverClashOrBreakOut(t *testing.T) {
	b := parttest.Bracket()
	b.Plates[0].ID, b.Plates[2].ID, b.Plates[4].ID = "part", "assembly", "1\";\nfoo(["
	b.Plates[0].Name, b.Params[3].Text, b.Name = "ear\ncube(1);", "a\nb", "x\ncube(9);"
	if got, want := PartNames(b), []string{"part", "assembly_2", "1___foo__", "base", "pin", "1___foo__-folded"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	text := written(t, b, Options{})
	for _, bad := range []string{"\ncube", "\nfoo", "module part(", "module assembly()\n"} {
		if strings.Contains(text, bad) {
			t.Errorf("contains %q", bad)
		}
	}
}

func TestSlider(t *testing.T) {
	for value, want := range map[float64]string{12: "6 0.5 24", 25.3: "12.6 0.1 50.6", 9.525: "4.762 0.001 19.05", 0.5: "0.5 0.5 1"} {
		lo, step, hi := variable{value: value}.slider()
		if got := fmt.Sprintf("%.6g %g %.6g", lo, step, hi); got != want {
			t.Errorf("%g: %s, want %s", value, got, want)
		}
	}
}

func TestWriteRefuses(t *testing.T) {
	b := parttest.Bracket()
	if err := Write(&bytes.Buffer{}, b, Options{Facets: 4}); err == nil {
		t.Error("4 facets are accepted")
	}
	b.Plates[0].Outer[0].X = math.NaN()
	if err := Write(&bytes.Buffer{}, b, Options{}); err == nil || !strings.HasPrefix(err.Error(), "bracket test: ") {
		t.Errorf("not a number: %v", err)
	}
}

// OpenSCAD makes of each part a solid of the plate's volume, within the bound that the file states.
func TestVolumes(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	b := parttest.Bracket()
	b.Members = append(b.Members, otherMembers()...)
	for _, facets := range []int{96, 24} {
		file := saved(t, written(t, b, Options{Facets: facets}))
		m := newModel(b)
		for _, p := range m.pieces {
			if facets == 24 && p.plate == nil {
				continue
			}
			t.Run(fmt.Sprintf("%s/%d", p.name, facets), func(t *testing.T) {
				got := volume(t, openscad, file, p.name)
				want, bound := expected(p, facets)
				// STL carries six digits.
				if off := math.Abs(got - want); off > bound+2e-5*want {
					t.Errorf("volume %.2f, want %.2f within %.2f", got, want, bound)
				}
			})
		}
	}
}

// otherMembers are a round tube, a rectangular tube, a round and a flat bar.
func otherMembers() []part.Member {
	pose := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	member := func(id string, p part.Profile) part.Member {
		return part.Member{ID: id, Name: id, Profile: p, LengthMM: 80, Pose: pose}
	}
	return []part.Member{
		member("tube", part.Profile{Kind: part.RoundTube, AMM: 60, TMM: 5}),
		member("box", part.Profile{Kind: part.RectTube, AMM: 60, BMM: 40, TMM: 4, RootMM: 8}),
		member("rod", part.Profile{Kind: part.RoundBar, AMM: 20}),
		member("flat", part.Profile{Kind: part.FlatBar, AMM: 50, TMM: 8}),
	}
}

// expected is the true volume, and the bound of doc.go.
func expected(p piece, facets int) (volume, bound float64) {
	step := 2 * math.Pi / float64(facets)
	k := step * step / 12
	section := func(o shape.Outline, height float64) {
		volume += o.Area() * height
		bound += k * height * turned(o)
	}
	switch {
	case p.plate != nil:
		section(p.plate.Shape(false), p.plate.ThicknessMM)
	case p.pin != nil:
		section(shape.Outline{Outer: shape.Circle(shape.Point{}, p.pin.DiaMM)}, p.pin.LengthMM)
	default:
		section(p.member.Profile.Section(), p.member.LengthMM)
		for _, h := range p.member.Holes {
			r := h.DiaMM / 2
			volume -= math.Pi * r * r * p.member.Profile.TMM
			bound += k * 2 * math.Pi * r * r * p.member.Profile.TMM
		}
	}
	return volume, bound
}

// turned is the sum of r^2 times sweep over an outline's arcs.
func turned(o shape.Outline) float64 {
	sum := 0.0
	for _, l := range append(o.Holes, o.Outer) {
		for _, e := range l.Edges() {
			r := e.Radius()
			sum += r * r * math.Abs(e.Sweep())
		}
	}
	return sum
}

// OpenSCAD folds the tray to its outside size by its parameters, 700 x 600 and 60 high over the underside of its bottom, of whatever thickness it is built, and to
// the flat pattern's volume with what the middle planes of four bends of 90 degrees, 6 mm inside, are longer than their allowance: with a sheet of 4 mm
// pi/2 (0.5 - 0.44) 4 over 2 x 668 + 2 x 568 mm. No variable of the file makes it another sheet.
func TestTrayIsFolded(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	for _, mm := range []float64{5, 4} {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "tray", Name: "t", Hand: part.LeftHand, Params: []part.Param{{Name: "thickness", Number: mm, Unit: "mm"}}})
		if err != nil {
			t.Fatal(err)
		}
		p := &b.Plates[0]
		text := written(t, b, Options{})
		if strings.Contains(text, "thickness_tray") {
			t.Error("the thickness of a bent plate is a variable")
		}
		file := saved(t, text)
		got := volume(t, openscad, file, "tray-folded")
		// The bound of a flat piece for its holes, and of eight arcs of 90 degrees for their lengths.
		step := math.Pi * 2 / usualFacets
		bound := step * step / 12 * (turned(p.Shape(false))*4 + math.Pi/2*(36+100)*(2*668+2*568))
		if want := p.Shape(false).Area()*mm + math.Pi/2*0.06*mm*(2*668+2*568)*mm; mm == 4 && math.Abs(got-want) > bound+2e-5*want {
			t.Errorf("volume %.1f, want %.1f within %.1f", got, want, bound)
		}
		lo, hi := part.Vec{}, part.Vec{}
		for _, f := range facetsOf(t, file+".stl") {
			for _, q := range f {
				lo = part.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
				hi = part.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
			}
		}
		if size := hi.Sub(lo); math.Abs(size.X-700) > 1e-3 || math.Abs(size.Y-600) > 1e-3 || math.Abs(lo.Z+mm/2) > 1e-3 || math.Abs(size.Z-60) > 1e-3 {
			t.Errorf("%g mm sheet: %v from z %g", mm, size, lo.Z)
		}
		// Alone it lies flat, as it is cut.
		if got, want := volume(t, openscad, file, "tray"), p.Shape(false).Area()*mm; math.Abs(got-want) > 1e-4*want {
			t.Errorf("flat volume %.1f, want %.1f", got, want)
		}
		run(t, openscad, "-o", file+".csg", file)
	}
}

// A lip on a flange folds with it, down as well as up: the volume of a strip, in OpenSCAD and by its middle planes, which here are as long as the allowance.
func TestLipIsFolded(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	p := part.Plate{ID: "p", Name: "p", ThicknessMM: 2, Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20}), Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}}
	for x, angle := range map[float64]float64{60: math.Pi / 2, 86: -math.Pi / 3} {
		p.Bends = append(p.Bends, part.Bend{A: shape.Point{X: x, Y: 20}, B: shape.Point{X: x}, AngleRad: angle, RadiusMM: 3})
	}
	file := saved(t, written(t, &part.Bracket{Plates: []part.Plate{p}}, Options{Facets: 360}))
	if got := volume(t, openscad, file, "p-folded"); math.Abs(got-4000) > 0.5 {
		t.Errorf("volume %.2f, want 4000", got)
	}
	top := 0.0
	for _, f := range facetsOf(t, file+".stl") {
		for _, q := range f {
			top = max(top, q.Z)
		}
	}
	// Up by the bend's 4, the flange between the bends, and the lip's bend and lip at 60 degrees from upright; the sheet's half beyond its middle plane.
	first, second := math.Pi/2*4, math.Pi/3*4
	flange := 26 - first/2 - second/2
	lip := 14 - second/2
	if want := 4 + flange + 4*math.Sin(math.Pi/3) + lip*math.Cos(math.Pi/3) + math.Sin(math.Pi/3); math.Abs(top-want) > 1e-3 {
		t.Errorf("top at %.4f, want %.4f", top, want)
	}
}

func TestNoHoleIsUndersize(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	b := parttest.Bracket()
	file := saved(t, written(t, b, Options{Facets: 24}))
	run(t, openscad, "-o", file+".stl", "-D", `part="ear-1"`, file)
	center, r := b.Plates[0].Holes[0].Center, b.Plates[0].Holes[0].DiaMM/2
	for _, f := range facetsOf(t, file+".stl") {
		for i := range f {
			a, c := f[i], f[(i+1)%3]
			p, q := shape.Point{X: a.X, Y: a.Y}, shape.Point{X: c.X, Y: c.Y}
			// An upright edge has both ends in one point, which is no nearer than its sides.
			if d := (shape.Edge{A: p, B: q}).DistTo(center); d < r-1e-4 && a.Z == c.Z {
				t.Fatalf("an edge from %v to %v is %.5f from the centre, radius %.5f", p, q, d, r)
			}
		}
	}
}

// Another thickness still compiles, scales the volume of a plate and leaves it about its middle plane.
func TestEditedThickness(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	b := parttest.Bracket()
	file := saved(t, written(t, b, Options{}))
	was := volume(t, openscad, file, "ear-1")
	edited := saved(t, strings.Replace(written(t, b, Options{}), "thickness_ear = 12;", "thickness_ear = 18;", 1))
	now := volume(t, openscad, edited, "ear-1")
	if math.Abs(now/was-1.5) > 1e-5 {
		t.Errorf("volume %g after %g; want 1.5 times", now, was)
	}
	for _, f := range facetsOf(t, edited+".stl") {
		for _, p := range f {
			if math.Abs(p.Z) != 9 {
				t.Fatalf("corner at z = %g, want -9 or 9", p.Z)
			}
		}
	}
	run(t, openscad, "-o", edited+".csg", edited)
}

// A bent plate's flat shape is of its thickness alone, so that no variable sets it, not even that of a flat plate as thick. The file says so.
func TestBentThicknessIsNoVariable(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	b := parttest.Bracket()
	at := slices.IndexFunc(b.Plates, func(p part.Plate) bool { return len(p.Bends) > 0 })
	bent := &b.Plates[at]
	bent.ThicknessMM = b.Plate("ear-1").ThicknessMM
	text := written(t, b, Options{})
	if strings.Contains(text, "thickness_"+identifier(bent.Name)+" =") || !strings.Contains(text, "thickness of a bent or rolled plate is not among the variables") {
		t.Error(text)
	}
	file := saved(t, text)
	edited := saved(t, strings.Replace(text, "thickness_ear = 12;", "thickness_ear = 18;", 1))
	for _, name := range []string{bent.ID, bent.ID + "-folded"} {
		if was, now := volume(t, openscad, file, name), volume(t, openscad, edited, name); math.Abs(now/was-1) > 1e-9 {
			t.Errorf("%s: volume %g after %g", name, now, was)
		}
	}
}

func TestAssemblyRenders(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	for _, o := range []Options{{}, {ExplodeMM: 40}} {
		file := saved(t, written(t, parttest.Bracket(), o))
		run(t, openscad, "-o", file+".csg", file)
		csg, err := os.ReadFile(file + ".csg")
		if err != nil {
			t.Fatal(err)
		}
		// Four flat plates, one of two faces and a bend, an angle, a pin and two bolts, and two holes drilled in the angle.
		if got := strings.Count(string(csg), "linear_extrude("); got != 4+3+1+2 {
			t.Errorf("%d extrusions, want 10", got)
		}
		if got := strings.Count(string(csg), "cylinder("); got != 1+2*3 {
			t.Errorf("%d cylinders, want 7", got)
		}
	}
}

func saved(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "bracket.scad")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func run(t *testing.T, name string, args ...string) {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if text := string(out); err != nil || strings.Contains(text, "WARNING") || strings.Contains(text, "ERROR") {
		t.Fatalf("%s %v: %v\n%s", name, args, err, text)
	}
}

// volume exports one part and adds up the tetrahedra under its facets.
func volume(t *testing.T, openscad, file, name string) float64 {
	t.Helper()
	run(t, openscad, "-o", file+".stl", "-D", fmt.Sprintf("part=%q", name), file)
	sum := 0.0
	for _, f := range facetsOf(t, file+".stl") {
		sum += f[0].Dot(f[1].Cross(f[2])) / 6
	}
	return sum
}

// facetsOf reads an ASCII STL.
func facetsOf(t *testing.T, path string) [][3]part.Vec {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var out [][3]part.Vec
	n := 0
	for _, line := range strings.Split(string(data), "\n") {
		var p part.Vec
		if _, err := fmt.Sscanf(strings.TrimSpace(line), "vertex %g %g %g", &p.X, &p.Y, &p.Z); err != nil {
			continue
		}
		if n%3 == 0 {
			out = append(out, [3]part.Vec{})
		}
		out[n/3][n%3] = p
		n++
	}
	return out
}
