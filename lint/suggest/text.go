package suggest

import (
	"os"
	"path/filepath"

	"ferrule/schema/files"
)

// Diff is the suggestion as a unified diff of the plan.
func (d *Desk) Diff(s Suggestion) string { return Unified(d.name(), d.Src, s.Result) }

// DiffTo is the difference to another desk of the same plan.
func (d *Desk) DiffTo(o *Desk) string { return Unified(d.name(), d.Src, o.Src) }

// name is the plan's file as a diff names it.
func (d *Desk) name() string {
	if d.Path == files.Stdin {
		return "plan.wiring.hcl"
	}
	return filepath.ToSlash(from(d.Path))
}

// from is a file as it is named from this folder, where diffs are applied; one that does not lie below it is
// named from its own.
func from(path string) string {
	if filepath.IsLocal(path) {
		return filepath.Clean(path)
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return filepath.Base(path)
	}
	here, err := os.Getwd()
	if err != nil {
		return filepath.Base(path)
	}
	if name, err := filepath.Rel(here, full); err == nil && filepath.IsLocal(name) {
		return name
	}
	return filepath.Base(path)
}
