package lugwright

// Who may import whom, as data. The test reads the source files itself, so the test cache notices every change.

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rule says what the files of a folder may import: packages of this module, third-party modules, and whether they must
// be pure (no operating system, network, clock, log or random numbers).
type rule struct {
	folder string // a path of the module; "x/..." covers what is below x
	own    []string
	others []string
	pure   bool
	why    string
}

// impure is what a pure folder may not import from the standard library.
var impure = []string{"os", "net", "time", "log", "math/rand", "crypto/rand", "io/ioutil", "os/exec", "syscall", "testing"}

var rules = []rule{
	{folder: "", why: "the front door holds no code"},
	{folder: "geometry/shape", pure: true, why: "plane geometry knows nothing else"},
	{folder: "internal/spelling", pure: true, why: "the nearest known word; knows nothing else"},
	{folder: "units", own: []string{"internal/spelling"}, pure: true, why: "units know nothing else but spelling"},
	{folder: "strength/formula", pure: true, why: "reading a formula needs nothing else"},
	{folder: "part", own: []string{"geometry/shape", "internal/spelling"}, pure: true, why: "a plate's outline is a shape; there is nothing to convert"},
	{folder: "part/parttest", own: []string{"part", "geometry/shape"}, pure: true, why: "a bracket for tests"},
	{folder: "geometry", own: []string{"part"}, pure: true, why: "what a kind is, without any kind or format"},
	{folder: "geometry/fab", own: []string{"geometry", "geometry/shape", "geometry/stroke", "part"}, pure: true, why: "the fabricator's rules that kinds share"},
	{folder: "geometry/fab/fabtest", own: []string{"geometry", "geometry/shape", "geometry/stroke", "part"}, why: "the suite every kind runs; a test helper"},
	{folder: "geometry/stroke", own: []string{"geometry/shape"}, pure: true, why: "letters for dxf and svg"},
	{folder: "geometry/shop", own: []string{"part", "geometry/shape"}, pure: true, why: "what a cutting shop can make and how it wants its files"},
	{folder: "geometry/nest", own: []string{"geometry/shape"}, pure: true, why: "plates on stock sheets; knows outlines alone"},
	{folder: "geometry/access", own: []string{"part", "geometry/shape"}, pure: true, why: "room for tools around a bracket, whatever its kind"},
	{folder: "geometry/setout", own: []string{"part", "geometry/shape"}, pure: true, why: "where welded parts stand; reads poses alone"},
	{folder: "geometry/fold", own: []string{"part", "geometry/shape"}, pure: true, why: "bent plates; knows no format"},
	{folder: "geometry/mesh", own: []string{"part", "geometry/fold", "geometry/shape"}, pure: true, why: "closed shells for any format of solids"},
	{folder: "geometry/decimal", pure: true, why: "numbers for dxf and svg"},
	{folder: "geometry/dxf", own: []string{"part", "geometry/decimal", "geometry/shape", "geometry/stroke"}, pure: true, why: "a format never imports another"},
	{folder: "geometry/scad", own: []string{"part", "geometry/fold", "geometry/shape"}, pure: true, why: "a format never imports another"},
	{folder: "geometry/threemf", own: []string{"part", "geometry/mesh"}, pure: true, why: "a format never imports another"},
	{folder: "geometry/view", own: []string{"part", "geometry/shape"}, pure: true, why: "what is seen of a bracket, for any format of pictures"},
	{folder: "geometry/svg", own: []string{"part", "geometry/decimal", "geometry/shape", "geometry/stroke", "geometry/view"}, pure: true, why: "a format never imports another"},
	{folder: "geometry/kinds", own: []string{"geometry", "geometry/kinds/..."}, pure: true, why: "the index of kinds"},
	{folder: "geometry/kinds/...", own: []string{"geometry", "geometry/fab", "geometry/shape", "part"}, pure: true, why: "a kind never imports another kind"},
	{folder: "strength", own: []string{"part", "geometry/shape", "strength/statics", "strength/material"}, pure: true, why: "sections are cut from the true outline; no basis, no kind"},
	{folder: "strength/statics", others: []string{"gonum.org/v1/gonum"}, pure: true, why: "mechanics on plain numbers"},
	{folder: "strength/material", own: []string{"internal/spelling"}, pure: true, why: "tables"},
	{folder: "strength/practice", own: []string{"strength", "strength/statics"}, pure: true, why: "limit states that no code states, for any basis"},
	{folder: "strength/handbook", own: []string{"strength", "strength/formula", "part", "units"}, pure: true, why: "published examples; knows no rule, reads no file"},
	{folder: "strength/strengthtest", own: []string{"strength", "strength/formula", "units"}, why: "the suite every basis runs; a test helper"},
	{folder: "strength/basis", own: []string{"part", "strength", "strength/basis/..."}, pure: true, why: "the index of bases"},
	{folder: "strength/basis/...", own: []string{"strength", "strength/practice", "strength/statics", "strength/material", "part"}, pure: true, why: "a basis never imports another"},
	{folder: "vehicle", own: []string{"part", "strength/statics", "vehicle/field"}, pure: true, why: "masses, mounts and reactions; knows no bracket and no basis"},
	{folder: "vehicle/clearance", own: []string{"vehicle/field", "vehicle/finding"}, pure: true, why: "room under twist, on plain lengths"},
	{folder: "vehicle/drill", own: []string{"vehicle/field", "vehicle/finding"}, pure: true, why: "drilling rules as data, a survey, and what fits"},
	{folder: "vehicle/field", own: []string{"part"}, pure: true, why: "refusing numbers; knows no meaning"},
	{folder: "vehicle/finding", pure: true, why: "a line of a checklist; knows no rule"},
	{folder: "vehicle/frame", own: []string{"geometry/shape", "part", "strength/statics", "vehicle/field"}, pure: true, why: "frame mechanics on plain forces; finds no reaction"},
	{folder: "vehicle/hung", own: []string{"part", "strength/statics", "vehicle/field", "vehicle/finding"}, pure: true, why: "loads of rods, rules of trays and tanks; judges no rod"},
	{folder: "vehicle/lift", own: []string{"strength/statics", "vehicle/field"}, pure: true, why: "a lift plan from masses and places"},
	{folder: "vehicle/whole", own: []string{"part", "vehicle", "vehicle/..."}, pure: true, why: "feeds one part of the vehicle's results to the next"},
	{folder: "vehicle/whole/wholetest", own: []string{"part", "vehicle", "vehicle/..."}, pure: true, why: "a vehicle for tests"},
	{folder: "internal/browser", own: []string{"internal/peer"}, others: []string{"github.com/chromedp"}, why: "opens pages for tests"},
	{folder: "internal/peer", why: "finds the outside programs that tests compare with"},
	{folder: "proto", why: "the contract; holds no code of ours"},
	{folder: "proto/gen/...", own: []string{"proto/gen/..."}, others: []string{"google.golang.org"}, why: "generated"},
	{folder: "services/wire", own: []string{"part", "geometry", "geometry/shape", "geometry/shop", "strength", "strength/formula", "strength/material", "vehicle", "vehicle/...", "proto/gen/...", "units"}, others: []string{"google.golang.org"}, why: "the only place that knows proto and domain types"},
	{folder: "services/geometry", own: []string{"services/wire", "services/server", "geometry/...", "part", "proto/gen/..."}, others: []string{"google.golang.org"}, why: "decode, call, encode"},
	{folder: "services/strength", own: []string{"services/wire", "services/server", "strength/...", "part", "vehicle/whole", "proto/gen/..."}, others: []string{"google.golang.org"}, why: "decode, call, encode"},
	{folder: "services/transport", others: []string{"google.golang.org/grpc"}, why: "TLS and tokens for either side; knows no service"},
	{folder: "services/transport/transporttest", why: "authorities and certificates for tests"},
	{folder: "services/server", own: []string{"services/transport", "services/wire"}, others: []string{"google.golang.org"}, why: "a gRPC server and its manners, whatever it serves"},
	{folder: "services/telemetry", others: []string{"go.opentelemetry.io", "google.golang.org/grpc/stats"}, why: "OpenTelemetry, linked into the servers alone"},
	{folder: "services/both", own: []string{"services/geometry", "services/strength", "services/server", "services/wire", "geometry/kinds", "strength/basis", "proto/gen/..."}, others: []string{"google.golang.org"}, why: "both services together, with every kind and basis"},
	{folder: "services/dial", own: []string{"services/...", "part", "geometry", "geometry/kinds", "geometry/shop", "strength", "strength/basis", "vehicle/whole", "proto/gen/..."}, others: []string{"google.golang.org"}, why: "in-process and remote are the same client"},
	{folder: "services/dial/dialtest", others: []string{"golang.org/x/net"}, why: "a name server for tests"},
	{folder: "services/cmd/...", own: []string{"services/...", "geometry/kinds", "strength/basis"}, others: []string{"google.golang.org"}, why: "mains of twenty lines"},
	{folder: "client/caution", why: "the standing cautions"},
	{folder: "client/draw", pure: true, why: "a drawing on paper; knows no format"},
	{folder: "client/draw/svg", own: []string{"client/draw", "geometry/decimal"}, pure: true, why: "one format of drawings"},
	{folder: "client/drawings", own: []string{"client/draw", "geometry/shape", "geometry/stroke", "geometry/view", "part", "units"}, pure: true, why: "dimensioned drawings; knows no format"},
	{folder: "client/paper", own: []string{"client/draw"}, pure: true, why: "a paper in blocks; knows no format"},
	{folder: "client/paper/papertest", own: []string{"client/draw", "client/paper"}, pure: true, why: "a paper for tests"},
	{folder: "client/paper/...", own: []string{"client/draw", "client/paper"}, others: []string{"github.com/go-pdf/fpdf", "golang.org/x/image"}, why: "a format never imports another; dates in a file are fixed"},
	{folder: "client/paper/html", own: []string{"client/draw", "client/draw/svg", "client/paper"}, pure: true, why: "a page has its drawings as SVG"},
	{folder: "client/paper/text", own: []string{"client/draw", "client/paper"}, pure: true, why: "a form of papers; a form never imports another"},
	{folder: "client/template", own: []string{"client/draw", "geometry/shape", "geometry/view", "part", "units"}, pure: true, why: "drawings at full scale; knows no format"},
	{folder: "client/plots", own: []string{"client/draw", "client/paper", "part", "units", "vehicle", "vehicle/..."}, pure: true, why: "charts, of a vehicle too; reckons nothing and knows no format"},
	{folder: "client/papers", own: []string{"client/caution", "client/draw", "client/drawings", "client/job", "client/paper", "client/plots", "client/run", "client/template", "geometry/access", "geometry/setout", "geometry/shape", "geometry/shop", "part", "strength", "strength/material", "units", "vehicle", "vehicle/..."}, pure: true, why: "what the shop's papers say; knows no form and no file"},
	{folder: "client/yamlfile", others: []string{"github.com/goccy/go-yaml"}, why: "YAML that is safe to walk, for any file of ours"},
	{folder: "client/table", own: []string{"client/yamlfile", "part", "units"}, others: []string{"github.com/goccy/go-yaml"}, why: "a YAML file by its field table, whatever it is about"},
	{folder: "client/casefile", own: []string{"client/yamlfile", "strength", "strength/handbook", "part", "units"}, others: []string{"github.com/goccy/go-yaml"}, why: "case files"},
	{folder: "client/shopfile", own: []string{"client/table", "client/yamlfile", "geometry/shop", "part", "units"}, why: "shop files"},
	{folder: "client/job", own: []string{"client/caution", "client/table", "client/yamlfile", "part", "geometry", "geometry/access", "geometry/shape", "geometry/shop", "strength", "units", "vehicle", "vehicle/..."}, why: "the job file"},
	{folder: "client/run", own: []string{"client/job", "services/dial", "part", "geometry", "geometry/access", "strength", "strength/material", "units", "vehicle", "vehicle/..."}, why: "coordinates; no flags, no printing"},
	{folder: "client/run/runtest", own: []string{"client/job", "client/run", "services/dial"}, why: "the services, for tests that run jobs"},
	{folder: "client/sheet", own: []string{"client/caution", "client/drawings", "client/job", "client/paper", "client/plots", "client/run", "geometry", "geometry/setout", "geometry/shape", "part", "strength", "strength/formula", "units", "vehicle", "vehicle/whole"}, why: "the calc sheet, in no format"},
	{folder: "client/pack", own: []string{"client/caution", "client/draw", "client/draw/svg", "client/drawings", "client/job", "client/paper", "client/paper/...", "client/papers", "client/plots", "client/run", "client/sheet", "geometry", "geometry/dxf", "geometry/nest", "geometry/setout", "geometry/shape", "geometry/shop", "part", "services/dial", "strength", "units"}, why: "the cut pack; re-reads each DXF before release"},
	{folder: "client/sweep", own: []string{"client/job", "client/paper", "client/plots", "client/run", "geometry", "part", "services/dial", "strength", "units"}, why: "variants of a job's brackets; no flags, no printing"},
	{folder: "client/propose", own: []string{"client/job", "client/sweep", "geometry", "part", "units"}, why: "first sizes; tries variants as a sweep does"},
	{folder: "client/view", why: "serves pages on this machine; knows nothing of what they say"},
	{folder: "client/command", own: []string{"client/...", "geometry", "geometry/access", "part", "services/both", "services/dial", "services/server", "strength", "strength/formula", "strength/handbook", "strength/material", "units", "vehicle", "vehicle/..."}, others: []string{"github.com/schollz/progressbar", "github.com/urfave/cli", "google.golang.org/grpc"}, why: "one file a verb"},
	{folder: "client/family", own: []string{"client/job", "client/yamlfile", "geometry", "part", "units"}, why: "the variants of a family, one after the other"},
	{folder: "client/batch", own: []string{"client/family", "client/job", "client/run", "services/dial", "part", "geometry", "strength", "units"}, why: "a family through both services; no flags, no printing"},
	{folder: "client/cmd/...", own: []string{"client/command"}, why: "the main"},
}

