package mesh

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"lugwright/geometry/shape"
)

// divided divides a polygon with holes and checks what must hold of any division: corners + 2 holes - 2 triangles.
func divided(t testing.TB, loops ...[]node) []Triangle {
	t.Helper()
	var nodes []node
	var rings [][]int
	for _, l := range loops {
		var ring []int
		for _, n := range l {
			ring = append(ring, len(nodes))
			nodes = append(nodes, n)
		}
		rings = append(rings, ring)
	}
	out, err := divide(nodes, rings)
	if err != nil {
		t.Fatalf("%v: %v", loops, err)
	}
	// Euler: a polygon of n corners and h holes has n + 2h - 2 triangles, however it is divided.
	if want := len(nodes) + 2*(len(loops)-1) - 2; len(out) != want {
		t.Errorf("%d triangles, want %d", len(out), want)
	}
	return out
}

func TestSquareWithHole(t *testing.T) {
	divided(t, []node{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, []node{{4, 4}, {6, 4}, {6, 6}, {4, 6}})
}

// Combs, stairs, corners in line, and holes level with each other: every kind of corner of the sweep, and ties in its order.
func TestAwkward(t *testing.T) {
	comb := []node{{0, 0}, {24, 0}}
	for i := int64(6); i > 0; i-- {
		comb = append(comb, node{4 * i, 10}, node{4*i - 2, 3 + i%2})
	}
	comb = append(comb, node{0, 10})
	for name, loops := range map[string][][]node{
		"comb":     {comb},
		"in line":  {{{0, 0}, {1, 0}, {2, 0}, {4, 0}, {4, 1}, {4, 4}, {2, 4}, {0, 4}, {0, 2}, {0, 1}}},
		"level":    {{{0, 0}, {30, 0}, {30, 10}, {0, 10}}, {{2, 4}, {4, 4}, {4, 6}, {2, 6}}, {{8, 4}, {10, 4}, {10, 6}, {8, 6}}, {{12, 4}, {14, 6}, {12, 6}}},
		"diamonds": {{{0, 0}, {30, 0}, {30, 10}, {0, 10}}, {{2, 5}, {4, 3}, {6, 5}, {4, 7}}, {{8, 5}, {10, 3}, {12, 5}, {10, 7}}},
		"spiral":   {{{0, 0}, {10, 0}, {10, 10}, {2, 10}, {2, 4}, {6, 4}, {6, 6}, {4, 6}, {4, 8}, {8, 8}, {8, 2}, {0, 2}}},
		"star":     {{{0, 9}, {-2, 2}, {-9, 0}, {-2, -2}, {0, -9}, {2, -2}, {9, 0}, {2, 2}}},
	} {
		for _, turn := range []func(node) node{
			func(n node) node { return n }, func(n node) node { return node{-n.y, n.x} }, func(n node) node { return node{-n.x, -n.y} },
			func(n node) node { return node{n.x, -n.y} }, func(n node) node { return node{n.x + n.y, n.y - n.x} },
		} {
			turned := make([][]node, len(loops))
			for i, l := range loops {
				for _, n := range l {
					turned[i] = append(turned[i], turn(n))
				}
			}
			t.Run(name, func(t *testing.T) { divided(t, turned...) })
		}
	}
}

// Random star-shaped outlines of random corners with random holes in a ring about the middle, on a coarse grid so that ties are common.
func TestRandom(t *testing.T) {
	for seed := range uint64(1000) {
		r := rand.New(rand.NewPCG(seed, 1))
		star := func(cx, cy, inner, outer float64) []node {
			n := 3 + r.IntN(40)
			var l []node
			for k := range n {
				rad := inner + (outer-inner)*r.Float64()
				p := shape.Polar(rad, 2*math.Pi*(float64(k)+0.3*r.Float64())/float64(n))
				q := node{int64(math.Round(cx + p.X)), int64(math.Round(cy + p.Y))}
				if len(l) == 0 || q != l[len(l)-1] && q != l[0] {
					l = append(l, q)
				}
			}
			return l
		}
		loops := [][]node{star(0, 0, 700, 1200)}
		for k := range r.IntN(7) {
			at := shape.Polar(420, 2*math.Pi*float64(k)/7)
			loops = append(loops, star(at.X, at.Y, 60, 150))
		}
		sound := true
		for _, l := range loops {
			sound = sound && len(l) > 2 && simple(l)
		}
		if !sound || outside(loops[0], 580) {
			continue
		}
		t.Run(fmt.Sprint(seed), func(t *testing.T) { divided(t, loops...) })
	}
}

// simple says whether no two sides of a ring meet but neighbours at their corner.
func simple(l []node) bool {
	n := len(l)
	for i := range n {
		for k := i + 1; k < n; k++ {
			a, b, c, d := l[i], l[(i+1)%n], l[k], l[(k+1)%n]
			if k == i+1 || (k+1)%n == i {
				if k == i+1 && side(a, b, d) == 0 && (d.x-b.x)*(a.x-b.x)+(d.y-b.y)*(a.y-b.y) > 0 {
					return false
				}
				continue
			}
			if side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0 {
				return false
			}
		}
	}
	return true
}

// outside says whether a side of the ring comes nearer to the middle than r.
func outside(l []node, r float64) bool {
	for i, a := range l {
		b := l[(i+1)%len(l)]
		e := shape.Edge{A: shape.Point{X: float64(a.x), Y: float64(a.y)}, B: shape.Point{X: float64(b.x), Y: float64(b.y)}}
		if e.DistTo(shape.Point{}) < r {
			return true
		}
	}
	return false
}

// Rings that cross or touch are refused, never divided wrongly.
func TestUnsoundRings(t *testing.T) {
	square := []node{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	for name, loops := range map[string][][]node{
		"bow tie":      {{{0, 0}, {10, 10}, {10, 0}, {0, 10}}},
		"hole outside": {square, {{20, 4}, {22, 4}, {22, 6}}},
		"hole across":  {square, {{5, 4}, {15, 4}, {15, 6}, {5, 6}}},
		"flat":         {{{0, 0}, {5, 0}, {10, 0}}},
	} {
		var nodes []node
		var rings [][]int
		for _, l := range loops {
			var ring []int
			for _, n := range l {
				ring = append(ring, len(nodes))
				nodes = append(nodes, n)
			}
			rings = append(rings, ring)
		}
		if out, err := divide(nodes, rings); err == nil {
			t.Errorf("%s: divided into %v", name, out)
		}
	}
}

// Products of 128 bits against math/big.
func TestExactSide(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	pick := func() int64 { return (r.Int64() >> (r.IntN(60) + 2)) * int64(1-2*r.IntN(2)) }
	for range 20000 {
		p, q, u, v := pick(), pick(), pick(), pick()
		if r.IntN(3) == 0 {
			u, v = q, p
		}
		want := new(big.Int).Sub(new(big.Int).Mul(big.NewInt(p), big.NewInt(q)), new(big.Int).Mul(big.NewInt(u), big.NewInt(v))).Sign()
		if got := multiply(p, q).sub(multiply(u, v)).sign(); got != want {
			t.Fatalf("%d %d - %d %d: %d, want %d", p, q, u, v, got, want)
		}
	}
}
