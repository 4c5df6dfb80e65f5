package fold

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
)

// strip is 100 x 20 x 2, folded up by 90 degrees about an inside radius of 3, with a hole in the flange.
func strip() part.Plate {
	return part.Plate{ID: "p", ThicknessMM: 2, Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20}), Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
		Holes: []part.Hole{{ID: "h", Center: shape.Point{X: 90, Y: 10}, DiaMM: 6}},
		Bends: []part.Bend{{A: shape.Point{X: 70, Y: 20}, B: shape.Point{X: 70}, AngleRad: math.Pi / 2, RadiusMM: 3, AllowanceMM: 6}}}
}

// The bend takes 6 mm of the flat strip: the base ends at x = 67 and the flange, 27 long, begins at 73. Its middle plane stands 4 mm (3 + 2/2) past 67, and
// its end 4 + 27 above the base's middle plane: simple geometry of a quarter circle.
func TestStrip(t *testing.T) {
	p := strip()
	s, err := Take(&p, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	top, turned := part.Vec{Z: -1}, 0
	for i, f := range s.Faces {
		for _, v := range f.Outer {
			if at := s.Place(i, v, 0); at.Z > top.Z {
				top = at
			}
		}
		if f.Bend >= 0 {
			turned++
		}
		if len(f.Openings) > 0 {
			// 17 mm from the end of the bend, seen from inside: w = 1 is towards the base.
			at := s.Place(i, s.Openings[0][0], 1)
			if f.Bend >= 0 || len(f.Beyond) != 1 || math.Abs(at.X-70) > 1e-9 {
				t.Errorf("the hole lies at %v in %+v", at, f)
			}
		}
	}
	if math.Abs(top.X-71) > 1e-9 || math.Abs(top.Z-31) > 1e-9 {
		t.Errorf("top at %v, want x 71, z 31", top)
	}
	// A facet of 2 acos(1 - 0.01/5) = 7.25 degrees: 13 strips.
	if turned != 13 || len(s.Faces) != 15 {
		t.Errorf("%d strips, %d faces", turned, len(s.Faces))
	}
	if b := s.Bends[0]; b.FlatMM != 6 || math.Abs(b.To-b.From-20) > 1e-9 {
		t.Errorf("%+v", b)
	}
}

// The other way down, and without an allowance: pi/2 (3 + 1) of the strip.
func TestDown(t *testing.T) {
	p := strip()
	p.Bends[0].AngleRad, p.Bends[0].AllowanceMM = -math.Pi/2, 0
	s, err := Take(&p, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	flat := math.Pi / 2 * 4
	low, far := 0.0, 0.0
	for i, f := range s.Faces {
		for _, v := range f.Outer {
			at := s.Place(i, v, 0)
			low, far = min(low, at.Z), max(far, at.X)
		}
	}
	if math.Abs(low-(-4-(30-flat/2))) > 1e-9 || math.Abs(far-(70-flat/2+4)) > 1e-9 {
		t.Errorf("down to z %g, out to x %g", low, far)
	}
}

// A flange with a lip: the lip turns with the flange, whichever bend is listed first. Two folds of 90 degrees the same way make a channel: the lip lies over
// the base, its middle plane 2 x 4 + 20 above.
func TestLip(t *testing.T) {
	p := part.Plate{ThicknessMM: 2, Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20}), Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}}
	bend := func(x float64) part.Bend {
		return part.Bend{A: shape.Point{X: x, Y: 20}, B: shape.Point{X: x}, AngleRad: math.Pi / 2, RadiusMM: 3, AllowanceMM: 6}
	}
	for _, bends := range [][]part.Bend{{bend(60), bend(86)}, {bend(86), bend(60)}} {
		p.Bends = bends
		s, err := Take(&p, 0.01)
		if err != nil {
			t.Fatal(err)
		}
		lip := part.Vec{X: 1e9}
		for i, f := range s.Faces {
			if len(f.Beyond) == 2 && f.Bend < 0 {
				for _, v := range f.Outer {
					if at := s.Place(i, v, 0); at.X < lip.X {
						lip = at
					}
				}
			}
		}
		// The lip of 11 reaches back from x = 57.
		if math.Abs(lip.Z-28) > 1e-9 || math.Abs(lip.X-(57-11)) > 1e-9 {
			t.Errorf("lip at %v, want x 46, z 28", lip)
		}
	}
}

func TestRefused(t *testing.T) {
	for says, spoil := range map[string]func(*part.Plate){
		"does not cross":    func(p *part.Plate) { p.Bends[0].A.X, p.Bends[0].B.X = 170, 170 },
		"lie within":        func(p *part.Plate) { p.Bends[0].A.X, p.Bends[0].B.X = 98, 98 },
		"opening 1 lies in": func(p *part.Plate) { p.Holes[0].Center.X = 74 },
		"lies in another": func(p *part.Plate) {
			p.Holes = nil
			b := p.Bends[0]
			b.A.X, b.B.X = 71, 71
			p.Bends = append(p.Bends, b)
		},
	} {
		p := strip()
		spoil(&p)
		if _, err := Take(&p, 0.01); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
		if s := Flat(&p, 0.01); len(s.Faces) != 1 || len(s.Bends) != 0 {
			t.Errorf("flat: %+v", s)
		}
	}
}

// A plate with rounded corners that begin within its bend, on an upright pose.
func TestRoundCorners(t *testing.T) {
	p := parttest.Backing()
	s, err := Take(&p, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	area := 0.0
	for _, f := range s.Faces {
		points := make([]shape.Point, len(f.Outer))
		for i, v := range f.Outer {
			points[i] = s.Points[v]
		}
		area += shape.Polyline(points...).Area()
	}
	// 150 x 60 less four corners of (1 - pi/4) 10^2, within the facets: 2/3 of 0.01 mm over 20 pi of arc.
	if want := 9000 - (4-math.Pi)*100; math.Abs(area-want) > 2./3*0.01*20*math.Pi {
		t.Errorf("the faces have %g mm2, want %g", area, want)
	}
}
