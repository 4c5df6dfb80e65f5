package pack

// This file says what a pack cuts and buys without writing it, for the revision sheet.

import (
	"context"
	"fmt"
	"slices"

	"lugwright/client/papers"
)

// MadeOf makes the pack in memory and gives what a revision is held against; nil for a job that does not pass and is not forced.
func MadeOf(ctx context.Context, in Input) (*papers.Made, error) {
	a := &assembly{Input: in, forms: formsOf(&in.Job.Shop)}
	if !a.cuts() {
		return nil, nil
	}
	files, err := assemble(ctx, in)
	if err != nil {
		return nil, err
	}
	return papers.MadeOf(func(name string) ([]byte, error) {
		i := slices.IndexFunc(files, func(f file) bool { return f.name == name })
		if i < 0 {
			return nil, fmt.Errorf("the pack has no %s", name)
		}
		return files[i].data, nil
	})
}
