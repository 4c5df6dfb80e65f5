package deploy

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	corev1 "k8s.io/api/core/v1"

	"lugwright/internal/peer"
)

// The trial's pods, each in a network namespace of its own with an address on one bridge, with the files of its image for a root, its volumes, its user and
// its environment, and nothing else: what a cluster would give them but for its scheduler. The names of the services are in the client's hosts file. While the
// client's job runs, one replica of each service is killed.
func TestPods(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("network namespaces and chroot need root")
	}
	net := newBridge(t)
	all := build(t, filepath.Join(certified(t), "trial"))
	running := map[string][]*pod{}
	hosts := ""
	for name := range names {
		d := all.deployments[name]
		for range *d.Spec.Replicas {
			p := net.pod(t, all, d.Spec.Template.Spec)
			running[name] = append(running[name], p)
			hosts += p.addr + " " + name + "\n"
			p.start(t, environment(t, only(t, d.Spec.Template.Spec)))
		}
	}
	for name, pods := range running {
		probe := only(t, all.deployments[name].Spec.Template.Spec).ReadinessProbe.Exec.Command
		for _, p := range pods {
			p.ready(t, probe)
		}
	}
	lives := running["lugwright-geometry"][1]
	renewed(t, lives)

	job := all.jobs["lugwright-trial"].Spec.Template.Spec
	client := net.pod(t, all, job)
	put := func(name, text string) {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(client.dir, name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(client.dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	put("etc/hosts", hosts)
	results := filepath.Join(client.dir, "results/trial/results.jsonl")
	client.start(t, environment(t, only(t, job)), only(t, job).Args...)
	for lines(results) < 64 {
		select {
		case <-client.ended:
			t.Fatalf("ended before a replica was killed:\n%s", &client.log)
		case <-time.After(time.Millisecond):
		}
	}
	for _, pods := range running {
		pods[0].cmd.Process.Kill()
	}
	if code := client.wait(t, 2*time.Minute); code != 0 {
		t.Fatalf("exit status %d:\n%s", code, &client.log)
	}

	// The same family in one process.
	alone := filepath.Join(t.TempDir(), "alone")
	cmd := exec.Command(filepath.Join(client.dir, client.image.entrypoint), "batch", filepath.Join(client.dir, "families/trial.yaml"), "-o", alone)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	got, err := os.ReadFile(results)
	if err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile(filepath.Join(alone, "results.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) || len(want) == 0 {
		t.Errorf("%d bytes, not the %d of a run in one process", len(got), len(want))
	}

	if !strings.Contains(lives.log.String(), `"msg":"changed file taken","what":"certificate"`) {
		t.Errorf("the renewed certificate is not taken:\n%s", &lives.log)
	}

	// Told to stop, the others end by themselves in the time that their pods have.
	for name, pods := range running {
		grace := time.Duration(*all.deployments[name].Spec.Template.Spec.TerminationGracePeriodSeconds) * time.Second
		pods[1].cmd.Process.Signal(syscall.SIGTERM)
		if code := pods[1].wait(t, grace); code != 0 {
			t.Errorf("%s: exit status %d:\n%s", name, code, &pods[1].log)
		}
		if n := strings.Count(pods[1].log.String(), `"msg":"call"`); n == 0 {
			t.Errorf("%s: the replica that lived logs no call:\n%s", name, &pods[1].log)
		}
	}
}

// renewed puts other files in the place of a pod's secret as the kubelet does, by one link.
func renewed(t *testing.T, p *pod) {
	t.Helper()
	dir := filepath.Join(p.dir, "tls")
	if err := os.CopyFS(filepath.Join(dir, "..second"), os.DirFS(filepath.Join(dir, "..first"))); err != nil {
		t.Fatal(err)
	}
	own(t, filepath.Join(dir, "..second"))
	next := filepath.Join(dir, "..data_tmp")
	if err := os.Symlink("..second", next); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(next, filepath.Join(dir, "..data")); err != nil {
		t.Fatal(err)
	}
}

// A bridge joins pods.
type bridge struct {
	t    *testing.T
	name string // of its namespace, and what those of its pods begin with
	pods int
}

func newBridge(t *testing.T) *bridge {
	peer.NeedCommand(t, "ip")
	b := &bridge{t: t, name: fmt.Sprint("lugwright-", os.Getpid())}
	b.namespace(b.name)
	b.ip("-n", b.name, "link", "add", "bridge", "type", "bridge")
	b.ip("-n", b.name, "link", "set", "bridge", "up")
	return b
}

func (b *bridge) ip(args ...string) {
	b.t.Helper()
	if out, err := exec.Command("ip", args...).CombinedOutput(); err != nil {
		b.t.Fatalf("ip %s: %v\n%s", strings.Join(args, " "), err, out)
	}
}

func (b *bridge) namespace(name string) {
	if out, err := exec.Command("ip", "netns", "add", name).CombinedOutput(); err != nil {
		b.t.Skipf("no network namespaces here: %v\n%s", err, out)
	}
	b.t.Cleanup(func() { b.ip("netns", "delete", name) })
}

type pod struct {
	space, addr string
	dir         string
	image       imageFile

	cmd   *exec.Cmd
	log   output
	ended chan struct{}
}

// output may be read while it is written.
type output struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (o *output) Write(p []byte) (int, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.b.Write(p)
}

func (o *output) String() string {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.b.String()
}

// pod makes a namespace with an address, and a root with the files of an image and its volumes.
func (b *bridge) pod(t *testing.T, all *objects, spec corev1.PodSpec) *pod {
	t.Helper()
	b.pods++
	p := &pod{space: fmt.Sprint(b.name, "-", b.pods), addr: fmt.Sprint("10.77.0.", b.pods)}
	outer := fmt.Sprint("pod", b.pods)
	b.namespace(p.space)
	b.ip("-n", b.name, "link", "add", outer, "type", "veth", "peer", "name", "eth0", "netns", p.space)
	b.ip("-n", b.name, "link", "set", outer, "master", "bridge", "up")
	b.ip("-n", p.space, "addr", "add", p.addr+"/24", "dev", "eth0")
	b.ip("-n", p.space, "link", "set", "eth0", "up")
	b.ip("-n", p.space, "link", "set", "lo", "up")
	p.dir, p.image = unpacked(t, only(t, spec).Image)
	for _, m := range only(t, spec).VolumeMounts {
		for _, v := range spec.Volumes {
			if v.Name == m.Name {
				volume(t, all, v, filepath.Join(p.dir, m.MountPath))
			}
		}
	}
	return p
}

// volume lies as the kubelet lays it: files are links into a folder that is a link itself.
func volume(t *testing.T, all *objects, v corev1.Volume, dir string) {
	t.Helper()
	files := map[string][]byte{}
	switch {
	case v.Secret != nil:
		files = all.secrets[v.Secret.SecretName].Data
	case v.ConfigMap != nil:
		for name, text := range all.configs[v.ConfigMap.Name].Data {
			files[name] = []byte(text)
		}
	default:
		return // the image has the folder
	}
	first := filepath.Join(dir, "..first")
	if err := os.MkdirAll(first, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("..first", filepath.Join(dir, "..data")); err != nil {
		t.Fatal(err)
	}
	for name, b := range files {
		if err := os.WriteFile(filepath.Join(first, name), b, 0o440); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink("..data/"+name, filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	own(t, first)
}

// own gives the files of a folder to the pods' group, to read.
func own(t *testing.T, dir string) {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := filepath.Join(dir, f.Name())
		if err := os.Chmod(name, 0o440); err != nil {
			t.Fatal(err)
		}
		if err := os.Chown(name, 0, 65532); err != nil {
			t.Fatal(err)
		}
	}
}

// inside is a command in the pod, as the image's user.
func (p *pod) inside(t *testing.T, env map[string]string, args ...string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command("ip", append([]string{"netns", "exec", p.space, peer.NeedCommand(t, "chroot"), fmt.Sprintf("--userspec=%d:%d", p.image.uid, p.image.uid), p.dir}, args...)...)
	cmd.Env = []string{}
	for k, v := range env {
		cmd.Env = append(cmd.Env, k+"="+v)
	}
	return cmd
}

func (p *pod) start(t *testing.T, env map[string]string, args ...string) {
	t.Helper()
	p.cmd, p.ended = p.inside(t, env, append([]string{p.image.entrypoint}, args...)...), make(chan struct{})
	p.cmd.Stdout, p.cmd.Stderr = &p.log, &p.log
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go func() { defer close(p.ended); p.cmd.Wait() }()
	t.Cleanup(func() { p.cmd.Process.Kill(); <-p.ended })
}

// ready asks as the kubelet does, with the environment of the container.
func (p *pod) ready(t *testing.T, probe []string) {
	t.Helper()
	env := map[string]string{}
	for _, pair := range p.cmd.Env {
		k, v, _ := strings.Cut(pair, "=")
		env[k] = v
	}
	var last []byte
	for range 60 {
		out, err := p.inside(t, env, probe...).CombinedOutput()
		if err == nil {
			return
		}
		last = out
		time.Sleep(100 * time.Millisecond)
	}
	t.Fatalf("is not ready: %s\n%s", last, &p.log)
}

func (p *pod) wait(t *testing.T, most time.Duration) int {
	t.Helper()
	select {
	case <-p.ended:
	case <-time.After(most):
		p.cmd.Process.Kill()
		t.Errorf("does not end within %s:\n%s", most, &p.log)
		<-p.ended
	}
	return p.cmd.ProcessState.ExitCode()
}

func lines(file string) int {
	src, _ := os.ReadFile(file)
	return bytes.Count(src, []byte("\n"))
}
