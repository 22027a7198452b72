package overcurrent

import (
	"path/filepath"
	"strings"
	"testing"

	"ferrule/lint/linttest"
)

func TestFixtures(t *testing.T) {
	for _, r := range Rules {
		name := strings.TrimPrefix(r.ID, r.Family()+"/")
		t.Run(name, func(t *testing.T) { linttest.Run(t, r, filepath.Join("testdata", name)) })
	}
}
