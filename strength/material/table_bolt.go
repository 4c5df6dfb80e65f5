package material

// The bolt grade table.

const (
	j3    = "AISC 360-22 A3.3"
	en38  = "EN 1993-1-8 Table 3.1"
	en314 = "EN 1993-1-4"
)

// usBolt is one row from ksi for diameters over lo to hi inches.
func usBolt(loIn, hiIn, proof, yield, tensile float64) BoltBand {
	return BoltBand{loIn * inch, hiIn * inch, proof * ksi, yield * ksi, tensile * ksi}
}

// smallest bolts of the inch tables start at 1/4 in itself.
const quarter = 0.2499

var boltGrades = []BoltGrade{
	{
		Name: "SAE 2", Source: "SAE J429, mechanical requirements table; 1/4 to 3/4 in for lengths to 6 in",
		Bands: []BoltBand{usBolt(quarter, 0.75, 55, 57, 74), usBolt(0.75, 1.5, 33, 36, 60)},
	},
	{
		Name: "SAE 5", Source: "SAE J429, mechanical requirements table",
		Bands: []BoltBand{usBolt(quarter, 1, 85, 92, 120), usBolt(1, 1.5, 74, 81, 105)},
	},
	{
		Name: "SAE 8", Source: "SAE J429, mechanical requirements table",
		Bands: []BoltBand{usBolt(quarter, 1.5, 120, 130, 150)},
	},
	{
		Name: "A307", Source: "ASTM A307 grade A, as quoted from a machine design textbook",
		Bands: []BoltBand{usBolt(quarter, 1.5, 33, 36, 60)}, ListedIn: []string{j3},
	},
	{
		Name: "A325", Aliases: []string{"F3125 A325", "Group 120"}, Source: "ASTM F3125 grade A325, 120 ksi for all diameters (proof and yield from memory)",
		Bands: []BoltBand{usBolt(0.4999, 1.5, 85, 92, 120)}, ListedIn: []string{j3},
	},
	{
		Name: "A325 (before 2015)", Source: "ASTM A325 before F3125, as quoted from a machine design textbook",
		Bands: []BoltBand{usBolt(0.4999, 1, 85, 92, 120), usBolt(1, 1.5, 74, 81, 105)},
	},
	{
		Name: "A490", Aliases: []string{"F3125 A490", "Group 150"}, Source: "ASTM A490, as quoted from a machine design textbook; same in F3125",
		Bands: []BoltBand{usBolt(0.4999, 1.5, 120, 130, 150)}, ListedIn: []string{j3},
	},
	{
		Name: "4.6", Source: "ISO 898-1 (R_m 400, S_p 225; R_eL 240 from memory)",
		Bands: []BoltBand{{0, 39, 225, 240, 400}}, NominalFyMPa: 240, NominalFuMPa: 400, ListedIn: []string{en38},
	},
	{
		Name: "5.6", Source: "ISO 898-1", FromMemory: true,
		Bands: []BoltBand{{0, 39, 280, 300, 500}}, NominalFyMPa: 300, NominalFuMPa: 500, ListedIn: []string{en38},
	},
	{
		Name: "5.8", Source: "ISO 898-1, to M24", FromMemory: true,
		Bands: []BoltBand{{0, 24, 380, 420, 520}}, NominalFyMPa: 400, NominalFuMPa: 500, ListedIn: []string{en38},
	},
	{
		Name: "8.8", Source: "ISO 898-1 (R_m, S_p; R_p0.2 from memory)",
		Bands: []BoltBand{{0, 16, 580, 640, 800}, {16, 39, 600, 660, 830}}, NominalFyMPa: 640, NominalFuMPa: 800, ListedIn: []string{en38},
	},
	{
		Name: "10.9", Source: "ISO 898-1 (R_m, S_p; R_p0.2 from memory)",
		Bands: []BoltBand{{0, 39, 830, 940, 1040}}, NominalFyMPa: 900, NominalFuMPa: 1000, ListedIn: []string{en38},
	},
	{
		Name: "12.9", Source: "ISO 898-1 (R_m, S_p; R_p0.2 from memory)",
		Bands: []BoltBand{{0, 39, 970, 1100, 1220}},
	},
	{
		Name: "A2-70", Source: "ISO 3506-1, stainless, to M24", FromMemory: true,
		Bands: []BoltBand{{0, 24, 0, 450, 700}}, ListedIn: []string{en314},
	},
	{
		Name: "A4-70", Source: "ISO 3506-1, stainless, to M24", FromMemory: true,
		Bands: []BoltBand{{0, 24, 0, 450, 700}}, ListedIn: []string{en314},
	},
	{
		Name: "A4-80", Source: "ISO 3506-1, stainless, to M24", FromMemory: true,
		Bands: []BoltBand{{0, 24, 0, 600, 800}}, ListedIn: []string{en314},
	},
}
