package pack

// This file adds the shop's papers, and says what a pack cuts and buys, for the revision sheet of the next.

import (
	"context"
	"fmt"
	"slices"

	"lugwright/client/papers"
)

// papersFolder is where the papers are.
const papersFolder = "papers/"

// addShopPapers adds every paper that the job has something for.
func (a *assembly) addShopPapers() error {
	in := papers.Input{Result: a.Result, Vehicle: a.Vehicle, Thickness: a.Thickness, Version: a.Version, Warning: a.warning(), Before: a.Before, Drawings: a.Drawings}
	if a.Before != nil {
		var err error
		if in.Now, err = a.soFar(); err != nil {
			return err
		}
	}
	a.papers, a.missing = papers.All(in)
	a.addPapers(papersFolder, []string{".pdf"}, a.papers...)
	return nil
}

// soFar is what the pack cuts and buys, by the lists and cut files that are made.
func (a *assembly) soFar() (*papers.Made, error) {
	if err := a.makeFiles(); err != nil {
		return nil, err
	}
	manifest := a.manifest()
	return papers.MadeOf(func(name string) ([]byte, error) {
		if name == "manifest.json" {
			return manifest, nil
		}
		i := slices.IndexFunc(a.files, func(f file) bool { return f.name == name })
		if i < 0 {
			return nil, fmt.Errorf("the pack has no %s", name)
		}
		return a.files[i].data, nil
	})
}

// MadeOf makes the cut files and lists in memory and gives what a revision is held against; nil for a job that does not pass and is not forced.
func MadeOf(ctx context.Context, in Input) (*papers.Made, error) {
	in.Before = nil
	a := begun(in)
	if !a.cuts() {
		return nil, nil
	}
	if err := a.cutFiles(ctx); err != nil {
		return nil, err
	}
	return a.soFar()
}
