package pack

// Helpers: a tiny job with made-up reports on a bracket written by hand, and services to try it with.

import (
	"context"
	"encoding/csv"
	"flag"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry/shape"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/part/parttest"
	"lugwright/services/dial"
	"lugwright/strength"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func services(t testing.TB) *dial.Client {
	t.Helper()
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	return c
}

// tiny is a job of two left-hand brackets and their right-hand twin.
func tiny(t testing.TB, worst strength.Verdict) Input {
	left := parttest.Bracket()
	left.Plates = append(left.Plates, parttest.Washer())
	left.Supports = []part.Support{{ID: "rail", Kind: part.RailWeb, ThicknessMM: 6, Material: "S355"}}
	left.Bolts[0].Patch = shape.Box{Min: shape.Point{X: -40, Y: -80}, Max: shape.Point{X: 40, Y: 80}}
	left.LoadPoints = []part.LoadPoint{{ID: "pin axis", At: left.Pins[0].Center, Axis: left.Pins[0].Axis}}
	left.Notes = []string{"ream the pin hole after welding"}
	right := left.Mirrored()
	for i := range right.Plates {
		right.Plates[i].Mark = strings.Replace(right.Plates[i].Mark, "-L", "-R", 1)
	}
	right.Members[0].Mark = "TB-R5"
	left.Name, right.Name = "tiny-left", "tiny-right"
	j := &job.Job{Shop: shop.Plain(),
		Title: "A tiny job", Revision: "A", Basis: "AISC 360-22", Method: strength.ASD,
		Cases: []job.Case{{Name: "down", Level: part.Service, Source: "builder's choice", Words: "3 g down"}},
		Brackets: []job.Bracket{
			{Name: "tiny-left", Kind: "test bracket", Hand: part.LeftHand, Quantity: 2, Loads: []job.Load{{Case: "down", Force: part.Vec{Z: -9000}}}},
			{Name: "tiny-right", Kind: "test bracket", Hand: part.RightHand, Quantity: 1, Loads: []job.Load{{Case: "down", Force: part.Vec{Z: -9000}}}},
		},
	}
	r := &run.Result{Job: j, Brackets: []run.Bracket{
		{Spec: &j.Brackets[0], Part: left, Report: report("tiny-left", worst), Notes: []string{"S355 is outside the listed materials"}},
		{Spec: &j.Brackets[1], Part: right, Report: report("tiny-right", strength.Pass)},
	}}
	return Input{Job: j, Result: r, Client: services(t), Version: "test"}
}

// report is made up: its numbers come from no rule.
func report(name string, v strength.Verdict) *strength.Report {
	demand := map[strength.Verdict]float64{strength.Pass: 40, strength.Fail: 120, strength.Outside: 40}[v]
	k := strength.Check{
		Limit: "made-up", Title: "made-up check", Clause: "no clause", Place: "ear-1", Thing: "ear-1", Case: "down",
		Demand: demand, Capacity: 100, DemandSymbol: "f", CapacitySymbol: "F", Unit: "MPa", Utilisation: demand / 100, Verdict: v,
	}
	if v == strength.Outside {
		k.Why = "the plate is too thin for the rule"
	}
	return &strength.Report{Bracket: name, Basis: "AISC 360-22", Edition: "2022", Method: strength.ASD, LoadFactor: 1, Checks: []strength.Check{k}}
}

// packed writes a pack and reads it back by name.
func packed(t testing.TB, in Input) map[string]string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "out")
	if err := Write(context.Background(), dir, in); err != nil {
		t.Fatal(err)
	}
	return tree(t, dir)
}

// tinyPack is the pack of the tiny job that passes, made once for all tests that only read it.
func tinyPack(t testing.TB) map[string]string {
	t.Helper()
	onceTiny.Do(func() { madeTiny = packed(t, tiny(t, strength.Pass)) })
	if madeTiny == nil {
		t.Fatal("the tiny job's pack could not be made")
	}
	return maps.Clone(madeTiny)
}

var (
	onceTiny sync.Once
	madeTiny map[string]string
)

func tree(t testing.TB, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		out[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func sorted(files map[string]string) []string {
	var names []string
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// rowsOf reads a list by column name.
func rowsOf(t testing.TB, text string) []map[string]string {
	t.Helper()
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, c := range cells {
			row[all[0][i]] = c
		}
		out = append(out, row)
	}
	return out
}

// empty fails when anything is left in a folder.
func empty(t testing.TB, dir string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		t.Errorf("%s is left behind", e.Name())
	}
}
