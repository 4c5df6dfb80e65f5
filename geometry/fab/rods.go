package fab

// Hanger rods and their spreader washers.

// ThatWasher keeps a spreader washer at least three rods wide and a quarter of a rod thick: common practice, no source.
func (n *Needs) ThatWasher(sideParam string, sideMM float64, thickParam string, thickMM, rodMM float64) {
	n.That(sideMM >= 3*rodMM, sideParam, MM(sideMM), "at least 3 rod diameters, %.4g mm; 4 to 5 are usual", 3*rodMM)
	n.That(thickMM >= rodMM/4, thickParam, MM(thickMM), "at least a quarter of the rod's diameter, %.4g mm; a half is usual", rodMM/4)
}

// ThatEngaged keeps the thread in a coupling nut to the nut's length; 0 where nuts on plates hold the rod.
func (n *Needs) ThatEngaged(param string, deepMM, rodMM float64) {
	n.That(deepMM <= 3*rodMM, param, MM(deepMM), "at most 3 diameters, %.4g mm", 3*rodMM)
}
