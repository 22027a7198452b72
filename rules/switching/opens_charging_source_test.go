package switching

import (
	"path/filepath"
	"testing"

	"ferrule/lint/linttest"
)

func TestOpensChargingSource(t *testing.T) {
	linttest.Run(t, opensChargingSource, filepath.Join("testdata", "opens-charging-source"))
}
