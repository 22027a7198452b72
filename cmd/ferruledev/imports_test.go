package main

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// TestImports holds the rooms' one-way doors: what each package imports of the project, as the go
// command lists it, against the table in DEVELOPERS.md. A package may import less than its row
// allows, never more, and every package has a row.
func TestImports(t *testing.T) {
	allowed := rows(t, "../../DEVELOPERS.md")
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}: {{join .Imports \" \"}}", "ferrule/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		pkg, imports, _ := strings.Cut(strings.TrimSpace(line), ":")
		pkg = strings.TrimPrefix(pkg, "ferrule/")
		row, ok := match(allowed, pkg)
		if !ok {
			t.Errorf("%s has no row in the table of rooms in DEVELOPERS.md", pkg)
			continue
		}
		for i := range strings.FieldsSeq(imports) {
			if dep, ours := strings.CutPrefix(i, "ferrule/"); ours && !permits(row, dep) {
				t.Errorf("%s imports %s; its row in DEVELOPERS.md allows %v", pkg, dep, row)
			}
		}
	}
}

// rows reads the table between the two marks: room, what it holds, what it may import.
func rows(t *testing.T, file string) map[string][]string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(text), "<!-- rooms -->")
	table, _, ok2 := strings.Cut(rest, "<!-- /rooms -->")
	if !ok || !ok2 {
		t.Fatal("DEVELOPERS.md has no table of rooms")
	}
	out := map[string][]string{}
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if len(cells) < 5 || !strings.Contains(cells[1], "`") {
			continue
		}
		out[strings.Trim(cells[1], " `")] = strings.Fields(strings.NewReplacer("`", "", ",", " ", "nothing", "").Replace(cells[3]))
	}
	if len(out) == 0 {
		t.Fatal("the table of rooms is empty")
	}
	return out
}

func match(rows map[string][]string, pkg string) ([]string, bool) {
	if r, ok := rows[pkg]; ok {
		return r, true
	}
	for name, r := range rows {
		if p, ok := strings.CutSuffix(name, "/*"); ok && strings.HasPrefix(pkg, p+"/") {
			return r, true
		}
	}
	return nil, false
}

func permits(row []string, dep string) bool {
	return slices.ContainsFunc(row, func(r string) bool {
		p, star := strings.CutSuffix(r, "/*")
		return r == "all" || r == dep || star && strings.HasPrefix(dep, p+"/")
	})
}
