package schema

import (
	"reflect"
	"slices"
	"strings"
)

// Bounds on what kits can expand to.
const (
	mostKitDepth  = 8
	mostKitBlocks = 20000
	mostKitBytes  = 4 * MaxFile
)

// kitFile is a kit file that has been read and parsed.
type kitFile struct {
	blocks []block
	parsed bool
	json   bool
	size   int // of the file, in bytes
}

// given is a parameter's value in a use block.
type given struct {
	attribute
	scope *scope // of the use block
	taken bool   // the kit has the parameter
}

// kit reads the block that makes a file a kit.
func (d *decoder) kit(sc *scope, b block) {
	t := words().byName["kit"]
	k := &Kit{}
	h := d.header(sc.prefix, k, b)
	d.fill(sc, t.contents, h, reflect.ValueOf(k).Elem(), b.body(t.contents), contents{})
	if sc.kit {
		d.problems.add(b.header, "Second kit block", "A kit file has one kit block.")
		return
	}
	sc.kit = true
	if sc.use == nil && d.record(t, k) {
		d.plan.Kit = k
	}
}

// use puts a kit's parts into the plan.
func (d *decoder) use(sc *scope, b block) {
	t := words().byName["use"]
	u := &Use{}
	h := d.header(sc.prefix, u, b)
	values := map[string]*given{}
	take := func(a attribute) bool {
		values[a.name] = &given{attribute: a, scope: sc}
		return true
	}
	d.fill(sc, t.contents, h, reflect.ValueOf(u).Elem(), b.body(t.contents), contents{attribute: take})
	if !d.record(t, u) {
		return
	}
	before := len(d.plan.order)
	if !u.Kit.Set || !d.expand(sc, u, values) {
		d.broken[h.Addr] = true
	}
	for _, x := range d.plan.order[before:] {
		u.Parts = append(u.Parts, x.Header().Addr)
	}
	d.inherit(&u.PartOf, &u.Parts)
}

// expand reads the kit of a use block as if its blocks stood there, under addresses of their own.
func (d *decoder) expand(sc *scope, u *Use, values map[string]*given) bool {
	name, file, ok := d.kitFile(sc, u)
	if !ok {
		return false
	}
	if i := slices.Index(sc.files, name); i >= 0 {
		d.problems.add(u.Kit.Range, "Kit within itself", "The kit is already being read: %s.", strings.Join(append(slices.Clone(sc.files[i:]), name), " uses "))
		return false
	}
	if len(sc.files) > mostKitDepth {
		d.problems.add(u.Kit.Range, "Kits too deep", "Kits are used within kits more than %d deep.", mostKitDepth)
		return false
	}
	d.expanded, d.expandedBytes = d.expanded+len(file.blocks), d.expandedBytes+file.size
	if d.tooLarge(u) {
		return false
	}
	inner := &scope{
		prefix: u.Addr + ".", json: file.json, values: map[string]*value{},
		files: append(slices.Clone(sc.files), name), use: u, given: values,
	}
	d.blocks(inner, file.blocks)
	if !inner.kit && file.parsed {
		d.problems.add(u.Kit.Range, "Not a kit", "%s has no kit block: kit \"lights\" { }.", clip(name))
	}
	for _, g := range sorted(values) {
		if !g.taken && file.parsed {
			d.problems.add(g.at, "Unknown parameter", "The kit has no parameter %q.%s", clip(g.name), d.near.hint(g.name, parameters(inner)))
		}
	}
	return file.parsed
}

// kitFile reads and parses a kit file, once.
func (d *decoder) kitFile(sc *scope, u *Use) (string, kitFile, bool) {
	fail := func(format string, args ...any) (string, kitFile, bool) {
		d.problems.add(u.Kit.Range, "Kit cannot be read", format, args...)
		return "", kitFile{}, false
	}
	if d.read == nil {
		return fail("Kits are not available here.")
	}
	if d.tooLarge(u) {
		return "", kitFile{}, false
	}
	name, src, err := d.read(sc.files[len(sc.files)-1], u.Kit.Value)
	if err != nil {
		return fail("%s", err)
	}
	file, ok := d.kits[name]
	if !ok {
		file.json, file.size = inJSON(name, src), len(src)
		file.blocks, file.parsed = d.parse(name, src)
		d.kits[name] = file
	}
	return name, file, true
}

// tooLarge tells whether the kits come to more than the bounds, and reports it once.
func (d *decoder) tooLarge(u *Use) bool {
	if d.expanded <= mostKitBlocks && d.expandedBytes <= mostKitBytes {
		return false
	}
	if d.overgrown {
		return true
	}
	d.overgrown = true
	d.problems.add(u.Kit.Range, "Kits too large", "The plan's kits come to more than %d blocks or %d MiB.", mostKitBlocks, mostKitBytes>>20)
	return true
}

func parameters(sc *scope) []string {
	var out []string
	for _, name := range sc.names {
		if p, ok := strings.CutPrefix(name, "parameter."); ok {
			out = append(out, p)
		}
	}
	return out
}

// sorted gives the values in the order written.
func sorted(values map[string]*given) []*given {
	var out []*given
	for _, g := range values {
		out = append(out, g)
	}
	slices.SortFunc(out, func(a, b *given) int { return a.at.Start.Byte - b.at.Start.Byte })
	return out
}
