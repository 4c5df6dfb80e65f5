package sweep

// This file finds out what of a bracket a parameter is the size of: it changes the parameter and looks at what has changed. So it needs to know no kind.

import (
	"context"
	"math"
	"slices"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
)

// Role is what a parameter is the size of.
type Role string

// The roles of parameters. What changes a support, a load point or the body's lug on a pin is given, not chosen; what changes bought sections or the places of
// holes alone, or nothing, has none.
const (
	Plate   Role = "plate"   // a thickness of plate
	Bar     Role = "pin"     // the diameter of a pin
	Bolt    Role = "bolt"    // the size of bolts
	Leg     Role = "weld"    // the leg of fillets
	Outline Role = "outline" // a length of a plate's outline
	Many    Role = "number"  // how many plates or bolts
	Form    Role = "form"    // a word that adds or drops welded plates
)

// Sizes is what the parameters of a bracket are the sizes of.
type Sizes struct {
	Roles map[string]Role
	Forms []part.Param // the other words of parameters that are a Form, in the order of their declaration
}

// Roles gives the role of each parameter of a bracket's kind that has one, of the bracket as it is.
func Roles(ctx context.Context, c run.Trier, spec *job.Bracket, kind *geometry.Kind) (*Sizes, error) {
	p := &prober{c, kind, Sizes{Roles: map[string]Role{}}}
	return &p.sizes, p.probe(ctx, spec)
}

// AllRoles finds those of plates and welds as well that are only there under another word of a Form.
func AllRoles(ctx context.Context, c run.Trier, spec *job.Bracket, kind *geometry.Kind) (map[string]Role, error) {
	all, err := Roles(ctx, c, spec, kind)
	if err != nil {
		return nil, err
	}
	for _, form := range all.Forms {
		with := With(spec, []part.Param{form})
		other, err := Roles(ctx, c, &with, kind)
		if err != nil {
			return nil, err
		}
		for name, role := range other.Roles {
			if all.Roles[name] == "" {
				all.Roles[name] = role
			}
		}
	}
	return all.Roles, nil
}

type prober struct {
	c     run.Trier
	kind  *geometry.Kind
	sizes Sizes
}

// Current is the value of a parameter in a bracket, its default where it is left out.
func Current(spec *job.Bracket, p *geometry.Param) part.Param {
	if i := slices.IndexFunc(spec.Params, func(v part.Param) bool { return v.Name == p.Name }); i >= 0 {
		return spec.Params[i]
	}
	return part.Param{Name: p.Name, Unit: string(p.Unit), Number: p.Default, Text: p.Text}
}

// probe builds the bracket, and beside it one for each other value tried of each parameter.
func (p *prober) probe(ctx context.Context, spec *job.Bracket) error {
	type trial struct {
		of       *geometry.Param
		from, to part.Param
	}
	var trials []trial
	requests := []geometry.Request{spec.Request()}
	for i := range p.kind.Params {
		d := &p.kind.Params[i]
		now := Current(spec, d)
		for _, v := range others(d, now) {
			with := With(spec, []part.Param{v})
			trials, requests = append(trials, trial{d, now, v}), append(requests, with.Request())
		}
	}
	built, err := p.c.Build(ctx, requests)
	if err != nil || built[0].Err != nil {
		return err // what cannot be built says nothing
	}
	for i, t := range trials {
		b := built[i+1]
		if b.Err != nil || t.of.Unit != geometry.Word && p.sizes.Roles[t.of.Name] != "" {
			continue
		}
		role := roleOf(built[0].Bracket, b.Bracket, t.from, t.to)
		if role == "" {
			continue
		}
		p.sizes.Roles[t.of.Name] = role
		if role == Form {
			p.sizes.Forms = append(p.sizes.Forms, t.to)
		}
	}
	return nil
}

// others are values to try beside the present one, the likeliest to be built first.
func others(d *geometry.Param, now part.Param) []part.Param {
	var out []part.Param
	add := func(n float64) {
		if n >= d.Min && n <= d.Max && n != now.Number {
			v := now
			v.Number = n
			out = append(out, v)
		}
	}
	switch d.Unit {
	case geometry.MM:
		for _, k := range []float64{1.0625, 0.9375, 1.25, 0.8} {
			add(now.Number * k)
		}
		if now.Number == 0 {
			add(max(d.Min, 6))
			add(max(d.Min, 60))
		}
	case geometry.Count:
		for _, k := range []float64{1, -1, 2, -2} {
			add(now.Number + k)
		}
	case geometry.Size:
		for _, s := range commonBolts[threads(now.Text)] {
			if s != now.Text {
				v := now
				v.Text = s
				out = append(out, v)
			}
		}
	case geometry.Word:
		for _, w := range d.Choices {
			if w != now.Text {
				v := now
				v.Text = w
				out = append(out, v)
			}
		}
	}
	return out
}

