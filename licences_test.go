package lugwright

import (
	"os"
	"regexp"
	"testing"
)

// docs/licences.md has every module that go.mod requires, in the version that it requires.
func TestLicencesAreListed(t *testing.T) {
	mod, err := os.ReadFile("go.mod")
	if err != nil {
		t.Fatal(err)
	}
	page, err := os.ReadFile("docs/licences.md")
	if err != nil {
		t.Fatal(err)
	}
	required := regexp.MustCompile(`(?m)^\s(\S+\.\S+) (v\S+)`).FindAllSubmatch(mod, -1)
	if len(required) < 10 {
		t.Fatalf("%d modules found in go.mod", len(required))
	}
	for _, m := range required {
		line := regexp.MustCompile(`(?m)^\| ` + regexp.QuoteMeta(string(m[1])) + ` \| ` + regexp.QuoteMeta(string(m[2])) + ` \| [A-Z]\S+`)
		if !line.Match(page) {
			t.Errorf("%s %s is not in docs/licences.md: run go run -C tools/supply . licences ../..", m[1], m[2])
		}
	}
}
