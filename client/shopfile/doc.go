// Package shopfile reads shop files: what a cutting shop can make and how it wants its files, as YAML that the user owns. Three neutral ones are
// shipped. It never finishes a hole or writes a cut file.
//
//	shopfile.go  shipped names, and reading
//	table.go     the field table
//	decode.go    values to a profile
//	shipped/     laser, plasma, waterjet
package shopfile
