package part

// Where something stands in a bracket.

import "fmt"

// place becomes words, such as "plates[2].holes[1].diameter_mm", only where something is refused: most brackets are whole.
type place struct {
	list, sub, field string
	at, subAt        int // below 0: the whole list
}

func in(list string, i int) place { return place{list: list, at: i, subAt: -1} }

// of is the kth in a list within, or in the list that the place is.
func (p place) of(list string, k int) place {
	p = p.dot(list)
	p.sub, p.subAt, p.field = p.field, k, ""
	return p
}

// dot is a field within.
func (p place) dot(field string) place {
	if p.field != "" {
		field = p.field + field
	}
	p.field = field
	return p
}

func (p place) String() string { return numbered(p.list, p.at) + numbered(p.sub, p.subAt) + p.field }

func numbered(list string, i int) string {
	if i < 0 {
		return list
	}
	return fmt.Sprintf("%s[%d]", list, i)
}
