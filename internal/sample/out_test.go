package sample_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/folder"
	"github.com/google/go-cmp/cmp"
)

// listing returns the names of what lies in a folder, in the order of the alphabet.
func listing(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	names := []string{}
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// holds fails the test if a file does not hold the text.
func holds(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil {
		t.Error(err)
	} else if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", path, diff)
	}
}

// What -out writes is what -as prints, and the paths are printed.
func TestOut(t *testing.T) {
	t.Chdir(t.TempDir())
	wrote := func(args ...string) {
		t.Helper()
		out, messages, err := run("", args...)
		if err != nil {
			t.Fatal(err)
		}
		dir := filepath.Join(".", "my title")
		want := ""
		for _, name := range []string{"loud.txt", "title.txt", "words.csv"} {
			want += filepath.Join(dir, name) + "\n"
		}
		if out != want || messages != "" {
			t.Errorf("%q prints %q and says %q, want %q", args, out, messages, want)
		}
		for form, file := range map[string]string{"loud": "loud.txt", "text": "title.txt", "words": "words.csv"} {
			text, _, err := run("", "-as", form)
			if err != nil {
				t.Fatal(err)
			}
			holds(t, filepath.Join(dir, file), text)
		}
		if diff := cmp.Diff([]string{"my title"}, listing(t, ".")); diff != "" {
			t.Errorf("beside the folder (-want +got):\n%s", diff)
		}
	}
	wrote("-out", "my title")

	put(t, filepath.Join("my title", "words.csv"), "older")
	put(t, filepath.Join("my title", "notes.txt"), "mine")
	wrote("-out", "my title", "-force")
	holds(t, filepath.Join("my title", "notes.txt"), "mine")
	if diff := cmp.Diff([]string{"loud.txt", "notes.txt", "title.txt", "words.csv"}, listing(t, "my title")); diff != "" {
		t.Errorf("in the folder (-want +got):\n%s", diff)
	}
}

func TestOutIntoFolderThatIsThere(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "notes.txt"), "mine")
	if _, _, err := run(demo, "-spec", "-", "-out", dir); err != nil {
		t.Fatal(err)
	}
	holds(t, filepath.Join(dir, "notes.txt"), "mine")
	if diff := cmp.Diff([]string{"loud.txt", "notes.txt", "title.txt", "words.csv"}, listing(t, dir)); diff != "" {
		t.Errorf("in the folder (-want +got):\n%s", diff)
	}
}

// What cannot be written leaves everything as it was.
func TestOutRefuses(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.Mkdir("taken", 0o777); err != nil {
		t.Fatal(err)
	}
	put(t, filepath.Join("taken", "words.csv"), "mine")
	put(t, "file", "mine")
	for _, c := range []struct {
		why, spec, out string
		force          bool
		is             error
		says           string
	}{
		{
			"occupied", demo, "taken", false, folder.ErrTaken,
			filepath.Join("taken", "words.csv") + ": is there already: name another folder, or replace the files with -force",
		},
		{"a file", demo, "file", true, os.ErrExist, "file: is no folder: name one, which need not exist yet"},
		{
			"in no folder", demo, filepath.Join("none", "front"), false, os.ErrNotExist,
			filepath.Join("none", "front") + ": there is no folder to make it in: make none first",
		},
		{"no name", demo, "", false, os.ErrInvalid, `"": is no folder: name one, such as "front"`},
		{"a spec that cannot be used", "{}", "front", false, nil, `format: the key is missing: write "walewise-spec/1"`},
		{"such a spec, forced", "{}", "taken", true, nil, `format: the key is missing: write "walewise-spec/1"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			args := []string{"-spec", "-", "-out", c.out}
			if c.force {
				args = append(args, "-force")
			}
			out, _, err := run(c.spec, args...)
			if err == nil || c.is != nil && !errors.Is(err, c.is) || out != "" {
				t.Fatalf("error %v, printed %q", err, out)
			}
			if got := command.OneLine(err); got != c.says || strings.Contains(err.Error(), "\n") {
				t.Errorf("says\n%s, want\n%s", err, c.says)
			}
			if diff := cmp.Diff([]string{"file", "taken"}, listing(t, ".")); diff != "" {
				t.Errorf("beside the folders (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff([]string{"words.csv"}, listing(t, "taken")); diff != "" {
				t.Errorf("in the folder (-want +got):\n%s", diff)
			}
			holds(t, filepath.Join("taken", "words.csv"), "mine")
			holds(t, "file", "mine")
		})
	}
}
