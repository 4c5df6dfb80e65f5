//go:build unix

package batch

import (
	"os"
	"syscall"
)

// lock keeps a second run from a file; it ends with the process, however that ends.
func lock(f *os.File) error { return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) }
