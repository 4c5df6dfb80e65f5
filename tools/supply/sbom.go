package main

// A bill of materials in CycloneDX, of what the linker says is in a program.

import (
	"bytes"
	"debug/buildinfo"
	"fmt"
	"io"
	"path"

	"github.com/CycloneDX/cyclonedx-go"
)

// specification is the version of CycloneDX that is written.
const specification = cyclonedx.SpecVersion1_6

// sbom writes the bill of a program built from the module in a folder: the same bytes for the same program, so no clock and no serial number;
// and nothing that does not fit the schema.
func sbom(w io.Writer, dir, program string) error {
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return err
	}
	known, err := modules(dir)
	if err != nil {
		return err
	}
	licences := map[string]string{}
	for _, m := range known {
		licences[m.Path] = m.licence
	}
	root := cyclonedx.Component{
		BOMRef: "program", Type: cyclonedx.ComponentTypeApplication, Name: path.Base(info.Path), Version: info.Main.Version,
		Properties: &[]cyclonedx.Property{{Name: "go:package", Value: info.Path}},
	}
	for _, s := range info.Settings {
		*root.Properties = append(*root.Properties, cyclonedx.Property{Name: "go:build:" + s.Key, Value: s.Value})
	}
	parts := []cyclonedx.Component{library("std", info.GoVersion, licences["std"])}
	needs := []string{parts[0].BOMRef}
	for _, d := range info.Deps {
		if d.Replace != nil {
			d = d.Replace
		}
		if licences[d.Path] == "" {
			return fmt.Errorf("%s is in %s and not among the modules of %s", d.Path, program, dir)
		}
		c := library(d.Path, d.Version, licences[d.Path])
		c.Properties = &[]cyclonedx.Property{{Name: "go:sum", Value: d.Sum}}
		parts, needs = append(parts, c), append(needs, c.BOMRef)
	}
	b := cyclonedx.NewBOM()
	b.Metadata = &cyclonedx.Metadata{Component: &root}
	b.Components = &parts
	b.Dependencies = &[]cyclonedx.Dependency{{Ref: root.BOMRef, Dependencies: &needs}}
	var out bytes.Buffer
	if err := cyclonedx.NewBOMEncoder(&out, cyclonedx.BOMFileFormatJSON).SetPretty(true).EncodeVersion(b, specification); err != nil {
		return err
	}
	if err := fits(out.Bytes()); err != nil {
		return fmt.Errorf("the bill does not fit the schema: %w", err)
	}
	_, err = w.Write(out.Bytes())
	return err
}

func library(module, version, licence string) cyclonedx.Component {
	c := cyclonedx.Component{
		Type: cyclonedx.ComponentTypeLibrary, Name: module, Version: version,
		PackageURL: fmt.Sprintf("pkg:golang/%s@%s", module, version), Licenses: &cyclonedx.Licenses{{Expression: licence}},
	}
	c.BOMRef = c.PackageURL
	return c
}
