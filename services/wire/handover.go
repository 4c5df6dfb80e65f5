package wire

import (
	"context"
	"sync"

	"lugwright/part"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// Handover lets services of one process pass brackets on as they are. A message that stands for one goes from service to service in its place, and is known by
// its address alone.
type Handover struct {
	mu       sync.Mutex
	brackets map[*partpb.Bracket]*part.Bracket
}

type handoverKey struct{}

// WithHandover gives the calls of a context a handover.
func WithHandover(ctx context.Context) context.Context {
	return context.WithValue(ctx, handoverKey{}, &Handover{brackets: map[*partpb.Bracket]*part.Bracket{}})
}

// HandoverOf is a call's, nil where it has none: the caller is elsewhere, or reads the brackets.
func HandoverOf(ctx context.Context) *Handover {
	h, _ := ctx.Value(handoverKey{}).(*Handover)
	return h
}

// Encode writes a bracket, or what stands for it.
func (h *Handover) Encode(b *part.Bracket) *partpb.Bracket {
	if h == nil {
		return EncodeBracket(b)
	}
	m := &partpb.Bracket{Name: b.Name}
	h.mu.Lock()
	h.brackets[m] = b
	h.mu.Unlock()
	return m
}

// Decode gives a bracket that was handed over, or reads its message.
func (h *Handover) Decode(m *partpb.Bracket) (*part.Bracket, error) {
	if h != nil {
		h.mu.Lock()
		b := h.brackets[m]
		h.mu.Unlock()
		if b != nil {
			return b, nil
		}
	}
	return DecodeBracket(m)
}
