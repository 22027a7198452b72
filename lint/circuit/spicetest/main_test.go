package spicetest

import (
	"flag"
	"os"
	"strconv"
	"testing"
)

var first = 20 // the seed of the first run

// The plans that are drawn are the same whenever the tests run, so that what was green stays green. Others
// are asked for with -rapid.seed=N.
func TestMain(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.seed"); f.Value.String() != f.DefValue {
		first, _ = strconv.Atoi(f.Value.String())
	}
	os.Exit(m.Run())
}

// seed gives each run plans of its own.
func seed(t *testing.T, run int) {
	t.Helper()
	if err := flag.Set("rapid.seed", strconv.Itoa(first+run)); err != nil {
		t.Fatal(err)
	}
}
