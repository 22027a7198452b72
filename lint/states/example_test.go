package states

import (
	"os"
	"path/filepath"
	"testing"

	"ferrule/schema"
)

// example reads a plan of the examples, and its kits from beside it.
func example(t *testing.T, path string) *Survey {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	plan, diags := schema.Decode(path, text, func(from, kit string) (string, []byte, error) {
		name := filepath.Join(filepath.Dir(from), kit)
		text, err := os.ReadFile(name)
		return name, text, err
	})
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	s, diags := New(plan, nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return s
}
