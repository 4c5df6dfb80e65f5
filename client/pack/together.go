package pack

// This file holds the one loop that uses every core.

import (
	"cmp"
	"runtime"
	"sync"
	"sync/atomic"
)

// together calls do for 0 to n-1, several at a time, and returns the error of the lowest number, or nil.
func together(n int, do func(i int) error) error {
	errs := make([]error, n)
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				errs[i] = do(i)
			}
		})
	}
	all.Wait()
	return cmp.Or(errs...)
}
