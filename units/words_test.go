package units

import "testing"

func TestWords(t *testing.T) {
	const text = "weld 6 mm all round; a torch of 25 x 150 mm, 0.8 to 1.3 mm, 76.2 mm high; M12; 3 mmol"
	if got := Words(text, Metric); got != text {
		t.Error(got)
	}
	// 25.4 mm to the inch: 6/25.4 = 0.236, 25/25.4 = 0.984, 150/25.4 = 5.906, 0.8/25.4 = 0.031, 1.3/25.4 = 0.051, 76.2/25.4 = 3.
	want := "weld 0.236 in all round; a torch of 0.984 x 5.906 in, 0.031 to 0.051 in, 3 in high; M12; 3 mmol"
	if got := Words(text, Inch); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	if got := ShopLength(12.7, Inch); got != "1/2 in" {
		t.Error(got)
	}
}

// An inch is 25.4 mm exactly (NIST SP 811): 9.525 mm is 3/8 in, 7.9375 mm is 5/16 in.
func TestWordsInInches(t *testing.T) {
	for from, want := range map[string]string{
		"9.525 mm":                     "3/8 in",
		"at least 14 mm, or 7.938 mm":  "at least 0.551 in, or 5/16 in",
		"25.4 to 50.8 mm (width)":      "1 to 2 in (width)",
		"12 N mm, M12, 250 N/mm":       "12 N mm, M12, 250 N/mm",
		"645.16 mm2 of 10 mm, had 5":   "1 in2 of 0.394 in, had 5",
		"needs 25.4 mm, had 50.8 mm":   "needs 1 in, had 2 in",
		"907.18474 kg, 8.8964432 kN":   "2000 lb, 2 kip",    // 907.18474 / 0.45359237, and the pound-force of 4.4482216 N
		"11.298483 N m, 6.8947573 MPa": "100 lbf in, 1 ksi", // 4.4482216 N x 0.0254 m = 0.11298483 N m
		"8.8964432 to 17.7928864 kN":   "2 kip to 4 kip",
		"-25.4 mm; none":               "-1 in; none",
		"2.54e+03 mm":                  "100 in",
		"25.4 and 50.8 mm apart":       "1 and 2 in apart",
		"25.4 x 50.8 x 6.35 mm":        "1 x 2 x 1/4 in",
		"0.0508 mm":                    "0.002 in",
		"0.01 mm":                      "0.000394 in", // 0.01 / 25.4
	} {
		if got := Words(from, Inch); got != want {
			t.Errorf("%q: %q, want %q", from, got, want)
		}
	}
}

// In sixteenths of an inch: 2.632 is 42.11, 3.937 (100 mm) is 62.99, 4.5 is 72, 4.5 and a thousandth is 72.02, 0.25 is 4.
func TestWeldLength(t *testing.T) {
	for inches, want := range map[float64]string{2.632: "2-11/16 in", 100 / 25.4: "3-15/16 in", 4.5: "4-1/2 in", 4.5 + 1e-9: "4-1/2 in", 4.501: "4-9/16 in", 0.25: "1/4 in", 11. / 64: "3/16 in", 2.99: "3 in"} {
		if got := WeldLength(inches*25.4, Inch); got != want {
			t.Errorf("%g in: %s, want %s", inches, got, want)
		}
	}
	if got := WeldLength(66.85, Metric); got != "66.85 mm" {
		t.Error(got)
	}
}
