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
// without any plan is an error, and so is an argument that does not exist: the files that were
// found come with it.
func Find(args []string, recursive bool) ([]string, error) {
	var out []string
	var problems []error
	for _, arg := range args {
		found, err := find(arg, recursive)
		if err != nil {
			problems = append(problems, err)
		}
		for _, f := range found {
			if !slices.Contains(out, f) {
				out = append(out, f)
			}
		}
	}
	return out, errors.Join(problems...)
}

func find(arg string, recursive bool) ([]string, error) {
	if arg == Stdin {
		return []string{Stdin}, nil
	}
	info, err := os.Stat(arg)
	if err != nil {
		return nil, sentence(arg, err)
	}
	if !info.IsDir() {
		return []string{filepath.Clean(arg)}, nil
	}
	folder := arg
	if link, err := os.Lstat(arg); err == nil && !link.IsDir() { // a link to a folder: walk what it leads to
		folder += string(filepath.Separator)
	}
	var out []string
	kits := 0
	err = filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return sentence(path, err)
		case entry.IsDir():
			if hidden := strings.HasPrefix(entry.Name(), "."); path != folder && (hidden || !recursive) {
				return filepath.SkipDir
			}
		case IsPlan(path) && isKit(path):
			kits++
		case IsPlan(path):
			out = append(out, path)
		}
		return nil
	})
	if err == nil && len(out) == 0 {
		err = empty(arg, kits, recursive)
	}
	return out, err
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
	src, err := read(os.Open(path))
	return err == nil && schema.IsKit(path, src)
}

// sentence turns an error of the system into one that an owner can read.
func sentence(path string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file or folder", path)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: reading it is not permitted", path)
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return fmt.Errorf("%s: %w", path, err)
}
