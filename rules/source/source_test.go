package source

import (
	"path/filepath"
	"testing"

	"ferrule/lint/linttest"
)

func TestUnlikeInParallel(t *testing.T) {
	linttest.Run(t, unlikeInParallel, filepath.Join("testdata", "unlike-in-parallel"))
}
