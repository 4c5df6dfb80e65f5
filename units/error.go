package units

// This file holds the one error type of the package.

import (
	"strconv"
	"strings"
	"unicode"
)

// Error says why a text is not the quantity that is wanted. Want is zero when any kind would do.
type Error struct {
	Text   string // as written
	Want   Dim
	Reason string // what is wrong with it: "has no unit"
	Accept string // what would be accepted: "write a length such as 12 mm or 1/2 in"
}

// Error gives one line: the text, what is wrong, what would be accepted.
func (e *Error) Error() string { return shown(e.Text) + " " + e.Reason + "; " + e.Accept }

const longestShown = 40

// shown keeps a plain text as it is, and quotes or shortens one that would garble a message.
func shown(text string) string {
	text = strings.TrimSpace(text)
	if r := []rune(text); len(r) > longestShown {
		return strconv.Quote(string(r[:longestShown]) + "...")
	}
	if text == "" || strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return strconv.Quote(text)
	}
	return text
}
