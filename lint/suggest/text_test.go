package suggest

import (
	"path/filepath"
	"testing"
)

// TestFrom names files as a diff has to for the programs that apply it in this folder: they take no absolute
// names, and none that lead out of it.
func TestFrom(t *testing.T) {
	here := t.TempDir()
	t.Chdir(here)
	for path, want := range map[string]string{
		"gull.wiring.hcl": "gull.wiring.hcl", "./a/gull.wiring.hcl": "a/gull.wiring.hcl", "a/../gull.wiring.hcl": "gull.wiring.hcl",
		filepath.Join(here, "a", "gull.wiring.hcl"): "a/gull.wiring.hcl", "../" + filepath.Base(here) + "/gull.wiring.hcl": "gull.wiring.hcl",
		"../other/gull.wiring.hcl": "gull.wiring.hcl", filepath.Join(filepath.Dir(here), "gull.wiring.hcl"): "gull.wiring.hcl",
	} {
		if got := filepath.ToSlash(from(path)); got != want {
			t.Errorf("%s is named %s, want %s", path, got, want)
		}
	}
}
