// Package deploy holds what is in the folder deploy of this repository against what will read it: the types of Kubernetes and its pod security standards,
// kustomize, the compose specification, the grammar of container files, and the services' own settings. It is a module of its own, for those are large, and
// holds tests alone.
//
//	deploy_test.go      what the tests share
//	manifests_test.go   Kubernetes
//	compose_test.go     compose
//	image_test.go       the container file: what it builds, and that it needs nothing beside it
//	pods_test.go        all of it run, in network namespaces
package deploy

import (
	"bytes"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	appsv1 "k8s.io/api/apps/v1"
	batchv1 "k8s.io/api/batch/v1"
	corev1 "k8s.io/api/core/v1"
	policyv1 "k8s.io/api/policy/v1"
	"sigs.k8s.io/json"
	"sigs.k8s.io/kustomize/api/krusty"
	"sigs.k8s.io/kustomize/kyaml/filesys"
	"sigs.k8s.io/yaml"

	"lugwright/services/server"
)

const root = "../.."

// objects are what kustomize makes of a folder, each of a type of Kubernetes.
type objects struct {
	deployments map[string]*appsv1.Deployment
	services    map[string]*corev1.Service
	budgets     map[string]*policyv1.PodDisruptionBudget
	jobs        map[string]*batchv1.Job
	secrets     map[string]*corev1.Secret
	configs     map[string]*corev1.ConfigMap
}

func none() *objects {
	return &objects{
		map[string]*appsv1.Deployment{}, map[string]*corev1.Service{}, map[string]*policyv1.PodDisruptionBudget{},
		map[string]*batchv1.Job{}, map[string]*corev1.Secret{}, map[string]*corev1.ConfigMap{},
	}
}

// certified is a copy of the manifests with certificates in it, as deploy/certificates makes them.
func certified(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(root, "deploy/kubernetes"))); err != nil {
		t.Fatal(err)
	}
	tls := filepath.Join(dir, "trial", "tls")
	if err := os.RemoveAll(tls); err != nil { // of someone who tries it
		t.Fatal(err)
	}
	if out, err := exec.Command(filepath.Join(root, "deploy/certificates"), tls).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return dir
}

// build runs kustomize on a folder.
func build(t *testing.T, dir string) *objects {
	t.Helper()
	made, err := krusty.MakeKustomizer(krusty.MakeDefaultOptions()).Run(filesys.MakeFsOnDisk(), dir)
	if err != nil {
		t.Fatal(err)
	}
	all := none()
	for _, r := range made.Resources() {
		src, err := r.AsYAML()
		if err == nil {
			err = all.add(src)
		}
		if err != nil {
			t.Errorf("%s %s: %v", r.GetKind(), r.GetName(), err)
		}
	}
	return all
}

// add decodes one object, and refuses fields that its type has not.
func (all *objects) add(src []byte) error {
	var kind struct{ APIVersion, Kind string }
	if err := yaml.Unmarshal(src, &kind); err != nil {
		return err
	}
	switch kind.APIVersion + " " + kind.Kind {
	case "apps/v1 Deployment":
		return put(all.deployments, src, func(o *appsv1.Deployment) string { return o.Name })
	case "v1 Service":
		return put(all.services, src, func(o *corev1.Service) string { return o.Name })
	case "policy/v1 PodDisruptionBudget":
		return put(all.budgets, src, func(o *policyv1.PodDisruptionBudget) string { return o.Name })
	case "batch/v1 Job":
		return put(all.jobs, src, func(o *batchv1.Job) string { return o.Name })
	case "v1 Secret":
		return put(all.secrets, src, func(o *corev1.Secret) string { return o.Name })
	case "v1 ConfigMap":
		return put(all.configs, src, func(o *corev1.ConfigMap) string { return o.Name })
	}
	return fmt.Errorf("no test knows the kind %q of %q", kind.Kind, kind.APIVersion)
}

func put[T any](to map[string]*T, src []byte, name func(*T) string) error {
	o := new(T)
	if err := strict(src, o); err != nil {
		return err
	}
	to[name(o)] = o
	return nil
}

// strict decodes as an API server does that is told to be strict: no field twice, none unknown, capitals as they are.
func strict(src []byte, o any) error {
	asJSON, err := yaml.YAMLToJSONStrict(src)
	if err != nil {
		return err
	}
	refused, err := json.UnmarshalStrict(asJSON, o)
	if err == nil && len(refused) > 0 {
		err = refused[0]
	}
	return err
}

// settings reads an environment as the daemons do, and refuses a variable of ours that they do not know.
func settings(t *testing.T, env map[string]string) *server.Config {
	t.Helper()
	c := server.NewConfig("daemon")
	known := map[string]bool{}
	err := c.FromEnvironment(func(name string) (string, bool) {
		known[name] = true
		value, ok := env[name]
		return value, ok
	})
	if err != nil {
		t.Error(err)
	}
	for name := range env {
		if !known[name] {
			t.Errorf("%s is no setting of a service", name)
		}
	}
	return c
}

// portOf is the port of an address that leaves the host open.
func portOf(t *testing.T, addr string) string {
	t.Helper()
	host, port, err := net.SplitHostPort(addr)
	if err != nil || host != "" {
		t.Errorf("address %q: %v; pods listen on all of theirs", addr, err)
	}
	return port
}

func TestStrictIsStrict(t *testing.T) {
	for _, src := range []string{
		"spec: {clusterIP: None, sessionAfinity: None}", "spec: {clusterIp: None}", "spec: {clusterIP: None}\nspec: {}", "spec: {ports: [{port: x}]}",
	} {
		if err := strict([]byte(src), &corev1.Service{}); err == nil {
			t.Errorf("%s is taken", src)
		}
	}
	if err := strict([]byte("spec: {clusterIP: None}"), &corev1.Service{}); err != nil {
		t.Error(err)
	}
}

// Every manifest by itself: a patch too may only hold what its type has.
func TestSourcesAreStrict(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(root, "deploy/kubernetes/*/*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		switch filepath.Base(file) {
		case "kustomization.yaml", "trial.yaml": // kustomize's own, and a family
			continue
		}
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all := none()
		for _, one := range bytes.Split(src, []byte("\n---\n")) {
			if err := all.add(one); err != nil {
				t.Errorf("%s: %v", file, err)
			}
		}
	}
}
