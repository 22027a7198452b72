package schema

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
)

// FuzzDecode runs the whole read path: whatever the text, there is a plan, no panic, and every
// error stands inside the file.
func FuzzDecode(f *testing.F) {
	for _, pattern := range []string{"testdata/*/*.wiring.*", "testdata/*/kits/*.wiring.hcl", "reference/*.hcl", "reference/kits/*.hcl"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			if src, err := os.ReadFile(file); err == nil && !strings.HasSuffix(file, ".want") {
				f.Add(src, strings.HasSuffix(file, ".json"))
			}
		}
	}
	for _, src := range hostile(50) {
		f.Add([]byte(src), false)
	}
	kit := []byte("kit \"k\" {}\nparameter \"size\" {}\nfuse \"main\" { rating = parameter.size }\n")
	f.Fuzz(func(t *testing.T, src []byte, json bool) {
		name := "plan.wiring.hcl"
		if json {
			name = "plan.wiring.json"
		}
		read := func(_, path string) (string, []byte, error) {
			if strings.HasSuffix(path, "self") {
				return name, src, nil
			}
			return "kit.wiring.hcl", kit, nil
		}
		p, diags := Decode(name, src, read)
		if p == nil || p.System == nil {
			t.Fatal("no plan")
		}
		texts := map[string][]byte{name: src, "kit.wiring.hcl": kit}
		for _, d := range diags {
			if d.Severity != hcl.DiagError || d.Summary == "" || d.Detail == "" || d.Subject == nil {
				t.Fatalf("an incomplete error: %+v", d)
			}
			inFile(t, *d.Subject, texts)
		}
		for _, b := range p.Blocks() {
			h := b.Header()
			if p.Block(h.Addr) != b || h.Name == "" {
				t.Fatalf("%q is not in the plan's index", h.Addr)
			}
			inFile(t, h.Range, texts)
		}
		for _, l := range p.Links {
			if l.B.Addr == "" || p.Block(l.B.Addr) == nil {
				t.Fatalf("a link leads nowhere: %+v", l)
			}
		}
	})
}

func inFile(t *testing.T, r hcl.Range, texts map[string][]byte) {
	t.Helper()
	src, ok := texts[r.Filename]
	lines := strings.Count(string(src), "\n") + 1
	if !ok || r.Start.Byte < 0 || r.End.Byte < r.Start.Byte || r.End.Byte > len(src) ||
		r.Start.Line < 1 || r.End.Line > lines || r.Start.Line > r.End.Line || r.Start.Column < 1 {
		t.Fatalf("%+v lies outside its file of %d bytes and %d lines", r, len(src), lines)
	}
}
