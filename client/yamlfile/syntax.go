package yamlfile

// This file turns bytes into a YAML tree that is safe to walk: one document, no anchors, no great depth.

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

const (
	// LargestFile is the most bytes a file may have.
	LargestFile = 4 << 20
	// mostTokens holds off files whose reading would take long: the parser's time grows with the square of a mapping's keys.
	mostTokens = 100_000
	// deepest nesting; a job's own is six.
	deepest = 30
)

// Tree parses the file. The error is an Errors; instead says what to write where the file as a whole cannot be read.
func Tree(file string, src []byte, instead string) (root ast.Node, err error) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	if e := refuseBytes(src); e != nil {
		e.File = file
		return nil, Errors{e}
	}
	defer func() {
		if r := recover(); r != nil { // the parser is not ours
			root, err = nil, Errors{{File: file, Found: "the YAML cannot be read", Accept: instead}}
		}
	}()
	tokens := lexer.Tokenize(string(src))
	if e := refuseTokens(tokens); e != nil {
		e.File = file
		return nil, Errors{e}
	}
	parsed, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		return nil, Errors{syntaxError(file, err, instead)}
	}
	return document(file, parsed, instead)
}

func document(file string, parsed *ast.File, instead string) (ast.Node, error) {
	var bodies []ast.Node
	for _, d := range parsed.Docs {
		if d.Body != nil {
			bodies = append(bodies, d.Body)
		}
	}
	switch len(bodies) {
	case 0:
		return nil, Errors{{File: file, Found: "the file is empty", Accept: instead}}
	case 1:
		return bodies[0], nil
	}
	return nil, Errors{{File: file, At: Start(bodies[1]), Found: "a second document begins", Accept: "write one in a file"}}
}

func syntaxError(file string, err error, instead string) *Error {
	e := &Error{File: file, Found: "not YAML: " + err.Error(), Accept: instead}
	var known yaml.Error
	if errors.As(err, &known) {
		e.Found = "not YAML: " + known.GetMessage()
		if t := known.GetToken(); t != nil && t.Position != nil {
			e.At = Place{t.Position.Line, t.Position.Column}
		}
	}
	return e
}

func refuseBytes(src []byte) *Error {
	if len(src) > LargestFile {
		return &Error{Found: "the file is too long", Accept: fmt.Sprintf("at most %d bytes are read", LargestFile)}
	}
	for i, line := range bytes.Split(src, []byte("\n")) {
		if e := refuseLine(line); e != nil {
			e.At.Line = i + 1
			return e
		}
	}
	return nil
}

func refuseLine(line []byte) *Error {
	blanks := len(line) - len(bytes.TrimLeft(line, " \t"))
	if tab := bytes.IndexByte(line[:blanks], '\t'); tab >= 0 && blanks < len(line) {
		return &Error{At: Place{Column: tab + 1}, Found: "a tab at the start of a line", Accept: "YAML is indented with blanks"}
	}
	for i := 0; i < len(line); {
		r, n := utf8.DecodeRune(line[i:])
		if r == utf8.RuneError && n == 1 || r < ' ' && r != '\t' && r != '\r' {
			return &Error{At: Place{Column: i + 1}, Found: fmt.Sprintf("the byte 0x%02x, which is not text", line[i]), Accept: "it is a text file in UTF-8"}
		}
		i += n
	}
	return nil
}

var refusedTokens = map[token.Type]string{
	token.AnchorType:     "an anchor (&)",
	token.AliasType:      "an alias (*)",
	token.MergeKeyType:   "a merge key (<<)",
	token.TagType:        "a tag (!)",
	token.DirectiveType:  "a directive (%)",
	token.MappingKeyType: "a complex key (?)",
}

func refuseTokens(tokens token.Tokens) *Error {
	if len(tokens) > mostTokens {
		return &Error{Found: fmt.Sprintf("the file has %d words and marks", len(tokens)), Accept: fmt.Sprintf("at most %d are read", mostTokens)}
	}
	var depth nesting
	for _, t := range tokens {
		at := Place{t.Position.Line, t.Position.Column}
		if what, ok := refusedTokens[t.Type]; ok {
			return &Error{At: at, Found: what, Accept: "write the value itself, in quotes if it is meant as text"}
		}
		if depth.add(t) > deepest {
			return &Error{At: at, Found: "nested too deep", Accept: fmt.Sprintf("at most %d levels are read", deepest)}
		}
	}
	return nil
}

// nesting bounds the depth of the tree from above: brackets that are open, dashes on one line, and steps of indent.
type nesting struct {
	open, line, dashes int
	indents            []int
}

func (n *nesting) add(t *token.Token) int {
	switch t.Type {
	case token.SequenceStartType, token.MappingStartType:
		n.open++
	case token.SequenceEndType, token.MappingEndType:
		n.open--
	}
	if t.Position.Line != n.line {
		n.line, n.dashes = t.Position.Line, 0
		n.indent(t.Position.Column)
	}
	if t.Type == token.SequenceEntryType {
		n.dashes++
	}
	return n.open + n.dashes + len(n.indents)
}

func (n *nesting) indent(column int) {
	for len(n.indents) > 0 && n.indents[len(n.indents)-1] >= column {
		n.indents = n.indents[:len(n.indents)-1]
	}
	n.indents = append(n.indents, column)
}

// Start is where a node begins: a block mapping begins at its first key.
func Start(n ast.Node) Place {
	switch m := n.(type) {
	case *ast.MappingNode:
		if !m.IsFlowStyle && len(m.Values) > 0 {
			return Start(m.Values[0].Key)
		}
	case *ast.MappingValueNode:
		return Start(m.Key)
	}
	if t := n.GetToken(); t != nil && t.Position != nil {
		return Place{t.Position.Line, t.Position.Column}
	}
	return Place{}
}

// Scalar gives a scalar's text as written; ok is false for lists and mappings. A null is empty text.
func Scalar(n ast.Node) (text string, ok bool) {
	switch s := n.(type) {
	case *ast.StringNode:
		return s.Value, true
	case *ast.LiteralNode:
		return strings.TrimSpace(s.Value.Value), true
	case *ast.NullNode:
		return "", true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return n.GetToken().Value, true
	}
	return "", false
}

// Describe says what stands where something else was expected.
func Describe(n ast.Node) string {
	switch c := n.(type) {
	case *ast.SequenceNode:
		if len(c.Values) == 0 {
			return "an empty list"
		}
		return "a list"
	case ast.MapNode:
		return "a group of fields"
	case *ast.NullNode:
		return "empty"
	}
	if raw, ok := Scalar(n); ok {
		return Quoted(raw)
	}
	return "something that has no use here"
}

// Quoted shows a text as found, shortened.
func Quoted(raw string) string {
	if r := []rune(raw); len(r) > 40 {
		raw = string(r[:40]) + "..."
	}
	return strconv.Quote(raw)
}