func TestImports(t *testing.T) {
	for folder, files := range goFolders(t) {
		r, ok := ruleFor(folder)
		if !ok {
			t.Errorf("folder %q has no line in deps_test.go: say what it may import, and why", folder)
			continue
		}
		for _, file := range files {
			for _, imp := range imports(t, file) {
				if why := r.refuses(imp, folder); why != "" {
					t.Errorf("%s imports %s: %s (%s)", file, imp, why, r.why)
				}
			}
		}
	}
}

func TestEveryRuleHasAFolder(t *testing.T) {
	folders := goFolders(t)
	for _, r := range rules {
		base, below := strings.CutSuffix(r.folder, "/...")
		found := false
		for f := range folders {
			found = found || f == base || below && strings.HasPrefix(f, base+"/")
		}
		if !found {
			t.Errorf("rule for %q has no folder", r.folder)
		}
	}
}

// refuses says why an import is not allowed, or nothing.
func (r *rule) refuses(imp, folder string) string {
	if rest, ok := strings.CutPrefix(imp, "lugwright/"); ok {
		if !slices.ContainsFunc(r.own, func(p string) bool { return covers(p, rest) }) {
			return "not among " + strings.Join(r.own, ", ")
		}
		if strings.HasPrefix(folder, "geometry/kinds/") && strings.HasPrefix(rest, "geometry/kinds/") {
			return "a kind never imports another kind"
		}
		return ""
	}
	if strings.Contains(strings.SplitN(imp, "/", 2)[0], ".") {
		if !slices.ContainsFunc(r.others, func(p string) bool { return imp == p || strings.HasPrefix(imp, p+"/") }) {
			return "third-party modules allowed here: " + strings.Join(r.others, ", ")
		}
		return ""
	}
	if r.pure && slices.ContainsFunc(impure, func(p string) bool { return imp == p || strings.HasPrefix(imp, p+"/") }) {
		return "a pure folder"
	}
	return ""
}

