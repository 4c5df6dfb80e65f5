package part

// The order in which a weldment goes together: a part's own welds are all done before what stands on it goes on.

import (
	"slices"
	"strings"
)

// Owner is the plate or member that a thing is, or is a face or leg of: "base" of "base.a".
func (b *Bracket) Owner(thing string) string {
	if b.Plate(thing) != nil || b.Member(thing) != nil {
		return thing
	}
	id, _, _ := strings.Cut(thing, ".")
	return id
}

// Above lists the parts that stand on one, directly or over others, by the welds; nearest first.
func (b *Bracket) Above(id string) []string {
	out := []string{id}
	for k := 0; k < len(out); k++ {
		for i := range b.Welds {
			w := &b.Welds[i]
			if on := b.Owner(w.Joins[0]); b.Owner(w.Joins[1]) == out[k] && !slices.Contains(out, on) {
				out = append(out, on)
			}
		}
	}
	return out[1:]
}
