package statics

// Bolt tension with contact when the joint turns about both axes: the same model as tension.go, with a neutral
// line that may lie anywhere across the patch.

import "math"

// Patch is the contact rectangle in the faying plane (mm).
type Patch struct{ UMin, UMax, VMin, VMax float64 }

// PlaneState is how the joint stands when it turns about both axes.
type PlaneState struct {
	ContactN    float64 // contact resultant, >= 0
	ContactAt   Vec2    // where it acts (mm)
	PressureMPa float64 // greatest contact pressure, at a corner of the patch
	Open        bool    // no contact
	Residual    float64 // equilibrium error over the load, a pure number

	plane     Vec3 // s = x + y u + z v in patch coordinates; contact presses where it is negative
	mid, half Vec2
	face      float64
}

// ContactBeyond is the contact on the part of the patch that lies from a point in a direction (mm), and where its resultant acts; nought when
// the joint is open there.
func (st *PlaneState) ContactBeyond(at, toward Vec2) (forceN float64, where Vec2) {
	if st.Open {
		return 0, Vec2{}
	}
	var first, second [8]Vec2
	pressed := clip(first[:0], square[:], st.plane.X, Vec2{st.plane.Y, st.plane.Z})
	off := toward.X*(at.X-st.mid.X) + toward.Y*(at.Y-st.mid.Y)
	m := polygonMoments(clip(second[:0], pressed, off, Vec2{-toward.X * st.half.X, -toward.Y * st.half.Y}))
	return st.pressed(m)
}

// pressed is the resultant of the contact over an area.
func (st *PlaneState) pressed(m moments) (force float64, where Vec2) {
	x := st.plane
	force = -st.face * (m.a*x.X + m.x*x.Y + m.y*x.Z)
	if !(force > 0) {
		return 0, Vec2{}
	}
	return force, Vec2{
		st.mid.X - st.half.X*st.face*(m.x*x.X+m.xx*x.Y+m.xy*x.Z)/force,
		st.mid.Y - st.half.Y*st.face*(m.y*x.X+m.xy*x.Y+m.yy*x.Z)/force,
	}
}

// tilting is a joint in the coordinates of its patch: (-1,-1) to (1,1).
type tilting struct {
	pos        []Vec2
	mid, half  Vec2
	bolt, face float64 // area of one bolt; contact area per unit of the square
}

var square = [4]Vec2{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}

// Tensions writes bolt tensions (N, none negative) into dst for a pull N and moments Mu, Mv about the reference point
// (see GroupLoad for signs), positions and patch in mm, boltArea in mm^2.
//
// Model and limits are those of TensionsOneAxis, for any neutral line: the plane s = a + b u + c v that puts bolts
// and contact in balance with all three of N, Mu, Mv minimises the elastic energy, and is found by Newton's method.
// This is exact for the model; summing two one-axis solutions is not, for it leaves a cross moment when bolts and
// patch have different centres. Source: elementary statics, no clause.
func Tensions(dst []float64, pos []Vec2, boltArea float64, patch Patch, N, Mu, Mv float64) (PlaneState, error) {
	if err := checkTilting(dst, pos, boltArea, patch, N, Mu, Mv); err != nil {
		return PlaneState{}, err
	}
	t := newTilting(pos, boltArea, patch)
	f := Vec3{N, -(Mv + N*t.mid.X) / t.half.X, (Mu - N*t.mid.Y) / t.half.Y}
	if f.Norm() == 0 {
		clear(dst)
		return PlaneState{Open: true}, nil
	}
	x, residual := t.minimise(f)
	if !(residual <= 1e-6) {
		return PlaneState{}, &NoPathError{"moment on the bolts", "bolts and contact have no arm or almost none"}
	}
	return t.state(dst, x, residual), nil
}

func newTilting(pos []Vec2, area float64, p Patch) tilting {
	half := Vec2{(p.UMax - p.UMin) / 2, (p.VMax - p.VMin) / 2}
	return tilting{pos: pos, mid: Vec2{p.UMin + half.X, p.VMin + half.Y}, half: half, bolt: area, face: half.X * half.Y}
}

