package pack

// This file writes a folder that is there whole or not at all.

import (
	"cmp"
	"context"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
)

// unfinished is in the name of the folder in which a pack is made. What a crash leaves behind bears it and can be deleted.
const unfinished = ".lugwright-unfinished-"

// target is where a pack goes.
type target struct {
	name   string // as the user wrote it
	path   string
	exists bool
	mode   fs.FileMode // of the empty folder that is there
}

// claim looks whether a pack can go to dir, and changes nothing.
func claim(dir string) (*target, error) {
	if dir == "" {
		return nil, &WriteError{"the pack", errors.New("no folder is named")}
	}
	path, err := filepath.Abs(dir)
	if err != nil {
		return nil, &WriteError{dir, err}
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	t := &target{name: dir, path: path}
	switch info, err := os.Stat(path); {
	case errors.Is(err, fs.ErrNotExist):
		return t, t.parent()
	case err != nil:
		return nil, &WriteError{dir, plain(err)}
	case !info.IsDir():
		return nil, &WriteError{dir, errors.New("it is a file; a folder that does not exist or is empty is accepted")}
	default:
		t.exists, t.mode = true, info.Mode().Perm()
		return t, t.empty(info)
	}
}

// parent refuses a folder whose parent is not there.
func (t *target) parent() error {
	above := filepath.Dir(t.path)
	switch info, err := os.Stat(above); {
	case errors.Is(err, fs.ErrNotExist):
		return &WriteError{t.name, errors.New("the folder " + above + " does not exist; make it first")}
	case err != nil:
		return &WriteError{t.name, plain(err)}
	case !info.IsDir():
		return &WriteError{t.name, errors.New(above + " is not a folder")}
	}
	return nil
}

// empty refuses a folder with something in it, and the one the user stands in: it is replaced, and would be gone from under
// his feet.
func (t *target) empty(info fs.FileInfo) error {
	entries, err := os.ReadDir(t.path)
	if err != nil {
		return &WriteError{t.name, plain(err)}
	}
	if len(entries) > 0 {
		return &NotEmptyError{t.name}
	}
	if here, err := os.Stat("."); err == nil && os.SameFile(here, info) {
		return &WriteError{t.name, errors.New("it is the current folder; name a folder in it")}
	}
	return nil
}

// putFile writes one file; several are called at a time.
type putFile func(path string, data []byte) error

// release writes the files, several at a time, beside the target and renames. Whatever goes wrong, nothing of them stays.
func (t *target) release(ctx context.Context, files []file, put putFile) error {
	room, err := os.MkdirTemp(filepath.Dir(t.path), filepath.Base(t.path)+unfinished)
	if err != nil {
		return &WriteError{t.name, plain(err)}
	}
	defer os.RemoveAll(room)
	// A folder within, since the room itself is closed to other users.
	made := filepath.Join(room, "pack")
	if err := t.fill(ctx, made, files, put); err != nil {
		return err
	}
	if t.exists {
		if err := os.Remove(t.path); err != nil {
			return t.taken(err)
		}
	}
	if err := os.Rename(made, t.path); err != nil {
		return t.taken(err)
	}
	return nil
}

func (t *target) fill(ctx context.Context, made string, files []file, put putFile) error {
	if err := os.Mkdir(made, 0o777); err != nil {
		return &WriteError{t.name, plain(err)}
	}
	if t.exists {
		if err := os.Chmod(made, t.mode); err != nil {
			return &WriteError{t.name, plain(err)}
		}
	}
	for _, folder := range folders(files) {
		if err := os.MkdirAll(filepath.Join(made, filepath.FromSlash(folder)), 0o777); err != nil {
			return &WriteError{filepath.Join(t.name, folder), plain(err)}
		}
	}
	err := together(len(files), func(i int) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		name := filepath.FromSlash(files[i].name)
		if err := put(filepath.Join(made, name), files[i].data); err != nil {
			return &WriteError{filepath.Join(t.name, name), plain(err)}
		}
		return nil
	})
	return cmp.Or(err, ctx.Err())
}

// folders are those of the files, in the order of their names.
func folders(files []file) []string {
	var out []string
	for _, f := range files {
		out = append(out, path.Dir(f.name))
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// taken is why the finished pack cannot go to its place: most likely somebody put something there meanwhile.
func (t *target) taken(err error) error {
	if entries, e := os.ReadDir(t.path); e == nil && len(entries) > 0 {
		return &NotEmptyError{t.name}
	}
	return &WriteError{t.name, plain(err)}
}

// plain drops the call and the path inside the unfinished folder, which mean nothing to a user.
func plain(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
