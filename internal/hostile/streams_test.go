//go:build linux

package hostile_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// What cannot be printed is an error, in one line.
func testStreams(t *testing.T, programs []program) {
	dir, err := filepath.Abs(module)
	if err != nil {
		t.Fatal(err)
	}
	request, err := os.ReadFile(filepath.Join(module, "examples", "edges", "testdata", "requests.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range programs {
		if len(p.flags) == 0 {
			continue // programs to copy, which print as they go
		}
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			// In the folder of the module, where published finds its table.
			e := p.start(t, start{dir: dir, stdin: request, stdout: device(t, "/dev/full")})
			if problem := e.refused(p.name); e.status != 1 || problem != "" {
				t.Errorf("a full disk: status %d, %s", e.status, problem)
			}
			// Go opens the null device in place of a stream that is closed, so that what is
			// printed is lost without an error.
			e = p.start(t, start{dir: dir, stdin: request, before: "exec >&-"})
			if e.status != 0 || len(e.said) > 0 {
				t.Errorf("closed: status %d, said %.300q", e.status, e.said)
			}
			e = p.start(t, start{dir: dir, stdin: request, before: "exec 2>&-", args: []string{"-nonsense"}})
			if e.status != 2 || len(e.out) > 0 {
				t.Errorf("standard error closed: status %d, %d bytes printed", e.status, len(e.out))
			}
			e = p.start(t, start{dir: dir, stdin: request, stdout: unread(t)})
			if e.signal != syscall.SIGPIPE || len(e.said) > 0 {
				t.Errorf("nobody reads: status %d, signal %v, said %.300q", e.status, e.signal, e.said)
			}
		})
	}
}

// device opens a device for writing.
func device(t *testing.T, path string) *os.File {
	t.Helper()
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// unread returns the end of a pipe whose other end is closed.
func unread(t *testing.T) *os.File {
	t.Helper()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	t.Cleanup(func() { w.Close() })
	return w
}
