package schema

import "fmt"

// The prose of the language reference that stands around the tables.

const intro = `# The plan language

Generated from the struct tags of this package by ` + "`go run ./cmd/ferruledev gen`" + `: edit those, not this file.

A plan is one file, ` + "`NAME.wiring.hcl`" + ` in HCL native syntax, or ` + "`NAME.wiring.json`" + ` in HCL's JSON
syntax. It is made of blocks: a kind, a name in quotes, and attributes in braces.

- **One line, two wires.** A ` + "`conductor`" + ` is a pair, the positive and its return, of one size and
  length. A pair joins positive to positive and negative to negative. A fuse or a switch with one pole
  breaks only the positive; the negatives at it are one node. ` + "`polarity`" + ` draws one wire alone.
- **Left out is unknown.** An attribute that is left out, or ` + "`null`" + `, is never taken for safe. Where a
  conservative figure is usual in the trade, it is used and named in the report. A flag that protects is
  unknown when it is left out; a flag that describes a circumstance is false.
- **A block on one line holds one attribute.** More go on lines of their own.
- **Names of blocks** are made of letters, digits, ` + "`_`" + ` and ` + "`-`" + `. Any other text goes into ` + "`label`" + `.
- All mistakes of a file are reported at once, each with its line and column.

`

const quantities = `A quantity is a text in quotes: a number and a unit, such as ` + "`\"10 A\"`, `\"6 mohm\"` or `\"12 ft\"`" + `. The
number has a decimal point and no separators. A bare number where a unit belongs is an error; only a ratio
may be bare, ` + "`0.9` or `\"90 %\"`" + `. A voltage may say what it is of: ` + "`\"120 V ac\"`, `\"58 V dc\"`" + `.

`

const contradictions = `
A figure outside these bounds, or outside closer ones that an attribute's table gives, is an error. Zero fits only
where the table says so. Figures that contradict each other are errors too, and the message names both places: ` + "`imp`" + `
above ` + "`isc`" + `, a ` + "`float`" + ` far above the output's ` + "`voltage`" + `, a ` + "`resistance`" + ` that cannot let the ` + "`discharge_limit`" + ` through.
What can be, but is unwise, is left to the rules.

`

const sizes = "A conductor size is `\"10 AWG\"`, `\"2/0 AWG\"`, `\"250 kcmil\"` or `\"6 mm2\"`.\n\n"

const references = `## References

A reference is written plainly, not in quotes: ` + "`from = source.pack`, `to = fuse.main.line`" + `. In JSON syntax it is
` + "`\"source.pack\"` or `\"${source.pack}\"`" + `. It stands alone: it is not computed, and no condition chooses it.

- A block with one terminal is named alone; others with the terminal, ` + "`fuse.main.load`" + `.
- ` + "`.pos` or `.neg`" + ` at the end picks one node of a terminal; on alternating current ` + "`.line`, `.neutral` or `.ground`" + `.
- A name that is no identifier goes in brackets: ` + "`switch.sel[\"both on\"]`, `switch.sel[\"1\"]`" + `.
- Parts of a branch: ` + "`branch.lights.fuse.line`, `branch.lights.load.bench`" + `. Parts of a kit: ` + "`use.rear.fuse.main.line`" + `.
- Inside a kit, references mean the kit's own parts. A kit's parameter may be a reference that the plan gives it.
- Reserved, and no names for an owner's terminals or contacts: %s.

`

const expressions = `## Expressions

Values may be computed: arithmetic, comparisons, conditions, ` + "`for`" + ` and text templates, over ` + "`let.NAME`" + ` and, in
kits, ` + "`parameter.NAME`" + `. Comparisons also take two quantities of one kind, or two sizes.

| function | result |
| --- | --- |
| ` + "`awg(10)`, `awg(\"2/0\")`" + ` | a conductor size |
| ` + "`sum(\"3 A\", \"400 mA\")`, `sum(list)`" + ` | the sum of quantities of one kind |
| ` + "`times(\"10 A\", 1.25)`" + ` | a quantity times a number |

Expressions read no files, no clock and no environment. One that could take more than %d steps, or give more
than %d MiB, is an error before it is evaluated.

`

const everyBlock = "Every block may have:\n\n"

func limits() string {
	return fmt.Sprintf(`
## Limits

A file has up to %d MiB of UTF-8 text. Brackets nest up to %d deep, kits up to %d, and all kits of a plan come to
%d blocks at most. Kits lie in the plan's own folder, below it, or in a folder named by `+"`--kits`"+`.

## Example
`, MaxFile>>20, mostNesting, mostKitDepth, mostKitBlocks)
}
