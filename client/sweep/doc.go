// Package sweep tries brackets of a job with other parameters and says which of them hold, which limit state governs, and which is the lightest. It never
// prints, and it never judges: verdicts come from the strength service as `check` gets them.
//
//	plan.go     what is typed, for the brackets of a job
//	axis.go     a parameter and the values it takes, as typed
//	grid.go     every combination of the axes of one bracket
//	row.go      one variant: what it takes to make, and how it holds
//	measure.go  mass, cut length and weld volume of a bracket
//	run.go      rows in the order of the grid, as they come
//	lightest.go the lightest that passes, and what one step thinner fails on
//	swept.go    all that is known of one bracket
//	common.go   several brackets held to common thicknesses
//	edge.go     where passing begins along one parameter
//	size.go     what of a bracket a parameter is the size of
//	stock.go    the sizes that a shop has
//	plot.go     mass against utilisation as a drawing and in letters
//	svg.go      that drawing as SVG
package sweep
