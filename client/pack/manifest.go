package pack

// This file adds manifest.json: what the pack holds, so that a file that was changed or lost shows.

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
)

// manifest lists every file but itself, in the order of their names.
type manifest struct {
	Format   int            `json:"format"`
	Tool     string         `json:"tool"`
	Version  string         `json:"version"`
	Job      string         `json:"job"`
	Revision string         `json:"revision"`
	JobHash  string         `json:"job_sha256"`
	Passed   bool           `json:"passed"`
	CutFiles bool           `json:"cut_files"`
	Files    []manifestFile `json:"files"`
}

type manifestFile struct {
	Name   string `json:"name"`
	Bytes  int    `json:"bytes"`
	SHA256 string `json:"sha256"`
}

func (a *assembly) addManifest() { a.add("manifest.json", a.manifest()) }

func (a *assembly) manifest() []byte {
	m := manifest{
		Format: 1, Tool: "lugwright", Version: a.Version, Job: a.Job.Title, Revision: a.Job.Revision,
		JobHash: a.Job.Hash(a.Version), Passed: a.Result.Passes(), CutFiles: a.cuts(), Files: make([]manifestFile, len(a.files)),
	}
	together(len(a.files), func(i int) error { //nolint:errcheck // nothing can fail
		f := &a.files[i]
		sum := sha256.Sum256(f.data)
		m.Files[i] = manifestFile{f.name, len(f.data), hex.EncodeToString(sum[:])}
		return nil
	})
	data, err := json.MarshalIndent(&m, "", "  ")
	if err != nil {
		panic("pack: a manifest has only words and whole numbers: " + err.Error())
	}
	return append(data, '\n')
}
