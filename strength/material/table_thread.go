package material

// The thread and hardware tables.

// fineThread is a metric fine pitch (mm).
type fineThread struct{ d, p float64 }

// metricBolts are the coarse sizes. Pitches: ISO 261. Hexagons and heads: ISO 4014; nuts: ISO 4032 (greatest height);
// washers: ISO 7089; all from memory.
var metricBolts = []Bolt{
	{Name: "M5", DiaMM: 5, PitchMM: 0.8, AcrossFlats: 8, HeadMM: 3.5, NutMM: 4.7, WasherOD: 10, WasherT: 1},
	{Name: "M6", DiaMM: 6, PitchMM: 1, AcrossFlats: 10, HeadMM: 4, NutMM: 5.2, WasherOD: 12, WasherT: 1.6},
	{Name: "M8", DiaMM: 8, PitchMM: 1.25, AcrossFlats: 13, HeadMM: 5.3, NutMM: 6.8, WasherOD: 16, WasherT: 1.6},
	{Name: "M10", DiaMM: 10, PitchMM: 1.5, AcrossFlats: 16, HeadMM: 6.4, NutMM: 8.4, WasherOD: 20, WasherT: 2},
	{Name: "M12", DiaMM: 12, PitchMM: 1.75, AcrossFlats: 18, HeadMM: 7.5, NutMM: 10.8, WasherOD: 24, WasherT: 2.5},
	{Name: "M14", DiaMM: 14, PitchMM: 2, AcrossFlats: 21, HeadMM: 8.8, NutMM: 12.8, WasherOD: 28, WasherT: 2.5},
	{Name: "M16", DiaMM: 16, PitchMM: 2, AcrossFlats: 24, HeadMM: 10, NutMM: 14.8, WasherOD: 30, WasherT: 3},
	{Name: "M18", DiaMM: 18, PitchMM: 2.5, AcrossFlats: 27, HeadMM: 11.5, NutMM: 15.8, WasherOD: 34, WasherT: 3},
	{Name: "M20", DiaMM: 20, PitchMM: 2.5, AcrossFlats: 30, HeadMM: 12.5, NutMM: 18, WasherOD: 37, WasherT: 3},
	{Name: "M22", DiaMM: 22, PitchMM: 2.5, AcrossFlats: 34, HeadMM: 14, NutMM: 19.4, WasherOD: 39, WasherT: 3},
	{Name: "M24", DiaMM: 24, PitchMM: 3, AcrossFlats: 36, HeadMM: 15, NutMM: 21.5, WasherOD: 44, WasherT: 4},
	{Name: "M27", DiaMM: 27, PitchMM: 3, AcrossFlats: 41, HeadMM: 17, NutMM: 23.8, WasherOD: 50, WasherT: 4},
	{Name: "M30", DiaMM: 30, PitchMM: 3.5, AcrossFlats: 46, HeadMM: 18.7, NutMM: 25.6, WasherOD: 56, WasherT: 4},
	{Name: "M36", DiaMM: 36, PitchMM: 4, AcrossFlats: 55, HeadMM: 22.5, NutMM: 31, WasherOD: 66, WasherT: 5},
}

// metricFine are the common fine pitches of ISO 261, from memory.
var metricFine = []fineThread{
	{8, 1}, {10, 1.25}, {10, 1}, {12, 1.25}, {12, 1.5}, {14, 1.5}, {16, 1.5}, {18, 1.5}, {20, 1.5}, {20, 2},
	{22, 1.5}, {24, 2}, {27, 2}, {30, 2}, {36, 3},
}

