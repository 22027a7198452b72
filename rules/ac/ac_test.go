package ac

import (
	"path/filepath"
	"strings"
	"testing"

	"ferrule/lint/linttest"
)

func TestRules(t *testing.T) {
	for _, r := range Rules {
		name := strings.TrimPrefix(r.ID, "ac/")
		t.Run(name, func(t *testing.T) { linttest.Run(t, r, filepath.Join("testdata", name)) })
	}
}
