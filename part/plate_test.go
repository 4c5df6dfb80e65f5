package part

import (
	"testing"

	"lugwright/geometry/shape"
)

func TestBores(t *testing.T) {
	p := Plate{Cutouts: []shape.Loop{shape.Circle(shape.Point{X: 3, Y: 4}, 76.6), shape.Slot(shape.Point{}, shape.Point{X: 20}, 8)}}
	got := p.Bores()
	if len(got) != 1 || got[0].ID != "bore" || got[0].Center != (shape.Point{X: 3, Y: 4}) || got[0].DiaMM != 76.6 || got[0].CutMM != 76.6 || got[0].Finish != AsCut {
		t.Errorf("%+v", got)
	}
	p.Cutouts = append(p.Cutouts, p.Cutouts[0])
	if got := p.Bores(); len(got) != 2 || got[0].ID != "bore-1" || got[1].ID != "bore-2" {
		t.Errorf("%+v", got)
	}
}
