package schema

import (
	"os"
	"strings"
	"testing"
)

func TestReferenceIsCurrent(t *testing.T) {
	have, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != Reference() {
		t.Error("schema/README.md is not what the struct tags say: run `go run ./cmd/ferruledev gen`")
	}
}

func TestExampleHasNoErrors(t *testing.T) {
	name, src, err := Example("", "example.wiring.hcl")
	if err != nil {
		t.Fatal(err)
	}
	p, diags := Decode(name, src, Example)
	for _, d := range diags {
		t.Errorf("%s: %s: %s", d.Subject, d.Summary, d.Detail)
	}
	if len(p.Blocks()) < 25 || p.Block("use.rear.load.lamp") == nil {
		t.Errorf("the example has %d blocks", len(p.Blocks()))
	}
	if !strings.Contains(Reference(), string(src)) {
		t.Error("the reference does not show the example")
	}
	if _, _, err := Example("", "nowhere.wiring.hcl"); err == nil {
		t.Error("an example that is not there gives no error")
	}
}

// Every block type, attribute and word of the vocabulary is in the reference, with a sentence.
func TestReferenceIsComplete(t *testing.T) {
	text := Reference()
	for _, b := range words().types {
		if !strings.Contains(text, "\n### "+b.name+"\n") || b.doc == "" {
			t.Errorf("%s has no section or no sentence", b.name)
		}
		complete(t, text, b.name, b.contents)
	}
}

func complete(t *testing.T, text, name string, s *spec) {
	for _, f := range s.fields {
		if !strings.Contains(text, "| `"+f.name+"`") || !strings.HasSuffix(f.doc, ".") {
			t.Errorf("%s.%s is not in the reference, or its sentence is not one: %q", name, f.name, f.doc)
		}
		for _, w := range f.words {
			if !strings.Contains(text, "`"+w+"`") {
				t.Errorf("%s.%s: the word %q is not in the reference", name, f.name, w)
			}
		}
	}
	for _, n := range s.blocks {
		complete(t, text, name+"."+n.name, n.contents)
	}
}
