package command

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"net"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"google.golang.org/grpc"

	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/transport/transporttest"
)

// ran is the outcome of one command line, run in this process.
type ran struct {
	status   int
	out, err string
}

func lugwright(t *testing.T, args ...string) ran {
	t.Helper()
	return lugwrightIn(t, t.Context(), false, args...)
}

func lugwrightIn(t *testing.T, ctx context.Context, colour bool, args ...string) ran {
	t.Helper()
	var out, errs bytes.Buffer
	status := Main(ctx, append([]string{"lugwright"}, args...), Streams{Out: &out, Err: &errs, Colour: colour})
	return ran{status, out.String(), errs.String()}
}

func (r ran) want(t *testing.T, status int, errPart string) ran {
	t.Helper()
	if r.status != status || !strings.Contains(r.err, errPart) {
		t.Errorf("status %d, want %d and %q in:\n%s", r.status, status, errPart, r.err)
	}
	return r
}

// starterJob writes what `new` writes.
func starterJob(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "job")
	lugwright(t, "new", dir).want(t, Done, "")
	return filepath.Join(dir, "job.yaml")
}

func TestNewRuns(t *testing.T) {
	path := starterJob(t)
	r := lugwright(t, "check", path).want(t, Done, "")
	for _, part := range []string{"pass  pair-left", "governed by", "not checked", "note", "builder's choice", "Cautions"} {
		if !strings.Contains(r.out, part) {
			t.Errorf("no %q in\n%s", part, r.out)
		}
	}
	if r.err != "" {
		t.Errorf("standard error: %s", r.err)
	}
	again := lugwright(t, "new", filepath.Dir(path)).want(t, NotWritten, "is not empty")
	if !strings.Contains(again.err, "lugwright: hint: ") {
		t.Errorf("no hint: %s", again.err)
	}
	if src, err := os.ReadFile(path); err != nil || !bytes.Equal(src, starter) {
		t.Error("the refused command touched the job")
	}
}

// The bare ears of the demo: 15.2 kN to the side at 90 mm must fail, and pass once gusseted.
func TestBareEarsFail(t *testing.T) {
	r := lugwright(t, "check", "testdata/bare.yaml").want(t, Failed, "lugwright: pair-left fails: ")
	if lines := strings.Count(r.err, "\n"); lines != 1 {
		t.Errorf("%d lines say why:\n%s", lines, r.err)
	}
	if !strings.Contains(r.err, " of capacity (A6 side right, full)") || !strings.Contains(r.err, "bending") {
		t.Errorf("why: %s", r.err)
	}
	if !strings.Contains(r.out, "FAIL  pair-left") || !strings.Contains(r.out, "Cautions") {
		t.Errorf("result:\n%s", r.out)
	}
}

// The lug bears on one ear: its moment at the root is 15.21 kN times 90 mm, by statics of a cantilever.
func TestBareEarsMoment(t *testing.T) {
	var doc resultDoc
	if err := json.Unmarshal([]byte(lugwright(t, "check", "testdata/bare.yaml", "--json").out), &doc); err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for _, k := range doc.Brackets[0].Checks {
		if k.Limit == "weak-axis-bending" && strings.HasPrefix(k.Thing, "ear-") && k.Verdict == "fail" {
			worst = max(worst, float64(k.Demand))
		}
	}
	// The section is cut a hair above the root.
	if math.Abs(worst/(15210*90)-1) > 2e-5 {
		t.Errorf("moment %g N mm", worst)
	}
}

