package part_test

// What Validate must refuse: load that is lost or carried twice, data that contradict the geometry, numbers out of range.

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func clevis(t *testing.T) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "pair", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestRefused(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(b *part.Bracket)
		field string
	}{
		"a leg of the share is missing": {func(b *part.Bracket) {
			b.Shares[0].Legs = 1
			for i := range b.Paths {
				if b.Paths[i].Branches[0].Share == b.Shares[0].ID {
					b.Paths[i].Branches = b.Paths[i].Branches[:1]
				}
			}
		}, "shares[0].legs"},
		"the same path under two names": {func(b *part.Bracket) {
			twin := b.Paths[0]
			twin.LoadPoint = ""
			b.Paths = append(b.Paths, twin)
		}, ".component"},
		"travel beyond the gap":         {func(b *part.Bracket) { b.Pins[0].TravelMM = 3 }, "pins[0].travel_mm"},
		"load outside the supports":     {func(b *part.Bracket) { b.Pins[0].Seats[1].Loads, b.Pins[0].Seats[2].Loads = false, true }, "pins[0].seats"},
		"a seat thicker than its ear":   {func(b *part.Bracket) { b.Pins[0].Seats[0].ThicknessMM = 20 }, "pins[0].seats[0]"},
		"a bolt not of its size":        {func(b *part.Bracket) { b.Bolts[0].DiaMM = 13 }, "bolts[0].diameter_mm"},
		"a ply not as thick as its leg": {func(b *part.Bracket) { b.Bolts[0].Plies[0].ThicknessMM = 30 }, "bolts[0].plies[0].thickness_mm"},
		"edge behind the bolt":          {func(b *part.Bracket) { b.Bolts[0].Plies[0].EdgeMM = -5 }, "bolts[0].plies[0].edge_mm"},
		"a bend that takes more than it can": {func(b *part.Bracket) {
			// A quarter turn of 5 mm inside in 10 mm plate: its faces are pi/2 5 = 7.85 and pi/2 15 = 23.6 mm long.
			p := &b.Plates[0]
			p.ThicknessMM, p.Bends = 10, []part.Bend{{AngleRad: math.Pi / 2, RadiusMM: 5, AllowanceMM: 24}}
		}, "plates[0].bends[0].allowance_mm"},
		"a sweep of nothing":              {func(b *part.Bracket) { b.Sweeps[0].Things = nil }, "sweeps[0].things"},
		"two sweeps of one name":          {func(b *part.Bracket) { b.Sweeps[1].ID = b.Sweeps[0].ID }, "sweeps[1].id"},
		"a weld of a plate to itself":     {func(b *part.Bracket) { b.Welds[0].Joins[1] = b.Welds[0].Joins[0] }, "welds[0].joins"},
		"a groove not through the plate":  {func(b *part.Bracket) { b.Welds[0].Kind = part.CJP }, "welds[0].leg_mm"},
		"a groove deeper than the plate":  {func(b *part.Bracket) { b.Welds[0].Kind, b.Welds[0].LegMM = part.CJP, 40 }, "welds[0].leg_mm"},
		"a fillet with a width":           {func(b *part.Bracket) { b.Welds[0].WidthMM = 20 }, "welds[0].width_mm"},
		"a plug without a width":          {func(b *part.Bracket) { b.Welds[0].Kind = part.Plug }, "welds[0].width_mm"},
		"a plug shorter than wide":        {func(b *part.Bracket) { b.Welds[0].Kind, b.Welds[0].WidthMM = part.Plug, 500 }, "welds[0].segments[0]"},
		"a plug standing out of its hole": {func(b *part.Bracket) { b.Welds[0].Kind, b.Welds[0].WidthMM, b.Welds[0].LegMM = part.Plug, 20, 40 }, "welds[0].leg_mm"},
		"plugs of two lengths": {func(b *part.Bracket) {
			w := &b.Welds[0]
			w.Kind, w.WidthMM = part.Plug, 20
			w.Segments[1].B = w.Segments[1].B.Scale(0.9).Add(w.Segments[1].A.Scale(0.1))
		}, "welds[0].segments[1]"},
		"a branch that ends nowhere":   {func(b *part.Bracket) { b.Paths[0].Branches[0].Through = nil }, "paths[0].branches[0].through"},
		"a bolt beyond any place":      {func(b *part.Bracket) { b.Bolts[0].Points[1].Y = 1e9 }, "bolts[0].points_mm[1]"},
		"a plate beyond any place":     {func(b *part.Bracket) { b.Plates[1].Pose.Origin.X = math.NaN() }, "plates[1].pose.origin_mm"},
		"an end without a thread":      {func(b *part.Bracket) { b.Pins[0].Ends[1].Size = "wide" }, "pins[0].ends[1].size"},
		"a composite with what is not": {func(b *part.Bracket) { b.Composites[0].Welds[0] = "none" }, "composites[0].welds[0]"},
		"a size that is no thread":     {func(b *part.Bracket) { b.Bolts[0].Size = "wide" }, "bolts[0].size"},
		"a couple beyond any":          {func(b *part.Bracket) { b.Paths[0].Branches[0].Couple.X = 1e300 }, "paths[0].branches[0].couple"},
		"a hole clear of its plate":    {func(b *part.Bracket) { b.Plates[0].Holes[0].Center.X = 900 }, "plates[0].holes[0]"},
		"a leg thicker than long":      {func(b *part.Bracket) { b.Members[0].Profile.TMM = 400 }, "members[0].profile.t_mm"},
		"a tube that is solid": {func(b *part.Bracket) {
			b.Members[0].Profile = part.Profile{Kind: part.RectTube, AMM: 60, BMM: 40, TMM: 20}
		}, "members[0].profile.t_mm"},
		"a hole of no size in a leg": {func(b *part.Bracket) { b.Members[0].Holes[0].DiaMM = 0 }, "members[0].holes[0].hole.diameter_mm"},
		"a parameter beyond any":     {func(b *part.Bracket) { b.Params = []part.Param{{Name: "x", Number: 1e7}} }, "parameters[0].number"},
		"thousands of vertices":      {func(b *part.Bracket) { b.Plates[0].Outer = append(b.Plates[0].Outer, make(shape.Loop, 3000)...) }, "plates[0].outer"},
	} {
		b := clevis(t)
		c.spoil(b)
		err := b.Validate()
		found := false
		for _, f := range part.Fields(err) {
			found = found || strings.Contains(f.Field, c.field)
		}
		if !found {
			t.Errorf("%s: want %s refused, got %v", name, c.field, err)
		}
	}
}

