package statics

// Shear centres and torsion of thin open sections and bars.

import (
	"fmt"
	"math"
)

// ShearCentre gives the point (mm) through which a shear force must pass to cause no twist, for rectangles along the axes:
// a force along y is shared by each rectangle's own Izz, a force along z by its own Iyy, and the centre is the mean so weighted.
//
// Valid for angles, tees, crosses, unsymmetrical I shapes and separate parallel plates (thin; own inertia only).
// Not for channels, whose centre lies outside: see ChannelShearCentre. Source: elementary thin-wall theory, no clause.
// A rectangle at a slant is an *InputError.
func ShearCentre(pieces []Piece) (y, z float64, err error) {
	if err := checkPieces(pieces); err != nil {
		return 0, 0, err
	}
	var sumY, sumZ float64
	for i, p := range pieces {
		if math.Abs(math.Sin(2*p.Ang)) > 1e-9 {
			return 0, 0, &InputError{fmt.Sprintf("pieces[%d].Ang", i), p.Ang, "a multiple of pi/2"}
		}
		yy, zz, _ := p.ownInertia(p.dir())
		y, z = y+yy*p.Y, z+zz*p.Z
		sumY, sumZ = sumY+yy, sumZ+zz
	}
	return y / sumY, z / sumZ, nil
}

// WebsOut is how far (mm, along y) webs that stand on one flange move the shear centre for a force along the flange, as those of a channel
// do: away from them, by z^2 t b^2/(2 I) for each, z its distance from the section's middle, b its length. Webs run along y and the flange along z;
// s is their section; not ok where there is more than one level of flange or the webs do not balance. Source: thin-wall theory, shear flow in free legs, no clause.
func WebsOut(pieces []Piece, s Section) (mm float64, ok bool) {
	if math.Abs(s.Iyz) > 1e-6*(s.Iyy+s.Izz) {
		return 0, false
	}
	level, found := 0.0, false
	for _, p := range pieces {
		if math.Abs(math.Sin(p.Ang)) < 0.5 {
			continue
		}
		if found && math.Abs(p.Y-level) > 1e-6 {
			return 0, false
		}
		level, found = p.Y, true
	}
	if !found {
		return 0, false
	}
	for _, p := range pieces {
		if math.Abs(math.Sin(p.Ang)) < 0.5 {
			z := p.Z - s.CZ
			mm -= math.Copysign(z*z*p.T*p.L*p.L/(2*s.Iyy), p.Y-level)
		}
	}
	return mm, true
}

// ChannelShearCentre is the distance (mm) from the web's midline out to the shear centre, away from the flanges, of a channel
// with flange width b and height h between midlines, flange tf and web tw thick (mm): e = b^2 h^2 tf/(4 I),
// I = tw h^3/12 + b tf h^2/2. Source: thin-wall theory, textbook form, from memory.
func ChannelShearCentre(b, h, tf, tw float64) (float64, error) {
	for i, x := range [4]float64{b, h, tf, tw} {
		if err := checkPositive([4]string{"b", "h", "tf", "tw"}[i], x, maxLength); err != nil {
			return 0, err
		}
	}
	inertia := tw*h*h*h/12 + b*tf*h*h/2
	return b * b * h * h * tf / (4 * inertia), nil
}

// Torsion is J (mm^4) of rectangles that twist together, for stress: the sum of TorsionByStress.
func Torsion(pieces []Piece) float64 {
	sum := 0.0
	for _, p := range pieces {
		sum += TorsionByStress(p.L, p.T)
	}
	return sum
}

// TorsionByStress is J (mm^4) of a rectangle for stress alone: T t/J is the greatest shear stress; the shorter side counts as t. Thin
// rectangles have L t^3/3. Source: St Venant's series.
func TorsionByStress(l, t float64) float64 {
	_, W := barTorsion(l, t)
	return W * math.Min(l, t)
}

// BarTorsion gives the St Venant constant J (mm^4) and the torsion modulus W (mm^3; greatest shear stress T/W at the middle
// of the long side) of a solid rectangle with sides l and t (mm). Source: St Venant's series.
func BarTorsion(l, t float64) (J, W float64, err error) {
	if err := checkPositive("l", l, maxLength); err != nil {
		return 0, 0, err
	}
	if err := checkPositive("t", t, maxLength); err != nil {
		return 0, 0, err
	}
	J, W = barTorsion(l, t)
	return J, W, nil
}

// oddFifths are 1/n^5 for n = 1, 3, 5 ...
var oddFifths = func() (out [15]float64) {
	for k := range out {
		n := float64(2*k + 1)
		out[k] = 1 / (n * n * n * n * n)
	}
	return out
}()

// barTorsion sums the series until what is left is under 1e-7 of it: the terms for J fall with the fifth power, those for W exponentially.
func barTorsion(l, t float64) (J, W float64) {
	l, t = max(l, t), min(l, t)
	var sumJ, sumW float64
	k := 0
	for ; k < len(oddFifths); k++ {
		n := float64(2*k + 1)
		x := n * math.Pi * l / (2 * t)
		if x > 20 {
			break // tanh is 1 within 1e-17, and 1/cosh nought, here and in all that follows
		}
		sumJ += math.Tanh(x) / (n * n * n * n * n)
		sumW += 1 / (n * n * math.Cosh(x))
	}
	for ; k < len(oddFifths); k++ {
		sumJ += oddFifths[k]
	}
	const pi5 = math.Pi * math.Pi * math.Pi * math.Pi * math.Pi
	J = (1 - 192/pi5*t/l*sumJ) / 3 * l * t * t * t
	return J, J / (t * (1 - 8/(math.Pi*math.Pi)*sumW))
}
