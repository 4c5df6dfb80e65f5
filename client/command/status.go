package command

// This file turns errors into messages and exit status. It is the only place that knows both.

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"lugwright/client/batch"
	"lugwright/client/family"
	"lugwright/client/job"
	"lugwright/client/pack"
	"lugwright/services/dial"
)

// Exit status, as documented in the README.
const (
	Done        = 0   // all checks pass
	Failed      = 1   // a check fails or is outside the rule
	Misused     = 2   // usage or job error
	Unreachable = 3   // a service could not be reached
	NotWritten  = 4   // output could not be written
	Interrupted = 130 // stopped by the user
)

// A usageError is a wrong command line.
type usageError struct{ text, hint string }

func (e *usageError) Error() string { return e.text }

// An outputError is a file or a stream that could not be written.
type outputError struct{ err error }

func (e *outputError) Error() string { return e.err.Error() }
func (e *outputError) Unwrap() error { return e.err }

// A verdictError is a job that does not pass. Its text is the reason in one line.
type verdictError struct{ text string }

func (e *verdictError) Error() string { return e.text }

// status gives the exit status of an error and, where there is a next step, a hint. Of a run that was stopped early it is how to go on.
func status(err error) (code int, hint string) {
	var stopped *stoppedError
	if errors.As(err, &stopped) {
		code, _ = statusOf(err)
		return code, stopped.hint
	}
	return statusOf(err)
}

func statusOf(err error) (code int, hint string) {
	var (
		verdict     *verdictError
		usage       *usageError
		output      *outputError
		unreachable *dial.UnreachableError
		fields      job.Errors
		caseFile    *caseError
		occupied    *pack.NotEmptyError
		unwritable  *pack.WriteError
		unsound     *pack.UnsoundError
		held        *batch.OccupiedError
		unkept      *batch.WriteError
		other       *batch.OtherError
		changed     *family.ChangedError
	)
	switch {
	case err == nil:
		return Done, ""
	case errors.As(err, &verdict):
		return Failed, ""
	case errors.Is(err, context.Canceled):
		return Interrupted, ""
	case errors.As(err, &unreachable):
		if unreachable.Addr == dial.InThisProcess {
			return Unreachable, "--timeout gives a service longer to answer"
		}
		return Unreachable, "`lugwright serve` starts both services; without --geometry and --strength they run in this process"
	case errors.As(err, &occupied):
		return NotWritten, "choose a folder that does not exist or is empty"
	case errors.As(err, &held) && held.Results:
		return NotWritten, "--resume goes on with them; or choose a folder that does not exist or is empty"
	case errors.As(err, &held):
		return NotWritten, "choose a folder that does not exist or is empty"
	case errors.As(err, &other):
		return NotWritten, "choose another folder; these results stay as they are"
	case errors.As(err, &unkept):
		return NotWritten, ""
	case errors.As(err, &output), errors.As(err, &unwritable), errors.As(err, &unsound):
		return NotWritten, ""
	case errors.As(err, &usage):
		return Misused, usage.hint
	case errors.As(err, &changed):
		return Misused, "leave the file alone until the run is over, or give it a copy"
	case errors.As(err, &caseFile):
		return Misused, "docs/case-files.md shows the form of a case file"
	case errors.As(err, &fields):
		return Misused, fieldHint(fields)
	}
	return Misused, ""
}

// fieldHint names the list that helps with a refused field of a job: the kinds for a kind and its parameters, the materials where one is
// refused. Elsewhere the message says it all.
func fieldHint(fields job.Errors) string {
	lists := ""
	for _, e := range fields {
		if strings.Contains(e.Accept, "lugwright ") {
			continue
		}
		if last := e.Field[strings.LastIndex(e.Field, ".")+1:]; last == "material" || strings.HasSuffix(last, "_material") {
			return "`lugwright materials` lists materials with their sources"
		}
		switch {
		case e.See != "":
			lists = "`" + e.See + "` lists parameters with their units and ranges"
		case lists == "" && strings.HasPrefix(e.Field, "brackets[") && strings.HasSuffix(e.Field, ".kind"):
			lists = "`lugwright kinds` lists the kinds"
		}
	}
	return lists
}

// report prints an error and gives its exit status.
func report(w io.Writer, err error, asJSON bool) int {
	code, hint := status(err)
	if code == Done {
		return code
	}
	if asJSON {
		writeJSON(w, docOfError(err, code, hint)) // nothing is left to tell, where standard error cannot be written
		return code
	}
	switch code {
	case Failed:
		fmt.Fprintln(w, "lugwright: "+err.Error())
	case Interrupted:
		fmt.Fprintln(w, "lugwright: interrupted")
	default:
		for _, line := range strings.Split(err.Error(), "\n") {
			fmt.Fprintln(w, "lugwright: error: "+line)
		}
	}
	if hint != "" {
		fmt.Fprintln(w, "lugwright: hint: "+hint)
	}
	return code
}
