package switching

import (
	"path/filepath"
	"testing"

	"ferrule/lint/linttest"
)

func TestNoBatteryDisconnect(t *testing.T) {
	linttest.Run(t, noBatteryDisconnect, filepath.Join("testdata", "no-battery-disconnect"))
}
