package golden_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/golden"
	"github.com/google/go-cmp/cmp"
)

// recorder stands in for the test that calls Check, and keeps what it is told.
type recorder struct {
	testing.TB
	dir    string
	errors []string
}

func (r *recorder) Helper()             {}
func (r *recorder) ArtifactDir() string { return r.dir }
func (r *recorder) Errorf(format string, args ...any) {
	r.errors = append(r.errors, fmt.Sprintf(format, args...))
}

// check runs Check against a file that holds want, and returns what it says
// and the file. A want of nil means that there is no file.
func check(t *testing.T, update string, want, got []byte) (r *recorder, file string) {
	t.Helper()
	t.Setenv(golden.Update, update)
	file = filepath.Join(t.TempDir(), "deep", "down", "a.golden")
	if want != nil {
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, want, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	r = &recorder{TB: t, dir: t.TempDir()}
	golden.Check(r, filepath.ToSlash(file), got)
	return r, file
}

func TestCheckAgrees(t *testing.T) {
	for _, c := range []struct{ name, want, got string }{
		{"same", "one\ntwo\n", "one\ntwo\n"},
		{"empty", "", ""},
		{"file with other line ends", "one\r\ntwo\r\n", "one\ntwo\n"},
		{"output with other line ends", "one\ntwo\n", "one\r\ntwo\r\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, file := check(t, "", []byte(c.want), []byte(c.got))
			if len(r.errors) != 0 {
				t.Errorf("says %q", r.errors)
			}
			if b, err := os.ReadFile(file); err != nil || string(b) != c.want {
				t.Errorf("the file is now %q (%v), want it untouched", b, err)
			}
		})
	}
}

func TestCheckDiffers(t *testing.T) {
	long := strings.Repeat("é", 150)
	for _, c := range []struct{ name, want, got, list string }{
		{
			"a line in the middle", "1\n2\n3\n4\n5\n6\n7\n", "1\n2\n3\n4\nfive\n6\n7\n",
			"line 5, byte 1\n" +
				"     2 2\n     3 3\n     4 4\n-    5 5\n+    5 five\n",
		},
		{"a byte in a line", "hold 3\n", "hold 4\n", "line 1, byte 6\n-    1 hold 3\n+    1 hold 4\n"},
		{"a line more", "1\n2\n", "1\nx\n2\n", "line 2, byte 1\n     1 1\n+    2 x\n"},
		{"a line less", "1\nx\n2\n", "1\n2\n", "line 2, byte 1\n     1 1\n-    2 x\n"},
		{"a repeated line less", "1\n1\n1\n", "1\n1\n", "line 3, byte 1\n     1 1\n     2 1\n-    3 1\n"},
		{"nothing made", "1\n", "", "line 1, byte 1\n-    1 1\n"},
		{"an empty file", "", "1\n", "line 1, byte 1\n+    1 1\n"},
		{"no last line end", "1\n2\n", "1\n2", "line 2, byte 2\n     1 1\n-    2 2\n+    2 2 (no line end)\n"},
		{"a space at the end", "1\n", "1 \n", "line 1, byte 2\n-    1 1\n+    1 \"1 \"\n"},
		{"a tab", " 1\n", "\t1\n", "line 1, byte 1\n-    1  1\n+    1 \"\\t1\"\n"},
		{
			"many lines", strings.Repeat("w\n", 10), strings.Repeat("g\n", 9),
			"line 1, byte 1\n" +
				"-    1 w\n-    2 w\n-    3 w\n-    4 w\n-    5 w\n-    6 w\n-    7 w\n-    8 w\n-       and 2 more\n" +
				"+    1 g\n+    2 g\n+    3 g\n+    4 g\n+    5 g\n+    6 g\n+    7 g\n+    8 g\n+       and 1 more\n",
		},
		{
			"a long line", long + "a" + long + "\n", long + "b" + long + "\n",
			"line 1, byte 301\n" +
				"-    1 …" + strings.Repeat("é", 30) + "a" + strings.Repeat("é", 29) + "…\n" +
				"+    1 …" + strings.Repeat("é", 30) + "b" + strings.Repeat("é", 29) + "…\n",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, file := check(t, "", []byte(c.want), []byte(c.got))
			if len(r.errors) != 1 {
				t.Fatalf("%d errors, want 1: %q", len(r.errors), r.errors)
			}
			_, list, _ := strings.Cut(r.errors[0], "(-want +got):\n")
			if diff := cmp.Diff(c.list, list); diff != "" {
				t.Errorf("listing (-want +got):\n%s", diff)
			}
			if b, err := os.ReadFile(file); err != nil || string(b) != c.want {
				t.Errorf("the file is now %q (%v), want it untouched", b, err)
			}
			if b, err := os.ReadFile(filepath.Join(r.dir, "a.golden")); err != nil || string(b) != c.got {
				t.Errorf("stored %q (%v), want what was made", b, err)
			}
		})
	}
}

func TestCheckWithoutFile(t *testing.T) {
	r, file := check(t, "", nil, []byte("1\n"))
	if len(r.errors) != 1 || !strings.Contains(r.errors[0], "WALEWISE_UPDATE=1 writes it") {
		t.Errorf("says %q, want one error that names the variable", r.errors)
	}
	if _, err := os.Stat(file); err == nil {
		t.Error("the file was written unasked")
	}
}

func TestCheckUpdates(t *testing.T) {
	for _, c := range []struct {
		name      string
		want      []byte
		got, file string
	}{
		{"no file or folder yet", nil, "1\n", "1\n"},
		{"another text", []byte("1\n"), "2\n", "2\n"},
		{"other line ends", []byte("1\n"), "2\r\n", "2\n"},
		{"the same text is left alone", []byte("1\r\n"), "1\n", "1\r\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, file := check(t, "1", c.want, []byte(c.got))
			if len(r.errors) != 0 {
				t.Errorf("says %q", r.errors)
			}
			if b, err := os.ReadFile(file); err != nil || string(b) != c.file {
				t.Errorf("the file is now %q (%v), want %q", b, err, c.file)
			}
		})
	}
}

// A file that cannot be written is a failure and not a silent pass.
func TestCheckCannotUpdate(t *testing.T) {
	t.Setenv(golden.Update, "1")
	dir := t.TempDir()
	r := &recorder{TB: t, dir: dir}
	golden.Check(r, filepath.ToSlash(dir), []byte("1\n"))
	if len(r.errors) != 1 {
		t.Errorf("says %q, want one error", r.errors)
	}
}
