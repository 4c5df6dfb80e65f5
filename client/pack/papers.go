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
func (a *assembly) addPapers(folder string, forms []string, list ...*paper.Paper) {
	for _, one := range list {
		p := *one
		p.Job, p.Revision, p.Hash, p.Tool = a.Job.Title, a.Job.Revision, a.Job.Hash(a.Version), "lugwright "+a.Version
		p.Warning, p.Letter = a.warning(), a.Job.Units == units.Inch
		for _, form := range forms {
			a.addLater(folder+p.Name+form, func() ([]byte, error) {
				var b bytes.Buffer
				err := paperForms[form](&b, &p)
				return b.Bytes(), err
			})
		}
	}
}

// paperForms are the forms of papers by the ending of a file's name.
var paperForms = map[string]func(io.Writer, *paper.Paper) error{".html": html.Write, ".pdf": pdf.Write}
