package shop

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// good is a sound profile: pins undersize and reamed, bolt holes in thick plate as a pilot, small holes as marks, the rest to size.
func good() Profile {
	return Profile{
		Name: "ours", Process: Laser,
		Files: Files{
			Versions: []Version{R2000}, Grouping: OnePart, GapMM: 10, Naming: "{mark}_{units}",
			Layers: Layers{Cut: "CUT", Etch: "ETCH", Bend: "BEND", Centre: "CENTRE"},
		},
		Marks:        Marks{Style: SingleLine, HeightMM: 6},
		SmallestHole: Least{PerThickness: 1, MM: 3}, SmallestWeb: Least{PerThickness: 1, MM: 2},
		Holes: []HoleRule{
			{For: []part.Purpose{part.ForPin}, Make: Undersize, LessMM: 2, Then: part.Reamed},
			{UnderPerThick: 1, Make: PunchOnly, Then: part.Drilled},
			{For: []part.Purpose{part.ForBolt}, OverThickMM: 16, Make: PilotOnly, PilotMM: 20, Then: part.Drilled},
			{UnderMM: 8, Make: ToSize},
			{Make: AsDrawn},
		},
	}
}

func hole(purpose part.Purpose, mm float64) part.Hole {
	return part.Hole{ID: "h", DiaMM: mm, CutMM: mm, Purpose: purpose, Finish: part.AsCut}
}

func plate(tMM float64, holes ...part.Hole) *part.Bracket {
	for i := range holes {
		holes[i].Center = shape.Point{X: 50 * float64(i+1), Y: 50}
	}
	return &part.Bracket{Plates: []part.Plate{{
		ID: "p", Mark: "P1", ThicknessMM: tMM, Outer: shape.Rect(shape.Point{}, shape.Point{X: 50 * float64(len(holes)+1), Y: 100}), Holes: holes,
		Etch: []part.Etch{{Text: "P1", HeightMM: 8}, {Text: "P1", HeightMM: 4}},
	}}}
}

func TestFinished(t *testing.T) {
	s := good()
	for _, c := range []struct {
		tMM    float64
		hole   part.Hole
		cut    float64
		finish part.Finish
	}{
		{10, hole(part.ForPin, 25.3), 23.3, part.Reamed},
		{24, hole(part.ForPin, 25.3), 0, part.Reamed},  // 23.3 mm is under the smallest hole of 24 mm plate
		{10, hole(part.ForBolt, 9), 0, part.Drilled},   // under one thickness
		{20, hole(part.ForBolt, 22), 20, part.Drilled}, // pilot
		{22, hole(part.ForBolt, 24), 0, part.Drilled},  // its pilot is too small to cut
		{4, hole(part.ForDrain, 6), 6, part.AsCut},     // to size
		{10, hole(part.ForBolt, 13), 13, part.AsCut},   // as drawn
	} {
		b := plate(c.tMM, c.hole)
		got := s.Finished(b).Plates[0].Holes[0]
		if math.Abs(got.CutMM-c.cut) > 1e-9 || got.Finish != c.finish || got.DiaMM != c.hole.DiaMM {
			t.Errorf("%s %g in %g mm: cut %g, %s; want %g, %s", c.hole.Purpose, c.hole.DiaMM, c.tMM, got.CutMM, got.Finish, c.cut, c.finish)
		}
		if b.Plates[0].Holes[0] != c.hole && b.Plates[0].Holes[0].CutMM != c.hole.CutMM {
			t.Error("the bracket given was changed")
		}
	}
}

// A tapped hole is cut for its tap by a jet and marked by heat, whatever the rules say.
func TestTapped(t *testing.T) {
	for process, want := range map[Process]float64{Laser: 0, Waterjet: 10.2} {
		s := good()
		s.Process = process
		b := plate(8, part.Hole{ID: "h", DiaMM: 12, Thread: "M12", Purpose: part.ForBolt, Finish: part.Tapped})
		if h := s.Finished(b).Plates[0].Holes[0]; h.CutMM != want || h.Finish != part.Tapped {
			t.Errorf("%s: cut %g, %s; want %g", process, h.CutMM, h.Finish, want)
		}
	}
}

func TestMarks(t *testing.T) {
	s := good()
	etch := s.Finished(plate(10)).Plates[0].Etch
	if len(etch) != 2 || etch[0].HeightMM != 6 || etch[1].HeightMM != 4 {
		t.Errorf("marks %v, want heights 6 and 4", etch)
	}
	s.Marks.Style = NoMarks
	if etch := s.Finished(plate(10)).Plates[0].Etch; etch != nil {
		t.Errorf("marks %v, want none", etch)
	}
}

