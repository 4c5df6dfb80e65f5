package wire

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

// words are the accepted words of each enumerated domain type, from the domain's own lists where it has one.
var words = map[reflect.Type][]any{}

func listWords[T any](list ...T) {
	for _, w := range list {
		words[reflect.TypeFor[T]()] = append(words[reflect.TypeFor[T]()], w)
	}
}

func init() {
	listWords(part.LeftHand, part.RightHand)
	listWords(part.Purposes()...)
	listWords(part.Finishes()...)
	listWords(part.ProfileKinds()...)
	listWords(part.LegA, part.LegB)
	listWords(part.EndKinds()...)
	listWords(part.WeldKinds()...)
	listWords(part.LagCantilever, part.LagRule(""))
	listWords(part.SupportKinds()...)
	listWords(append(part.CouplePaths(), "")...)
	listWords(part.Components()...)
	listWords(part.ShareRules()...)
	listWords(part.Service, part.Factored)
	listWords(geometry.MM, geometry.Rad, geometry.Count, geometry.Word, geometry.Size)
	listWords(strength.ASD, strength.LRFD, strength.PartialFactors, strength.Allowable)
	listWords(strength.Pass, strength.Fail, strength.Outside, strength.NotApplied)
	listWords(strength.GivenLine, strength.NeedLine, strength.FormulaLine)
}

// random fills any domain value so that no field keeps its zero value by rule; a field that the wire forgets therefore
// comes back different. Lists have 1 to 3 entries.
func random[T any](r *rand.Rand) *T {
	v := new(T)
	fill(r, reflect.ValueOf(v).Elem())
	return v
}

func fill(r *rand.Rand, v reflect.Value) {
	if list, ok := words[v.Type()]; ok {
		v.Set(reflect.ValueOf(list[r.IntN(len(list))]))
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(fmt.Sprintf("ü %d", r.IntN(1e6)))
	case reflect.Float64:
		v.SetFloat(number(r))
	case reflect.Int:
		v.SetInt(int64(1 + r.IntN(maxThings-1)))
	case reflect.Int32:
		v.SetInt(int64(1 + r.IntN(9)))
	case reflect.Uint8:
		v.SetUint(uint64(r.IntN(256)))
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 1)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() { // what is not exported does not travel
				fill(r, v.Field(i))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			fill(r, v.Index(i))
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1+r.IntN(3), 3))
		for i := range v.Len() {
			fill(r, v.Index(i))
		}
	case reflect.Pointer:
		if r.IntN(2) == 1 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(r, v.Elem())
		}
	case reflect.Map:
		if v.Type().Key() == reflect.TypeFor[string]() {
			v.Set(reflect.ValueOf(map[string]float64{"a": number(r), "b": number(r)}))
			return
		}
		v.Set(reflect.ValueOf(map[strength.Method]float64{strength.ASD: 1, strength.LRFD: number(r)}))
	case reflect.Func:
	default:
		panic("no way to fill a " + v.Type().String())
	}
}

// number gives numbers of all sizes, with negative zero and the extremes now and then.
func number(r *rand.Rand) float64 {
	switch r.IntN(20) {
	case 0:
		return math.Copysign(0, -1)
	case 1:
		return math.MaxFloat64
	case 2:
		return math.SmallestNonzeroFloat64
	}
	return r.NormFloat64() * math.Pow(10, float64(r.IntN(12)-4))
}
