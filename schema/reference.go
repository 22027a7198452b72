package schema

import (
	"embed"
	"fmt"
	"reflect"
	"strings"

	"ferrule/schema/quantity"
)

// The example plan of the language reference, and the kit that it uses.
//
//go:embed reference
var examples embed.FS

// Example gives the text of the language reference's example plan and of its kits, by path, and is
// a ReadFile for them.
func Example(_, path string) (name string, src []byte, err error) {
	name = strings.TrimPrefix(path, "./")
	src, err = examples.ReadFile("reference/" + name)
	return name, src, err
}

// Reference is the language reference as Markdown, made of the struct tags that the decoder reads.
func Reference() string {
	var b strings.Builder
	b.WriteString(intro)
	b.WriteString("## Quantities\n\n" + quantities)
	b.WriteString("| what | units | from | to |\n| --- | --- | --- | --- |\n")
	for d := quantity.Current; d <= quantity.VoltageCoefficient; d++ {
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", d, code(d.Units()), quantity.Format(spans[d].least, d), quantity.Format(spans[d].most, d))
	}
	b.WriteString(contradictions)
	b.WriteString(sizes)
	fmt.Fprintf(&b, references, code(reserved))
	fmt.Fprintf(&b, expressions, int(mostSteps), mostBytes>>20)
	b.WriteString("## Blocks\n\n")
	common := map[string]*field{}
	b.WriteString(everyBlock)
	b.WriteString(head)
	for _, f := range newSpec(reflect.TypeFor[Head](), nil).fields {
		common[f.name] = f
		b.WriteString(row(f))
	}
	for _, t := range words().types {
		fmt.Fprintf(&b, "\n### %s\n\n%s\n", t.name, t.doc)
		if t.terminals != "" {
			fmt.Fprintf(&b, "\nTerminals: %s\n", t.terminals)
		}
		attributes(&b, t.contents, common)
	}
	b.WriteString("\n### let\n\nNamed values: `NAME = VALUE`, read as `let.NAME`. A plan may have several; names are unique.\n")
	b.WriteString(limits())
	for _, file := range []string{"example.wiring.hcl", "kits/lamp.wiring.hcl"} {
		src, _ := examples.ReadFile("reference/" + file) // embedded
		fmt.Fprintf(&b, "\n`%s`:\n\n```hcl\n%s```\n", file, src)
	}
	return b.String()
}

const head = "| attribute | value | meaning |\n| --- | --- | --- |\n"

// attributes writes the table of a block type, and the nested blocks under it.
func attributes(b *strings.Builder, s *spec, common map[string]*field) {
	table := ""
	for _, f := range s.fields {
		if common[f.name] == nil {
			table += row(f)
		}
	}
	if table != "" {
		b.WriteString("\n" + head + table)
	}
	for _, n := range s.blocks {
		name := ""
		if n.many {
			name = " \"NAME\""
		}
		fmt.Fprintf(b, "\n`%s%s { }`%s: %s\n", n.name, name, only(n.kinds), n.doc)
		attributes(b, n.contents, nil)
	}
}

func only(kinds []string) string {
	if len(kinds) == 0 {
		return ""
	}
	return " (" + strings.Join(kinds, ", ") + ")"
}

// row is one attribute's line in a table.
func row(f *field) string {
	doc := f.doc
	switch {
	case f.required:
		doc += " **Required.**"
	case f.unset == "false":
		doc += " Left out: false."
	case f.typ == reflect.TypeFor[Flag]() && f.unset == "":
		doc += " Left out: unknown."
	}
	if f.only != "" {
		doc += " Only in `" + f.only + "`."
	}
	return fmt.Sprintf("| `%s`%s | %s | %s |\n", f.name, only(f.kinds), strings.ReplaceAll(accepted(f), "|", "\\|"), doc)
}

// accepted says what an attribute's value may be.
func accepted(f *field) string {
	units := func() string {
		var out []string
		for _, d := range f.dims {
			out = append(out, d.String()+closer(f, d))
		}
		if f.zero {
			out = append(out, "zero")
		}
		return and(out, "or")
	}
	switch f.typ {
	case reflect.TypeFor[Quantity]():
		return units()
	case reflect.TypeFor[Quantities]():
		return units() + ", or a list"
	case reflect.TypeFor[Size]():
		return "a conductor size"
	case reflect.TypeFor[Flag]():
		return "`true` or `false`"
	case reflect.TypeFor[Count]():
		return fmt.Sprintf("a whole number, 1 to %d", f.mostCount())
	case reflect.TypeFor[Date]():
		return "a date, `\"2027-05-01\"`"
	case reflect.TypeFor[Curve]():
		return "points, `[[\"20 A\", \"3600 s\"], [\"40 A\", \"5 s\"]]`"
	case reflect.TypeFor[Trip]():
		return code(trips) + " and a current" + closer(f, quantity.Current)
	case reflect.TypeFor[Trigger]():
		return "a voltage, or `\"ignition\"`"
	case reflect.TypeFor[Ref]():
		return "reference: " + strings.Join(f.refs, ", ")
	case reflect.TypeFor[Refs]():
		return "references: " + strings.Join(f.refs, ", ")
	case reflect.TypeFor[Joins]():
		return "groups, `[[\"a\", \"b\"]]`"
	case reflect.TypeFor[Pins]():
		return "`{ switch.x = \"position\" }`"
	case reflect.TypeFor[Combinations]():
		return "`[{ switch.a = \"x\", switch.b = \"y\" }]`"
	case reflect.TypeFor[Expr]():
		return "an expression"
	}
	what := code(f.words)
	if what == "" {
		what = "text"
	}
	if f.typ == reflect.TypeFor[Texts]() {
		what = "list: " + what
	}
	if f.keyword {
		what += " (without quotes)"
	}
	return what
}

// closer tells an attribute's own bounds, "" where the dimension's hold.
func closer(f *field, d quantity.Dimension) string {
	all, own := spans[d], f.span(d)
	least, most := quantity.Format(own.least, d), quantity.Format(own.most, d)
	switch {
	case own.least != all.least && own.most != all.most:
		return " from " + least + " to " + most
	case own.least != all.least:
		return " of " + least + " or more"
	case own.most != all.most:
		return " up to " + most
	}
	return ""
}

func code(words []string) string {
	var out []string
	for _, w := range words {
		out = append(out, "`"+w+"`")
	}
	return strings.Join(out, ", ")
}
