package switching

import (
	"path/filepath"
	"testing"

	"ferrule/lint/linttest"
)

func TestOffButLive(t *testing.T) {
	linttest.Run(t, offButLive, filepath.Join("testdata", "off-but-live"))
}