// Widths by plain subtraction: 10 mm plate, holes of 20 mm at known places.
func TestBroken(t *testing.T) {
	s := good()
	at := func(x, y, mm float64) part.Hole {
		h := hole(part.ForLightness, mm)
		h.Center = shape.Point{X: x, Y: y}
		return h
	}
	tee := shape.Polyline( // two 40 mm squares joined by a neck 8 mm wide and 30 mm long
		shape.Point{}, shape.Point{X: 40}, shape.Point{X: 40, Y: 16}, shape.Point{X: 70, Y: 16}, shape.Point{X: 70}, shape.Point{X: 110},
		shape.Point{X: 110, Y: 40}, shape.Point{X: 70, Y: 40}, shape.Point{X: 70, Y: 24}, shape.Point{X: 40, Y: 24}, shape.Point{X: 40, Y: 40}, shape.Point{Y: 40},
	)
	square := shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 100})
	for name, c := range map[string]struct {
		outer shape.Loop
		holes []part.Hole
		want  string
	}{
		"fits":       {square, []part.Hole{at(30, 50, 20), at(70, 50, 20)}, ""},
		"edge":       {square, []part.Hole{at(19, 50, 20)}, "9 mm of steel are left between the hole h and the edge"},
		"two":        {square, []part.Hole{at(30, 50, 20), at(58, 50, 20)}, "8 mm of steel are left between the hole h and the hole h"},
		"small hole": {square, []part.Hole{at(50, 50, 9)}, "is cut to 9 mm in 10 mm plate"},
		"neck":       {tee, nil, "8 mm of steel are left across a neck"},
		"blunt end":  {shape.Polyline(shape.Point{}, shape.Point{X: 100}, shape.Point{X: 100, Y: 3}, shape.Point{X: 20, Y: 80}, shape.Point{Y: 80}), nil, ""},
	} {
		b := &part.Bracket{Plates: []part.Plate{{ID: "p", Mark: "P1", ThicknessMM: 10, Outer: c.outer, Holes: c.holes}}}
		got := s.Broken(b)
		switch {
		case c.want == "" && got != nil:
			t.Errorf("%s: %v", name, got)
		case c.want != "" && (len(got) != 1 || !strings.Contains(got[0].Found, c.want) || got[0].Field != "plates[0]"):
			t.Errorf("%s: %v, want %q", name, got, c.want)
		}
	}
	slot := &part.Bracket{Plates: []part.Plate{{ID: "p", ThicknessMM: 10, Outer: square, Cutouts: []shape.Loop{shape.Slot(shape.Point{X: 30, Y: 50}, shape.Point{X: 70, Y: 50}, 6)}}}}
	if got := s.Broken(slot); len(got) != 1 || !strings.Contains(got[0].Found, "6 mm wide") {
		t.Errorf("slot: %v", got)
	}
}

func TestWarnings(t *testing.T) {
	for _, c := range []struct {
		process Process
		purpose part.Purpose
		finish  part.Finish
		want    string
	}{
		{Plasma, part.ForPin, part.Reamed, "hard"},
		{Laser, part.ForPin, part.AsCut, "scatters"},
		{OxyFuel, part.ForBolt, part.AsCut, "repeats"},
		{Waterjet, part.ForPin, part.AsCut, "tapers"},
		{Waterjet, part.ForPin, part.Reamed, ""},
	} {
		s := Profile{Process: c.process}
		b := plate(10, part.Hole{ID: "h", DiaMM: 25, CutMM: 24, Purpose: c.purpose, Finish: c.finish})
		got := s.Warnings(&b.Plates[0])
		if c.want == "" && got != nil || c.want != "" && (len(got) != 1 || !strings.Contains(got[0], c.want)) {
			t.Errorf("%s, %s %s: %q, want %q", c.process, c.purpose, c.finish, got, c.want)
		}
	}
}