// A path that forks more than once has every leg of every share, each share once on a way, and legs of a frame that balance each other.
func TestForks(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(p *part.Path)
		words string
	}{
		"none":                     {func(*part.Path) {}, ""},
		"a branch is missing":      {func(p *part.Path) { p.Branches = p.Branches[1:] }, "legs"},
		"a branch twice":           {func(p *part.Path) { p.Branches = append(p.Branches, p.Branches[1]) }, "2 branches at the end of one way"},
		"a leg beyond the share":   {func(p *part.Path) { p.Branches[1].Then[2].Leg = 2 }, "is missing"},
		"a share that is not":      {func(p *part.Path) { p.Branches[1].Then[0].Share = "none" }, "does not fork"},
		"a share twice on a way":   {func(p *part.Path) { p.Branches[1].Then[1].Share = "travel" }, "twice on one way"},
		"one thrust is larger":     {func(p *part.Path) { p.Branches[1].Thrust.X *= 1.01 }, "add up to"},
		"one couple is larger":     {func(p *part.Path) { p.Branches[1].Couple.Y *= 1.01 }, "add up to"},
		"thrust with no partner":   {func(p *part.Path) { p.Branches[0].Thrust.X = 1 }, "equal share"},
		"thrust on a whole load":   {func(p *part.Path) { p.Branches = p.Branches[:1]; p.Branches[0] = whole(p.Branches[0]) }, "branch alone"},
		"a way that ends too soon": {func(p *part.Path) { p.Branches[1].Then = p.Branches[1].Then[:2] }, "at the end of one way"},
	} {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "arch", Name: "single", Hand: part.LeftHand})
		if err != nil {
			t.Fatal(err)
		}
		for i := range b.Paths {
			if b.Paths[i].Component == part.FzMinus {
				c.spoil(&b.Paths[i])
			}
		}
		switch err := b.Validate(); {
		case c.words == "" && err != nil, c.words != "" && (err == nil || !strings.Contains(err.Error(), c.words)):
			t.Errorf("%s: want %q, got %v", name, c.words, err)
		}
	}
}

// whole is a branch that takes all of its load and still is said to be thrust aside.
func whole(b part.Branch) part.Branch {
	b.Share, b.Then, b.Thrust = "", nil, part.Vec{X: 1}
	return b
}

// Every number of a bracket is looked at: NaN and infinities in any of them are refused, with a field.
func TestEveryNumberIsChecked(t *testing.T) {
	n := 0
	b := clevis(t)
	walk(reflect.ValueOf(b).Elem(), "", func(path string, v reflect.Value) {
		if strings.Contains(path, "Params") {
			return // what it was built from, not what is checked
		}
		kept := v.Float()
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			v.SetFloat(bad)
			if len(part.Fields(b.Validate())) == 0 {
				t.Errorf("%s = %g is accepted", path, bad)
			}
		}
		v.SetFloat(kept)
		n++
	})
	if n < 250 {
		t.Errorf("only %d numbers were tried", n)
	}
	if err := b.Validate(); err != nil {
		t.Errorf("the bracket was left spoiled: %v", err)
	}
}

func walk(v reflect.Value, path string, visit func(string, reflect.Value)) {
	switch v.Kind() {
	case reflect.Float64:
		visit(path, v)
	case reflect.Struct:
		for i := range v.NumField() {
			walk(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), 3) {
			walk(v.Index(i), path+"[]", visit)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), path, visit)
		}
	}
}
