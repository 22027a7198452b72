// Package files finds and reads plans and kits. It is the one room under schema that touches the
// disk: it keeps kits inside the plan's own folder, bounds what it reads, and lets an editor put
// unsaved text over a file.
package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ferrule/schema"
)

// Stdin is the argument, and the file name, that stands for standard input.
const Stdin = "-"

// endings of plan files.
var endings = []string{".wiring.hcl", ".wiring.json"}

// IsPlan reports whether a file is a plan or a kit by its name.
func IsPlan(name string) bool {
	return slices.ContainsFunc(endings, func(e string) bool { return strings.HasSuffix(name, e) })
}

// Find lists the plans that command-line arguments name, each once, in the order given. A file is
// taken as it is, whatever its name. A folder means the plans in it, by name; recursive goes down
// into its folders, hidden ones apart. Kits in a folder are no plans and are left out. A folder
// without any plan is an error, and so are an argument that does not exist and what has the name of
// a plan in a folder but is no ordinary file: the files that were found come with the errors, which
// are joined.
func Find(args []string, recursive bool) ([]string, error) {
	var out []string
	var problems []error
	for _, arg := range args {
		found, errs := find(arg, recursive)
		problems = append(problems, errs...)
		for _, f := range found {
			if !slices.Contains(out, f) {
				out = append(out, f)
			}
		}
	}
	return out, errors.Join(problems...)
}

func find(arg string, recursive bool) ([]string, []error) {
	if arg == Stdin {
		return []string{Stdin}, nil
	}
	info, err := os.Stat(arg)
	if err != nil {
		return nil, []error{sentence(arg, err)}
	}
	if !info.IsDir() {
		return []string{filepath.Clean(arg)}, nil
	}
	folder := arg
	if link, err := os.Lstat(arg); err == nil && !link.IsDir() { // a link to a folder: walk what it leads to
		folder += string(filepath.Separator)
	}
	w := walk{folder: folder, recursive: recursive}
	if err := filepath.WalkDir(folder, w.visit); err != nil {
		w.problems = append(w.problems, err)
	}
	if len(w.plans)+len(w.problems) == 0 {
		w.problems = append(w.problems, empty(arg, w.kits, recursive))
	}
	return w.plans, w.problems
}

// walk is a search of a folder.
type walk struct {
	folder    string
	recursive bool

	plans    []string
	kits     int
	problems []error
}

// visit is a fs.WalkDirFunc. What cannot be read is noted and hides nothing else.
func (w *walk) visit(path string, entry fs.DirEntry, err error) error {
	switch {
	case err != nil:
		w.problems = append(w.problems, sentence(path, err))
	case entry.IsDir():
		if hidden := strings.HasPrefix(entry.Name(), "."); path != w.folder && (hidden || !w.recursive) {
			return filepath.SkipDir
		}
	case !IsPlan(path):
	case special(path):
		w.problems = append(w.problems, fmt.Errorf("%s: this is no ordinary file, so it was not read", path))
	case isKit(path):
		w.kits++
	default:
		w.plans = append(w.plans, path)
	}
	return nil
}

// special tells pipes, devices and the like, which may never end or never begin. A link is what it
// leads to; one that leads nowhere is found out when it is read.
func special(path string) bool {
	info, err := os.Stat(path)
	return err == nil && !info.Mode().IsRegular()
}

func empty(folder string, kits int, recursive bool) error {
	more := ""
	if kits > 0 {
		more = " (the kits in it are no plans)"
	}
	if !recursive {
		more += "; -r also looks into its folders"
	}
	return fmt.Errorf("%s: no plans in this folder%s: a plan is named NAME.wiring.hcl or NAME.wiring.json", folder, more)
}

// isKit reports whether a file is a kit. One that cannot be read is not: reading it as a plan will
// say why.
func isKit(path string) bool {
	src, err := read(open(path))
	return err == nil && schema.IsKit(path, src)
}

// sentence turns an error of the system into one that an owner can read.
func sentence(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file or folder", path)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: reading it is not permitted", path)
	case errors.Is(err, os.ErrDeadlineExceeded):
		return fmt.Errorf("%s: this is no ordinary file, and nothing came out of it for %s", path, patience)
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	if err.Error() == "path escapes from parent" { // os.Root has no exported error for it
		return fmt.Errorf("%s: a link on this path leads out of the folder", path)
	}
	return fmt.Errorf("%s: %w", path, err)
}
