package part_test

import (
	"reflect"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
)

// A plate against the outside of the left rail, etched on its inner face. Who stands inboard and looks out at it has the vehicle's front on his right;
// so a hole 30 mm to the rear of its middle is left of the middle on its drawing, and its etched face looks inboard.
func TestAPlateIsDrawnAsItIsSeen(t *testing.T) {
	b := &part.Bracket{Hand: part.LeftHand, Plates: []part.Plate{{
		ID: "p", Outer: shape.Rect(shape.Point{X: -50, Y: -20}, shape.Point{X: 50, Y: 20}), ThicknessMM: 8, Holes: []part.Hole{{Center: shape.Point{X: 30, Y: 5}, DiaMM: 10}},
		Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}, // along to the rear, up; by components W is -y, inboard
	}}}
	made := b.AsMade()
	p := made.Plates[0]
	if got, want := p.Holes[0].Center, (shape.Point{X: -30, Y: 5}); got != want {
		t.Errorf("the hole is drawn at %v, seen at %v", got, want)
	}
	if got, want := p.Pose.W(), (part.Vec{Y: -1}); got != want {
		t.Errorf("the etched face looks to %v, not inboard, %v", got, want)
	}
	if got, want := p.Pose.At(-30, 5, 0), (part.Vec{X: -30, Z: 5}); got != want {
		t.Errorf("the hole stands at %v, x forward; it is to the rear, %v", got, want)
	}
	if made.Hand != part.LeftHand {
		t.Error("a bracket changed its hand by being made")
	}
}

// Twice reflected is the same again; and what is made of the other hand is the mirror image of what is made of this one.
func TestAsMadeIsAReflection(t *testing.T) {
	b := parttest.Bracket()
	if again := b.AsMade().AsMade(); !reflect.DeepEqual(again, b) {
		t.Error("reflected twice a bracket is another one")
	}
	if one, other := b.AsMade().Mirrored(), b.Mirrored().AsMade(); !reflect.DeepEqual(one, other) {
		t.Error("the other hand as made is not the mirror image of this hand as made")
	}
}
