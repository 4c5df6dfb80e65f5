package pack

// What is refused, and that nothing is left behind.

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
)

func TestFolders(t *testing.T) {
	in := tiny(t, strength.Pass)
	root := t.TempDir()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(os.WriteFile(filepath.Join(root, "file"), []byte("mine"), 0o644))
	must(os.Mkdir(filepath.Join(root, "full"), 0o755))
	must(os.WriteFile(filepath.Join(root, "full", "mine"), []byte("mine"), 0o644))
	must(os.Mkdir(filepath.Join(root, "here"), 0o755))
	before := tree(t, root)
	t.Chdir(filepath.Join(root, "here"))
	for dir, says := range map[string]string{
		"":                                  "no folder is named",
		filepath.Join(root, "full"):         "is not empty; a folder that does not exist or is empty is accepted",
		filepath.Join(root, "file"):         "it is a file",
		filepath.Join(root, "file", "out"):  "not a directory",
		filepath.Join(root, "none", "out"):  "does not exist; make it first",
		".":                                 "it is the current folder",
		filepath.Join(root, "here") + "/./": "it is the current folder",
	} {
		err := Write(context.Background(), dir, in)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v; need %q", dir, err, says)
		}
		var full *NotEmptyError
		var wrong *WriteError
		if !errors.As(err, &full) && !errors.As(err, &wrong) {
			t.Errorf("%q: %T", dir, err)
		}
	}
	after := tree(t, root)
	if len(after) != len(before) || after["full/mine"] != "mine" || after["file"] != "mine" {
		t.Errorf("changed: %v", sorted(after))
	}
	empty(t, filepath.Join(root, "here"))
}

func TestEmptyFolderIsTaken(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "out")
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(root, "link")
	if err := os.Symlink(dir, link); err != nil {
		t.Fatal(err)
	}
	if err := Write(context.Background(), link, tiny(t, strength.Pass)); err != nil {
		t.Fatal(err)
	}
	if _, ok := tree(t, dir)["README.txt"]; !ok {
		t.Error("nothing in the folder behind the link")
	}
	if info, _ := os.Stat(dir); info.Mode().Perm() != 0o700 {
		t.Errorf("the folder's mode became %v", info.Mode())
	}
	entries, _ := os.ReadDir(root)
	if len(entries) != 2 {
		t.Errorf("left behind: %v", entries)
	}
}

// The disk fills up, or the user interrupts, at every file in turn.
func TestNothingHalfWritten(t *testing.T) {
	files, err := assemble(context.Background(), tiny(t, strength.Pass))
	if err != nil {
		t.Fatal(err)
	}
	root := t.TempDir()
	release := func(ctx context.Context, put putFile) error {
		to, err := claim(filepath.Join(root, "out"))
		if err != nil {
			t.Fatal(err)
		}
		return to.release(ctx, files, put)
	}
	for n := range files {
		ctx, cancel := context.WithCancel(context.Background())
		var written atomic.Int64
		err := release(ctx, func(path string, data []byte) error {
			if written.Add(1) > int64(n) {
				os.WriteFile(path, data[:len(data)/2], 0o644)
				return &fs.PathError{Op: "write", Path: path, Err: syscall.ENOSPC}
			}
			return writeFile(path, data)
		})
		var wrong *WriteError
		if !errors.As(err, &wrong) || !errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), unfinished) {
			t.Fatalf("full at file %d: %v", n, err)
		}
		empty(t, root)

		written.Store(0)
		err = release(ctx, func(path string, data []byte) error {
			if written.Add(1) > int64(n) {
				cancel()
			}
			return writeFile(path, data)
		})
		cancel()
		if !errors.Is(err, context.Canceled) {
			t.Fatalf("interrupted at file %d: %v", n, err)
		}
		empty(t, root)
	}
}

// What a crash would leave can be told from a pack by its name.
func TestUnfinishedName(t *testing.T) {
	root := t.TempDir()
	var seen atomic.Bool
	err := write(context.Background(), filepath.Join(root, "out"), tiny(t, strength.Pass), func(path string, data []byte) error {
		if name, _ := filepath.Rel(root, path); strings.HasPrefix(name, "out.lugwright-unfinished-") {
			seen.Store(true)
		}
		return writeFile(path, data)
	})
	if err != nil || !seen.Load() {
		t.Errorf("%v, name seen: %t", err, seen.Load())
	}
}

