package vehicle

import "testing"

func BenchmarkDemo(b *testing.B) {
	j := job(b)
	for b.Loop() {
		if _, err := Analyse(j); err != nil {
			b.Fatal(err)
		}
	}
}
