//go:build linux

package main

// What one variant costs each process, and what one and two replicas of the strength service do of it on two cores. It measures and judges nothing, so it runs
// only when it is told for how many variants:
//
//	LUGWRIGHT_SCALING=20000 go test -run Scaling -v ./client/cmd/lugwright
//
// docs/several-machines.md says what follows from the numbers.

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"lugwright/internal/peer"
)

// tick is the unit of CPU time in /proc (proc(5): sysconf(_SC_CLK_TCK), which is 100 on Linux).
const tick = 10 * time.Millisecond

// scalingFamily is clevises under ten loads, 50 thicknesses of so many widths.
func scalingFamily(t *testing.T, widths int) string {
	t.Helper()
	var src strings.Builder
	src.WriteString("family: scaling\nbasis: AISC 360-22\nmethod: ASD\ncases: {A: {level: service, source: own}}\nkind: clevis\nhand: left\nloads:\n")
	for i := range 10 {
		fmt.Fprintf(&src, "  - {case: A, state: s%d, force: {x: 0 N, y: %d N, z: %d N}}\n", i, 800*(5-i), -1000*(i+1))
	}
	fmt.Fprintf(&src, "grid:\n  ear_thickness: {from: 8 mm, to: 12.9 mm, step: 0.1 mm}\n  ear_width: {from: 100 mm, to: %.2f mm, step: 0.01 mm}\n", 100+float64(widths-1)/100)
	file := filepath.Join(t.TempDir(), "family.yaml")
	if err := os.WriteFile(file, []byte(src.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// pinned starts a service on some cores and gives its address.
func pinned(t *testing.T, cores, program string) (string, *os.Process) {
	t.Helper()
	return started(t, exec.Command(peer.NeedCommand(t, "taskset"), "-c", cores, program))
}

// used is the CPU time of a process until now.
func used(t *testing.T, p *os.Process) time.Duration {
	t.Helper()
	src, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", p.Pid))
	if err != nil {
		t.Fatal(err)
	}
	fields := strings.Fields(string(src[strings.LastIndexByte(string(src), ')')+1:]))
	return time.Duration(number(t, fields[11])+number(t, fields[12])) * tick
}

// busy is the CPU time of all processes of the machine until now.
func busy(t *testing.T) time.Duration {
	t.Helper()
	src, err := os.ReadFile("/proc/stat")
	if err != nil {
		t.Fatal(err)
	}
	f := strings.Fields(string(src)) // cpu user nice system idle iowait irq softirq
	return time.Duration(number(t, f[1])+number(t, f[2])+number(t, f[3])+number(t, f[6])+number(t, f[7])) * tick
}

func number(t *testing.T, text string) int {
	t.Helper()
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// point is one run: seconds of a variant by the clock and of each process's CPU time, and the cores that others used beside it.
type point struct{ wall, client, geometry, strength, others float64 }

func measure(t *testing.T, small, large string, n int, cores, geometryCores string, strengthCores ...string) point {
	t.Helper()
	bin := filepath.Dir(programOf(t))
	at, geometry := pinned(t, geometryCores, filepath.Join(bin, "geometryd"))
	var addrs []string
	var strengths []*os.Process
	for _, c := range strengthCores {
		a, p := pinned(t, c, filepath.Join(bin, "strengthd"))
		addrs, strengths = append(addrs, a), append(strengths, p)
	}
	sum := func() (d time.Duration) {
		for _, p := range strengths {
			d += used(t, p)
		}
		return d
	}
	client := func(family string) (wall, cpu time.Duration) {
		cmd := exec.Command(peer.NeedCommand(t, "taskset"), "-c", cores, programOf(t), "batch", family, "-o", filepath.Join(t.TempDir(), "out"),
			"--geometry", at, "--strength", strings.Join(addrs, ","))
		begun := time.Now()
		out, err := cmd.CombinedOutput()
		if code := cmd.ProcessState.ExitCode(); code > 1 || strings.Contains(string(out), "refused") {
			t.Fatalf("status %d, %v\n%s", code, err, out)
		}
		u := cmd.ProcessState.SysUsage().(*syscall.Rusage)
		return time.Since(begun), time.Duration(u.Utime.Nano() + u.Stime.Nano())
	}
	wallSmall, clientSmall := client(small)
	g, s, all := used(t, geometry), sum(), busy(t)
	wall, own := client(large)
	g, s, all = used(t, geometry)-g, sum()-s, busy(t)-all
	for _, p := range append(strengths, geometry) {
		p.Kill()
	}
	each := func(d time.Duration) float64 { return d.Seconds() / float64(n) }
	return point{each(wall - wallSmall), each(own - clientSmall), each(g), each(s), (all - own - g - s).Seconds() / wall.Seconds()}
}

func TestScaling(t *testing.T) {
	n, err := strconv.Atoi(os.Getenv("LUGWRIGHT_SCALING"))
	if err != nil {
		t.Skip("measures only when LUGWRIGHT_SCALING says for how many variants")
	}
	bin := filepath.Dir(programOf(t))
	if out, err := exec.Command("go", "build", "-o", bin, "../../../services/cmd/geometryd", "../../../services/cmd/strengthd").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	widths := max(3, n/50)
	small, large := scalingFamily(t, 2), scalingFamily(t, widths)
	n = 50 * (widths - 2) // what the small one does not have
	var one, two []point
	for round := range 5 {
		a, b := measure(t, small, large, n, "1", "1", "0"), measure(t, small, large, n, "0,1", "0,1", "0", "1")
		one, two = append(one, a), append(two, b)
		t.Logf("round %d: one replica %.0f variants/s, two %.0f, %.2f times; others used %.2f and %.2f cores", round+1, 1/a.wall, 1/b.wall, a.wall/b.wall, a.others, b.others)
	}
	median := func(of []point, f func(point) float64) float64 {
		var all []float64
		for _, p := range of {
			all = append(all, f(p))
		}
		slices.Sort(all)
		return all[len(all)/2]
	}
	both := append(slices.Clone(one), two...)
	c := median(both, func(p point) float64 { return p.client })
	g := median(both, func(p point) float64 { return p.geometry })
	s := median(both, func(p point) float64 { return p.strength })
	us := 1e6
	t.Logf("CPU time a variant, median of %d runs of %d: client %.1f µs, geometry %.1f µs, strength %.1f µs", len(both), n, c*us, g*us, s*us)
	for _, p := range []struct {
		what  string
		runs  []point
		model float64
	}{
		{"strength on one core, geometry and client on the other", one, 1 / max(s, c+g)},
		{"strength on each of both cores, with geometry and client", two, 2 / (c + g + s)},
	} {
		rate := 1 / median(p.runs, func(p point) float64 { return p.wall })
		t.Logf("%s: %.0f variants/s, by the model %.0f; others used %.2f cores", p.what, rate, p.model, median(p.runs, func(p point) float64 { return p.others }))
	}
}
