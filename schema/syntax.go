package schema

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
)

const quotedQuantity = "A quantity is one text in quotes, such as \"10 A\"."

// reword puts the syntax library's commonest errors into the words of the plan language. The rest
// are given as they are.
func reword(x *hcl.Diagnostic) (summary, detail string) {
	switch x.Summary {
	case "Invalid single-argument block definition", "Argument definition required":
		return "One line, one argument", "A block written on one line holds one argument. More go on lines of their own, and the closing brace too."
	case "Attribute redefined":
		return "Attribute written twice", strings.Replace(strings.TrimSuffix(x.Detail, " Each argument may be set only once."), "The argument", "The attribute", 1)
	case "Missing newline after argument":
		return "Two things on one line", "Every attribute has a line of its own. " + quotedQuantity
	case "Unexpected comma after argument":
		return "Comma after an attribute", "Attributes are parted by line ends, not by commas. " + quotedQuantity
	case "Missing newline after block definition":
		return "Two things on one line", "What follows a block's closing brace goes on a line of its own."
	case "Unclosed configuration block", "Unclosed configuration body":
		return "Block not closed", "The closing brace of this block is missing."
	case "Argument or block definition required":
		return "Attribute or block wanted", "Here belongs an attribute, such as rating = \"10 A\", or a block, such as fuse \"main\" {, with its brace on the same line."
	case "Invalid argument name":
		return "Name in quotes", "The names of attributes and the kinds of blocks are written without quotes."
	case "Invalid block definition":
		return "Block not opened", "A block is written as a kind, a name in quotes and an opening brace on the same line: fuse \"main\" {"
	case "Invalid multi-line string", "Unterminated template string", "Unterminated string literal":
		return "Quotes not closed", "The closing quotation mark is missing: a text in quotes ends on the line it begins on."
	case "Invalid expression", "Missing expression":
		return "Value missing", "Here belongs a value."
	case "Operation failed":
		return "No value", sentenceOf(strings.TrimPrefix(x.Detail, "Error during operation: "))
	case "Invalid function argument", "Error in function call":
		_, why, _ := strings.Cut(x.Detail, ": ")
		return "No value", sentenceOf(why)
	case "Missing attribute seperator comma": // the library's spelling
		return "Comma missing", "A comma parts each property of an object from the next."
	}
	return x.Summary, x.Detail
}

// sentenceOf begins a clause with a capital.
func sentenceOf(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