func TestStatus(t *testing.T) {
	path := starterJob(t)
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		args   []string
		status int
		err    string
	}{
		{"no verb gives help", nil, Done, ""},
		{"unknown verb", []string{"chek"}, Misused, `"chek" is not a verb; nearest is "check"`},
		{"unknown option", []string{"check", "--al", path}, Misused, "--al is not an option"},
		{"no job", []string{"check"}, Misused, "check takes one argument, not 0"},
		{"two jobs", []string{"check", path, path}, Misused, "check takes one argument, not 2"},
		{"job not there", []string{"check", "nowhere.yaml"}, Misused, "nowhere.yaml: no such file or directory"},
		{"job is a folder", []string{"check", dir}, Misused, "is a directory"},
		{"job is not YAML", []string{"check", "check.go"}, Misused, "check.go:"},
		{"bad timeout", []string{"check", path, "--timeout", "0s"}, Misused, "not a time to wait"},
		{"bad address", []string{"check", path, "--geometry", "nowhere"}, Misused, `geometry service: address "nowhere"`},
		{"service down", []string{"check", path, "--strength", "127.0.0.1:1"}, Unreachable, "strength service at 127.0.0.1:1: connection refused"},
		{"unknown kind", []string{"kinds", "clevs"}, Misused, `nearest is "clevis"`},
		{"unknown limit", []string{"limits", "pin-sheer"}, Misused, `nearest is "pin-shear"`},
		{"unknown basis", []string{"limits", "--basis", "AISC"}, Misused, "is not a basis"},
		{"unknown material", []string{"materials", "A37"}, Misused, `nearest is "A36"`},
		{"evaluate nothing", []string{"evaluate"}, Misused, "evaluate takes"},
		{"evaluate what several bases have", []string{"evaluate", "pin-shear", "V_r=12kN"}, Misused, "choose one with --basis"},
		{"evaluate with a mass", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "V_r=12kg"}, Misused, "V_r: 12kg is a mass; a force such as"},
		{"evaluate with a bare number", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "d=25"}, Misused, "d: 25 has no unit"},
		{"evaluate with a stranger", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "q=25"}, Misused, "has no such given"},
		{"evaluate with too little", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "d=25mm"}, Misused, "error: V_r: missing"},
		{"evaluate an impossible steel", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "V_r=12kN", "d=25mm", "F_y=400MPa", "F_u=350MPa"}, Misused, "F_u: 350 MPa, less than F_y; at least the yield strength, 400 MPa"},
		{"evaluate out of range", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "V_r=1N", "d=25km", "F_y=1MPa", "F_u=1MPa"}, Misused, "unknown unit"},
		{"evaluate another method", []string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "--method", "LSD", "d=25mm"}, Misused, `method: "LSD"; one of ASD, LRFD for`},
		{"unknown shell", []string{"completion", "fish"}, Misused, "one of bash, zsh"},
		{"listen to the world", []string{"serve", "--listen", "0.0.0.0:0"}, Misused, "not on this machine alone"},
		{"serve as a client", []string{"serve", "--cert", "me.pem"}, Misused, "--cert is for a client"},
		{"serve by no number", []string{"serve", "--workers", "many"}, Misused, `--workers: "many" is not taken; write a whole number`},
		{"serve half a certificate", []string{"serve", "--tls-cert", "server.pem"}, Misused, "--tls-cert and --tls-key belong together"},
		{"serve a token that is none", []string{"serve", "--token-file", "nowhere"}, Misused, "nowhere: no such file"},
		{"no such authority", []string{"kinds", "--geometry", "127.0.0.1:1", "--ca", "nowhere"}, Misused, "nowhere: no such file"},
		{"new in a file", []string{"new", filepath.Join(file, "x")}, NotWritten, "not a directory"},
		{"pack without a folder", []string{"pack", path}, Misused, "pack needs a folder"},
		{"pack into a full folder", []string{"pack", path, "-o", dir}, NotWritten, "is not empty"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := lugwright(t, c.args...).want(t, c.status, c.err)
			if c.status != Done && !strings.HasPrefix(r.err, "lugwright: error: ") {
				t.Errorf("message: %s", r.err)
			}
		})
	}
}

