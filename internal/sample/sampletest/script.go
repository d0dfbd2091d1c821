package sampletest

import (
	"bytes"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// Script runs a program of this machine in a folder, one that in turn runs sample programs
// with the go command. Without either, and with -short, the test is skipped.
func Script(t *testing.T, folder, name string, args ...string) (stdout, stderr string, err error) {
	t.Helper()
	if testing.Short() {
		t.Skip("builds sample programs")
	}
	for _, needed := range []string{name, "go"} {
		if _, err := exec.LookPath(needed); err != nil {
			t.Skip(err)
		}
	}
	cmd := exec.Command(name, args...)
	var out, messages bytes.Buffer
	cmd.Dir, cmd.Stdout, cmd.Stderr = folder, &out, &messages
	// The sample programs run here, whatever the test was compiled for.
	cmd.Env = slices.DeleteFunc(os.Environ(), func(set string) bool {
		return strings.HasPrefix(set, "GOOS=") || strings.HasPrefix(set, "GOARCH=")
	})
	err = cmd.Run()
	return out.String(), messages.String(), err
}
