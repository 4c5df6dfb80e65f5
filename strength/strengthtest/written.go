package strengthtest

// The formulas in a basis's own source. A line that no random given reaches would otherwise never be compared.

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
)

// written says which formulas and needs of the folder's Go files were never met.
func (r *reach) written(t T, folder string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		t.Errorf("%v", err)
	}
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, f, nil, 0)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if text, ok := quoted(n); ok && !r.seen[text] {
				t.Errorf("%s: the formula %q is never reached", set.Position(n.Pos()), text)
			}
			return true
		})
	}
}

// quoted is the formula of a call of Let or the condition of a call of Need, as replay evaluates it.
func quoted(n ast.Node) (string, bool) {
	call, ok := n.(*ast.CallExpr)
	if !ok || len(call.Args) < 3 {
		return "", false
	}
	method, ok := call.Fun.(*ast.SelectorExpr)
	if !ok || method.Sel.Name != "Let" && method.Sel.Name != "Need" {
		return "", false
	}
	lit, ok := call.Args[1].(*ast.BasicLit)
	if !ok {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	if method.Sel.Name == "Need" {
		text = "when(" + text + ", 1, 0)"
	}
	return text, err == nil
}
