//go:build unix

package pack

import (
	"io/fs"
	"syscall"
)

// writeFile writes a file by three calls of the system: an os.File of a plain file takes five more, to learn that it is one.
func writeFile(path string, data []byte) error {
	fd, err := again(func() (int, error) {
		return syscall.Open(path, syscall.O_WRONLY|syscall.O_CREAT|syscall.O_TRUNC|syscall.O_CLOEXEC, 0o666)
	})
	if err != nil {
		return &fs.PathError{Op: "open", Path: path, Err: err}
	}
	for len(data) > 0 && err == nil {
		var n int
		n, err = again(func() (int, error) { return syscall.Write(fd, data) })
		data = data[max(n, 0):]
	}
	// What is written last may be refused only now.
	if e := syscall.Close(fd); err == nil && e != syscall.EINTR {
		err = e
	}
	if err != nil {
		return &fs.PathError{Op: "write", Path: path, Err: err}
	}
	return nil
}

// again makes a call once more while a signal interrupts it.
func again(call func() (int, error)) (n int, err error) {
	for {
		if n, err = call(); err != syscall.EINTR {
			return n, err
		}
	}
}
