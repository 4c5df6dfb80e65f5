package drawings

import (
	"testing"

	"lugwright/client/draw"
	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/units"
)

// Nothing runs into the words of any drawing, of random brackets of every kind, in both unit systems.
func TestNothingRunsIntoWords(t *testing.T) {
	for _, kind := range kinds.All() {
		t.Run(kind.Name, func(t *testing.T) {
			t.Parallel()
			made := 0
			for seed := uint64(1); made < 3 && seed < 200; seed++ {
				b, err := geometry.Build([]geometry.Kind{kind}, fabtest.Draw(kind, seed))
				if err != nil {
					continue
				}
				made++
				o := Options{Units: units.System(seed % 2)}
				var all []*draw.Drawing
				for _, p := range b.AsMade().Plates {
					all = append(all, Plate(&p, PlateOptions{Options: o, Hand: b.Hand, Quantity: 2}))
				}
				var cases []part.Case
				for k, c := range part.Components()[:6] {
					f, m := c.Unit()
					cases = append(cases, part.Case{Name: c.String(), LoadPoint: b.LoadPoints[0].ID, Level: part.Service, Force: f.Scale(1000 * float64(k+1)), Moment: m})
				}
				sound(t, seed, append(all, Of(b, cases).All(o)...)...)
				for _, p := range b.AsMade().Plates {
					plateSays(t, &p, o)
				}
				viewsSay(t, b, o)
			}
			if made == 0 {
				t.Error("no bracket was built")
			}
		})
	}
}

func sound(t *testing.T, what any, list ...*draw.Drawing) {
	t.Helper()
	for _, d := range list {
		for i, c := range clashes(d) {
			if i < 4 {
				t.Errorf("%v: %s: %s", what, d.Title, c)
			}
		}
		if d.WidthMM > usualWidthMM+0.01 || d.HeightMM > usualHeightMM+0.01 {
			t.Errorf("%v: %s: %.0f x %.0f mm is more than the room", what, d.Title, d.WidthMM, d.HeightMM)
		}
	}
}
