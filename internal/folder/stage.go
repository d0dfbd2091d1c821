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
	os.Remove(s.old)
	os.Remove(s.root)
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
		path := filepath.Join(dir, f.Name)
		err := done.move(path, filepath.Join(s.old, f.Name))
		if err == nil || errors.Is(err, fs.ErrNotExist) {
			err = done.move(filepath.Join(s.fresh, f.Name), path)
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

// moves are those made so far.
type moves []struct{ from, to string }

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
		if err := os.Rename(made.to, made.from); err != nil {
			lost = &Error{Path: made.to, Problem: because("cannot be moved back", err), Want: "move it by hand to " + made.from, Err: err}
		}
	}
	return lost
}
