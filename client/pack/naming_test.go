package pack

// Names of files, and marks, as the shop has them.

import (
	"slices"
	"strings"
	"testing"

	"lugwright/geometry/access"
	"lugwright/geometry/shop"
	"lugwright/strength"
)

// Without {mark} a file of a thickness has its pattern alone, and what is of one plate its mark in front; two stocks may not share a file.
func TestNamingOfThicknesses(t *testing.T) {
	in := tiny(t, strength.Pass)
	in.Job.Shop.Files.Grouping, in.Job.Shop.Files.Naming = shop.OneThickness, "{thickness}_{material}_{units}"
	names := sorted(packed(t, in))
	for _, want := range []string{"dxf/r2000/12mm_S355_mm.dxf", "drawings/plates/TB-L1_12mm_S355_mm.svg", "drawings/plates/TB-R1_12mm_S355_mm.svg"} {
		if !slices.Contains(names, want) {
			t.Errorf("no %s in %q", want, names)
		}
	}
	// A job that was read from a file knows its places there.
	j := clevisJob(t, services(t))
	j.Shop, j.Cases, j.Brackets = in.Job.Shop, in.Job.Cases, in.Job.Brackets
	in.Job, in.Result.Job = j, j
	in.Job.Shop.Files.Naming = "{mark}_{units}"
	err := Write(t.Context(), t.TempDir(), in)
	if err == nil || !strings.Contains(err.Error(), "would share the file PLATES_mm") {
		t.Errorf("two thicknesses in one file: %v", err)
	}
}

// A shop that marks nothing is said once, in README.txt; else the cut list and the drawing name each plate without a mark.
func TestMarksOfTheShop(t *testing.T) {
	in := tiny(t, strength.Pass)
	files := packed(t, in)
	bare := 0
	for _, r := range rowsOf(t, files["cut-list.csv"]) {
		paint := "paint " + r["mark"] + " on"
		drawing := files[strings.Replace(strings.Replace(r["file"], "dxf/r2000/", "drawings/plates/", 1), ".dxf", ".svg", 1)]
		small := strings.Contains(r["warnings"], "too small for an etched mark")
		if small {
			bare++
		}
		if r["mark"] != "TOTAL" && strings.Contains(drawing, paint) != small {
			t.Errorf("%s: %q, and a drawing that says otherwise", r["mark"], r["warnings"])
		}
	}
	if bare == 0 {
		t.Error("no plate without a mark: nothing was tried")
	}
	if strings.Contains(files["README.txt"], "NO PLATE IS MARKED") {
		t.Error(files["README.txt"])
	}
	in.Job.Shop.Marks = shop.Marks{Style: shop.NoMarks}
	for i := range in.Result.Brackets {
		in.Result.Brackets[i].Part = in.Job.Shop.Finished(in.Result.Brackets[i].Part)
	}
	files = packed(t, in)
	if !strings.Contains(files["README.txt"], "NO PLATE IS MARKED by this shop") || strings.Contains(files["cut-list.csv"], "too small") {
		t.Errorf("%s\n%s", files["README.txt"], files["cut-list.csv"])
	}
}

// What is done at holes when the bracket is put together is in the hole list, on the plate's drawing and among the views.
func TestHolesInPlace(t *testing.T) {
	in := tiny(t, strength.Pass)
	for i := range in.Result.Brackets {
		b := &in.Result.Brackets[i]
		b.Fits, b.AtHoles = access.Fits(b.Part), access.AtHoles(b.Part)
	}
	files := packed(t, in)
	const words = "weld with a dummy pin through it, or ream in place"
	pins, drains := 0, 0
	for _, r := range rowsOf(t, files["hole-list.csv"]) {
		pin, drain := r["mark"] == "TB-L1" && r["hole"] == "pin", r["hole"] == "drain"
		if pin && r["made"] != "cut to 23.00, ream to 25.30; "+words || drain && strings.Contains(r["made"], words) {
			t.Errorf("%s %s: %s", r["mark"], r["hole"], r["made"])
		}
		if pin {
			pins++
		}
		if drain {
			drains++
		}
	}
	if pins != 1 || drains == 0 {
		t.Errorf("%d pin holes of TB-L1, want 1, and %d drains", pins, drains)
	}
	for name, want := range map[string][]string{
		"drawings/plates/TB-L1_12mm_S355_x4_units-mm.svg": {"cut Ø23 (1)", "(1) " + words + "."},
		"drawings/brackets/tiny-left-views.svg":           {"pin: its holes may"},
	} {
		for _, w := range want {
			if !strings.Contains(files[name], w) {
				t.Errorf("%s has no %q", name, w)
			}
		}
	}
}