// Bad jobs are refused with file, line, column and field, by the job reader and by the services alike.
func TestBadJobs(t *testing.T) {
	good := string(starter)
	for name, c := range map[string]struct{ from, to, err string }{
		"wrong unit":         {"ear_thickness: 8 mm", "ear_thickness: 8 kg", "job.yaml:32:22: brackets[pair-left].parameters.ear_thickness: 8 kg is a mass"},
		"bare number":        {"ear_thickness: 8 mm", "ear_thickness: 8", "ear_thickness: 8 has no unit"},
		"unknown parameter":  {"ear_width", "ear_witdh", `nearest is "ear_width"`},
		"unknown kind":       {"kind: clevis", "kind: clevice", `nearest is "clevis"`},
		"hole outside":       {"pin_diameter: 25 mm", "pin_diameter: 110 mm", "job.yaml:"},
		"unknown material":   {"gussets: both ", "ear_material: S3555 #", `ear_material: `},
		"no load":            {"      - {case: A2 down, state: full, force: {x: 0 kN, y: 0 kN, z: -9 kN}}\n      - {case: A6 side right, state: full, force: {x: 0 kN, y: -4 kN, z: -5 kN}}", "", "brackets[pair-left].loads: empty"},
		"factored under ASD": {"level: service", "level: factored", "brackets[pair-left].loads[0]"},
	} {
		t.Run(name, func(t *testing.T) {
			if !strings.Contains(good, c.from) {
				t.Fatalf("the starter has no %q", c.from)
			}
			path := filepath.Join(t.TempDir(), "job.yaml")
			if err := os.WriteFile(path, []byte(strings.Replace(good, c.from, c.to, 1)), 0o600); err != nil {
				t.Fatal(err)
			}
			lugwright(t, "check", path).want(t, Misused, c.err)
		})
	}
}

// A service that takes the connection and never answers.
func TestSlowService(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	lugwright(t, "kinds", "--geometry", l.Addr().String(), "--timeout", "300ms").want(t, Unreachable, "geometry service at "+l.Addr().String())
}

// future is a geometry service of a later release.
type future struct {
	geometrypb.UnimplementedGeometryServiceServer
}

func (future) GetServiceInfo(context.Context, *geometrypb.GetServiceInfoRequest) (*geometrypb.GetServiceInfoResponse, error) {
	return &geometrypb.GetServiceInfoResponse{ApiVersion: "99.0", ToolVersion: "99.0.0"}, nil
}

func TestWrongVersion(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	s := grpc.NewServer()
	geometrypb.RegisterGeometryServiceServer(s, future{})
	go s.Serve(l)
	defer s.Stop()
	lugwright(t, "kinds", "--geometry", l.Addr().String()).want(t, Unreachable, `interface version "99.0"`)
}

func TestInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	r := lugwrightIn(t, ctx, false, "check", starterJob(t)).want(t, Interrupted, "interrupted")
	if r.out != "" {
		t.Errorf("printed %q", r.out)
	}
}

func TestOutputFails(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("no /dev/full here")
	}
	defer full.Close()
	var errs bytes.Buffer
	if status := Main(t.Context(), []string{"lugwright", "check", starterJob(t)}, Streams{Out: full, Err: &errs}); status != NotWritten {
		t.Errorf("status %d: %s", status, errs.String())
	}
	if n := strings.Count(errs.String(), "no space left"); n != 1 {
		t.Errorf("told %d times: %s", n, errs.String())
	}
}

// Remote services give the same bytes as those in this process.
func TestServe(t *testing.T) {
	path := starterJob(t)
	ctx, stop := context.WithCancel(t.Context())
	out, in, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan int)
	go func() {
		done <- Main(ctx, []string{"lugwright", "serve"}, Streams{Out: in, Err: &bytes.Buffer{}})
	}()
	buffer := make([]byte, 100)
	n, err := out.Read(buffer)
	if err != nil {
		t.Fatal(err)
	}
	addr := strings.TrimSpace(string(buffer[:n]))
	for _, args := range [][]string{{"check", path, "--json"}, {"check", path, "--detail"}, {"kinds", "clevis"}, {"limits"}, {"schema"}} {
		here := lugwright(t, args...).want(t, Done, "")
		there := lugwright(t, append(args, "--geometry", addr, "--strength", addr)...).want(t, Done, "")
		if here.out != there.out {
			t.Errorf("%q differs between in-process and remote", args)
		}
	}
	stop()
	if status := <-done; status != Done {
		t.Errorf("serve ended with status %d", status)
	}
}

