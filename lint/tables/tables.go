// Package tables holds the figures of standards and of the trade as data: each with its clause, its
// edition where known, and how it is known. The figures stand in data/*.csv; this package reads
// them on first use and answers questions about them.
//
// A figure whose status is Memory was not read in its source. It may stand in a verdict only as a
// printed assumption.
//
// Units are A, V, ohm, m, mm2 and degrees C. A Value that is not Known has no figure behind it:
// whoever asked must say "not proven", never read its zero.
package tables

// Status says how a figure is known.
type Status uint8

// The statuses. The zero value is invalid.
const (
	_              Status = iota
	Verified              // read in the source, or in a text that quotes or copies it
	Memory                // recalled, the source was not opened
	CommonPractice        // what the trade does; no clause is claimed
)

var statusWords = map[string]Status{"verified": Verified, "memory": Memory, "common-practice": CommonPractice}

// Cite is where a figure comes from.
type Cite struct {
	Clause  string // "33 CFR 183.425(b) Table 5"; empty for common practice
	Edition string // "2020"; empty where unknown
	Basis   string // what was read, and how the figure is used here
	Status  Status
}

// String cites the clause as a report prints it: "NFPA 70 310.16 (2020)",
// "NFPA 70 690.7(A) (from memory)", "common practice".
func (c Cite) String() string {
	switch {
	case c.Status == CommonPractice:
		return "common practice"
	case c.Status == Memory && c.Edition != "":
		return c.Clause + " (" + c.Edition + ", from memory)"
	case c.Status == Memory:
		return c.Clause + " (from memory)"
	case c.Edition != "":
		return c.Clause + " (" + c.Edition + ")"
	}
	return c.Clause
}

// Value is a figure with its origin, in the unit that the function which returns it names.
type Value struct {
	V    float64
	Cite Cite
}

// Known reports whether there is a figure at all. The zero Value is not known.
func (v Value) Known() bool { return v.Cite.Status != 0 }

// times scales a figure; its origin stays.
func (v Value) times(factor float64) Value {
	v.V *= factor
	return v
}

// practices are the bodies of practice that have figures of their own or share the general ones.
var practices = map[string]bool{"us-rv": true, "us-boat": true, "iso-boat": true}

// graded looks up kind/practice/name, and kind/general/name where the practice has no own figure.
func graded(kind, practice, name string) Value {
	if name != "" {
		name = "/" + name
	}
	if practices[practice] {
		if v := figure(kind + "/" + practice + name); v.Known() {
			return v
		}
	}
	return figure(kind + "/general" + name)
}
