package scad

import (
	"math"
	"strings"

	"lugwright/geometry/fold"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// model is the bracket sorted for the file.
type model struct {
	pieces    []piece
	thickness []variable
	holes     []variable
	names     names
	middle    part.Vec
}

// piece is one different thing that can be shown alone, with all the places where it stands.
type piece struct {
	name   string // as the selector has it
	module string
	says   string // mark, trade word, stock
	plate  *part.Plate
	member *part.Member
	pin    *part.Pin
	stands []place

	folds                    *fold.Pattern // of a bent plate, which stands in the assembly as it is folded
	foldedName, foldedModule string
}

// place is a pose, and the direction in which the exploded view moves it.
type place struct {
	pose part.Pose
	away part.Vec
}

// variable is a number at the top of the file that several things share.
type variable struct {
	name  string
	value float64
	users []string
}

// PartNames lists the words that the file's part variable takes besides "assembly": one for each different plate, then
// members and pins, then bent plates as they are folded.
func PartNames(b *part.Bracket) []string {
	return newModel(b).selectable()
}

// selectable are the words of the part variable besides "assembly"; the folded shapes of bent plates come last.
func (m *model) selectable() []string {
	var list, folded []string
	for _, p := range m.pieces {
		list = append(list, p.name)
		if p.folds != nil {
			folded = append(folded, p.foldedName)
		}
	}
	return append(list, folded...)
}

func newModel(b *part.Bracket) *model {
	m := &model{names: taken(), middle: middle(b)}
	shown := names{"assembly": true}
	add := func(id string, p piece) {
		p.name, p.module = shown.give(word(id, "-.")), m.names.give(identifier(id))
		if p.folds != nil {
			p.foldedName, p.foldedModule = shown.give(p.name+"-folded"), m.names.give(p.module+"_folded")
		}
		m.pieces = append(m.pieces, p)
	}
	for i := range b.Plates {
		p := &b.Plates[i]
		at := place{p.Pose, m.away(plateCenter(p))}
		if same := m.samePiece(p); same != nil {
			same.stands = append(same.stands, at)
			same.says += ", " + p.ID
			continue
		}
		folds, flat := folding(p)
		add(p.ID, piece{plate: p, stands: []place{at}, folds: folds, says: p.Mark + " " + p.Name + " " + p.Material + flat + ": " + p.ID})
		m.share(p)
	}
	for i := range b.Members {
		mb := &b.Members[i]
		add(mb.ID, piece{member: mb, stands: []place{{mb.Pose, m.away(memberCenter(mb))}}, says: mb.Mark + " " + mb.Name + " " + mb.Material + ": " + mb.ID})
		for _, h := range mb.Holes {
			m.shareHole(h.Hole, mb.Name)
		}
	}
	for i := range b.Pins {
		p := &b.Pins[i]
		add(p.ID, piece{pin: p, stands: []place{{p.Pose(), p.Axis.Scale(2)}}, says: p.Mark + " pin " + p.Material + ": " + p.ID})
	}
	return m
}

func (m *model) samePiece(p *part.Plate) *piece {
	for i := range m.pieces {
		if m.pieces[i].plate.SamePiece(p) {
			return &m.pieces[i]
		}
	}
	return nil
}

// formed says whether a plate's flat shape was worked out for its thickness, which therefore is no variable.
func formed(p *part.Plate) bool { return len(p.Bends) > 0 || p.RolledMM > 0 }

// share gives the plate its variables.
func (m *model) share(p *part.Plate) {
	if !formed(p) {
		m.thickness = m.shared(m.thickness, p.ThicknessMM, "thickness_"+p.Name, p.Name)
	}
	for _, h := range p.Holes {
		m.shareHole(h, p.Name)
	}
}

func (m *model) shareHole(h part.Hole, of string) {
	if h.DiaMM > 0 {
		m.holes = m.shared(m.holes, h.DiaMM, string(h.Purpose)+"_hole_"+of, string(h.Purpose)+" hole of "+of)
	}
}

func (m *model) shared(list []variable, value float64, name, user string) []variable {
	for i := range list {
		if list[i].value == value {
			if v := &list[i]; v.users[len(v.users)-1] != user {
				v.users = append(v.users, user)
			}
			return list
		}
	}
	return append(list, variable{m.names.give(identifier(name)), value, []string{user}})
}

// thicknessOf is a plate's thickness as the file has it: a variable's name, or a number.
func (w *writer) thicknessOf(m *model, p *part.Plate) string {
	if formed(p) {
		return w.number(p.ThicknessMM)
	}
	return find(m.thickness, p.ThicknessMM)
}

// find names the variable of a value.
func find(list []variable, value float64) string {
	for _, v := range list {
		if v.value == value {
			return v.name
		}
	}
	return "0"
}

// slider is the range that the customizer offers: half to double, in the coarsest step that holds the value itself.
func (v variable) slider() (lo, step, hi float64) {
	step = 0.001
	for _, s := range []float64{0.5, 0.1, 0.01} {
		if n := v.value / s; math.Abs(n-math.Round(n)) < 1e-9 {
			step = s
			break
		}
	}
	return math.Max(step, math.Floor(v.value/2/step)*step), step, math.Ceil(v.value*2/step) * step
}

func (v variable) comment() string { return strings.Join(v.users, ", ") }

func middle(b *part.Bracket) part.Vec {
	var lo, hi part.Vec
	first := true
	for _, c := range centers(b) {
		if first {
			lo, hi, first = c, c, false
		}
		lo = part.Vec{X: math.Min(lo.X, c.X), Y: math.Min(lo.Y, c.Y), Z: math.Min(lo.Z, c.Z)}
		hi = part.Vec{X: math.Max(hi.X, c.X), Y: math.Max(hi.Y, c.Y), Z: math.Max(hi.Z, c.Z)}
	}
	return lo.Add(hi).Scale(0.5)
}

func centers(b *part.Bracket) []part.Vec {
	var out []part.Vec
	for i := range b.Plates {
		out = append(out, plateCenter(&b.Plates[i]))
	}
	for i := range b.Members {
		out = append(out, memberCenter(&b.Members[i]))
	}
	return out
}

func (m *model) away(c part.Vec) part.Vec { return c.Sub(m.middle).Unit() }

func plateCenter(p *part.Plate) part.Vec {
	c := p.Outer.BBox().Center()
	return p.Pose.At(c.X, c.Y, 0)
}

func memberCenter(m *part.Member) part.Vec {
	if m.Profile.Kind == part.Angle {
		return m.Pose.At(m.LengthMM/2, m.Profile.AMM/2, m.Profile.BMM/2)
	}
	return m.Pose.At(m.LengthMM/2, 0, 0)
}

func loops(p *part.Plate) (outer shape.Loop, cutouts []shape.Loop) {
	for _, c := range p.Cutouts {
		cutouts = append(cutouts, c.Normalize().CCW())
	}
	return p.Outer.Normalize().CCW(), cutouts
}
