package files

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"

	"ferrule/schema"
)

// Replace writes a plan anew in the place of the text that was read, or leaves it untouched: the new text
// goes to a file beside it, onto the disk, and takes its name in one step. It refuses, with an error and
// nothing written, what it would have to guess about: a symbolic link, a file with other names, what is no ordinary file, a file
// that may not be written, and one whose text is not old any more.
func Replace(path string, old, text []byte) error {
	info, err := replaceable(path, old)
	switch {
	case err != nil:
		return sentence(path, err)
	case len(text) > schema.MaxFile:
		return fmt.Errorf("%s would become larger than a plan may be", path)
	}
	err = swap(path, info, old, text)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: writing into its folder is not permitted", path)
	case err != nil:
		return sentence(path, err)
	}
	return nil
}

// replaceable says whether a file is what was read and may be written.
func replaceable(path string, old []byte) (os.FileInfo, error) {
	info, err := os.Lstat(path)
	switch {
	case path == Stdin:
		return nil, errors.New("standard input cannot be written to")
	case err != nil:
		return nil, err
	case info.Mode()&os.ModeSymlink != 0:
		return nil, errors.New("this is a symbolic link; name the file that it leads to")
	case !info.Mode().IsRegular():
		return nil, errors.New("this is no ordinary file")
	case info.Mode().Perm()&0o200 == 0:
		return nil, errors.New("the file is read-only")
	case names(info) > 1:
		return nil, errors.New("the file has other names (hard links), which would keep the old text; copy it first")
	}
	return info, same(path, old)
}

// names counts the names that a file has, where the system tells; else it is 0.
func names(info os.FileInfo) uint64 { return stat(info, "Nlink") }

// stat is a figure that the system keeps of a file, 0 where it does not.
func stat(info os.FileInfo, field string) uint64 {
	all := reflect.Indirect(reflect.ValueOf(info.Sys()))
	if all.Kind() != reflect.Struct {
		return 0
	}
	switch n := all.FieldByName(field); {
	case !n.IsValid():
		return 0
	case n.CanUint():
		return n.Uint()
	default:
		return uint64(n.Int())
	}
}

// own gives a new file the owner, the group and the mode of the one whose place it takes.
func own(f *os.File, old os.FileInfo) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	uid, gid := stat(old, "Uid"), stat(old, "Gid")
	if uid != stat(info, "Uid") || gid != stat(info, "Gid") {
		if f.Chown(int(uid), int(gid)) != nil {
			return errors.New("the file is of another user or group, and the new one could not be given to them; nothing was written")
		}
	}
	return f.Chmod(old.Mode().Perm())
}

// same is an error where a file has another text than it had when it was read.
func same(path string, old []byte) error {
	now, err := read(open(path))
	if err != nil {
		return err
	}
	if !bytes.Equal(now, old) {
		return errors.New("the file has changed since it was read; nothing was written")
	}
	return nil
}

// swap writes a new file and renames it. Whenever it is stopped the path has the old text or the new one,
// whole; what is left over then is a file whose name begins with a point.
func swap(path string, info os.FileInfo, old, text []byte) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".new-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close() // closed twice where it was closed: no harm
			os.Remove(f.Name())
		}
	}()
	step("made")
	if _, err = f.Write(text); err != nil {
		return err
	}
	step("written")
	if err = own(f, info); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	step("closed")
	if err = same(path, old); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return err
	}
	step("renamed")
	settle(filepath.Dir(path))
	return nil
}

// settle puts a folder's new entry onto the disk, where the system can: the text is safe either way.
func settle(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync() // some systems cannot do that with a folder
		d.Close()
	}
}

// step is where a test stops the program while it writes.
var step = func(string) {}
