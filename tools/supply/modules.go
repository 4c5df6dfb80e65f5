package main

// Which modules are linked into the programs, and under which licence each is.

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/google/licensecheck"
)

// module is a dependency, or Go's standard library.
type module struct {
	Path, Version, Dir string
	linked             bool // into one of the programs; else tests alone need it
	licence            string
	owners             []string // the copyright lines
	text               string
	notice             string
}

// modules lists what the module in a folder needs, by path.
func modules(dir string) ([]*module, error) {
	linked, err := listed(dir)
	if err != nil {
		return nil, err
	}
	all, err := listed(dir, "-test")
	if err != nil {
		return nil, err
	}
	std, err := standard(dir)
	if err != nil {
		return nil, err
	}
	out := []*module{std}
	for path, m := range all {
		_, m.linked = linked[path]
		out = append(out, m)
	}
	slices.SortFunc(out, func(a, b *module) int { return strings.Compare(a.Path, b.Path) })
	for _, m := range out {
		err = cmp.Or(err, m.read())
	}
	return out, err
}

// standard is Go's standard library, of the version that the module's releases are built with.
func standard(dir string) (*module, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	src, err := os.ReadFile(filepath.Join(dir, "go.mod"))
	if err != nil {
		return nil, err
	}
	m := &module{Path: "std", Dir: strings.TrimSpace(string(root)), linked: true}
	for line := range strings.Lines(string(src)) {
		if version, ok := strings.CutPrefix(line, "toolchain "); ok {
			m.Version = strings.TrimSpace(version)
		}
	}
	return m, nil
}

// listed gives the modules of all packages that are built, by path.
func listed(dir string, flags ...string) (map[string]*module, error) {
	cmd := exec.Command("go", append(append([]string{"list", "-deps", "-json=Module"}, flags...), "./...")...)
	cmd.Dir, cmd.Stderr = dir, os.Stderr
	if len(flags) == 0 {
		cmd.Args = slices.Concat(cmd.Args[:len(cmd.Args)-1], []string{"./client/cmd/...", "./services/cmd/..."})
	}
	src, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	out := map[string]*module{}
	for d := json.NewDecoder(strings.NewReader(string(src))); ; {
		var p struct{ Module *module }
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return out, nil
		case err != nil:
			return nil, err
		case p.Module != nil && p.Module.Version != "":
			out[p.Module.Path] = p.Module
		}
	}
}

// owner is a line that says who holds the rights.
var owner = regexp.MustCompile(`(?im)^\W*(copyright (\(c\)|©|\d).*\S)\s*$`)

// read finds the licence of a module. One that is not known for sure is an error: somebody has to look at it.
func (m *module) read() error {
	for _, name := range []string{"LICENSE", "LICENSE.txt", "LICENSE.md", "LICENCE", "COPYING", "License.txt"} {
		src, err := os.ReadFile(filepath.Join(m.Dir, name))
		if err != nil {
			continue
		}
		found := licensecheck.Scan(src)
		ids := map[string]bool{}
		for _, l := range found.Match {
			ids[l.ID] = true
		}
		if len(ids) == 0 || found.Percent < 75 {
			return fmt.Errorf("%s: %s is no licence that is known (%.0f %% of it)", m.Path, name, found.Percent)
		}
		for id := range ids {
			m.licence = strings.Join(slices.Sorted(slices.Values(append(strings.FieldsFunc(m.licence, func(r rune) bool { return r == ',' }), id))), ",")
		}
		m.licence = strings.ReplaceAll(m.licence, ",", " AND ")
		m.text = strings.TrimSpace(strings.ReplaceAll(string(src), "\r\n", "\n"))
		for _, line := range owner.FindAllStringSubmatch(m.text, -1) {
			if !strings.Contains(line[1], "[yyyy]") && !strings.Contains(line[1], "{yyyy}") {
				m.owners = append(m.owners, line[1])
			}
		}
		notice, err := os.ReadFile(filepath.Join(m.Dir, "NOTICE.txt"))
		if err != nil {
			notice, _ = os.ReadFile(filepath.Join(m.Dir, "NOTICE"))
		}
		m.notice = strings.TrimSpace(string(notice))
		return nil
	}
	return fmt.Errorf("%s: no licence in %s", m.Path, m.Dir)
}
