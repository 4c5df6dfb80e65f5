package job

// This file gives a job its canonical form and its hash.

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
)

// Canonical is the job without its file's name and layout: two files that mean the same give the same bytes.
func (j *Job) Canonical() []byte {
	if j.canonical != nil {
		return j.canonical
	}
	c := *j
	c.File = ""
	out, err := json.Marshal(&c)
	if err != nil {
		panic("job: a job that was read has only finite numbers: " + err.Error())
	}
	return out
}

// Hash is the SHA-256 of the canonical form and the tool's version, in hexadecimal. It is printed on every paper.
func (j *Job) Hash(version string) string {
	h := sha256.New()
	h.Write([]byte("lugwright " + version + "\n"))
	h.Write(j.Canonical())
	return hex.EncodeToString(h.Sum(nil))
}
