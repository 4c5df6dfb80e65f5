// Package runtest opens the services for tests that run jobs. It is never linked into a program.
package runtest

import (
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
)

// Services are both services in this process until the test ends, and what a job may say to them.
func Services(t testing.TB) (*dial.Client, job.Known) {
	t.Helper()
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	known, err := run.Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return c, known
}
