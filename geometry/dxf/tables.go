package dxf

import "sync/atomic"

// tables are the sections between header and entities, and the opening of the entities. They depend on the form and the layers alone.
type tables struct {
	layers  Layers
	groups  Layers // the layers as an entity has them: group 8 and the line end
	text    []byte
	handles int // given out in them
	space   int // handle of the model space's block record; R12 has none
}

// lastTables are those of the last file of either form: the files of a job have one set of layers.
var lastTables struct{ r12, r2000 atomic.Pointer[tables] }

func tablesOf(o Options) *tables {
	last, write := &lastTables.r2000, (*writer).r2000Tables
	if o.Version == R12 {
		last, write = &lastTables.r12, (*writer).r12Tables
	}
	if t := last.Load(); t != nil && t.layers == o.Layers {
		return t
	}
	w := writer{layers: o.Layers, unit: 1}
	write(&w)
	l := o.Layers
	groups := Layers{layerGroup(l.Cut), layerGroup(l.Etch), layerGroup(l.Bend), layerGroup(l.Centre)}
	t := &tables{l, groups, w.buf, w.handles, w.space}
	last.Store(t)
	return t
}

func layerGroup(name string) string {
	if name == "" {
		return ""
	}
	return "  8\n" + name + "\n"
}
