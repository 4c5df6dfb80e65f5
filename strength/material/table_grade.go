package material

// The grade table: plate, bar, shapes and tube. US values are converted from the ksi of their standard.
// Strengths are the minima of the product standard; a design standard that prints other numbers (EN 1993-1-1 Table 3.1 gives
// f_u 430 for S275 and 490 for S355) is the business of its basis. Which
// design standard lists a grade is from memory.

// underThree ends the band of nominal thickness under 3 mm, where EN 10025-2 keeps a higher tensile strength.
const underThree = 3 - 1e-6

const (
	ksi      = 6.894757293168 // MPa
	inch     = 25.4           // mm
	eUS      = 29000 * ksi    // MPa, AISC 360
	eEN      = 210000         // MPa, EN 1993-1-1 3.2.6
	eALUS    = 10100 * ksi    // MPa, US aluminium design manual, from memory
	eALEN    = 70000          // MPa, EN 1999-1-1
	eSSUS    = 28000 * ksi    // MPa, from memory
	rho      = 7850           // kg/m^3, steel, EN 1991
	thinWall = 0.93           // design wall over nominal of electric-resistance-welded tube and pipe: AISC 360-22 B4.2
	rhoSS    = 8000           // kg/m^3, 304 and 316, from memory
	rhoAL    = 2700           // kg/m^3, EN 1999
	aisc     = "AISC 360-22 A3.1a"
	en1993   = "EN 1993-1-1 Table 3.1"
	en1999a  = "EN 1999-1-1 Table 3.2a"
	en1999b  = "EN 1999-1-1 Table 3.2b"
	adm      = "Aluminum design manual Table A.3.4"
)

// us is one row from ksi for all thicknesses over lo to hi inches.
func us(loIn, hiIn, fy, fu float64) Band {
	return Band{OverMM: loIn * inch, ToMM: hiIn * inch, FyMPa: fy * ksi, FuMPa: fu * ksi}
}