// Over TLS, with a certificate and a token on both sides, the answers are the same.
func TestServeSecured(t *testing.T) {
	ours := transporttest.New(t, "ours")
	server, me := ours.Issue(t, "server", 48*time.Hour), ours.Issue(t, "me", 48*time.Hour)
	token := transporttest.Token(t, "0123456789abcdef")
	ctx, stop := context.WithCancel(t.Context())
	out, in, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan int)
	var log bytes.Buffer
	go func() {
		done <- Main(ctx, []string{"lugwright", "serve", "--listen", "127.0.0.1:0", "--tls-cert", server.Cert, "--tls-key", server.Key, "--client-ca", ours.File, "--token-file", token},
			Streams{Out: in, Err: &log})
	}()
	buffer := make([]byte, 100)
	n, err := out.Read(buffer)
	if err != nil {
		t.Fatal(err)
	}
	at := []string{"kinds", "clevis", "--geometry", strings.TrimSpace(string(buffer[:n]))}
	secured := append(at, "--ca", ours.File, "--cert", me.Cert, "--key", me.Key)
	there := lugwright(t, append(secured, "--token-file", token)...).want(t, Done, "")
	if here := lugwright(t, "kinds", "clevis"); here.out != there.out {
		t.Errorf("there %s, here %s", there.out, here.out)
	}
	lugwright(t, secured...).want(t, Unreachable, "--token-file names the file")
	lugwright(t, at...).want(t, Unreachable, "not a lugwright service")
	stop()
	if status := <-done; status != Done {
		t.Errorf("serve ended with status %d", status)
	}
	if strings.Contains(log.String(), "0123456789abcdef") || !strings.Contains(log.String(), `"msg":"configuration"`) {
		t.Errorf("log %s", log.String())
	}
}

func TestJSON(t *testing.T) {
	path := starterJob(t)
	for name, c := range map[string]struct {
		args   []string
		status int
		keys   string
	}{
		"check":     {[]string{"check", path}, Done, "format tool job verdict passes brackets cautions"},
		"failing":   {[]string{"check", "testdata/bare.yaml"}, Failed, "format tool job verdict passes brackets cautions"},
		"kinds":     {[]string{"kinds"}, Done, "format kinds"},
		"limits":    {[]string{"limits"}, Done, "format bases"},
		"materials": {[]string{"materials"}, Done, "format grades bolt_grades electrodes bolt_sizes"},
		"evaluate":  {[]string{"evaluate", "pin-shear", "--basis", "AISC 360-22", "V_r=12kN", "d=25mm", "F_y=400MPa", "F_u=570MPa"}, Done, "format limit verdict utilisation lines"},
		"version":   {[]string{"version"}, Done, "format tool version"},
		"schema":    {[]string{"schema"}, Done, "$schema properties required"},
		"families":  {[]string{"schema", "family"}, Done, "$schema properties required"},
		"new":       {[]string{"new", filepath.Join(t.TempDir(), "x")}, Done, "format job schema"},
	} {
		t.Run(name, func(t *testing.T) {
			r := lugwright(t, append(c.args, "--json")...).want(t, c.status, "")
			var doc map[string]any
			if err := json.Unmarshal([]byte(r.out), &doc); err != nil {
				t.Fatalf("%v:\n%s", err, r.out)
			}
			for _, key := range strings.Fields(c.keys) {
				if _, ok := doc[key]; !ok {
					t.Errorf("no %q", key)
				}
			}
		})
	}
}

// The JSON of a check holds every line of every check.
func TestJSONIsWhole(t *testing.T) {
	var doc resultDoc
	r := lugwright(t, "check", starterJob(t), "--json")
	if err := json.Unmarshal([]byte(r.out), &doc); err != nil {
		t.Fatal(err)
	}
	b := doc.Brackets[0]
	if len(b.Checks) < 20 || len(b.NotChecked) == 0 || b.Governing == nil || len(b.Parameters) < 40 {
		t.Errorf("%d checks, %d not checked, %d parameters", len(b.Checks), len(b.NotChecked), len(b.Parameters))
	}
	for _, k := range b.Checks {
		if k.Verdict == "pass" && (len(k.Lines) == 0 || k.Clause == "" || k.Place == "") {
			t.Errorf("thin check %+v", k)
		}
	}
}

