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