// roleOf compares a bracket with what became of it when one parameter changed.
func roleOf(a, b *part.Bracket, from, to part.Param) Role {
	if given(a, b) {
		return ""
	}
	switch geometry.Unit(from.Unit) {
	case geometry.Word:
		if len(a.Welds) != len(b.Welds) && sameBought(a, b) {
			return Form
		}
	case geometry.Size:
		if changed(a.Bolts, b.Bolts, func(g *part.BoltGroup) (string, bool) { return g.ID, g.Size == from.Text }, func(g *part.BoltGroup) (string, bool) { return g.ID, g.Size == to.Text }) {
			return Bolt
		}
	case geometry.Count:
		if len(a.Plates) != len(b.Plates) || bolts(a) != bolts(b) {
			return Many
		}
	case geometry.MM:
		return lengthRole(a, b, from.Number, to.Number)
	}
	return ""
}

func lengthRole(a, b *part.Bracket, from, to float64) Role {
	is := func(v, n float64) bool { return math.Abs(v-n) < 1e-6 }
	plate := func(n float64) func(p *part.Plate) (string, bool) {
		return func(p *part.Plate) (string, bool) { return p.ID, is(p.ThicknessMM, n) }
	}
	pin := func(n float64) func(p *part.Pin) (string, bool) {
		return func(p *part.Pin) (string, bool) { return p.ID, is(p.DiaMM, n) }
	}
	weld := func(n float64) func(w *part.WeldGroup) (string, bool) {
		return func(w *part.WeldGroup) (string, bool) {
			return w.ID, w.Kind == part.Fillet && is(w.LegMM, n)
		}
	}
	switch {
	case changed(a.Plates, b.Plates, plate(from), plate(to)) || from == 0 && added(a, b, to):
		return Plate
	case changed(a.Pins, b.Pins, pin(from), pin(to)):
		return Bar
	case changed(a.Welds, b.Welds, weld(from), weld(to)):
		return Leg
	case len(a.Plates) == len(b.Plates) && resized(a, b):
		return Outline
	}
	return ""
}

// changed says whether some thing has the one size in a and the other in b.
func changed[T any](a, b []T, was, is func(*T) (string, bool)) bool {
	for i := range a {
		id, ok := was(&a[i])
		if !ok {
			continue
		}
		for k := range b {
			if other, now := is(&b[k]); now && other == id {
				return true
			}
		}
	}
	return false
}

// added says whether a plate of the thickness has come.
func added(a, b *part.Bracket, mm float64) bool {
	return slices.ContainsFunc(b.Plates, func(p part.Plate) bool { return a.Plate(p.ID) == nil && math.Abs(p.ThicknessMM-mm) < 1e-6 })
}

// resized says whether a plate's overall size has changed.
func resized(a, b *part.Bracket) bool {
	for i := range a.Plates {
		p, q := &a.Plates[i], b.Plate(a.Plates[i].ID)
		if q == nil {
			continue
		}
		s, t := p.Outer.BBox(), q.Outer.BBox()
		if math.Abs(s.Width()-t.Width()) > 1e-6 || math.Abs(s.Height()-t.Height()) > 1e-6 {
			return true
		}
	}
	return false
}

// given says whether what the bracket is fixed to or is loaded by has changed: that is not the bracket's to choose.
func given(a, b *part.Bracket) bool {
	if !slices.Equal(a.Supports, b.Supports) || len(a.LoadPoints) != len(b.LoadPoints) || len(a.Pins) != len(b.Pins) {
		return true
	}
	for i := range a.LoadPoints {
		if a.LoadPoints[i].At.Sub(b.LoadPoints[i].At).Norm() > 1e-6 {
			return true
		}
	}
	for i := range a.Pins {
		if !sameJoint(&a.Pins[i], &b.Pins[i]) {
			return true
		}
	}
	return false
}

// sameJoint says whether the seats that are not the bracket's own, and the gaps between all seats, are the same on two pins. A boss more or less is no matter.
func sameJoint(p, q *part.Pin) bool {
	alike := func(s, t part.Seat) bool {
		return math.Abs(s.ThicknessMM-t.ThicknessMM) < 1e-6 && math.Abs(s.AtMM-t.AtMM) < 1e-6
	}
	if !slices.EqualFunc(brought(p), brought(q), alike) {
		return false
	}
	return len(p.Seats) != len(q.Seats) || slices.EqualFunc(gaps(p), gaps(q), func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
}

// brought are the seats of what is not the bracket's own.
func brought(p *part.Pin) []part.Seat {
	return slices.DeleteFunc(slices.Clone(p.Seats), func(s part.Seat) bool { return s.Thing != "" })
}

// gaps are the clear lengths of a pin between neighbouring seats.
func gaps(p *part.Pin) []float64 {
	var out []float64
	for i := 1; i < len(p.Seats); i++ {
		s, t := &p.Seats[i-1], &p.Seats[i]
		out = append(out, t.AtMM-t.ThicknessMM/2-s.AtMM-s.ThicknessMM/2)
	}
	return out
}

// sameBought says whether two brackets take the same bolts, rods, pins and sections.
func sameBought(a, b *part.Bracket) bool {
	return bolts(a) == bolts(b) && len(a.Rods) == len(b.Rods) && len(a.Pins) == len(b.Pins) && len(a.Members) == len(b.Members)
}

func bolts(b *part.Bracket) int {
	n := 0
	for i := range b.Bolts {
		n += len(b.Bolts[i].Points)
	}
	return n
}
