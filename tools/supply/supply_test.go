package main

import (
	"strings"
	"testing"
)

// A bill that says something else than the schema allows is refused.
func TestFits(t *testing.T) {
	good := `{"bomFormat": "CycloneDX", "specVersion": "1.6", "version": 1, "components": [{"type": "library", "name": "x", "version": "v1",
		"bom-ref": "pkg:golang/x@v1", "purl": "pkg:golang/x@v1", "licenses": [{"expression": "MIT"}]}]}`
	if err := fits([]byte(good)); err != nil {
		t.Error(err)
	}
	for _, spoil := range []string{`"library"/"libary"`, `"CycloneDX"/"Cyclone"`, `"name"/"nome"`, `"version": 1,/"version": 0,`} {
		from, to, _ := strings.Cut(spoil, "/")
		if fits([]byte(strings.Replace(good, from, to, 1))) == nil {
			t.Errorf("%s is let through", spoil)
		}
	}
}

// A licence that is not known for sure is an error.
func TestUnknownLicence(t *testing.T) {
	if err := (&module{Path: "x", Dir: t.TempDir()}).read(); err == nil || !strings.Contains(err.Error(), "x: no licence in") {
		t.Errorf("%v", err)
	}
}
