package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/hashicorp/hcl/v2"

	"ferrule/schema"
)

// Reader reads plans and their kits. Its zero value reads plans that use kits from their own folder.
type Reader struct {
	// Kits are further folders in which kits may lie (--kits DIR), searched in order after the
	// folder of the file that uses the kit.
	Kits []string

	// Overlay is unsaved text by absolute, cleaned path. It hides the file of that path, which
	// need not exist.
	Overlay map[string][]byte

	// Stdin is the text that the name "-" stands for. Its kits are sought in the working folder.
	Stdin []byte
}

// Load reads the plan at a path. The plan is never nil; what is wrong with it, or with reading it,
// is in the diagnostics, whose places are in the plan or in a kit. The text is nil where the file
// cannot be read.
func (r *Reader) Load(path string) (*schema.Plan, hcl.Diagnostics, []byte) {
	src, err := r.plan(path)
	if err != nil {
		at := hcl.Range{Filename: path, Start: hcl.InitialPos, End: hcl.InitialPos}
		return &schema.Plan{File: path, System: &schema.System{}}, hcl.Diagnostics{{
			Severity: hcl.DiagError, Summary: "File cannot be read", Detail: err.Error() + ".", Subject: &at,
		}}, nil
	}
	l := &loading{Reader: r, at: map[string]spot{}}
	l.folders = append([]string{filepath.Dir(path)}, r.Kits...)
	l.at[path] = spot{0, filepath.Base(path)}
	plan, diags := schema.Decode(path, src, l.kit)
	return plan, diags, src
}

// Instead is a reader that finds another text in the place of a plan, and everything else as before.
func (r *Reader) Instead(path string, src []byte) (*Reader, error) {
	out := *r
	if path == Stdin {
		out.Stdin = src
		return &out, nil
	}
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	out.Overlay = maps.Clone(r.Overlay)
	if out.Overlay == nil {
		out.Overlay = map[string][]byte{}
	}
	out.Overlay[abs] = src
	return &out, nil
}

func (r *Reader) plan(path string) ([]byte, error) {
	if path == Stdin {
		return r.Stdin, nil
	}
	if src, ok := r.unsaved(path); ok {
		return src, nil
	}
	src, err := read(open(path))
	if err != nil {
		return nil, sentence(path, err)
	}
	return src, nil
}

// patience is how long a pipe or a device may take to give its text.
const patience = 5 * time.Second

// open opens a file without waiting for another program to open the far end of a pipe.
func open(path string) (*os.File, error) {
	return os.OpenFile(path, os.O_RDONLY|syscall.O_NONBLOCK, 0)
}

// unsaved gives the overlay's text for a path.
func (r *Reader) unsaved(path string) ([]byte, bool) {
	if len(r.Overlay) == 0 {
		return nil, false
	}
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, false
	}
	src, ok := r.Overlay[abs]
	return src, ok
}

// read takes a file's text up to one byte more than a plan may have, so that nothing larger, nor an
// endless device, is held in memory.
func read(f *os.File, err error) ([]byte, error) {
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, errors.New("this is a folder, not a file")
	case info.Mode().IsRegular():
		return io.ReadAll(io.LimitReader(f, schema.MaxFile+1))
	}
	// What takes no deadline is no pipe, and is always ready.
	if err := f.SetReadDeadline(time.Now().Add(patience)); err != nil && !errors.Is(err, os.ErrNoDeadline) {
		return nil, err
	}
	src, err := io.ReadAll(io.LimitReader(f, schema.MaxFile+1))
	if err == nil && len(src) == 0 {
		err = errors.New("this is no ordinary file, and nothing comes out of it")
	}
	return src, err
}

// loading is one plan being loaded: the folders that its kits may lie in, and where each file that
// was read lies.
type loading struct {
	*Reader
	folders []string // the plan's own first
	at      map[string]spot
}

// spot is a place in one of the folders.
type spot struct {
	folder int
	path   string // with slashes, relative to the folder
}

// kit is the schema.ReadFile of the plan. A kit's path is relative to the file that uses it, or to
// one of the kit folders, and leads nowhere else: not by "..", not by an absolute path, not by a
// symbolic link.
func (l *loading) kit(from, name string) (string, []byte, error) {
	if why := unfit(name); why != "" {
		return "", nil, fmt.Errorf("%q: %s", name, why)
	}
	user := l.at[from]
	tries := []spot{{user.folder, path.Join(path.Dir(filepath.ToSlash(user.path)), name)}}
	for i := range l.Kits {
		tries = append(tries, spot{i + 1, path.Clean(name)})
	}
	outside := false
	for _, s := range tries {
		if s.path == ".." || strings.HasPrefix(s.path, "../") {
			outside = true
			continue
		}
		full, src, err := l.open(s)
		switch {
		case err == nil:
			l.at[full] = s
			return full, src, nil
		case errors.Is(err, fs.ErrNotExist):
		default:
			return "", nil, fmt.Errorf("%w. Kits lie in the plan's own folder, below it, or in a folder named by --kits", sentence(name, err))
		}
	}
	if outside {
		return "", nil, fmt.Errorf("%q leads out of the plan's folder. Kits lie in that folder, below it, or in a folder named by --kits", name)
	}
	return "", nil, fmt.Errorf("there is no file %q, seen from %s or from a folder named by --kits", name, from)
}

func unfit(name string) string {
	switch {
	case name == "" || strings.ContainsRune(name, 0):
		return "this is no path of a file"
	case strings.Contains(name, "\\"):
		return "the folders of a path are parted by /"
	case path.IsAbs(name) || filepath.IsAbs(name) || filepath.VolumeName(name) != "":
		return "the path of a kit is relative to the file that uses it"
	}
	return ""
}

// open reads a file below one of the folders. The system itself keeps the path, and the links on
// it, from leading out.
func (l *loading) open(s spot) (string, []byte, error) {
	full := filepath.Join(l.folders[s.folder], filepath.FromSlash(s.path))
	if src, ok := l.unsaved(full); ok {
		return full, src, nil
	}
	root, err := os.OpenRoot(l.folders[s.folder])
	if err != nil {
		return full, nil, err
	}
	defer root.Close()
	name := filepath.FromSlash(s.path)
	info, err := root.Stat(name)
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("this is no ordinary file")
	}
	if err != nil {
		return full, nil, err
	}
	src, err := read(root.Open(name))
	return full, src, err
}
