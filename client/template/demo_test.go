package template

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/run/runtest"
	"lugwright/part"
)

// Of what the demo jobs bolt to the vehicle no line runs into the words of a tile, and each hole is on one, on both sheets.
func TestDemoJobs(t *testing.T) {
	c, known := runtest.Services(t)
	names, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	tiles := 0
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(name, src, known)
		if err != nil {
			t.Fatal(err)
		}
		r, err := run.Job(t.Context(), c, j, run.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Brackets {
			made := r.Brackets[i].Part.AsMade()
			all := OfSupports(made, &made.LoadPoints[0].At)
			for _, one := range all { // with the most words that a hole can have
				for h := range one.Holes {
					one.Holes[h].Verdict = "FAIL"
				}
			}
			for k := range made.Plates {
				p := made.Plates[k]
				for h := range p.Holes { // as if nobody cut them
					p.Holes[h].CutMM = 0
				}
				if one := OfPlate(&p, made.Hand, func(*part.Hole) string { return "drill" }); one != nil {
					all = append(all, one)
				}
			}
			for _, one := range all {
				for _, room := range [][2]float64{{180, 239}, {185.9, 221.4}} {
					tiles += clearTiles(t, one, room)
				}
			}
		}
	}
	if tiles < 100 {
		t.Errorf("only %d tiles", tiles)
	}
}

func clearTiles(t *testing.T, one *Template, room [2]float64) int {
	t.Helper()
	tiles := one.Tiles(room[0], room[1])
	for i := range tiles {
		for _, c := range struckWords(one.Drawing(&tiles[i], "A1 to B2", func(mm float64) string { return fmt.Sprintf("%.2f mm", mm) })) {
			t.Errorf("%s in %v, tile %s: %s", one.Title, room, tiles[i].Name, c)
		}
	}
	for _, h := range one.Holes {
		if !covered(tiles, h.At) {
			t.Errorf("%s in %v: %s is on no tile", one.Title, room, h.Name)
		}
	}
	return len(tiles)
}
