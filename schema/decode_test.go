package schema

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/hashicorp/hcl/v2"

	"ferrule/schema/quantity"
)

var update = flag.Bool("update", false, "write the .want files of testdata/bad anew")

// folder reads kits from a folder of testdata, by paths relative to the file that names them.
func folder(dir string) ReadFile {
	return func(from, name string) (string, []byte, error) {
		name = path.Join(path.Dir(from), name)
		src, err := os.ReadFile(filepath.Join("testdata", dir, filepath.FromSlash(name)))
		if err != nil {
			err = errors.New("There is no such kit.")
		}
		return name, src, err
	}
}

func decodeFile(t *testing.T, dir, name string) (*Plan, hcl.Diagnostics) {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("testdata", dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return Decode(name, src, folder(dir))
}

// decode reads a plan that has to be without errors.
func decode(t *testing.T, src string) *Plan {
	t.Helper()
	p, diags := Decode("plan.wiring.hcl", []byte("system \"gull\" {}\n"+src), nil)
	for _, d := range diags {
		t.Fatalf("%s: %s: %s", d.Subject, d.Summary, d.Detail)
	}
	return p
}

func TestGoodPlansHaveNoErrors(t *testing.T) {
	for _, name := range []string{"everything.wiring.hcl", "everything.wiring.json", "kits/lamp.wiring.hcl"} {
		_, diags := decodeFile(t, "good", name)
		for _, d := range diags {
			t.Errorf("%s: %s: %s", d.Subject, d.Summary, d.Detail)
		}
	}
}

// Every attribute and every nested block of the vocabulary is read from some block of the good plan.
func TestEveryAttributeIsRead(t *testing.T) {
	p, _ := decodeFile(t, "good", "everything.wiring.hcl")
	kit, _ := decodeFile(t, "good", "kits/lamp.wiring.hcl")
	set := map[string]bool{}
	for _, b := range slices.Concat(p.Blocks(), kit.Blocks()) {
		mark(set, b.Header().Type, words().byName[b.Header().Type].contents, reflect.ValueOf(b).Elem())
	}
	for _, l := range p.Loads { // switched loads are marked on the branch's load
		set["load.switched"] = set["load.switched"] || l.Switched.Set
	}
	for _, b := range words().types {
		expect(t, set, b.name, b.contents)
	}
}

func mark(set map[string]bool, name string, s *spec, v reflect.Value) {
	for _, f := range s.fields {
		if attrOf(v, f).Set {
			set[name+"."+f.name] = true
		}
	}
	for _, n := range s.blocks {
		x := v.FieldByIndex(n.index)
		if n.many {
			for i := range x.Len() {
				mark(set, name+"."+n.name, n.contents, x.Index(i).Elem())
			}
		} else if !x.IsNil() {
			mark(set, name+"."+n.name, n.contents, x.Elem())
		}
	}
}

func expect(t *testing.T, set map[string]bool, name string, s *spec) {
	for _, f := range s.fields {
		common := slices.Contains([]string{"label", "notes", "part_of", "compartment", "ignition_protected"}, f.name)
		side := f.only == "input" && strings.HasSuffix(name, ".output") || f.only == "output" && strings.HasSuffix(name, ".input")
		if key := name + "." + f.name; !set[key] && !common && !side && key != "source.always" {
			t.Errorf("no good plan sets %s", key)
		}
	}
	for _, n := range s.blocks {
		expect(t, set, name+"."+n.name, n.contents)
	}
}

// byAddress is what a plan says, without the order and the places of its blocks.
func byAddress(p *Plan) map[string]Block {
	out := map[string]Block{}
	for _, b := range p.Blocks() {
		out[b.Header().Addr] = b
	}
	return out
}

func TestJSONMeansTheSame(t *testing.T) {
	native, _ := decodeFile(t, "good", "everything.wiring.hcl")
	json, _ := decodeFile(t, "good", "everything.wiring.json")
	options := cmp.Options{
		cmpopts.IgnoreTypes(hcl.Range{}), cmpopts.IgnoreUnexported(Switch{}, Expr{}), cmpopts.EquateEmpty(),
		cmpopts.IgnoreFields(Expr{}, "Expression"),
	}
	if diff := cmp.Diff(byAddress(native), byAddress(json), options); diff != "" {
		t.Errorf("native and JSON differ:\n%s", diff)
	}
	if diff := cmp.Diff(native.Links, json.Links, options); diff != "" {
		t.Errorf("links differ:\n%s", diff)
	}
}

// Every error of the bad plans, with its place: the .want files have one line for each.
func TestBadPlans(t *testing.T) {
	files, _ := filepath.Glob("testdata/bad/*.wiring.*")
	for _, file := range files {
		if strings.HasSuffix(file, ".want") {
			continue
		}
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			_, diags := decodeFile(t, "bad", name)
			var b strings.Builder
			for _, d := range diags {
				s := d.Subject
				fmt.Fprintf(&b, "%s:%d:%d-%d:%d %s: %s\n", s.Filename, s.Start.Line, s.Start.Column, s.End.Line, s.End.Column, d.Summary, d.Detail)
			}
			if *update {
				if err := os.WriteFile(file+".want", []byte(b.String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file + ".want")
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(b.String(), "\n")); diff != "" {
				t.Errorf("errors differ from %s.want (go test ./schema -update writes it):\n%s", name, diff)
			}
		})
	}
}

