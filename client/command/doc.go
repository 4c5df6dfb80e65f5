// Package command holds the verbs of the command line, one file a verb: parse, call one function, print.
// It never computes a bracket, a check or a file's bytes; those come from the services, client/run and client/pack.
//
//	app.go      the application and its options
//	reorder.go  options may stand anywhere on the line
//	connect.go  the services, in this process or remote
//	status.go   errors to messages and exit status, in one place
//	progress.go how far a long run is, on a terminal
//	print.go    columns, wrapped words, colour
//	quantity.go numbers with their units, in the job's system
//	lines.go    the lines of a calculation
//	json.go     results for machines
package command
