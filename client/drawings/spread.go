package drawings

import "math"

// spread moves wanted places, which come in rising order, as little as it can so that each is a gap from the next, and none under lo or over hi
// as far as there is room above lo.
func spread(want []float64, gap, lo, hi float64) []float64 {
	type block struct {
		sum   float64
		count int
	}
	var blocks []block
	for i, w := range want {
		blocks = append(blocks, block{w - float64(i)*gap, 1})
		for n := len(blocks); n > 1; n = len(blocks) {
			a, b := blocks[n-2], blocks[n-1]
			if a.sum/float64(a.count) <= b.sum/float64(b.count) {
				break
			}
			blocks = append(blocks[:n-2], block{a.sum + b.sum, a.count + b.count})
		}
	}
	var out []float64
	for _, b := range blocks {
		for range b.count {
			at := b.sum/float64(b.count) + float64(len(out))*gap
			at = min(at, hi-float64(len(want)-1-len(out))*gap)
			out = append(out, max(at, lo+float64(len(out))*gap))
		}
	}
	for i := range out {
		if math.Abs(out[i]-want[i]) < 0.01 {
			out[i] = want[i]
		}
	}
	return out
}