func TestEightyColumns(t *testing.T) {
	path := starterJob(t)
	for _, args := range [][]string{
		{"check", path}, {"check", path, "--detail"}, {"check", path, "--all"}, {"check", "testdata/bare.yaml"},
		{"kinds"}, {"kinds", "clevis"}, {"kinds", "clevis", "--inch"}, {"limits"}, {"limits", "pin-shear"}, {"materials"}, {"materials", "--inch"},
		{"evaluate", "pin-shear", "--basis", "AISC 360-22", "V_r=12kN", "d=25mm", "F_y=400MPa", "F_u=570MPa"},
	} {
		for _, line := range strings.Split(lugwright(t, args...).out, "\n") {
			if n := utf8.RuneCountInString(line); n > columns {
				t.Errorf("%q: %d columns: %s", args, n, line)
			}
		}
	}
}

func TestColour(t *testing.T) {
	plain := lugwright(t, "check", "testdata/bare.yaml")
	colour := lugwrightIn(t, t.Context(), true, "check", "testdata/bare.yaml")
	if strings.Contains(plain.out, "\x1b") || !strings.Contains(colour.out, "\x1b[31;1mFAIL\x1b[0m") {
		t.Error("colour where none was asked for, or none where it was")
	}
	if bare := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(colour.out, ""); bare != plain.out {
		t.Error("colour changes more than colour")
	}
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	defer w.Close()
	if Coloured(w) {
		t.Error("a pipe is no terminal")
	}
	t.Setenv("NO_COLOR", "1")
	if null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0); err == nil && Coloured(null) {
		t.Error("NO_COLOR is not respected")
	}
}

// Options may stand anywhere, before and after the verb and its arguments.
func TestOptionsAnywhere(t *testing.T) {
	path := starterJob(t)
	want := lugwright(t, "--json", "check", "--all", path).out
	for _, args := range [][]string{{"check", path, "--all", "--json"}, {"check", "--json", path, "--all"}, {"check", "--json=true", "--all", "--", path}} {
		if got := lugwright(t, args...).want(t, Done, ""); got.out != want {
			t.Errorf("%q gives something else", args)
		}
	}
}

func TestCompletion(t *testing.T) {
	// The library looks for the word to complete on the process's own line.
	line := os.Args
	t.Cleanup(func() { os.Args = line })
	os.Args = []string{"lugwright", completing}
	verbs := lugwright(t, completing).want(t, Done, "")
	for _, verb := range []string{"new", "check", "pack", "kinds", "limits", "materials", "evaluate", "serve", "schema", "completion", "version"} {
		if !strings.Contains(verbs.out, verb+"\n") && !strings.Contains(verbs.out, verb+":") {
			t.Errorf("no %s among\n%s", verb, verbs.out)
		}
	}
	os.Args = []string{"lugwright", "check", "--de", completing}
	if options := lugwright(t, "check", "--de", completing).want(t, Done, ""); !strings.Contains(options.out, "--detail") {
		t.Errorf("options: %s", options.out)
	}
	for _, shell := range []string{"bash", "zsh"} {
		if r := lugwright(t, "completion", shell).want(t, Done, ""); !strings.Contains(r.out, completing) {
			t.Errorf("%s: %s", shell, r.out)
		}
	}
}

// The schemas take the starter, every demo job and every family: what runs shows no red line in an editor.
func TestSchemaTakesWhatRuns(t *testing.T) {
	jobs, _ := filepath.Glob("../../testdata/jobs/*.yaml")
	families, _ := filepath.Glob("../../testdata/families/*.yaml")
	for of, paths := range map[string][]string{"job": append(jobs, "starter.yaml", "testdata/bare.yaml"), "family": families} {
		schema := schemaOf(t, of)
		for _, path := range paths {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if err := schema.Validate(inYAML(t, src)); err != nil {
				t.Errorf("%s: %v", path, err)
			}
		}
	}
}

