package family

// This file holds what is known of a family before its first variant.

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/part"
)

// A Variant is one bracket of the family, or why there is none.
type Variant struct {
	ID     int64        // row of the file or index of the grid, from 1
	Own    []part.Param // one for each of the family's Names; a parameter that is left out has no name
	Params []part.Param // all that are given, those in common too
	Err    error
}

// Family is an open family.
type Family struct {
	*job.Family
	Names []geometry.Param // parameters in which variants differ, in the order of the file
	Count int64            // of variants
	rows  *rows            // nil: a grid
	input [sha256.Size]byte
}

// Variants go through a family in order.
type Variants interface {
	// Next gives the next variant, which is good until the one after it is asked for; io.EOF after the last.
	Next() (*Variant, error)
}

// Open counts the variants. Rows is the CSV file of a family that is no grid, which stays open. The error is of kind job.Errors where the file is at fault.
func Open(f *job.Family, rows string) (*Family, error) {
	out := &Family{Family: f, Count: 1}
	if rows != "" {
		return out, out.readRows(rows)
	}
	for _, a := range f.Axes {
		out.Names = append(out.Names, a.Param)
		out.Count *= int64(len(a.Values))
	}
	return out, nil
}

// Close closes the file of rows.
func (f *Family) Close() error {
	if f.rows == nil {
		return nil
	}
	return f.rows.file.Close()
}

// From gives the variants after the first n. A ChangedError ends them where the file of rows is no longer as it was.
func (f *Family) From(n int64) (Variants, error) {
	if f.rows == nil {
		return &grid{f: f, next: n}, nil
	}
	return f.openRows(n)
}

// At gives one variant by its id.
func (f *Family) At(id int64) (*Variant, error) {
	if id < 1 || id > f.Count {
		return nil, fmt.Errorf("there is no variant %d; this family has 1 to %d", id, f.Count)
	}
	if f.rows == nil {
		return (&grid{f: f, next: id - 1}).Next()
	}
	r, err := f.openRows(id - 1)
	if err != nil {
		return nil, err
	}
	v, err := r.Next()
	if err == nil {
		err = r.makeSure()
	}
	return v, err
}

// Hash is the SHA-256 of all that the results follow from, the tool's version among it, in hexadecimal.
func (f *Family) Hash(version string) string {
	h := sha256.New()
	shop, err := json.Marshal(f.Shop)
	if err != nil {
		panic("family: a shop that was read has only finite numbers: " + err.Error())
	}
	fmt.Fprintf(h, "lugwright %s\n%s\n%s\n%x\n", version, f.Canonical(), shop, f.input)
	return hex.EncodeToString(h.Sum(nil))
}

// given puts a variant's own parameters over those in common, in the order of the kind.
func (f *Family) given(v *Variant) {
	v.Params = v.Params[:0]
	common := f.Brackets[0].Params
	for _, p := range f.Kind.Params {
		if own := named(v.Own, p.Name); own != nil {
			v.Params = append(v.Params, *own)
		} else if all := named(common, p.Name); all != nil {
			v.Params = append(v.Params, *all)
		}
	}
}

func named(list []part.Param, name string) *part.Param {
	for i := range list {
		if list[i].Name == name {
			return &list[i]
		}
	}
	return nil
}

// grid goes through combinations.
type grid struct {
	f    *Family
	next int64
	v    Variant
}

func (g *grid) Next() (*Variant, error) {
	if g.next >= g.f.Count {
		return nil, io.EOF
	}
	g.f.combination(g.next, &g.v)
	g.next++
	return &g.v, nil
}

// combination writes the i-th combination, the last axis varying fastest.
func (f *Family) combination(i int64, v *Variant) {
	v.ID = i + 1
	if v.Own == nil {
		v.Own = make([]part.Param, len(f.Axes))
	}
	for k := len(f.Axes) - 1; k >= 0; k-- {
		values := f.Axes[k].Values
		v.Own[k] = values[i%int64(len(values))]
		i /= int64(len(values))
	}
	f.given(v)
}
