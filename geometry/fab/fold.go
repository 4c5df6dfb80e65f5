package fab

// Folds of 90 degrees in sheet and plate.

import (
	"fmt"
	"math"

	"lugwright/geometry"
)

// Fold is a fold by its inside radius, the sheet and the place of its neutral line: how deep that lies, over the thickness.
type Fold struct{ ThicknessMM, RadiusMM, K float64 }

// FoldParams declares inside_radius and k_factor; when says for what, "" for always.
func FoldParams(when string) []geometry.Param {
	return []geometry.Param{
		Length("inside_radius", 0.5, 60, 6, when+"inside radius of the folds"),
		Ratio("k_factor", 0.3, 0.5, 0.44, when+"K: how deep the neutral line lies in a fold, over the thickness; published shop tables give 0.38 to 0.55"),
	}
}

// ReadFold reads what FoldParams declares.
func ReadFold(v geometry.Values, thicknessMM float64) Fold {
	return Fold{thicknessMM, v.MM("inside_radius"), v.Ratio("k_factor")}
}

// Allowance is the length of sheet that a fold takes: pi/2 (r + K t).
func (f Fold) Allowance() float64 { return math.Pi / 2 * (f.RadiusMM + f.K*f.ThicknessMM) }

// Setback is from the outside of a fold to where the flat begins.
func (f Fold) Setback() float64 { return f.RadiusMM + f.ThicknessMM }

// CheckRadius refuses an inside radius under the thickness: sheet-metal guides.
func (f Fold) CheckRadius(n *Needs) {
	n.That(f.RadiusMM >= f.ThicknessMM, "inside_radius", MM(f.RadiusMM), "at least the thickness, %.4g mm; aluminium in hard tempers wants more", f.ThicknessMM)
}

// CheckFlange refuses a flange of less than 3 t + r over its outside, by its parameter: sheet-metal guides.
func (f Fold) CheckFlange(n *Needs, param string, outsideMM float64) {
	least := 3*f.ThicknessMM + f.RadiusMM
	n.That(outsideMM >= least, param, MM(outsideMM), "at least 3 thicknesses and the radius, %.4g mm", least)
}

// HoleRoom is the least distance from a hole's centre to where a fold begins: its edge two thicknesses off. Common practice, no source.
func (f Fold) HoleRoom(holeMM float64) float64 { return holeMM/2 + 2*f.ThicknessMM }

// Note tells how the nth fold is made.
func (f Fold) Note(n int, name string) string {
	return fmt.Sprintf("fold %d: %s, up 90 deg, inside radius %s; flat pattern by k = %.3g, %s allowed for each fold", n, name, MM(f.RadiusMM), f.K, MM(f.Allowance()))
}
