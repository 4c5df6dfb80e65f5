// Package propose finds first sizes for a bracket: of the plates, pins, bolts and welds that the shop has, the lightest that passes by the wanted margin. It never
// prints, and it never judges: it tries variants as a sweep does.
//
//	propose.go  what is asked and answered
//	choices.go  which parameters are sizes, and the values that they may take
//	search.go   every combination where they are few, else steps from the present sizes
//	loads.go    the few loads under which most is found to fail
//	rank.go     the lightest and its runners-up
//	yaml.go     a bracket as it is written into a job
package propose
