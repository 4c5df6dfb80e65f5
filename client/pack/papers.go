package pack

// This file adds papers, each as a page to look at and as a PDF to print.

import (
	"bytes"
	"path"

	"lugwright/client/paper"
	"lugwright/client/paper/html"
	"lugwright/client/paper/pdf"
	"lugwright/units"
)

// addPapers adds papers to a folder of the pack, empty for the pack itself. What stands on every page (job, revision, hash, tool, warning) and the
// size of the sheets are the job's.
func (a *assembly) addPapers(folder string, list ...*paper.Paper) error {
	made := make([][2]bytes.Buffer, len(list))
	err := together(2*len(list), func(k int) error {
		p := *list[k/2]
		p.Job, p.Revision, p.Hash, p.Tool = a.Job.Title, a.Job.Revision, a.Job.Hash(a.Version), "lugwright "+a.Version
		p.Warning, p.Letter = a.warning(), a.Job.Units == units.Inch
		if k%2 == 0 {
			return html.Write(&made[k/2][0], &p)
		}
		return pdf.Write(&made[k/2][1], &p)
	})
	if err != nil {
		return err
	}
	for i, p := range list {
		a.add(path.Join(folder, p.Name+".html"), made[i][0].Bytes())
		a.add(path.Join(folder, p.Name+".pdf"), made[i][1].Bytes())
	}
	return nil
}
