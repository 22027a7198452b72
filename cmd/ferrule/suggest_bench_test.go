package main

import (
	"path/filepath"
	"testing"
	"time"

	"ferrule/lint/check"
	"ferrule/lint/suggest"
	"ferrule/rules"
	"ferrule/schema/files"
)

// BenchmarkSuggestion times one verified suggestion for each flawed example, and prints how many checks of the
// whole plan it takes as long as.
func BenchmarkSuggestion(b *testing.B) {
	for _, name := range []string{"curlew", "heron", "siskin", "wren"} {
		b.Run(name, func(b *testing.B) {
			d, diags := suggest.New(filepath.Join(exampleFolder, "flawed", name+".wiring.hcl"), &files.Reader{}, rules.All(), today())
			if len(diags) > 0 {
				b.Fatal(diags)
			}
			start := time.Now()
			check.Run(d.Plan, rules.All(), today())
			whole := time.Since(start)
			for b.Loop() {
				if all := d.Best(d.Report.Findings[0]).List; len(all) == 0 || all[0].Kind != suggest.Verified {
					b.Fatal("not verified")
				}
			}
			b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(whole), "checks/suggestion")
		})
	}
}
