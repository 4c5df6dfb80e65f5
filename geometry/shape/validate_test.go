package shape

// Each rule of Validate, broken once.

import (
	"math"
	"testing"
)

func TestValidate(t *testing.T) {
	rect := Rect(Point{}, Point{100, 60})
	hole := Circle(Point{30, 30}, 20)
	with := func(holes ...Loop) Outline { return Outline{Outer: rect, Holes: holes} }
	tests := []struct {
		name        string
		o           Outline
		rule, place string
	}{
		{"sound", with(hole, Slot(Point{60, 20}, Point{60, 40}, 10)), "", ""},
		{"sound, other windings", Outline{Outer: rect.Reverse(), Holes: []Loop{hole.Reverse()}}, "", ""},
		{"two half arcs", Outline{Outer: hole}, "", ""},
		{"nothing", Outline{}, RuleVertices, "outer"},
		{"one vertex", with(Loop{{Point{5, 5}, 1}}), RuleVertices, "hole 0"},
		{"not a number", with(hole, Polyline(Point{1, 1}, Point{math.NaN(), 1}, Point{1, 5})), RuleFinite, "hole 1 edge 1"},
		{"endless bulge", Outline{Outer: Loop{{Point{0, 0}, math.Inf(1)}, {Point{1, 0}, 0}}}, RuleFinite, "outer edge 0"},
		{"absurd", Outline{Outer: Rect(Point{}, Point{1.1e5, 3})}, RuleSize, "outer edge 1"},
		{"absurdly large number", Outline{Outer: Rect(Point{}, Point{1e300, 1e300})}, RuleSize, "outer edge 1"},
		{"all but straight", Outline{Outer: Loop{{Point{0, 0}, 2e-5}, {Point{100, 0}, 0}, {Point{50, 50}, 0}}}, RuleSize, "outer edge 0"},
		{"an arc that is written as a line", Outline{Outer: Loop{{Point{0, 0}, 1e-9}, {Point{100, 0}, 0}, {Point{50, 50}, 0}}}, "", ""},
		{"bulge", Outline{Outer: Loop{{Point{0, 0}, 1.1}, {Point{10, 0}, 0}}}, RuleBulge, "outer edge 0"},
		{"tiny", Outline{Outer: Polyline(Point{0, 0}, Point{10, 0}, Point{10, 5e-5}, Point{0, 10})}, RuleTinyEdge, "outer edge 1"},
		{"first vertex repeated", Outline{Outer: append(rect.Clone(), rect[0])}, RuleTinyEdge, "outer edge 4"},
		{"no area", Outline{Outer: Polyline(Point{0, 0}, Point{10, 0}, Point{4, 0})}, RuleNoArea, "outer"},
		{"there and back", Outline{Outer: Loop{{Point{0, 0}, 0.5}, {Point{10, 0}, -0.5}}}, RuleNoArea, "outer"},
		{"bow-tie", Outline{Outer: Polyline(Point{0, 0}, Point{10, 10}, Point{10, 0}, Point{0, 20})}, RuleSelfIntersect, "outer edge 0"},
		{"arc through the far side", Outline{Outer: Loop{{Point{0, 0}, -0.9}, {Point{100, 0}, 0}, {Point{100, 20}, 0}, {Point{0, 20}, 0}}}, RuleSelfIntersect, "outer edge 0"},
		{"spike", Outline{Outer: Polyline(Point{0, 0}, Point{50, 0}, Point{90, 0}, Point{50, 0}, Point{50, 40})}, RuleSelfIntersect, "outer edge 0"},
		{"line folds back", Outline{Outer: Polyline(Point{0, 0}, Point{90, 0}, Point{50, 0}, Point{50, 40})}, RuleSelfIntersect, "outer edge 0"},
		{"arc folds back on its circle", Outline{Outer: Loop{{Point{50, 0}, 1}, {Point{-50, 0}, -math.Tan(math.Pi / 8)}, {Point{0, 50}, 0}}}, RuleSelfIntersect, "outer edge 0"},
		{"touches itself", Outline{Outer: Polyline(Point{0, 0}, Point{50, 0}, Point{100, 0}, Point{100, 40}, Point{50, 0}, Point{0, 40})}, RuleSelfIntersect, "outer edge 0"},
		{"vertex on an edge", Outline{Outer: Polyline(Point{0, 0}, Point{100, 0}, Point{100, 40}, Point{50, 0}, Point{0, 40})}, RuleSelfIntersect, "outer edge 0"},
		{"hole outside", with(hole, Circle(Point{200, 30}, 5)), RuleHoleOutside, "hole 1"},
		{"hole over the edge", with(Circle(Point{0, 30}, 5)), RuleHoleOutside, "hole 0"},
		{"hole touches the edge", with(Circle(Point{10, 30}, 20)), RuleHoleOutside, "hole 0"},
		{"hole around", with(Rect(Point{-5, -5}, Point{200, 200})), RuleHoleOutside, "hole 0"},
		{"hole is outer", with(rect.Reverse()), RuleDuplicate, "hole 0"},
		{"hole twice", with(hole, hole.Rotate(1, Point{30, 30})), RuleDuplicate, "hole 1"},
		{"holes overlap", with(hole, Circle(Point{45, 30}, 20)), RuleHolesOverlap, "hole 1"},
		{"holes touch", with(hole, Circle(Point{50, 30}, 20)), RuleHolesOverlap, "hole 1"},
		{"nested", with(hole, Circle(Point{31, 30}, 5)), RuleHolesNested, "hole 1"},
		{"nested, other order", with(Circle(Point{31, 30}, 5), hole), RuleHolesNested, "hole 1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.o.Validate()
			if tt.rule == "" {
				if len(got) > 0 {
					t.Fatalf("got %v", got)
				}
				return
			}
			if len(got) == 0 {
				t.Fatal("nothing found")
			}
			if got[0].Rule != tt.rule || got[0].Place != tt.place || got[0].Message == "" {
				t.Errorf("got %v, want %s at %s", got, tt.rule, tt.place)
			}
		})
	}
}

// Arcs that run tangent into lines, at any angle, are sound: rounding must not read them as touching.
func TestTangentJoinsAreSound(t *testing.T) {
	l, err := RoundedRect(Point{}, Point{1000, 600}, 250)
	if err != nil {
		t.Fatal(err)
	}
	for k := range 500 {
		o := Outline{Outer: l.Rotate(float64(k)*0.0137, Point{3000, 2000}), Holes: []Loop{Slot(Point{300, 300}, Point{700, 310}, 90).Rotate(float64(k)*0.0137, Point{3000, 2000})}}
		for i, v := range o.Outer { // as read from a file with 6 decimals
			o.Outer[i].Point = Point{math.Round(v.X*1e6) / 1e6, math.Round(v.Y*1e6) / 1e6}
		}
		if v := o.Validate(); len(v) > 0 {
			t.Fatalf("turned %d: %v", k, v)
		}
	}
}