func checkTilting(dst []float64, pos []Vec2, area float64, p Patch, N, Mu, Mv float64) error {
	if err := checkBolts(len(dst), pos); err != nil {
		return err
	}
	if err := checkPatch("patch u", p.UMin, p.UMax); err != nil {
		return err
	}
	if err := checkPatch("patch v", p.VMin, p.VMax); err != nil {
		return err
	}
	for _, b := range pos {
		if b.X < p.UMin || b.X > p.UMax {
			return &InputError{What: "bolt position u", Got: b.X, Want: "a position within the contact patch"}
		}
		if b.Y < p.VMin || b.Y > p.VMax {
			return &InputError{What: "bolt position v", Got: b.Y, Want: "a position within the contact patch"}
		}
	}
	if err := checkPositive("bolt area", area, maxLength); err != nil {
		return err
	}
	if err := checkLoads(N, 0, Mu); err != nil {
		return err
	}
	return checkWithin("moment", Mv, maxMoment)
}

// arm is (1, u, v) of a bolt in patch coordinates.
func (t *tilting) arm(p Vec2) Vec3 {
	return Vec3{1, (p.X - t.mid.X) / t.half.X, (p.Y - t.mid.Y) / t.half.Y}
}

// stiffness is the tangent of the parts now at work: open bolts and closed contact. Stiffness times x is the response.
func (t *tilting) stiffness(x Vec3) sym3 {
	m := below(square, x.X, Vec2{x.Y, x.Z})
	h := sym3{m.a, m.xx, m.yy, m.x, m.xy, m.y}.scale(t.face)
	for _, p := range t.pos {
		if r := t.arm(p); x.Dot(r) > 0 {
			h = h.plusOuter(r, t.bolt)
		}
	}
	return h
}

// minimise finds the plane whose response is f by damped Newton steps on the convex energy x.Hx/2 - f.x.
func (t *tilting) minimise(f Vec3) (x Vec3, residual float64) {
	size := f.Norm()
	total := float64(len(t.pos))*t.bolt + 4*t.face
	x = f.Scale(1 / total)
	h := t.stiffness(x)
	for range 200 {
		g := h.times(x).Sub(f)
		residual = g.Norm() / size
		if residual < 1e-13 {
			break
		}
		// A row of bolts leaves one turn free until contact stops it: the small term keeps the step finite.
		step := h.plusDiagonal(1e-11 * total).inverse().times(g)
		var ok bool
		if x, h, ok = t.descend(x, step, g, f, h); !ok {
			break
		}
	}
	return x, residual
}

// descend halves the step until the energy falls enough; ok is false when it no longer falls.
func (t *tilting) descend(x, step, g, f Vec3, h sym3) (Vec3, sym3, bool) {
	slope := g.Dot(step)
	energy := x.Dot(h.times(x))/2 - f.Dot(x)
	for k := 1.0; k > 1e-18; k /= 2 {
		y := x.Sub(step.Scale(k))
		hy := t.stiffness(y)
		gy := hy.times(y).Sub(f)
		falls := y.Dot(hy.times(y))/2-f.Dot(y) <= energy-1e-4*k*slope
		if falls || gy.Norm() < g.Norm()/2 {
			return y, hy, true
		}
	}
	return x, h, false
}

// state writes the tensions of plane x and says how the joint stands.
func (t *tilting) state(dst []float64, x Vec3, residual float64) PlaneState {
	for i, p := range t.pos {
		dst[i] = math.Max(0, t.bolt*x.Dot(t.arm(p)))
	}
	st := PlaneState{Residual: residual, plane: x, mid: t.mid, half: t.half, face: t.face}
	st.ContactN, st.ContactAt = st.pressed(below(square, x.X, Vec2{x.Y, x.Z}))
	if st.Open = st.ContactN == 0; !st.Open {
		st.PressureMPa = math.Abs(x.Y) + math.Abs(x.Z) - x.X
	}
	return st
}