func covers(pattern, folder string) bool {
	if base, ok := strings.CutSuffix(pattern, "/..."); ok {
		return folder == base || strings.HasPrefix(folder, base+"/")
	}
	return pattern == folder
}

// ruleFor prefers an exact line over one that covers a whole tree.
func ruleFor(folder string) (*rule, bool) {
	var best *rule
	for i := range rules {
		r := &rules[i]
		if r.folder == folder {
			return r, true
		}
		if base, ok := strings.CutSuffix(r.folder, "/..."); ok && strings.HasPrefix(folder, base+"/") {
			best = r
		}
	}
	return best, best != nil
}

// goFolders lists the module's folders with their Go files, tests left out.
func goFolders(t *testing.T) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	err := filepath.WalkDir(".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (strings.HasPrefix(d.Name(), ".") && p != "." || d.Name() == "testdata" || p == "tools") {
			return filepath.SkipDir
		}
		if strings.HasSuffix(p, ".go") && !strings.HasSuffix(p, "_test.go") {
			dir := path.Dir(filepath.ToSlash(p))
			if dir == "." {
				dir = ""
			}
			out[dir] = append(out[dir], p)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func imports(t *testing.T, file string) []string {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	f, err := parser.ParseFile(token.NewFileSet(), file, src, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, s := range f.Imports {
		p, err := strconv.Unquote(s.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}

// TestGuideNamesWhatExists keeps DEVELOPERS.md and README.md honest: every folder and file they name in backquotes is there.
func TestGuideNamesWhatExists(t *testing.T) {
	for _, doc := range []string{"DEVELOPERS.md", "README.md"} {
		src, err := os.ReadFile(doc)
		if err != nil {
			t.Fatal(err)
		}
		for i, field := range strings.Split(string(src), "`") {
			if i%2 == 0 || strings.ContainsAny(field, " \n(*") || !strings.Contains(field, "/") && !strings.HasSuffix(field, ".md") && !strings.HasSuffix(field, ".go") {
				continue
			}
			if _, err := os.Stat(filepath.FromSlash(field)); err != nil && field != "." {
				t.Errorf("%s names %q, which is not there", doc, field)
			}
		}
	}
}
