package command

// The calc sheet of the demo jobs, read back from its PDF and opened in a browser.

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/internal/browser"
	"lugwright/internal/peer"
	"lugwright/units"
)

func TestMain(m *testing.M) { os.Exit(browser.Main(m)) }

// packedSheet packs a job, and gives the folder and what --json said of it.
func packedSheet(t *testing.T, job string, status int) (dir string, doc resultDoc) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", job, "-o", dir, "--json").want(t, status, "")
	if err := json.Unmarshal([]byte(r.out), &doc); err != nil {
		t.Fatal(err)
	}
	return dir, doc
}

// asShown is a number of --json as papers write it.
func asShown(v float64, unit string, system units.System) string {
	factor, dim, err := units.Factor(unit)
	if err != nil {
		return fmt.Sprint(v)
	}
	return units.Format(v*factor, dim, system)
}

// Every check of --json stands in the PDF with its demand, its capacity, what is used and its verdict: as many rows as checks, by the text that
// another program reads in the file.
func TestSheetEqualsJSON(t *testing.T) {
	program := peer.NeedCommand(t, "pdftotext")
	for _, c := range []struct {
		job    string
		status int
		system units.System
	}{{demo, Done, units.Metric}, {byFeel, Failed, units.Metric}, {"../../testdata/jobs/hivecarrier.yaml", Done, units.Inch}} {
		dir, doc := packedSheet(t, c.job, c.status)
		text, err := exec.Command(program, "-layout", filepath.Join(dir, "calc-sheet.pdf"), "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		for _, l := range strings.Split(string(text), "\n") {
			lines = append(lines, strings.Join(strings.Fields(l), "")) // that program takes some narrow spaces for none
		}
		need := map[string]int{}
		for _, b := range doc.Brackets {
			for _, k := range b.Checks {
				verdict := map[string]string{"pass": "pass", "fail": "FAIL", "outside the rule": "OUTSIDE"}[k.Verdict]
				if verdict == "" || k.Demand == 0 && k.Capacity == 0 {
					continue
				}
				need[strings.ReplaceAll(fmt.Sprint(asShown(float64(k.Demand), k.Unit, c.system), asShown(float64(k.Capacity), k.Unit, c.system), units.Utilisation(float64(k.Utilisation)), verdict), " ", "")]++
			}
		}
		if len(need) < 20 {
			t.Errorf("%s: only %d different checks", c.job, len(need))
		}
		for end, n := range need {
			had := 0
			for _, l := range lines {
				if strings.HasSuffix(strings.TrimSuffix(l, "THERULE"), end) {
					had++
				}
			}
			if had < n {
				t.Errorf("%s: %d rows end with %q; need %d", c.job, had, end, n)
			}
		}
		for _, caution := range doc.Cautions {
			if !strings.Contains(strings.Join(strings.Fields(string(text)), " "), caution) {
				t.Errorf("%s: no caution %q", c.job, caution)
			}
		}
	}
}

// The sheet stays one that a person reads, with its plots.
func TestSheetIsNotTooLong(t *testing.T) {
	dir, _ := packedSheet(t, demo, Done)
	out, err := exec.Command(peer.NeedCommand(t, "pdfinfo"), filepath.Join(dir, "calc-sheet.pdf")).Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := 0
	for _, l := range strings.Split(string(out), "\n") {
		fmt.Sscanf(l, "Pages: %d", &pages) //nolint:errcheck // other lines have none
	}
	if pages < 20 || pages > 70 {
		t.Errorf("%d pages for three brackets", pages)
	}
}

// The page of the demo in a browser: each drawing is drawn, the table of checks is filtered, a check lights up its part and a part its checks.
func TestSheetInTheBrowser(t *testing.T) {
	dir, doc := packedSheet(t, demo, Done)
	path, err := filepath.Abs(filepath.Join(dir, "calc-sheet.html"))
	if err != nil {
		t.Fatal(err)
	}
	p := browser.Open(t, "file://"+path, true)
	drawn := browser.Eval[int](p, `[...document.querySelectorAll("figure svg")].filter(s => s.getBoundingClientRect().height > 100 && s.getBBox().width > 0).length`)
	if all := browser.Eval[int](p, `document.querySelectorAll("figure").length`); drawn < 4*len(doc.Brackets) || drawn != all {
		t.Errorf("%d of %d drawings are drawn", drawn, all)
	}
	// In the section of one bracket: rows of the weld at the first ear, with the drawing of that section alone.
	section := `[...document.querySelectorAll("section")].find(s => s.getAttribute("aria-label") === "Bracket pair-left")`
	id := browser.Eval[string](p, section+`.id`)
	p.Hover("#" + id + ` table.sortable tr[data-id="w-ear-1"] td:nth-child(2)`)
	if groups := browser.Eval[int](p, `document.querySelectorAll("#`+id+` g.lit[data-id=w-ear-1]").length`); groups == 0 {
		t.Error("the check of a weld does not light it up")
	}
	if outside := browser.Eval[int](p, `document.querySelectorAll("section:not(#`+id+`) .lit").length`); outside != 0 {
		t.Errorf("%d things of other brackets are lit", outside)
	}
	n := browser.Eval[int](p, section+`.querySelectorAll("tbody tr.lit").length`)
	if n < 2 {
		t.Errorf("%d rows of the weld are lit", n)
	}
	for _, f := range p.Faults() {
		t.Error(f)
	}
	for _, a := range p.Asked()[1:] {
		if !strings.HasPrefix(a, "data:") {
			t.Errorf("asks for %s", a)
		}
	}
}

// What of the vehicle fails stands on the calc sheet and in the pack's README.txt, and is said on the screen, though every bracket passes.
func TestPackTellsOfTheVehicle(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pack")
	out := lugwright(t, "pack", "../../testdata/jobs/hivecarrier.yaml", "-o", dir).want(t, Done, "").out
	page, err := os.ReadFile(filepath.Join(dir, "calc-sheet.html"))
	if err != nil {
		t.Fatal(err)
	}
	readme, err := os.ReadFile(filepath.Join(dir, "README.txt"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"screen": out, "README.txt": string(readme), "calc-sheet.html": string(page)} {
		text = strings.Join(strings.Fields(text), " ")
		if !strings.Contains(text, "FAILS in 1 of its rules: state full: front axle") || !strings.Contains(text, "is over its rating of") {
			t.Errorf("%s says nothing of the front axle", name)
		}
	}
}
