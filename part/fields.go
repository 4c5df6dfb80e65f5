package part

import (
	"errors"
	"fmt"
	"strings"
)

// FieldError is one refused field: what was found there and what would be accepted.
type FieldError struct {
	Field  string // path as a job file has it, e.g. "parameters.ear_width"
	Found  string
	Accept string
}

func (e *FieldError) Error() string { return fmt.Sprintf("%s: %s; %s", e.Field, e.Found, e.Accept) }

// FieldErrors are all refused fields of one request, in order.
type FieldErrors []*FieldError

func (e FieldErrors) Error() string {
	lines := make([]string, len(e))
	for i, f := range e {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Fields gives the field errors inside err, nil when there are none.
func Fields(err error) FieldErrors {
	var many FieldErrors
	var one *FieldError
	if errors.As(err, &many) {
		return many
	}
	if errors.As(err, &one) {
		return FieldErrors{one}
	}
	return nil
}
