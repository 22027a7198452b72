package files

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"

	"ferrule/schema"
)

const (
	plan = "system \"gull\" {}\n"
	kit  = "kit \"lamp\" {}\nfuse \"main\" { rating = \"3 A\" }\n"
)

// tree makes a folder of files, by path with slashes.
func tree(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestFind(t *testing.T) {
	dir := tree(t, map[string]string{
		"b.wiring.hcl": plan, "a.wiring.json": `{"system": {"gull": {}}}`, "lamp.wiring.hcl": kit, "notes.txt": "x", "x.hcl": plan,
		"sub/c.wiring.hcl": plan, ".hidden/d.wiring.hcl": plan, "kits/only.wiring.hcl": kit, "empty/notes.txt": "x",
	})
	t.Chdir(dir)
	if err := os.Symlink("sub", "link"); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		args      []string
		recursive bool
		want      []string
		problem   string
	}{
		{[]string{"."}, false, []string{"a.wiring.json", "b.wiring.hcl"}, ""},
		{[]string{"."}, true, []string{"a.wiring.json", "b.wiring.hcl", "sub/c.wiring.hcl"}, ""},
		{[]string{"b.wiring.hcl", "./b.wiring.hcl", "."}, false, []string{"b.wiring.hcl", "a.wiring.json"}, ""},
		{[]string{"lamp.wiring.hcl", "x.hcl"}, false, []string{"lamp.wiring.hcl", "x.hcl"}, ""},
		{[]string{"-", "sub/"}, false, []string{"-", "sub/c.wiring.hcl"}, ""},
		{[]string{"link"}, false, []string{"link/c.wiring.hcl"}, ""},
		{[]string{"nowhere", "sub"}, false, []string{"sub/c.wiring.hcl"}, "nowhere: there is no such file or folder"},
		{[]string{"empty"}, false, nil, "empty: no plans in this folder; -r also looks into its folders"},
		{[]string{"empty"}, true, nil, "empty: no plans in this folder: a plan is named"},
		{[]string{"kits"}, true, nil, "kits: no plans in this folder (the kits in it are no plans)"},
		{[]string{".hidden"}, true, []string{".hidden/d.wiring.hcl"}, ""},
	}
	for _, test := range tests {
		got, err := Find(test.args, test.recursive)
		for i := range got {
			got[i] = filepath.ToSlash(got[i])
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("Find(%q, %t) = %q, want %q", test.args, test.recursive, got, test.want)
		}
		if test.problem == "" != (err == nil) || err != nil && !strings.Contains(err.Error(), test.problem) {
			t.Errorf("Find(%q, %t): %v, want %q", test.args, test.recursive, err, test.problem)
		}
	}
}

func use(path string) string { return plan + "use \"a\" { kit = \"" + path + "\" }\n" }

