package folder

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// stage is the temporary folder.
type stage struct {
	root  string
	fresh string // the folder of the new files
	old   string // the folder of those that they replace
}

// newStage makes a stage in the given folder.
func newStage(place string) (*stage, error) {
	root, err := os.MkdirTemp(place, ".unfinished-*")
	if err != nil {
		return nil, err
	}
	s := &stage{root: root, fresh: filepath.Join(root, "new"), old: filepath.Join(root, "old")}
	// The new folder may become the user's, with the usual permissions, which a
	// temporary one does not have.
	for _, dir := range []string{s.fresh, s.old} {
		if err := os.Mkdir(dir, 0o777); err != nil {
			s.remove()
			return nil, err
		}
	}
	return s, nil
}

// remove removes the stage, but no old files that still lie in it.
func (s *stage) remove() {
	os.RemoveAll(s.fresh)
	removeEmpty(s.old)
	os.Remove(s.root)
}

// removeEmpty removes a folder if nothing but folders lies in it.
func removeEmpty(dir string) {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if e.IsDir() {
			removeEmpty(filepath.Join(dir, e.Name()))
		}
	}
	os.Remove(dir)
}

// become makes the new files the folder dir, which is not there.
func (s *stage) become(dir string) error {
	if err := os.Rename(s.fresh, dir); err != nil {
		return failed(dir, err)
	}
	return nil
}

// moveInto moves the new files into the folder dir and drops those that they
// replace. If one cannot be moved, all are moved back.
func (s *stage) moveInto(dir string, files []File) error {
	var done moves
	for _, f := range files {
		path := f.in(dir)
		err := done.folder(filepath.Dir(path))
		if err == nil {
			err = os.MkdirAll(filepath.Dir(f.in(s.old)), 0o777)
		}
		if err == nil {
			err = done.move(path, f.in(s.old))
		}
		if err == nil || errors.Is(err, fs.ErrNotExist) {
			err = done.move(f.in(s.fresh), path)
		}
		if err != nil {
			if lost := done.back(); lost != nil {
				return lost
			}
			return failed(path, err)
		}
	}
	os.RemoveAll(s.old)
	return nil
}

// moves are those made so far; one from nowhere is a folder that was made.
type moves []struct{ from, to string }

// folder makes a folder, and those that it lies in, if it is not there.
func (m *moves) folder(dir string) error {
	if _, err := os.Stat(dir); err == nil || !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := m.folder(filepath.Dir(dir)); err != nil {
		return err
	}
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	*m = append(*m, struct{ from, to string }{"", dir})
	return nil
}

func (m *moves) move(from, to string) error {
	if err := os.Rename(from, to); err != nil {
		return err
	}
	*m = append(*m, struct{ from, to string }{from, to})
	return nil
}

// back takes the moves back, the last one first, and returns an error about the
// last of those that cannot be.
func (m moves) back() error {
	var lost error
	for _, made := range slices.Backward(m) {
		if made.from == "" {
			os.Remove(made.to)
			continue
		}
		if err := os.Rename(made.to, made.from); err != nil {
			lost = &Error{Path: made.to, Problem: because("cannot be moved back", err), Want: "move it by hand to " + made.from, Err: err}
		}
	}
	return lost
}
