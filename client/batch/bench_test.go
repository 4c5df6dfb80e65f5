//go:build linux

package batch

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"lugwright/client/family"
	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// benchLoads are ten loads in as many directions, as a mount sees them.
func benchLoads(n int, one func(i int) string) string {
	out := "loads:\n"
	for i := range n {
		out += fmt.Sprintf("  - {case: A, state: s%d, force: {%s}}\n", i, one(i))
	}
	return out
}

const benchHead = "family: bench\nbasis: AISC 360-22\nmethod: ASD\ncases: {A: {level: service, source: own}}\nhand: left\n"

// benchFamilies are a clevis under ten loads and a cheap plate under one.
var benchFamilies = map[string]string{
	"clevis": benchHead + "kind: clevis\n" + benchLoads(10, func(i int) string {
		return fmt.Sprintf("x: 0 N, y: %d N, z: %d N", 800*(5-i), -1000*(i+1))
	}) + "grid:\n  ear_thickness: {from: 8 mm, to: 15.9 mm, step: 0.1 mm}\n  ear_width: {from: 90 mm, to: 109 mm, step: 1 mm}\n",
	"keeper-plate": benchHead + "kind: keeper-plate\n" + benchLoads(1, func(int) string { return "x: 0 N, y: 3 kN, z: 0 N" }) +
		"grid:\n  thickness: {from: 5 mm, to: 12.99 mm, step: 0.01 mm}\n  width: {from: 61 mm, to: 69.9 mm, step: 0.1 mm}\n",
}

// benchVariants is how many of each one round takes.
var benchVariants = map[string]int64{"clevis": 128, "keeper-plate": 4096}

// cpu is what this process and, by their number, others have used.
func cpu(b *testing.B, pid int) time.Duration {
	if pid == 0 {
		var u syscall.Rusage
		if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
			b.Fatal(err)
		}
		return time.Duration(u.Utime.Nano() + u.Stime.Nano())
	}
	src, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		b.Skip("CPU time of other processes is read from /proc")
	}
	fields := strings.Fields(string(src[strings.LastIndexByte(string(src), ')')+1:]))
	user, _ := strconv.Atoi(fields[11])
	system, _ := strconv.Atoi(fields[12])
	return time.Duration(user+system) * 10 * time.Millisecond
}

// service starts one service in a process of its own.
func service(b *testing.B, name string) (addr string, pid int) {
	program := filepath.Join(b.TempDir(), name)
	if out, err := exec.Command("go", "build", "-o", program, "../../services/cmd/"+name).CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	cmd := exec.Command(program)
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		b.Fatal(err)
	}
	return strings.TrimSpace(line), cmd.Process.Pid
}

// direct builds and checks by the libraries, in as many goroutines as cores.
func direct(b *testing.B, f *family.Family) {
	all, bases, q := kinds.All(), basis.All(), question(f.Job)
	var wait sync.WaitGroup
	cores := int64(runtime.GOMAXPROCS(0))
	for k := range cores {
		wait.Go(func() {
			for id := 1 + k; id <= f.Count; id += cores {
				v, err := f.At(id)
				if err != nil {
					b.Error(err)
					return
				}
				bracket, err := geometry.Build(all, geometry.Request{Kind: f.Kind.Name, Name: "variant", Hand: f.Brackets[0].Hand, Params: v.Params})
				if err != nil {
					continue
				}
				if bracket = f.Shop.Finished(bracket); f.Shop.Broken(bracket) != nil {
					continue
				}
				if _, err := strength.Run(bases[0], bracket, q.Cases, q.Options); err != nil {
					b.Error(err)
				}
			}
		})
	}
	wait.Wait()
}

// piped sends a family through the services and writes its results.
func piped(b *testing.B, c *dial.Client, f *family.Family) {
	r, err := Create(filepath.Join(b.TempDir(), fmt.Sprint(time.Now().UnixNano())), f, "bench", 10)
	if err == nil {
		err = Run(b.Context(), Input{Client: c, Family: f, Take: r.Take})
	}
	if err == nil {
		err = r.Finish()
	}
	if err != nil {
		b.Fatal(err)
	}
}

