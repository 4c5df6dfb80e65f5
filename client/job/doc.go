// Package job reads the job file: YAML in which every quantity carries its unit and every error has file, line, column
// and field. It never builds, checks or writes anything, and it knows kinds and bases only as the services list them.
//
//	job.go        the job as typed values, and requests made from it
//	table.go      the field table: the one source of validation, editor schema and help
//	decode.go     values to the job
//	agree.go      what single fields cannot tell: names that repeat, cases that nobody names, loads of nothing
//	vehicle*.go   the section vehicle: the same for it, as a request of the strength service, and its mounts' loads on brackets
//	tray.go       a bracket tied to a tray of the vehicle
//	locate.go     errors of the services back to places of the file
//	errors.go     the errors, which are those of any YAML file
//	canonical.go  the hash
package job
