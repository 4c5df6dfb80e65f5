package pack

import (
	"bytes"
	"math"
	"os"
	"strconv"
	"sync/atomic"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/geometry/dxf"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Every kind under random parameters gives a refusal that names a parameter, or a sound bracket whose cut files, in both forms, read back as its plates, and
// whose pieces weigh what its plates weigh by the areas of polygons along their outlines. LUGWRIGHT_TRIES sets how many of each kind.
func TestTries(t *testing.T) {
	n := uint64(25)
	if s := os.Getenv("LUGWRIGHT_TRIES"); s != "" {
		var err error
		if n, err = strconv.ParseUint(s, 10, 32); err != nil {
			t.Fatal(err)
		}
	}
	for _, kind := range kinds.All() {
		t.Run(kind.Name, func(t *testing.T) {
			t.Parallel()
			var built, plates atomic.Int64
			for seed := range n {
				request := fabtest.Draw(kind, seed+1<<40) // others than the kind's own test draws
				ok, fault := fabtest.Outcome(kind, request)
				if fault != "" {
					t.Fatalf("seed %d: %s", seed, fault)
				}
				if !ok {
					continue
				}
				b, err := geometry.Build([]geometry.Kind{kind}, request)
				if err != nil {
					t.Fatalf("seed %d: built once, and then %v", seed, err)
				}
				built.Add(1)
				plates.Add(int64(len(b.Plates)))
				if err := tried(b.AsMade()); err != "" {
					t.Fatalf("seed %d: %s", seed, err)
				}
			}
			t.Logf("%d of %d built, %d plates", built.Load(), n, plates.Load())
		})
	}
}

// tried says what is wrong with a bracket's cut files and masses.
func tried(b *part.Bracket) string {
	const kgPerMM3 = 7.85e-6
	a, of := &assembly{}, &run.Bracket{Spec: &job.Bracket{Quantity: 1}, Part: b}
	kg, slack := 0.0, 0.0
	grades := densities{}
	for i := range b.Plates {
		p := &b.Plates[i]
		for _, version := range []dxf.Version{dxf.R12, dxf.R2000} {
			var data bytes.Buffer
			o := dxf.Options{Version: version}
			if err := dxf.Write(&data, p, o); err != nil {
				return p.ID + ": " + err.Error()
			}
			if err := sound([]dxf.Piece{{Plate: p}}, o, data.Bytes()); err != nil {
				return p.ID + ": " + err.Error()
			}
		}
		cut := p.Shape(true)
		area := polygonArea(cut.Outer)
		for _, h := range cut.Holes {
			area -= math.Abs(polygonArea(h))
		}
		kg += area * p.ThicknessMM * kgPerMM3
		slack += 0.0005 + cut.Length()*facetMM*p.ThicknessMM*kgPerMM3 // half a gram of rounding, and what the facets cut off
		grades[p.Material] = kgPerMM3
		if err := a.addPlate(of, p, grades); err != nil {
			return err.Error()
		}
	}
	total := int64(0)
	for _, p := range a.pieces {
		total += p.grams * int64(p.count)
	}
	if got := float64(total) / 1000; math.Abs(got-kg) > slack {
		return strconv.FormatFloat(got, 'g', -1, 64) + " kg of pieces; the plates weigh " + strconv.FormatFloat(kg, 'g', -1, 64) + " kg"
	}
	return ""
}

const facetMM = 0.001

func polygonArea(l shape.Loop) float64 {
	points := l.Polygon(facetMM)
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}
