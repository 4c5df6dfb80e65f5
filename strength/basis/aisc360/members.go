package aisc360

import "lugwright/strength"

// memberLimits are members and connecting plates beside what a mount's own features need.
var memberLimits = []strength.Evaluator{
	tensionYield, tensionRupture, eyebarDimensions, spreadYield, spreadBuckling,
	plateFlexure, plateShear, bracketPlate, bracketPlateShear,
	bedBearing, bedThickness, webYield, webCripple, webCompression, flangeBending,
	rectTubeProperties, rectTubeBending, rectTubeShear, roundTubeProperties, roundTubeBending, roundTubeShear,
	column, slenderTube,
	fatigueRange, fatigueDamage, fatigueRoot, fatigueRootRange,
}
