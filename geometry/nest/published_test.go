package nest

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"lugwright/geometry/shape"
)

// bestKnown is the best published utilisation of a strip, in per cent: arXiv 2509.13329 and its records.
var bestKnown = map[string]float64{
	"albano": 89.82, "blaz1": 86.22, "dagli": 90.17, "fu": 92.40, "jakobs1": 89.25, "jakobs2": 87.72, "mao": 86.87, "marques": 92.02,
	"shapes0": 69.98, "shapes1": 76.72, "shirts": 90.92, "swim": 79.83, "trousers": 92.62,
}

// Thirteen published irregular strips, read from the folder that LUGWRIGHT_NESTING names; the data are not of this project. Our utilisation over the
// best known, in the mean, is no less than that of a simple prototype, 0.88.
func TestPublished(t *testing.T) {
	dir := os.Getenv("LUGWRIGHT_NESTING")
	if dir == "" {
		t.Skip("LUGWRIGHT_NESTING names no folder")
	}
	files, _ := filepath.Glob(filepath.Join(dir, "*.json"))
	if len(files) != len(bestKnown) {
		t.Fatalf("%d files in %s, want %d", len(files), dir, len(bestKnown))
	}
	sum := 0.0
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		began := time.Now()
		used := strip(t, file)
		sum += used / bestKnown[name]
		t.Logf("%-9s %6.2f %% of the strip, best known %6.2f, %.3f of it, %.1f s", name, used, bestKnown[name], used/bestKnown[name], time.Since(began).Seconds())
	}
	if mean := sum / float64(len(files)); mean < 0.88 {
		t.Errorf("mean %.4f of the best known, want 0.88", mean)
	} else {
		t.Logf("mean %.4f of the best known", mean)
	}
}

// strip lays an instance out and gives the utilisation in per cent.
func strip(t *testing.T, file string) float64 {
	t.Helper()
	var in struct {
		Height float64 `json:"strip_height"`
		Items  []struct {
			Demand int       `json:"demand"`
			Turns  []float64 `json:"allowed_orientations"`
			Shape  struct {
				Data [][2]float64 `json:"data"`
			} `json:"shape"`
		} `json:"items"`
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &in); err != nil {
		t.Fatal(err)
	}
	var parts []Part
	area, length := 0.0, 0.0
	for _, item := range in.Items {
		p := Part{Count: item.Demand}
		for i, xy := range item.Shape.Data {
			if last := len(item.Shape.Data) - 1; i == last && xy == item.Shape.Data[0] {
				break
			}
			p.Outer = append(p.Outer, shape.Vertex{Point: shape.Point{X: xy[0], Y: xy[1]}})
		}
		for _, deg := range item.Turns {
			p.TurnsRad = append(p.TurnsRad, deg*math.Pi/180)
		}
		area += math.Abs(p.Outer.Area()) * float64(p.Count)
		length += max(p.Outer.BBox().Width(), p.Outer.BBox().Height()) * float64(p.Count)
		parts = append(parts, p)
	}
	r, err := Lay(parts, []Sheet{{WidthMM: length, HeightMM: in.Height, Count: 1}}, 0, publishedTries)
	if err != nil {
		t.Fatal(err)
	}
	for i, left := range r.Left {
		if left > 0 {
			t.Fatalf("%d of item %d left over", left, i)
		}
	}
	return 100 * area / (in.Height * r.UsedMM[0])
}

// publishedTries keeps each instance within 20 s on one core.
const publishedTries = 600
