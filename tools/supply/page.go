package main

// The page of licences.

import (
	"bytes"
	"fmt"
	"strings"
)

const head = `# Licences of what lugwright is built from

Written by ` + "`go run -C tools/supply . licences ../..`" + `; ` + "`go test .`" + ` fails when a dependency is missing here. What is linked into the programs comes first, with the texts
that have to go with them; then what tests alone need.

`

// page writes the table, and each text once with the modules that it belongs to.
func page(list []*module) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(head)
	for _, linked := range []bool{true, false} {
		b.WriteString(map[bool]string{true: "## Linked into the programs\n\n", false: "## For tests alone\n\n"}[linked])
		b.WriteString("| module | version | licence | of |\n|---|---|---|---|\n")
		for _, m := range list {
			if m.linked == linked {
				fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", m.Path, m.Version, m.licence, strings.ReplaceAll(strings.Join(m.owners, "; "), "|", "/"))
			}
		}
		b.WriteByte('\n')
	}
	b.WriteString("## Texts\n")
	done := map[string]bool{}
	for _, m := range list {
		if !m.linked || done[body(m.text)] {
			continue
		}
		done[body(m.text)] = true
		var of []string
		for _, n := range list {
			if n.linked && body(n.text) == body(m.text) {
				of = append(of, n.Path)
			}
		}
		fmt.Fprintf(&b, "\n### %s: %s\n\n```\n%s\n```\n", m.licence, strings.Join(of, ", "), m.text)
	}
	for _, m := range list {
		if m.linked && m.notice != "" {
			fmt.Fprintf(&b, "\n### Notice of %s\n\n```\n%s\n```\n", m.Path, m.notice)
		}
	}
	return b.Bytes(), nil
}

// body is a licence's text without who holds the rights, which the table says, and without its line breaks.
func body(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(owner.ReplaceAllString(text, ""))), " ")
}
