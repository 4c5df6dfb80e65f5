package shopfile

import (
	"embed"
	"path"
	"strings"

	"lugwright/client/table"
	"lugwright/client/yamlfile"
	"lugwright/geometry/shop"
	"lugwright/part"
)

//go:embed shipped/*.yaml
var shipped embed.FS

const instead = "write a shop file such as `lugwright shops laser` prints"

// Names lists the shipped shops.
func Names() []string {
	entries, err := shipped.ReadDir("shipped")
	if err != nil {
		panic("shopfile: " + err.Error())
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	return names
}

// Shipped gives a shipped shop's file; not ok for another name.
func Shipped(name string) (src []byte, ok bool) {
	src, err := shipped.ReadFile(path.Join("shipped", name+".yaml"))
	return src, err == nil
}

// Read reads a shop file; file is its name for messages. The error is a yamlfile.Errors that lists everything that is wrong.
func Read(file string, src []byte) (*shop.Profile, error) {
	r, err := table.Read(file, src, instead, rule())
	if err != nil {
		return nil, err
	}
	s := decode(r.Root)
	if err := s.Validate(); err != nil {
		return nil, located(file, r, err)
	}
	return s, nil
}

// located gives the faults of a profile as a whole their places in the file.
func located(file string, r *table.Reading, err error) error {
	var out yamlfile.Errors
	for _, f := range part.Fields(err) {
		var at yamlfile.Place
		for path := f.Field; at == (yamlfile.Place{}) && path != ""; path = table.Parent(path) {
			at = r.Places[path]
		}
		out = append(out, &yamlfile.Error{File: file, At: at, Field: f.Field, Found: f.Found, Accept: f.Accept})
	}
	return out.Sorted()
}
