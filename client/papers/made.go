package papers

// This file holds what of a pack a revision is held against: read from the lists of any pack, old or new, alike.

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// Made is what a pack cuts, saws, welds and buys.
type Made struct {
	Job, Revision, Hash, Version string
	Passed, CutFiles             bool
	Plates                       []Cut
	Sawn, Welds, Bought          []Line
}

// Cut is a plate with the hash of its cut file in the shop's first form.
type Cut struct {
	Mark, Hand, What, File, SHA256 string
	Count                          string
	Measures                       string // size, mass, cut length, holes and their places
	Shared                         bool   // other plates are in the same file
}

// Line is a row of a list: what names it, how many of it, and everything else that is said of it.
type Line struct {
	Key, Count string
	Said       []Said
}

// Said is a column's head and what stands there.
type Said struct{ Name, Value string }

// manifest is what is read of a pack's manifest.json.
type manifest struct {
	Format   int    `json:"format"`
	Version  string `json:"version"`
	Job      string `json:"job"`
	Revision string `json:"revision"`
	JobHash  string `json:"job_sha256"`
	Passed   bool   `json:"passed"`
	CutFiles bool   `json:"cut_files"`
	Files    []struct {
		Name   string `json:"name"`
		SHA256 string `json:"sha256"`
	} `json:"files"`
}

// marked is what stands before the name of every file of a job that does not pass but is released.
const marked = "NOT-PASSED-"

// MadeOf reads a pack by its manifest and lists. Read gives a file by its name in the pack; what the manifest does not name is not there.
func MadeOf(read func(name string) ([]byte, error)) (*Made, error) {
	data, err := read("manifest.json")
	if err != nil {
		if data, err = read(marked + "manifest.json"); err != nil {
			return nil, fmt.Errorf("no manifest.json: %w", err)
		}
	}
	var m manifest
	if err := json.Unmarshal(data, &m); err != nil {
		return nil, fmt.Errorf("manifest.json: %w", err)
	}
	if m.Format != 1 {
		return nil, fmt.Errorf("manifest.json is of format %d; 1 is known", m.Format)
	}
	out := &Made{Job: m.Job, Revision: m.Revision, Hash: m.JobHash, Version: m.Version, Passed: m.Passed, CutFiles: m.CutFiles}
	sums := map[string]string{}
	for _, f := range m.Files {
		sums[f.Name] = f.SHA256
	}
	list := func(name string) ([]map[string]string, error) {
		for _, n := range []string{name, marked + name} {
			if sums[n] != "" {
				data, err := read(n)
				if err != nil {
					return nil, err
				}
				return rows(n, data)
			}
		}
		return nil, nil
	}
	return out, out.fill(list, sums)
}

func (m *Made) fill(list func(string) ([]map[string]string, error), sums map[string]string) error {
	cut, err := list("cut-list.csv")
	if err != nil {
		return err
	}
	holes, err := list("hole-list.csv")
	if err != nil {
		return err
	}
	files := map[string]int{}
	for _, r := range cut {
		files[r["file"]]++
	}
	for _, r := range cut {
		if r["mark"] != "TOTAL" {
			m.Plates = append(m.Plates, Cut{
				Mark: r["mark"], Hand: r["hand"], What: r["thickness_mm"] + " mm " + r["material"], File: r["file"], SHA256: sums[r["file"]], Count: r["qty"],
				Measures: measures(r, holes), Shared: files[r["file"]] > 1,
			})
		}
	}
	for _, l := range []struct {
		name string
		to   *[]Line
		key  []string
	}{
		{"saw-list.csv", &m.Sawn, []string{"mark"}},
		{"placing-list.csv", &m.Welds, []string{"bracket", "weld"}},
		{"buy-list.csv", &m.Bought, []string{"item", "size", "grade_or_material", "grip_mm", "length_mm"}},
	} {
		got, err := list(l.name)
		if err != nil {
			return err
		}
		for _, r := range got {
			if r[l.key[0]] != "TOTAL" {
				*l.to = append(*l.to, lineOf(r, l.key))
			}
		}
	}
	return nil
}

// measures are what the lists say of a plate's shape.
func measures(plate map[string]string, holes []map[string]string) string {
	var out []string
	for _, name := range []string{"width_mm", "height_mm", "mass_each_kg", "cut_length_each_mm", "pierces_each", "holes", "forming"} {
		out = append(out, plate[name])
	}
	for _, h := range holes {
		if h["mark"] == plate["mark"] {
			out = append(out, h["hole"]+" "+h["x_mm"]+" "+h["y_mm"]+" "+h["finished_mm"]+" "+h["cut_mm"]+" "+h["thread"])
		}
	}
	return strings.Join(out, "; ")
}

// shown are the columns that say what a row is, in the order in which they are told.
var shown = []string{
	"section", "material", "length_mm", "holes_seen_on_the_outer_face_heel_down", "part", "on", "side", "from_1", "at_1_mm", "from_2", "at_2_mm", "turned_deg", "kind",
	"leg_mm", "faces", "runs", "filler", "notes",
}

func lineOf(r map[string]string, key []string) Line {
	var names []string
	for _, name := range key {
		if r[name] != "" {
			names = append(names, r[name])
		}
	}
	out := Line{Key: strings.Join(names, " "), Count: r["qty"]}
	for _, name := range shown {
		if r[name] != "" && !slices.Contains(key, name) {
			out.Said = append(out.Said, Said{strings.ReplaceAll(name, "_", " "), r[name]})
		}
	}
	return out
}

// rows reads a list, below the warning where there is one.
func rows(name string, data []byte) ([]map[string]string, error) {
	r := csv.NewReader(bytes.NewReader(data))
	r.FieldsPerRecord = -1
	all, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	for len(all) > 0 && len(all[0]) < 3 {
		all = all[1:]
	}
	if len(all) == 0 {
		return nil, nil
	}
	var out []map[string]string
	for _, cells := range all[1:] {
		one := map[string]string{}
		for i, head := range all[0] {
			if i < len(cells) {
				one[head] = cells[i]
			}
		}
		out = append(out, one)
	}
	return out, nil
}
