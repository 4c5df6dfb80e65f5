package part

// Clearance holes by fit, and tap drills.

import (
	"fmt"
	"math"
)

// Fit is how freely a bolt passes its hole.
type Fit string

const (
	CloseFit  Fit = "close"
	NormalFit Fit = "normal"
	LooseFit  Fit = "loose"
)

// holes are the clearance holes of a nominal diameter by fit, and the drill before a coarse tap.
type holes struct{ dia, close, normal, loose, tap float64 }

// metricHoles in mm: ISO 273:1979, fine, medium and coarse series; tap drills ISO 2306, coarse threads. All from memory.
var metricHoles = []holes{
	{3, 3.2, 3.4, 3.6, 2.5}, {4, 4.3, 4.5, 4.8, 3.3}, {5, 5.3, 5.5, 5.8, 4.2}, {6, 6.4, 6.6, 7, 5}, {8, 8.4, 9, 10, 6.8},
	{10, 10.5, 11, 12, 8.5}, {12, 13, 13.5, 14.5, 10.2}, {14, 15, 15.5, 16.5, 12}, {16, 17, 17.5, 18.5, 14}, {18, 19, 20, 21, 15.5},
	{20, 21, 22, 24, 17.5}, {22, 23, 24, 26, 19.5}, {24, 25, 26, 28, 21}, {27, 28, 30, 32, 24}, {30, 31, 33, 35, 26.5},
	{33, 34, 36, 38, 29.5}, {36, 37, 39, 42, 32}, {39, 40, 42, 45, 35},
}

// inchHoles in inches: ASME B18.2.8-1999 Table 1; tap drills of the usual tables for coarse threads, number and letter drills by their size. All
// from memory.
var inchHoles = []holes{
	{1. / 4, 17. / 64, 9. / 32, 19. / 64, 0.201}, {5. / 16, 21. / 64, 11. / 32, 23. / 64, 0.257}, {3. / 8, 25. / 64, 13. / 32, 27. / 64, 5. / 16},
	{7. / 16, 29. / 64, 15. / 32, 31. / 64, 0.368}, {1. / 2, 17. / 32, 9. / 16, 39. / 64, 27. / 64}, {5. / 8, 21. / 32, 11. / 16, 47. / 64, 17. / 32},
	{3. / 4, 25. / 32, 13. / 16, 29. / 32, 21. / 32}, {7. / 8, 29. / 32, 15. / 16, 1 + 1./32, 49. / 64}, {1, 1 + 1./32, 1 + 3./32, 1 + 5./32, 7. / 8},
}

// ClearanceMM is the hole for a bolt of a size such as "M12" or "1/2-13". The error says that the size has none in the tables.
func ClearanceMM(size string, fit Fit) (float64, error) {
	h, unit, err := holesOf(size)
	if err != nil {
		return 0, err
	}
	switch fit {
	case CloseFit:
		return h.close * unit, nil
	case LooseFit:
		return h.loose * unit, nil
	}
	return h.normal * unit, nil
}

// TapDrillMM is the drill before a coarse tap of the size. The error says that the size has none in the tables.
func TapDrillMM(size string) (float64, error) {
	h, unit, err := holesOf(size)
	return h.tap * unit, err
}

func holesOf(size string) (holes, float64, error) {
	dia, err := NominalDiaMM(size)
	if err != nil {
		return holes{}, 0, err
	}
	for _, table := range []struct {
		rows []holes
		unit float64
	}{{metricHoles, 1}, {inchHoles, 25.4}} {
		for _, h := range table.rows {
			if math.Abs(h.dia*table.unit-dia) < 1e-6 {
				return h, table.unit, nil
			}
		}
	}
	return holes{}, 0, fmt.Errorf("no clearance hole is listed for %q", size)
}
