package schema

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Largest file that is read, in bytes, the size of the pieces in which native syntax is parsed, which
// keeps the parser's working memory small, and the largest piece, when no block begins for long.
const (
	MaxFile      = 4 << 20
	pieceSize    = 1 << 10
	longestBlock = 512 << 10
)

// parse reads the text of a file into its blocks. It reports false where errors may hide blocks.
func (d *decoder) parse(name string, src []byte) ([]block, bool) {
	d.problems.sizes[name] = len(src)
	start := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if len(src) > MaxFile {
		d.problems.add(start, "File too large", "The file has more than %d MiB; a plan or a kit has up to that.", MaxFile>>20)
		return nil, false
	}
	src, clean := d.valid(name, src)
	if len(bytes.TrimSpace(bytes.TrimPrefix(src, []byte("\ufeff")))) == 0 {
		d.problems.add(start, "Empty file", "There is nothing in the file.")
		return nil, false
	}
	if inJSON(name, src) {
		blocks, ok := d.parseJSON(name, src)
		return blocks, ok && clean
	}
	blocks, ok := d.parseNative(name, src, pieceSize)
	return blocks, ok && clean
}

// inJSON tells JSON syntax by the file's name, or by the text where the name says nothing.
func inJSON(name string, src []byte) bool {
	switch filepath.Ext(name) {
	case ".json":
		return true
	case ".hcl":
		return false
	}
	return bytes.HasPrefix(bytes.TrimLeft(src, " \t\r\n"), []byte("{"))
}

// valid reports bytes that are no UTF-8, and gives the text with a question mark in place of each,
// so that everything else in the file can be checked where it stands.
func (d *decoder) valid(name string, src []byte) ([]byte, bool) {
	if utf8.Valid(src) {
		return src, true
	}
	src = bytes.Clone(src)
	line, from := 1, 0
	for i := 0; i < len(src); {
		r, n := utf8.DecodeRune(src[i:])
		switch {
		case r == '\n':
			line, from = line+1, i+1
		case r == utf8.RuneError && n == 1:
			at := hcl.Pos{Line: line, Column: utf8.RuneCount(src[from:i]) + 1, Byte: i}
			end := hcl.Pos{Line: line, Column: at.Column + 1, Byte: i + 1}
			d.problems.add(hcl.Range{Filename: name, Start: at, End: end}, "Not UTF-8 text", "The byte 0x%02X is not part of any character. Save the file as UTF-8.", src[i])
			src[i] = '?'
		}
		i += n
	}
	return src, false
}

// piece is a stretch of a file and where it begins.
type piece struct {
	src   []byte
	start hcl.Pos
}

func (p piece) end() int { return p.start.Byte + len(p.src) }

// next is the piece of length n behind this one.
func (p piece) next(src []byte, n int) piece {
	start := hcl.Pos{Byte: p.end(), Line: p.start.Line + bytes.Count(p.src, []byte{'\n'}), Column: 1}
	return piece{src: src[start.Byte : start.Byte+n], start: start}
}

// parseNative parses native syntax, in pieces of a size or more that begin where a block seems to. If
// a piece has errors, the rest of the file is parsed block by block, so that one broken block hides
// no other.
func (d *decoder) parseNative(name string, src []byte, size int) ([]block, bool) {
	var out []block
	p := piece{start: hcl.InitialPos}
	for p.end() < len(src) {
		p = p.next(src, cut(src[p.end():], size))
		blocks, diags := d.parsePiece(name, p)
		if diags.HasErrors() {
			b := breakage{decoder: d, name: name, src: src, tries: len(src)}
			rest, ok := b.parse(p, blocks, diags)
			return append(out, rest...), ok
		}
		out = append(out, blocks...)
	}
	return out, true
}

// cut is the length of text up to the first line, from a length on, that begins with the head of
// a block. A line inside a long text or a comment may look like one; then the piece does not parse.
func cut(src []byte, from int) int {
	for from < len(src) {
		i := bytes.IndexByte(src[from:], '\n')
		if i < 0 {
			break
		}
		if from += i + 1; heads(src[from:]) {
			return from
		}
	}
	return len(src)
}

