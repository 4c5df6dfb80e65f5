package pack

// This file adds papers, as PDF to print and as pages to look at.

import (
	"bytes"
	"io"

	"lugwright/client/paper"
	"lugwright/client/paper/html"
	"lugwright/client/paper/pdf"
	"lugwright/units"
)

// addPapers adds papers to a folder of the pack, empty for the pack itself, in each form by its file name's ending. What stands on every page (job,
// revision, hash, tool, warning) and the size of the sheets are the job's.
func (a *assembly) addPapers(folder string, forms []string, list ...*paper.Paper) error {
	made := make([]bytes.Buffer, len(forms)*len(list))
	err := together(len(made), func(k int) error {
		p := *list[k/len(forms)]
		p.Job, p.Revision, p.Hash, p.Tool = a.Job.Title, a.Job.Revision, a.Job.Hash(a.Version), "lugwright "+a.Version
		p.Warning, p.Letter = a.warning(), a.Job.Units == units.Inch
		return paperForms[forms[k%len(forms)]](&made[k], &p)
	})
	if err != nil {
		return err
	}
	for k := range made {
		a.add(folder+list[k/len(forms)].Name+forms[k%len(forms)], made[k].Bytes())
	}
	return nil
}

// paperForms are the forms of papers by the ending of a file's name.
var paperForms = map[string]func(io.Writer, *paper.Paper) error{".html": html.Write, ".pdf": pdf.Write}
