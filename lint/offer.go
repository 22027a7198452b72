package lint

// Offer proposes changes that may clear what a verdict says, the best first. It decides nothing: each
// proposal is written into the plan's text and all rules are asked again before anybody sees it. It may
// propose what does not help, and nothing.
type Offer func(*Pass, Verdict) []Proposal

// Proposal is changes that belong together.
type Proposal struct {
	Do      string // what to do, as a sentence in the owner's names
	Changes []Change
	Sources []string // whose figures the new sizes and ratings are
	// Part is what a part must be proven to be, by its marking or its maker's sheet, for the change to be
	// more than words; "" where the change is of wires alone.
	Part string
	// Open is what only a person can know: with it the proposal stays a sketch. "" where nothing is open.
	Open string
	// Second marks what the trade takes for a second layer only: it stands behind other ways, however
	// little it changes.
	Second bool
}

// Change is one thing done to a plan as it is written.
type Change struct {
	At    string // address of the block
	In    string // the block within it: "input", "output", "position off"; "" for itself
	Attr  string
	Value string // the new value as a plan writes it; "" takes the attribute out
	// Block is the text of a new block that goes behind the one at At, its lines ending in \n. Attr is "".
	Block string
	// Drop takes the block at At out.
	Drop bool
}

// Set is a change of one attribute.
func Set(at, attr, value string) Change { return Change{At: at, Attr: attr, Value: value} }

// Unset takes an attribute out, where it is written.
func Unset(at, attr string) Change { return Change{At: at, Attr: attr} }