// heads reports whether a text begins, in the first column, with a word that has a brace or a name
// behind it. Whether there is such a kind of block is for later: a wrong one is a block too.
func heads(text []byte) bool {
	n := 0
	for n < len(text) && n < longestWord && inWord(text[n], n == 0) {
		n++
	}
	if n == 0 {
		return false
	}
	for n < len(text) && (text[n] == ' ' || text[n] == '\t') {
		n++
	}
	return n < len(text) && (text[n] == '"' || text[n] == '{')
}

// longestWord is the longest kind of block that is looked for, in bytes.
const longestWord = 1000

func inWord(c byte, first bool) bool {
	return c == '_' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80 || !first && (c == '-' || c >= '0' && c <= '9')
}

// parsePiece parses one piece. What nests too deeply is not handed to the parser at all.
func (d *decoder) parsePiece(name string, p piece) ([]block, hcl.Diagnostics) {
	at := hcl.Range{Filename: name, Start: p.start, End: p.start}
	problem := fmt.Sprintf("From here on there are more than %d bytes without a line that begins with the head of a block, such as fuse \"main\" {.", longestBlock)
	if len(p.src) <= longestBlock {
		problem = deep(p.src, false)
	}
	if problem != "" {
		return nil, hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "Too long or too deep", Detail: problem, Subject: &at}}
	}
	var file *hcl.File
	var diags hcl.Diagnostics
	if crash := survive(at, func() { file, diags = hclsyntax.ParseConfig(p.src, name, p.start) }); crash != nil {
		return nil, crash
	}
	b := native(file.Body.(*hclsyntax.Body)) // what ParseConfig gives is one
	for _, a := range b.attributes {
		diags = append(diags, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: "Attribute outside any block", Subject: &a.at,
			Detail: "An attribute belongs in a block. Named values go into let { }."})
	}
	return b.blocks, diags
}

// breakage is the rest of a file in which something does not parse.
type breakage struct {
	*decoder
	name  string
	src   []byte
	tries int // bytes that may still be parsed on a guess
}

// parse parses the file from a piece on, cut before every head of a block. What the piece gave is
// known, and used again where it is one block.
func (b *breakage) parse(known piece, blocks []block, diags hcl.Diagnostics) ([]block, bool) {
	var out []block
	good := true
	p := piece{start: known.start}
	for p.end() < len(b.src) {
		p = p.next(b.src, cut(b.src[p.end():], 0))
		if p.start != known.start || len(p.src) != len(known.src) {
			blocks, diags = b.parsePiece(b.name, p)
		}
		if diags.HasErrors() {
			if longer, more, ok := b.longer(p); ok {
				p, out = longer, append(out, more...)
				continue
			}
		}
		for _, x := range diags {
			summary, detail := reword(x)
			b.problems.add(subject(x, hcl.Range{Filename: b.name, Start: p.start, End: p.start}), summary, "%s", detail)
		}
		out, good = append(out, blocks...), good && !diags.HasErrors()
	}
	return out, good
}

// longer tries whether a piece was cut inside a long text or a comment: whether it parses together
// with what follows.
func (b *breakage) longer(p piece) (piece, []block, bool) {
	if !bytes.Contains(p.src, []byte("<<")) && !bytes.Contains(p.src, []byte("/*")) {
		return p, nil, false
	}
	for p.end() < len(b.src) {
		n := len(p.src) + cut(b.src[p.end():], 0)
		p.src = b.src[p.start.Byte : p.start.Byte+n]
		if b.tries -= n; b.tries < 0 {
			break
		}
		if blocks, diags := b.parsePiece(b.name, p); !diags.HasErrors() {
			return p, blocks, true
		}
	}
	return p, nil, false
}

// IsKit reports whether a file is a kit: whether it has a kit block. Text in which the word does
// not occur is not parsed.
func IsKit(name string, src []byte) bool {
	if !bytes.Contains(src, []byte("kit")) {
		return false
	}
	d := newDecoder(name, nil)
	blocks, _ := d.parse(name, src)
	return slices.ContainsFunc(blocks, func(b block) bool { return b.typ == "kit" })
}
