package linttest

import (
	"flag"
	"testing"
)

// Steady runs a package's tests with plans drawn from one seed, so that what was green stays green. Others
// are asked for with -rapid.seed=N. It returns the exit status.
func Steady(m *testing.M, seed string) int {
	flag.Parse()
	if f := flag.Lookup("rapid.seed"); f != nil && f.Value.String() == f.DefValue {
		if err := flag.Set("rapid.seed", seed); err != nil {
			panic(err)
		}
	}
	return m.Run()
}
