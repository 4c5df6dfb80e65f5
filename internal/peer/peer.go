// Package peer finds the outside programs that tests compare with. It never installs anything, and nothing but tests
// imports it.
//
// A test whose peer is missing, or that asks of the machine what it cannot do, is skipped, unless LUGWRIGHT_PEERS=require
// is set: then it fails, so that a machine that is meant to have every peer cannot pass by skipping.
package peer

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Need returns the path of an interpreter that can import all the modules. A system's own python3 comes first: its
// packaged modules are often invisible to another python3 on the path.
func Need(t testing.TB, interpreter string, modules ...string) string {
	t.Helper()
	for _, at := range []string{"/usr/bin/" + interpreter, interpreter} {
		path, err := exec.LookPath(at)
		if err == nil && exec.Command(path, "-c", "import "+strings.Join(append([]string{"sys"}, modules...), ", ")).Run() == nil {
			return path
		}
	}
	missing(t, interpreter+" with "+strings.Join(modules, ", "))
	return ""
}

// NeedCommand returns the path of a command.
func NeedCommand(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, name)
	}
	return path
}

// Unable ends a test of what this machine cannot do as one whose peer is missing.
func Unable(t testing.TB, what string, err error) {
	t.Helper()
	without(t, fmt.Sprintf("%s: %v", what, err))
}

func missing(t testing.TB, what string) {
	t.Helper()
	without(t, what+" is not installed")
}

func without(t testing.TB, why string) {
	t.Helper()
	if os.Getenv("LUGWRIGHT_PEERS") == "require" {
		t.Fatalf("%s, and LUGWRIGHT_PEERS=require asks for it", why)
	}
	t.Skip(why)
}
