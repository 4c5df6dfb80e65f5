// Package html writes a paper as one web page that asks for nothing else. It never decides what a paper says, and knows no bracket.
//
//	html.go    Write
//	page.go    the paper as the page has it: sections, names of places in it
//	page.tmpl  the page; page.css, page.js go into it
package html

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"lugwright/client/paper"
)

// Write writes a paper. The same paper gives the same bytes. Errors are those of the drawings and of w.
func Write(w io.Writer, p *paper.Paper) error {
	page, err := pageOf(p)
	if err != nil {
		return err
	}
	if b, ok := w.(*bytes.Buffer); ok {
		b.Grow(page.size())
	}
	return parsed().Execute(w, page)
}

var (
	//go:embed page.tmpl
	text string
	//go:embed page.css
	look string
	//go:embed page.js
	help string
)

// parsed is the template, read when the first page is written: commands that write none do not wait for it.
var parsed = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Funcs(template.FuncMap{
		"quoted": quoted,
		"look":   func() template.CSS { return template.CSS(look) },
		"help":   func() template.JS { return template.JS(help) },
	}).Parse(text))
})

// quoted is a text as a string of CSS: whatever is no letter or digit is written by its number.
func quoted(text string) template.CSS {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		if r == ' ' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\%x `, r)
		}
	}
	b.WriteByte('"')
	return template.CSS(b.String())
}