func TestValidate(t *testing.T) {
	s := good()
	if err := s.Validate(); err != nil {
		t.Fatal(err)
	}
	for field, spoil := range map[string]func(*Profile){
		"files.versions":    func(s *Profile) { s.Files.Versions = nil },
		"files.versions[1]": func(s *Profile) { s.Files.Versions = []Version{R12, R12} },
		"files.naming":      func(s *Profile) { s.Files.Naming = "{mark}_{colour}_{units}" },
		"files.layers.cut":  func(s *Profile) { s.Files.Layers.Cut = "" },
		"files.layers.bend": func(s *Profile) { s.Files.Layers.Bend = "bend lines" },
		"files.layers.etch": func(s *Profile) { s.Files.Layers.Etch = "CUT" },
		"marks.style":       func(s *Profile) { s.Files.Layers.Etch = "" },
		"holes[0].then":     func(s *Profile) { s.Holes[0].Then = "" },
		"holes[0].less":     func(s *Profile) { s.Holes[0].LessMM = 0 },
		"holes[2].pilot":    func(s *Profile) { s.Holes[2].PilotMM = math.Inf(1) },
		"holes[4].less":     func(s *Profile) { s.Holes[4].LessMM = 1 },
		"holes[3].then":     func(s *Profile) { s.Holes[3].Then = part.Drilled },
		"holes":             func(s *Profile) { s.Holes = s.Holes[:4] },
	} {
		s := good()
		spoil(&s)
		bad := part.Fields(s.Validate())
		if len(bad) != 1 || bad[0].Field != field {
			t.Errorf("%s: %v", field, bad)
		}
	}
	for _, pattern := range []string{"{mark}", "{units}", "{mark_{units}", "a/b{mark}{units}", ""} {
		s := good()
		s.Files.Naming = pattern
		if s.Validate() == nil {
			t.Errorf("the pattern %q is taken", pattern)
		}
	}
}

func TestFileName(t *testing.T) {
	f := Files{Naming: "{job}-{mark}_{thickness}_{material}_x{quantity}_{units}"}
	got := f.FileName(map[string]string{"job": "J", "mark": "P1", "thickness": "10mm", "material": "S355", "quantity": "2", "units": "mm"})
	if got != "J-P1_10mm_S355_x2_mm" {
		t.Error(got)
	}
}

// What the shop is told of each hole, by hand from the rules of good.
func TestSteps(t *testing.T) {
	s := good()
	tapped := part.Hole{ID: "h", DiaMM: 12, Thread: "M12", Purpose: part.ForBolt, Finish: part.Tapped}
	reamed := hole(part.ForRod, 30)
	reamed.CutMM, reamed.Finish = 28, part.Reamed // as the bracket's own parameters have it
	for _, c := range []struct {
		process Process
		tMM     float64
		hole    part.Hole
		want    string
	}{
		{Laser, 10, hole(part.ForPin, 25.3), "cut to 23.30, ream to 25.30"},
		{Laser, 24, hole(part.ForPin, 25.3), "punch mark, drill, ream to 25.30"},
		{Laser, 10, hole(part.ForBolt, 9), "punch mark, drill to 9.00"},
		{Laser, 20, hole(part.ForBolt, 22), "cut a pilot of 20.00, drill to 22.00"},
		{Laser, 4, hole(part.ForDrain, 6), "cut to size"},
		{Laser, 10, reamed, "cut to 28.00, ream to 30.00"},
		{Laser, 8, tapped, "punch mark, drill 10.20, tap M12"},
		{Waterjet, 8, tapped, "cut to 10.20, tap M12"},
	} {
		s.Process = c.process
		made := s.Finished(plate(c.tMM, c.hole)).Plates[0].Holes[0]
		if got := s.Steps(&made, c.tMM); got != c.want {
			t.Errorf("%s %g in %g mm: %q, want %q", c.hole.Purpose, c.hole.DiaMM, c.tMM, got, c.want)
		}
	}
}

// A file of a thickness needs no mark in its name, one of a part does.
func TestNamingWithoutMark(t *testing.T) {
	s := good()
	s.Files.Naming = "{thickness}_{material}_{units}"
	if err := s.Validate(); err == nil || !strings.Contains(err.Error(), "no {mark}") {
		t.Errorf("one part a file: %v", err)
	}
	s.Files.Grouping = OneThickness
	if err := s.Validate(); err != nil {
		t.Errorf("one file a thickness: %v", err)
	}
}

func TestUnmarked(t *testing.T) {
	s := good()
	b := plate(8)
	for want, marks := range map[string]Marks{"": s.Marks, "the shop marks no plate": {Style: NoMarks}} {
		s.Marks = marks
		if got := s.Unmarked(&s.Finished(b).Plates[0]); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	s, b.Plates[0].Etch = good(), nil
	if got := s.Unmarked(&s.Finished(b).Plates[0]); got != "too small for an etched mark" {
		t.Errorf("%q", got)
	}
}
