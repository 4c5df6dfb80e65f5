package pack

import "fmt"

// NotEmptyError refuses a folder that holds something: nothing is ever overwritten.
type NotEmptyError struct{ Dir string }

func (e *NotEmptyError) Error() string {
	return e.Dir + " is not empty; a folder that does not exist or is empty is accepted"
}

// WriteError is a folder or file that could not be written. Nothing of the pack was left behind.
type WriteError struct {
	Path string
	Err  error
}

func (e *WriteError) Error() string { return fmt.Sprintf("%s cannot be written: %v", e.Path, e.Err) }
func (e *WriteError) Unwrap() error { return e.Err }

// UnsoundError is a cut file that was not released, because it does not equal the model or breaks a rule of cut files. It
// is the tool's or the service's fault, never the job's.
type UnsoundError struct {
	File string
	Why  string
}

func (e *UnsoundError) Error() string {
	return fmt.Sprintf("cut file %s is not released: %s; nothing was written, please report it with the job", e.File, e.Why)
}
