// Command vuln holds the module in the current folder against Go's vulnerability database without a network: the database is the module golang.org/x/vulndb at a
// pinned version, which the module proxy serves and the checksum database vouches for; govulncheck is pinned in this module's go.mod.
//
//	go run -C tools/vuln . ../..
package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// database is the state of what is known. A newer one is a change of this line.
const database = "golang.org/x/vulndb@v0.0.0-20261105234957-e22db6528018"

// entry is what the index needs of an entry of the database, as https://ossf.github.io/osv-schema/ has it.
type entry struct {
	ID       string    `json:"id"`
	Modified time.Time `json:"modified"`
	Affected []struct {
		Package struct {
			Name string `json:"name"`
		} `json:"package"`
		Ranges []struct {
			Events []map[string]string `json:"events"`
		} `json:"ranges"`
	} `json:"affected"`
}

// module and reference are lines of index/modules.json, as https://go.dev/doc/security/vuln/database has it.
type module struct {
	Path  string      `json:"path"`
	Vulns []reference `json:"vulns"`
}

type reference struct {
	ID       string    `json:"id"`
	Modified time.Time `json:"modified"`
	Fixed    string    `json:"fixed,omitempty"`
}

func main() {
	err := run(os.Args[1:])
	var exit *exec.ExitError
	switch {
	case err == nil:
	case asExit(err, &exit):
		os.Exit(exit.ExitCode())
	default:
		fmt.Fprintln(os.Stderr, "vuln:", err)
		os.Exit(2)
	}
}

func asExit(err error, to **exec.ExitError) bool {
	e, ok := err.(*exec.ExitError)
	*to = e
	return ok
}

func run(args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("one argument: the folder of the module to check")
	}
	source, err := downloaded()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "vulndb")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if err := write(dir, filepath.Join(source, "data", "osv")); err != nil {
		return err
	}
	toolchain, err := toolchain(args[0])
	if err != nil {
		return err
	}
	// The standard library that counts is that of releases.
	tool := exec.Command("go", "tool", "govulncheck", "-db", "file://"+dir, "-C", args[0], "./...")
	tool.Env = append(os.Environ(), "GOTOOLCHAIN="+toolchain)
	tool.Stdout, tool.Stderr = os.Stdout, os.Stderr
	return tool.Run()
}

// downloaded is the folder of the database in the module cache.
func downloaded() (string, error) {
	out, err := exec.Command("go", "mod", "download", "-json", database).Output()
	if err != nil {
		return "", fmt.Errorf("%s: %w %s", database, err, out)
	}
	var m struct{ Dir string }
	return m.Dir, cmp.Or(json.Unmarshal(out, &m), nil)
}

// toolchain is what a module's releases are built with.
func toolchain(dir string) (string, error) {
	src, err := os.ReadFile(filepath.Join(dir, "go.mod"))
	if err != nil {
		return "", err
	}
	for line := range strings.Lines(string(src)) {
		if version, ok := strings.CutPrefix(line, "toolchain "); ok {
			return strings.TrimSpace(version), nil
		}
	}
	return "", fmt.Errorf("%s/go.mod names no toolchain", dir)
}

// write lays the entries out as a database: ID/GO-2024-0001.json, index/modules.json, index/db.json.
func write(dir, entries string) error {
	files, err := filepath.Glob(filepath.Join(entries, "GO-*.json"))
	if err != nil || len(files) == 0 {
		return fmt.Errorf("no entries in %s (%v)", entries, err)
	}
	var latest time.Time
	modules := map[string][]reference{}
	for _, d := range []string{"ID", "index"} {
		if err := os.Mkdir(filepath.Join(dir, d), 0o700); err != nil {
			return err
		}
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		var e entry
		if err := json.Unmarshal(src, &e); err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.Symlink(file, filepath.Join(dir, "ID", e.ID+".json")); err != nil {
			return err
		}
		if e.Modified.After(latest) {
			latest = e.Modified
		}
		for _, a := range e.Affected {
			r := reference{ID: e.ID, Modified: e.Modified}
			for _, span := range a.Ranges {
				for _, event := range span.Events {
					r.Fixed = cmp.Or(event["fixed"], r.Fixed)
				}
			}
			modules[a.Package.Name] = append(modules[a.Package.Name], r)
		}
	}
	var list []module
	for path, vulns := range modules {
		list = append(list, module{path, vulns})
	}
	slices.SortFunc(list, func(a, b module) int { return strings.Compare(a.Path, b.Path) })
	return cmp.Or(save(dir, "modules", list), save(dir, "db", map[string]time.Time{"modified": latest}))
}

func save(dir, name string, v any) error {
	out, err := json.Marshal(v)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "index", name+".json"), out, 0o600)
}
