package units

// This file checks reading against the exact definitions, refusals with their messages, writing, and the round trip.

import (
	"errors"
	"math"
	"math/rand"
	"strings"
	"testing"
)

func close12(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) }

// Expected numbers are worked by hand from 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound agreement, 1959)
// and g = 9.80665 m/s2 (3rd CGPM, 1901), hence 1 lbf = 4.4482216152605 N.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dim
		v    float64
	}{
		{"12 mm", Length, 12},
		{"12mm", Length, 12},
		{" 12  mm ", Length, 12},
		{"12\u00a0mm", Length, 12},
		{"\u221212 mm", Length, -12},
		{"-12 mm", Length, -12},
		{"+12 mm", Length, 12},
		{"- 12 mm", Length, -12},
		{".5 mm", Length, 0.5},
		{"5. mm", Length, 5},
		{"1e3 mm", Length, 1000},
		{"1.5E-2 mm", Length, 0.015},
		{"1/4 in", Length, 6.35},
		{`1/4"`, Length, 6.35},
		{`1-3/8"`, Length, 34.925},
		{"1 3/8 in", Length, 34.925},
		{"1-3/8 in", Length, 34.925},
		{"1 - 3/8 in", Length, 34.925},
		{"-1-3/8 in", Length, -34.925},
		{"1⅜ in", Length, 34.925},
		{"½ in", Length, 12.7},
		{`0.25"`, Length, 6.35},
		{"0.25″", Length, 6.35},
		{"2 inches", Length, 50.8},
		{`5'6"`, Length, 1676.4},
		{`5'-6"`, Length, 1676.4},
		{`5' 6-1/2"`, Length, 1689.1},
		{"5′ 6″", Length, 1676.4},
		{"5'6''", Length, 1676.4},
		{"5 ft 6 in", Length, 1676.4},
		{"5ft6in", Length, 1676.4},
		{"5 ft 2 in", Length, 1574.8},
		{"-5 ft 6 in", Length, -1676.4},
		{"3 ft", Length, 914.4},
		{"3'", Length, 914.4},
		{"2.5 ft", Length, 762},
		{"30 cm", Length, 300},
		{"2 m", Length, 2000},
		{"300 lbf", Force, 1334.46648457815},
		{"3 kip", Force, 13344.6648457815},
		{"12 kN", Force, 12000},
		{"800 N", Force, 800},
		{"210 kg", Mass, 210},
		{"2400 kg", Mass, 2400},
		{"2.4 t", Mass, 2400},
		{"300 lb", Mass, 136.077711},
		{"180 L", Volume, 180},
		{"0.2 m3", Volume, 200},
		{"120 US gal", Volume, 454.24941408},            // of 231 in3: 120 x 231 x 0.016387064 L
		{"8.34 lb/US gal", Density, 0.9993524038229181}, // 8.34 x 0.45359237 / 3.785411784
		{"62.4 lb/ft3", Density, 0.9995521145351126},    // 62.4 x 0.45359237 / 28.316846592
		{"1000 kg/m3", Density, 1},
		{"36 ksi", Stress, 248.211262554061},
		{"355 MPa", Stress, 355},
		{"250 N/mm2", Stress, 250},
		{"250 N/mm²", Stress, 250},
		{"250 N / mm^2", Stress, 250},
		{"210 GPa", Stress, 210000},
		{"50 psi", Stress, 0.344737864658418},
		{"10 deg", Angle, math.Pi / 18},
		{"10°", Angle, math.Pi / 18},
		{"10 °", Angle, math.Pi / 18},
		{"0.2 rad", Angle, 0.2},
		{"1.5 kN m", Moment, 1.5e6},
		{"1.5 kN*m", Moment, 1.5e6},
		{"1.5 kN·m", Moment, 1.5e6},
		{"1.5 kN-m", Moment, 1.5e6},
		{"1 N·mm", Moment, 1},
		{"1 lbf in", Moment, 112.9848290276167},
		{"1 in-lbf", Moment, 112.9848290276167},
		{"1 lbf ft", Moment, 1355.8179483314004},
		{"5 ft-lbf", Moment, 6779.089741657002},
		{"1 kip in", Moment, 112984.8290276167},
		{"46.8 ft-kips", Moment, 46.8 * 1355817.9483314004},
		{"2 kip-in.", Moment, 225969.6580552334},
		{"2 kNm", Moment, 2e6},
		{"5 kN cm", Moment, 50000},
		{"12 kips/in.", ForcePerLength, 2101.5220229577167},
		{"16 kN/cm2", Stress, 160},
		{"3 in.2", Area, 1935.48},
		{"1 in2", Area, 645.16},
		{"2 ft2", Area, 185806.08},
		{"1 cm2", Area, 100},
		{"1 in3", SectionModulus, 16387.064},
		{"1 in^4", SecondMoment, 416231.4256},
		{"1 cm4", SecondMoment, 10000},
		{"0.5 g", Acceleration, 0.5},
		{"9.80665 m/s2", Acceleration, 1},
		{"1 kip/in", ForcePerLength, 175.12683524647636},
		{"3 kN/m", ForcePerLength, 3},
		{"85 %", Ratio, 0.85},
		{"85%", Ratio, 0.85},
		{"0.85", Ratio, 0.85},
		{"3/4", Ratio, 0.75},
		{"4", Count, 4},
		{"0 mm", Length, 0},
	} {
		v, err := Parse(c.text, c.want)
		if err != nil || !close12(v, c.v) {
			t.Errorf("%q: got %v %v, want %v", c.text, v, err, c.v)
		}
	}
}

