package job

// This file names what reading any YAML file gives.

import "lugwright/client/yamlfile"

// LargestFile is the most bytes a job file may have.
const LargestFile = yamlfile.LargestFile

// A Place, an Error and Errors are those of any file; an Error's Field is a path such as
// brackets[pair-left].parameters.ear_width.
type (
	Place  = yamlfile.Place
	Error  = yamlfile.Error
	Errors = yamlfile.Errors
)

const instead = "write a job such as `lugwright new` does"

func quoted(raw string) string { return yamlfile.Quoted(raw) }

// errorsIn are those of a reading, none when it has none.
func errorsIn(err error) Errors {
	bad, _ := err.(Errors)
	return bad
}
