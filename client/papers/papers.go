// Package papers says what stands on the shop's papers: for the welder, the drill press, the counter, the bench and the truck. It never computes a bracket, a
// check or a load, and knows no form in which a paper is written.
//
//	papers.go      the papers, in the order in which they are used, and what they are made from
//	page.go        a paper being filled: numbers in the job's units, tables, cautions
//	pieces.go      distinct plates and members, counted; marks; joint numbers
//	hardware.go    the bolt that fits a stack: standard lengths, threads
//	railholes.go   what survey and guides make of holes in a rail
//	shopping.go    what is bought, for the buy list and its file
//	made.go        what of a pack a revision is held against
//	others         one file a paper
package papers

import (
	"sync"

	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/plots"
	"lugwright/client/run"
	"lugwright/units"
)

// Input is what papers are made from.
type Input struct {
	Result  *run.Result  // with what tools cannot reach looked for
	Vehicle *run.Vehicle // nil where the job has none
	// Thickness is brackets over the plates that the job has; nil where it names none.
	Thickness *plots.Group
	Version   string // of the tool
	Warning   string // first line of every paper; empty for none
	Now       *Made  // what this pack cuts and buys; nil where nothing is compared
	Before    *Made  // the same of an earlier pack; nil for none
	// Drawings are those of the brackets that others show too; nil: they are drawn for the papers alone.
	Drawings drawings.Sets
}

// Kind is one of the papers.
type Kind struct {
	Name  string // of its file, and by which it is asked for: "torque-card"
	Title string
	Use   string // who does what with it, in a few words
	// fill writes the blocks, or says why the job has none.
	fill func(p *page) (why string)
}

// Kinds lists every paper in the order of use.
func Kinds() []Kind {
	return []Kind{
		{"revision-sheet", "Revision sheet", "what changed since an earlier pack, and which parts already cut are wrong", revisionSheet},
		{"buy-list", "Buy list", "what is bought: bolts with their lengths, nuts, pins, rods, and what else is used up", buyList},
		{"receiving-card", "Receiving card", "what comes from the cutting shop, measured before it is used", receivingCard},
		{"hole-schedule", "Hole schedule", "how each hole is made, in the parts and in the frame", holeSchedule},
		{"drill-template", "Drill template", "holes in the frame and in parts marked through paper at full scale", drillTemplate},
		{"bend-card", "Bend card", "folds in order: angle, radius, direction, and what to measure", bendCard},
		{"fit-sequence", "Jig, tack and fit sequence", "what is fixed first, tacked, welded and let cool", fitSequence},
		{"filler-notes", "Filler, preheat and distortion notes", "what to weld with, how warm, and how it draws", fillerNotes},
		{"weld-map", "Weld map", "each joint: size, length, sides, order, access", weldMap},
		{"paint-map", "Paint and mask map", "what stays bare, what is thin, what is sealed", paintMap},
		{"lift-plan", "Lift plan", "jacks and their shares, cribbing, order", liftPlan},
		{"torque-card", "Torque card", "how each bolt is tightened, and where torque is not the way", torqueCard},
		{"plots", "Plots", "rails, mounts, gaps and thicknesses as pictures", plotsOf},
		{"twist-test", "Twist-test card", "wheels lifted, gaps expected and read", twistTest},
		{"inspection-log", "Inspection and log card", "re-torque, grease, where to look for cracks, wear", inspectionLog},
	}
}

// Find gives a paper by its name.
func Find(name string) (Kind, bool) {
	for _, k := range Kinds() {
		if k.Name == name {
			return k, true
		}
	}
	return Kind{}, false
}

// Of makes the paper; nil, and why, where the job has nothing for it.
func (k Kind) Of(in Input) (p *paper.Paper, why string) {
	page := &page{in: in, system: in.Result.Job.Units}
	if why := k.fill(page); why != "" {
		return nil, why
	}
	j := in.Result.Job
	return &paper.Paper{
		Name: k.Name, Title: k.Title, Job: j.Title, Revision: j.Revision, Hash: j.Hash(in.Version), Tool: "lugwright " + in.Version, Warning: in.Warning,
		Letter: j.Units == units.Inch, Blocks: page.blocks,
	}, ""
}

// Missing is a paper that a job does not have, and why.
type Missing struct{ Name, Title, Why string }

// All makes every paper that the job has something for, in the order of use and on every core, and names the others.
func All(in Input) (made []*paper.Paper, missing []Missing) {
	kinds := Kinds()
	list, why := make([]*paper.Paper, len(kinds)), make([]string, len(kinds))
	var all sync.WaitGroup
	for i := range kinds {
		all.Go(func() { list[i], why[i] = kinds[i].Of(in) })
	}
	all.Wait()
	for i, k := range kinds {
		if list[i] != nil {
			made = append(made, list[i])
		} else {
			missing = append(missing, Missing{k.Name, k.Title, why[i]})
		}
	}
	return made, missing
}
