package deploy

import (
	"crypto/x509"
	"encoding/pem"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	appsv1 "k8s.io/api/apps/v1"
	corev1 "k8s.io/api/core/v1"
	"k8s.io/apimachinery/pkg/api/equality"
	metav1 "k8s.io/apimachinery/pkg/apis/meta/v1"
	"k8s.io/pod-security-admission/api"
	"k8s.io/pod-security-admission/policy"

	"lugwright/services/transport"
)

// names are both services with their ports.
var names = map[string]string{"lugwright-geometry": "7401", "lugwright-strength": "7402"}

// afterGrace is what a service needs at most when its calls have ended: five seconds for telemetry, and some to end in.
const afterGrace = 8 * time.Second

func TestManifests(t *testing.T) {
	dir := certified(t)
	for _, folder := range []string{"base", "trial"} {
		t.Run(folder, func(t *testing.T) {
			all := build(t, path.Join(dir, folder))
			if len(all.deployments) != 2 || len(all.services) != 2 || len(all.budgets) != 2 {
				t.Fatalf("%d deployments, %d services, %d budgets", len(all.deployments), len(all.services), len(all.budgets))
			}
			for name, port := range names {
				d := all.deployments[name]
				if d == nil {
					t.Fatalf("no deployment %s", name)
				}
				replicas(t, all, d)
				ports(t, all, d, port)
				manners(t, d)
				mounts(t, all, d.Spec.Template.Spec)
				restricted(t, d.Spec.Template)
			}
			for _, j := range all.jobs {
				mounts(t, all, j.Spec.Template.Spec)
				restricted(t, j.Spec.Template)
				reaches(t, all, j.Spec.Template.Spec.Containers[0].Args)
			}
		})
	}
}

// replicas: at least two, on nodes of their own where there are several, no two of them taken away at once, and each of them found.
func replicas(t *testing.T, all *objects, d *appsv1.Deployment) {
	labels := d.Spec.Template.Labels
	matches := func(what string, s *metav1.LabelSelector) {
		if s == nil || len(s.MatchLabels) == 0 || len(s.MatchExpressions) > 0 {
			t.Errorf("%s: %s selects by nothing that this test knows", d.Name, what)
			return
		}
		for k, v := range s.MatchLabels {
			if labels[k] != v {
				t.Errorf("%s: %s selects %s: %s, which its pods are not", d.Name, what, k, v)
			}
		}
		for other := range names {
			if other != d.Name && all.deployments[other].Spec.Template.Labels["app.kubernetes.io/name"] == s.MatchLabels["app.kubernetes.io/name"] {
				t.Errorf("%s: %s selects the pods of %s too", d.Name, what, other)
			}
		}
	}
	if d.Spec.Replicas == nil || *d.Spec.Replicas < 2 {
		t.Errorf("%s: %v replicas", d.Name, d.Spec.Replicas)
	}
	matches("the deployment", d.Spec.Selector)
	matches("the budget", all.budgets[d.Name].Spec.Selector)
	matches("the service", &metav1.LabelSelector{MatchLabels: all.services[d.Name].Spec.Selector})
	spread := d.Spec.Template.Spec.TopologySpreadConstraints
	if len(spread) != 1 {
		t.Fatalf("%s: %d spread constraints", d.Name, len(spread))
	}
	matches("the spread", spread[0].LabelSelector)
	if n := all.budgets[d.Name].Spec.MaxUnavailable; n == nil || n.IntValue() != 1 {
		t.Errorf("%s: the budget lets %v go at once", d.Name, n)
	}
}

