//go:build !linux

package both_test

import "time"

// threadTime is not known here: work is counted on Linux alone.
func threadTime() time.Duration { return 0 }