func TestTextsThatAreNoPlan(t *testing.T) {
	tests := []struct{ name, src, want string }{
		{"a.wiring.hcl", "", "1:1 Empty file"},
		{"a.wiring.hcl", " \n\t\n", "1:1 Empty file"},
		{"a.wiring.hcl", "\ufeff", "1:1 Empty file"},
		{"a.wiring.json", "", "1:1 Empty file"},
		{"a.wiring.json", "[]", "1:1 Not an object"},
		{"a.wiring.json", "{}", "1:1 No system block"},
		{"a.wiring.hcl", "# nothing but a remark", "1:1 No system block"},
		{"a.wiring.hcl", "system \"gull\" { title = \"\xff\" }\n", "1:26 Not UTF-8 text"},
		{"a.wiring.hcl", "system \"gull\" {}\nfuse \"é\" {\n  label = \"a\x80b\"\n}\n", "3:13 Not UTF-8 text"},
		{"a.wiring.hcl", strings.Repeat("#", MaxFile+1), "1:1 File too large"},
	}
	for _, test := range tests {
		_, diags := Decode(test.name, []byte(test.src), nil)
		if len(diags) == 0 {
			t.Errorf("%.20q: no errors", test.src)
			continue
		}
		d := diags[0]
		if got := fmt.Sprintf("%d:%d %s", d.Subject.Start.Line, d.Subject.Start.Column, d.Summary); got != test.want {
			t.Errorf("%.20q: %s, want %s", test.src, got, test.want)
		}
	}
}

// A text that is no UTF-8 is still read where it can be.
func TestBadBytesHideNothing(t *testing.T) {
	p, diags := Decode("a.wiring.hcl", []byte("system \"gull\" {}\nfuse \"main\" {\n  label = \"\xff\"\n  raiting = \"1 A\"\n}\n"), nil)
	if len(diags) != 2 || diags[1].Summary != "Unknown attribute" || len(p.Fuses) != 1 {
		t.Errorf("got %v with %d fuses", diags, len(p.Fuses))
	}
}

// JSON is told by its name, or, for standard input, by its text.
func TestSyntaxByName(t *testing.T) {
	const json, native = `{"system": {"gull": {"title": "x"}}}`, `system "gull" { title = "x" }`
	for name, src := range map[string]string{"a.wiring.json": json, "-": json, "a.wiring.hcl": native} {
		if p, diags := Decode(name, []byte(src), nil); len(diags) > 0 || p.System.Title.Value != "x" {
			t.Errorf("%s: %v", name, diags)
		}
	}
	if p, diags := Decode("-", []byte(native), nil); len(diags) > 0 || p.System.Name != "gull" {
		t.Errorf("standard input: %v", diags)
	}
	if p, diags := Decode("a.wiring.hcl", []byte("\ufeff"+native), nil); len(diags) > 0 || p.System.Range.Start.Byte != 3 {
		t.Errorf("a byte order mark: %v at %v", diags, p.System.Range)
	}
	if _, diags := Decode("a.wiring.hcl", []byte(json), nil); len(diags) == 0 {
		t.Error("JSON under a native name has no errors")
	}
}

