package material

// Bolt sizes: how a size is read and its areas. The sizes are in table_thread.go.

import (
	"math"
	"strconv"
	"strings"
)

// Bolt is a bolt size with the hardware that goes with it. Lengths in mm.
// Heads, nuts and washers are from memory (ISO 4014, 4032, 7089; ASME B18.2.1, B18.2.2, F436) and serve clearance and papers;
// they are nominal or greatest sizes.
type Bolt struct {
	Name        string  // "M12", "M12x1.25", "1/2-13"
	Inch        bool    // inch series
	DiaMM       float64 // nominal diameter
	PitchMM     float64
	AcrossFlats float64 // hexagon head and nut
	HeavyFlats  float64 // heavy hexagon of structural bolts; 0 where there is none
	HeadMM      float64 // head height
	NutMM       float64 // nut height
	WasherOD    float64 // plain washer outside diameter
	WasherT     float64 // plain washer thickness
}

// StressArea is the tensile stress area (mm^2): pi/4 (d - 0.9382 P)^2 of ISO 898-1 for metric, pi/4 (d - 0.9743/n)^2 of
// ASME B1.1 for inch threads.
func (b Bolt) StressArea() float64 {
	if b.Inch {
		return InchStressArea(b.DiaMM, b.PitchMM)
	}
	return MetricStressArea(b.DiaMM, b.PitchMM)
}

// MetricStressArea is pi/4 (d - 0.9382 P)^2 (mm^2) of ISO 898-1, d and P in mm.
func MetricStressArea(d, P float64) float64 { return math.Pi / 4 * (d - 0.9382*P) * (d - 0.9382*P) }

// InchStressArea is pi/4 (d - 0.9743 P)^2 (mm^2) of ASME B1.1, d and pitch P = 1/n in mm.
func InchStressArea(d, P float64) float64 { return math.Pi / 4 * (d - 0.9743*P) * (d - 0.9743*P) }

// NominalArea is pi d^2/4 of the plain shank (mm^2).
func (b Bolt) NominalArea() float64 { return math.Pi / 4 * b.DiaMM * b.DiaMM }

// MinorDia is the root diameter of the thread (mm): d - 1.2269 P (d_3 of ISO 898-1) or d - 1.3/n for inch threads.
func (b Bolt) MinorDia() float64 {
	if b.Inch {
		return b.DiaMM - 1.3*b.PitchMM
	}
	return b.DiaMM - 1.2269*b.PitchMM
}

// ParseBolt reads "M12", "M12x1.25", "1/2-13", "1 1/8-7", "1-1/8 in" or "1/2 in"; without a pitch the coarse series is meant.
// A size or pitch outside the tables is an *UnknownError with the nearest name.
func ParseBolt(s string) (Bolt, error) {
	name := strings.TrimSpace(s)
	if rest, ok := strings.CutPrefix(strings.ToUpper(name), "M"); ok {
		return parseMetric(s, rest)
	}
	return parseInch(s, name)
}

func parseMetric(s, rest string) (Bolt, error) {
	dia, pitch, fine := strings.Cut(rest, "X")
	d, err := strconv.ParseFloat(strings.TrimSpace(dia), 64)
	if err != nil {
		return Bolt{}, unknownBolt(s)
	}
	for _, b := range metricBolts {
		if b.DiaMM != d {
			continue
		}
		if !fine {
			return b, nil
		}
		p, err := strconv.ParseFloat(strings.TrimSpace(pitch), 64)
		if err != nil {
			return Bolt{}, unknownBolt(s)
		}
		return withPitch(s, b, p)
	}
	return Bolt{}, unknownBolt(s)
}

// withPitch is the coarse bolt b with pitch p, if the fine series has it.
func withPitch(s string, b Bolt, p float64) (Bolt, error) {
	if p == b.PitchMM {
		return b, nil
	}
	for _, f := range metricFine {
		if f.d == b.DiaMM && f.p == p {
			b.PitchMM = p
			b.Name += "x" + strconv.FormatFloat(p, 'g', -1, 64)
			return b, nil
		}
	}
	return Bolt{}, unknownBolt(s)
}

func parseInch(s, name string) (Bolt, error) {
	name = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(name, "in"), `"`))
	dia, tpi := name, 0.0
	// In "1-1/8" the dash joins a mixed number; in "1-8" and "1-1/8-7" the last dash goes before the threads per inch.
	if i := strings.LastIndexByte(name, '-'); i > 0 && !strings.Contains(name[i:], "/") {
		n, err := strconv.ParseFloat(name[i+1:], 64)
		if err != nil || !(n > 0) {
			return Bolt{}, unknownBolt(s)
		}
		dia, tpi = name[:i], n
	}
	d, ok := mixed(dia)
	if !ok {
		return Bolt{}, unknownBolt(s)
	}
	for _, b := range inchBolts {
		if math.Abs(b.DiaMM-d*inch) < 1e-6 && (tpi == 0 || math.Abs(b.PitchMM*tpi-inch) < 1e-6) {
			return b, nil
		}
	}
	return Bolt{}, unknownBolt(s)
}

// mixed reads "1/2", "1", "0.5", "1 1/8" and "1-1/8".
func mixed(s string) (float64, bool) {
	if strings.HasPrefix(s, "-") {
		return 0, false
	}
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '-' })
	if len(parts) == 0 || len(parts) > 2 {
		return 0, false
	}
	sum := 0.0
	for _, p := range parts {
		over, under, isFraction := strings.Cut(p, "/")
		v, err := strconv.ParseFloat(over, 64)
		if err != nil {
			return 0, false
		}
		if isFraction {
			n, err := strconv.ParseFloat(under, 64)
			if err != nil || n == 0 {
				return 0, false
			}
			v /= n
		}
		sum += v
	}
	return sum, true
}

func unknownBolt(s string) error { return &UnknownError{"bolt size", s, nearest(s, BoltNames())} }

// BoltNames lists the sizes in table order: metric coarse, then inch coarse and fine.
func BoltNames() []string {
	var names []string
	for _, b := range metricBolts {
		names = append(names, b.Name)
	}
	for _, b := range inchBolts {
		names = append(names, b.Name)
	}
	return names
}
