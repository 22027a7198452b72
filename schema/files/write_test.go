package files

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestMain lets a test start this program once more, to be killed while it writes.
func TestMain(m *testing.M) {
	at := os.Getenv("FERRULE_TEST_KILL_AT")
	if at == "" {
		os.Exit(m.Run())
	}
	step = func(s string) {
		if me, err := os.FindProcess(os.Getpid()); s == at && err == nil && me.Kill() == nil {
			select {} // until the system has done it
		}
	}
	path := os.Getenv("FERRULE_TEST_PLAN")
	old, _ := os.ReadFile(path)
	if err := Replace(path, old, []byte(newText)); err != nil {
		os.Stderr.WriteString(err.Error())
		os.Exit(1)
	}
	os.Exit(0)
}

const newText = "system \"tern\" {\n  title = \"new\"\n}\n"

func planFile(t *testing.T, text string, mode os.FileMode) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "tern.wiring.hcl")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(path, mode); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestKilledWhileWriting kills the program at each step: the plan is whole, old or new.
func TestKilledWhileWriting(t *testing.T) {
	old := strings.Repeat("# a long plan\n", 10000)
	for _, c := range []struct{ at, want string }{{"made", old}, {"written", old}, {"closed", old}, {"renamed", newText}, {"never", newText}} {
		path := planFile(t, old, 0o640)
		cmd := exec.Command(os.Args[0], "-test.run=^$")
		cmd.Env = append(os.Environ(), "FERRULE_TEST_KILL_AT="+c.at, "FERRULE_TEST_PLAN="+path)
		if out, err := cmd.CombinedOutput(); (err != nil) != (c.at != "never") || len(out) > 0 {
			t.Fatalf("%s: %v %s", c.at, err, out)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != c.want {
			t.Errorf("killed at %s the plan has %d bytes, %v", c.at, len(got), err)
		}
		if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*")); (len(left) > 0) != (c.at == "made" || c.at == "written" || c.at == "closed") {
			t.Errorf("killed at %s: beside the plan lie %q", c.at, left)
		}
	}
}

func TestReplaceKeepsTheMode(t *testing.T) {
	for _, mode := range []os.FileMode{0o600, 0o644, 0o755, 0o200 | 0o400 | 0o040} {
		path := planFile(t, "old", mode)
		if err := Replace(path, []byte("old"), []byte(newText)); err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(path)
		if err != nil || info.Mode().Perm() != mode {
			t.Errorf("mode %o became %o, %v", mode, info.Mode().Perm(), err)
		}
		if got, _ := os.ReadFile(path); string(got) != newText {
			t.Errorf("%q", got)
		}
	}
}

// TestReplaceKeepsTheOwner gives a plan to somebody else first, which only the system's first user may.
func TestReplaceKeepsTheOwner(t *testing.T) {
	path := planFile(t, "# old\n", 0o640)
	if err := os.Chown(path, 4711, 4712); err != nil {
		t.Skip("a file cannot be given away here:", err)
	}
	if err := Replace(path, []byte("# old\n"), []byte(newText)); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if uid, gid := stat(info, "Uid"), stat(info, "Gid"); uid != 4711 || gid != 4712 || info.Mode().Perm() != 0o640 {
		t.Errorf("the plan is of %d:%d, %v", uid, gid, info.Mode())
	}
}

func TestReplaceRefuses(t *testing.T) {
	readOnly := planFile(t, "old", 0o444)
	real := planFile(t, "old", 0o644)
	link := filepath.Join(t.TempDir(), "link.wiring.hcl")
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	twice := planFile(t, "old", 0o644)
	if err := os.Link(twice, filepath.Join(t.TempDir(), "twin.wiring.hcl")); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ path, old, why string }{
		{twice, "old", "other names"},
		{readOnly, "old", "read-only"},
		{link, "old", "symbolic link"},
		{real, "older", "changed since it was read"},
		{filepath.Dir(real), "old", "no ordinary file"},
		{real + ".none", "old", "no such file"},
		{Stdin, "old", "standard input"},
	} {
		if err := Replace(c.path, []byte(c.old), []byte(newText)); err == nil || !strings.Contains(err.Error(), c.why) {
			t.Errorf("%s: %v, want %q", c.path, err, c.why)
		}
	}
	for _, path := range []string{readOnly, real, twice} {
		if got, _ := os.ReadFile(path); string(got) != "old" {
			t.Errorf("%s was written: %q", path, got)
		}
		if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
			t.Errorf("something lies beside %s", path)
		}
	}
	if err := Replace(real, []byte("old"), bytes.Repeat([]byte{'#'}, 5<<20)); err == nil {
		t.Error("a plan larger than any may be was written")
	}
}

// A file that changes while its successor is written stays as it is.
func TestReplaceSeesAChangeWhileItWrites(t *testing.T) {
	path := planFile(t, "old", 0o644)
	step = func(s string) {
		if s == "closed" {
			if err := os.WriteFile(path, []byte("another's"), 0o644); err != nil {
				t.Error(err)
			}
		}
	}
	defer func() { step = func(string) {} }()
	if err := Replace(path, []byte("old"), []byte(newText)); err == nil || !strings.Contains(err.Error(), "changed") {
		t.Error(err)
	}
	if got, _ := os.ReadFile(path); string(got) != "another's" {
		t.Errorf("%q", got)
	}
}

func TestInstead(t *testing.T) {
	path := planFile(t, "system \"old\" {}\n", 0o644)
	base := &Reader{}
	other, err := base.Instead(path, []byte("system \"other\" {}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if plan, _, _ := other.Load(path); plan.System.Name != "other" {
		t.Errorf("the other text is not read: %q", plan.System.Name)
	}
	if plan, _, _ := base.Load(path); plan.System.Name != "old" {
		t.Errorf("the first reader reads %q", plan.System.Name)
	}
	in, err := (&Reader{Stdin: []byte("system \"in\" {}\n")}).Instead(Stdin, []byte("system \"out\" {}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if plan, _, _ := in.Load(Stdin); plan.System.Name != "out" {
		t.Errorf("standard input is %q", plan.System.Name)
	}
}
