package server

import (
	"context"
	"errors"
	"fmt"
)

// errItem is what an item gets whose handling panicked.
var errItem = errors.New("fault inside the service at this item; its log has the details")

// Batch answers every item in order. An item that fails or panics gets what failed makes of its error, and the others their
// answers. Only the end of the context ends a batch early, in the middle of an item where the item looks at it.
func Batch[I, O any](ctx context.Context, in []I, one func(context.Context, I) (O, error), failed func(error) O) ([]O, error) {
	out := make([]O, len(in))
	for i := range in {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		o, err := guarded(ctx, i, in[i], one)
		if ended := ctx.Err(); ended != nil && errors.Is(err, ended) {
			return nil, ended
		}
		if err != nil {
			o = failed(err)
		}
		out[i] = o
	}
	return out, nil
}

func guarded[I, O any](ctx context.Context, i int, in I, one func(context.Context, I) (O, error)) (out O, err error) {
	defer func() {
		if p := recover(); p != nil {
			logPanic(ctx, p, fmt.Sprintf("item %d of a batch", i))
			err = errItem
		}
	}()
	return one(ctx, in)
}
