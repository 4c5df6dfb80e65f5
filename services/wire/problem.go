package wire

import (
	"errors"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
	"lugwright/strength"
)

// Refused is an error from a service whose words are more than its field errors', or that has none.
type Refused struct {
	Message string
	Fields  part.FieldErrors // may be nil
	Whole   bool             // the service failed at the message as a whole: fewer items may pass
}

func (e *Refused) Error() string { return e.Message }

func (e *Refused) Unwrap() error {
	if e.Fields == nil {
		return nil
	}
	return e.Fields
}

// EncodeProblem writes an error that belongs to one item.
func EncodeProblem(err error) *pb.Problem {
	fields := fieldsOf(err)
	return &pb.Problem{Message: wordsOf(err, fields), Fields: encodeFields(fields)}
}

// DecodeProblem gives the error back: part.FieldErrors when that is all it was.
func DecodeProblem(m *pb.Problem) error {
	fields := decodeFields(m.GetFields())
	switch {
	case len(fields) == 0:
		return &Refused{Message: m.GetMessage()}
	case m.GetMessage() == fields.Error():
		return fields
	}
	return &Refused{Message: m.GetMessage(), Fields: fields}
}

func decodeFields(in []*pb.FieldProblem) part.FieldErrors {
	fields := make(part.FieldErrors, len(in))
	for i, f := range in {
		fields[i] = &part.FieldError{Field: f.GetField(), Found: f.GetFound(), Accept: f.GetAccept()}
	}
	return fields
}

func encodeFields(fields part.FieldErrors) []*pb.FieldProblem {
	return all(fields, func(f **part.FieldError) *pb.FieldProblem {
		return &pb.FieldProblem{Field: (*f).Field, Found: (*f).Found, Accept: (*f).Accept}
	})
}

// fieldsOf finds the field errors inside an error, at most maxRefused. A given out of range is a field error here.
func fieldsOf(err error) part.FieldErrors {
	var given *strength.GivenError
	if errors.As(err, &given) {
		found, accept := given.Words()
		return part.FieldErrors{{Field: "givens." + given.Given.Symbol, Found: found, Accept: accept}}
	}
	fields := part.Fields(err)
	return fields[:min(len(fields), maxRefused)]
}

// wordsOf is the whole error in words, the field errors' own where nothing else wraps them.
func wordsOf(err error, fields part.FieldErrors) string {
	switch err.(type) {
	case part.FieldErrors, *part.FieldError, *strength.GivenError:
		return fields.Error()
	}
	return err.Error()
}
