package suggest

import (
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
	return filepath.ToSlash(d.Path)
}
