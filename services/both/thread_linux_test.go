package both_test

import (
	"syscall"
	"time"
)

// threadTime is how long this thread has worked.
func threadTime() time.Duration {
	const ofThread = 1 // RUSAGE_THREAD, getrusage(2)
	var u syscall.Rusage
	if syscall.Getrusage(ofThread, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
