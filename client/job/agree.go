package job

// This file checks what single fields cannot tell.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/table"
	"lugwright/part"
	"lugwright/strength"
)

// agree gives the errors of the job as a whole. Parts that were refused before are nil in v and are passed over.
func (j *Job) agree(v *table.Value, k Known) Errors {
	a := &agreement{j: j}
	a.method(v, k.Bases)
	a.factors(v, k.Bases)
	a.sheets(v, k.Grades)
	if a.j.Vehicle != nil {
		a.vehicle(v)
	}
	seenNames, seenMarks := map[string]string{}, map[string]string{}
	for i, bv := range v.Field("brackets").List() {
		if bv == nil {
			continue
		}
		b := &j.Brackets[i]
		path := "brackets[" + b.Name + "]"
		if b.Name == "" {
			path = fmt.Sprintf("brackets[%d]", i)
		}
		a.names(path, b, bv, seenNames, seenMarks)
		a.tied(path, b, bv)
		a.tray(path, b, bv)
		a.loads(path, b, bv)
		a.spectrum(path, b, bv)
	}
	return a.errs
}

// explain adds to refused fields what the rest of the file tells: the kind whose parameters are meant, the methods of the basis.
func (j *Job) explain(bad Errors, v *table.Value, k Known) {
	for _, e := range bad {
		for i, b := range j.Brackets {
			if strings.HasPrefix(e.Field, "brackets["+b.Name+"]") || strings.HasPrefix(e.Field, fmt.Sprintf("brackets[%d]", i)) {
				e.See = see(e.Field, b.Kind)
			}
		}
		if card := cardOf(k.Bases, v.Field("basis").Words()); e.Field == "method" && card != nil {
			methods := methodNames([]strength.Card{*card})
			e.Accept = card.Name + " has " + strings.Join(methods, ", ") + table.Nearest(strings.Trim(e.Found, `"`), methods)
		}
	}
}

type agreement struct {
	j    *Job
	errs Errors
}

func (a *agreement) refuse(v *table.Value, field, found, accept string) {
	a.errs = append(a.errs, &Error{File: a.j.File, At: v.At(), Field: field, Found: found, Accept: accept})
}

func (a *agreement) method(v *table.Value, bases []strength.Card) {
	basis, method := v.Field("basis"), v.Field("method")
	i := slices.IndexFunc(bases, func(c strength.Card) bool { return c.Name == basis.Words() })
	if i < 0 || method == nil {
		return
	}
	methods := methodNames(bases[i : i+1])
	if !slices.Contains(methods, method.Words()) {
		a.refuse(method, "method", basis.Words()+" has no method "+method.Words(), "one of "+strings.Join(methods, ", "))
	}
	if f := v.Field("load_factor"); f != nil && bases[i].ServiceFactor[a.j.Method] == 1 {
		a.refuse(f, "load_factor", method.Words()+" takes service loads without a factor", "leave load_factor out, or choose another method")
	}
}

// factors holds the settable factors against the basis, and against the one that serves pin holes.
func (a *agreement) factors(v *table.Value, bases []strength.Card) {
	card := cardOf(bases, v.Field("basis").Words())
	if card == nil || v.Field("factors") == nil && v.Field("factor_set") == nil {
		return
	}
	_, err := strength.FactorsOf(card, cardOf(bases, v.Field("pin_joint").Words()), a.j.FactorSet, a.j.Factors)
	for _, f := range part.Fields(err) {
		at := v.Field("factor_set")
		if symbol, ok := strings.CutPrefix(f.Field, "factors."); ok {
			at = v.Field("factors").Field(symbol)
		}
		if at != nil {
			a.refuse(at, f.Field, f.Found, f.Accept)
		}
	}
}

// sheets refuses stock of a grade that no plate can be of.
func (a *agreement) sheets(v *table.Value, grades []string) {
	for i, s := range v.Field("sheets").List() {
		if m := s.Field("material"); m != nil && len(grades) > 0 && !slices.Contains(grades, m.Words()) {
			a.refuse(m, fmt.Sprintf("sheets[%d].material", i), quoted(m.Words())+" is not among the materials", "a grade that `lugwright materials` lists"+table.Nearest(m.Words(), grades))
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
func (a *agreement) names(path string, b *Bracket, v *table.Value, names, marks map[string]string) {
	if b.Name == "" {
		return
	}
	if other, taken := names[strings.ToLower(b.Name)]; taken {
		a.refuse(v.Field("name"), path+".name", quoted(b.Name)+" is the name of an earlier bracket, "+quoted(other), "give each bracket its own name")
		return
	}
	names[strings.ToLower(b.Name)] = b.Name
	at, field := v.Field("mark"), path+".mark"
	mark := b.Mark
	if mark == "" {
		at, field, mark = v.Field("name"), path+".name", strings.ToUpper(b.Name)
	}
	key := mark + "/" + string(b.Hand)
	if other, taken := marks[key]; taken {
		a.refuse(at, field, fmt.Sprintf("the mark %s is taken on the %s hand by %s", mark, b.Hand, other), "different pieces need different marks; for more of the same use quantity")
		return
	}
	marks[key] = b.Name
}

func (a *agreement) loads(path string, b *Bracket, v *table.Value) {
	seen := map[string]bool{}
	for i, lv := range v.Field("loads").List() {
		if lv == nil {
			continue
		}
		l := b.Loads[i]
		at := fmt.Sprintf("%s.loads[%d]", path, i)
		a.caseOf(at, l, lv)
		if force := lv.Field("force"); complete(force) && l.Force == (part.Vec{}) && l.Moment == (part.Vec{}) {
			a.refuse(force, at+".force", "no force at all", "leave the load out, or write the force of the case")
		}
		key := l.Name() + "\n" + l.LoadPoint
		if lv.Field("case") != nil && seen[key] {
			a.refuse(lv.Field("case"), at+".case", "a second load for "+quoted(l.Name()), "tell them apart by state, such as: full, side all here")
		}
		seen[key] = true
	}
}

// spectrum refuses a change between a load and itself.
func (a *agreement) spectrum(path string, b *Bracket, v *table.Value) {
	for i, c := range v.Field("spectrum").List() {
		if to := c.Field("to"); to != nil && b.Spectrum[i].From == b.Spectrum[i].To {
			a.refuse(to, fmt.Sprintf("%s.spectrum[%d].to", path, i), quoted(to.Words())+" is where the change comes from", "another load; for one that comes and goes, a load of next to nothing under a case of its own")
		}
	}
}

func (a *agreement) caseOf(path string, l Load, v *table.Value) {
	c := v.Field("case")
	if c == nil || a.j.Case(l.Case) != nil {
		return
	}
	known := make([]string, len(a.j.Cases))
	for i, k := range a.j.Cases {
		known[i] = k.Name
	}
	a.refuse(c, path+".case", quoted(l.Case)+" is not among the cases", "name it under cases, with level and source"+table.Nearest(l.Case, known))
}

// complete says whether a vector's three parts were all read.
func complete(v *table.Value) bool {
	return v.Field("x") != nil && v.Field("y") != nil && v.Field("z") != nil
}