// Somebody puts something into the folder while the pack is made.
func TestFolderTakenMeanwhile(t *testing.T) {
	for _, exists := range []bool{true, false} {
		root := t.TempDir()
		dir := filepath.Join(root, "out")
		if exists {
			if err := os.Mkdir(dir, 0o755); err != nil {
				t.Fatal(err)
			}
		}
		err := write(context.Background(), dir, tiny(t, strength.Pass), func(path string, data []byte) error {
			os.MkdirAll(dir, 0o755)
			os.WriteFile(filepath.Join(dir, "theirs"), []byte("theirs"), 0o644)
			return writeFile(path, data)
		})
		var full *NotEmptyError
		if !errors.As(err, &full) {
			t.Errorf("exists %t: %v", exists, err)
		}
		if files := tree(t, root); len(files) != 1 || files["out/theirs"] != "theirs" {
			t.Errorf("exists %t: %v", exists, sorted(files))
		}
	}
}

// failing breaks the n-th call.
type failing struct {
	Services
	mu   sync.Mutex
	left int
}

var errBroken = errors.New("the service broke")

func (f *failing) broken() bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.left--
	return f.left < 0
}

func (f *failing) Cards(ctx context.Context) ([]strength.Card, error) {
	if f.broken() {
		return nil, errBroken
	}
	return f.Services.Cards(ctx)
}

func (f *failing) Materials(ctx context.Context) (*dial.Materials, error) {
	if f.broken() {
		return nil, errBroken
	}
	return f.Services.Materials(ctx)
}

func (f *failing) Export(ctx context.Context, b *part.Bracket, formats []dial.Format, style dial.CutStyle) ([][]dial.File, error) {
	if f.broken() {
		return nil, errBroken
	}
	return f.Services.Export(ctx, b, formats, style)
}

func TestServiceBreaksAtEveryCall(t *testing.T) {
	in := tiny(t, strength.Pass)
	real := in.Client
	for n := range 7 {
		root := t.TempDir()
		in.Client = &failing{Services: real, left: n}
		err := Write(context.Background(), filepath.Join(root, "out"), in)
		if n == 6 { // one of bases, one of materials, two for each of two brackets
			if err != nil {
				t.Errorf("6 calls are not enough: %v", err)
			}
			break
		}
		if !errors.Is(err, errBroken) {
			t.Errorf("call %d: %v", n, err)
		}
		empty(t, root)
	}
}

// spoiled changes what the geometry service is asked for or answers, of cut files.
type spoiled struct {
	Services
	ask    func(*part.Bracket, dial.Format) (*part.Bracket, dial.Format)
	answer func([]dial.File) []dial.File
}

func (s *spoiled) Export(ctx context.Context, b *part.Bracket, formats []dial.Format, style dial.CutStyle) ([][]dial.File, error) {
	var all [][]dial.File
	for _, f := range formats {
		asked, cut := b, strings.HasPrefix(string(f), "dxf")
		if cut && s.ask != nil {
			asked, f = s.ask(b, f)
		}
		made, err := s.Services.Export(ctx, asked, []dial.Format{f}, style)
		if err != nil {
			return nil, err
		}
		if cut && s.answer != nil {
			made[0] = s.answer(made[0])
		}
		all = append(all, made[0])
	}
	return all, nil
}

// changed gives a copy of the bracket with a change to every plate.
func changed(b *part.Bracket, change func(*part.Plate)) *part.Bracket {
	c := *b
	c.Plates = append([]part.Plate(nil), b.Plates...)
	for i := range c.Plates {
		c.Plates[i].Holes = append([]part.Hole(nil), c.Plates[i].Holes...)
		change(&c.Plates[i])
	}
	return &c
}

