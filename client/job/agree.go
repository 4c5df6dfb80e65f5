package job

// This file checks what single fields cannot tell.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength"
)

// agree gives the errors of the job as a whole. Parts that were refused before are nil in v and are passed over.
func (j *Job) agree(v *value, k Known) Errors {
	a := &agreement{j: j}
	a.method(v, k.Bases)
	a.factors(v, k.Bases)
	seenNames, seenMarks := map[string]string{}, map[string]string{}
	for i, bv := range v.field("brackets").list() {
		if bv == nil {
			continue
		}
		b := &j.Brackets[i]
		path := "brackets[" + b.Name + "]"
		if b.Name == "" {
			path = fmt.Sprintf("brackets[%d]", i)
		}
		a.names(path, b, bv, seenNames, seenMarks)
		a.loads(path, b, bv)
	}
	return a.errs
}

type agreement struct {
	j    *Job
	errs Errors
}

func (a *agreement) refuse(v *value, field, found, accept string) {
	a.errs = append(a.errs, &Error{File: a.j.File, At: v.at, Field: field, Found: found, Accept: accept})
}

func (a *agreement) method(v *value, bases []strength.Card) {
	basis, method := v.field("basis"), v.field("method")
	i := slices.IndexFunc(bases, func(c strength.Card) bool { return c.Name == basis.words() })
	if i < 0 || method == nil {
		return
	}
	methods := methodNames(bases[i : i+1])
	if !slices.Contains(methods, method.text) {
		a.refuse(method, "method", basis.text+" has no method "+method.text, "one of "+strings.Join(methods, ", "))
	}
	if f := v.field("load_factor"); f != nil && bases[i].ServiceFactor[a.j.Method] == 1 {
		a.refuse(f, "load_factor", method.text+" takes service loads without a factor", "leave load_factor out, or choose another method")
	}
}

// factors holds the settable factors against the basis, and against the one that serves pin holes.
func (a *agreement) factors(v *value, bases []strength.Card) {
	card := cardOf(bases, v.field("basis").words())
	if card == nil || v.field("factors") == nil && v.field("factor_set") == nil {
		return
	}
	_, err := strength.FactorsOf(card, cardOf(bases, v.field("pin_joint").words()), a.j.FactorSet, a.j.Factors)
	for _, f := range part.Fields(err) {
		at := v.field("factor_set")
		if symbol, ok := strings.CutPrefix(f.Field, "factors."); ok {
			at = v.field("factors").field(symbol)
		}
		if at != nil {
			a.refuse(at, f.Field, f.Found, f.Accept)
		}
	}
}

func cardOf(bases []strength.Card, name string) *strength.Card {
	i := slices.IndexFunc(bases, func(c strength.Card) bool { return c.Name == name })
	if i < 0 {
		return nil
	}
	return &bases[i]
}

// names refuses brackets that would share a name or a part mark. File names are compared as every file system does: without case.
func (a *agreement) names(path string, b *Bracket, v *value, names, marks map[string]string) {
	if b.Name == "" {
		return
	}
	if other, taken := names[strings.ToLower(b.Name)]; taken {
		a.refuse(v.field("name"), path+".name", quoted(b.Name)+" is the name of an earlier bracket, "+quoted(other), "give each bracket its own name")
		return
	}
	names[strings.ToLower(b.Name)] = b.Name
	at, field := v.field("mark"), path+".mark"
	mark := b.Mark
	if mark == "" {
		at, field, mark = v.field("name"), path+".name", strings.ToUpper(b.Name)
	}
	key := mark + "/" + string(b.Hand)
	if other, taken := marks[key]; taken {
		a.refuse(at, field, fmt.Sprintf("the mark %s is taken on the %s hand by %s", mark, b.Hand, other), "different pieces need different marks; for more of the same use quantity")
		return
	}
	marks[key] = b.Name
}

func (a *agreement) loads(path string, b *Bracket, v *value) {
	seen := map[string]bool{}
	for i, lv := range v.field("loads").list() {
		if lv == nil {
			continue
		}
		l := b.Loads[i]
		at := fmt.Sprintf("%s.loads[%d]", path, i)
		a.caseOf(at, l, lv)
		if force := lv.field("force"); complete(force) && l.Force == (part.Vec{}) && l.Moment == (part.Vec{}) {
			a.refuse(force, at+".force", "no force at all", "leave the load out, or write the force of the case")
		}
		key := l.Name() + "\n" + l.LoadPoint
		if lv.field("case") != nil && seen[key] {
			a.refuse(lv.field("case"), at+".case", "a second load for "+quoted(l.Name()), "tell them apart by state, such as: full, side all here")
		}
		seen[key] = true
	}
}

func (a *agreement) caseOf(path string, l Load, v *value) {
	c := v.field("case")
	if c == nil || a.j.Case(l.Case) != nil {
		return
	}
	known := make([]string, len(a.j.Cases))
	for i, k := range a.j.Cases {
		known[i] = k.Name
	}
	a.refuse(c, path+".case", quoted(l.Case)+" is not among the cases", "name it under cases, with level and source"+nearest(l.Case, known))
}

// complete says whether a vector's three parts were all read.
func complete(v *value) bool {
	return v.field("x") != nil && v.field("y") != nil && v.field("z") != nil
}
