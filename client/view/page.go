package view

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"regexp"
	"strings"
	"sync"
)

//go:embed page.tmpl
var pageText string

var parsed = sync.OnceValue(func() *template.Template { return template.Must(template.New("page").Parse(pageText)) })

// told is what the templates are filled with.
type told struct {
	*Site
	Errors  []string
	Old     bool
	Version string
	First   bool
}

func tell(name string, t told) []byte {
	var out bytes.Buffer
	if err := parsed().ExecuteTemplate(&out, name, t); err != nil {
		panic(err) // the templates are ours, and take what told has
	}
	return out.Bytes()
}

func errorsOf(failed error) []string {
	if failed == nil {
		return nil
	}
	return strings.Split(failed.Error(), "\n")
}

// firstPage lists the pages.
func firstPage(site *Site, failed error) []byte {
	if site == nil {
		site = &Site{Title: "No result yet"}
		if failed == nil {
			site.Lines = []Line{{Words: "The job is being checked; this page shows itself anew once it is."}}
		}
	}
	return tell("first", told{Site: site, Errors: errorsOf(failed)})
}

func lostPage() []byte { return tell("lost", told{}) }

// top stands above every page: the way back, what is wrong with the job, and whether the page is of an older state of it.
func top(site *Site, failed error, version string, first bool) []byte {
	return tell("top", told{Site: site, Errors: errorsOf(failed), Old: failed != nil && site != nil, Version: version, First: first})
}

var (
	ownPolicy = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`<meta http-equiv="Content-Security-Policy"[^>]*>\n?`)
	})
	inline = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?s)<script>(.*?)</script>`) })
)

// set puts the top into a page, whose own policy gives way to the server's, and gives the hashes of its scripts.
func set(page, top []byte) (out []byte, hashes []string) {
	page = ownPolicy().ReplaceAllLiteral(page, nil)
	for _, m := range inline().FindAllSubmatch(page, -1) {
		sum := sha256.Sum256(m[1])
		hashes = append(hashes, base64.StdEncoding.EncodeToString(sum[:]))
	}
	return bytes.Replace(page, []byte("<body>"), append([]byte("<body>\n"), top...), 1), hashes
}
