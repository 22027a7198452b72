// Package term fits text to a terminal: it escapes what could steer one, measures what is left in
// columns, and wraps it.
//
// Everything that came from a plan, a file name or a command line goes through Clean before it is
// printed. Colours are put on afterwards, by whoever prints.
package term

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// blank are runes that count as printable and show nothing: fillers and a joiner.
var blank = map[rune]bool{0x034F: true, 0x115F: true, 0x1160: true, 0x2800: true, 0x3164: true, 0xFFA0: true}

// Shown reports whether a rune may go to a terminal as it is. Control characters, those that change
// the direction of writing, those without width and those without meaning may not.
func Shown(r rune) bool {
	return r == ' ' || unicode.IsPrint(r) && !blank[r]
}

// Clean makes text harmless and visible on one line: what may not be shown is written as an escape,
// such as \x1b, \n or \u202e, and any kind of space becomes a plain one.
func Clean(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		r, size := utf8.DecodeRuneInString(s)
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, s[0])
		case Shown(r):
			b.WriteRune(r)
		case unicode.Is(unicode.Zs, r):
			b.WriteByte(' ')
		default:
			b.WriteString(escape(r))
		}
		s = s[size:]
	}
	return b.String()
}

func escape(r rune) string {
	switch {
	case r == '\n':
		return `\n`
	case r == '\t':
		return `\t`
	case r == '\r':
		return `\r`
	case r < 0x100:
		return fmt.Sprintf(`\x%02x`, r)
	case r < 0x10000:
		return fmt.Sprintf(`\u%04x`, r)
	}
	return fmt.Sprintf(`\U%08x`, r)
}

// columns measures runes alike on every machine, whatever its locale says.
var columns = &runewidth.Condition{StrictEmojiNeutral: true}

// Width is the number of columns that clean text takes.
func Width(s string) int { return columns.StringWidth(s) }

// Wrap breaks clean text into lines of at most width columns. It breaks at spaces, but not within a
// number that a space groups ("1 420 A"), and inside a word only where the word fits on no line.
func Wrap(s string, width int) []string {
	width = max(width, 8)
	var lines []string
	line := ""
	for _, word := range words(s) {
		for Width(word) > width {
			head := fitting(word, width)
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, head), word[len(head):]
		}
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// words splits text at its spaces, a number and its groups and unit kept together.
func words(s string) []string {
	var out []string
	for _, w := range strings.Fields(s) {
		if n := len(out); n > 0 && grouped(out[n-1], w) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// grouped says whether w goes on with the number that ends before it: three digits, or a unit.
func grouped(before, w string) bool {
	last := before[len(before)-1]
	if last < '0' || last > '9' || len(before) > 24 {
		return false
	}
	return len(w) >= 3 && digits(w[:3]) || units[strings.TrimRight(w, ".,;:)")]
}

func digits(s string) bool {
	return strings.Trim(s, "0123456789") == ""
}

var units = map[string]bool{"A": true, "V": true, "W": true, "m": true, "mm": true, "s": true, "ms": true, "h": true, "min": true, "C": true, "%": true,
	"ohm": true, "mohm": true, "Ah": true, "AWG": true, "mm2": true, "kA": true, "mA": true, "mV": true, "Wh": true, "ft": true, "in": true}

// fitting is the longest head of a word, at least one rune, that fits.
func fitting(word string, width int) string {
	end := 0
	for i, r := range word {
		next := i + utf8.RuneLen(r)
		if end > 0 && Width(word[:next]) > width {
			break
		}
		end = next
	}
	return word[:end]
}

// Pad fills text up to a number of columns.
func Pad(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-Width(s)))
}
