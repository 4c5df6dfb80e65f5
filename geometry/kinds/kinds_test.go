package kinds

import (
	"math"
	"os"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

// One line a kind, one folder a kind, in the same order.
func TestIndexAndFoldersAgree(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var folders []string
	for _, e := range entries {
		if e.IsDir() {
			folders = append(folders, e.Name())
		}
	}
	all := All()
	if len(all) != len(folders) {
		t.Fatalf("%d kinds in kinds.go, folders are %v: add the line to All", len(all), folders)
	}
	for i, k := range all {
		if strings.ReplaceAll(k.Name, "-", "") != folders[i] {
			t.Errorf("kind %d is %q, folder is %q", i, k.Name, folders[i])
		}
	}
}

func TestDeclarations(t *testing.T) {
	for _, k := range All() {
		seen := map[string]bool{}
		if k.Sentence == "" || len(k.Params) == 0 {
			t.Errorf("%s has no sentence or no parameters", k.Name)
		}
		for _, p := range k.Params {
			if seen[p.Name] {
				t.Errorf("%s declares %s twice", k.Name, p.Name)
			}
			seen[p.Name] = true
			if p.Name != strings.ToLower(p.Name) || strings.ContainsAny(p.Name, " -") || p.Sentence == "" {
				t.Errorf("%s: %q wants snake_case and a sentence", k.Name, p.Name)
			}
			switch p.Unit {
			case geometry.MM, geometry.Count, geometry.Rad, geometry.Ratio:
				if !(p.Min <= p.Default && p.Default <= p.Max && p.Min >= 0) {
					t.Errorf("%s.%s: default %g outside %g to %g", k.Name, p.Name, p.Default, p.Min, p.Max)
				}
			default:
				if p.Text == "" {
					t.Errorf("%s.%s has no default", k.Name, p.Name)
				}
			}
		}
	}
}

// Defaults of every kind build for both hands, whole and heavy, with every plate one that can be cut and marked.
func TestDefaults(t *testing.T) {
	for _, k := range All() {
		t.Run(k.Name, func(t *testing.T) {
			left := defaults(t, k.Name, part.LeftHand)
			right := defaults(t, k.Name, part.RightHand)
			for _, b := range []*part.Bracket{left, right} {
				if bad := fabtest.Faults(b); bad != nil {
					t.Errorf("%s hand: %s", b.Hand, strings.Join(bad, "\n"))
				}
			}
			for i := range left.Plates {
				l, r := &left.Plates[i], &right.Plates[i]
				for _, e := range l.Etch {
					if e.Text != l.Mark {
						t.Errorf("%s is etched %q, marked %q", l.ID, e.Text, l.Mark)
					}
				}
				if l.Mark == r.Mark || strings.Replace(r.Mark, "-R", "-L", 1) != l.Mark {
					t.Errorf("%s is marked %q and %q, want hands told apart by their letter alone", l.ID, l.Mark, r.Mark)
				}
				if got, want := r.Shape(true).Area(), l.Shape(true).Area(); math.Abs(got-want) > 1e-6 {
					t.Errorf("%s: %g mm2 right, %g left", l.ID, got, want)
				}
				if a, b := center(l), center(r); a.Sub(part.Vec{X: b.X, Y: -b.Y, Z: b.Z}).Norm() > 1e-9 {
					t.Errorf("%s: middle at %v left and %v right, want a reflection", l.ID, a, b)
				}
			}
			if len(left.Sweeps) == 0 && len(left.Rods) == 0 || len(left.Unchecked) == 0 {
				t.Error("no sweep and no rods, or nothing said to be unchecked")
			}
		})
	}
}

// Whatever is not typed can be made: with any one choice of a word, what the defaults build is reached by torch, socket and pin.
func TestDefaultsAreReached(t *testing.T) {
	for _, k := range All() {
		for _, p := range k.Params {
			for _, word := range p.Choices {
				b, err := geometry.Build([]geometry.Kind{k}, geometry.Request{Kind: k.Name, Name: "demo", Hand: part.LeftHand, Params: []part.Param{{Name: p.Name, Text: word}}})
				if err != nil && (word == p.Text || part.Fields(err) == nil) {
					t.Errorf("%s, %s %s: %v", k.Name, p.Name, word, err)
				}
				if err != nil {
					continue // a choice that wants other sizes says which
				}
				if found := access.Findings(b, access.Usual()); found != nil {
					t.Errorf("%s, %s %s: %v", k.Name, p.Name, word, found)
				}
			}
		}
	}
}

// The checks that every bracket must pass find what is put wrong by hand.
func TestFaultsAreFound(t *testing.T) {
	for want, spoil := range map[string]func(*part.Bracket){
		"runs into":           func(b *part.Bracket) { b.Plate("between-1").Pose.Origin.Y += 3 },
		"not at the edge":     func(b *part.Bracket) { b.Weld("w-ear-1").Segments[0].A.Y += 1 },
		"not on a face":       func(b *part.Bracket) { b.Weld("w-outer-1").Joins[1] = "base.b" },
		"no hole":             func(b *part.Bracket) { b.Bolts[0].Points[0].X += 1 },
		"stated":              func(b *part.Bracket) { b.Bolts[0].Plies[0].EdgeMM += 1 },
		"does not point into": func(b *part.Bracket) { b.Bolts[0].Pose.V = b.Bolts[0].Pose.V.Scale(-1) },
		"off the axis":        func(b *part.Bracket) { b.Pins[0].Center.Z += 1 },
		"its seat at":         func(b *part.Bracket) { b.Pins[0].Seats[0].AtMM-- },
		"of its load":         func(b *part.Bracket) { b.Paths[0].Branches[1].Leg = 0 },
		"off the steel":       func(b *part.Bracket) { b.Plates[0].Etch[0].At.X += 100 },
	} {
		b := defaults(t, "clevis", part.LeftHand)
		spoil(b)
		if got := strings.Join(fabtest.Faults(b), "\n"); !strings.Contains(got, want) {
			t.Errorf("want a fault with %q, got %q", want, got)
		}
	}
}

func defaults(t *testing.T, kind string, hand part.Hand) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(All(), geometry.Request{Kind: kind, Name: "demo", Hand: hand})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func center(p *part.Plate) part.Vec {
	c := p.Shape(true).Properties().Centroid
	return p.Pose.At(c.X, c.Y, 0)
}

// BenchmarkBuild builds each kind from its defaults.
func BenchmarkBuild(b *testing.B) {
	all := All()
	for _, k := range all {
		b.Run(k.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := geometry.Build(all, geometry.Request{Kind: k.Name, Name: "demo", Hand: part.LeftHand}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "builds/s")
		})
	}
}

// Corners so round that the plate presses at none of its bolts are refused: draws of which one was not.
func TestRoundCornersAreRefused(t *testing.T) {
	for name, seed := range map[string]uint64{"lug": 32132, "keeper-plate": 30636} {
		for _, kind := range All() {
			if kind.Name != name {
				continue
			}
			if _, err := geometry.Build(All(), fabtest.Draw(kind, seed+1<<40)); err == nil || !strings.Contains(err.Error(), "corner_radius") {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}
