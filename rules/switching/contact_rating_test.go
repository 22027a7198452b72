package switching

import (
	"path/filepath"
	"testing"

	"ferrule/lint/linttest"
)

func TestContactRating(t *testing.T) {
	linttest.Run(t, contactRating, filepath.Join("testdata", "contact-rating"))
}
