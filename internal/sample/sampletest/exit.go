package sampletest

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
)

// asCommand is the environment variable that makes the test binary the command.
const asCommand = "WALEWISE_AS_COMMAND"

// Main is what a TestMain calls whose package tests how the program main exits.
func Main(m *testing.M, main func()) {
	if os.Getenv(asCommand) == "1" {
		main()
		return
	}
	os.Exit(m.Run())
}

// Exit is how a program ends.
type Exit struct {
	Args   string
	Stdin  io.Reader
	Status int
	Says   string // the beginning of what stands on standard error
}

// Exits starts the program that was handed to [Main] and tests its exit status. A program
// either prints or, where Says is not empty, says something; a failure says one line.
func Exits(t *testing.T, exits []Exit) {
	t.Helper()
	binary, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range exits {
		cmd := exec.Command(binary, strings.Fields(e.Args)...)
		cmd.Env = append(os.Environ(), asCommand+"=1")
		var out, messages bytes.Buffer
		cmd.Stdin, cmd.Stdout, cmd.Stderr = e.Stdin, &out, &messages
		err := cmd.Run()
		if errors.Is(err, syscall.ENOEXEC) {
			t.Skip("an emulated program cannot start itself") // as on arm64 in .ci/long
		}
		if exit, ok := errors.AsType[*exec.ExitError](err); err != nil && !ok {
			t.Fatal(err)
		} else if got := cmd.ProcessState.ExitCode(); got != e.Status {
			t.Errorf("%q: exit status %d, want %d (%v)", e.Args, got, e.Status, exit)
		}
		said := messages.String()
		if (out.Len() > 0) != (e.Says == "") || (said == "") != (e.Says == "") || e.Status != 0 && strings.Count(said, "\n") != 1 {
			t.Errorf("%q: %d bytes printed, said %q", e.Args, out.Len(), said)
		}
		if !strings.HasPrefix(said, e.Says) {
			t.Errorf("%q: said %q, want %q first", e.Args, said, e.Says)
		}
	}
}