// NIST SP 811 (2008), appendix B.8, prints these factors to seven digits; SI base of each in the comment there.
func TestFactorsAgainstNIST(t *testing.T) {
	for _, c := range []struct {
		unit    string
		printed float64
	}{
		{"in", 25.4}, {"ft", 304.8}, {"lbf", 4.448222}, {"kip", 4448.222}, {"lb", 0.4535924}, {"psi", 6.894757e-3}, {"ksi", 6.894757},
		{"lbf*in", 112.9848}, {"lbf*ft", 1355.818}, {"lbf/in", 0.1751268}, {"lbf/ft", 0.01459390}, {"in2", 645.16}, {"ft2", 92903.04},
		{"in3", 16387.06}, {"in4", 416231.4}, {"deg", 0.01745329},
	} {
		factor, _, err := Factor(c.unit)
		if err != nil || math.Abs(factor/c.printed-1) > 5e-7 {
			t.Errorf("%s: got %v %v, NIST prints %v", c.unit, factor, err, c.printed)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dim
		err  string
	}{
		{"12", Length, "12 has no unit; write a length such as 12 mm or 1/2 in"},
		{"12 kN", Length, "12 kN is a force; a length such as 12 mm or 1/2 in is needed"},
		{"300 lb", Force, "300 lb is a mass; a force such as 12 kN or 800 lbf is needed (write lbf for a force)"},
		{"210 kg", Force, "210 kg is a mass; a force such as 12 kN or 800 lbf is needed (write the weight in N or kN)"},
		{"300 lbf", Mass, "300 lbf is a force; a mass such as 210 kg or 460 lb is needed (write lb for a mass)"},
		{"300 g", Mass, "300 g is an acceleration; a mass such as 210 kg or 460 lb is needed (g is gravity here, not gram)"},
		{"12 Mm", Length, "12 Mm has the unknown unit Mm; the nearest known unit is mm"},
		{"12 kipp/in", ForcePerLength, "12 kipp/in has the unknown unit kipp/in; the nearest known unit is kip/in"},
		{"30 ft lb", Moment, "30 ft lb has the unknown unit ft lb; the nearest known unit is ft lbf"},
		{"12 KN", Force, "12 KN has the unknown unit KN; the nearest known unit is kN"},
		{"12 furlongs", Length, "12 furlongs has the unknown unit furlongs; known units are mm, m, in, ft, N, kN, lbf, kip, MPa, ksi, kg, lb, deg, rad and their products"},
		{"", Length, `"" is empty; write a length such as 12 mm or 1/2 in`},
		{"\u00a0", Length, "\"\" is empty; write a length such as 12 mm or 1/2 in"},
		{"12,5 mm", Length, "12,5 mm has a comma; write a decimal point, and no mark between thousands: 12.5 mm, 1200 mm"},
		{"1_000 mm", Length, "1_000 mm has an underscore; write the digits without a mark between them: 1200 mm"},
		{"0x1p4 mm", Length, "0x1p4 mm is not a decimal number; write it with the digits 0 to 9: 12.5 mm"},
		{"NaN mm", Length, "NaN mm does not begin with a number; write a length such as 12 mm or 1/2 in"},
		{"Inf mm", Length, "Inf mm does not begin with a number; write a length such as 12 mm or 1/2 in"},
		{"mm", Length, "mm does not begin with a number; write a length such as 12 mm or 1/2 in"},
		{"--1 mm", Length, "--1 mm does not begin with a number; write a length such as 12 mm or 1/2 in"},
		{".", Ratio, ". does not begin with a number; write a ratio such as 0.85 or 85 %"},
		{"1e400 mm", Length, "1e400 mm has a number that is too large; write a length such as 12 mm or 1/2 in"},
		{"1e308 m", Length, "1e308 m is too large; write a length such as 12 mm or 1/2 in"},
		{"1e-400 mm", Length, "1e-400 mm has a number that is too small; write a length such as 12 mm or 1/2 in"},
		{"1/0 in", Length, "1/0 in has a fraction over zero; write a length such as 12 mm or 1/2 in"},
		{"1-9/8 in", Length, "1-9/8 in has a whole number with a fraction that is not less than one; write a length such as 12 mm or 1/2 in"},
		{"1.5/4 in", Length, "1.5/4 in has a fraction that is not two whole numbers; write a length such as 12 mm or 1/2 in"},
		{"1.5 3/8 in", Length, "1.5 3/8 in is not one number with one unit; write a length such as 12 mm or 1/2 in"},
		{"1 2 mm", Length, "1 2 mm is not one number with one unit; write a length such as 12 mm or 1/2 in"},
		{"12 mm mm", Length, "12 mm mm has the unknown unit mm mm; known units are mm, m, in, ft, N, kN, lbf, kip, MPa, ksi, kg, lb, deg, rad and their products"},
		{"5'6", Length, `5'6 has feet followed by something else than inches; write feet and inches as 5 ft 6 in or 5'6"`},
		{"5 ft 6 mm", Length, `5 ft 6 mm has feet followed by something else than inches; write feet and inches as 5 ft 6 in or 5'6"`},
		{"5.5 ft 6 in", Length, `5.5 ft 6 in does not split into whole feet and less than 12 inches; write feet and inches as 5 ft 6 in or 5'6"`},
		{"5 ft 14 in", Length, `5 ft 14 in does not split into whole feet and less than 12 inches; write feet and inches as 5 ft 6 in or 5'6"`},
		{"5 ft 12 in", Length, `5 ft 12 in does not split into whole feet and less than 12 inches; write feet and inches as 5 ft 6 in or 5'6"`},
		{"2.5", Count, "2.5 is not a whole number; write a count such as 4"},
		{"85 %", Count, "85 % is a ratio; a count such as 4 is needed"},
		{"4 mm", Ratio, "4 mm is a length; a ratio such as 0.85 or 85 % is needed"},
		{"12 \x00", Length, `"12 \x00" has the unknown unit "\x00"; known units are mm, m, in, ft, N, kN, lbf, kip, MPa, ksi, kg, lb, deg, rad and their products`},
		{strings.Repeat("1", 200), Length, `"1111111111111111111111111111111111111111..." is too long for a quantity; write a length such as 12 mm or 1/2 in`},
		{"12 mm", Dim(99), "12 mm cannot be read; the kind of quantity asked for is not known"},
	} {
		v, err := Parse(c.text, c.want)
		var e *Error
		if v != 0 || !errors.As(err, &e) || err.Error() != c.err {
			t.Errorf("%q: got %v, %v\nwant %s", c.text, v, err, c.err)
			continue
		}
		if e.Text != c.text || e.Want != c.want {
			t.Errorf("%q: the error keeps %q %v", c.text, e.Text, e.Want)
		}
	}
}

func TestParseAny(t *testing.T) {
	for _, c := range []struct {
		text string
		v    float64
		dim  Dim
	}{
		{"1/4 in", 6.35, Length}, {"12 kN", 12000, Force}, {"210 kg", 210, Mass}, {"0.5 g", 0.5, Acceleration}, {"85 %", 0.85, Ratio},
		{"4", 4, Ratio}, {`5'6"`, 1676.4, Length},
	} {
		v, dim, err := ParseAny(c.text)
		if err != nil || dim != c.dim || !close12(v, c.v) {
			t.Errorf("%q: got %v %v %v", c.text, v, dim, err)
		}
	}
	if _, _, err := ParseAny("x"); err == nil || err.Error() != "x does not begin with a number; write a number and a unit such as 12 mm" {
		t.Errorf("got %v", err)
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		v      float64
		d      Dim
		metric string
		inch   string
	}{
		{12, Length, "12 mm", "0.472 in"},
		{6.35, Length, "6.35 mm", "1/4 in"},
		{34.925, Length, "34.92 mm", "1-3/8 in"},
		{-34.925, Length, "-34.92 mm", "-1-3/8 in"},
		{25.4, Length, "25.4 mm", "1 in"},
		{25.4 / 64, Length, "0.3969 mm", "1/64 in"},
		{1676.4, Length, "1676.4 mm", "66 in"},
		{0, Length, "0 mm", "0 in"},
		{math.Copysign(0, -1), Length, "0 mm", "0 in"},
		{15210, Force, "15.21 kN", "3.419 kip"},
		{800, Force, "800 N", "179.8 lbf"},
		{-800, Force, "-800 N", "-179.8 lbf"},
		{1.5e6, Moment, "1.5 kN m", "13.28 kip in"},
		{45000, Moment, "45 N m", "398.3 lbf in"},
		{12, Moment, "12 N mm", "0.1062 lbf in"},
		{355, Stress, "355 MPa", "51.49 ksi"},
		{0.5, Stress, "0.5 MPa", "72.52 psi"},
		{210000, Stress, "210000 MPa", "30458 ksi"},
		{2413.4, Mass, "2413.4 kg", "5320.6 lb"},
		{math.Pi / 18, Angle, "10 deg", "10 deg"},
		{12345678, SecondMoment, "12345678 mm4", "29.66 in4"},
		{-1, Acceleration, "-1 g", "-1 g"},
		{250, ForcePerLength, "250 N/mm", "1.428 kip/in"},
		{0.85, Ratio, "0.85", "0.85"},
		{4, Count, "4", "4"},
		{-1e-9, Ratio, "-1e-09", "-1e-09"},
		{math.NaN(), Length, "not finite", "not finite"},
		{math.Inf(1), Force, "not finite", "not finite"},
		{1, Dim(0), "not finite", "not finite"},
	} {
		if got := Format(c.v, c.d, Metric); got != c.metric {
			t.Errorf("%v %v metric: got %s, want %s", c.v, c.d, got, c.metric)
		}
		if got := Format(c.v, c.d, Inch); got != c.inch {
			t.Errorf("%v %v inch: got %s, want %s", c.v, c.d, got, c.inch)
		}
	}
}

func TestFormatPlain(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{1.25, 1, "1.2"}, {-0.001, 2, "0.00"}, {-0.001, 3, "-0.001"}, {1e20, 0, "100000000000000000000"}, {2, -1, "2"}, {math.NaN(), 2, "not finite"},
	} {
		if got := FormatPlain(c.v, c.decimals); got != c.want {
			t.Errorf("%v: got %s, want %s", c.v, got, c.want)
		}
	}
}

