// Package proto holds the wire format of both services: lugwright/part, lugwright/geometry, lugwright/strength and lugwright/vehicle, and
// in gen the Go code made from them. It never holds a line of code by hand but this comment, and nobody edits gen.
//
// After a change to a .proto file, from the repository's root:
//
//	go generate ./proto
//
// which deletes the generated files, lints and formats the protos, and makes the Go code again, the same bytes each time.
package proto

//go:generate sh generate.sh