// ports: where the service listens is where its pods, its name and its probes say.
func ports(t *testing.T, all *objects, d *appsv1.Deployment, port string) {
	c := only(t, d.Spec.Template.Spec)
	set := settings(t, environment(t, c))
	if got := portOf(t, set.Listen); got != port {
		t.Errorf("%s listens on port %s, not %s", d.Name, got, port)
	}
	if len(c.Ports) != 1 || strconv.Itoa(int(c.Ports[0].ContainerPort)) != port {
		t.Errorf("%s: container ports %v", d.Name, c.Ports)
	}
	s := all.services[d.Name].Spec
	if s.ClusterIP != corev1.ClusterIPNone || s.PublishNotReadyAddresses {
		t.Errorf("%s: the name stands for %q, or for pods that are not ready", d.Name, s.ClusterIP)
	}
	if len(s.Ports) != 1 || strconv.Itoa(int(s.Ports[0].Port)) != port || s.Ports[0].TargetPort.String() != c.Ports[0].Name {
		t.Errorf("%s: the service has ports %v", d.Name, s.Ports)
	}
	if !transport.LoopbackAddress(set.Health) || strings.HasSuffix(set.Health, ":0") || strings.HasSuffix(set.Health, ":"+port) {
		t.Errorf("%s: health is told at %q", d.Name, set.Health)
	}
	for what, p := range map[string]*corev1.Probe{"startup": c.StartupProbe, "readiness": c.ReadinessProbe, "liveness": c.LivenessProbe} {
		if p == nil || p.Exec == nil || !slices.Equal(p.Exec.Command, []string{image(t, c.Image).entrypoint, "probe"}) {
			t.Errorf("%s: the %s probe is %v", d.Name, what, p)
		} else if p.TimeoutSeconds < 4 { // the probe gives up by itself after three seconds, and says why
			t.Errorf("%s: the %s probe is cut off after %d s", d.Name, what, p.TimeoutSeconds)
		}
	}
}

// manners: time to stop in, memory, and what the image is run as.
func manners(t *testing.T, d *appsv1.Deployment) {
	pod, c := d.Spec.Template.Spec, only(t, d.Spec.Template.Spec)
	set := settings(t, environment(t, c))
	if have := time.Duration(*pod.TerminationGracePeriodSeconds) * time.Second; have < set.Grace+afterGrace {
		t.Errorf("%s has %s to stop in, with %s for its calls", d.Name, have, set.Grace)
	}
	limit := c.Resources.Limits.Memory().Value() >> 20
	if int64(set.MemoryMiB)*5/4 > limit || set.MemoryMiB < 64 {
		t.Errorf("%s keeps its heap within %d of %d MiB; a fifth at least is for the rest", d.Name, set.MemoryMiB, limit)
	}
	for name, want := range c.Resources.Requests {
		if have := c.Resources.Limits[name]; want.Cmp(have) > 0 || want.IsZero() {
			t.Errorf("%s: asks for %s of %s, with a limit of %s", d.Name, want.String(), name, have.String())
		}
	}
	if len(c.Resources.Requests) != 2 || len(c.Resources.Limits) != 2 {
		t.Errorf("%s: requests and limits are of %d and %d things", d.Name, len(c.Resources.Requests), len(c.Resources.Limits))
	}
	if want := image(t, c.Image); *pod.SecurityContext.RunAsUser != want.uid || len(c.Command)+len(c.Args) > 0 {
		t.Errorf("%s: runs %v as %d; its image is for %d", d.Name, c.Command, *pod.SecurityContext.RunAsUser, want.uid)
	}
}

// mounts: what a container's settings name lies in a volume; secrets are whole folders, so that a renewed one shows up in them, and readable for the pod's group.
func mounts(t *testing.T, all *objects, pod corev1.PodSpec) {
	c := only(t, pod)
	volumes := map[string]corev1.Volume{}
	for _, v := range pod.Volumes {
		volumes[v.Name] = v
	}
	within := func(file string) bool {
		for _, m := range c.VolumeMounts {
			v := volumes[m.Name]
			dir, base := path.Split(file)
			if path.Clean(dir) != m.MountPath {
				continue
			}
			switch {
			case v.Secret != nil && len(all.secrets) > 0:
				return all.secrets[v.Secret.SecretName].Data[base] != nil
			case v.ConfigMap != nil:
				return all.configs[v.ConfigMap.Name].Data[base] != ""
			}
			return true
		}
		return false
	}
	for _, m := range c.VolumeMounts {
		v := volumes[m.Name]
		if m.SubPath != "" || v.Name == "" || !m.ReadOnly && v.EmptyDir == nil {
			t.Errorf("%s: mount %v", c.Name, m)
		}
		if v.Secret != nil && (*v.Secret.DefaultMode != 0o440 || pod.SecurityContext.FSGroup == nil) {
			t.Errorf("%s: the secret has mode %o for a group that the pod is not in", c.Name, *v.Secret.DefaultMode)
		}
	}
	files := []string{}
	for _, e := range c.Env {
		if strings.HasPrefix(e.Value, "/") {
			files = append(files, e.Value)
		}
	}
	for _, a := range c.Args {
		if _, value, _ := strings.Cut(a, "="); strings.HasPrefix(value, "/") {
			files = append(files, value)
		} else if strings.HasPrefix(a, "/") {
			files = append(files, a)
		}
	}
	for _, f := range files {
		if !within(f) {
			t.Errorf("%s: %s is in no volume", c.Name, f)
		}
	}
	if len(files) < 3 {
		t.Errorf("%s names only %v", c.Name, files)
	}
}

