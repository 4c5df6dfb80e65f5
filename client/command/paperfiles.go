package command

// This file writes papers to files: each form by the ending of its name, several papers in one file or each in its own.

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lugwright/client/pack"
	"lugwright/client/paper"
	"lugwright/client/paper/html"
	"lugwright/client/paper/pdf"
	"lugwright/client/paper/text"
	"lugwright/client/papers"
)

// paperForm is a form of papers, by the ending of its files.
type paperForm struct {
	ending string
	write  func(io.Writer, *paper.Paper) error
}

var paperForms = []paperForm{{".pdf", pdf.Write}, {".html", html.Write}, {".txt", text.Write}}

func formNames() []string {
	var out []string
	for _, f := range paperForms {
		out = append(out, f.ending[1:])
	}
	return out
}

func formOf(ending string) (paperForm, bool) {
	i := slices.IndexFunc(paperForms, func(f paperForm) bool { return f.ending == ending })
	if i < 0 {
		return paperForm{}, false
	}
	return paperForms[i], true
}

// paperTarget is where papers go: one file, or a folder.
type paperTarget struct {
	path   string
	form   paperForm
	folder bool
}

// paperTargetOf reads the options before any work is done; nil: to the terminal.
func paperTargetOf(out, form string, formSet bool, name string) (*paperTarget, error) {
	f, known := formOf("." + form)
	switch {
	case !known:
		return nil, &usageError{fmt.Sprintf("--form %q is not a form of papers", form), "one of: " + strings.Join(formNames(), ", ")}
	case out == "" && formSet:
		return nil, &usageError{"--form is for files in a folder; -o names none", "usage: lugwright paper JOB NAME -o DIR --form " + form}
	case out == "":
		return nil, nil
	case name == "":
		return nil, &usageError{"-o needs the name of a paper", everyPaper + " is every one; without -o and a name they are listed"}
	}
	if ending := filepath.Ext(out); !strings.HasSuffix(out, "/") && ending != "" {
		g, ok := formOf(strings.ToLower(ending))
		switch {
		case !ok:
			return nil, &usageError{fmt.Sprintf("-o %s: papers are not written as %s", out, ending), "end the name in .pdf, .html or .txt; a folder's name ends in /"}
		case formSet && g.ending != f.ending:
			return nil, &usageError{fmt.Sprintf("-o %s is a %s file, and --form says %s", out, ending[1:], form), "the ending of the name is enough"}
		}
		return &paperTarget{path: out, form: g}, absent(out)
	}
	return &paperTarget{path: out, form: f, folder: true}, empty(out)
}

// write writes papers and names the files.
func (t *paperTarget) write(list []*paper.Paper, in papers.Input) ([]string, error) {
	if !t.folder {
		data, err := t.together(list)
		if err != nil {
			return nil, err
		}
		return []string{t.path}, writeFile(t.path, data)
	}
	made := make([]bytes.Buffer, len(list))
	for i, p := range list {
		if err := t.form.write(&made[i], p); err != nil {
			return nil, err
		}
	}
	if err := os.MkdirAll(t.path, 0o777); err != nil {
		return nil, &outputError{plainPathError(err)}
	}
	var names []string
	for i, p := range list {
		name := p.Name + t.form.ending
		if in.Warning != "" {
			name = pack.NotPassedName + name
		}
		file := filepath.Join(t.path, name)
		if err := writeFile(file, made[i].Bytes()); err != nil {
			for _, f := range names {
				os.Remove(f) //nolint:errcheck // the error at hand says more
			}
			return nil, err
		}
		names = append(names, file)
	}
	return names, nil
}

// together is papers in one file.
func (t *paperTarget) together(list []*paper.Paper) ([]byte, error) {
	var out bytes.Buffer
	if t.form.ending == ".txt" {
		err := writeTexts(&out, list)
		return out.Bytes(), err
	}
	err := t.form.write(&out, bound(list))
	return out.Bytes(), err
}

// writeTexts writes papers one after the other, with a line between.
func writeTexts(w io.Writer, list []*paper.Paper) error {
	for i, p := range list {
		if i > 0 {
			if _, err := fmt.Fprintf(w, "%s\n\n", strings.Repeat("=", columns)); err != nil {
				return err
			}
		}
		if err := text.Write(w, p); err != nil {
			return err
		}
	}
	return nil
}

// bound is several papers as one, each a section on a page of its own.
func bound(list []*paper.Paper) *paper.Paper {
	if len(list) == 1 {
		return list[0]
	}
	out := *list[0]
	out.Name, out.Title, out.Blocks = "papers", "Papers", nil
	for i, p := range list {
		if i > 0 {
			out.Blocks = append(out.Blocks, &paper.NewPage{})
		}
		out.Blocks = append(out.Blocks, &paper.Heading{Level: 2, Text: p.Title, ID: p.Name})
		for _, b := range p.Blocks {
			if h, ok := b.(*paper.Heading); ok {
				below := *h
				below.Level = min(h.Level+1, 4)
				b = &below
			}
			out.Blocks = append(out.Blocks, b)
		}
	}
	return &out
}