// inchBolts are the UNC sizes, then the UNF ones. Hexagons and heads: ASME B18.2.1; heavy hexagons: structural bolts, B18.2.6;
// nuts: B18.2.2; washers: F436; all from memory.
var inchBolts = []Bolt{
	inchBolt("1/4-20", 0.25, 20, 0.4375, 0, 0.15625, 0.21875, 0.625, 0.065),
	inchBolt("5/16-18", 0.3125, 18, 0.5, 0, 0.203125, 0.265625, 0.6875, 0.065),
	inchBolt("3/8-16", 0.375, 16, 0.5625, 0, 0.234375, 0.328125, 0.8125, 0.065),
	inchBolt("7/16-14", 0.4375, 14, 0.625, 0, 0.28125, 0.375, 0.921875, 0.065),
	inchBolt("1/2-13", 0.5, 13, 0.75, 0.875, 0.3125, 0.4375, 1.0625, 0.136),
	inchBolt("9/16-12", 0.5625, 12, 0.8125, 0, 0.359375, 0.484375, 1.1875, 0.136),
	inchBolt("5/8-11", 0.625, 11, 0.9375, 1.0625, 0.390625, 0.546875, 1.3125, 0.136),
	inchBolt("3/4-10", 0.75, 10, 1.125, 1.25, 0.46875, 0.640625, 1.46875, 0.136),
	inchBolt("7/8-9", 0.875, 9, 1.3125, 1.4375, 0.546875, 0.75, 1.75, 0.136),
	inchBolt("1-8", 1, 8, 1.5, 1.625, 0.609375, 0.859375, 2, 0.136),
	inchBolt("1 1/8-7", 1.125, 7, 1.6875, 1.8125, 0.6875, 0.96875, 2.25, 0.136),
	inchBolt("1 1/4-7", 1.25, 7, 1.875, 2, 0.78125, 1.0625, 2.5, 0.136),
	inchBolt("1 3/8-6", 1.375, 6, 2.0625, 2.1875, 0.84375, 1.17188, 2.75, 0.136),
	inchBolt("1 1/2-6", 1.5, 6, 2.25, 2.375, 0.9375, 1.28125, 3, 0.136),
	inchBolt("1/4-28", 0.25, 28, 0.4375, 0, 0.15625, 0.21875, 0.625, 0.065),
	inchBolt("5/16-24", 0.3125, 24, 0.5, 0, 0.203125, 0.265625, 0.6875, 0.065),
	inchBolt("3/8-24", 0.375, 24, 0.5625, 0, 0.234375, 0.328125, 0.8125, 0.065),
	inchBolt("7/16-20", 0.4375, 20, 0.625, 0, 0.28125, 0.375, 0.921875, 0.065),
	inchBolt("1/2-20", 0.5, 20, 0.75, 0.875, 0.3125, 0.4375, 1.0625, 0.136),
	inchBolt("9/16-18", 0.5625, 18, 0.8125, 0, 0.359375, 0.484375, 1.1875, 0.136),
	inchBolt("5/8-18", 0.625, 18, 0.9375, 1.0625, 0.390625, 0.546875, 1.3125, 0.136),
	inchBolt("3/4-16", 0.75, 16, 1.125, 1.25, 0.46875, 0.640625, 1.46875, 0.136),
	inchBolt("7/8-14", 0.875, 14, 1.3125, 1.4375, 0.546875, 0.75, 1.75, 0.136),
	inchBolt("1-12", 1, 12, 1.5, 1.625, 0.609375, 0.859375, 2, 0.136),
	inchBolt("1 1/8-12", 1.125, 12, 1.6875, 1.8125, 0.6875, 0.96875, 2.25, 0.136),
	inchBolt("1 1/4-12", 1.25, 12, 1.875, 2, 0.78125, 1.0625, 2.5, 0.136),
	inchBolt("1 3/8-12", 1.375, 12, 2.0625, 2.1875, 0.84375, 1.17188, 2.75, 0.136),
	inchBolt("1 1/2-12", 1.5, 12, 2.25, 2.375, 0.9375, 1.28125, 3, 0.136),
}

// inchBolt turns a row in inches into mm.
func inchBolt(name string, d, tpi, flats, heavy, head, nut, washerOD, washerT float64) Bolt {
	return Bolt{
		Name: name, Inch: true, DiaMM: d * inch, PitchMM: inch / tpi, AcrossFlats: flats * inch, HeavyFlats: heavy * inch,
		HeadMM: head * inch, NutMM: nut * inch, WasherOD: washerOD * inch, WasherT: washerT * inch,
	}
}
