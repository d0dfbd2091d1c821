package folder_test

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"example.com/walewise/internal/folder"
	"github.com/google/go-cmp/cmp"
)

// file returns a file with a text.
func file(name, text string) folder.File {
	return folder.File{Name: name, Write: func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}}
}

// two are the files that the tests write.
var two = []folder.File{file("a.txt", "new a\n"), file("b.txt", "new b\n")}

// tree is what lies in a folder: texts by path with slashes, "/" for folders.
type tree map[string]string

// build makes a folder of what lies in it.
func build(t *testing.T, lies tree) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range lies {
		path := filepath.Join(root, filepath.FromSlash(name))
		dir := filepath.Dir(path)
		if text == "/" {
			dir = path
		}
		if err := os.MkdirAll(dir, 0o777); err != nil {
			t.Fatal(err)
		}
		if text == "/" {
			continue
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

// look returns what lies in a folder.
func look(t *testing.T, root string) tree {
	t.Helper()
	lies := tree{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || path == root {
			return err
		}
		name, err := filepath.Rel(root, path)
		if err != nil || d.IsDir() {
			lies[filepath.ToSlash(name)] = "/"
			return err
		}
		text, err := os.ReadFile(path)
		lies[filepath.ToSlash(name)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return lies
}

func TestWrite(t *testing.T) {
	for _, c := range []struct {
		name    string
		before  tree
		dir     string
		replace bool
		after   tree
	}{
		{"a new folder", tree{}, "out", false, tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n"}},
		{"with a slash behind", tree{}, "out/", false, tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n"}},
		{"a new folder, forced", tree{}, "out", true, tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n"}},
		{"an empty folder", tree{"out": "/"}, "out", false, tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n"}},
		{"the folder one is in", tree{}, ".", false, tree{"a.txt": "new a\n", "b.txt": "new b\n"}},
		{
			"beside other files", tree{"out": "/", "out/notes": "mine", "out/more/a.txt": "mine"}, "out", false,
			tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n", "out/notes": "mine", "out/more": "/", "out/more/a.txt": "mine"},
		},
		{
			"forced over one of them", tree{"out": "/", "out/b.txt": "old b, longer than the new one\n", "out/c.txt": "mine"}, "out", true,
			tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n", "out/c.txt": "mine"},
		},
		{
			"forced over both", tree{"out": "/", "out/a.txt": "old a", "out/b.txt": "old b"}, "out", true,
			tree{"out": "/", "out/a.txt": "new a\n", "out/b.txt": "new b\n"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := build(t, c.before)
			t.Chdir(root)
			paths, err := folder.Write(filepath.FromSlash(c.dir), two, c.replace)
			if err != nil {
				t.Fatal(err)
			}
			want := []string{filepath.Join(c.dir, "a.txt"), filepath.Join(c.dir, "b.txt")}
			if diff := cmp.Diff(want, paths); diff != "" {
				t.Errorf("paths (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(c.after, look(t, root)); diff != "" {
				t.Errorf("the folder (-want +got):\n%s", diff)
			}
		})
	}
}

// Files in folders of the folder.
func TestWriteDeep(t *testing.T) {
	deep := []folder.File{two[0], file("S/b.txt", "new b\n"), file("6 years/deep/c.txt", "new c\n")}
	after := tree{
		"out": "/", "out/a.txt": "new a\n", "out/S": "/", "out/S/b.txt": "new b\n",
		"out/6 years": "/", "out/6 years/deep": "/", "out/6 years/deep/c.txt": "new c\n",
	}
	for name, before := range map[string]tree{
		"a new folder":       {},
		"an empty folder":    {"out": "/"},
		"one of the folders": {"out/S": "/"},
		"forced over all":    {"out/a.txt": "old a", "out/S/b.txt": "old b", "out/6 years/deep/c.txt": "old c"},
	} {
		t.Run(name, func(t *testing.T) {
			root := build(t, before)
			t.Chdir(root)
			paths, err := folder.Write("out", deep, true)
			if err != nil {
				t.Fatal(err)
			}
			want := []string{filepath.Join("out", "a.txt"), filepath.Join("out", "S", "b.txt"), filepath.Join("out", "6 years", "deep", "c.txt")}
			if diff := cmp.Diff(want, paths); diff != "" {
				t.Errorf("paths (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(after, look(t, root)); diff != "" {
				t.Errorf("the folder (-want +got):\n%s", diff)
			}
		})
	}
}

var errUnmade = errors.New("cannot be made")

// After a refusal everything lies as before.
func TestRefusals(t *testing.T) {
	unmade := []folder.File{two[0], {Name: "b.txt", Write: func(w io.Writer) error {
		io.WriteString(w, "half of ")
		return errUnmade
	}}}
	for _, c := range []struct {
		name    string
		before  tree
		dir     string
		files   []folder.File
		replace bool
		is      error
		says    string
	}{
		{
			"one of the files is there", tree{"out/b.txt": "old b"}, "out", two, false,
			folder.ErrTaken, "out/b.txt: is there already: name another folder, or replace the files with -force",
		},
		{
			"a folder of the name of a file", tree{"out/a.txt": "old a", "out/b.txt/deep": "mine"}, "out", two, true,
			folder.ErrTaken, "out/b.txt: is a folder: move it away or name another folder to write into",
		},
		{
			"a file in place of the folder", tree{"out": "mine"}, "out", two, true,
			fs.ErrExist, "out: is no folder: name one, which need not exist yet",
		},
		{
			"nothing to make the folder in", tree{}, "some/out", two, false,
			fs.ErrNotExist, "some/out: there is no folder to make it in: make some first",
		},
		{"no name", tree{"b": "mine"}, "", two, true, fs.ErrInvalid, `"": is no folder: name one, such as "front"`},
		{"a file that cannot be made, new folder", tree{}, "out", unmade, false, errUnmade, "cannot be made"},
		{"a file that cannot be made, forced", tree{"out/a.txt": "old a"}, "out", unmade, true, errUnmade, "cannot be made"},
		{
			"a name that no file can have", tree{"out/a.txt": "old a"}, "out", []folder.File{two[0], file("no\x00.txt", "")}, true,
			syscall.EINVAL, "out/no\x00.txt: cannot be written (invalid argument): name a folder that you may write to and that has room",
		},
		{
			"a file in place of a folder in it", tree{"out/a.txt": "old a", "out/in": "mine"}, "out", []folder.File{two[0], file("in/b.txt", "")}, true,
			syscall.ENOTDIR, "out/in/b.txt: cannot be written (not a directory): name a folder that you may write to and that has room",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := build(t, c.before)
			t.Chdir(root)
			before := look(t, root)
			paths, err := folder.Write(filepath.FromSlash(c.dir), c.files, c.replace)
			if !errors.Is(err, c.is) || paths != nil {
				t.Fatalf("error %v, paths %q; want an error that is %v", err, paths, c.is)
			}
			if runtime.GOOS != "windows" && err.Error() != c.says {
				t.Errorf("says\n%s, want\n%s", err, c.says)
			}
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("more than a line: %q", err)
			}
			if diff := cmp.Diff(before, look(t, root)); diff != "" {
				t.Errorf("the folder changed (-before +after):\n%s", diff)
			}
		})
	}
}

// What a refusal says would work works.
func TestRemedies(t *testing.T) {
	t.Chdir(build(t, tree{"out/a.txt": "old a"}))
	if _, err := folder.Write("out", two, false); !errors.Is(err, folder.ErrTaken) {
		t.Fatal(err)
	}
	if _, err := folder.Write("out", two, true); err != nil {
		t.Errorf("forced: %v", err)
	}
	dir := filepath.Join("some", "out")
	if _, err := folder.Write(dir, two, false); err == nil {
		t.Fatal("the folder some was made")
	}
	if err := os.Mkdir("some", 0o777); err != nil {
		t.Fatal(err)
	}
	if _, err := folder.Write(dir, two, false); err != nil {
		t.Errorf("with the folder made: %v", err)
	}
}

// The folder and the files are as open to others as any that are made here.
func TestPermissions(t *testing.T) {
	t.Chdir(t.TempDir())
	paths, err := folder.Write("out", two, false)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir("plain", 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("plain.txt", nil, 0o666); err != nil {
		t.Fatal(err)
	}
	for _, c := range [][2]string{{"out", "plain"}, {paths[0], "plain.txt"}} {
		got, err1 := os.Stat(c[0])
		want, err2 := os.Stat(c[1])
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(err)
		}
		if got.Mode() != want.Mode() {
			t.Errorf("%s has mode %v, others %v", c[0], got.Mode(), want.Mode())
		}
	}
}
