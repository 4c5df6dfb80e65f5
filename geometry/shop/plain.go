package shop

// Plain is the shop of a job that names none: both kinds of cut file in mm, one a part, holes as the brackets' own parameters have them,
// nothing refused.
func Plain() Profile {
	return Profile{
		Name: "none named", Process: Laser,
		Files: Files{
			Versions: []Version{R2000, R12}, Grouping: OnePart, GapMM: 10, Naming: "{mark}_{thickness}_{material}_x{quantity}_units-{units}",
			Layers: Layers{Cut: "CUT", Etch: "ETCH", Bend: "BEND", Centre: "CENTRE"},
		},
		Marks: Marks{Style: SingleLine, HeightMM: 50},
		Holes: []HoleRule{{Make: AsDrawn}},
	}
}
