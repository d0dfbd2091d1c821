package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
)

// asCommand is the environment variable that makes the test binary the command.
const asCommand = "FRONTPIECE_AS_COMMAND"

func TestMain(m *testing.M) {
	if os.Getenv(asCommand) == "1" {
		main()
		return
	}
	os.Exit(m.Run())
}

// The exit status says what went wrong, and one line why.
func TestExitStatus(t *testing.T) {
	binary, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	document := tiny(t)
	for _, c := range []struct {
		args, stdin string
		status      int
		says        string
	}{
		{"-as csv", "", 0, ""},
		{"-check -", document, 0, ""},
		{"-check -", replaced(t, document, `"live": 20`, `"live": 21`), 1, "frontpiece: front: "},
		{"-check -", "\x00\xff", 1, "frontpiece: document"},
		{"-check none.json", "", 1, "frontpiece: open none.json"},
		{"-spec -", "[]", 1, "frontpiece: document"},
		{"-out demo.json", "", 1, "frontpiece: demo.json: is no folder"},
		{"-as poem", "", 2, "frontpiece: -as"},
		{"-check - -force", document, 2, "frontpiece: -check with -force"},
		{"-out testdata -as csv", "", 2, "frontpiece: -out with -as"},
	} {
		cmd := exec.Command(binary, strings.Fields(c.args)...)
		cmd.Env = append(os.Environ(), asCommand+"=1")
		cmd.Stdin = strings.NewReader(c.stdin)
		var out, messages bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &messages
		err := cmd.Run()
		if errors.Is(err, syscall.ENOEXEC) {
			t.Skip("an emulated program cannot start itself") // as on arm64 in .ci/long
		}
		if exit, ok := errors.AsType[*exec.ExitError](err); err != nil && !ok {
			t.Fatal(err)
		} else if got := cmd.ProcessState.ExitCode(); got != c.status {
			t.Errorf("%s: exit status %d, want %d (%v)", c.args, got, c.status, exit)
		}
		lines := strings.Count(messages.String(), "\n")
		if c.status == 0 && (lines != 0 || out.Len() == 0) || c.status != 0 && (lines != 1 || out.Len() != 0) {
			t.Errorf("%s: %d bytes printed, said %q", c.args, out.Len(), messages.String())
		}
		if !strings.HasPrefix(messages.String(), c.says) {
			t.Errorf("%s: said %q, want %q first", c.args, messages.String(), c.says)
		}
	}
}
