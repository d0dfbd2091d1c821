package folder

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// put writes a file for a test.
func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// names returns what lies in a folder.
func names(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// A file that cannot be moved has those moved before it moved back.
func TestMoveIntoMovesBack(t *testing.T) {
	dir := t.TempDir()
	s, err := newStage(dir)
	if err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(dir, "a"), "old a")
	put(t, filepath.Join(dir, "c"), "old c")
	put(t, filepath.Join(s.fresh, "a"), "new a")
	put(t, filepath.Join(s.fresh, "b"), "new b")
	// There is no new c.
	err = s.moveInto(dir, []File{{Name: "a"}, {Name: "b"}, {Name: "c"}})
	s.remove()
	if !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("error %v", err)
	}
	if diff := cmp.Diff([]string{"a", "c"}, names(t, dir)); diff != "" {
		t.Errorf("files (-want +got):\n%s", diff)
	}
	for _, name := range []string{"a", "c"} {
		if text, err := os.ReadFile(filepath.Join(dir, name)); err != nil || string(text) != "old "+name {
			t.Errorf("%s holds %q, error %v", name, text, err)
		}
	}
}

// An old file that cannot be put back is not lost, and the message says where it is.
func TestOldFilesAreKept(t *testing.T) {
	dir := t.TempDir()
	s, err := newStage(dir)
	if err != nil {
		t.Fatal(err)
	}
	kept := filepath.Join(s.old, "a")
	put(t, kept, "old a")
	gone := filepath.Join(dir, "gone", "a")
	err = moves{{from: gone, to: kept}}.back()
	s.remove()
	e, ok := errors.AsType[*Error](err)
	if !ok || e.Path != kept || e.Want != "move it by hand to "+gone {
		t.Errorf("error %v", err)
	}
	if text, err := os.ReadFile(kept); err != nil || string(text) != "old a" {
		t.Errorf("the old file holds %q, error %v", text, err)
	}
}

// A folder that has come up meanwhile is left as it is.
func TestBecomeLeavesOthersAlone(t *testing.T) {
	place := t.TempDir()
	s, err := newStage(place)
	if err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(place, "out")
	if err := os.Mkdir(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join(dir, "mine"), "mine")
	err = s.become(dir)
	s.remove()
	if err == nil {
		t.Error("no error")
	}
	if diff := cmp.Diff([]string{"out"}, names(t, place)); diff != "" {
		t.Errorf("the place (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]string{"mine"}, names(t, dir)); diff != "" {
		t.Errorf("the folder (-want +got):\n%s", diff)
	}
}

// So has one in a folder that was made for it, which is removed again.
func TestMoveIntoMovesFoldersBack(t *testing.T) {
	dir := t.TempDir()
	s, err := newStage(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{filepath.Join(dir, "there"), filepath.Join(s.fresh, "there"), filepath.Join(s.fresh, "made")} {
		if err := os.Mkdir(name, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	put(t, filepath.Join(dir, "there", "a"), "old a")
	put(t, filepath.Join(s.fresh, "there", "a"), "new a")
	put(t, filepath.Join(s.fresh, "made", "b"), "new b")
	// There is no new c.
	err = s.moveInto(dir, []File{{Name: "there/a"}, {Name: "made/b"}, {Name: "made/c"}})
	s.remove()
	if !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("error %v", err)
	}
	if diff := cmp.Diff([]string{"there"}, names(t, dir)); diff != "" {
		t.Errorf("files (-want +got):\n%s", diff)
	}
	if text, err := os.ReadFile(filepath.Join(dir, "there", "a")); err != nil || string(text) != "old a" {
		t.Errorf("a holds %q, error %v", text, err)
	}
}
