package examples_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/sample/sampletest"
)

// The program in the project's README is imported and run as README says, beside a checkout.
func TestProjectsProgram(t *testing.T) {
	text := strings.ReplaceAll(read(t, "..", "README.md"), "\r\n", "\n")
	beside := t.TempDir()
	checkout, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(checkout, filepath.Join(beside, "walewise")); err != nil {
		t.Skip(err)
	}
	mine := filepath.Join(beside, "mine")
	if err := os.Mkdir(mine, 0o755); err != nil {
		t.Fatal(err)
	}
	program := found(t, text, "(?s)```go\n(package main\n.*?)```")
	if err := os.WriteFile(filepath.Join(mine, "main.go"), []byte(program), 0o644); err != nil {
		t.Fatal(err)
	}
	commands := found(t, text, "(?s)```sh\n(cd mine\n.*?)```")
	out, messages, err := sampletest.Script(t, beside, "sh", "-e", "-c", commands)
	if err != nil {
		t.Fatal(err, messages)
	}
	if want := read(t, "pullover", "testdata", "demo.text.golden"); out != want {
		t.Errorf("it prints %d bytes, the sample program %d", len(out), len(want))
	}
}