func TestUnsoundCutFilesAreNotReleased(t *testing.T) {
	plates := func(change func(*part.Plate)) *spoiled {
		return &spoiled{ask: func(b *part.Bracket, f dial.Format) (*part.Bracket, dial.Format) { return changed(b, change), f }}
	}
	files := func(change func([]dial.File) []dial.File) *spoiled { return &spoiled{answer: change} }
	for name, s := range map[string]*spoiled{
		"inch":         {ask: func(b *part.Bracket, f dial.Format) (*part.Bracket, dial.Format) { return b, dial.DXFR2000Inch }},
		"other format": {ask: func(b *part.Bracket, f dial.Format) (*part.Bracket, dial.Format) { return b, dial.DXFR12 }},
		"a picture":    {ask: func(b *part.Bracket, f dial.Format) (*part.Bracket, dial.Format) { return b, dial.SVGPlate }},
		"smaller hole": plates(func(p *part.Plate) { p.Holes[0].CutMM *= 0.99 }),
		"moved hole":   plates(func(p *part.Plate) { p.Holes[0].Center.X += 0.01 }),
		"no hole":      plates(func(p *part.Plate) { p.Holes = nil }),
		"moved":        plates(func(p *part.Plate) { p.Outer = p.Outer.Translate(shape.Point{X: 0.01}) }),
		"finished": plates(func(p *part.Plate) {
			for i := range p.Holes {
				p.Holes[i].CutMM = p.Holes[i].DiaMM
			}
		}),
		"missing file": files(func(f []dial.File) []dial.File { return f[1:] }),
		"mixed up":     files(func(f []dial.File) []dial.File { f[0], f[1] = f[1], f[0]; return f }),
		"cut short": files(func(f []dial.File) []dial.File {
			f[0].Data = f[0].Data[:len(f[0].Data)/2]
			return f
		}),
		"empty": files(func(f []dial.File) []dial.File { f[0].Data = nil; return f }),
	} {
		in := tiny(t, strength.Pass)
		s.Services, in.Client = in.Client, s
		root := t.TempDir()
		err := Write(context.Background(), filepath.Join(root, "out"), in)
		var unsound *UnsoundError
		if !errors.As(err, &unsound) {
			t.Errorf("%s: %v", name, err)
		}
		empty(t, root)
	}
}

// A mirror image has the same area, size and hole diameters: only place tells.
func TestMirrorImageIsNoEqual(t *testing.T) {
	in := tiny(t, strength.Pass)
	p := &in.Result.Brackets[0].Part.Plates[2] // the gusset
	o := p.Shape(true)
	box := o.BBox()
	back := o.MirrorX().Translate(shape.Point{X: box.Min.X + box.Max.X})
	if err := equal(back, o); err == nil {
		t.Error("the other hand is taken for this one")
	}
	if err := equal(o.Normalize(), o); err != nil {
		t.Errorf("the same outline: %v", err)
	}
}

func TestJobErrors(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(in *Input)
		says  string
	}{
		"material": {func(in *Input) { in.Result.Brackets[0].Part.Plates[0].Material = "butter" }, `brackets[tiny-left]: ear-1 is of "butter", and no density is listed for it; a grade that`},
		"section":  {func(in *Input) { in.Result.Brackets[1].Part.Members[0].Material = "butter" }, `brackets[tiny-right]: base is of "butter"`},
		"mark":     {func(in *Input) { in.Result.Brackets[1].Part.Plates[0].Mark = "tb-l1" }, "ear-1 would be marked tb-l1 like a different piece; one mark for each distinct piece"},
		"same mark": {func(in *Input) { in.Result.Brackets[0].Part.Plates[4].Mark = "TB-L4" },
			"washer would be marked TB-L4 like a different piece"},
		"member mark": {func(in *Input) { in.Result.Brackets[1].Part.Members[0].Mark = "TB-L5" }, "base would be marked TB-L5"},
		"basis":       {func(in *Input) { in.Job.Basis = "the village smith" }, "basis: the village smith is not among the service's bases"},
	} {
		in := tiny(t, strength.Pass)
		c.spoil(&in)
		root := t.TempDir()
		err := Write(context.Background(), filepath.Join(root, "out"), in)
		if part.Fields(err) == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v; need %q", name, err, c.says)
		}
		empty(t, root)
	}
}

func TestCancelledBeforeItBegins(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	root := t.TempDir()
	if err := Write(ctx, filepath.Join(root, "out"), tiny(t, strength.Pass)); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	empty(t, root)
}
