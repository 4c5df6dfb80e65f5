package material

// The filler table.

const aws = "AWS A5 filler metal specifications"

var electrodes = []Electrode{
	{Name: "E60", Aliases: []string{"E60XX"}, Source: aws + ", F_EXX 60 ksi", FexxMPa: 60 * ksi, ListedIn: []string{"AISC 360-22 J2"}},
	{Name: "E70", Aliases: []string{"E70XX", "ER70S-6"}, Source: aws + ", F_EXX 70 ksi", FexxMPa: 70 * ksi, ListedIn: []string{"AISC 360-22 J2"}},
	{Name: "E80", Aliases: []string{"E80XX"}, Source: aws + ", F_EXX 80 ksi", FexxMPa: 80 * ksi, ListedIn: []string{"AISC 360-22 J2"}},
	{Name: "EN 35", Source: "ISO 2560-A / ISO 14341-A symbol 35", FromMemory: true, YieldMPa: 355, FexxMPa: 440, ListedIn: []string{"EN 1993-1-8 4.2"}},
	{Name: "EN 38", Source: "ISO 2560-A / ISO 14341-A symbol 38", FromMemory: true, YieldMPa: 380, FexxMPa: 470, ListedIn: []string{"EN 1993-1-8 4.2"}},
	{Name: "EN 42", Aliases: []string{"G 42", "E 42"}, Source: "ISO 2560-A / ISO 14341-A symbol 42", FromMemory: true, YieldMPa: 420, FexxMPa: 500, ListedIn: []string{"EN 1993-1-8 4.2"}},
	{Name: "EN 46", Aliases: []string{"G 46", "E 46"}, Source: "ISO 2560-A / ISO 14341-A symbol 46", FromMemory: true, YieldMPa: 460, FexxMPa: 530, ListedIn: []string{"EN 1993-1-8 4.2"}},
}
