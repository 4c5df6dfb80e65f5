package pack

// This file holds Write and what it is given.

import (
	"cmp"
	"context"
	"path"
	"slices"

	"lugwright/client/drawings"
	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/papers"
	"lugwright/client/plots"
	"lugwright/client/run"
	"lugwright/client/sheet"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
)

// Services are the calls that a pack needs of both services, several at a time; *dial.Client has them.
type Services interface {
	Cards(context.Context) ([]strength.Card, error)
	Materials(context.Context) (*dial.Materials, error)
	Export(context.Context, *part.Bracket, []dial.Format, dial.CutStyle) ([][]dial.File, error)
	ExportSheet(context.Context, dial.Sheet) (dial.File, error)
}

// Input is a checked job. Result should come from a run with Trace on, else the calc sheet has no formulas.
type Input struct {
	Job     *job.Job
	Result  *run.Result
	Client  Services
	Version string       // of the tool, printed on every paper
	Vehicle *run.Vehicle // nil where the job has none
	Before  *papers.Made // an earlier pack, for the revision sheet; nil for none
	// Thickness is brackets over the plates that the job has, for the plots; nil where it names none.
	Thickness *plots.Group
	// Drawings are those of the brackets that others show too; nil: they are drawn for this alone.
	Drawings drawings.Sets
	Force    bool // write cut files although the job does not pass, and mark every paper and file name
	// Say takes a line that the user should see beside the pack; nil: nobody listens.
	Say func(line string)
}

// GCPercent suits a process that writes a pack and ends.
const GCPercent = 400

// Write writes the pack to the folder dir, which must not exist or be empty. A job that does not pass gets a calc sheet, a
// README.txt that says why, and a manifest; cut files only with Force.
//
// Everything is made in memory, written to a new folder beside dir and renamed, so that dir is there whole or not at all.
// The same input gives the same bytes. Errors are *NotEmptyError, *WriteError, *UnsoundError, part.FieldErrors for what the
// lists do not know, the services' errors, and the context's.
func Write(ctx context.Context, dir string, in Input) error {
	return write(ctx, dir, in, writeFile)
}

func write(ctx context.Context, dir string, in Input, put putFile) error {
	to, err := claim(dir)
	if err != nil {
		return err
	}
	files, err := assemble(ctx, in)
	if err != nil {
		return err
	}
	return to.release(ctx, files, put)
}

// file is one file of the pack. Its name has slashes and is relative to the pack.
type file struct {
	name string
	data []byte
	make func() ([]byte, error) // gives the data, nil once they are there
}

// assembly is a pack being made.
type assembly struct {
	Input
	forms   []form // of the job's shop
	pieces  []*piece
	stocks  []stock // the pieces by thickness and material
	members []*section
	made    exports
	files   []file
	noRoom  string // pieces that the stock sheets have no room for, in words
	papers  []*paper.Paper
	missing []papers.Missing
}

// assemble makes every file, in the order of their names, the manifest among them.
func assemble(ctx context.Context, in Input) ([]file, error) {
	a := begun(in)
	if words := a.vehicleFails(); words != "" && a.Say != nil {
		a.Say(words)
	}
	if err := a.calcSheet(ctx); err != nil {
		return nil, err
	}
	if a.cuts() {
		if err := a.cutFiles(ctx); err != nil {
			return nil, err
		}
		if err := a.addShopPapers(); err != nil {
			return nil, err
		}
	}
	if err := a.makeFiles(); err != nil {
		return nil, err
	}
	a.addReadme()
	slices.SortFunc(a.files, func(x, y file) int { return cmp.Compare(x.name, y.name) })
	a.addManifest()
	return a.files, ctx.Err()
}

func begun(in Input) *assembly {
	if in.Drawings == nil {
		in.Drawings = DrawingsOf(in.Result)
	}
	return &assembly{Input: in, forms: formsOf(&in.Job.Shop)}
}

// cuts says whether cut files are released.
func (a *assembly) cuts() bool { return a.Result.Passes() || a.Force }

// cutFiles adds all that a job which does not pass goes without.
func (a *assembly) cutFiles(ctx context.Context) error {
	if err := a.shopFiles(ctx); err != nil {
		return err
	}
	a.drawPlates()
	a.drawBrackets()
	return nil
}

// shopFiles adds what programs of a shop read: cut files, shapes and lists.
func (a *assembly) shopFiles(ctx context.Context) error {
	for _, step := range []func(context.Context) error{
		a.gather, a.exportAll, a.addDXF, a.addNest, a.addShapes, a.addCutList, a.addHoleList, a.addSawList, a.addPlacingList, a.addBuyList,
	} {
		if err := step(ctx); err != nil {
			return err
		}
	}
	return nil
}

func (a *assembly) calcSheet(ctx context.Context) error {
	p, err := a.sheetPaper(ctx)
	if err != nil {
		return err
	}
	a.addPapers("", []string{".pdf", ".html"}, p)
	return nil
}

func (a *assembly) sheetPaper(ctx context.Context) (*paper.Paper, error) {
	card, err := a.card(ctx)
	if err != nil {
		return nil, err
	}
	a.drawFigures()
	return sheet.Paper(sheet.Input{Result: a.Result, Card: card, Version: a.Version, Warning: a.warning(), Vehicle: a.Vehicle, Thickness: a.Thickness, Drawing: a.figures}), nil
}

// CalcSheet is the calc sheet alone, marked where the job does not pass.
func CalcSheet(ctx context.Context, in Input) (*paper.Paper, error) {
	in.Force = true
	return begun(in).sheetPaper(ctx)
}

// CalcSheetName is that of the calc sheet's file, without an ending.
const CalcSheetName = "calc-sheet"

// card is that of the job's basis.
func (a *assembly) card(ctx context.Context) (strength.Card, error) {
	cards, err := a.Client.Cards(ctx)
	if err != nil {
		return strength.Card{}, err
	}
	i := slices.IndexFunc(cards, func(c strength.Card) bool { return c.Name == a.Job.Basis })
	if i < 0 {
		return strength.Card{}, &part.FieldError{Field: "basis", Found: a.Job.Basis + " is not among the service's bases", Accept: "one that `lugwright limits` lists"}
	}
	return cards[i], nil
}

func (a *assembly) add(name string, data []byte) {
	a.files = append(a.files, file{name: a.marked(name), data: data})
}

// addLater adds a file that is made together with others. The ones that take longest come first, so that the cores share evenly.
func (a *assembly) addLater(name string, make func() ([]byte, error)) {
	a.files = append(a.files, file{name: a.marked(name), make: make})
}

// makeFiles makes what was added for later, on every core.
func (a *assembly) makeFiles() error {
	return together(len(a.files), func(i int) (err error) {
		if f := &a.files[i]; f.make != nil {
			f.data, err = f.make()
			f.make = nil
		}
		return err
	})
}

// marked is a file's name, marked where cut files are released despite the verdict.
func (a *assembly) marked(name string) string {
	return path.Join(path.Dir(name), a.prefix()+path.Base(name))
}

func (a *assembly) prefix() string {
	if a.Force && !a.Result.Passes() {
		return NotPassedName
	}
	return ""
}
