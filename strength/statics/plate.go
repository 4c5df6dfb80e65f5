package statics

import "math"

// PlateCoefficients are those of a rectangular plate under an even pressure q, with b its short side: greatest stress Stress q b^2/t^2,
// deflection Sag q b^4/(E t^3), edge reaction Edge q b for each length. Second is the stress in the middle, likewise: on simple supports that along
// the long side, with held edges that along the short one. Small deflections.
type PlateCoefficients struct{ Stress, Second, Sag, Edge float64 }

// SupportedPlate is a plate on four simple supports whose sides are as ratio to 1, ratio at least 1: the single series of Levy (1899), as
// in Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, article 30 (from memory).
func SupportedPlate(ratio, nu float64) PlateCoefficients {
	const terms = 400
	var sag, moment, along, edge float64
	sign := 1.0
	for m := 1.0; m < 2*terms; m += 2 {
		half := m * math.Pi * ratio / 2
		fall := 1 / (2 * math.Cosh(half)) // nought where the cosine overflows
		shape := 1 - (half*math.Tanh(half)+2)*fall
		curved := 2*fall - (half*math.Tanh(half)+2)*fall
		c, k := 4/math.Pow(math.Pi*m, 5), m*math.Pi
		sag += sign * c * shape
		moment += sign * c * k * k * (shape - nu*curved)
		along += sign * c * k * k * (nu*shape - curved)
		edge += c * k * k * k * (shape - (2-nu)*curved)
		sign = -sign
	}
	return PlateCoefficients{Stress: 6 * moment, Second: 6 * along, Sag: 12 * (1 - nu*nu) * sag, Edge: edge}
}

// fixedPlate holds the ratio of the sides, the stress in the middle of the long edges and in the plate's middle, and the sag: Formulas for Stress and Strain, Table
// 11.4, case 8a, nu = 0.3, from memory; the last row is a plate of any greater length.
var fixedPlate = [][4]float64{
	{1.0, 0.3078, 0.1386, 0.0138}, {1.2, 0.3834, 0.1794, 0.0188}, {1.4, 0.4356, 0.2094, 0.0226}, {1.6, 0.4680, 0.2286, 0.0251},
	{1.8, 0.4872, 0.2406, 0.0267}, {2.0, 0.4974, 0.2472, 0.0277}, {4.0, 0.5000, 0.2500, 0.0284},
}

// FixedPlate is a plate whose four edges are held against turning: stress in the middle of its long edges and in its own middle, and sag. Between the rows
// of the table it is in proportion.
func FixedPlate(ratio float64) PlateCoefficients {
	for i := 1; i < len(fixedPlate); i++ {
		if a, b := fixedPlate[i-1], fixedPlate[i]; ratio < b[0] {
			k := (ratio - a[0]) / (b[0] - a[0])
			return PlateCoefficients{Stress: a[1] + k*(b[1]-a[1]), Second: a[2] + k*(b[2]-a[2]), Sag: a[3] + k*(b[3]-a[3])}
		}
	}
	last := fixedPlate[len(fixedPlate)-1]
	return PlateCoefficients{Stress: last[1], Second: last[2], Sag: last[3]}
}

// footedPlate holds the ratio of the sides, the constant of the greatest stress and the sag: Formulas for Stress and Strain, Table 11.4,
// case 1b, nu = 0.3; rows 1.0 and 2.0 read, the others from memory; the last row is a plate of any greater length.
var footedPlate = [][3]float64{
	{1.0, 0.435, 0.1267}, {1.2, 0.650, 0.1478}, {1.4, 0.789, 0.1621}, {1.6, 0.875, 0.1715}, {1.8, 0.927, 0.1770}, {2.0, 0.958, 0.1805}, {4.0, 1.000, 0.1851},
}

// FootedPlate is a plate on four simple supports under a force W in its middle: the constant beta of its stress, and alpha of its sag
// alpha W b^2/(E t^3). Between the rows of the table they are in proportion.
func FootedPlate(ratio float64) (beta, alpha float64) {
	for i := 1; i < len(footedPlate); i++ {
		if a, b := footedPlate[i-1], footedPlate[i]; ratio < b[0] {
			k := (ratio - a[0]) / (b[0] - a[0])
			return a[1] + k*(b[1]-a[1]), a[2] + k*(b[2]-a[2])
		}
	}
	last := footedPlate[len(footedPlate)-1]
	return last[1], last[2]
}
