package drawings

// Arcs that bound a plate, and the tube that lies in them.

import (
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
)

// A saddle whose tube's axis is 140 mm over the underside of a base plate of 15 mm: the side plates stand on the base, so that their arc has its centre 125 mm over
// their lower edge, in the middle of their width. Among the views the axis is at 140.
func TestArcIsPlacedByItsCentre(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "saddle", Name: "s", Mark: "S", Hand: part.LeftHand, Params: []part.Param{
		{Name: "axis_height", Number: 140, Unit: "mm"}, {Name: "base_thickness", Number: 15, Unit: "mm"},
	}})
	if err != nil {
		t.Fatal(err)
	}
	p := b.AsMade().Plate("side-1")
	said := false
	texts, _ := read(Plate(p, PlateOptions{}))
	want := ", centre " + (&Options{}).length(p.Outer.BBox().Width()/2) + " from left, 125 from bottom"
	for _, s := range texts {
		said = said || strings.HasPrefix(s.Words, "R") && strings.HasSuffix(s.Words, want)
	}
	if !said {
		t.Errorf("no arc with %q", want)
	}
	said = false
	texts, _ = read(Of(b, nil).Views(Options{}))
	for _, s := range texts {
		said = said || s.Words == "140 tube axis"
	}
	if !said {
		t.Error("the views have no axis of the tube at 140")
	}
}
