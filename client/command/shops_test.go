package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// inShop is the starter job with a shop named, and a shop file beside it.
func inShop(t *testing.T, name, file string) string {
	t.Helper()
	path := starterJob(t)
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	src = []byte(strings.Replace(string(src), "\nbasis:", "\nshop: "+name+"\nbasis:", 1))
	if err := os.WriteFile(path, src, 0o644); err != nil {
		t.Fatal(err)
	}
	if file != "" {
		if err := os.WriteFile(filepath.Join(filepath.Dir(path), name), []byte(file), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

func packedFiles(t *testing.T, path string) (dir string, names string) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "pack")
	lugwright(t, "pack", path, "-o", dir).want(t, Done, "")
	files, err := listed(dir)
	if err != nil {
		t.Fatal(err)
	}
	return dir, strings.Join(files, "\n")
}

func TestShops(t *testing.T) {
	if r := lugwright(t, "shops").want(t, Done, ""); !strings.Contains(r.out, "laser\nplasma\nwaterjet\n") {
		t.Error(r.out)
	}
	lugwright(t, "shops", "lazer").want(t, Misused, `"lazer" is not a shipped shop; nearest is "laser"`)
	if r := lugwright(t, "shops", "plasma").want(t, Done, ""); !strings.Contains(r.out, "process: plasma") {
		t.Error(r.out)
	}
}

// A printed shop file, changed: R2010 in inches, one file a thickness, other layers, outlined marks, larger pin holes to ream.
func TestOwnShop(t *testing.T) {
	own := strings.NewReplacer(
		"[R2000, R12]", "[R2010]", "units: mm", "units: inch", "one part a file ", "one file a thickness ", "cut: CUT", "cut: C1",
		"single line", "outlines", "less: 1 mm", "less: 3 mm",
	).Replace(lugwright(t, "shops", "laser").out)
	dir, names := packedFiles(t, inShop(t, "my.yaml", own))
	if strings.Count(names, ".dxf") != strings.Count(names, "dxf/r2010/PLATES_") || strings.Count(names, ".dxf") < 2 || !strings.Contains(names, "_units-inch.dxf") {
		t.Errorf("files:\n%s", names)
	}
	list, err := os.ReadFile(filepath.Join(dir, "cut-list.csv"))
	if err != nil || !strings.Contains(string(list), " in overall along ") || !strings.Contains(string(list), "ream, cut 22.50") {
		t.Errorf("%v:\n%s", err, list)
	}
}

func TestShopRefusals(t *testing.T) {
	lugwright(t, "check", inShop(t, "lasre", "")).want(t, Misused, `shop: `)
	lugwright(t, "check", inShop(t, "lasre", "")).want(t, Misused, `one of laser, plasma, waterjet, or a shop file beside the job; nearest is "laser"`)
	lugwright(t, "check", inShop(t, "my.yaml", "shop: 1\n")).want(t, Misused, "my.yaml:1:1: process: missing")
	wide := strings.Replace(lugwright(t, "shops", "laser").out, "of_thickness: 1.0, and: 1.5 mm}\nholes", "of_thickness: 5.0, and: 1.5 mm}\nholes", 1)
	path := inShop(t, "my.yaml", wide)
	dir := filepath.Join(t.TempDir(), "pack")
	lugwright(t, "pack", path, "-o", dir).want(t, Misused, "mm of steel are left between the hole pin and the edge; at least ")
	if _, err := os.Stat(dir); !os.IsNotExist(err) {
		t.Errorf("something was written: %v", err)
	}
}

// Plates for which no sheet is named are told on screen; a sheet of no known grade is refused.
func TestSheets(t *testing.T) {
	job := func(material string) string {
		src, err := os.ReadFile(demo)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "job.yaml")
		sheets := "sheets:\n  - {material: " + material + ", thickness: 10 mm, width: 1000 mm, height: 500 mm}\nvehicle:\n"
		if err := os.WriteFile(path, []byte(strings.Replace(string(src), "vehicle:\n", sheets, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	lugwright(t, "check", job("S3555")).want(t, Misused, `sheets[0].material: "S3555" is not among the materials; a grade that`)
	r := lugwright(t, "pack", job("S355"), "-o", filepath.Join(t.TempDir(), "out")).want(t, Done, "")
	if said := strings.Join(strings.Fields(r.out), " "); !strings.Contains(said, "no room on the stock sheets for 2 x PAIR-L1 (no sheet of 12 mm S355 is named)") {
		t.Errorf("not said:\n%s", r.out)
	}
}

// By feel the ears stand 24 mm apart: their inner fillets are named, and holes that welding puts out of line.
func TestAccess(t *testing.T) {
	job := filepath.Join("..", "..", "testdata", "jobs", "fieldlab-byfeel.yaml")
	r := lugwright(t, "check", "--access", job).want(t, Failed, "")
	for _, words := range []string{"no access      weld w-ear-1: no room for a torch of 25 x 150 mm", "fit            pin: its holes may come out"} {
		if !strings.Contains(r.out, words) {
			t.Errorf("%q is not in\n%s", words, r.out)
		}
	}
	if r := lugwright(t, "check", job).want(t, Failed, ""); strings.Contains(r.out, "no access") {
		t.Error("access was looked for unasked")
	}
}
