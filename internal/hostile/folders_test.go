//go:build linux

package hostile_test

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A folder that cannot be written into is as it was before, or holds all files, complete.
func testFolders(t *testing.T, programs []program) {
	for _, p := range programs {
		if !slices.Contains(p.flags, "out") {
			continue
		}
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			k := keep(t, p)
			dir := t.TempDir()
			k.out("into a new folder", filepath.Join(dir, "new"), "", 0)
			made := contents(t, filepath.Join(dir, "new"))
			if len(made) < 2 {
				t.Fatalf("only %q was made", slices.Sorted(maps.Keys(made)))
			}
			files := slices.DeleteFunc(slices.Sorted(maps.Keys(made)), func(name string) bool { return strings.HasSuffix(name, "/") })
			for _, c := range refusals(t, files) {
				t.Run(c.why, func(t *testing.T) {
					before := contents(t, c.dir)
					keep(t, p).out(c.why, filepath.Join(c.dir, c.out), c.limit, 1, c.args...)
					if diff := cmp.Diff(before, contents(t, c.dir)); diff != "" {
						t.Errorf("the folder (-before +after):\n%.1000s", diff)
					}
				})
			}
			k.complete(made)
		})
	}
}

// out writes into a folder and tests the exit status.
func (k *kept) out(what, out, limit string, status int, args ...string) {
	k.Helper()
	dir := k.TempDir()
	args = append([]string{"-out", out}, args...)
	e := k.start(k.T, start{args: args, dir: dir, before: limit})
	problem := e.overspent()
	switch {
	case problem != "":
	case e.status == 0:
		problem = e.served(k.help)
	default:
		problem = e.refused(k.name)
	}
	if e.status != status || problem != "" {
		k.Errorf("%s %q: status %d, want %d, %s: %s", what, args, e.status, status, problem, e.said)
	}
	if left := contents(k.T, dir); len(left) > 0 {
		k.Errorf("%s %q: left in the working folder: %q", what, args, slices.Sorted(maps.Keys(left)))
	}
}

// refusal is a place that cannot be written into.
type refusal struct {
	why, dir string
	out      string // in the folder
	args     []string
	limit    string // shell commands that are run before the program
}

// refusals makes the places, given the files that would be written.
func refusals(t *testing.T, files []string) []refusal {
	first, last := files[0], files[len(files)-1]
	list := []refusal{
		{why: "below a folder that is missing", dir: t.TempDir(), out: "none/below"},
		{why: "a file", dir: folder(t, "file"), out: "file"},
		{why: "a file, forced", dir: folder(t, "file"), out: "file", args: []string{"-force"}},
		{why: "below a file", dir: folder(t, "file"), out: "file/below"},
		{why: "the first file is there", dir: folder(t, "out/"+first), out: "out"},
		{why: "the last file is there", dir: folder(t, "out/"+last), out: "out"},
		{why: "a folder where the last file belongs", dir: folder(t, "out/"+last+"/within"), out: "out", args: []string{"-force"}},
		{why: "a name that is too long", dir: t.TempDir(), out: strings.Repeat("A", 300)},
		{why: "a link to nothing", dir: linked(t, "nowhere"), out: "link"},
		{why: "a link to itself", dir: linked(t, "link"), out: "link"},
		{why: "files of at most 4 kB", dir: t.TempDir(), out: "out", limit: "ulimit -f 8"},
		{why: "files of at most 4 kB, into a folder", dir: folder(t, "out/"+first), out: "out", args: []string{"-force"}, limit: "ulimit -f 8"},
		{why: "read only", dir: readOnly(t), out: "."},
		{why: "a new folder in one that is read only", dir: readOnly(t), out: "out"},
	}
	if dir := small(t); dir != "" {
		list = append(list, refusal{why: "a full disk", dir: dir, out: "out"})
	}
	if dir := small(t); dir != "" {
		put(t, filepath.Join(dir, "out", filepath.FromSlash(first)))
		list = append(list, refusal{why: "a full disk, into a folder", dir: dir, out: "out", args: []string{"-force"}})
	}
	return list
}

// folder returns a folder with a file in it.
func folder(t *testing.T, file string) string {
	t.Helper()
	dir := t.TempDir()
	put(t, filepath.Join(dir, filepath.FromSlash(file)))
	return dir
}

func put(t *testing.T, path string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("older"), 0o666); err != nil {
		t.Fatal(err)
	}
}

// linked returns a folder with a link in it.
func linked(t *testing.T, to string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.Symlink(to, filepath.Join(dir, "link")); err != nil {
		t.Fatal(err)
	}
	return dir
}

// readOnly returns a folder that nobody may write into: the permissions do not keep root out,
// a file system does.
func readOnly(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if os.Getuid() == 0 && mount(t, dir, syscall.MS_RDONLY, "") == nil {
		return dir
	}
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	return dir
}

// small returns a folder on a file system of its own that is soon full; empty where none may
// be made.
func small(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := mount(t, dir, 0, "size=64k"); err != nil {
		t.Logf("no file system of 64 kB: %v", err)
		return ""
	}
	return dir
}

// mount makes a folder a file system in memory until the test ends.
func mount(t *testing.T, dir string, flags uintptr, data string) error {
	if err := syscall.Mount("tmpfs", dir, "tmpfs", flags, data); err != nil {
		return err
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Error(err)
		}
	})
	return nil
}

// complete tests that a folder is written although the paths of its files cannot be printed,
// and that this is said.
func (k *kept) complete(want map[string]string) {
	k.Helper()
	dir := k.TempDir()
	e := k.start(k.T, start{args: []string{"-out", "out"}, dir: dir, stdout: device(k.T, "/dev/full")})
	if problem := e.refused(k.name); e.status != 1 || problem != "" {
		k.Errorf("paths that cannot be printed: status %d, %s", e.status, problem)
	}
	if diff := cmp.Diff(want, contents(k.T, filepath.Join(dir, "out"))); diff != "" {
		k.Errorf("paths that cannot be printed: the folder (-want +got):\n%.1000s", diff)
	}
}

// contents returns what lies in a folder, by its path in it.
func contents(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || path == ".":
			return err
		case d.Type() == fs.ModeSymlink:
			all[path], err = os.Readlink(filepath.Join(dir, path))
			return err
		case d.IsDir():
			all[path+"/"] = ""
			return nil
		}
		text, err := os.ReadFile(filepath.Join(dir, path))
		all[path] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
