package ways_test

import (
	"os"
	"testing"

	"ferrule/lint/linttest"
)

func TestMain(m *testing.M) { os.Exit(linttest.Steady(m, "20")) }
