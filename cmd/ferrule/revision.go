package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"time"

	"ferrule/schema"
	"ferrule/schema/files"
)

// gitPatience is how long git may take to give a file.
const gitPatience = 20 * time.Second

// mostKits bounds the kits that are fetched for a plan of a revision.
const mostKits = 64

// revision takes REV:PATH apart, or :PATH for a file as it is staged. A file of that very name goes first.
func revision(arg string) (rev, file string, ok bool) {
	if exists(arg) || arg == files.Stdin {
		return "", arg, false
	}
	rev, file, ok = strings.Cut(arg, ":")
	if !ok || len(rev) == 1 || file == "" || strings.HasPrefix(rev, "-") { // one letter is a drive
		return "", arg, false
	}
	return rev, file, true
}

// atRevision is a reader that finds a plan, and the kits that it uses, as they were in a revision.
func atRevision(r *files.Reader, rev, file string) (*files.Reader, error) {
	src, err := gitBlob(rev, file)
	if err != nil {
		return nil, err
	}
	if r, err = r.Instead(file, src); err != nil {
		return nil, err
	}
	seen := map[string]bool{}
	for {
		plan, _, _ := r.Load(file)
		more := false
		for _, u := range plan.Uses {
			kit := path.Join(path.Dir(filepath.ToSlash(u.Range.Filename)), u.Kit.Value)
			if seen[kit] || len(seen) >= mostKits || filepath.IsAbs(u.Kit.Value) || strings.HasPrefix(kit, "../") {
				continue
			}
			seen[kit] = true
			text, err := gitBlob(rev, kit)
			if err != nil {
				continue // it may lie in a folder named by --kits, and is missed when the plan is read
			}
			if r, err = r.Instead(filepath.FromSlash(kit), text); err != nil {
				return nil, err
			}
			more = true
		}
		if !more {
			return r, nil
		}
	}
}

// gitBlob asks git for a file of a revision, as it is stored: no filter and no other program runs.
func gitBlob(rev, file string) ([]byte, error) {
	ctx, stop := context.WithTimeout(context.Background(), gitPatience)
	defer stop()
	name := filepath.ToSlash(file)
	if !path.IsAbs(name) {
		name = "./" + name
	}
	cmd := exec.CommandContext(ctx, "git", "cat-file", "blob", rev+":"+name)
	cmd.Env = append(os.Environ(), "GIT_OPTIONAL_LOCKS=0", "GIT_TERMINAL_PROMPT=0", "LC_ALL=C")
	var out, problem bounded
	out.left, problem.left = schema.MaxFile+1, 1<<10
	cmd.Stdout, cmd.Stderr = &out, &problem
	err := cmd.Run()
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, fmt.Errorf("%s:%s: git is not installed", rev, file)
	case ctx.Err() != nil:
		return nil, fmt.Errorf("%s:%s: git gave nothing for %s", rev, file, gitPatience)
	case out.full:
		return out.Bytes(), nil // the reader says that it is too large
	case err != nil:
		return nil, fmt.Errorf("%s:%s: git has no such file: %s", rev, file, strings.TrimSpace(problem.String()))
	}
	return out.Bytes(), nil
}

// bounded keeps the first bytes that are written to it and makes the writer stop at more.
type bounded struct {
	bytes.Buffer
	left int
	full bool
}

func (b *bounded) Write(p []byte) (int, error) {
	n := min(len(p), b.left)
	b.left -= n
	b.Buffer.Write(p[:n])
	if n < len(p) {
		b.full = true
		return n, io.ErrShortWrite
	}
	return n, nil
}
