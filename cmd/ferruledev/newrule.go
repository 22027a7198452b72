package main

import (
	"bytes"
	"embed"
	"fmt"
	"go/format"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"text/template"
)

// The scaffold of a rule: a file that compiles and fails its fixtures until it is filled in.
//
//go:embed scaffold
var scaffold embed.FS

var ruleID = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*/[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

type names struct{ ID, Family, Package, Name, Var, File string }

func namesOf(id string) names {
	family, name, _ := strings.Cut(id, "/")
	n := names{ID: id, Family: family, Package: strings.ReplaceAll(family, "-", ""), Name: name, File: strings.ReplaceAll(name, "-", "_")}
	for i, part := range strings.Split(name, "-") {
		if i > 0 {
			part = strings.ToUpper(part[:1]) + part[1:]
		}
		n.Var += part
	}
	return n
}

// newRule writes a rule's file and three fixtures, none of which may be there already.
func newRule(root, id string, stdout io.Writer) error {
	if !ruleID.MatchString(id) {
		return fmt.Errorf("%q is no rule's id; one looks like overcurrent/unprotected-run", id)
	}
	n := namesOf(id)
	family := filepath.Join(root, "rules", n.Family)
	if _, err := os.Stat(family); err != nil {
		return fmt.Errorf("there is no family %s: %w", n.Family, err)
	}
	targets := map[string]string{"rule.go.tmpl": filepath.Join(family, n.File+".go")}
	for _, kind := range []string{"violating", "clean", "near"} {
		targets[kind+".wiring.hcl.tmpl"] = filepath.Join(family, "testdata", n.Name, kind+".wiring.hcl")
	}
	for _, path := range targets {
		if _, err := os.Stat(path); err == nil {
			return fmt.Errorf("%s is there already", path)
		}
	}
	for _, source := range []string{"rule.go.tmpl", "violating.wiring.hcl.tmpl", "clean.wiring.hcl.tmpl", "near.wiring.hcl.tmpl"} {
		if err := fill(source, targets[source], n); err != nil {
			return err
		}
		if rel, err := filepath.Rel(root, targets[source]); err == nil {
			fmt.Fprintln(stdout, "wrote", filepath.ToSlash(rel))
		}
	}
	fmt.Fprintf(stdout, "\nAdd this line to the list Rules in rules/%s/, in the order of ids:\n\n\t%s,\n\nThen: go test ./rules/%s -run /%s\n", n.Family, n.Var, n.Family, n.Name)
	return nil
}

func fill(source, target string, n names) error {
	t, err := template.ParseFS(scaffold, "scaffold/"+source)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := t.Execute(&b, n); err != nil {
		return err
	}
	out := b.Bytes()
	if strings.HasSuffix(target, ".go") {
		if out, err = format.Source(out); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return err
	}
	return os.WriteFile(target, out, 0o644)
}