var grades = []Grade{
	{
		Name: "A36", Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A36 (36/58 ksi); over 8 in 32/58, from memory",
		Bands:  []Band{us(0, 8, 36, 58), us(8, 15, 32, 58)}, ListedIn: []string{aisc},
	},
	{
		Name: "A572-50", Aliases: []string{"A572 Gr 50"}, Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A572 grade 50", FromMemory: true, Bands: []Band{us(0, 4, 50, 65)}, ListedIn: []string{aisc},
	},
	{
		Name: "A992", Form: "shape", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A992", FromMemory: true, Bands: []Band{us(0, 6, 50, 65)}, ListedIn: []string{aisc},
	},
	{
		Name: "A588-50", Aliases: []string{"A588"}, Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A588, to 4 in", FromMemory: true, Bands: []Band{us(0, 4, 50, 70)}, ListedIn: []string{aisc},
	},
	{
		Name: "A516-70", Form: "plate", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A516 grade 70 (38/70 ksi)", Bands: []Band{us(0, 8, 38, 70)},
	},
	{
		Name: "A514", Form: "plate", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A514", FromMemory: true, Bands: []Band{us(0, 2.5, 100, 110), us(2.5, 6, 90, 100)}, ListedIn: []string{aisc},
	},
	{
		Name: "A500B", Aliases: []string{"A500B round"}, Form: "round tube", Family: CarbonSteel, EMPa: eUS, Density: rho, DesignWall: thinWall,
		Source: "ASTM A500 grade B, round, before the 2021 edition (42/58 ksi)", Bands: []Band{us(0, 1, 42, 58)}, ListedIn: []string{aisc},
	},
	{
		Name: "A500C", Aliases: []string{"A500C round"}, Form: "round tube", Family: CarbonSteel, EMPa: eUS, Density: rho, DesignWall: thinWall,
		Source: "ASTM A500 grade C, round, before the 2021 edition (46/62 ksi)", Bands: []Band{us(0, 1, 46, 62)}, ListedIn: []string{aisc},
	},
	{
		Name: "A500B shaped", Form: "square or rectangular tube", Family: CarbonSteel, EMPa: eUS, Density: rho, DesignWall: thinWall,
		Source: "ASTM A500 grade B, shaped, before the 2021 edition", FromMemory: true, Bands: []Band{us(0, 1, 46, 58)}, ListedIn: []string{aisc},
	},
	{
		Name: "A500C shaped", Form: "square or rectangular tube", Family: CarbonSteel, EMPa: eUS, Density: rho, DesignWall: thinWall,
		Source: "ASTM A500 grade C, shaped", FromMemory: true, Bands: []Band{us(0, 1, 50, 62)}, ListedIn: []string{aisc},
	},
	{
		Name: "A53B", Form: "pipe", Family: CarbonSteel, EMPa: eUS, Density: rho, DesignWall: thinWall,
		Source: "ASTM A53 grade B", FromMemory: true, Bands: []Band{us(0, 2.5, 35, 60)}, ListedIn: []string{aisc},
	},
	{
		Name: "1045 CD", Form: "cold-drawn bar (pins)", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "AISI 1045 cold drawn, handbook minimum 77/91 ksi", FromMemory: true, Bands: []Band{us(0, 3, 77, 91)},
	},
	{
		Name: "B7", Aliases: []string{"A193 B7"}, Form: "quenched and tempered bar, rod (pins, studs)", Family: CarbonSteel, EMPa: eUS, Density: rho,
		Source: "ASTM A193 grade B7, to 2 1/2 in", FromMemory: true, Bands: []Band{us(0, 2.5, 105, 125)},
	},
	{
		Name: "S235", Aliases: []string{"S235JR", "S235J0", "S235J2"}, Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10025-2 Table 7",
		Bands: []Band{
			{0, 16, 235, 360}, {16, 40, 225, 360}, {40, 63, 215, 360}, {63, 80, 215, 360}, {80, 100, 215, 360},
		}, ListedIn: []string{en1993},
	},
	{
		Name: "S275", Aliases: []string{"S275JR", "S275J0", "S275J2"}, Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10025-2 Table 7 (f_u 410 read, the rest from memory)", FromMemory: true,
		Bands: []Band{
			{0, underThree, 275, 430}, {underThree, 16, 275, 410}, {16, 40, 265, 410}, {40, 63, 255, 410}, {63, 80, 245, 410}, {80, 100, 235, 410},
		}, ListedIn: []string{en1993},
	},
	{
		Name: "S355", Aliases: []string{"S355JR", "S355J0", "S355J2", "S355K2"}, Form: "plate, bar, shape", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10025-2 Table 7",
		Bands: []Band{
			{0, underThree, 355, 510}, {underThree, 16, 355, 470}, {16, 40, 345, 470}, {40, 63, 335, 470}, {63, 80, 325, 470}, {80, 100, 315, 470},
		}, ListedIn: []string{en1993},
	},
	{
		Name: "C45+N", Aliases: []string{"C45"}, Form: "normalised bar (pins)", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10083-2, C45 normalised", FromMemory: true, Bands: []Band{{0, 16, 340, 620}, {16, 100, 305, 580}},
	},
	{
		Name: "C45+QT", Form: "quenched and tempered bar (pins)", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10083-2, C45 quenched and tempered", FromMemory: true,
		Bands: []Band{{0, 16, 490, 700}, {16, 40, 430, 650}, {40, 100, 370, 630}},
	},
	{
		Name: "42CrMo4+QT", Aliases: []string{"42CrMo4"}, Form: "quenched and tempered bar (pins)", Family: CarbonSteel, EMPa: eEN, Density: rho,
		Source: "EN 10083-3, 42CrMo4 quenched and tempered", FromMemory: true,
		Bands: []Band{{0, 16, 900, 1100}, {16, 40, 750, 1000}, {40, 100, 650, 900}},
	},
	{
		Name: "304", Form: "plate, bar", Family: Stainless, EMPa: eSSUS, Density: rhoSS,
		Source: "ASTM A240 type 304 (30/75 ksi)", FromMemory: true, Bands: []Band{us(0, 4, 30, 75)},
	},
	{
		Name: "316", Aliases: []string{"A240-316"}, Form: "plate, bar", Family: Stainless, EMPa: eSSUS, Density: rhoSS,
		Source: "ASTM A240 type 316 (30/75 ksi)", FromMemory: true, Bands: []Band{us(0, 4, 30, 75)},
	},
	{
		Name: "316L", Aliases: []string{"A240-316L"}, Form: "plate, bar", Family: Stainless, EMPa: eSSUS, Density: rhoSS,
		Source: "ASTM A240 type 316L (25/70 ksi)", FromMemory: true, Bands: []Band{us(0, 4, 25, 70)},
	},
	{
		Name: "6061-T6", Aliases: []string{"6061-T651"}, Form: "plate, bar, extrusion", Family: Aluminium, EMPa: eALUS, Density: rhoAL,
		Source: "49 CFR 178.46 Table 2 (35/38 ksi)", Bands: []Band{us(0, 4, 35, 38)},
		Welded:     &Band{0, 4 * inch, 15 * ksi, 24 * ksi},
		WeldedFrom: "Aluminum design manual (2010/2015) Table A.3.5, from memory; older editions give 20 ksi yield near thin welds", ListedIn: []string{adm},
	},
	{
		Name: "5083-H116", Aliases: []string{"5083-H321"}, Form: "plate", Family: Aluminium, EMPa: 10300 * ksi, Density: 2660,
		Source: "Aluminum design manual (2010/2015) Table A.3.4 (31/44 ksi), to 1 1/2 in", FromMemory: true, Bands: []Band{us(0, 1.5, 31, 44)},
		Welded:     &Band{0, 1.5 * inch, 18 * ksi, 40 * ksi},
		WeldedFrom: "Aluminum design manual (2010/2015) Table A.3.5, from memory", ListedIn: []string{adm},
	},
	{
		Name: "5052-H32", Form: "sheet, plate", Family: Aluminium, EMPa: 10200 * ksi, Density: 2680,
		Source: "Aluminum design manual (2010/2015) Table A.3.4 (23/31 ksi)", FromMemory: true, Bands: []Band{us(0, 2, 23, 31)},
		Welded:     &Band{0, 2 * inch, 9.5 * ksi, 25 * ksi},
		WeldedFrom: "Aluminum design manual (2010/2015) Table A.3.5, from memory", ListedIn: []string{adm},
	},
	{
		Name: "EN AW-6061-T6", Form: "extrusion", Family: Aluminium, EMPa: eALEN, Density: rhoAL,
		Source: "EN 1999-1-1 Table 3.2b, t <= 20", Bands: []Band{{0, 20, 240, 260}},
		Welded: &Band{0, 20, 115, 175}, WeldedFrom: "EN 1999-1-1 Table 3.2b", ListedIn: []string{en1999b},
	},
	{
		Name: "EN AW-6005A-T6", Form: "open extrusion", Family: Aluminium, EMPa: eALEN, Density: rhoAL,
		Source: "EN 1999-1-1 Table 3.2b, open profile, t <= 5", Bands: []Band{{0, 5, 225, 270}},
		Welded: &Band{0, 5, 115, 165}, WeldedFrom: "EN 1999-1-1 Table 3.2b", ListedIn: []string{en1999b},
	},
	{
		Name: "EN AW-6060-T6", Form: "extrusion", Family: Aluminium, EMPa: eALEN, Density: rhoAL,
		Source: "EN 1999-1-1 Table 3.2b, t <= 15", Bands: []Band{{0, 15, 140, 170}},
		Welded: &Band{0, 15, 60, 100}, WeldedFrom: "EN 1999-1-1 Table 3.2b", ListedIn: []string{en1999b},
	},
	{
		Name: "EN AW-6082-T6", Aliases: []string{"6082-T6", "EN AW-6082-T651"}, Form: "sheet, plate", Family: Aluminium, EMPa: eALEN, Density: rhoAL,
		Source: "EN 1999-1-1 Table 3.2a", FromMemory: true, Bands: []Band{{0, 6, 260, 310}, {6, 12.5, 255, 300}, {12.5, 100, 240, 295}},
		Welded: &Band{0, 100, 125, 185}, WeldedFrom: "EN 1999-1-1 Table 3.2a, from memory", ListedIn: []string{en1999a},
	},
}