func TestLoad(t *testing.T) {
	dir := tree(t, map[string]string{
		"plans/a.wiring.hcl":           use("./kits/lamp.wiring.hcl"),
		"plans/kits/lamp.wiring.hcl":   kit,
		"plans/nested.wiring.hcl":      use("kits/outer.wiring.hcl"),
		"plans/kits/outer.wiring.hcl":  "kit \"outer\" {}\nuse \"in\" { kit = \"../kits/lamp.wiring.hcl\" }\n",
		"plans/shared.wiring.hcl":      use("shared.wiring.hcl"),
		"plans/folder.wiring.hcl":      use("kits"),
		"plans/b.wiring.hcl":           use("club/lamp.wiring.hcl"),
		"library/club/lamp.wiring.hcl": "kit \"lamp\" {}\nuse \"more\" { kit = \"bulb.wiring.hcl\" }\n",
		"library/club/bulb.wiring.hcl": kit,
		"secret.wiring.hcl":            kit,
	})
	t.Chdir(dir)
	links := map[string]string{"plans/kits/out.wiring.hcl": "../../secret.wiring.hcl", "plans/kits/in.wiring.hcl": "lamp.wiring.hcl", "plans/up": ".."}
	for name, target := range links {
		if err := os.Symlink(target, filepath.FromSlash(name)); err != nil {
			t.Fatal(err)
		}
	}
	tests := []struct {
		src     string // of the plan, "" to read the file of the name
		name    string
		kits    []string
		problem string
		address string
	}{
		{"", "plans/a.wiring.hcl", nil, "", "use.a.fuse.main"},
		{"", "plans/nested.wiring.hcl", nil, "", "use.a.use.in.fuse.main"},
		{"", "plans/b.wiring.hcl", []string{"library"}, "", "use.a.use.more.fuse.main"},
		{"", "plans/b.wiring.hcl", nil, "there is no file \"club/lamp.wiring.hcl\", seen from plans/b.wiring.hcl", ""},
		{"", "plans/folder.wiring.hcl", nil, "this is no ordinary file", ""},
		{"", "plans/nowhere.wiring.hcl", nil, "plans/nowhere.wiring.hcl: there is no such file or folder.", ""},
		{"", "plans", nil, "this is a folder, not a file", ""},
		{use("kits/in.wiring.hcl"), "plans/x.wiring.hcl", nil, "", "use.a.fuse.main"},
		{use("kits/out.wiring.hcl"), "plans/x.wiring.hcl", nil, "Kits lie in the plan's own folder", ""},
		{use("up/secret.wiring.hcl"), "plans/x.wiring.hcl", nil, "Kits lie in the plan's own folder", ""},
		{use("../secret.wiring.hcl"), "plans/x.wiring.hcl", nil, "leads out of the plan's folder", ""},
		{use("kits/../../secret.wiring.hcl"), "plans/x.wiring.hcl", nil, "leads out of the plan's folder", ""},
		{use("kits/../kits/lamp.wiring.hcl"), "plans/x.wiring.hcl", nil, "", "use.a.fuse.main"},
		{use("/etc/passwd"), "plans/x.wiring.hcl", nil, "relative to the file that uses it", ""},
		{use(filepath.ToSlash(dir) + "/plans/kits/lamp.wiring.hcl"), "plans/x.wiring.hcl", nil, "relative to the file that uses it", ""},
		{use("kits\\\\lamp.wiring.hcl"), "plans/x.wiring.hcl", nil, "parted by /", ""},
		{use(""), "plans/x.wiring.hcl", nil, "no path of a file", ""},
		{use("x.wiring.hcl"), "plans/x.wiring.hcl", nil, "The kit is already being read", ""},
		{use("plans/kits/lamp.wiring.hcl"), Stdin, nil, "", "use.a.fuse.main"},
	}
	for _, test := range tests {
		r := &Reader{Kits: test.kits, Overlay: map[string][]byte{}}
		if test.name == Stdin {
			r.Stdin = []byte(test.src)
		} else if test.src != "" {
			r.Overlay[filepath.Join(dir, filepath.FromSlash(test.name))] = []byte(test.src)
		}
		p, diags, src := r.Load(filepath.FromSlash(test.name))
		what := test.name + " " + strings.TrimPrefix(test.src, plan)
		if test.problem == "" {
			if len(diags) > 0 || p.Block(test.address) == nil || src == nil {
				t.Errorf("%s: %v", what, diags)
			}
			continue
		}
		found := slices.ContainsFunc(diags, func(d *hcl.Diagnostic) bool { return strings.Contains(d.Detail, test.problem) })
		if !found || p == nil || p.System == nil {
			t.Errorf("%s: %v, want %q", what, diags, test.problem)
		}
	}
}

// Unsaved text hides a kit's file too, and a kit that is not on the disk yet can be used.
func TestOverlay(t *testing.T) {
	dir := tree(t, map[string]string{"a.wiring.hcl": use("lamp.wiring.hcl"), "lamp.wiring.hcl": "no kit"})
	r := &Reader{Overlay: map[string][]byte{filepath.Join(dir, "lamp.wiring.hcl"): []byte(kit), filepath.Join(dir, "b.wiring.hcl"): []byte(use("new.wiring.hcl")), filepath.Join(dir, "new.wiring.hcl"): []byte(kit)}}
	for _, name := range []string{"a.wiring.hcl", "b.wiring.hcl"} {
		if p, diags, _ := r.Load(filepath.Join(dir, name)); len(diags) > 0 || p.Block("use.a.fuse.main") == nil {
			t.Errorf("%s: %v", name, diags)
		}
	}
}

// A pipe that nobody writes to and a device without an end hold nothing up.
func TestSpecialFiles(t *testing.T) {
	dir := tree(t, map[string]string{"a.wiring.hcl": plan, "sub/x.txt": ""})
	for name, target := range map[string]string{"zero.wiring.hcl": "/dev/zero", "null.wiring.hcl": "/dev/null", "sub.wiring.hcl": "sub"} {
		if err := os.Symlink(target, filepath.Join(dir, name)); err != nil {
			t.Skip(err)
		}
	}
	if _, err := os.Stat("/dev/zero"); err != nil {
		t.Skip("this system has no such devices")
	}
	found, err := Find([]string{dir}, false)
	if len(found) != 1 || err == nil || strings.Count(err.Error(), "no ordinary file") != 3 {
		t.Errorf("found %q, %v", found, err)
	}
	for name, want := range map[string]string{"/dev/null": "nothing comes out of it", "/dev/zero": "more than 4 MiB"} {
		_, diags, _ := (&Reader{}).Load(name)
		if len(diags) == 0 || !slices.ContainsFunc(diags, func(d *hcl.Diagnostic) bool { return strings.Contains(d.Detail, want) }) {
			t.Errorf("%s: %v, want %q", name, diags, want)
		}
	}
}

func TestLoadBoundsSize(t *testing.T) {
	dir := tree(t, map[string]string{"big.wiring.hcl": strings.Repeat("#", schema.MaxFile+100)})
	_, diags, src := (&Reader{}).Load(filepath.Join(dir, "big.wiring.hcl"))
	if len(diags) != 1 || diags[0].Summary != "File too large" || len(src) > schema.MaxFile+1 {
		t.Errorf("%d bytes read: %v", len(src), diags)
	}
}