func TestLeftOutIsUnknown(t *testing.T) {
	p := decode(t, "fuse \"main\" {\n  rating = null\n  kind = 1 > 2 ? \"blade\" : null\n}\n")
	f := p.Fuses[0]
	if f.Rating.Set || f.Kind.Set || f.VoltageRating.Set || f.Polarized.Set || f.On.Set || f.Rating.Value != 0 {
		t.Errorf("left out, yet set: %+v", f)
	}
	if f.Polarized.True() || f.Polarized.False() || f.Interrupting.Range != f.Range || f.Range.Start.Line != 2 {
		t.Errorf("an attribute that is left out points to %v, want the block's header %v", f.Interrupting.Range, f.Range)
	}
}

func TestValuesAndPlaces(t *testing.T) {
	p, _ := decodeFile(t, "good", "everything.wiring.hcl")
	pack, _ := Lookup[*Source](p, "source.pack")
	if q := pack.Capacity; q.Value != 1280 || q.Dim != quantity.Energy {
		t.Errorf("capacity is %+v", q)
	}
	if q := pack.DischargeLimit; q.Value != 100 || q.Range.Start.Line != 49 || q.Range.Start.Column != 24 {
		t.Errorf("discharge_limit is %+v at %v", q.Quantity, q.Range)
	}
	if p.System.Ambient.Value < 39.999 || p.System.Ambient.Value > 40.001 || p.System.Notes.Value != "Two lines\nof notes.\n" {
		t.Errorf("ambient %v, notes %q", p.System.Ambient.Value, p.System.Notes.Value)
	}
	feed, _ := Lookup[*Conductor](p, "conductor.feed")
	if feed.Size.AWG != 8 || feed.Label.Value != "Feed\a" || feed.To.Terminal != "both on" || feed.Grounding.AWG != 12 {
		t.Errorf("feed is %+v", feed)
	}
	pump, _ := Lookup[*Load](p, "load.pump")
	if pump.Draw.Value != 3.5 || pump.HoursPerDay.Value != 1800 || !pump.RunsIn.Has("mode.parked") {
		t.Errorf("pump is %+v", pump)
	}
	main, _ := Lookup[*Fuse](p, "fuse.main")
	if len(main.Curve.Points) != 3 || main.Curve.Points[1] != (CurvePoint{120, 60}) || main.VoltageRating.List[1].Kind != quantity.AC {
		t.Errorf("main is %+v", main)
	}
	if gfci := p.Fuses[1].Trip; gfci.Kind != "gfci" || gfci.Amps != 0.005 {
		t.Errorf("trip is %+v", gfci)
	}
	if a, b := p.Converters[0].Trigger, p.Converters[1].Trigger; a.Volts != 13.2 || !b.Ignition {
		t.Errorf("triggers are %+v, %+v", a, b)
	}
	brakes, _ := Lookup[*Conductor](p, "conductor.brakes")
	if brakes.From.Contact != "brakes" || brakes.From.Terminal != "free" || brakes.To.Pole != Pos || brakes.To.Addr != "load.pump" {
		t.Errorf("brakes is %+v", brakes)
	}
}

// Places are those of the text: what stands at the place of an attribute is what was read.
func TestRangesFitTheText(t *testing.T) {
	src, err := os.ReadFile("testdata/good/everything.wiring.hcl")
	if err != nil {
		t.Fatal(err)
	}
	p, _ := decodeFile(t, "good", "everything.wiring.hcl")
	checked := 0
	for _, x := range p.Fuses {
		if x.Rating.Range.Filename == "everything.wiring.hcl" && x.Rating.Set {
			text := string(x.Rating.Range.SliceBytes(src))
			if q, err := quantity.Parse(strings.Trim(text, `"`)); err != nil || q != x.Rating.Quantity {
				t.Errorf("%s: %q stands where %v was read", x.Addr, text, x.Rating.Quantity)
			}
			checked++
		}
		if body := string(x.Body.SliceBytes(src)); x.Body.Filename == "everything.wiring.hcl" && (!strings.HasPrefix(body, "fuse") || !strings.HasSuffix(body, "}")) {
			t.Errorf("%s: the block's text is %q", x.Addr, body)
		}
	}
	if checked < 3 {
		t.Errorf("only %d ratings were compared", checked)
	}
}
