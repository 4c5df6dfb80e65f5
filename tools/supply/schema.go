package main

// The bill is held against the published schema, which comes with the library that writes it.

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// fits says whether a bill is one by the schema of its version.
func fits(bill []byte) error {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/CycloneDX/cyclonedx-go").Output()
	if err != nil {
		return fmt.Errorf("where the schema lies: %w", err)
	}
	dir := filepath.Join(strings.TrimSpace(string(out)), "schema")
	c := jsonschema.NewCompiler()
	for _, name := range []string{"spdx.schema.json", "jsf-0.82.schemax.json", "bom-" + specification.String() + ".schema.json"} {
		src, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
		if err != nil {
			return err
		}
		url := "http://cyclonedx.org/schema/" + strings.Replace(name, "schemax", "schema", 1)
		if err := c.AddResource(url, doc); err != nil {
			return err
		}
	}
	s, err := c.Compile("http://cyclonedx.org/schema/bom-" + specification.String() + ".schema.json")
	if err != nil {
		return err
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(bill))
	if err != nil {
		return err
	}
	return s.Validate(doc)
}
