package fab

// Declarations of parameters in one line each.

import "lugwright/geometry"

// Length declares a length in mm.
func Length(name string, lo, hi, def float64, sentence string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.MM, Min: lo, Max: hi, Default: def, Sentence: sentence}
}

// Ratio declares a plain number.
func Ratio(name string, lo, hi, def float64, sentence string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.Ratio, Min: lo, Max: hi, Default: def, Sentence: sentence}
}

// Count declares a whole number.
func Count(name string, lo, hi, def int, sentence string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.Count, Min: float64(lo), Max: float64(hi), Default: float64(def), Sentence: sentence}
}

// Choice declares a word from a list; the first is the default.
func Choice(name, sentence string, choices ...string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.Word, Choices: choices, Text: choices[0], Sentence: sentence}
}

// Named declares a free word, such as a grade of steel, that another service looks up.
func Named(name, def, sentence string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.Word, Text: def, Sentence: sentence}
}

// Thread declares a thread size.
func Thread(name, def, sentence string) geometry.Param {
	return geometry.Param{Name: name, Unit: geometry.Size, Text: def, Sentence: sentence}
}
