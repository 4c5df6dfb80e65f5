package geometry

import (
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
)

func TestSelfTest(t *testing.T) {
	if err := New(kinds.All()).SelfTest(t.Context()); err != nil {
		t.Error(err)
	}
}

// A kind that gives something else than a sound bracket is found out.
func TestSelfTestFindsAWrongKind(t *testing.T) {
	wrong := kinds.All()[0]
	build := wrong.Build
	wrong.Build = func(v geometry.Values) (*part.Bracket, error) {
		b, err := build(v)
		b.Plates[0].ThicknessMM = -1
		return b, err
	}
	err := New([]geometry.Kind{wrong}).SelfTest(t.Context())
	if err == nil || !strings.Contains(err.Error(), "kind "+wrong.Name+" at its defaults") {
		t.Errorf("got %v", err)
	}
}
