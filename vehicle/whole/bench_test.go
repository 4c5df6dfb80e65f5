package whole_test

import (
	"fmt"
	"testing"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
	"lugwright/vehicle/whole/wholetest"
)

// manyStates is the field lab in all 256 mixes of its tanks and six kits, with a what-if, on other mounts.
func manyStates(tb testing.TB, mounts []vehicle.Mount) *whole.Request {
	q := wholetest.FieldLab()
	for i := range 6 {
		q.Vehicle.Items = append(q.Vehicle.Items, vehicle.Item{Name: fmt.Sprint("kit ", i+1), MassKG: 20 + 7*float64(i),
			At: part.Vec{X: 1400 + 500*float64(i), Y: 700 - 250*float64(i), Z: 1300}, Optional: true})
	}
	var err error
	if q.States, err = q.Vehicle.Combinations(); err != nil {
		tb.Fatal(err)
	}
	q.Bodies[0].Mounts, q.Bodies[0].Shares = mounts, nil
	return &whole.Request{Vehicle: q.Vehicle, Bodies: q.Bodies, States: q.States, Cases: q.Cases, Moves: q.Moves}
}

func layouts() map[string][]vehicle.Mount {
	at := func(x, z float64) part.Vec { return part.Vec{X: x, Z: z} }
	return map[string][]vehicle.Mount{
		"three":    append([]vehicle.Mount{vehicle.SinglePivot("single", at(1250, 1010))}, vehicle.ClevisPair("left", "right", at(3650, 1010), 468)...),
		"diamond":  vehicle.FourPointDiamond(at(1250, 1010), at(4650, 1010), at(2950, 1010), 468),
		"longrail": vehicle.SpringLoadedLongRail([]float64{1250, 2450, 3650}, 468, 1010, 300),
	}
}

// BenchmarkManyStates is the reactions of as many states as a request may have, with a what-if.
func BenchmarkManyStates(b *testing.B) {
	for name, mounts := range layouts() {
		b.Run(name, func(b *testing.B) {
			q := manyStates(b, mounts)
			if name == "longrail" { // 29 ways of sharing and slack
				q.States = q.States[:16]
			}
			for b.Loop() {
				if _, err := whole.Reckon(q); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
