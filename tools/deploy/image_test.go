package deploy

import (
	"debug/elf"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/moby/buildkit/frontend/dockerfile/instructions"
	"github.com/moby/buildkit/frontend/dockerfile/parser"
)

// file is the container file, read once.
var file = sync.OnceValues(func() ([]instructions.Stage, error) {
	f, err := os.Open(filepath.Join(root, "deploy/Containerfile"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	tree, err := parser.Parse(f)
	if err != nil {
		return nil, err
	}
	stages, _, err := instructions.Parse(tree.AST, nil)
	return stages, err
})

// an imageFile is what a stage of the container file says of the image that it ends in.
type imageFile struct {
	files      map[string]string // place in the image, by place where it was built
	entrypoint string
	uid        int64
	port       string
}

// image finds the stage of an image by its name: lugwright/geometryd:VERSION is the stage geometryd.
func image(t *testing.T, name string) imageFile {
	t.Helper()
	target, _, _ := strings.Cut(strings.TrimPrefix(name, "lugwright/"), ":")
	for _, s := range stages(t) {
		if s.Name == target {
			return read(t, s)
		}
	}
	t.Fatalf("image %s: no stage %q in the container file", name, target)
	return imageFile{}
}

func stages(t *testing.T) []instructions.Stage {
	t.Helper()
	all, err := file()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func read(t *testing.T, s instructions.Stage) imageFile {
	t.Helper()
	out := imageFile{files: map[string]string{}}
	for _, c := range s.Commands {
		switch c := c.(type) {
		case *instructions.CopyCommand:
			if c.From != "build" || len(c.SourcePaths) != 1 {
				t.Errorf("%s: %s", s.Name, c)
			}
			out.files[c.SourcePaths[0]] = c.DestPath
		case *instructions.UserCommand:
			user, _, _ := strings.Cut(c.User, ":")
			uid, err := strconv.ParseInt(user, 10, 64)
			if err != nil {
				t.Errorf("%s: user %q is no number, and there are no names in the image", s.Name, c.User)
			}
			out.uid = uid
		case *instructions.EntrypointCommand:
			if c.PrependShell || len(c.CmdLine) != 1 {
				t.Errorf("%s: %s needs a shell", s.Name, c)
			}
			out.entrypoint = c.CmdLine[0]
		case *instructions.ExposeCommand:
			out.port = c.Ports[0]
		}
	}
	return out
}

func TestImages(t *testing.T) {
	ends := map[string]string{"geometryd": "7401", "strengthd": "7402", "lugwright": ""}
	for _, s := range stages(t) {
		port, ok := ends[s.Name]
		if !ok {
			continue
		}
		delete(ends, s.Name)
		i := read(t, s)
		if s.BaseName != "scratch" || i.uid == 0 || i.port != port {
			t.Errorf("%s: from %s, as %d, on port %q", s.Name, s.BaseName, i.uid, i.port)
		}
		if i.files["/out/"+s.Name] != i.entrypoint {
			t.Errorf("%s: enters %s, which is not the program", s.Name, i.entrypoint)
		}
	}
	if len(ends) > 0 {
		t.Errorf("no stages %v", ends)
	}
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	if first := stages(t)[0]; !strings.Contains(string(mod), "\ngo "+strings.TrimPrefix(first.BaseName, "golang:")+"\n") {
		t.Errorf("builds with %s, which is not the version of go.mod", first.BaseName)
	}
}

// built runs the commands of the build stage here, with a folder of the test in the place of /out, once.
var built = sync.OnceValues(func() (string, error) {
	all, err := file()
	if err != nil {
		return "", err
	}
	out, err := os.MkdirTemp("", "lugwright-out")
	if err != nil {
		return "", err
	}
	for _, c := range all[0].Commands {
		run, ok := c.(*instructions.RunCommand)
		if !ok {
			continue
		}
		cmd := exec.Command("sh", "-c", strings.ReplaceAll(strings.Join(run.CmdLine, " "), "/out", out))
		cmd.Dir = root
		if text, err := cmd.CombinedOutput(); err != nil {
			return string(text), err
		}
	}
	return out, nil
})

func TestMain(m *testing.M) {
	status := m.Run()
	if out, err := built(); err == nil {
		os.RemoveAll(out)
	}
	os.Exit(status)
}

// unpacked is the content of an image in a folder of its own.
func unpacked(t *testing.T, name string) (dir string, i imageFile) {
	t.Helper()
	out, err := built()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	i, dir = image(t, name), t.TempDir()
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for from, to := range i.files {
		from = strings.Replace(from, "/out", out, 1)
		info, err := os.Stat(from)
		if err != nil {
			t.Fatal(err)
		}
		if info.IsDir() {
			err = os.Mkdir(filepath.Join(dir, to), 0o755)
			if err == nil && os.Getuid() == 0 {
				err = os.Chown(filepath.Join(dir, to), int(i.uid), int(i.uid))
			}
		} else {
			err = os.Link(from, filepath.Join(dir, to))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return dir, i
}

// The build command works, and what it gives needs no other file: no interpreter that would load libraries, and no libraries.
func TestStatic(t *testing.T) {
	for _, name := range []string{"geometryd", "strengthd", "lugwright"} {
		dir, i := unpacked(t, "lugwright/"+name)
		program, err := elf.Open(filepath.Join(dir, i.entrypoint))
		if err != nil {
			t.Fatal(err)
		}
		defer program.Close()
		for _, p := range program.Progs {
			if p.Type == elf.PT_INTERP || p.Type == elf.PT_DYNAMIC {
				t.Errorf("%s has a segment %s", name, p.Type)
			}
		}
		if libraries, err := program.ImportedLibraries(); err == nil && len(libraries) > 0 {
			t.Errorf("%s needs %v", name, libraries)
		}
	}
}
