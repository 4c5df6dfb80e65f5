// Package spelling finds the known word that a mistyped one is nearest to. It knows no list of words.
package spelling

import "strings"

// longest bounds the work for a word that nobody meant.
const longest = 64

// Distance counts the letters to insert, delete or change from a to b (Levenshtein), of words cut at 64 bytes.
func Distance(a, b string) int {
	a, b = a[:min(len(a), longest)], b[:min(len(b), longest)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost = 1 + min(diagonal, row[j], row[j+1])
			}
			diagonal, row[j+1] = row[j+1], cost
		}
	}
	return row[len(b)]
}

// Nearest gives the known word that a mistyped one is nearest to, without regard to case: one that begins with it or holds it before one that
// is spelt otherwise, and of several the one with the fewest letters to change; "" when more than half of its letters would have to change.
func Nearest(word string, known []string) string {
	if word == "" {
		return ""
	}
	word = strings.ToLower(word)
	best, at, held := len(word)/2+1, -1, false
	for i, k := range known {
		k = strings.ToLower(k)
		d, holds := Distance(word, k), len(word) >= 3 && strings.Contains(k, word)
		if holds && !held || holds == held && d < best {
			best, at, held = d, i, holds
		}
	}
	if at < 0 {
		return ""
	}
	return known[at]
}
