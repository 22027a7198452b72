package schema

import (
	"reflect"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// contents says what a body may hold beside what its struct type has.
type contents struct {
	place     string               // "branch", "input" or "output": what is marked only for there fits
	given     []string             // attributes that must not be written, since the place gives them
	attribute func(attribute) bool // takes an attribute that the type does not have
	block     func(block) bool     // takes a block that the type does not have
}

// written is an attribute that a body has.
type written struct {
	*field
	at hcl.Range // of its name
}

// fill reads a body into a struct.
func (d *decoder) fill(sc *scope, s *spec, h *Head, v reflect.Value, b body, more contents) {
	for _, f := range s.fields {
		attrOf(v, f).Range = h.Range
	}
	found := make([]written, 0, len(b.attributes))
	for _, a := range b.attributes {
		if f := d.attribute(s, a, more); f != nil && !null(a.expr) {
			found = append(found, written{f, a.at})
			d.set(sc, f, v, a.expr)
		}
	}
	d.missing(s, h, found, more)
	d.kinds(s, v, b, found)
	d.nested(sc, s, h, v, b, more)
}

// attrOf gives the Attr with which every attribute type begins.
func attrOf(v reflect.Value, f *field) *Attr {
	return v.FieldByIndex(f.index).Field(0).Addr().Interface().(*Attr)
}

// attribute finds the field of a written attribute, nil with an error noted where there is none.
func (d *decoder) attribute(s *spec, a attribute, more contents) *field {
	f := s.byName[a.name]
	switch {
	case f == nil && more.attribute != nil && more.attribute(a):
	case f == nil && s.nested(a.name) != nil:
		d.problems.add(a.at, "Block, not attribute", "%s is a block: %s { }, without an equals sign.", a.name, a.name)
	case f == nil:
		d.problems.add(a.at, "Unknown attribute", "There is no attribute %q here.%s", clip(a.name), d.near.hint(a.name, s.attributes(more.place)))
	case f.only != "" && f.only != more.place:
		d.problems.add(a.at, "Attribute out of place", "%s is an attribute of the block %s only.%s", f.name, f.only, d.near.did(a.name, s.attributes(more.place)))
	case slices.Contains(more.given, a.name):
		d.problems.add(a.at, "Attribute out of place", "%s is not written in a %s, which sets it by itself.", f.name, more.place)
	default:
		return f
	}
	return nil
}

// null tells an attribute that is left out by writing null.
func null(e hclsyntax.Expression) bool {
	lit, ok := e.(*hclsyntax.LiteralValueExpr)
	return ok && lit.Val.IsNull()
}

// set reads one expression into its field.
func (d *decoder) set(sc *scope, f *field, v reflect.Value, e hclsyntax.Expression) {
	if word := hcl.ExprAsKeyword(e); f.keyword && word != "" {
		e = &hclsyntax.LiteralValueExpr{Val: cty.StringVal(word), SrcRange: e.Range()}
	}
	r := reading{decoder: d, scope: sc, field: f, expr: e}
	r.set(v.FieldByIndex(f.index).Addr().Interface())
}

// missing reports required attributes that the body does not have.
func (d *decoder) missing(s *spec, h *Head, found []written, more contents) {
	for _, f := range s.fields {
		has := func(w written) bool { return w.field == f }
		if f.required && !slices.ContainsFunc(found, has) && !slices.Contains(more.given, f.name) {
			d.problems.add(h.Range, "Attribute missing", "A %s block needs %s. %s", h.Type, f.name, f.doc)
		}
	}
}

// kinds reports what belongs to another kind of the block than the one it says it is.
func (d *decoder) kinds(s *spec, v reflect.Value, b body, found []written) {
	f := s.byName["kind"]
	if f == nil {
		return
	}
	kind, _ := v.FieldByIndex(f.index).Interface().(Text)
	if !kind.Set {
		return
	}
	check := func(name string, kinds []string, at hcl.Range) {
		if len(kinds) > 0 && !slices.Contains(kinds, kind.Value) {
			d.problems.add(at, "Attribute of another kind", "%s belongs to the kind %s: this one is of the kind %s, at %s.", name, and(kinds, "or"), kind.Value, place(kind.Range))
		}
	}
	for _, w := range found {
		check(w.name, w.kinds, w.at)
	}
	for _, x := range b.blocks {
		if n := s.nested(x.typ); n != nil {
			check(n.name, n.kinds, x.at)
		}
	}
}

// nested reads the blocks inside a block.
func (d *decoder) nested(sc *scope, s *spec, h *Head, v reflect.Value, b body, more contents) {
	first := map[string]hcl.Range{}
	for _, x := range b.blocks {
		n := s.nested(x.typ)
		if n == nil {
			if more.block == nil || !more.block(x) {
				d.strangeBlock(s, x, more)
			}
			continue
		}
		if at, ok := first[x.typ]; ok && !n.many {
			d.problems.add(x.header, "Block written twice", "There is a %s block already, at %s.", x.typ, place(at))
			continue
		}
		first[x.typ] = x.header
		d.inner(sc, n, h, v.FieldByIndex(n.index), x)
	}
}

func (d *decoder) strangeBlock(s *spec, x block, more contents) {
	if f := s.byName[x.typ]; f != nil {
		d.problems.add(x.at, "Attribute, not block", "%s is an attribute: write %s = ...", x.typ, x.typ)
		return
	}
	var known []string
	for _, n := range s.blocks {
		known = append(known, n.name)
	}
	if more.block != nil {
		known = branchParts
	}
	d.problems.add(x.at, "Unknown kind of block", "There is no block %q here.%s", clip(x.typ), d.near.hint(x.typ, known))
}

// inner reads one nested block into its pointer, or onto its list.
func (d *decoder) inner(sc *scope, n *nested, h *Head, v reflect.Value, x block) {
	t := v.Type()
	if n.many {
		t = t.Elem()
	}
	p := reflect.New(t.Elem())
	inside := &Head{Type: x.typ, Addr: h.Addr, Range: x.header}
	p.Elem().FieldByName("Range").Set(reflect.ValueOf(x.header))
	if n.many {
		if len(x.labels) != 1 || x.labels[0] == "" {
			d.problems.add(x.header, "Name missing", "A %s block has one name: %s \"on\" { }.", n.name, n.name)
		} else {
			p.Elem().FieldByName("Name").SetString(x.labels[0])
		}
		v.Set(reflect.Append(v, p))
	} else {
		if len(x.labels) > 0 {
			d.problems.add(x.where[0], "Too many names", "A %s block has no name.", n.name)
		}
		v.Set(p)
	}
	d.fill(sc, n.contents, inside, p.Elem(), x.body(n.contents), contents{place: x.typ})
}
