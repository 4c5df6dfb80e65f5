// Package drill holds new holes in frame rails, and brackets on them, against makers' published drilling rules and against what a survey found on each
// rail. It never decides for a maker: each rule is data with its source, and what a source does not say is listed as not covered.
//
// Places are stations x rearward and heights z, as on the vehicle, in mm. Left and right rail are surveyed apart: they are not mirror images.
//
//	guide.go   what a guide can say
//	guides.go  the guides: A, B, C, an Australian summary, the US rule on flanges
//	survey.go  what is on a rail and what shall go there
//	check.go   every rule at every hole and bracket
//	rules.go   the rules one by one
//	measure.go distances of holes, brackets and zones
//	subframe.go the subframe's flange against the frame's
package drill