func TestUtilisation(t *testing.T) {
	for _, c := range []struct {
		u    float64
		want string
	}{
		{0, "0.00"}, {0.634, "0.63"}, {0.999, "1.00"}, {1, "1.00"}, {math.Nextafter(1, 2), "1.01"}, {1.0049, "1.01"}, {1.006, "1.01"}, {1.234, "1.23"},
		{math.Inf(1), "not finite"}, {math.NaN(), "not finite"},
	} {
		if got := Utilisation(c.u); got != c.want {
			t.Errorf("%v: got %s, want %s", c.u, got, c.want)
		}
	}
}

// Every kind, both systems, sizes from a millionth to a hundred million: what is written reads back to four figures (three in inches).
func TestRoundTrip(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for d := Length; d <= Count; d++ {
		for range 2000 {
			v := math.Pow(10, r.Float64()*14-6) * float64(1-2*r.Intn(2))
			if d == Count {
				v = math.Round(v)
			}
			for _, system := range []System{Metric, Inch} {
				text := Format(v, d, system)
				back, err := Parse(text, d)
				if err != nil || math.Abs(back-v) > precision(d, system)*math.Abs(v) {
					t.Fatalf("%v %v: wrote %q, read %v %v", v, d, text, back, err)
				}
				if again, _ := Parse(Format(back, d, system), d); !close12(again, back) {
					t.Fatalf("%v %v: wrote %q, then %q", v, d, text, Format(back, d, system))
				}
			}
		}
	}
}

