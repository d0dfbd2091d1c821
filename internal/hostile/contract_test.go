//go:build linux

package hostile_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"
)

// What a program may use before it refuses.
const (
	mostTime       = time.Second // of the processor, since other work on the machine does not count
	mostMemory     = 200 << 20
	longestMessage = 1100 // characters, whatever was given
)

// input is something that a program is started on.
type input struct {
	what     string // for the failures
	args     []string
	document []byte
	useless  bool // no program can make anything of it
}

// kept is a program under test, and what its runs came to.
type kept struct {
	*testing.T
	program
	place             string // of the working folders
	refused, accepted int
	slowest, largest  worst
	wall              time.Duration
}

// worst is the most that a run took, and which it was.
type worst struct {
	most int64
	what string
}

func (w *worst) add(n int64, what string) {
	if n > w.most {
		*w = worst{n, what}
	}
}

func keep(t *testing.T, p program) *kept {
	return &kept{T: t, program: p, place: t.TempDir()}
}

// log reports what the runs came to.
func (k *kept) log() {
	k.Logf("%s: %d refused, %d accepted; most: %v of the processor (%s), %v in all, %d MB (%s)",
		k.name, k.refused, k.accepted, time.Duration(k.slowest.most), k.slowest.what, k.wall, k.largest.most>>20, k.largest.what)
}

// try starts the program on an input and tests that it makes something of it or refuses it
// as it should.
func (k *kept) try(in input) ending {
	k.Helper()
	dir, err := os.MkdirTemp(k.place, "")
	if err != nil {
		k.Fatal(err)
	}
	e := k.start(k.T, start{args: in.args, dir: dir, stdin: in.document})
	k.slowest.add(int64(e.user), in.what)
	k.largest.add(e.memory, in.what)
	k.wall = max(k.wall, e.wall)
	problem := e.overspent()
	switch {
	case problem != "":
	case e.status == 0 && in.useless:
		problem = fmt.Sprintf("it made something of it: %.300q", e.out)
	case e.status == 0:
		k.accepted++
		problem = e.served(k.help)
	default:
		k.refused++
		problem = e.refused(k.name)
		if err := os.Remove(dir); problem == "" && err != nil {
			problem = fmt.Sprintf("it left something behind: %v", err)
		}
	}
	if problem != "" {
		k.fail(in, problem)
	}
	if err := os.RemoveAll(dir); err != nil {
		k.Fatal(err)
	}
	return e
}

// fail reports a failure and keeps the document among the artifacts of the test.
func (k *kept) fail(in input, problem string) {
	k.Helper()
	args := fmt.Sprintf("%.200q", in.args)
	k.Errorf("%s: %s\n%.300s: %s", k.name, in.what, args, problem)
	if in.document == nil {
		return
	}
	file := filepath.Join(k.ArtifactDir(), strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return '_'
	}, k.name+" "+in.what))
	if err := os.WriteFile(file, in.document, 0o666); err != nil {
		k.Error(err)
	}
}

// overspent says in which way a run took too much, nothing if it did not.
func (e ending) overspent() string {
	switch {
	case e.late:
		return fmt.Sprintf("it did not end within %v", patience)
	case e.status < 0:
		return fmt.Sprintf("it was ended by a signal (%v): %.300q", e.signal, e.said)
	case e.memory > mostMemory:
		return fmt.Sprintf("it took %d MB", e.memory>>20)
	case e.status != 0 && e.user > mostTime:
		return fmt.Sprintf("it took %v of the processor to refuse", e.user)
	}
	return ""
}

// served says what is wrong with a success: something is printed, or the help is said.
func (e ending) served(help string) string {
	if len(e.out) > 0 && len(e.said) == 0 || len(e.out) == 0 && string(e.said) == help {
		return ""
	}
	return fmt.Sprintf("status 0, %d bytes printed, said %.300q", len(e.out), e.said)
}

// refused says what is wrong with a refusal: status 1 or 2, and nothing but one line that can
// be read.
func (e ending) refused(name string) string {
	line, ended := bytes.CutSuffix(e.said, []byte("\n"))
	switch {
	case e.status != 1 && e.status != 2:
		return fmt.Sprintf("status %d", e.status)
	case len(e.out) > 0:
		return fmt.Sprintf("status %d, and %d bytes printed", e.status, len(e.out))
	case !ended || bytes.Contains(line, []byte("\n")):
		return fmt.Sprintf("status %d, not one line: %.300q", e.status, e.said)
	case !bytes.HasPrefix(line, []byte(name+": ")):
		return fmt.Sprintf("status %d, without the name of the program: %.300q", e.status, line)
	case !utf8.Valid(line) || bytes.ContainsFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }):
		return fmt.Sprintf("status %d, what cannot be printed is in it: %.300q", e.status, line)
	case utf8.RuneCount(line) > longestMessage:
		return fmt.Sprintf("status %d, a line of %d bytes: %.300q", e.status, len(line), line)
	}
	return ""
}
