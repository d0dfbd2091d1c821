//go:build linux

package hostile_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"syscall"
	"testing"
	"time"
)

// module is the folder of the module, as the tests see it.
const module = "../.."

// patience is how long a program may take before it is killed.
const patience = 10 * time.Second

// program is a sample program that has been built.
type program struct {
	name, binary string
	help         string   // what -h says
	flags        []string // that it has, as -h lists them
}

var flagLine = regexp.MustCompile(`(?m)^  -([a-z-]+)`)

// build builds all sample programs.
func build(t *testing.T) []program {
	t.Helper()
	dir := t.TempDir()
	made := exec.Command("go", "build", "-o", dir+"/", "./examples/...")
	made.Dir = module
	if text, err := made.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var all []program
	for _, e := range entries {
		p := program{name: e.Name(), binary: filepath.Join(dir, e.Name())}
		p.help = string(p.start(t, start{args: []string{"-h"}, dir: dir}).said)
		for _, found := range flagLine.FindAllStringSubmatch(p.help, -1) {
			p.flags = append(p.flags, found[1])
		}
		all = append(all, p)
	}
	return all
}

// start is how a program is started.
type start struct {
	args   []string
	dir    string // the working folder, and that of temporary files
	stdin  []byte
	stdout *os.File // nil where what is printed is kept
	before string   // shell commands that are run first, in its process
}

// ending is how a program ended.
type ending struct {
	status     int // -1 after a signal
	signal     syscall.Signal
	out, said  []byte
	late       bool // it was killed
	user, wall time.Duration
	memory     int64 // the most that it had, in bytes; not below what the tests had when they started it
}

// start starts the program and waits for its end.
func (p program) start(t *testing.T, s start) ending {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, p.binary, s.args...)
	if s.before != "" {
		cmd = exec.CommandContext(ctx, "sh", append([]string{"-c", s.before + `; exec "$0" "$@"`, p.binary}, s.args...)...)
	}
	cmd.Dir, cmd.Env, cmd.WaitDelay = s.dir, []string{"TMPDIR=" + s.dir}, patience
	var out, said bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = bytes.NewReader(s.stdin), io.Writer(&out), &said
	if s.stdout != nil {
		cmd.Stdout = s.stdout
	}
	began := time.Now()
	err := cmd.Run()
	if _, ok := errors.AsType[*exec.ExitError](err); err != nil && !ok {
		t.Fatal(err)
	}
	usage := cmd.ProcessState.SysUsage().(*syscall.Rusage)
	return ending{
		status: cmd.ProcessState.ExitCode(), signal: cmd.ProcessState.Sys().(syscall.WaitStatus).Signal(),
		out: out.Bytes(), said: said.Bytes(), late: ctx.Err() != nil,
		user: cmd.ProcessState.UserTime(), wall: time.Since(began), memory: int64(usage.Maxrss) << 10,
	}
}
