package pack

// This file adds the list of what is bought: bolts, nuts, pins and rods, as the buy list among the papers has them.

import (
	"context"
	"strconv"
	"strings"

	"lugwright/client/papers"
)

func (a *assembly) addBuyList(context.Context) error {
	rows := [][]string{{"item", "size", "grade_or_material", "grip_mm", "length_mm", "qty", "for", "notes"}}
	for _, x := range papers.Shopping(a.Result) {
		rows = append(rows, []string{x.Item, x.Size, x.Grade, stated(x.GripMM), stated(x.LengthMM), strconv.Itoa(x.Count), strings.Join(x.Users, "; "), x.Notes})
	}
	a.list("buy-list.csv", rows)
	return nil
}

// stated is empty for a length that an item does not have.
func stated(mm float64) string {
	if mm == 0 {
		return ""
	}
	return hundredths(mm)
}