// restricted holds a pod against the strictest of the pod security standards, as an API server does, and some more.
func restricted(t *testing.T, pod corev1.PodTemplateSpec) {
	checks, err := policy.NewEvaluator(policy.DefaultChecks(), nil)
	if err != nil {
		t.Fatal(err)
	}
	level := api.LevelVersion{Level: api.LevelRestricted, Version: api.LatestVersion()}
	for _, r := range checks.EvaluatePod(level, &pod.ObjectMeta, &pod.Spec) {
		if !r.Allowed {
			t.Errorf("%s: %s: %s", pod.Labels["app.kubernetes.io/name"], r.ForbiddenReason, r.ForbiddenDetail)
		}
	}
	c := only(t, pod.Spec)
	if s := c.SecurityContext; s.ReadOnlyRootFilesystem == nil || !*s.ReadOnlyRootFilesystem {
		t.Errorf("%s can write into its image", c.Name)
	}
	if a, l := pod.Spec.AutomountServiceAccountToken, pod.Spec.EnableServiceLinks; a == nil || *a || l == nil || *l {
		t.Errorf("%s has a token of the cluster, or variables of other services", c.Name)
	}
}

func TestRestrictedRefuses(t *testing.T) {
	checks, err := policy.NewEvaluator(policy.DefaultChecks(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range checks.EvaluatePod(api.LevelVersion{Level: api.LevelRestricted, Version: api.LatestVersion()}, &metav1.ObjectMeta{},
		&corev1.PodSpec{Containers: []corev1.Container{{Name: "any"}}}) {
		if !r.Allowed {
			return
		}
	}
	t.Error("a pod without any security settings is allowed")
}

// reaches: a client's addresses are those of the services, under names that their certificates have.
func reaches(t *testing.T, all *objects, args []string) {
	for name, port := range names {
		flag := "--" + strings.TrimPrefix(name, "lugwright-") + "=dns:///" + name + ":" + port
		if !slices.Contains(args, flag) {
			t.Errorf("%v: no %s", args, flag)
		}
		if all == nil {
			continue
		}
		block, _ := pem.Decode(all.secrets[name+"-tls"].Data["tls.crt"])
		cert, err := x509.ParseCertificate(block.Bytes)
		if err != nil {
			t.Fatal(err)
		}
		namespace := all.services[name].Namespace
		for _, host := range []string{name, name + "." + namespace, name + "." + namespace + ".svc.cluster.local"} {
			if err := cert.VerifyHostname(host); err != nil {
				t.Error(err)
			}
		}
	}
}

func only(t *testing.T, pod corev1.PodSpec) corev1.Container {
	t.Helper()
	if len(pod.Containers) != 1 || len(pod.InitContainers) > 0 {
		t.Fatalf("%d containers", len(pod.Containers))
	}
	return pod.Containers[0]
}

func environment(t *testing.T, c corev1.Container) map[string]string {
	t.Helper()
	env := map[string]string{}
	for _, e := range c.Env {
		if _, twice := env[e.Name]; twice || e.ValueFrom != nil {
			t.Errorf("%s is set twice, or from elsewhere", e.Name)
		}
		env[e.Name] = e.Value
	}
	return env
}

// A pod template that no longer is the deployment's would never be rolled out; a patch of the trial must change what it says and nothing else.
func TestTrialDiffersLittle(t *testing.T) {
	dir := certified(t)
	base, trial := build(t, path.Join(dir, "base")), build(t, path.Join(dir, "trial"))
	for name := range names {
		a, b := base.deployments[name].Spec.Template.Spec, trial.deployments[name].Spec.Template.Spec
		for _, p := range []*corev1.PodSpec{&a, &b} {
			c := &p.Containers[0]
			c.Image, _, _ = strings.Cut(c.Image, ":")
			c.Resources = corev1.ResourceRequirements{}
			c.Env = slices.DeleteFunc(c.Env, func(e corev1.EnvVar) bool { return e.Name == "LUGWRIGHT_MEMORY" })
			slices.SortFunc(c.Env, func(a, b corev1.EnvVar) int { return strings.Compare(a.Name, b.Name) })
		}
		if !equality.Semantic.DeepEqual(a, b) {
			t.Errorf("%s differs in more than image and size:\n%v\n%v", name, a, b)
		}
	}
}
