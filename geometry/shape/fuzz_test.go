package shape

// Fuzzing: nothing panics, nothing that is promised to be a number is not one, and sound outlines keep their promises.

import (
	"encoding/binary"
	"math"
	"testing"
)

// decode makes loops of fuzz bytes: six bytes a vertex (x, y, bulge), a zero triple ends a loop. The largest values
// stand for numbers that are none, or too large.
func decode(data []byte) Outline {
	var loops []Loop
	var l Loop
	for ; len(data) >= 6; data = data[6:] {
		x, y, b := int16(binary.LittleEndian.Uint16(data)), int16(binary.LittleEndian.Uint16(data[2:])), int16(binary.LittleEndian.Uint16(data[4:]))
		if x == 0 && y == 0 && b == 0 {
			loops, l = append(loops, l), nil
			continue
		}
		l = append(l, Vertex{Point{wild(x, 50), wild(y, 50)}, wild(b, 16384)})
	}
	loops = append(loops, l)
	return Outline{Outer: loops[0], Holes: loops[1:]}
}

func wild(v int16, scale float64) float64 {
	switch v {
	case 32767:
		return math.NaN()
	case 32766:
		return math.Inf(1)
	case 32765:
		return 1e300
	case 32764:
		return 1e-300
	}
	return float64(v) / scale
}

func encode(o Outline) []byte {
	var out []byte
	put := func(v float64) { out = binary.LittleEndian.AppendUint16(out, uint16(int16(v))) }
	for i, l := range append([]Loop{o.Outer}, o.Holes...) {
		if i > 0 {
			out = append(out, 0, 0, 0, 0, 0, 0)
		}
		for _, v := range l {
			put(v.X * 50)
			put(v.Y * 50)
			put(v.Bulge * 16384)
		}
	}
	return out
}

func seeds(f *testing.F) {
	for _, o := range validOutlines(20, 12) {
		f.Add(encode(o), 0.3)
	}
	f.Add(encode(Outline{Outer: Rect(Point{-10, -10}, Point{30, 40}), Holes: []Loop{Circle(Point{5, 5}, 10)}}), 0.0)
	f.Add([]byte{255, 127, 0, 0, 0, 0, 254, 127, 253, 127, 252, 127}, 1.0)
}

func FuzzValidate(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte, _ float64) {
		if len(data) > 600 {
			return
		}
		o := decode(data)
		found := o.Validate()
		for _, v := range found {
			if v.Rule == "" || v.Place == "" || v.Message == "" {
				t.Errorf("incomplete: %+v", v)
			}
		}
		o.Properties()
		o.MinLigament()
		o.Normalize()
		o.Contains(Point{1, 1})
		if len(found) > 0 {
			return
		}
		p := o.Properties()
		if !(p.AreaMM2 > 0 && p.IxxMM4 > 0 && p.IyyMM4 > 0 && p.IxxMM4*p.IyyMM4 >= p.IxyMM4*p.IxyMM4) {
			t.Errorf("sound outline with properties %+v", p)
		}
		if v, _, _ := o.MinLigament(); !(v > TouchMM) {
			t.Errorf("sound outline with ligament %g", v)
		}
		if again := o.Normalize().Validate(); len(again) > 0 {
			t.Errorf("no longer sound when normalised: %v", again)
		}
	})
}

func FuzzChords(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte, angle float64) {
		if len(data) > 600 {
			return
		}
		o := decode(data)
		dir := Point{1, 0}.Rotate(angle)
		for _, v := range o.Outer {
			o.Chords(v.Point, dir)
		}
		if len(o.Validate()) > 0 || !(math.Abs(angle) < 1e3) {
			return
		}
		checkChordIntegral(t, o, angle, 60)
	})
}

func FuzzOffset(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte, d float64) {
		if len(data) > 300 {
			return
		}
		l := decode(data).Outer
		got, err := Offset(l, d)
		if err != nil {
			return
		}
		if v := (Outline{Outer: got}).Validate(); len(v) > 0 {
			t.Errorf("offset is not sound: %v", v)
		}
		for _, p := range got.Polygon(0.5) {
			if have := l.DistTo(p); !(math.Abs(have-math.Abs(d)) < 1e-4) {
				t.Errorf("offset by %g is %g away at %v", d, have, p)
			}
		}
	})
}
