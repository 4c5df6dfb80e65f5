// Package batch sends the variants of a family through both services and keeps their results, in order, so that a run that was cut off can go on. It never
// prints and knows no options.
//
//	run.go      the pipeline: variants in, rows out, several messages on their way at once
//	row.go      a result: what it says, as a line of JSON and as a row of CSV
//	results.go  the folder of results: a new one
//	resume.go   the folder of results: one that goes on
//	lock*.go    one run at a time in a folder
//	summary.go  how many of each verdict, what governs, the worst of all
package batch
