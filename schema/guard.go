package schema

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// The library's parsers call themselves for every bracket and for many operators, and a stack that
// overflows cannot be recovered from: what goes too deep has to be found before it is parsed.
const (
	mostNesting   = 100
	mostOperators = 1000

	longestTemplate = 64 << 10 // in JSON syntax

	// Reading a number takes time with the square of its length.
	mostDigits = 1000
	longNumber = "There is a number with more than 1000 digits."

	// A piece of text with fewer of these bytes cannot overflow anything and is not looked at closer.
	fewOpeners   = 3000
	fewOperators = 6000

	// The parser joins the lines of a long text in time with the square of their number. Texts in a
	// piece this short take no time to speak of.
	shortText  = 32 << 10
	mostJoined = 5e8 // bytes moved
)

// joined tells texts that may consist of several parts: heredocs, and those with escaped templates.
func joined(src []byte) bool {
	return bytes.Contains(src, []byte("<<")) || bytes.Contains(src, []byte("$${")) || bytes.Contains(src, []byte("%%{"))
}

// deep says what is too deep in a text of native syntax, or too long, "" where nothing is.
// template tells a template from a file or an expression.
func deep(src []byte, template bool) string {
	openers, operators, digits, run := 0, 0, 0, 0
	for i, c := range src {
		if run++; i == 0 || c != src[i-1] {
			run = 0
		}
		switch c {
		case '(', '[', '{':
			openers++
		case '!', '-', '+', '*', '/', '%', '?', ':', '&', '|', '<', '>', '~', '.':
			operators++
		}
		if c < '0' || c > '9' {
			digits = 0
		} else if digits++; digits > mostDigits {
			return longNumber
		}
		if run > mostOperators && (strings.IndexByte("([{!-+*?\"", c) >= 0) {
			return fmt.Sprintf("The character %q stands more than %d times in a row.", c, mostOperators)
		}
	}
	if openers < fewOpeners && operators < fewOperators && (len(src) < shortText || !joined(src)) {
		return ""
	}
	lex := hclsyntax.LexConfig
	if template {
		lex = hclsyntax.LexTemplate
	}
	if template && len(src) > longestTemplate {
		return fmt.Sprintf("A text with templates has up to %d bytes.", longestTemplate)
	}
	tokens, _ := lex(src, "", hcl.InitialPos)
	return deepTokens(tokens)
}

// frame counts what one pair of brackets holds. An expression's depth is at most the operators in
// it and the deepest brackets inside it together.
type frame struct {
	braces    bool // where a newline ends an expression
	operators int
	deepest   int
	parts     int // of a text
	bytes     int
}

func deepTokens(tokens hclsyntax.Tokens) string {
	stack := []frame{{braces: true}}
	joins := 0.0
	for _, t := range tokens {
		top := &stack[len(stack)-1]
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenOQuote, hclsyntax.TokenOHeredoc,
			hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			if t.Type == hclsyntax.TokenTemplateControl || t.Type == hclsyntax.TokenOBrack {
				top.operators++ // an if or a for stays open behind its brackets, and an index takes what is before it
			}
			stack = append(stack, frame{braces: t.Type == hclsyntax.TokenOBrace})
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCQuote, hclsyntax.TokenCHeredoc,
			hclsyntax.TokenTemplateSeqEnd:
			if len(stack) > 1 {
				depth := top.operators + top.deepest + 1
				stack = stack[:len(stack)-1]
				below := &stack[len(stack)-1]
				below.deepest = max(below.deepest, depth)
			}
		case hclsyntax.TokenComma:
			top.operators, top.deepest = 0, 0
		case hclsyntax.TokenNewline:
			if top.braces {
				top.operators, top.deepest = 0, 0
			}
		case hclsyntax.TokenStringLit, hclsyntax.TokenQuotedLit:
			top.parts, top.bytes = top.parts+1, top.bytes+len(t.Bytes)
			joins += float64(16*top.parts + top.bytes)
		default:
			if operator(t.Type) {
				top.operators++
			}
		}
		switch top = &stack[len(stack)-1]; {
		case len(stack) > mostNesting:
			return fmt.Sprintf("Brackets are nested more than %d deep, at line %d.", mostNesting, t.Range.Start.Line)
		case top.operators+top.deepest > mostOperators:
			return fmt.Sprintf("An expression has more than %d operators, at line %d.", mostOperators, t.Range.Start.Line)
		case joins > mostJoined:
			return fmt.Sprintf("A text has too many lines or parts, at line %d.", t.Range.Start.Line)
		}
	}
	return ""
}

func operator(t hclsyntax.TokenType) bool {
	switch t {
	case hclsyntax.TokenBang, hclsyntax.TokenMinus, hclsyntax.TokenPlus, hclsyntax.TokenStar, hclsyntax.TokenSlash, hclsyntax.TokenPercent,
		hclsyntax.TokenQuestion, hclsyntax.TokenColon, hclsyntax.TokenAnd, hclsyntax.TokenOr, hclsyntax.TokenEqualOp, hclsyntax.TokenNotEqual,
		hclsyntax.TokenLessThan, hclsyntax.TokenLessThanEq, hclsyntax.TokenGreaterThan, hclsyntax.TokenGreaterThanEq, hclsyntax.TokenDot,
		hclsyntax.TokenFatArrow, hclsyntax.TokenEllipsis, hclsyntax.TokenDoubleColon:
		return true
	}
	return false
}

// deepJSON says what is too deep in a JSON text, or too long, "" where nothing is.
func deepJSON(src []byte) string {
	depth, digits, quoted := 0, 0, false
	for i := 0; i < len(src); i++ {
		c := src[i]
		if c < '0' || c > '9' {
			digits = 0
		} else if digits++; digits > mostDigits {
			return longNumber
		}
		switch {
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '[' || c == '{':
			if depth++; depth > mostNesting {
				return fmt.Sprintf("Brackets are nested more than %d deep, at line %d.", mostNesting, 1+bytes.Count(src[:i], []byte{'\n'}))
			}
		case c == ']' || c == '}':
			depth--
		}
	}
	return ""
}