// precision is half of the last of four figures, or of three.
func precision(d Dim, system System) float64 {
	if d == Length && system == Inch {
		return 5.001e-3
	}
	return 5.001e-4
}

// Every sixty-fourth of an inch up to a yard comes back exactly as it was.
func TestFractionsRoundTrip(t *testing.T) {
	for parts := range 64 * 36 {
		v := float64(parts) / 64 * 25.4
		text := Format(v, Length, Inch)
		back, err := Parse(text, Length)
		if err != nil || back != v || strings.Contains(text, ".") {
			t.Fatalf("%d/64 in: wrote %q, read %v %v, want %v", parts, text, back, err, v)
		}
	}
}

func TestUnitNamesAreUnique(t *testing.T) {
	seen := map[string]bool{}
	for _, u := range table {
		for _, name := range strings.Fields(u.names) {
			if seen[name] {
				t.Errorf("%s is listed twice", name)
			}
			seen[name] = true
			if v, dim, err := ParseAny("2 " + name); err != nil || dim != u.dim || !close12(v, 2*u.factor) {
				t.Errorf("2 %s: got %v %v %v", name, v, dim, err)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"12 mm", "1-3/8 in", `5'6"`, "5 ft 6 in", "1e400 m", "NaN", "−1 kN·m", "85 %", "½ in", "1//2 in", "5' -", "0x1p-2", "1 ft2"} {
		f.Add(text, int(Length))
	}
	f.Fuzz(func(t *testing.T, text string, want int) {
		v, err := Parse(text, Dim(want))
		if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Errorf("%q: got %v without an error", text, v)
		}
		if err != nil && (v != 0 || err.Error() == "") {
			t.Errorf("%q: got %v with the error %q", text, v, err)
		}
		any, dim, err2 := ParseAny(text)
		if err == nil && (err2 != nil || any != v || (dim != Dim(want) && Dim(want) != Count)) {
			t.Errorf("%q: Parse gives %v %v, ParseAny %v %v %v", text, v, Dim(want), any, dim, err2)
		}
	})
}