// Beside what runs the family's schema sees what a slip of the pen makes of it.
func TestFamilySchemaRefuses(t *testing.T) {
	src, err := os.ReadFile("../../testdata/families/ears.yaml")
	if err != nil {
		t.Fatal(err)
	}
	schema := schemaOf(t, "family")
	for was, is := range map[string]string{
		"kind: clevis":           "kind: clevice",
		"hand: left":             "hand: port",
		"family: ":               "job: ",
		"ear_width: {from":       "ear_breadth: {from",
		"step: 10 mm":            "step: 10",
		"to: 140 mm":             "until: 140 mm",
		"[6 mm, 8 mm, 3/8 in]":   "[6 mm, 8 mm, thick]",
		"gussets: [both, none]":  "gussets: [both, neither]",
		"pin_diameter: 25 mm":    "pin_diameter: 25 kg",
		"method: ASD":            "method: ASDF",
		"loads:\n  - {case":      "forces:\n  - {case",
		"force: {x: 0 N, y: -6 ": "force: {x: 0 N, w: -6 ",
	} {
		bad := strings.Replace(string(src), was, is, 1)
		if bad == string(src) {
			t.Errorf("%q is not in the family", was)
		}
		if schema.Validate(inYAML(t, []byte(bad))) == nil {
			t.Errorf("%q is taken", is)
		}
	}
}

func schemaOf(t *testing.T, file string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(lugwright(t, "schema", file).want(t, Done, "").out))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

