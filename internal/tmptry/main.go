package main

import (
	"context"
	"fmt"
	"os"
	"runtime/pprof"
	"time"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
)

func main() {
	t0 := time.Now()
	lap := func(s string) { fmt.Fprintf(os.Stderr, "%-10s %v\n", s, time.Since(t0)); t0 = time.Now() }
	if len(os.Args) > 2 {
		f, _ := os.Create(os.Args[2])
		pprof.StartCPUProfile(f)
		defer pprof.StopCPUProfile()
	}
	n := 1
	if len(os.Args) > 2 {
		n = 300
	}
	for range n {
		c, err := dial.InProcess()
		if err != nil {
			panic(err)
		}
		lap("dial")
		ctx := context.Background()
		k, err := run.Known(ctx, c)
		if err != nil {
			panic(err)
		}
		lap("known")
		src, _ := os.ReadFile(os.Args[1])
		j, err := job.Read("job.yaml", src, k)
		if err != nil {
			panic(err)
		}
		lap("read")
		_, err = run.Job(ctx, c, j, run.Options{})
		if err != nil {
			panic(err)
		}
		lap("job")
		c.Close()
		lap("close")
	}
}
