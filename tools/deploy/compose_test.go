package deploy

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/compose-spec/compose-go/v2/cli"
	"github.com/compose-spec/compose-go/v2/types"

	"lugwright/services/transport"
)

// The compose file is read as compose reads it, by the schema of the specification.
func TestCompose(t *testing.T) {
	options, err := cli.NewProjectOptions([]string{filepath.Join(root, "deploy/compose.yaml")}, cli.WithInterpolation(true), cli.WithProfiles([]string{"*"}))
	if err != nil {
		t.Fatal(err)
	}
	project, err := options.LoadProject(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for name, port := range names {
		s, err := project.GetService(name)
		if err != nil {
			t.Fatal(err)
		}
		env := map[string]string{}
		for k, v := range s.Environment {
			env[k] = *v
		}
		set := settings(t, env)
		if portOf(t, set.Listen) != port || !slices.Equal(s.Expose, []string{port}) || len(s.Ports) > 0 {
			t.Errorf("%s listens on %s, and says %v", name, set.Listen, s.Expose)
		}
		if !transport.LoopbackAddress(set.Health) || !slices.Equal(s.HealthCheck.Test, []string{"CMD", image(t, s.Image).entrypoint, "probe"}) {
			t.Errorf("%s: health at %q, asked by %v", name, set.Health, s.HealthCheck.Test)
		}
		if have := time.Duration(*s.StopGracePeriod); have < set.Grace+afterGrace {
			t.Errorf("%s has %s to stop in, with %s for its calls", name, have, set.Grace)
		}
		if *s.Deploy.Replicas < 2 || int64(s.Deploy.Resources.Limits.MemoryBytes)>>20 < int64(set.MemoryMiB)*5/4 {
			t.Errorf("%s: %d replicas of %d bytes", name, *s.Deploy.Replicas, s.Deploy.Resources.Limits.MemoryBytes)
		}
		for _, f := range []string{set.Files.Cert, set.Files.Key, set.Files.ClientCA} {
			if !mounted(s, f) {
				t.Errorf("%s: %s is in no volume", name, f)
			}
		}
		secured(t, s)
	}
	client, err := project.GetService("client")
	if err != nil {
		t.Fatal(err)
	}
	secured(t, client)
	reaches(t, nil, client.Entrypoint)
	for _, a := range client.Entrypoint {
		if _, file, ok := strings.Cut(a, "=/"); ok && !mounted(client, "/"+file) {
			t.Errorf("client: /%s is in no volume", file)
		}
	}
	for name := range names {
		if client.DependsOn[name].Condition != types.ServiceConditionHealthy {
			t.Errorf("the client does not wait for %s", name)
		}
	}
}

func mounted(s types.ServiceConfig, file string) bool {
	return file != "" && slices.ContainsFunc(s.Volumes, func(v types.ServiceVolumeConfig) bool { return v.Target == filepath.Dir(file) && v.ReadOnly })
}

func secured(t *testing.T, s types.ServiceConfig) {
	i := image(t, s.Image)
	user, _, _ := strings.Cut(s.User, ":")
	if !s.ReadOnly || user != "65532" || i.uid != 65532 || !slices.Equal(s.CapDrop, []string{"ALL"}) || !slices.Contains(s.SecurityOpt, "no-new-privileges:true") || s.Privileged {
		t.Errorf("%s: %t, user %s, %v, %v", s.Name, s.ReadOnly, s.User, s.CapDrop, s.SecurityOpt)
	}
	if target, _, _ := strings.Cut(strings.TrimPrefix(s.Image, "lugwright/"), ":"); s.Build.Target != target || !strings.HasSuffix(s.Build.Dockerfile, "deploy/Containerfile") {
		t.Errorf("%s is built as %s of %s", s.Image, s.Build.Target, s.Build.Dockerfile)
	}
	root, err := filepath.Abs(root)
	if err != nil || s.Build.Context != root {
		t.Errorf("%s is built from %s, not %s (%v)", s.Image, s.Build.Context, root, err)
	}
}
