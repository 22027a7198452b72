package schema

import (
	"bytes"
	"path/filepath"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Largest file that is read, in bytes, and the size of the pieces in which native syntax is parsed:
// pieces keep the parser's working memory small.
const (
	MaxFile   = 4 << 20
	pieceSize = 16 << 10
)

// parse reads the text of a file into its blocks. It reports false where errors may hide blocks.
func (d *decoder) parse(name string, src []byte) ([]block, bool) {
	d.problems.sizes[name] = len(src)
	start := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if len(src) > MaxFile {
		d.problems.add(start, "File too large", "The file has %d bytes: up to %d are read.", len(src), MaxFile)
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
	blocks, ok := d.parseNative(name, src)
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

// parseNative parses native syntax, in pieces that end where a block does. If a piece has errors
// the file is parsed again block by block, so that one broken block hides no other.
func (d *decoder) parseNative(name string, src []byte) ([]block, bool) {
	var out []block
	for _, p := range pieces(src) {
		blocks, diags := d.parsePiece(name, p)
		if diags.HasErrors() {
			return d.parseBroken(name, src)
		}
		out = append(out, blocks...)
	}
	return out, true
}

// pieces cuts a file after lines that are a single closing brace, where a block ends unless the
// brace is part of a longer text or comment: then the piece does not parse.
func pieces(src []byte) []piece {
	var out []piece
	at := piece{start: hcl.InitialPos}
	from := 0
	for from < len(src) {
		end := cut(src, from)
		at.src = src[from:end]
		out = append(out, at)
		at.start = hcl.Pos{Byte: end, Line: at.start.Line + bytes.Count(at.src, []byte{'\n'}), Column: 1}
		from = end
	}
	return out
}

func cut(src []byte, from int) int {
	at := from + pieceSize
	if at >= len(src) {
		return len(src)
	}
	for _, brace := range []string{"\n}\n", "\n}\r\n"} {
		if i := bytes.Index(src[at:], []byte(brace)); i >= 0 {
			return at + i + len(brace)
		}
	}
	return len(src)
}

// parsePiece parses one piece. What nests too deeply is not handed to the parser at all.
func (d *decoder) parsePiece(name string, p piece) ([]block, hcl.Diagnostics) {
	if problem := deep(p.src, false); problem != "" {
		at := hcl.Range{Filename: name, Start: p.start, End: p.start}
		return nil, hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "Nested too deeply", Detail: problem, Subject: &at}}
	}
	var file *hcl.File
	var diags hcl.Diagnostics
	crash := survive(hcl.Range{Filename: name, Start: p.start, End: p.start}, func() {
		file, diags = hclsyntax.ParseConfig(p.src, name, p.start)
	})
	if crash != nil {
		return nil, crash
	}
	b := native(file.Body.(*hclsyntax.Body)) // what ParseConfig gives is one
	for _, a := range b.attributes {
		diags = append(diags, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: "Attribute outside any block", Subject: &a.at,
			Detail: "An attribute belongs in a block. Named values go into let { }."})
	}
	return b.blocks, diags
}

// parseBroken parses a file with syntax errors, cut before every line that begins a known block.
func (d *decoder) parseBroken(name string, src []byte) ([]block, bool) {
	var out []block
	for _, p := range headed(src) {
		blocks, diags := d.parsePiece(name, p)
		for _, x := range diags {
			summary, detail := reword(x)
			d.problems.add(*x.Subject, summary, "%s", detail)
		}
		out = append(out, blocks...)
	}
	return out, false
}

// headed cuts a file before every line whose first word, in the first column, is a kind of block
// with a brace or a name behind it.
func headed(src []byte) []piece {
	var out []piece
	at := piece{start: hcl.InitialPos}
	from, line := 0, 1
	for i := 0; i < len(src); {
		end := len(src)
		if n := bytes.IndexByte(src[i:], '\n'); n >= 0 {
			end = i + n + 1
		}
		if i > from && heads(src[i:end]) {
			at.src = src[from:i]
			out = append(out, at)
			at.start, from = hcl.Pos{Byte: i, Line: line, Column: 1}, i
		}
		i, line = end, line+1
	}
	at.src = src[from:]
	return append(out, at)
}

func heads(line []byte) bool {
	n := bytes.IndexFunc(line, func(r rune) bool { return r != '_' && (r < 'a' || r > 'z') })
	if n <= 0 {
		return false
	}
	word := string(line[:n])
	rest := bytes.TrimLeft(line[n:], " \t")
	return (word == "let" || words().byName[word] != nil) && len(rest) > 0 && (rest[0] == '"' || rest[0] == '{')
}