func inYAML(t *testing.T, src []byte) any {
	t.Helper()
	var doc any
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestVersion(t *testing.T) {
	if r := lugwright(t, "version").want(t, Done, ""); r.out != "lugwright "+Version+"\n" {
		t.Errorf("%q", r.out)
	}
}

func TestErrorsAsJSON(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.yaml")
	text, err := os.ReadFile(starterJob(t))
	if err != nil {
		t.Fatal(err)
	}
	broken := regexp.MustCompile(`(pin_diameter|ear_thickness): .*`).ReplaceAll(text, []byte("$1: 8"))
	if err := os.WriteFile(path, broken, 0o644); err != nil {
		t.Fatal(err)
	}
	decode := func(r ran) (d errorDoc) {
		t.Helper()
		if err := json.Unmarshal([]byte(r.err), &d); err != nil || r.out != "" {
			t.Fatalf("%v: standard error %q, %d bytes of standard output", err, r.err, len(r.out))
		}
		if d.Format != format || d.Status != r.status {
			t.Errorf("format %d, status %d; the run ended with %d", d.Format, d.Status, r.status)
		}
		return d
	}
	d := decode(lugwright(t, "check", "--json", path))
	if len(d.Errors) < 2 || d.Status != Misused {
		t.Fatalf("%+v", d)
	}
	for _, e := range d.Errors {
		if e.File != path || e.Line == 0 || e.Column == 0 || e.Message == "" {
			t.Errorf("%+v", e)
		}
	}
	if d := decode(lugwright(t, "nosuch", "--json")); d.Status != Misused || !strings.Contains(d.Errors[0].Message, "is not a verb") || d.Hint == "" {
		t.Errorf("%+v", d)
	}
}

// A hint names a list only where the list helps.
// Options are told as they are typed, with what would be taken.
func TestRefusedOptions(t *testing.T) {
	for _, c := range []struct {
		line []string
		says string
	}{
		{[]string{"pack", demo, "-o"}, "-o needs a value behind it"},
		{[]string{"pack", demo, "-o", "p1", "-o", "p2"}, "-o is given twice; give it once"},
		{[]string{"pack", demo, "--out=p1", "-o", "p2"}, "-o is given twice"},
		{[]string{"check", demo, "--bogus"}, "--bogus is not an option"},
		{[]string{"--timeout", "5", "check", demo}, `--timeout: "5" is no length of time; write a number and its unit, such as 5s or 2m`},
		{[]string{"check", demo, "--access=perhaps"}, `--access: "perhaps" is not taken`},
	} {
		lugwright(t, c.line...).want(t, Misused, c.says)
	}
	lugwright(t, "evaluate", "pin-shear", "--basis", "AISC 360-22", "--factor", "Omega=2", "--factor", "phi=1").want(t, Misused, "")
}

func TestHints(t *testing.T) {
	good := string(starter)
	for name, c := range map[string]struct{ from, to, hint string }{
		"parameter":    {"ear_thickness: 8 mm", "ear_thickness: 8", "lugwright kinds clevis` lists parameters"},
		"material":     {"gussets: both ", "ear_material: S3555 #", "lugwright materials"},
		"unknown case": {"case: A2 down, state", "case: A3 down, state", ""},
		"left out":     {"method: ASD", "leave_out: [pin-shear]\nmethod: ASD", ""},
		"load factor":  {"method: ASD", "load_factor: 2\nmethod: ASD", ""},
		"not YAML":     {"job: Starter", "job: [Starter", ""},
	} {
		path := filepath.Join(t.TempDir(), "job.yaml")
		if err := os.WriteFile(path, []byte(strings.Replace(good, c.from, c.to, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		r := lugwright(t, "check", path).want(t, Misused, "job.yaml:")
		if _, hint, ok := strings.Cut(r.err, "hint: "); ok != (c.hint != "") || !strings.Contains(hint, c.hint) {
			t.Errorf("%s: want a hint with %q in\n%s", name, c.hint, r.err)
		}
	}
}

func TestHelpInEightyColumns(t *testing.T) {
	for _, verb := range []string{"", "new", "check", "pack", "kinds", "limits", "materials", "evaluate", "verify", "serve", "schema", "completion", "version"} {
		r := lugwright(t, strings.Fields(verb+" --help")...).want(t, Done, "")
		for line := range strings.SplitSeq(r.out, "\n") {
			if utf8.RuneCountInString(line) > columns {
				t.Errorf("%s: %s", verb, line)
			}
		}
	}
}

// Lists that are about the same bolts have one length; things are counted in whole numbers; what has no value is not printed.
// The example that the help of evaluate gives runs as it is printed.
func TestEvaluateExample(t *testing.T) {
	help := lugwright(t, "evaluate", "--help").want(t, Done, "").out
	shell := strings.ReplaceAll(help, "\\\n", " ")
	_, line, found := strings.Cut(shell, "lugwright evaluate pin-shear ")
	line, _, _ = strings.Cut(line, "\n")
	if !found {
		t.Fatalf("no example:\n%s", help)
	}
	args := []string{"evaluate", "pin-shear"}
	for i, quoted := range strings.Split(line, `"`) {
		if i%2 == 1 {
			args = append(args, quoted)
			continue
		}
		args = append(args, strings.Fields(quoted)...)
	}
	lugwright(t, args...).want(t, Done, "")
}

func TestEvaluateCounts(t *testing.T) {
	group := []string{"evaluate", "bolt-group-elastic", "--basis", "AISC 360-22", "P_y=10 kN", "x_P=100 mm", "y_P=0 mm", "d=12 mm", "F_u=800 MPa", "threads=1"}
	lugwright(t, append(group, "x=0 mm, 80 mm, 160 mm", "y=0 mm, 5 mm")...).want(t, Misused, "y: 2 values beside 3 of x; as many of both are needed")
	lugwright(t, append(group, "x=0 mm, 80 mm", "y=0 mm, 5 mm", "n_s=1.5")...).want(t, Misused, "n_s: 1.5; a number of things, in steps of 1")
	twist := lugwright(t, "evaluate", "open-section-twist", "--basis", "AISC 360-22", "V=1 kN", "x=5 mm", "L=0 mm", "b=2 mm", "h=2 mm", "t=1 mm", "F_y=300 MPa")
	if strings.Contains(twist.out, "NaN") {
		t.Error(twist.out)
	}
}