// BenchmarkFamily is one family by direct library calls, through both services in this process, and through two server processes on loopback, results written:
// throughput as a part of that of the direct calls, and CPU time a variant.
func BenchmarkFamily(b *testing.B) {
	geometryAddr, geometryPID := service(b, "geometryd")
	strengthAddr, strengthPID := service(b, "strengthd")
	near := services(b)
	far, err := dial.Remote(geometryAddr, strengthAddr, dial.Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer far.Close()
	for kind, src := range benchFamilies {
		b.Run(kind, func(b *testing.B) {
			f := read(b, near, src, "")
			f.Count = min(f.Count, benchVariants[kind])
			runtime.GC()
			var inLibrary, inProcess, onLoopback, cpuLibrary, cpuNear, client, geometries, strengths time.Duration
			timed := func(wall, own *time.Duration, do func()) {
				began, used := time.Now(), cpu(b, 0)
				do()
				*wall += time.Since(began)
				*own += cpu(b, 0) - used
			}
			for b.Loop() {
				timed(&inLibrary, &cpuLibrary, func() { direct(b, f) })
				timed(&inProcess, &cpuNear, func() { piped(b, near, f) })
				g, s := cpu(b, geometryPID), cpu(b, strengthPID)
				timed(&onLoopback, &client, func() { piped(b, far, f) })
				geometries += cpu(b, geometryPID) - g
				strengths += cpu(b, strengthPID) - s
			}
			n := float64(b.N) * float64(f.Count)
			each := func(d time.Duration) float64 { return float64(d.Nanoseconds()) / 1000 / n }
			b.ReportMetric(n/inProcess.Seconds(), "variants/s")
			b.ReportMetric(n/onLoopback.Seconds(), "tcp-variants/s")
			b.ReportMetric(float64(inLibrary)/float64(inProcess), "of-direct")
			b.ReportMetric(float64(inLibrary)/float64(onLoopback), "tcp-of-direct")
			b.ReportMetric(float64(cpuLibrary)/float64(cpuNear), "cpu-of-direct")
			b.ReportMetric(float64(cpuLibrary)/float64(client+geometries+strengths), "tcp-cpu-of-direct")
			b.ReportMetric(each(cpuLibrary), "direct-cpu-µs")
			b.ReportMetric(each(cpuNear), "cpu-µs")
			b.ReportMetric(each(client), "client-cpu-µs")
			b.ReportMetric(each(geometries), "geometry-cpu-µs")
			b.ReportMetric(each(strengths), "strength-cpu-µs")
		})
	}
}

// BenchmarkGrowth runs the built programs over ten thousand variants of a cheap plate and over as many as LUGWRIGHT_VARIANTS says:
// time a variant and peak memory of each process against those of the small run.
func BenchmarkGrowth(b *testing.B) {
	large, err := strconv.Atoi(os.Getenv("LUGWRIGHT_VARIANTS"))
	if err != nil {
		b.Skip("minutes: LUGWRIGHT_VARIANTS says how many variants, such as 100000")
	}
	dir := b.TempDir()
	programs := map[string]string{"lugwright": "../cmd/lugwright", "geometryd": "../../services/cmd/geometryd", "strengthd": "../../services/cmd/strengthd"}
	for name, path := range programs {
		if out, err := exec.Command("go", "build", "-o", filepath.Join(dir, name), path).CombinedOutput(); err != nil {
			b.Fatalf("%v\n%s", err, out)
		}
	}
	for b.Loop() {
		small, smallTime := grown(b, dir, 10_000)
		big, bigTime := grown(b, dir, large)
		b.ReportMetric(float64(bigTime)/float64(smallTime)/(float64(large)/10_000), "time-ratio/variant")
		for name := range programs {
			b.ReportMetric(float64(big[name])/float64(small[name]), name+"-memory-ratio")
			b.ReportMetric(float64(big[name])/1024, name+"-MiB")
		}
		b.ReportMetric(float64(large)/bigTime.Seconds(), "variants/s")
	}
}

// grown runs so many variants, and gives the peak memory of each process in KiB and the client's time.
func grown(b *testing.B, dir string, n int) (map[string]int64, time.Duration) {
	family := filepath.Join(dir, fmt.Sprint(n, ".yaml"))
	src := benchHead + "kind: keeper-plate\n" + benchLoads(1, func(int) string { return "x: 0 N, y: 3 kN, z: 0 N" }) +
		fmt.Sprintf("grid:\n  thickness: {from: 5 mm, to: 5.99 mm, step: 0.01 mm}\n  width: {from: 61 mm, to: %.3f mm, step: 0.001 mm}\n", 61+float64(n/100-1)/1000)
	if err := os.WriteFile(family, []byte(src), 0o600); err != nil {
		b.Fatal(err)
	}
	start := func(name string) (*exec.Cmd, string) {
		cmd := exec.Command(filepath.Join(dir, name))
		out, err := cmd.StdoutPipe()
		if err == nil {
			err = cmd.Start()
		}
		if err != nil {
			b.Fatal(err)
		}
		line, err := bufio.NewReader(out).ReadString('\n')
		if err != nil {
			b.Fatal(err)
		}
		return cmd, strings.TrimSpace(line)
	}
	geometry, at := start("geometryd")
	strengths, checks := start("strengthd")
	out := filepath.Join(b.TempDir(), fmt.Sprint(n, time.Now().UnixNano()))
	client := exec.Command(filepath.Join(dir, "lugwright"), "batch", family, "-o", out, "--geometry", at, "--strength", checks)
	began := time.Now()
	if text, err := client.CombinedOutput(); client.ProcessState.ExitCode() > 1 {
		b.Fatalf("%v\n%s", err, text)
	}
	took := time.Since(began)
	peak := map[string]int64{}
	for name, cmd := range map[string]*exec.Cmd{"geometryd": geometry, "strengthd": strengths, "lugwright": client} {
		if cmd != client {
			cmd.Process.Signal(syscall.SIGTERM)
			cmd.Wait()
		}
		peak[name] = cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss
	}
	return peak, took
}
