package main

import (
	"bufio"
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"lugwright/internal/peer"
)

// The built program ends with the status that its package gives, and stops when it is told to.
func TestProgram(t *testing.T) {
	program := programOf(t)
	out, status := run(t, program, "version")
	if status != 0 || !strings.HasPrefix(out, "lugwright ") {
		t.Errorf("version: status %d, %q", status, out)
	}
	if out, status = run(t, program, "check", "nowhere.yaml"); status != 2 || !strings.Contains(out, "lugwright: error: nowhere.yaml: no such file") {
		t.Errorf("no job: status %d, %q", status, out)
	}
	interrupted(t, program)
	completes(t, program)
}

func run(t *testing.T, program string, args ...string) (output string, status int) {
	t.Helper()
	out, err := exec.Command(program, args...).CombinedOutput()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	if exit != nil {
		status = exit.ExitCode()
	}
	return string(out), status
}

func interrupted(t *testing.T, program string) {
	serve := exec.Command(program, "serve")
	out, err := serve.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := serve.Start(); err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(out).ReadString('\n'); err != nil || !strings.HasPrefix(line, "127.0.0.1:") {
		t.Errorf("serve prints %q: %v", line, err)
	}
	if err := serve.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := serve.Wait(); err != nil {
		t.Errorf("serve, told to stop: %v", err)
	}
}

// completes asks bash for the verbs that begin with "vers".
func completes(t *testing.T, program string) {
	bash := peer.NeedCommand(t, "bash")
	script := `source <(lugwright completion bash); COMP_WORDS=(lugwright vers); COMP_CWORD=1; _lugwright; echo "${COMPREPLY[@]}"`
	cmd := exec.Command(bash, "-c", script)
	cmd.Env = append(os.Environ(), "PATH="+filepath.Dir(program)+string(os.PathListSeparator)+os.Getenv("PATH"))
	if out, err := cmd.CombinedOutput(); err != nil || string(bytes.TrimSpace(out)) != "version" {
		t.Errorf("completion gives %q: %v", out, err)
	}
}
